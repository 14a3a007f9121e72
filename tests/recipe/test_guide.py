"""The guide for pattern writers: what it says is what the model, the recipes and the commands are."""

import re
from dataclasses import fields
from typing import Any

from finishing_tui import shipped
from finishing_tui.cli import COMMANDS
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.base import RepeatOf, Step
from finishing_tui.recipe.kinds.seam import Side
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.model import BandGauge, Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.reader import caps, read_recipe
from finishing_tui.recipe.techniques import HelpsAt, Technique
from tests.recipe.guide import GUIDE, made, with_made

TEXT = GUIDE.read_text(encoding="utf-8")
MODELS: tuple[type[Any], ...] = (
    Recipe, RecipeGauge, BandGauge, Number, Place, Step, RepeatOf, Along, Held, Gap, Side, Shaping, ShortRows,
    Technique, HelpsAt, *KINDS.values(),
)  # fmt: skip


def test_the_guide_is_what_the_model_says() -> None:
    """Whoever changes the model runs ``python -m tests.recipe.guide``, or this fails."""
    assert with_made(TEXT) == TEXT


def test_the_guide_says_how_much_there_may_be() -> None:
    """The figures are those of the reader."""
    said = " ".join(TEXT.split())
    figures = (
        f"up to {caps.MOST_STEPS} steps, {caps.MOST_SIZES} sizes, {caps.MOST_NUMBERS} numbers",
        f"({caps.MOST_UNPRINTED} of them neither printed nor a sum), {caps.MOST_PLACES} places,",
        f"{caps.MOST_IN_LIST} values in any other list, and {caps.MOST_IN_SUM} characters in a sum",
    )
    assert " ".join(figures) in said


def test_every_key_is_explained_in_words() -> None:
    """Each key of each table has its row, with what it says and what it takes, neither of them empty."""
    told = made()
    rows = re.findall(r"^\| `(\w+)` \| (.*?) \| (.*?) \|$", told, re.MULTILINE)
    assert {key for key, _, _ in rows} == {field.name.rstrip("_") for model in MODELS for field in fields(model)}
    assert all(len(said) > 5 and takes and said.endswith((".", "...")) for _, said, takes in rows), rows
    assert set(re.findall(r'do = "([a-z ]+)"`', told)) == set(KINDS)
    assert all(f"`{word}`" in told for word in BRITISH)


def test_it_names_every_recipe_with_what_it_shows() -> None:
    """A writer finds the recipe to borrow from: all are named, none that there is not."""
    section = TEXT.split("## Recipes to borrow from")[1].split("##")[0]
    listed = re.findall(r"^\| `([a-z-]+)` \| (.{30,}) \|$", section, re.MULTILINE)
    assert {name for name, _ in listed} == set(shipped.recipes())
    assert len({shows for _, shows in listed}) == len(listed)


def test_what_it_promises_of_recipes_is_there() -> None:
    """Together they use every kind and every way of doing it that the guide speaks of."""
    steps = [step for path in shipped.recipes().values() for step in read_recipe(path).step]
    assert {getattr(step, "do", "") for step in steps} == set(KINDS)


def test_it_names_commands_that_there_are() -> None:
    """``finishing audit`` and ``finishing schema`` are told, and whatever else is named can be typed."""
    named = set(re.findall(r"`finishing ([a-z]+)", TEXT))
    assert {"audit", "schema", "recipes", "demo"} <= named <= set(COMMANDS)


def test_its_lines_can_be_read_as_text() -> None:
    """No line of prose is longer than a line of code; plain characters, and the signs of sums and drawings."""
    prose = [line for line in TEXT.splitlines() if not line.startswith("|")]
    assert max(map(len, prose)) <= 120
    assert not re.search(r"[^\x20-\x7e\n×÷∩═▷╵╷╲╱∪│─]", TEXT)
