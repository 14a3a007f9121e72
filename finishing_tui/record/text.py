"""A record as a report for people: plain text, of lines that fit a page.

All text of a garment is put in as it stands; nothing in it is taken for markup.
"""

import textwrap
from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta

from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.events import Recounted
from finishing_tui.garment.left_open import left_open
from finishing_tui.glance.posture import lie, posture_words
from finishing_tui.glance.stored_words import PUT_DOWN_TO, REPAIRS, STATUSES, verdict_words
from finishing_tui.recipe.stage import HAND
from finishing_tui.record.data import as_data
from finishing_tui.record.stages import done_words
from finishing_tui.record.values import Record, Sat

WIDTH = 79
"""The longest line, where words can be broken at all."""

MINUTE = 60_000
"""In milliseconds, as all times below."""

CLOCK_DRIFT = 2 * MINUTE
"""How far a time of day that nobody sets goes behind."""

LONGEST_ASLEEP = 30 * 24 * 60 * MINUTE
"""How long a computer sleeps within a sitting: the time of day goes on then, the clock that never jumps may not."""

LONGEST_SITTING = 30 * 24 * 60 * MINUTE
"""How long a garment is in hand where it is never put down between."""


def as_text(record: Record) -> str:
    """Return the report: where it stands, what is on the needles, what was done step by step, notes and sittings."""
    parts = [_head(record), _held(record), _steps(record), _changes(record), _notes(record), _sittings(record)]
    return "\n\n".join("\n".join(lines) for part in parts if (lines := list(part)))


def _head(record: Record) -> Iterator[str]:
    state, data = record.state, as_data(record)
    plan = state.plan
    yield f"{plan.title}, size {plan.size}"
    worked = [plan.recipe.title, f"{plan.hand}-handed", plan.yarn, plan.needles]
    yield from _wrapped("; ".join(one for one in worked if one))
    if not record.events:
        yield "Not begun yet."
    elif data["finished"]:
        yield f"Finished: all {plural(len(state.steps), 'step')} done."
    else:
        at = f"Step {data['step']} of {data['steps']}: {data['heading']}"
        of = "" if data["target"] is None else f" of {data['target']}"
        yield from _wrapped(at if data["count"] is None else f"{at}; {data['part']}: {data['count']}{of}")


def _held(record: Record) -> Iterator[str]:
    ledger, places = record.state.ledger, record.state.plan.recipe.place
    yield "On the needles and holders"
    for place, count in ledger.live.items():
        yield f"  {count:>5}  {places[place].text if place in places else HAND}"
    if not ledger.live:
        yield "  no live stitches"
    for what, names in (("tail", ledger.tails), ("marker", ledger.markers), ("hole", ledger.holes)):
        if names:
            yield from _wrapped(f"{plural(len(names), what)}: {listing(list(names))}", "  ")
    if lies := posture_words(lie(record.state)):
        yield from _wrapped(f"it lies: {lies.replace(' · ', ', ')}", "  ")


def _steps(record: Record) -> Iterator[str]:
    yield "What was done (times in UTC)"
    opened = left_open(record.state)
    for number, standing in enumerate(record.state.steps, 1):
        told = [*(done_words(standing.work) if standing.work else ()), *_told(record, number)]
        is_open = number - 1 in opened
        if standing.status == "to-come" and not told and not is_open:
            continue
        stands = "left open" if is_open else STATUSES[standing.status]
        yield f"  {number:>2}  {record.state.plan.step(number - 1).title} ({stands})"
        for line in told:
            yield from _wrapped(line, "      ")
    if not record.state.order:
        yield "  nothing yet"


def _told(record: Record, step: int) -> Iterator[str]:
    """Yield what happened at a step beside the work, in the order in which it happened."""
    happened = [
        *((one.at, _count(one.act)) for one in record.counts if one.step == step),
        *((one.at, one.text) for one in record.deviations if one.step == step),
        *((one.at, f"taken out to {one.text}{_fell(one.fell)}") for one in record.ripped if one.step == step),
    ]
    for at, text in sorted(happened, key=lambda one: one[0]):
        yield f"{_when(at)}  {text}"


def _count(count: Recounted) -> str:
    words = f"counted {count.counted} ({count.what})"
    if count.counted == count.expected:
        return f"{words}, as expected"
    words += f", where {count.expected} were known"
    repair = REPAIRS[count.repair] if count.repair else ""
    told = [PUT_DOWN_TO[count.answer], verdict_words(count.verdict), repair]
    return f"{words}: {', '.join(one for one in told if one)}".removesuffix(": ")


def _fell(fell: tuple[int, ...]) -> str:
    if not fell:
        return ""
    return f"; {'step' if len(fell) == 1 else 'steps'} {listing([str(one) for one in fell])} fell with it"


def _changes(record: Record) -> Iterator[str]:
    if record.changes:
        yield "Changes of the plan"
    for one in record.changes:
        yield from _wrapped(f"{_when(one.at)}  {one.text}", "  ")


def _notes(record: Record) -> Iterator[str]:
    if record.state.notes or record.state.plan.notes:
        yield "Notes"
    if record.state.plan.notes:
        yield from _wrapped(record.state.plan.notes, "  ")
    for note in record.state.notes:
        number = record.state.plan.number_of(note.step)
        at = "" if number is None else f"step {number}: "
        yield from _wrapped(f"{_when(note.at)}  {at}{note.text}", "  ")


def _sittings(record: Record) -> Iterator[str]:
    if record.sittings:
        yield "Sittings (times in UTC)"
    for one in record.sittings:
        where = f"; {one.where}" if one.where else ""
        yield from _wrapped(f"{one.number}  {_when(one.began)} {_until(one)}, {plural(one.acts, 'act')}{where}", "  ")


def _until(one: Sat) -> str:
    """Return until when a sitting lasted, or how long, where the time of day was set while it lasted.

    A journal may be a stranger's: nothing is said of a length that no sitting has.
    """
    if not one.ended or one.lasted_ms is None:
        return "and not put down"
    by_day = (datetime.fromisoformat(one.ended) - datetime.fromisoformat(one.began)) // timedelta(milliseconds=1)
    if -CLOCK_DRIFT <= by_day - one.lasted_ms <= LONGEST_ASLEEP:
        return f"to {_when(one.ended)}"
    if 0 <= one.lasted_ms <= LONGEST_SITTING:
        return f"for {one.lasted_ms // MINUTE} min" if one.lasted_ms >= MINUTE else "for less than a minute"
    return "and put down at an unknown time"


def _when(at: str) -> str:
    """Return a moment to the minute: 2024-05-01 12:34."""
    return at[:16].replace("T", " ")


def _wrapped(text: str, indent: str = "") -> Iterable[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=indent + "  ")
