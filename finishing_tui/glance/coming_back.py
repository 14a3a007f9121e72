"""Coming back to a garment: where it was left, what comes next, and what every needle should hold."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from finishing_tui.craft.words import plural
from finishing_tui.garment.state import State
from finishing_tui.glance.faces import counted
from finishing_tui.glance.glancing import glance
from finishing_tui.glance.values import Face, Glance, ItemFace, MessageFace, PairFace, RoundFace, SpotFace, StitchFace

CLOCKS_DIFFER = 2
"""Minutes that a clock is set back every day, to be right: no reason to say nothing."""

LONGEST_AWAY = 20 * 365 * 24 * 60
"""Minutes that no garment lies: a clock that was never set begins to count longer ago than this."""


@dataclass(frozen=True, slots=True)
class ComingBack:
    """All that is needed within ten seconds; ``last`` and ``next`` have no full stop yet.

    ``away``: since when it lay, empty if that cannot be known; ``last``: the last act; ``next``: what comes next;
    ``where``: what was written when it was put down, ``cut_off``: the last sitting was never put down; ``notes``: the
    latest notes.
    """

    away: str
    last: str
    next: str
    where: str
    cut_off: bool
    notes: tuple[str, ...]
    now: Glance


def coming_back(state: State, now: datetime) -> ComingBack:
    """Return what a knitter coming back must know; to be asked before a new sitting begins."""
    seen = glance(state, now)
    last = state.sittings[-1] if state.sittings else None
    since = (last.ended if last and last.ended else state.last_act) or (last.began if last else "")
    return ComingBack(
        away=ago(since, now),
        last=_last(seen),
        next=_next(seen),
        where=last.where if last else "",
        cut_off=last is not None and not last.ended,
        notes=tuple(note.text for note in state.notes[-2:]),
        now=seen,
    )


def what_next(state: State, now: datetime) -> str:
    """Return what comes next of a garment, in words without a full stop."""
    return _next(glance(state, now))


def _next(seen: Glance) -> str:
    return f"next: {next_words(seen.face)}".removesuffix(".")


def next_words(face: Face) -> str:
    """Return what comes next in words: "row 19, PICK"."""
    match face:
        case SpotFace():
            return f"{face.unit} {face.spot + 1}, {' then '.join(face.acts)}"
        case StitchFace(waits=True):
            return f"{face.act}, it should be {face.count}"
        case StitchFace() | PairFace():
            return f"{face.act}, {face.count + 1} of {face.of}" + (
                f": {face.said}" if isinstance(face, StitchFace) and face.said else ""
            )
        case RoundFace():
            return f"{face.unit} {face.count + 1} of {face.of}" + (f": {face.said}" if face.said else "")
        case ItemFace():
            return face.items[face.done] if face.done < len(face.items) else face.act
        case MessageFace():
            return f"{face.words[:1].lower()}{face.words[1:]}".removesuffix(".")
        case _:
            return face.words


def _last(seen: Glance) -> str:
    where = f"step {seen.step}, {seen.heading.removesuffix('.')}" if seen.step else "the end"
    done = "" if isinstance(seen.face, MessageFace) else f": {counted(seen.face)}"  # its words are what comes next
    label = seen.take_back.removesuffix(".").removeprefix("the end of ")
    return f"{where}{done.removesuffix('.')}{f' (last done: {label})' if label else ''}"


def ago(since: str, now: datetime) -> str:
    """Return how long before ``now`` the time ``since`` (UTC, ISO 8601) was, in words; empty for an empty time.

    Empty too where the clock was wrong then or is now: the time is still to come, or longer ago than anything lies.
    """
    if not since:
        return ""
    minutes = (now - datetime.fromisoformat(since)) // timedelta(minutes=1)
    if not -CLOCKS_DIFFER <= minutes < LONGEST_AWAY:
        return ""
    if minutes < 2:
        return "a moment ago"
    if minutes < 120:
        return f"{plural(minutes, 'minute')} ago"
    if minutes < 2 * 24 * 60:
        return f"{plural(minutes // 60, 'hour')} ago"
    return f"{plural(minutes // (24 * 60), 'day')} ago"
