"""A settings file as text: every setting explained, with its usual value; made from the model and the registry.

All values stand behind a comment mark, so that the file changes nothing until one is taken away.
"""

import json
import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import fields
from typing import Any

from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.settings.model import Settings
from finishing_tui.talk.key_names import written
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.rooms import GROUPS, KEYED

_WIDTH = 100

_HEAD = (
    "Settings. Lines starting with # are ignored. Remove the # to use a setting. 'finishing settings' shows what is "
    "set; mistakes in this file are reported when the program starts."
)


def commented() -> str:
    """Return the text of a settings file in which nothing is set, and everything explained."""
    return "\n".join(_lines()) + "\n"


def value_text(value: Any) -> str:
    """Return a value as TOML has it: true, "cm", ["run", "target"]."""
    if isinstance(value, tuple):
        return f"[{', '.join(value_text(item) for item in value)}]"
    return json.dumps(value, ensure_ascii=False)


def keys_text(keys: Sequence[str]) -> str:
    """Return the keys of an action as TOML has them: one in quotes, or a list."""
    texts = [written(key) for key in keys]
    return texts[0] if len(texts) == 1 else f"[{', '.join(texts)}]"


def _lines() -> Iterator[str]:
    yield from _comment(_HEAD)
    usual = Settings()
    for field in fields(Settings):
        yield ""
        yield from _comment(field_texts(Settings).get(field.name, ""))
        if field.name != "keys":
            yield f"#{field.name} = {value_text(getattr(usual, field.name))}"
    for group, where in GROUPS.items():
        yield ""
        yield from _comment(f"Keys {where}.")
        yield f"[keys.{group}]"
        for action in KEYED.values():
            if action.group == group:
                yield f"#{action.name} = {keys_text(USUAL.of(action.id))}  # {action.help}"


def _comment(text: str) -> Iterator[str]:
    yield from (f"# {line}" for line in textwrap.wrap(text, _WIDTH))
