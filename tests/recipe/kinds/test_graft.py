"""``graft``."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.ledger import TailEntry
from finishing_tui.craft.pairing import pair
from finishing_tui.recipe.kinds.base import CannotBegin
from finishing_tui.recipe.kinds.graft import CLOSE, PAIR, SET_UP, Graft
from finishing_tui.recipe.stage import entries_between
from tests.recipe.kinds.beginning import after, here, refused

STEP = Graft(title="Graft the underarm", front="body", back="sleeve", tail="underarm")


def test_published_underarm_of_ten_with_an_extra_loop_at_each_end() -> None:
    """10 and 10 with one extra loop at each end of both are 12 pairs (J. Fee, via Chez Lizzie 2013)."""
    start = here({"body": 12, "sleeve": 12}, ["underarm"])
    set_up, pairs = STEP.stages(start)
    assert [item.text for item in set_up.items] == list(SET_UP)
    assert pairs.units == 12
    done = after(STEP, start)
    assert done.live == {}
    assert done.tails == {"underarm": 1}, "shortened once, and not ended"
    assert done.yarns == ()


@given(st.integers(1, 60))
def test_every_loop_is_threaded_twice_and_comes_off_once(pairs: int) -> None:
    """Set-up, pairs and close, move by move on two needles: purlwise before knitwise on the near one, and so on.

    That a near loop is entered first purlwise and then knitwise, and a far loop first knitwise and then purlwise, is
    what makes a row of knit stitches (common practice, no source).
    """
    stage = STEP.stages(here({"body": pairs, "sleeve": pairs}, ["underarm"]))[1]
    moves = [*SET_UP, *(move for unit in range(1, pairs + 1) for move in stage.moves_of(unit))]
    entered: dict[str, list[list[str]]] = {"near": [[] for _ in range(pairs)], "far": [[] for _ in range(pairs)]}
    gone = {"near": 0, "far": 0}
    for move in moves:
        needle = "near" if "near" in move.lower() else "far"
        entered[needle][gone[needle]].append("knitwise" if "knitwise" in move else "purlwise")
        gone[needle] += "slip it off" in move
    assert gone == {"near": pairs, "far": pairs}
    assert entered == {"near": [["purlwise", "knitwise"]] * pairs, "far": [["knitwise", "purlwise"]] * pairs}


def test_the_close_is_named_and_has_two_moves() -> None:
    """All pairs but the last have four moves; the last has two, and says that it closes."""
    stage = STEP.stages(here({"body": 3, "sleeve": 3}, ["underarm"]))[1]
    assert [stage.moves_of(unit) for unit in (1, 2, 3)] == [PAIR, PAIR, CLOSE]
    assert dict(stage.said)[3].startswith("Close")


def test_unequal_needles_are_worked_off_with_two_together() -> None:
    """9 and 11 are 9 pairs, as the sum on its own says it; what is too many stays on its needle to be seen."""
    start = here({"body": 9, "sleeve": 11}, ["underarm"])
    stage = STEP.stages(start)[1]
    assert (stage.units, stage.empties, stage.front, stage.back) == (9, True, "body", "sleeve")
    assert pair(9, 11).text in stage.words
    assert after(STEP, start).live == {"sleeve": 2}


def test_some_pairs_leave_the_rest_live() -> None:
    """A count takes that many of both needles, and shortens the tail at the last of them only."""
    step = Graft(title="Graft some", front="body", back="sleeve", count=4, tail="underarm")
    start = here({"body": 9, "sleeve": 11}, ["underarm"])
    assert after(step, start).live == {"body": 5, "sleeve": 7}
    stage = step.stages(start)[1]
    assert TailEntry("underarm", "shortened") not in entries_between(stage, 0, 4)
    assert stage.closing == (TailEntry("underarm", "shortened"),)


def test_refusals_name_what_is_missing() -> None:
    """No tail, too few stitches, one needle for two, the wrong sides, a needle with more than twice the other."""
    both = {"body": 10, "sleeve": 10}
    assert "'underarm'" in refused(STEP, here(both))
    assert "body is empty; its stitches were to be grafted" in refused(STEP, here({"sleeve": 3}, ["underarm"]))
    many = Graft(title="Graft", front="body", back="sleeve", count=100_000, tail="underarm")
    assert "body has 10 stitches, 100000 were" in refused(many, here(both, ["underarm"]))
    same = Graft(title="Graft", front="body", back="body", tail="underarm")
    assert "both are the body" in refused(same, here(both, ["underarm"]))
    assert "5 on the front needle and 11" in refused(STEP, here({"body": 5, "sleeve": 11}, ["underarm"]))
    assert "wrong sides together" in refused(STEP, here(both, ["underarm"], together="right"))


def test_what_would_mend_a_refusal_does() -> None:
    """The entries a refusal carries let the step begin."""
    for start in (here({"body": 4, "sleeve": 4}), here({"body": 4, "sleeve": 4}, ["underarm"], together="right")):
        with pytest.raises(CannotBegin) as raised:
            STEP.stages(start)
        mended = start.ledger.enter(*raised.value.mend)
        assert STEP.stages(here({"body": 4, "sleeve": 4}, mended.tails, together=mended.posture.together))
