"""The commands from which each stored journal was made. To see what is in a journal, read its script."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from finishing_tui.garment.commands import (
    AlreadyAt,
    ChooseMirror,
    ChoosePace,
    Command,
    Finish,
    InsertStep,
    LeaveOut,
    Other,
    PinEdge,
    Press,
    PutRight,
    Replan,
    TakeCount,
    TakeMeasure,
    TakeOut,
    TakeUp,
    WriteNote,
)
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.stops import stops
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.count import CountStitches
from tests.garment.recipes import EDGE, NECKBAND, UNCOUNTED, UNEQUAL


@dataclass(frozen=True)
class Script:
    """A recipe, a size, and what is done at each sitting; a sitting ends by putting down unless it is ``cut``."""

    recipe: str
    size: str
    sittings: tuple[Callable[[InHand], None], ...]
    cut: tuple[int, ...] = ()


def done(hand: InHand, *commands: Command) -> None:
    """Carry commands out; one that is asked again is confirmed."""
    for command in commands:
        refusal = hand.do(command)
        if refusal is not None:
            assert refusal.again is not None, (command, refusal)
            assert hand.do(refusal.again) is None


def step(hand: InHand) -> None:
    """Work the step under the needles to its end and finish it."""
    assert hand.state.current is not None
    if hand.state.steps[hand.state.current].work is None:
        done(hand, Press())
    while (work := hand.state.steps[hand.state.current].work) is not None and not work.complete:
        done(hand, TakeMeasure("58.5") if work.stages[work.at].unit == "value" else Press())
    done(hand, Finish())


def until(hand: InHand, stage: int) -> None:
    """Press until the part with that index is under the needles."""
    while (work := hand.state.standing.work if hand.state.standing else None) is not None and work.at < stage:
        done(hand, Press())


def _neckband_first(hand: InHand) -> None:
    for _ in range(4):
        step(hand)
    done(hand, WriteNote("Counted at the kitchen table."), TakeCount(7), Finish(), Finish(), Finish())
    done(hand, *[Press()] * 4, Other(), *[Press()] * 5)
    for _ in range(3):
        assert hand.take_back() is None
    for _ in range(2):
        assert hand.put_back() is None
    until(hand, 2)
    done(hand, TakeCount(4), Finish(), ChooseMirror(as_worked=False), ChoosePace("run"), *[Press()] * 3)


def _neckband_second(hand: InHand) -> None:
    done(hand, ChoosePace("spot"), Press(), Press(), TakeUp(7), Press(), TakeUp(6))
    step(hand)
    step(hand)
    step(hand)
    done(hand, TakeOut(8, 0, 2), Press(), Finish())
    step(hand)
    done(hand, TakeOut(6, 4, 3), ChoosePace("loop"))
    step(hand)
    step(hand)
    step(hand)
    done(hand, LeaveOut(9), TakeUp(9))
    step(hand)
    step(hand)
    step(hand)
    assert hand.take_back() is None
    assert hand.put_back() is None
    done(hand, AlreadyAt(15), Press(), Finish())
    step(hand)
    done(hand, WriteNote("The ends are long enough."))
    step(hand)
    done(hand, Press(), TakeMeasure("58.5"))


def _edge_first(hand: InHand) -> None:
    done(hand, *[Press()] * 5, Other(), *[Press()] * 18, TakeCount(23), TakeCount(25, answer="presses"))
    done(hand, TakeCount(24, answer="loops", repair="space-the-rest"), *[Press()] * 3)
    done(hand, ChoosePace("run"), Press(), Other(), Press(), ChoosePace("loop"), TakeOut(0, 0, 30))
    done(hand, TakeCount(22, answer="half-way", repair="first-round"), *[Press()] * 2)
    done(hand, TakeCount(20, answer="rows-left", left=30, repair="rip-back"), *[Press()] * 4)


def _edge_second(hand: InHand) -> None:
    plan = hand.state.plan
    done(hand, Replan(replace(plan, own={}), "nothing, but looked over again"))
    until(hand, 1)
    done(hand, TakeCount(40, answer="loops", repair="first-round"), *[Press()] * 3, Other())


def _edge_third(hand: InHand) -> None:
    assert hand.take_back() is None
    done(hand, Finish(), *[Press()] * 2)


def _held_down(hand: InHand, times: int) -> None:
    """Press as a key does that is held down: known for one after six presses, it stops at a count and at an end."""
    since = hand.known
    for at in range(times):
        if at == 6:
            hand.hold(since)
        if at < 6 or not stops(hand.state):
            assert hand.do(Press(), joins=at >= 6) is None


def _edge_held(hand: InHand) -> None:
    done(hand, *[Press()] * 3)
    _held_down(hand, 12)
    assert hand.take_back() is None
    assert hand.put_back() is None
    done(hand, Press(), WriteNote("The key was held down."))
    _held_down(hand, 60)
    done(hand, *[Press()] * 3)
    _held_down(hand, 9)
    assert hand.take_back() is None
    _held_down(hand, 9)


def _uncounted(hand: InHand) -> None:
    """Seven edges nobody counted: what can be said with a count of each, and each way in which one ends."""
    done(hand, PinEdge(4), *[Press()] * 6, TakeCount(7), *[Press()] * 5, TakeCount(12), *[Press()] * 12)
    done(hand, *[Press()] * 12, TakeCount(12, answer="rows-to-spare", left=2), *[Press()] * 12)
    done(hand, *[Press()] * 10, TakeCount(10, answer="past-half", repair="as-it-is"), *[Press()] * 2)
    done(hand, TakeCount(12, answer="ends-at", left=22), *[Press()] * 12)
    done(hand, *[Press()] * 8, TakeCount(8, answer="before-half", repair="as-it-is"), *[Press()] * 4)
    done(hand, TakeCount(12, answer="not-known", repair="as-it-is"), *[Press()] * 11)
    done(hand, TakeCount(23, answer="edge-ends", repair="double-last"))
    done(hand, *[Press()] * 23, TakeCount(23, answer="edge-ends", repair="strand"))
    done(hand, *[Press()] * 22, TakeCount(22, answer="edge-ends", repair="next-section"))
    done(hand, *[Press()] * 25, TakeCount(25, answer="edge-ends", repair="as-it-is"))
    assert hand.take_back() is None
    assert hand.put_back() is None


def _unequal(hand: InHand) -> None:
    done(
        hand, Press(), Press(), Other("back"), Finish(), Press(), TakeCount(7, "back"), PutRight("as-it-is", "back", 0)
    )
    while (work := hand.state.steps[1].work) is not None and not work.complete:
        ledger = hand.state.ledger
        done(hand, Other("back") if ledger.on("back") > ledger.on("front") else Press())
    done(hand, Finish())
    step(hand)
    step(hand)


def _inserted(hand: InHand) -> None:
    for _ in range(6):
        step(hand)
    done(hand, *[Press()] * 5, InsertStep(CountStitches(title="Count the shoulders once more", place="front"), 1))
    done(hand, InsertStep(Check(title="Try it on", items=("It lies well.", "It is soft.")), 7))
    step(hand)
    done(hand, Press(), WriteNote("A little tight."), Press(), Finish())
    step(hand)
    done(hand, TakeOut(7, 0, 3), InsertStep(Check(title="By mistake", items=("It is not.",)), 3))
    assert hand.take_back() is None
    step(hand)
    done(hand, Press())


def _other_tail(hand: InHand) -> None:
    """Two holes: the first closed with two other tails in turn, taken back between, the second as planned."""
    for _ in range(15):
        step(hand)
    done(hand, Other("shoulder"))
    assert hand.take_back() is None
    done(hand, Other("end of neckband"), Finish())
    assert hand.take_back() is None
    assert hand.take_back() is None
    assert hand.put_back() is None
    assert hand.put_back() is None
    done(hand, Press(), Finish(), TakeOut(15, 0, 0), Other("end of bind-off"), Finish(), Press())


SCRIPTS: dict[str, Script] = {
    "1-neckband": Script(NECKBAND, "large", (_neckband_first, _neckband_second)),
    "1-edge": Script(EDGE, "one", (_edge_first, _edge_second, _edge_third), cut=(1,)),
    "1-unequal": Script(UNEQUAL, "one", (_unequal,)),
    "1-neckband-ids": Script(NECKBAND, "large", (_neckband_first, _neckband_second)),
    "1-edge-ids": Script(EDGE, "one", (_edge_first, _edge_second, _edge_third), cut=(1,)),
    "1-unequal-ids": Script(UNEQUAL, "one", (_unequal,)),
    "1-inserted": Script(NECKBAND, "large", (_inserted,)),
    "1-neckband-labels": Script(NECKBAND, "large", (_neckband_first, _neckband_second)),
    "1-edge-labels": Script(EDGE, "one", (_edge_first, _edge_second, _edge_third), cut=(1,)),
    "1-unequal-labels": Script(UNEQUAL, "one", (_unequal,)),
    "1-inserted-labels": Script(NECKBAND, "large", (_inserted,)),
    "1-edge-held": Script(EDGE, "one", (_edge_held,)),
    "1-uncounted": Script(UNCOUNTED, "one", (_uncounted,)),
    "1-other-tail": Script(NECKBAND, "large", (_other_tail,)),
}
"""The scripts by the name of the journal."""
