"""A changed recipe or garment file: what is another way is named, with the old and the new value."""

from dataclasses import replace

import pytest

from finishing_tui.garment.commands import Finish
from finishing_tui.garment.plan import Plan
from finishing_tui.glance.plan_changes import plan_change
from tests.garment.edges import press_to_the_end
from tests.garment.paper import Paper, plan_for
from tests.garment.test_what_if import TWO_SIDES


def changed(*edits: tuple[str, str], steps: int = 0) -> tuple[tuple[str, ...], str]:
    """Return what is said of the recipe of two sides with texts replaced, after so many steps, and any refusal."""
    paper = Paper(plan_for(TWO_SIDES))
    for _ in range(steps):
        press_to_the_end(paper).did(Finish())
    text = TWO_SIDES
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    found = plan_change(paper.state, plan_for(text))
    return found.lines, found.refusal


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        ("rounds = 8", "rounds = 10", "step 2, Work the band: rounds: 10, not 8"),
        ("change = -2", "change = -4", "step 2, Work the band: shaping 1, change: -4, not -2"),
        ('title = "Work the band"', 'title = "Work it"', "step 2, Work it: title: Work it, not Work the band"),
        ('text = "band needle"', 'text = "cord"', "place band, text: cord, not band needle"),
        ('title = "Two sides"', 'title = "Both"', "the recipe's title: Both, not Two sides"),
        ("rounds = 8", f'rounds = 8\nsay = "{"on and on " * 9}"', "step 2, Work the band: say: other words"),
        ("rounds = 8", "rounds = 8\nexpect = { band = 34 }", "step 2, Work the band: expect band: added"),
    ],
)
def test_each_change_is_named_with_its_step_and_field(old: str, new: str, line: str) -> None:
    """Old and new value stand side by side; long texts are only said to be others."""
    lines, refusal = changed((old, new))
    assert line in lines
    assert not refusal


def test_what_it_changes_later_is_named_too() -> None:
    """After what is another way come the later numbers that change with it."""
    lines, _ = changed(("change = -2", "change = -4"))
    at = lines.index("this affects later steps")
    assert lines[at + 1] == "step 2, Work the band, has 32 on the band needle, not 34"


def test_a_step_that_is_begun_keeps_what_it_was_taken_with() -> None:
    """That is said beside its change, and of no other step."""
    lines, _ = changed(("stitches = 18", "stitches = 16"), ("rounds = 8", "rounds = 9"))
    begun = [line for line in lines if line.endswith("(started: it stays as it was)")]
    assert len(begun) == 2
    assert all(line.startswith("step 1, Pick up: section ") for line in begun)
    assert begun[0] == ("step 1, Pick up: section left side, stitches: 16, not 18 (started: it stays as it was)")


def test_a_change_that_cannot_be_taken_is_said_to_be_none() -> None:
    """Another number of steps is for a new garment."""
    lines, refusal = changed(
        ('[[step]]\ndo = "work"', '[[step]]\ndo = "mark"\nmarker = "a"\ntitle = "m"\n[[step]]\ndo = "work"')
    )
    assert "steps: 3, not 2" in lines
    assert "a different number of steps" in refusal


def test_the_knitter_s_own_file_and_numbers() -> None:
    """Her file's words and numbers are named as hers, one with no words by its name."""
    paper = Paper(plan_for(TWO_SIDES))
    plan: Plan = replace(paper.state.plan, yarn="grey wool", own={"band": 30}, hand="left")
    lines = plan_change(paper.state, plan).lines
    assert "yarn: grey wool, not nothing" in lines
    assert "hand: left, not right" in lines
    assert "your band: 30, not not given" not in lines
    assert "your band: 30, which was not given" in lines


def test_what_only_looks_another_way_is_said_to_change_nothing() -> None:
    """A comment, or a line moved, is no change of any value."""
    lines, refusal = changed(('[[step]]\ndo = "work"', '# a comment\n[[step]]\ndo = "work"'))
    assert lines == ("only layout or comments changed",)
    assert not refusal
