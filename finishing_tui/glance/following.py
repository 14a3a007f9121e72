"""What a count changes further on, and what may be done about it, in words."""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.garment.commands import PutRight, TakeCount
from finishing_tui.garment.consequences import consequences, given_up
from finishing_tui.garment.explained import explained
from finishing_tui.garment.repairs import Mend, Told
from finishing_tui.garment.state import State
from finishing_tui.glance.answers import AGAIN, Answer, Answers, off_by, wrong_with
from finishing_tui.glance.counting import far_off
from finishing_tui.glance.later import cut, later_lines


@dataclass(frozen=True, slots=True)
class Following:
    """What a count changes, or a step that is finished or left out although there was more to do.

    ``lines`` name the later numbers and the steps that cannot go as planned; ``answers``: what may be done about it,
    the safest first, and ``does`` what does each. Where ``undo`` says so, that is to take back what was done, and then
    to do the command, if there is one.
    """

    lines: tuple[str, ...]
    answers: Answers
    does: tuple["Does", ...]


@dataclass(frozen=True, slots=True)
class Does:
    """What an answer leads to: what was done last is taken back (``undo``), and then ``command`` carried out."""

    command: PutRight | TakeCount | None
    undo: bool = False


def following(before: State, after: State) -> Following | None:
    """Return what going from ``before`` to ``after`` changes further on; None when it changes nothing."""
    if after.plan != before.plan:  # the count came with its repair: what it changes is put right already
        return None
    found = consequences(before, after)
    if not found.changes and not found.findings:
        return None
    lines, ended, told = later_lines(found, after), given_up(before, after), found.told
    if ended:
        if not lines:
            return None
        ways = [one for one in found.mends if one.command.how != "here"]
        first = [(Answer(f"Go back and finish step {ended[0] + 1}", "GO BACK", None, None), _BACK)]
        return _following(lines, told, first, ways)
    # In the middle of an edge no hand makes a stitch or works two together: the section itself is spaced anew.
    if _walking(after):
        return _following(lines, told, [], [one for one in found.mends if one.command.how != "here"])
    first = []
    if found.changes:
        place = found.changes[0].place
        was, now = before.ledger.on(place), after.ledger.on(place)
        lines = (*explained(after, now - was), *lines)
        if not lines:  # nothing after this is another number than it is now
            lines = (f"{after.plan.here(after.ledger).name(place)}: {now}, not {found.changes[0].planned}",)
        if now < was and not far_off(now, was):
            text = f"I found {'it' if was - now == 1 else 'them'} and picked up: {was}"
            first.append(
                (Answer(text, "PICK UP", None, told.planned if told else was), Does(TakeCount(was, place), undo=True))
            )
        first.append((Answer(AGAIN, "COUNT", None, None), _BACK))
    return _following(lines, told, first, found.mends)


_BACK = Does(None, undo=True)


def _following(
    lines: tuple[str, ...], told: Told | None, first: Sequence[tuple[Answer, Does]], ways: Sequence[Mend]
) -> Following:
    rows = [*first]
    for one in ways:
        note = wrong_with(one.total, told.planned, told.repeat) if told else ""
        rows.append((Answer(one.text, one.verb, one.verdict, one.total, one.made, note=note), Does(one.command)))
    answered, does = zip(*rows, strict=True)  # in the order of what they mend, the first one all of it
    heading = off_by(told.real - told.planned) if told else "later steps change"
    said = f"{told.name} {told.real}, planned {told.planned}" if told else "see below"
    numbers = (told.real, told.planned) if told else None
    return Following(cut(lines), Answers(heading, said, answered, numbers), does)


def _walking(state: State) -> bool:
    work = state.standing.work if state.standing else None
    return work is not None and not work.complete and any(stage.unit == "spot" for stage in work.stages)
