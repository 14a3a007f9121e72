"""The ways to go on after a recount, which must be read at a glance and say what really comes of each."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import EDGE, Posting
from finishing_tui.garment.commands import Finish, Other, Press
from finishing_tui.garment.events import Recounted, Replanned, WhyOff
from finishing_tui.glance import recount_view
from finishing_tui.glance.answers import off_by, risks
from finishing_tui.recipe.kinds.work import Work
from tests.examples import share
from tests.garment.edges import along, press_to_the_end, reach, sections
from tests.garment.paper import Paper, plan_for
from tests.garment.test_consequences import crew_neck
from tests.recipe_texts import place, recipe, section, step


@pytest.mark.parametrize(
    ("spots", "target", "presses", "counted", "said"),
    [
        (40, 30, 15, 15 - 3, "Then increase 2 evenly in row 1."),
        (40, 30, 15, 15 + 2, "Then decrease 3 evenly in row 1."),
        (12, 12, 6, 6 - 2, "From row 7: every row. Then increase 2 evenly in row 1."),
        (40, 39, 13, 13 - 2, "Then increase 2 evenly in row 1."),
        (8, 6, 6, 4, "Increase 2 evenly in row 1"),
    ],
)
def test_the_first_round_is_said_in_plain_numbers(
    spots: int, target: int, presses: int, counted: int, said: str
) -> None:
    """First how the rest is picked up, then what the first row makes of it; at the end of the edge that alone."""
    view = recount_view(along(spots, target).press(presses).state, counted, "loops")
    row = next(one for one in view.answers.rows if one.made)
    assert row.text == "Fix it in row 1" or presses == target
    assert (row.more or row.text).endswith(said)


def test_taking_it_all_out_is_said_kindly() -> None:
    """Where nothing before the first loop can stay, it is begun again; no row 0 is spoken of."""
    view = recount_view(along(40, 30).press(15).state, 2, "loops")
    assert "Rip it all out; start again after row 1" in [one.text for one in view.answers.rows]
    view = recount_view(along(5, 3).press(1).state, 3, "loops")
    assert "Rip it all out; start again at the beginning" in [one.text for one in view.answers.rows]
    assert not any("row 0" in one.text or "row 0" in one.more for one in view.answers.rows)


def test_the_heading_is_the_difference_and_no_verdict() -> None:
    """The count and what was planned stand over the ways; how it lies stands with the way that it is true of."""
    view = recount_view(along(96, 68).press(34).state, 26, "loops")
    assert (view.answers.heading, view.answers.said) == ("8 short", "you counted 26, planned 34")
    assert [(one.text, one.lies, one.note) for one in view.answers.rows] == [
        ("Fix it in row 1", "lies flat", ""),
        ("Rip back to row 19", "lies flat", ""),
        ("Re-space the rest", "will flare", ""),
        ("Carry on as planned", "lies flat", "8 short"),
    ]


@settings(max_examples=share(60))
@given(sections(), st.data())
def test_the_first_way_is_the_safest_and_a_total_off_the_plan_says_so(
    shape: tuple[int, int, str, str], data: st.DataObject
) -> None:
    """No later way is better than the first in every respect; of a total that is not the planned one, by how much.

    Presses off the plan before the count change nothing of that: planned is what the recipe has.
    """
    paper = along(*shape)
    for stray in data.draw(st.lists(st.booleans(), max_size=shape[1])):
        paper.do(Other() if stray else Press())
    answer = data.draw(st.sampled_from(_ANSWERS))
    left = data.draw(st.integers(0, shape[0])) if answer == "rows-left" else None
    try:
        rows = recount_view(paper.state, data.draw(st.integers(0, 2 * shape[0])), answer, left).answers.rows
    except FinishingError:
        return
    for row in rows:
        assert not all(later < first for later, first in zip(risks(row), risks(rows[0]), strict=True))
        assert risks(rows[0]) <= risks(row)
        assert row.total is not None
        assert row.note == ("" if row.total == shape[1] else off_by(row.total - shape[1]))


def test_a_mirrored_front_is_short_twice() -> None:
    """Two short on one front is four short in the band where the other follows it; as many lie flat as before."""
    rows = recount_view(reach(crew_neck(), 12).press(12).state, 10, "loops").answers.rows
    assert {one.text: one.comes_to for one in rows if one.note} == {"Carry on as planned": "100 · 4 short"}
    assert rows[-1].text == "Carry on as planned"


_ANSWERS: tuple[WhyOff, ...] = ("presses", "loops", "rows-left", "half-way")


@settings(max_examples=share(60))
@given(sections(), st.data())
def test_every_row_says_what_really_comes_of_it(shape: tuple[int, int, str, str], data: st.DataObject) -> None:
    """Each way is really taken and the step worked to its end and through the first row of the band.

    The total is what is on the needle then, the increases are those that the plan gains, and the stitches to rip back
    are those that come out; the spots marked as changed are those whose loops differ from the plan.
    """
    pressed = data.draw(st.integers(0, shape[1]))
    counted = data.draw(st.integers(0, 2 * shape[0]))
    answer = data.draw(st.sampled_from(_ANSWERS))
    left = data.draw(st.integers(0, shape[0])) if answer == "rows-left" else None
    for at in range(9):
        paper = along(*shape).press(pressed)
        try:
            view = recount_view(paper.state, counted, answer, left)
        except FinishingError:
            return
        if at == len(view.commands):
            return
        row = view.answers.rows[at]
        paper.did(view.commands[at])
        told, *later = paper.latest
        assert isinstance(told, Recounted)
        out = [one.stitches for one in told.entries if isinstance(one, Posting) and one.to == EDGE]
        assert row.ripped == (sum(out) if view.commands[at].repair == "rip-back" else 0)
        made = [
            sum(one.change for edit in event.edits if isinstance(edit.after, Work) for one in edit.after.shaping)
            for event in later
            if isinstance(event, Replanned)
        ]
        assert row.made == sum(made)
        press_to_the_end(paper).surely(Finish())
        if paper.state.ledger.on("band"):  # on a needle with nothing on it no row is begun
            paper.did(Press())
        assert paper.state.ledger.on("band") == row.total


@settings(max_examples=share(60))
@given(sections(), st.data())
def test_a_count_that_is_far_off_is_doubted_with_a_reason(
    shape: tuple[int, int, str, str], data: st.DataObject
) -> None:
    """More than rows can take or than the section has, or off by more than three and a fifth; else nothing is said."""
    spots, target, *_ = shape
    paper = along(*shape).press(data.draw(st.integers(0, target)))
    counted = data.draw(st.integers(0, 2 * spots))
    try:
        view = recount_view(paper.state, counted)
    except FinishingError:
        return
    off = abs(counted - view.expected)
    far = off > max(3, view.expected / 5) or counted > 2 * view.spot or counted > target > view.expected
    assert bool(view.doubt) == (far and not view.matches)


def test_each_doubt_is_said_in_one_line() -> None:
    """What is most certain first: what the rows can take, what the section has, how far off it is."""
    doubts = [recount_view(along(96, 68).press(34).state, counted).doubt for counted in (95, 70, 26, 42, 33)]
    assert doubts == [
        "47 rows can hold up to 94 stitches",
        "the whole section has only 68 stitches",
        "that is 8 fewer than your presses",
        "that is 8 more than your presses",
        "",
    ]


def test_how_a_side_nobody_counted_lies_is_not_said() -> None:
    """Where the next section is to take what is missing, and nobody knows how long that is, there is no verdict."""
    sides = (section(along=f"{side} edge", stitches=24) for side in ("left", "right"))
    pick_up = step("pick up and knit", "Pick up", *sides, onto="band", ratio="2/3")
    paper = Paper(plan_for(recipe("Two edges", place("band"), pick_up, format=2))).press(21)
    answers = recount_view(paper.state, 21, "edge-ends").answers
    *_, carried = answers.rows
    assert "won't match" in carried.text
    assert carried.verdict is None
    assert carried.more == "Nobody has counted the right edge, so how it will lie isn't known."
    assert answers.rows[0].shows
    assert not answers.rows[answers.first].harms
