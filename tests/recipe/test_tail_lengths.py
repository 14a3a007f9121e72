"""How long a tail is left: the key beside it says what the words of the step say, and the audit goes by it."""

import re
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.cut import Cut
from finishing_tui.recipe.reader import BadRecipe, read_text
from finishing_tui.recipe.yarn_of import left_by, length_left
from tests.recipe_texts import place, recipe, section, step

START = re.compile(r"\b[Jj]oin (?:new yarn|the second color)[^.]*?\bleave (\d+ (?:cm|in))\b")
END = re.compile(r"\b(?:Fasten off|Cut the yarn)[^.:]*?\bleave (\d+ (?:cm|in))\b")
"""How a shipped recipe says in words how long the tails are that are left as yarn is joined, and cut."""


@pytest.mark.parametrize("name", sorted(shipped.recipes()))
def test_every_length_in_words_is_in_its_key(name: str) -> None:
    """In every shipped recipe; so the audit and the needles know what the knitter was told to leave."""
    steps = read_text(Path(shipped.recipe(name)).read_text(encoding="utf-8"), name).step
    for one in steps:
        said = [*START.findall(one.say), *END.findall(one.say)]
        kept = [long for _, long in left_by(one) if long]
        assert kept == said or (isinstance(one, Cut) and not said), one.title


@pytest.mark.parametrize(
    ("keys", "left"),
    [
        ({"do": "cut", "tail": "a", "length": "6 in"}, {"a": "6 in"}),
        ({"do": "bind off", "from_": "band", "tail": "a", "length": "20 cm"}, {"a": "20 cm"}),
        ({"do": "bind off", "from_": "band", "keep": "band"}, {}),
        (
            {"do": "bind off", "from_": "band", "yarn": "new", "start_length": "15 cm"},
            {"start of it": "15 cm", "it": ""},
        ),
        ({"do": "check", "items": ["one"]}, {}),
    ],
)
def test_what_a_step_leaves(keys: dict[str, str], left: dict[str, str]) -> None:
    """Each tail with its length, under the name it gets where none is given; none where the yarn goes on."""
    one = _step(**keys)
    assert dict(left_by(one)) == left
    for tail, long in left.items():
        assert (length_left(one, tail) is None) is (not long)
    assert length_left(one, "another") is None


def _step(**keys: object) -> Step:
    do = str(keys.pop("do"))
    tails = recipe("It", place("band", live=8), step(do, "It", **keys), format=2)
    return read_text(tails, "a recipe").step[0]


@pytest.mark.parametrize(
    ("bad", "said"),
    [
        (step("bind off", "Off", from_="band", length="long"), "'long' is not a length"),
        (step("bind off", "Off", from_="band", start_length="6 in"), "only new yarn leaves a tail at its start"),
        (step("bind off", "Off", from_="band", keep="band", length="6 in"), "with 'keep' no yarn is cut"),
        (
            step("pick up and knit", "Up", section(along="edge", spots=9), onto="band", yarn="same", length="6 in"),
            "only new yarn leaves a tail at its start",
        ),
    ],
)
def test_what_cannot_be_is_said_in_one_sentence(bad: str, said: str) -> None:
    """With the line and the key, before anything is knitted."""
    with pytest.raises(BadRecipe) as told:
        read_text(recipe("It", place("band", live=8), bad, format=2), "a recipe")
    assert said in str(told.value)


def test_a_reader_of_the_first_format_is_told() -> None:
    """The key is newer than format 1."""
    with pytest.raises(BadRecipe) as told:
        read_text(recipe("It", place("band", live=8), step("bind off", "Off", from_="band", length="6 in")), "a recipe")
    assert "needs format = 2" in str(told.value)
