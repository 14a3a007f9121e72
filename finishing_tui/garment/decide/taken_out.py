"""The ledger once work is taken out: what each step entered is taken out of what is there now.

Two steps may have been worked by turns, and stitches may have been counted or put right meanwhile. So what later steps
entered is taken out again, latest first, and never is the ledger from before a step put back where another step has
gone on since: that would wipe out the work of the other without a word.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import OUTSIDE, Entry, Ledger, Posting, Unbalanced
from finishing_tui.craft.words import plural
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached, StepWork


class CannotTakeOut(FinishingError):
    """More is to be taken out of a place than it holds, and which of two steps made what is there is not known."""


@dataclass(frozen=True, slots=True)
class _Worked:
    """What a step did: the ledger ``before`` it, how many stitches each place won or lost, and all other entries.

    ``by_turns``: a step begun earlier was gone on with after this one was begun.
    """

    before: Ledger
    net: Mapping[str, int]
    others: tuple[Entry, ...]
    by_turns: bool


def taken_out(state: State, step: int, after: StepWork, fell: Sequence[int]) -> Ledger:
    """Return the ledger once ``step`` is taken out to ``after`` and the steps ``fell``, all begun later, fall with it.

    What was found, made or worked off meanwhile falls with the steps that fall, and at its start with this one on
    places that it began empty; but not on a place where another step went on meanwhile, for there it is not known to
    which of the two it belongs. Outside accounts are left as they are. Raises ``CannotTakeOut`` or ``Unbalanced``.
    """
    kept = [_worked(state, one) for one in state.order[: state.order.index(step)]]
    ripped = [_worked(state, one) for one in (step, *fell)]
    back = _worked(state, step, after)
    begins = all(progress.mark == Reached() for progress in after.progress)
    stitches = {place: count for place, count in state.ledger.stitches.items() if place in OUTSIDE}
    for place in {*state.ledger.live}.union(*(one.net for one in (*ripped, back))) - OUTSIDE:
        shared = any(place in one.net for one in kept)
        held = _held(state.ledger.on(place), place, ripped, back, begins=begins, shared=shared)
        if held < 0:
            there = f"the {state.plan.here(state.ledger).name(place)} has {plural(state.ledger.on(place), 'stitch')}"
            raise CannotTakeOut(f"{there}, fewer than you would rip out. Count it first")
        if held:
            stitches[place] = held
    return replace(_others_left(state.ledger, ripped, back), stitches=MappingProxyType(stitches))


def _worked(state: State, step: int, work: StepWork | None = None) -> _Worked:
    """Return what ``step`` did, by its work as it stands or by ``work``."""
    work = work or state.steps[step].work
    assert work is not None, "you can rip back only steps you have started"
    entries, net = entered(work), dict[str, int]()
    for entry in entries:
        if isinstance(entry, Posting):
            net[entry.source] = net.get(entry.source, 0) - entry.stitches
            net[entry.to] = net.get(entry.to, 0) + entry.stitches
    others = tuple(entry for entry in entries if not isinstance(entry, Posting))
    return _Worked(work.before, net, others, step in state.by_turns)


def _held(now: int, place: str, ripped: Sequence[_Worked], back: _Worked, *, begins: bool, shared: bool) -> int:
    """Return what ``place``, which holds ``now``, then holds; negative where it cannot be.

    ``begins``: the first of ``ripped`` is at its start; ``shared``: a step that stays worked there too.
    """
    here, stands = ripped[0], back.net.get(place, 0)
    touching = [one for one in ripped if place in one.net or (one is here and place in back.net)]
    if not touching:
        return now
    first, left = touching[0], now - sum(one.net.get(place, 0) for one in touching) + stands
    began_with = first.before.on(place)
    if first.by_turns and shared:
        return left
    if len(ripped) > 1 or left < 0 or (begins and not began_with):
        return began_with + stands
    return left


def _others_left(ledger: Ledger, ripped: Sequence[_Worked], back: _Worked) -> Ledger:
    """Return the ledger with tails, markers, holes, yarns and posture as they then are."""
    try:
        for one in reversed(ripped):
            ledger = ledger.leave(*one.others)
        return ledger.enter(*back.others)
    except Unbalanced:
        if ripped[0].by_turns:
            raise
        return back.before.enter(*back.others)
