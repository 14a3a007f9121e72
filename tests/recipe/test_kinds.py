"""Each kind of step does to the ledger what its row of the design's table says, in examples worked by hand."""

from dataclasses import replace
from typing import Any, Literal

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import (
    EDGE,
    OFF,
    HoleEntry,
    Ledger,
    MarkerEntry,
    Posture,
    TailEntry,
    YarnEntry,
    opened,
)
from finishing_tui.craft.rhythm import draw
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.base import CannotBegin, Here
from finishing_tui.recipe.stage import HAND, Stage, entries_between, whole
from tests.strategies import model_of

TEXTS = {"front": "front needle", "back": "back needle", "neck": "neck needle", "holder": "front holder"}


def here(ledger: Ledger | None = None, **live: int) -> Here:
    """Return where a step begins: these stitches, no numbers, one size."""
    return Here(size=0, numbers={}, ledger=ledger or opened(live), texts=TEXTS)


def stages(start: Here, do: str, **keys: Any) -> tuple[Stage, ...]:
    """Return the stages of a step with these keys (``from_`` for ``from``)."""
    table = {key.rstrip("_"): value for key, value in {"title": "The step", **keys}.items()}
    return tuple(model_of(KINDS[do], {"do": do, **table}).stages(start))


def after(start: Here, do: str, **keys: Any) -> Ledger:
    """Return the ledger after the whole step."""
    return start.ledger.enter(*(entry for stage in stages(start, do, **keys) for entry in whole(stage)))


def test_every_kind_is_known_by_its_word() -> None:
    """The word after ``do`` finds the class, and every other word for a kind leads to one."""
    assert all(kind.__dataclass_fields__["do"].default == do for do, kind in KINDS.items())
    assert set(BRITISH.values()) <= set(KINDS)


class TestJoin:
    """Three-needle bind-off: both needles emptied pair by pair (A. Rangel; trade notes, section 5)."""

    def test_all(self) -> None:
        """24 and 24 joined: both empty, 48 off, the last loop fastened off, one tail."""
        ledger = after(here(front=24, back=24), "join", front="front", back="back", tail="left shoulder")
        assert ledger.live == {}
        assert ledger.on(OFF) == 48
        assert ledger.tails == {"left shoulder": 0}

    def test_the_first_pair_binds_nothing_off(self) -> None:
        """One loop of the first pair waits on the working needle; from the second pair on, one is bound off each."""
        stage = stages(here(front=3, back=3), "join", front="front", back="back")[0]
        ledger = opened({"front": 3, "back": 3}).enter(*entries_between(stage, 0, 1))
        assert (ledger.on(HAND), ledger.on("front"), ledger.on("back"), ledger.on(OFF)) == (1, 2, 2, 1)
        ledger = ledger.enter(*entries_between(stage, 1, 2))
        assert (ledger.on(HAND), ledger.on("front"), ledger.on("back"), ledger.on(OFF)) == (1, 1, 1, 3)

    def test_partial_keeps_the_merged_loop(self) -> None:
        """10 of 24 pairs: 14 stay on each, and the merged loop goes to ``keep``."""
        ledger = after(here(front=24, back=24), "join", front="front", back="back", count=10, keep="holder")
        assert ledger.live == {"front": 14, "back": 14, "holder": 1}

    def test_unequal_needles_are_said(self) -> None:
        """25 with 24: 24 pairs, and in words which needle has one more."""
        stage = stages(here(front=25, back=24), "join", front="front", back="back")[0]
        assert stage.units == 24
        assert "two together on the front needle once" in stage.words

    @pytest.mark.parametrize(("ridge", "together"), [("inside", "wrong"), ("outside", "right")])
    def test_the_ridge_needs_the_right_lie(self, ridge: str, together: str) -> None:
        """Right sides together hide the ridge, wrong sides together show it (L. A. Bestor; Kelbourne Woolens)."""
        lying = replace(opened({"front": 2, "back": 2}), posture=Posture(together=together))
        with pytest.raises(CannotBegin, match=f"the {together} sides touch; a ridge on the {ridge} needs"):
            stages(here(lying), "join", front="front", back="back", ridge=ridge)

    def test_new_yarn_needs_a_free_place(self) -> None:
        """Yarn that hangs there already must be cut first, or used."""
        start = here(opened({"front": 2, "back": 2}).enter(YarnEntry("front", "joined")))
        with pytest.raises(CannotBegin, match="working yarn hangs from the front needle already"):
            stages(start, "join", front="front", back="back", yarn="new")
        assert after(start, "join", front="front", back="back").yarns == ()

    def test_two_tails_have_two_names(self) -> None:
        """A tail at the start and one at the end cannot be the same."""
        with pytest.raises(CannotBegin, match="both tails of this step are named 'left'"):
            stages(
                here(front=2, back=2), "join", front="front", back="back", yarn="new", tail="left", start_tail="left"
            )


class TestBindOff:
    """Binding off: the loop beyond those bound off belongs to what comes next (KnittingHelp 134698)."""

    def test_all(self) -> None:
        """88 off; the yarn is cut and leaves a tail."""
        start = here(opened({"neck": 88}).enter(YarnEntry("neck", "joined")))
        ledger = after(start, "bind off", from_="neck", tail="end of neckband")
        assert (ledger.live, ledger.on(OFF), ledger.yarns) == ({}, 88, ())
        assert ledger.tails == {"end of neckband": 0}

    def test_some(self) -> None:
        """20 of 88: 68 stay, the yarn goes on, and the words say whose the loop on the needle is."""
        start = here(opened({"neck": 88}).enter(YarnEntry("neck", "joined")))
        (stage,) = stages(start, "bind off", from_="neck", count=20)
        ledger = start.ledger.enter(*whole(stage))
        assert (ledger.live, ledger.yarns, ledger.tails) == ({"neck": 68}, ("neck",), {})
        assert "belongs to the next stitches" in stage.said[0][1]

    def test_the_last_loop_is_kept(self) -> None:
        """With ``keep`` the last loop stays alive, and the yarn hangs where it is."""
        start = here(opened({"neck": 10}).enter(YarnEntry("neck", "joined")))
        ledger = after(start, "bind off", from_="neck", keep="holder")
        assert (ledger.live, ledger.on(OFF), ledger.yarns) == ({"holder": 1}, 9, ("holder",))

    def test_the_loop_beyond_some_is_kept(self) -> None:
        """20 of 88 with ``keep``: binding off 20 works 21, so 67 stay, and the 21st goes to ``keep`` with the yarn."""
        start = here(opened({"neck": 88}).enter(YarnEntry("neck", "joined")))
        (stage,) = stages(start, "bind off", from_="neck", count=20, keep="holder")
        ledger = start.ledger.enter(*whole(stage))
        assert (ledger.live, ledger.on(OFF)) == ({"neck": 67, "holder": 1}, 20)
        assert (ledger.yarns, ledger.tails) == (("holder",), {})
        assert stage.said[0][1].endswith("put it on the front holder.")
        (stage,) = stages(start, "bind off", from_="neck", count=20, keep="neck")
        assert "belongs to the next stitches" in stage.said[0][1]
        assert start.ledger.enter(*whole(stage)).live == {"neck": 68}

    def test_more_than_there_is(self) -> None:
        """The sentence names the place, what it has and what was wanted."""
        with pytest.raises(CannotBegin, match="the neck needle has 10 stitches, 11 were to be bound off"):
            stages(here(neck=10), "bind off", from_="neck", count=11)


class TestPickUpAndKnit:
    """Picking up along an edge, section by section."""

    SECTIONS = (
        {"along": "left front neck", "spots": 32, "stitches": 24},
        {"from": "holder"},
        {"gap": "corner", "extra": 1},
        {"along": "right front neck", "spots": 32, "stitches": 24, "mirrors": "left front neck"},
    )

    def begin(self, **keys: Any) -> tuple[Stage, ...]:
        """Return the stages with 16 held stitches."""
        return stages(here(holder=16), "pick up and knit", onto="neck", section=list(self.SECTIONS), **keys)

    def test_the_whole_edge(self) -> None:
        """24 + 16 + 1 + 24 are 65; 49 come from the edge, the hole is open, and new yarn has left a tail."""
        ledger = opened({"holder": 16})
        for stage in self.begin(tail="start of neckband"):
            ledger = ledger.enter(*whole(stage))
        assert ledger.live == {"neck": 65}
        assert ledger.on(EDGE) == -16 - 49
        assert (ledger.holes, ledger.yarns, ledger.tails) == (("corner",), ("neck",), {"start of neckband": 0})

    def test_the_second_side_mirrors_the_first(self) -> None:
        """The rhythm of the second is that of the first, walked from the other end."""
        first, _, _, second = self.begin()
        assert first.rhythm is not None
        assert second.rhythm is not None
        assert draw(second.rhythm) == draw(first.rhythm)[::-1]

    def test_recounts_are_due_at_the_half(self) -> None:
        """In sections of 12 spots or more, unless the recipe says none."""
        assert [stage.halts for stage in self.begin()] == [(16,), (), (), (16,)]
        assert all(stage.halts == () for stage in self.begin(recount="none"))

    def test_left_handed_from_the_other_end(self) -> None:
        """The sections come in reverse order, and the side walked second still mirrors the first."""
        start = replace(here(holder=16), hand="left")
        walked = stages(start, "pick up and knit", onto="neck", section=list(self.SECTIONS))
        assert [stage.title for stage in walked] == ["right front neck", "corner", "front holder", "left front neck"]
        assert walked[0].rhythm is not None
        assert walked[3].rhythm is not None
        assert draw(walked[3].rhythm) == draw(walked[0].rhythm)[::-1]

    @pytest.mark.parametrize("hand", ["right", "left"])
    def test_a_marker_goes_in_at_the_turn_for_either_hand(self, hand: Literal["right", "left"]) -> None:
        """A marker between two edges lies between their stitches, from whichever end they are walked."""
        section = [
            {"along": "one edge", "spots": 8, "stitches": 6, "marker": "turn"},
            {"along": "other edge", "spots": 8, "stitches": 6},
        ]
        start = replace(here(), hand=hand)
        first, turn, second = stages(start, "pick up and knit", onto="neck", section=section)
        before = start.ledger.enter(*whole(first))
        assert before.markers == ()
        assert (turn.unit, turn.units, turn.act) == ("item", 1, "mark")
        assert before.enter(*whole(turn), *second.opening).markers == ("turn",)

    @pytest.mark.parametrize(("into", "off", "edge"), [(14, 2, 0), (16, 0, 0), (18, 0, 2)])
    def test_held_stitches_worked_into_another_number(self, into: int, off: int, edge: int) -> None:
        """16 held stitches become 14 by working two together twice, or 18 by making two."""
        section = [{"from": "holder", "stitches": into}]
        ledger = after(here(holder=16), "pick up and knit", onto="neck", section=section)
        assert (ledger.live, ledger.on(OFF), ledger.on(EDGE)) == ({"neck": into}, off, -16 - edge)

    def test_without_gauge_three_of_four(self) -> None:
        """32 rows without a number or a gauge give 24 (Studio Knits, ch. 23: 3 of 4)."""
        (stage,) = stages(here(), "pick up and knit", onto="neck", section=[{"along": "edge", "spots": 32}])
        assert stage.target == 24


class TestWork:
    """Rounds with shaping (fiknits 2014: a V mitre takes 2 a decrease round)."""

    def test_every_round(self) -> None:
        """An inside mitre of 31: 31, 29, 27, 25 (easycrochetpattern)."""
        shaping = [{"every": 1, "from": 2, "change": -2}]
        (stage,) = stages(here(neck=31), "work", on="neck", rounds=4, shaping=shaping)
        ledger = opened({"neck": 31})
        seen = []
        for done in range(4):
            ledger = ledger.enter(*entries_between(stage, done, done + 1))
            seen.append(ledger.on("neck"))
        assert seen == [31, 29, 27, 25]
        assert [words.split(": ")[1] for _, words in stage.said] == ["leaves 29", "leaves 27", "leaves 25"]

    def test_two_shapings_in_one_round(self) -> None:
        """Both are said, and the ledger gets the sum."""
        shaping = [{"round": 2, "change": -2, "at": "at the front"}, {"round": 2, "change": 4}]
        (stage,) = stages(here(neck=10), "work", on="neck", rounds=2, shaping=shaping)
        assert after(here(neck=10), "work", on="neck", rounds=2, shaping=shaping).on("neck") == 12
        assert stage.said == ((2, "decrease 2 at the front; increase 4: makes 12"),)

    @pytest.mark.parametrize(
        "keys",
        [
            {},
            {"rounds": 2, "rows": 2},
            {"rounds": 2, "shaping": [{"round": 3, "change": 1}]},
            {"rounds": 2, "shaping": [{"round": 1, "change": -11}]},
            {"rounds": 2, "shaping": [{"change": 1}]},
        ],
    )
    def test_what_cannot_be_worked(self, keys: dict[str, Any]) -> None:
        """Neither or both of rounds and rows, shaping outside of them, more decreases than stitches: a sentence."""
        with pytest.raises(FinishingError):
            stages(here(neck=10), "work", on="neck", **keys)


def test_new_yarn_goes_with_the_loop_that_is_kept() -> None:
    """Where new yarn is joined and the last loop kept on another place, the yarn hangs from there and nowhere else."""
    joined = after(here(front=4, back=4), "join", front="front", back="back", yarn="new", keep="neck")
    assert (joined.live, joined.yarns) == ({"neck": 1}, ("neck",))
    bound_off = after(here(front=4), "bind off", **{"from": "front"}, yarn="new", keep="neck")
    assert (bound_off.live, bound_off.yarns) == ({"neck": 1}, ("neck",))


def test_moving_takes_the_yarn_along_only_with_all() -> None:
    """The yarn hangs from the last stitch, so it goes when nothing stays."""
    start = here(opened({"neck": 10}).enter(YarnEntry("neck", "joined")))
    assert after(start, "move", from_="neck", to="holder", count=4).yarns == ("neck",)
    moved = after(start, "move", from_="neck", to="holder")
    assert (moved.live, moved.yarns) == ({"holder": 10}, ("holder",))


def test_loops_lifted_beside_a_gap_use_no_yarn() -> None:
    """One loop at each end: 10 become 12 (J. Fee, via Chez Lizzie 2013)."""
    ledger = after(here(neck=10), "pick up", onto="neck", count=1, at="before")
    assert after(here(ledger), "pick up", onto="neck", count=1).live == {"neck": 12}
    assert ledger.yarns == ()


def test_counting_enters_nothing() -> None:
    """A count that agrees leaves the ledger alone; one that differs is the recount's business."""
    assert after(here(neck=7), "count", place="neck", count=9) == opened({"neck": 7})


def test_tails_are_shortened_by_sewing_and_ended_by_weaving_in() -> None:
    """A hole closed with a tail leaves the tail; weaving in all tails leaves none; one named twice is woven once."""
    start = opened({}, ["left", "right"]).enter(HoleEntry("corner", "made"))
    closed = after(here(start), "close hole", hole="corner", tail="left")
    assert (closed.holes, closed.tails) == ((), {"left": 1, "right": 0})
    assert after(here(closed), "weave in").tails == {}
    assert after(here(closed), "weave in", tails=["left", "left"]).tails == {"right": 0}


def test_markers_go_in_once_and_come_out_once() -> None:
    """Marked twice, or unmarked when it is not there, is refused by name."""
    marked = after(here(), "mark", marker="side")
    assert marked == Ledger().enter(MarkerEntry("side", "in"))
    assert after(here(marked), "unmark", marker="side") == Ledger()
    with pytest.raises(CannotBegin, match="'side' is in the work already"):
        stages(here(marked), "mark", marker="side")
    edge = {"along": "front", "spots": 12, "stitches": 8, "marker": "side"}
    with pytest.raises(CannotBegin, match="'side' is in the work already"):
        stages(here(marked), "pick up and knit", onto="neck", section=[edge])
    with pytest.raises(CannotBegin, match="'side' is in the work already"):
        stages(here(), "pick up and knit", onto="neck", section=[edge, edge | {"along": "back"}])
    with pytest.raises(CannotBegin, match="no marker named 'side'"):
        stages(here(), "unmark", marker="side")


def test_cutting_leaves_a_tail() -> None:
    """The yarn is cut where it hangs; where two hang it cannot be told which."""
    one = Ledger().enter(YarnEntry("neck", "joined"))
    assert after(here(one), "cut", tail="end", length="40 cm") == Ledger().enter(TailEntry("end", "made"))
    with pytest.raises(CannotBegin, match="hangs from the front needle and the neck needle"):
        stages(here(one.enter(YarnEntry("front", "joined"))), "cut", tail="end")


def test_the_lie_holds_until_the_next_arranging() -> None:
    """What touches is said anew each time; which side faces stays until it is changed."""
    first = after(here(), "arrange", facing="wrong", together="right")
    assert first.posture == Posture(facing="wrong", together="right")
    assert after(here(first), "arrange").posture == Posture(facing="wrong")


def test_checks_and_blocking_move_nothing() -> None:
    """A check ticks off what is to be seen, with the counts it compares; blocking asks for what it measures."""
    start = here(front=12, back=13)
    (stage,) = stages(start, "check", items=["No twisted stitches."], same=["front", "back"], over_the_head=True)
    assert [item.text for item in stage.items] == [
        "No twisted stitches.",
        "NOT the same number on each: front needle 12, back needle 13.",
        "The neck goes over the head without force.",
    ]
    assert after(start, "check", items=["x"]) == start.ledger
    assert [stage.unit for stage in stages(start, "block", to="50 cm")] == ["item", "value"]
    assert after(start, "block", to="50 cm") == start.ledger
