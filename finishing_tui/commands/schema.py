"""``finishing schema``: the JSON Schema of a recipe file, for an editor that completes and checks TOML."""

import argparse
import json

from finishing_tui.commands.answer import Answer
from finishing_tui.recipe.schema import recipe_schema

EXAMPLE = """\
Put the schema beside your recipes and name it in the first line of a recipe; an editor with TOML support then
completes the keys, says what each means, and marks what cannot stand there:

  finishing schema > recipe.schema.json

  #:schema ./recipe.schema.json
  format = 1
"""


def arguments(_parser: argparse.ArgumentParser) -> None:
    """Add nothing: the command takes no arguments of its own."""


def answer(_args: argparse.Namespace) -> Answer:
    """Return the schema; for people it is the same JSON, set out on many lines."""
    schema = recipe_schema()
    return Answer(json.dumps(schema, indent=2, ensure_ascii=False), schema)
