"""A small garment with each kind of step, worked to its end by presses and enter, through the journal and back."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path

import pytest

from finishing_tui.garment.commands import Finish, Other, Press, TakeMeasure
from finishing_tui.garment.hand import InHand
from finishing_tui.glance import Face, ItemFace, PairFace, RoundFace, StitchFace, ValueFace, glance
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.reader import read_text

NOW = datetime(2024, 5, 1, 12, tzinfo=UTC)

HEAD = """
format = 1
title  = "Small garment"
sizes  = ["one"]
tails  = ["long tail"]

[gauge]
stitches = 20
rows     = 28
over     = "10 cm"

[place.band]
text = "band needle"
kind = "needle"
live = {band}

[place.other]
text = "other needle"
kind = "needle"
live = {other}
"""

OFF = """
[[step]]
do    = "bind off"
title = "Bind off"
from  = "band"
"""

WEAVE = """
[[step]]
do    = "weave in"
title = "Weave in"
"""


def recipe(step: str, *, band: int = 0, other: int = 0, off: bool = True) -> str:
    """Return a recipe whose one interesting step is ``step``; what it leaves on the band is bound off."""
    return HEAD.format(band=band, other=other) + f"\n[[step]]\n{step}\n" + (OFF if off else "") + WEAVE


RECIPES = {
    "cast on": recipe('do = "cast on"\ntitle = "Cast on"\nonto = "band"\ncount = 6\nexpect = { band = 6 }'),
    "graft": recipe(
        'do = "graft"\ntitle = "Graft"\nfront = "band"\nback = "other"\ntail = "long tail"', band=5, other=5, off=False
    ),
    "unequal graft": recipe(
        'do = "graft"\ntitle = "Graft"\nfront = "band"\nback = "other"\ntail = "long tail"\nunequal = true',
        band=5,
        other=7,
        off=False,
    ),
    "seam": recipe(
        'do = "seam"\ntitle = "Sew"\ntail = "long tail"\n'
        'sides = [{ spots = 6, unit = "stitch", along = "sleeve top" }, { spots = 8, along = "armhole" }]',
        off=False,
    ),
    "short rows": recipe(
        'do = "work"\ntitle = "Slope"\non = "band"\nrows = 6\n'
        "short_rows = { first = 3, step = 2, times = 2 }\nexpect = { band = 20 }",
        band=20,
    ),
    "shape": recipe('do = "shape"\ntitle = "Shape"\non = "band"\nto = 24\nexpect = { band = 24 }', band=20),
    "buttonholes": recipe(
        'do = "buttonholes"\ntitle = "Holes"\non = "band"\nholes = 3\nwidth = 2\nfirst = 3\nexpect = { band = 20 }',
        band=20,
    ),
    "yarn overs": recipe(
        'do = "buttonholes"\ntitle = "Holes"\non = "band"\nholes = 3\nfirst = 3\nbetween = 5\nmethod = "yarn over"\n'
        "expect = { band = 20 }",
        band=20,
    ),
    "measure": recipe(
        'do = "measure"\ntitle = "Measure"\nwhat = "the band"\nvalue = "24.5 cm"\ntolerance = "1 cm"', off=False
    ),
    "sew on": recipe(
        'do = "sew on"\ntitle = "Sew on"\nwhat = "button"\ncount = 3\nmind = "Small parts: a choking hazard."',
        off=False,
    ),
    "slope and length": recipe(
        'do = "pick up and knit"\ntitle = "Pick up"\nonto = "band"\n'
        '[[step.section]]\nalong = "neck"\nslope = "1 stitch every 2 rows, 5 times, then 4 rows straight"\n'
        '[[step.section]]\nalong = "front"\nlength = "5 cm"\nspots = 14'
    ),
}
"""By what they show; each is balanced, so that nothing is left in the ledger at the end."""


@contextmanager
def in_hand(folder: Path, text: str) -> Iterator[InHand]:
    """Take the garment after the recipe ``text`` in hand, and put it down in the end."""
    (folder / "recipe.toml").write_text(text, encoding="utf-8")
    garment = 'format = 1\nid = "small"\ntitle = "small garment"\nrecipe = "recipe.toml"\nsize = "one"\n'
    (folder / "garment.toml").write_text(garment, encoding="utf-8")
    hand = InHand.open(folder)
    try:
        hand.pick_up()
        yield hand
    finally:
        hand.put_down()


def do_next(hand: InHand) -> Face:
    """Do the next thing as the hands would, and return the face there was before it."""
    face, standing = glance(hand.state, NOW).face, hand.state.standing
    assert standing is not None
    work = standing.work
    assert work is not None
    if work.complete:
        command: Press | Finish | TakeMeasure | Other = Finish()
    elif work.stages[work.at].unit == "value":
        command = TakeMeasure("24.5 cm")
    else:
        stage = work.stages[work.at]
        front, back = hand.state.ledger.on(stage.front), hand.state.ledger.on(stage.back)
        command = Other(stage.front if front > back else stage.back) if front != back and stage.empties else Press()
    assert hand.do(command) is None
    return face


@pytest.mark.parametrize("name", RECIPES)
def test_worked_to_its_end_nothing_is_left(name: str, tmp_path: Path) -> None:
    """Presses and enter finish every step, the ledger is empty, and the journal leads to the same state again."""
    with in_hand(tmp_path, RECIPES[name]) as hand:
        for _ in range(200):
            if hand.state.current is None:
                break
            do_next(hand)
        assert [standing.status for standing in hand.state.steps] == ["done"] * len(hand.state.steps)
        assert hand.state.ledger.empty
        steps, ledger = hand.state.steps, hand.state.ledger
    again = InHand.open(tmp_path, look=True)
    assert (again.state.steps, again.state.ledger) == (steps, ledger)
    again.close()


@pytest.mark.parametrize("name", RECIPES)
def test_everything_can_be_taken_back(name: str, tmp_path: Path) -> None:
    """Taken back press by press to the beginning, the garment stands as it stood, and put back as it was."""
    with in_hand(tmp_path, RECIPES[name]) as hand:
        seen = [(hand.state.steps, hand.state.ledger, hand.state.current)]
        while hand.state.current is not None:
            do_next(hand)
            seen.append((hand.state.steps, hand.state.ledger, hand.state.current))
        for before in reversed(seen[:-1]):
            assert hand.take_back() is None
            assert (hand.state.steps, hand.state.ledger, hand.state.current) == before
        for after in seen[1:]:
            assert hand.put_back() is None
            assert (hand.state.steps, hand.state.ledger, hand.state.current) == after


def faces(tmp_path: Path, name: str) -> list[Face]:
    """Return the faces of the step that a recipe is about, one for each press."""
    with in_hand(tmp_path, RECIPES[name]) as hand:
        found = []
        while hand.state.current == 0 and (work := hand.state.steps[0].work) is not None and not work.complete:
            found.append(do_next(hand))
        return found


def test_a_graft_shows_its_moves_pair_by_pair(tmp_path: Path) -> None:
    """The set-up is two items; every pair has four moves and the last two; both needles run empty side by side."""
    shown = faces(tmp_path, "graft")
    assert [type(face) for face in shown] == [ItemFace] * 2 + [PairFace] * 5
    pairs = [face for face in shown if isinstance(face, PairFace)]
    assert [len(face.moves) for face in pairs] == [4, 4, 4, 4, 2]
    assert [(face.front_left, face.back_left) for face in pairs] == [(left, left) for left in (5, 4, 3, 2, 1)]
    assert [bool(face.said) for face in pairs] == [False] * 4 + [True]


def test_a_seam_shows_the_bars_left_on_both_edges(tmp_path: Path) -> None:
    """6 stitches to 8 rows: what is left of both edges runs out together, and a pair with two rows says so."""
    shown = [face for face in faces(tmp_path, "seam") if isinstance(face, PairFace)]
    assert [face.front_left for face in shown] == [6, 5, 4, 3, 2, 1]
    assert (shown[0].front, shown[0].back, shown[0].back_left) == ("sleeve top", "armhole", 8)
    rows = [one.back_left - other.back_left for one, other in pairwise(shown)]
    assert sum(rows) + shown[-1].back_left == 8
    assert [bool(face.said) for face in shown[:-1]] == [taken == 2 for taken in rows]


@pytest.mark.parametrize(
    ("name", "sort", "presses"),
    [
        ("cast on", StitchFace, 6),
        ("short rows", RoundFace, 6),
        ("shape", ItemFace, 4),
        ("buttonholes", ItemFace, 6),
        ("yarn overs", ItemFace, 3),
        ("measure", ValueFace, 1),
        ("sew on", ItemFace, 3),
    ],
)
def test_each_has_the_face_of_its_unit(name: str, sort: type, presses: int, tmp_path: Path) -> None:
    """A press is what design.md says it is: one stitch, row, group, item or value, each with words."""
    shown = faces(tmp_path, name)
    assert [type(face) for face in shown] == [sort] * presses
    assert all(getattr(face, "words", "") for face in shown)


def test_every_new_kind_is_among_them() -> None:
    """Each kind that this file is about is in one of its recipes."""
    kinds = {step.do for text in RECIPES.values() for step in read_text(text, "a recipe of the tests").step}
    assert {"cast on", "graft", "seam", "work", "shape", "buttonholes", "measure", "sew on"} <= kinds <= set(KINDS)
