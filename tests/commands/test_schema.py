"""``finishing schema``: an independent validator agrees with the reader about what a recipe is."""

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from jsonschema import Draft7Validator

from finishing_tui import shipped
from finishing_tui.cli import main
from finishing_tui.recipe.annotations import fields_of
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.schema import recipe_schema
from tests.examples import share
from tests.strategies import recipes

PUBLISHED = sorted((Path(__file__).parents[1] / "published" / "recipes").rglob("*.toml"))
SCHEMA = recipe_schema()
VALIDATOR = Draft7Validator(SCHEMA)


def wrong(table: dict[str, Any]) -> list[str]:
    """Return where the validator finds something wrong."""
    return [error.json_path for error in VALIDATOR.iter_errors(table)]


def read(path: Path) -> dict[str, Any]:
    """Return a recipe as plain values, by the standard parser."""
    return tomllib.loads(path.read_text(encoding="utf-8"))


def test_it_is_a_schema_and_the_command_prints_it(capsys: pytest.CaptureFixture[str]) -> None:
    """The schema keeps to its draft, and people and programs get the same."""
    Draft7Validator.check_schema(SCHEMA)
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == SCHEMA
    assert main(["schema", "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == SCHEMA


@pytest.mark.parametrize("path", [*shipped.recipes().values(), *PUBLISHED], ids=lambda path: path.stem)
def test_every_recipe_that_the_reader_takes_is_valid(path: Path) -> None:
    """The recipes that come with the program and those of the tests validate."""
    assert wrong(read(path)) == []


@given(table=recipes())
@settings(max_examples=share(60))
def test_every_step_of_every_kind_is_valid(table: dict[str, Any]) -> None:
    """Whatever keys a step has that the model takes, the schema takes them too."""
    assert wrong(table) == []


GOOD = read(shipped.recipe("crew-neck"))


@pytest.mark.parametrize(
    "broken",
    [
        {key: value for key, value in GOOD.items() if key != "sizes"},
        {**GOOD, "colour": "slate"},
        {**GOOD, "format": 3},
        {**GOOD, "sizes": "one"},
        {**GOOD, "step": [{"do": "dance", "title": "Dance"}]},
        {**GOOD, "step": [{"title": "Nothing said"}]},
        {**GOOD, "step": [{"do": "join", "title": "Join", "front": "a"}]},
        {**GOOD, "step": [{"do": "join", "title": "Join", "front": "a", "back": "b", "from": "c"}]},
        {**GOOD, "step": [{"do": "move", "title": "Move", "from_": "a", "to": "b"}]},
        {**GOOD, "step": [{"do": "move", "title": "Move", "from": "a", "to": "b", "count": -1}]},
        {**GOOD, "place": {"neck": {"text": "neck", "kind": "bucket"}}},
        {**GOOD, "number": {"band": {"text": "band", "by_size": [1, 2.5]}}},
    ],
)
def test_a_broken_recipe_is_not_valid(broken: dict[str, Any]) -> None:
    """Keys that are missing, unknown or of a wrong type, and words that are none, are found."""
    assert wrong(broken)


def test_every_key_of_every_kind_says_what_it_means() -> None:
    """An editor shows a description beside every key, under the name it has in a file."""
    kinds: list[type] = [*KINDS.values()]
    for kind in kinds:
        table = SCHEMA["definitions"][kind.__name__]
        assert table["properties"].keys() == fields_of(kind).keys()
        assert all(item.get("description") for item in table["properties"].values()), kind.__name__


def test_british_words_are_valid() -> None:
    """Words that the reader takes for a kind are offered by the schema too."""
    step = {"title": "Cast off", "do": "cast off", "from": "neck"}
    assert BRITISH["cast off"] == "bind off"
    assert wrong({**GOOD, "step": [step]}) == []
