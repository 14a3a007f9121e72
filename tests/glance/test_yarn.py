"""The yarn that what is left of an edge still takes."""

from datetime import UTC, datetime
from typing import get_args

import pytest

from finishing_tui.craft.yarn import OPERATIONS
from finishing_tui.garment.commands import Finish, Other, Press
from finishing_tui.glance.all_words import all_lines
from finishing_tui.glance.faces import face_of
from finishing_tui.glance.glancing import glance
from finishing_tui.glance.values import ItemFace, PairFace, StitchFace
from finishing_tui.glance.wishes import Units, Wishes
from finishing_tui.glance.yarn import length_at_hole
from tests.garment.edges import reach, work_of
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along, place, recipe, section, step

CM, INCHES = (f'[gauge]\nstitches = 20\nrows = 30\nover = "{over}"\n' for over in ("10 cm", "4 in"))

RECIPE = """
format = 2
title  = "An edge"
sizes  = ["one size"]
tails  = ["long tail"]
{gauge}
[place.one]
text = "one needle"
kind = "needle"
live = 40

[place.other]
text = "other needle"
kind = "needle"
live = 40

[[step]]
title = "The edge"
{step}
"""

BIND = 'do = "bind off"\nfrom = "one"'
JOIN = 'do = "join"\nfront = "one"\nback = "other"'
GRAFT = 'do = "graft"\nfront = "one"\nback = "other"\ntail = "long tail"'
ROWS = 'do = "seam"\ntail = "long tail"\nsides = [{ spots = 60 }, { spots = 60 }]'
RIDGES = 'do = "seam"\ntail = "long tail"\nsides = [{ spots = 30, unit = "ridge" }, { spots = 30, unit = "ridge" }]'


def yarn(step: str, gauge: str = CM, done: int = 0) -> str:
    """Return the sentence after so many presses of ``step`` on 40 stitches (or on 20 cm of rows)."""
    paper = Paper(plan_for(RECIPE.format(gauge=gauge, step=step))).did(*[Press()] * done)
    while work_of(paper.state).stages[work_of(paper.state).at].unit == "item":  # setting a graft up
        paper.did(Press())
    face = face_of(paper.state, work_of(paper.state))
    assert isinstance(face, StitchFace | PairFace)
    return face.yarn


@pytest.mark.parametrize(
    ("step", "operation"),
    [
        (BIND, "bind-off"),
        (BIND + '\nmethod = "tubular"', "tubular bind-off"),
        (JOIN, "three-needle bind-off"),
        (GRAFT, "graft"),
        (ROWS, "mattress seam"),
        (RIDGES, "mattress seam"),
    ],
)
def test_it_is_the_published_multiple_of_the_width(step: str, operation: str) -> None:
    """20 cm of edge (40 stitches, 60 rows, or 30 ridges at 20 by 30) take 20 cm times what is published for it."""
    _, usual, most = OPERATIONS[operation]
    assert f"needed: {20 * usual} cm" in yarn(step)
    assert (f"(up to {20 * most} cm)" in yarn(step)) is (most != usual)
    assert yarn(step).endswith("plus a 15 cm tail.")


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ('length = "30 cm"', "120 cm), plus its 30 cm tail."),
        ('length = "12 in"', "120 cm), plus its 12 in tail."),
        ('say = "Fasten off and leave 30 cm."', "120 cm), plus its tail."),
        ('keep = "other"', "120 cm)."),
        ('say = "Do not leave off here. 3 rows more."', "120 cm), plus a 15 cm tail."),
    ],
)
def test_no_tail_of_ours_stands_beside_the_one_that_the_recipe_leaves(keys: str, said: str) -> None:
    """As long as its key says, or without a number where its words say one; where no yarn is cut there is none."""
    assert yarn(f"{BIND}\n{keys}").endswith(said)


def test_a_length_that_the_recipe_says_is_said_in_the_units_that_are_wanted() -> None:
    """30 cm is 12 in on a tape, rounded up."""
    paper = Paper(plan_for(RECIPE.format(gauge=CM, step=f'{BIND}\nlength = "30 cm"')))
    face = face_of(paper.state, work_of(paper.state), Wishes(units="in"))
    assert isinstance(face, StitchFace)
    assert face.yarn.endswith("plus its 12 in tail.")


def test_it_is_what_is_left_that_counts_rounded_up() -> None:
    """After 30 of 40 stitches 5 cm are left; four times that is 20 cm. After 31 it is 18 cm, said as 20."""
    assert "needed: 20 cm (up to 30 cm)" in yarn(BIND, done=30)
    assert "needed: 20 cm (up to 30 cm)" in yarn(BIND, done=31)
    assert "needed: 15 cm (up to 20 cm)" in yarn(BIND, done=34)


def test_it_is_said_in_the_unit_of_the_gauge() -> None:
    """At 20 stitches in 4 in, 40 are 8 in wide: 32 in for the bind-off, 48 at most, and a tail of 6."""
    assert yarn(BIND, INCHES) == "Yarn still needed: 32 in (up to 48 in), plus a 6 in tail."


def test_where_the_width_is_not_known_nothing_is_said() -> None:
    """No gauge, no length; a sewn bind-off goes by the stretched width, which no gauge tells."""
    assert not yarn(BIND, "")
    assert not yarn(BIND + '\nmethod = "Sewn, loosely"')


def test_it_is_said_in_the_units_that_are_wanted() -> None:
    """The same length in inches, rounded up to whole ones, though the gauge is over centimetres; 1 in is 2.54 cm."""
    paper = Paper(plan_for(RECIPE.format(gauge=CM, step=BIND)))
    said = {}
    for units in get_args(Units):
        face = face_of(paper.state, work_of(paper.state), Wishes(units=units))
        assert isinstance(face, StitchFace)
        said[units] = face.yarn
    assert said["cm"] == said["as given"] == "Yarn still needed: 80 cm (up to 120 cm), plus a 15 cm tail."
    assert said["in"] == "Yarn still needed: 32 in (up to 48 in), plus a 6 in tail."


def test_the_help_has_the_sentence_too() -> None:
    """What the face has no room for at a small screen stands among all the words."""
    paper = Paper(plan_for(RECIPE.format(gauge=CM, step=BIND)))
    lines = all_lines(glance(paper.state, datetime(2024, 5, 1, 12, tzinfo=UTC)))
    assert [line.text for line in lines if line.heading == "yarn"] == [yarn(BIND)]
    assert yarn(BIND)


@pytest.mark.parametrize(("cut", "said"), [("95 cm", ""), ("70 cm", "tight"), ("40 cm", "too short"), ("", "")])
def test_a_tail_that_will_not_do_is_said_before_the_first_pair(cut: str, said: str) -> None:
    """40 pairs are 20 cm and take 80 cm and a tail: 70 is tight, 40 too short; one nobody measured says nothing."""
    length = f'length = "{cut}"\n' if cut else ""
    cuts = f'do = "cut"\ntail = "cut tail"\n{length}'
    graft = '[[step]]\ntitle = "It"\ndo = "graft"\nfront = "one"\nback = "other"\ncount = "all"\ntail = "cut tail"'
    text = RECIPE.format(gauge=CM, step=f"{cuts}\n{graft}")
    paper = Paper(plan_for(text)).press()
    paper.surely(Finish())
    paper.press(2)
    face = face_of(paper.state, work_of(paper.state))
    assert isinstance(face, PairFace)
    assert ("The tail cut tail is" in face.yarn) == bool(said)
    assert said in face.yarn
    paper.press()
    after = face_of(paper.state, work_of(paper.state))
    assert isinstance(after, PairFace)
    assert "The tail" not in after.yarn


HOLES = """
format = 1
title  = "Two corners"
sizes  = ["one size"]
tails  = ["other end"]

[place.band]
text = "band needle"
kind = "needle"

[[step]]
do    = "pick up and knit"
title = "Pick up"
onto  = "band"

  [[step.section]]
  gap   = "left corner"
  extra = 1

  [[step.section]]
  gap   = "right corner"
  extra = 1

[[step]]
do     = "cut"
title  = "Cut the yarn"
tail   = "end"
length = "{length}"

[[step]]
do    = "close hole"
title = "Close the left corner"
hole  = "left corner"
tail  = "end"

[[step]]
do    = "close hole"
title = "Close the right corner"
hole  = "right corner"
tail  = "end"
"""


def at_the_holes(length: str, *first: Press | Other, units: Units = "as given") -> tuple[str, str]:
    """Return the words at both holes, the first of which is closed by ``first``."""
    paper = Paper(plan_for(HOLES.format(length=length)))
    while paper.state.current != 2:
        paper.did(Finish() if paper.state.work is not None and paper.state.work.complete else Press())
    words = []
    for presses in (first, ()):
        face = face_of(paper.state, work_of(paper.state), Wishes(units=units))
        assert isinstance(face, ItemFace)
        assert face.items == (face.words,)
        words.append(face.words)
        if presses:
            paper.did(*presses, Finish())
    return words[0], words[1]


@pytest.mark.parametrize(
    ("length", "verdicts"),
    [
        ("40 cm", ("", "")),
        ("30 cm", ("", "20 cm, tight")),
        ("25 cm", ("25 cm, tight", "15 cm, too short")),
        ("10 cm", ("10 cm, too short", "")),
        ("", ("", "")),
        ("an arm's length", ("", "")),
    ],
)
def test_a_tail_too_short_for_the_hole_is_told_before_it_is_closed(length: str, verdicts: tuple[str, str]) -> None:
    """What is left of it is judged at each hole; where nobody said how long it is nothing is said."""
    for words, verdict in zip(at_the_holes(length, Press()), verdicts, strict=True):
        told = f" The tail end is {verdict} for that: use new yarn or a longer tail." if verdict else ""
        assert words.endswith(f"corner.{told}")


def test_a_hole_closed_with_another_tail_takes_nothing_of_this_one() -> None:
    """30 cm are 30 cm still at the next."""
    assert all("The tail end is" not in words for words in at_the_holes("30 cm", Other("other end")))


def test_a_tail_at_a_hole_is_said_in_the_units_that_are_wanted() -> None:
    """10 in on the needles of one who wants centimeters."""
    assert "The tail end is 25.4 cm, tight" in at_the_holes("10 in", Press(), units="cm")[0]


def test_the_other_tails_at_a_hole_say_how_long_they_are() -> None:
    """As the bind-off left it, less what a hole took of it since; nothing where nobody said."""
    assert at_the_other_tails() == [("30 cm", "enough"), ("20 cm", "tight")]


def at_the_other_tails() -> list[tuple[str, str]]:
    """Return what is known of a tail of 30 cm before and after it closed the first of two holes."""
    picked = step(
        "pick up and knit",
        "Pick up",
        section(gap="one", extra=1),
        along("edge", 8, 6),
        section(gap="two", extra=1),
        onto="band",
        tail="start",
    )
    off = step("bind off", "Off", from_="band", tail="end", length="30 cm")
    closing = (step("close hole", f"Close {hole}", hole=hole, tail="start") for hole in ("one", "two"))
    ends = step("weave in", "Weave in", tails="all")
    paper = Paper(plan_for(recipe("Holes", place("band"), picked, off, *closing, ends, format=2)))
    reach(paper, 2)
    assert length_at_hole(paper.state, "start") == ("", "enough")
    before = length_at_hole(paper.state, "end")
    paper.did(Other("end")).surely(Finish())
    return [before, length_at_hole(paper.state, "end")]
