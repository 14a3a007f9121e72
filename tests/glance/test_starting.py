"""The questions of a garment to start, what the audit says of the answers, and a recipe to read, as plain values."""

from dataclasses import replace
from functools import cache
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui import shipped
from finishing_tui.craft.errors import Impossible
from finishing_tui.garment.starting import UNCOUNTED, Draft, whole_gauge
from finishing_tui.glance.audited import audited
from finishing_tui.glance.numbers import number_lines, read_number
from finishing_tui.glance.reading import reading
from finishing_tui.glance.starting import chosen, question, questions, summary, typed
from finishing_tui.glance.wishes import Units
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import NOT_COUNTED, numbers_for
from finishing_tui.recipe.reader import read_recipe, read_text
from tests.examples import share


@cache
def _recipe(name: str) -> Recipe:
    return read_recipe(shipped.recipes()[name])


def _draft(name: str = "crew-neck", size: str = "M", **own: int) -> Draft:
    return Draft(recipe=_recipe(name), source=name, size=size, own=own)


@pytest.mark.parametrize("name", shipped.recipes())
def test_enter_at_every_question_leaves_a_garment_as_printed(name: str) -> None:
    """What stands on each line, taken as it stands, says nothing new; and as printed nothing is wrong or differs."""
    recipe = _recipe(name)
    draft = Draft(recipe=recipe, source=name, size=recipe.sizes[0])
    assert not draft.said()
    for key in questions(draft):
        asked = question(draft, key)
        draft = chosen(draft, key, asked.at) if asked.options else typed(draft, key, asked.value)
    assert not draft.said()
    found = audited(draft.inputs)
    assert found.ok
    assert not found.of("differs")


@settings(max_examples=share(40))
@given(side=st.integers(6, 60))
def test_what_differs_from_print_is_named_by_the_sums_of_the_recipe(side: int) -> None:
    """A crew neck in M has 36 + 16 + 2 sides + 4 in its band: named where that is not 104, and wrong off a 4m."""
    found = audited(_draft(side=side).inputs)
    band = 36 + 16 + 2 * side + 4
    told = [
        point for point in found.of("differs") if f"stitches of the neckband: {band}; the recipe says 104" in point.text
    ]
    assert len(told) == (band != 104)
    wrong = [point for point in found.of("error") if "not a multiple of 4" in point.text]
    assert bool(wrong) == (band % 4 != 0)
    assert all(point.number == "side" for point in wrong)


def test_a_number_that_is_not_printed_is_told_or_asked_for() -> None:
    """What only one value makes come out is said, and nothing can be begun while nothing tells it."""
    told = read_text(_UNPRINTED.format(more="expect = { pin = 12 }"), "told")
    untold = read_text(_UNPRINTED.format(more=""), "untold")
    found = audited(Draft(recipe=told, source="x", size="one").inputs)
    assert [point.text for point in found.of("implied")]
    assert found.possible
    found = audited(Draft(recipe=untold, source="x", size="one").inputs)
    assert not found.possible
    assert [point.number for point in found.points if point.missing] == ["held"]
    key = "number: held"
    assert "doesn't print" in " ".join(question(Draft(recipe=told, source="x", size="one"), key).lines)
    assert typed(Draft(recipe=told, source="x", size="one"), key, "").own == {}


_UNPRINTED = """
format = 1
title = "A pin"
sizes = ["one"]
[number.held]
text = "stitches held"
[place.pin]
text = "pin"
kind = "pin"
live = "held"
[[step]]
do = "check"
title = "Look"
items = ["all is there"]
{more}
[[step]]
do = "bind off"
title = "Bind off"
from = "pin"
tail = "end"
[[step]]
do = "weave in"
title = "Ends"
tails = "all"
"""


@given(st.text(max_size=12))
def test_a_number_is_plain_digits_in_its_range(text: str) -> None:
    """Whatever is typed is that number, or refused with the range; nothing at all is that nobody counted."""
    line = number_lines(_recipe("crew-neck"), "M", {})[0]
    try:
        value = read_number(line, text)
    except Impossible:
        digits = text.strip()
        assert not (digits.isascii() and digits.isdecimal() and len(digits) < 6 and 12 <= int(digits) <= 80)
    else:
        counted = NOT_COUNTED if text.strip().casefold() in {"", UNCOUNTED} else int(text.strip())
        assert value == counted


def test_own_numbers_are_told_from_printed_ones() -> None:
    """Her own with what it would be otherwise; what follows from it is worked out and no number of her own."""
    lines = {line.name: line for line in number_lines(_recipe("crew-neck"), "M", {"side": 26})}
    assert (lines["side"].value, lines["side"].own, lines["side"].otherwise) == (26, True, 24)
    assert (lines["band"].value, lines["band"].own) == (108, False)
    assert next(iter(lines)) == "front_rows", "what is asked for stands first"


@pytest.mark.parametrize("name", shipped.recipes())
def test_a_recipe_is_read_whole(name: str) -> None:
    """Every step with all its words, in order, and every number in every size."""
    recipe, text = _recipe(name), reading(_recipe(name))
    assert len(text.steps) == len(recipe.step)
    for step, chapter in zip(recipe.step, text.steps, strict=True):
        shown = " ".join(line.text for line in chapter.lines)
        assert step.title in chapter.heading
        for words in (step.how, step.look, step.mend, step.mind):
            assert words.split("{")[0] in shown
    figures = dict(text.table.rows)
    for size in range(len(recipe.sizes)):
        for number, value in numbers_for(recipe, size).items():
            assert figures[recipe.number[number].text][size] == str(value)


def test_the_last_look_says_all_of_her_own() -> None:
    """Size, hand, numbers, gauge, yarn and needles."""
    draft = replace(_draft(front_rows=34), hand="left", yarn="grey wool", needles="4 mm")
    draft = typed(draft, "gauge", "21 x 29 over 4 in")
    told = " ".join(summary(draft))
    for part in ("size M", "left-handed", ": 34", "21 x 29 over 4 in", "grey wool", "4 mm"):
        assert part in told


@pytest.mark.parametrize("units", get_args(Units))
def test_the_example_of_a_gauge_is_one(units: Units) -> None:
    """What is shown as an example can be typed as it stands, and is in the unit that is wanted."""
    draft = _draft()
    for key in ("gauge", "band"):
        example = question(draft, key, units).range.removeprefix("such as ").partition(", or ")[0]
        typed(draft, key, example)
        assert whole_gauge(example).over == ("4 in" if units == "in" else "10 cm")
