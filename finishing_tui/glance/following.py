"""What a count changes further on, and what may be done about it, in words."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.commands import PutRight
from finishing_tui.garment.consequences import consequences, given_up, miscount
from finishing_tui.garment.explained import explained
from finishing_tui.garment.repairs import Mend, Told
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached
from finishing_tui.glance.answers import Answer, Answers, off_by, wrong_with
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

    @property
    def told(self) -> tuple[str, ...]:
        """The lines as what comes of carrying on, for another way may put it right before it comes to that."""
        first, *more = self.lines
        return (f"if you carry on, {first}" if first.startswith("step ") else first, *more)


@dataclass(frozen=True, slots=True)
class Does:
    """What an answer leads to: what was done last is taken back (``undo``), and then ``command`` carried out."""

    command: PutRight | None
    undo: bool = False


def following(before: State, after: State) -> Following | None:
    """Return what going from ``before`` to ``after`` changes further on; None when it changes nothing."""
    if after.plan != before.plan:  # the count came with its repair: what it changes is put right already
        return None
    found = consequences(before, after, counted=True)
    if not found.changes and not found.findings:
        return None
    lines, ended, told = later_lines(found, after), given_up(before, after), found.told
    every = found.mends
    if ended or found.stop:  # what is not worked lies no way
        every = tuple(replace(one, verdict=None) if one.command.how == "as-it-is" else one for one in every)
    if ended:
        if not lines:
            return None
        ways = [one for one in every if one.command.how != "here"]
        text = f"Go back and finish step {ended[0] + 1}"
        first = [(Answer(text, "GO BACK", None, None, to_do=left_of(before, ended[0])), _BACK)]
        return _following(lines, told, first, ways)
    off = miscount(before, after)
    # In the middle of an edge no hand makes a stitch or works two together: the section itself is spaced anew.
    if _walking(after) and off is None:
        return _following(lines, told, [], [one for one in every if one.command.how != "here"])
    if found.changes:
        place = off.place if off else found.changes[0].place
        was, now = before.ledger.on(place), after.ledger.on(place)
        lines = (*(explained(after, now - was) if now else ()), *lines)
        if not lines:  # nothing after this is another number than it is now
            lines = (f"{now} on the {after.plan.here(after.ledger).name(place)}, not {found.changes[0].planned}",)
    # Too far off to be put right in any way: more likely it is the count that is wrong.
    again = [(Answer("Count again", "COUNT", None, None), _BACK)] if off is not None and len(every) == 1 else []
    return _following(lines, told, again, every)


_BACK = Does(None, undo=True)


def _following(
    lines: tuple[str, ...], told: Told | None, first: Sequence[tuple[Answer, Does]], ways: Sequence[Mend]
) -> Following:
    rows = [*first]
    for one in ways:
        note = _wrong_with(one.total, told) if told else ""
        answer = Answer(one.text, one.verb, one.verdict, one.total, one.made, note=note, more=one.where)
        rows.append((answer, Does(one.command)))
    answered, does = zip(*rows, strict=True)  # in the order of what they mend, the first one all of it
    heading = off_by(told.real - told.planned) if told else "later steps change"
    said = "what do you want to do?"
    if told is not None:
        said = "; ".join(f"{name} {real}, planned {planned}" for name, planned, real in told.places)
        if not told.planned:
            heading = f"{plural(told.real, 'live stitch')} left"
            said = listing([f"{real} on the {name}" for name, _, real in told.places])
    numbers = (told.real, told.planned) if told else None
    return Following(cut(lines), Answers(heading, said, answered, numbers), does)


def _wrong_with(total: int, told: Told) -> str:
    """Return what is wrong with a total; where none should be left, too many of them is not what is wrong."""
    return "left live" if total and not told.planned else wrong_with(total, told.planned, told.repeat)


def left_of(state: State, index: int) -> str:
    """Return what is still to be worked of a step, in words: "6 pairs"; nothing where that cannot be told."""
    work = state.steps[index].work
    try:
        stages = work.stages if work else state.plan.step(index).stages(state.plan.here(state.ledger))
    except FinishingError:
        return ""
    left = Counter[str]()
    for at, stage in enumerate(stages):
        mark = work.progress[at].mark if work else Reached()
        if stage.unit == "spot":
            left["stitch"] += max(stage.target - mark.loops, 0)
        else:
            left[stage.spot if stage.unit == "round" else stage.unit] += stage.units - mark.units
    return ", ".join(plural(many, unit) for unit, many in left.items() if many and unit in _SAID)


_SAID = frozenset({"stitch", "pair", "round", "row"})
"""Units that work is counted in."""


def _walking(state: State) -> bool:
    work = state.work
    return work is not None and not work.complete and any(stage.unit == "spot" or stage.pinned for stage in work.stages)
