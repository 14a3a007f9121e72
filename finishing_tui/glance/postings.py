"""What was entered in the ledger lately, in words: presses that followed each other are told together."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from finishing_tui.craft.ledger import (
    EDGE,
    FOUND,
    MISSING,
    OFF,
    Entry,
    HoleEntry,
    MarkerEntry,
    Posting,
    PostureEntry,
    TailEntry,
    YarnEntry,
)
from finishing_tui.craft.words import plural
from finishing_tui.garment.events import (
    Act,
    AnyAct,
    Finished,
    Noted,
    PaceChosen,
    PutBack,
    PutDown,
    Recounted,
    Replanned,
    SittingBegan,
    Taken,
    TakenBack,
    Worked,
)
from finishing_tui.garment.evolve import Happening
from finishing_tui.garment.plan import Plan
from finishing_tui.glance.label_words import label_words, labels_words, reason_words
from finishing_tui.glance.posture import posture_words

ACCOUNTS: Mapping[str, str] = {EDGE: "the edge", OFF: "worked off", FOUND: "found", MISSING: "missing"}
"""The accounts outside the garment, as a posting names them."""


@dataclass(frozen=True, slots=True)
class Posted:
    """Something that happened: its ``step`` from 1 (0: none), what it was, what it entered.

    ``day`` and ``time``: when, by the clock of this machine, which is the one that hangs on her wall.
    ``presses``: how many plain presses are told together, 0 for anything else.
    """

    day: str
    time: str
    step: int
    text: str
    entered: tuple[str, ...]
    presses: int = 0


def posted(happenings: Iterable[Happening], names: Mapping[str, str], plan: Plan) -> tuple[Posted, ...]:
    """Return what happened, newest first; ``names``: what the places are called, ``plan``: where each step is now.

    Groups must be whole.
    """
    groups: dict[int, list[Happening]] = {}
    for one in happenings:
        groups.setdefault(one.group, []).append(one)
    found: list[Posted] = []
    pressed: list[Happening] = []
    for group in _known_as_held(groups):
        if pressed and not (_is_press(group) and _step(group, plan) == _step(pressed, plan)):
            found.append(_presses(pressed, names, plan))
            pressed = []
        if _is_press(group):
            pressed += group
        else:
            found.append(_told(group, names, plan))
    if pressed:
        found.append(_presses(pressed, names, plan))
    return tuple(reversed(found))


def _known_as_held(groups: Mapping[int, list[Happening]]) -> Iterator[list[Happening]]:
    """Yield the groups in order; what a held key did before it was known for one is told with the rest of it."""
    regrouped = {
        one.event.group: number
        for number, group in groups.items()
        if isinstance(group[-1].event, Act)
        for one in group
        if isinstance(one.event, TakenBack)
    }
    for number, group in groups.items():
        if number not in regrouped:
            yield [one for one in group if not (isinstance(one.event, TakenBack) and one.event.group in regrouped)]


def entry_words(entry: Entry, names: Mapping[str, str]) -> str:
    """Return one entry in words: "14 from the edge to the neck"."""

    def name(place: str) -> str:
        return ACCOUNTS.get(place) or f"the {names.get(place, place)}"

    match entry:
        case Posting(source, to, stitches) if source == FOUND:
            return f"{stitches} found on {name(to)}"
        case Posting(source, to, stitches) if to in {OFF, MISSING}:
            return f"{stitches} {ACCOUNTS[to]} from {name(source)}"
        case Posting(source, to, stitches):
            return f"{stitches} from {name(source)} to {name(to)}"
        case TailEntry(tail, did):
            return f"tail {tail} {'woven in' if did == 'woven' else did}"
        case MarkerEntry(marker, did):
            return f"marker {marker} {did}"
        case HoleEntry(hole, did):
            return f"hole {hole} {did}"
        case YarnEntry(place, "carried", source):
            return f"yarn carried from {name(source)} to {name(place)}"
        case YarnEntry(place, did):
            return f"yarn {did} at {name(place)}"
        case PostureEntry(_, after):
            return f"laid: {posture_words(after)}" if posture_words(after) else "laid: unknown"


def entered_words(entries: Iterable[Entry], names: Mapping[str, str]) -> tuple[str, ...]:
    """Return entries in words; stitches that went the same way are added up, where they first went."""
    moved: dict[tuple[str, str], int] = {}
    words: list[str | tuple[str, str]] = []
    for entry in entries:
        if isinstance(entry, Posting):
            way = (entry.source, entry.to)
            if way not in moved:
                words.append(way)
            moved[way] = moved.get(way, 0) + entry.stitches
        else:
            words.append(entry_words(entry, names))
    return tuple(one if isinstance(one, str) else entry_words(Posting(*one, moved[one]), names) for one in words)


def _is_press(group: Sequence[Happening]) -> bool:
    first = group[0].event
    return isinstance(first, Act) and not first.label and first.under is not None


def _step(group: Sequence[Happening], plan: Plan) -> int:
    """Return the step of the first event, from 1; 0 where it is at none, or at one that there is no more."""
    return plan.number_of(getattr(group[0].event, "step", None)) or 0


def _entries(acts: Iterable[AnyAct]) -> tuple[Entry, ...]:
    return tuple(entry for act in acts for entry in act.entries)


def _acts(group: Sequence[Happening]) -> tuple[AnyAct, ...]:
    return tuple(one.event for one in group if isinstance(one.event, Act))


def _presses(group: Sequence[Happening], names: Mapping[str, str], plan: Plan) -> Posted:
    many = sum(isinstance(one.event, Worked) for one in group)
    words = entered_words(_entries(_acts(group)), names)
    return Posted(*_when(group[-1]), _step(group, plan), plural(many, "press"), words, many)


def _told(group: Sequence[Happening], names: Mapping[str, str], plan: Plan) -> Posted:
    """Return what a group of events was; the first of them says what it was about."""
    first = group[0]
    text, entries = _text(first, plan), _entries(_acts(group))
    if isinstance(first.event, TakenBack | PutBack):
        entries = _entries(first.event.acts)
    elif isinstance(first.event, Taken):
        names = {place: one.text for place, one in first.event.plan.recipe.place.items()}
        held = ", ".join(f"{many} on the {names.get(place, place)}" for place, many in first.event.ledger.live.items())
        return Posted(*_when(first), 0, text, (held,) if held else ())
    return Posted(*_when(first), _step(group, plan), text, entered_words(entries, names))


def _text(happening: Happening, plan: Plan) -> str:
    match happening.event:
        case TakenBack(_, acts):
            return f"taken back: {label_words(plan, acts[-1].label) or 'a press'}"
        case PutBack(_, acts):
            return f"put back: {label_words(plan, acts[0].label) or 'a press'}"
        case Replanned() as act:
            return f"{label_words(plan, act.label) or 'the plan changed'}: {reason_words(plan, act)}"
        case Recounted() as act:
            expected = "as expected" if act.counted == act.expected else f"expected {act.expected}"
            return f"{label_words(plan, act.label)}: counted {act.counted}, {expected}"
        case Finished() as act if act.although:
            return f"{label_words(plan, act.label)}, although {labels_words(plan, act.although)}"
        case Act() as act:
            return label_words(plan, act.label) or type(act).__name__.lower()
        case Taken():
            return "garment started"
        case SittingBegan(number):
            return f"sitting {number} began"
        case PutDown(where):
            return f"put down: {where}" if where else "put down"
        case Noted(text):
            return f"note: {text}"
        case PaceChosen(pace):
            return f"one press = one {pace}"


def _when(happening: Happening) -> tuple[str, str]:
    at = datetime.fromisoformat(happening.at).astimezone()
    return at.date().isoformat(), at.time().isoformat("minutes")
