"""A key that came with a later format needs it; and the two needles of a join, by their new names and their old."""

import tomllib

import pytest

from finishing_tui import shipped
from finishing_tui.recipe.annotations import fields_of, walk
from finishing_tui.recipe.formats import CAME, FORMAT, came_with
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import BadRecipe, read_text

HEAD = """title = "Small recipe"
sizes = ["one"]
tails = ["end"]

[place.one]
text = "needle with the left back"
kind = "needle"
live = 20

[place.two]
text = "needle with the left front"
kind = "needle"
live = 20

[[step]]
do = "join"
title = "Join the left shoulder"
"""
NEW = 'near = "one"\nfar = "two"\n'
OLD = 'front = "one"\nback = "two"\n'


def problems(step: str, form: int = FORMAT) -> list[str]:
    """Return what is wrong with a recipe of one join."""
    try:
        read_text(f"format = {form}\n{HEAD}{step}", "x.toml")
    except BadRecipe as error:
        return [problem.message for problem in error.problems]
    return []


def test_a_new_key_in_an_old_format_is_told_so() -> None:
    """Each such key gets its sentence; in the new format, and with the old keys in the old one, nothing is wrong."""
    assert problems(NEW, 1) == [f"'{key}' needs format = 2, and this recipe has format = 1" for key in ("near", "far")]
    assert problems(NEW) == problems(OLD) == problems(OLD, 1) == []


@pytest.mark.parametrize(
    ("step", "said"),
    [
        ('near = "one"\n', "this step does not say which needle is 'far'; it needs two needles, 'near' and 'far'"),
        ('front = "one"\n', "this step does not say which needle is 'back'; it needs two needles, 'near' and 'far'"),
        ('near = "one"\nback = "two"\n', "'back' and 'near' are both here; use 'near' and 'far' alone"),
        ('near = "one"\nfar = "one"\n', "'near' and 'far' are the same place; two different ones are wanted"),
        (NEW + 'with_tail = "end"\nyarn = "new"\n', "'with_tail' works with a tail that hangs there; take out 'yarn'"),
    ],
)
def test_two_needles_are_wanted_and_one_yarn(step: str, said: str) -> None:
    """What does not fit together is told in one sentence."""
    assert problems(step) == [said]


def test_every_new_key_is_a_key() -> None:
    """The table names keys of the model, and formats that this program reads."""
    met = {(cls, key) for (cls, key), form in CAME.items() if 1 < form <= FORMAT}
    assert met == set(CAME)
    assert all(key in fields_of(cls) for cls, key in CAME)
    assert (came_with(Join, "near"), came_with(Join, "front")) == (2, 1)


@pytest.mark.parametrize("name", shipped.recipes())
def test_a_shipped_recipe_says_the_lowest_format_that_it_needs(name: str) -> None:
    """A program of before can then read it if it can at all."""
    data = tomllib.loads(shipped.recipe(name).read_text(encoding="utf-8"))
    tables = [seen for seen in walk(Recipe, data) if isinstance(seen.mark, type)]
    needed = max(came_with(seen.mark, key) for seen in tables for key in seen.value if isinstance(seen.mark, type))
    assert data["format"] == needed
