"""What a measure says beside what is wanted."""

import pytest

from finishing_tui.glance.measured import beside_wanted
from tests.garment.paper import Paper, plan_for

RECIPE = """
format = 1
title  = "A collar"
sizes  = ["one size"]

[[step]]
do    = "measure"
title = "Measure the collar"
what  = "the collar, at the centre back"
{wanted}
"""


def told(typed: str, wanted: str) -> str:
    """Return what is told of a measure; ``wanted``: the keys of the step that say what it should be."""
    return beside_wanted(Paper(plan_for(RECIPE.format(wanted=wanted))).state, typed)


@pytest.mark.parametrize("typed", ["7", "6.5", "7.5", "7,0"])
def test_within_its_tolerance_nothing_is_told(typed: str) -> None:
    """7 cm, give or take half a centimetre: both ends are within it."""
    assert not told(typed, 'value = "7 cm"\ntolerance = "0.5 cm"')


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("7.6", "0.6 cm more than the 7 cm wanted, give or take 0.5 cm"),
        ("26", "19 cm more than the 7 cm wanted, give or take 0.5 cm"),
        ("0", "7 cm less than the 7 cm wanted, give or take 0.5 cm"),
        ("6.25", "about 0.8 cm less than the 7 cm wanted, give or take 0.5 cm"),
    ],
)
def test_beyond_it_the_difference_is_told(typed: str, said: str) -> None:
    """However far off it is, in the unit that is wanted."""
    assert told(typed, 'value = "7 cm"\ntolerance = "0.5 cm"') == said


def test_an_inch_is_an_inch() -> None:
    """What is wanted in inches is typed in inches."""
    assert told("3", 'value = "2 1/2 in"\ntolerance = "1/4 in"') == (
        "1/2 in more than the 2 1/2 in wanted, give or take 1/4 in"
    )


def test_without_a_tolerance_every_difference_is_told() -> None:
    """So it is for the hands to judge."""
    assert told("7.1", 'value = "7 cm"') == "0.1 cm more than the 7 cm wanted"
    assert not told("7", 'value = "7 cm"')


@pytest.mark.parametrize("typed", ["", "wide", "."])
def test_what_is_no_length_is_not_compared(typed: str) -> None:
    """Nor is anything where nothing is wanted."""
    assert not told(typed, 'value = "7 cm"')
    assert not told("12", "")
