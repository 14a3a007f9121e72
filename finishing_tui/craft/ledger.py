"""The ledger: where every live stitch, tail, marker and hole of a garment is, in double entry.

A stitch is never written down as a number that is later overwritten: it moves from one account to another, and the
sum over all accounts is always zero. Accounts are the *places* (needles, holders) and four that lie outside the
garment. Besides stitches an entry may concern a tail, a marker, a hole, the working yarn, or how the work lies.

Every entry has an inverse, and entering a list and then the inverses of it in reverse order gives the ledger back
exactly; undo and ripping back stand on that. The ledger knows nothing of recipes, garments or time.
"""

from bisect import bisect_left
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import plural

EDGE = "edge"
"""Where picked up, cast on and made stitches come from."""
OFF = "off"
"""Where stitches go that are worked off, decreased or bound off."""
FOUND = "found"
"""Where stitches come from that a count showed to be there beyond what was known."""
MISSING = "missing"
"""Where stitches go that a count showed not to be there."""
OUTSIDE = frozenset({EDGE, OFF, FOUND, MISSING})
"""The four accounts that lie outside the garment; all others are places, and a place is never negative."""


class Unbalanced(FinishingError):
    """An entry the ledger cannot bear: it takes what is not there, or makes what is there already."""

    entry: "Entry | None" = None
    """The entry, once it is known."""


@dataclass(frozen=True, slots=True)
class Posting:
    """``stitches`` live stitches (at least 1) move from the account ``source`` to the account ``to``."""

    source: str
    to: str
    stitches: int

    def inverse(self) -> "Posting":
        """Return the posting that undoes this one."""
        return Posting(self.to, self.source, self.stitches)


@dataclass(frozen=True, slots=True)
class TailEntry:
    """A tail was ``made`` (new yarn or a cut), ``shortened`` (sewn with) or ``woven`` in; the rest are inverses."""

    tail: str
    did: Literal["made", "shortened", "woven", "unmade", "lengthened", "unwoven"]
    used: int = 0  # times it had been sewn with when woven in, so that unweaving restores it

    def inverse(self) -> "TailEntry":
        """Return the entry that undoes this one."""
        return TailEntry(self.tail, _TAIL_INVERSE[self.did], self.used)


@dataclass(frozen=True, slots=True)
class MarkerEntry:
    """A marker goes ``in``, or comes ``out``."""

    marker: str
    did: Literal["in", "out"]

    def inverse(self) -> "MarkerEntry":
        """Return the entry that undoes this one."""
        return MarkerEntry(self.marker, "out" if self.did == "in" else "in")


@dataclass(frozen=True, slots=True)
class HoleEntry:
    """A hole is ``made`` at the joint of two sections, or ``closed``; ``unmade`` and ``opened`` are inverses."""

    hole: str
    did: Literal["made", "closed", "unmade", "opened"]

    def inverse(self) -> "HoleEntry":
        """Return the entry that undoes this one."""
        return HoleEntry(self.hole, _HOLE_INVERSE[self.did])


@dataclass(frozen=True, slots=True)
class YarnEntry:
    """The working yarn is ``joined`` at a place, ``cut`` there, or ``carried`` to it from the place ``source``."""

    place: str
    did: Literal["joined", "cut", "carried"]
    source: str = ""

    def inverse(self) -> "YarnEntry":
        """Return the entry that undoes this one."""
        if self.did == "carried":
            return YarnEntry(self.source, "carried", self.place)
        return YarnEntry(self.place, "cut" if self.did == "joined" else "joined")


@dataclass(frozen=True, slots=True)
class Posture:
    """How the work lies. Every part may be unknown (empty).

    ``facing``: the side towards the knitter; ``together``: the sides that touch; ``near``: the piece or needle nearer
    to her; ``on_top``: what lies on top; ``yarn_at``: where the working yarn hangs.
    """

    facing: str = ""
    together: str = ""
    near: str = ""
    on_top: str = ""
    yarn_at: str = ""


@dataclass(frozen=True, slots=True)
class PostureEntry:
    """The work is laid another way: from ``before`` to ``after``."""

    before: Posture
    after: Posture

    def inverse(self) -> "PostureEntry":
        """Return the entry that undoes this one."""
        return PostureEntry(self.after, self.before)


Entry = Posting | TailEntry | MarkerEntry | HoleEntry | YarnEntry | PostureEntry
"""Anything that may be entered in the ledger."""

_TAIL_INVERSE: Mapping[str, Literal["made", "shortened", "woven", "unmade", "lengthened", "unwoven"]] = {
    "made": "unmade",
    "unmade": "made",
    "shortened": "lengthened",
    "lengthened": "shortened",
    "woven": "unwoven",
    "unwoven": "woven",
}
_HOLE_INVERSE: Mapping[str, Literal["made", "closed", "unmade", "opened"]] = {
    "made": "unmade",
    "unmade": "made",
    "closed": "opened",
    "opened": "closed",
}


@dataclass(frozen=True, slots=True)
class Ledger:
    """Where everything is, in one canonical form: two ledgers with the same things at the same places are equal.

    ``stitches``: live stitches by account, only accounts that are not at zero (an outside one may be negative);
    ``tails``: how often each tail has been sewn with; ``markers``, ``holes``: the names of those in the work, sorted;
    ``yarns``: the places a working yarn hangs from, sorted; ``posture``: how the work lies.
    """

    stitches: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    tails: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    markers: tuple[str, ...] = ()
    holes: tuple[str, ...] = ()
    yarns: tuple[str, ...] = ()
    posture: Posture = field(default_factory=Posture)

    def on(self, place: str) -> int:
        """Return how many live stitches ``place`` (or an outside account) holds."""
        return self.stitches.get(place, 0)

    @property
    def live(self) -> dict[str, int]:
        """Every place that holds live stitches, with how many."""
        return {place: count for place, count in self.stitches.items() if place not in OUTSIDE}

    @property
    def empty(self) -> bool:
        """Whether nothing is left: no live stitch, tail, marker, hole or working yarn."""
        return not (self.live or self.tails or self.markers or self.holes or self.yarns)

    def enter(self, *entries: Entry) -> "Ledger":
        """Return the ledger after ``entries``, in order.

        Raises ``Unbalanced`` with a sentence when one of them takes what is not there or makes what already is.
        """
        ledger = self
        try:
            for entry in entries:
                ledger = _enter(ledger, entry)
        except Unbalanced as error:
            error.entry = entry
            raise
        return ledger

    def leave(self, *entries: Entry) -> "Ledger":
        """Return the ledger from before ``entries`` were entered: the inverse of ``enter``, last entry first."""
        return self.enter(*inverses(entries))


def inverses(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Return what undoes ``entries``: the inverse of each, last first."""
    return tuple(entry.inverse() for entry in reversed(tuple(entries)))


def brought(place: str, was: int, now: int, source: str = FOUND, sink: str = MISSING) -> tuple[Posting, ...]:
    """Return the posting that brings ``place`` from ``was`` stitches to ``now``; none where these are as many.

    What it has more comes from ``source``, what it has fewer goes to ``sink``: those of a count, where not said.
    """
    if now == was:
        return ()
    return (Posting(source, place, now - was),) if now > was else (Posting(place, sink, was - now),)


def opened(live: Mapping[str, int], tails: Iterable[str] = ()) -> Ledger:
    """Return the ledger of a garment as its pieces come off the needles.

    ``live``: stitches held at each place; they are booked against ``EDGE``, so the sum is zero from the start.
    ``tails``: the tails left hanging from the pieces.
    """
    postings = [Posting(EDGE, place, count) for place, count in live.items() if count]
    return Ledger().enter(*postings, *(TailEntry(tail, "made") for tail in tails))


def _enter(ledger: Ledger, entry: Entry) -> Ledger:
    match entry:
        case Posting():
            return _post(ledger, entry)
        case TailEntry():
            return _tail(ledger, entry)
        case MarkerEntry(marker, did):
            return replace(ledger, markers=_changed(ledger.markers, marker, adds=did == "in", what="marker"))
        case HoleEntry(hole, did):
            return replace(ledger, holes=_changed(ledger.holes, hole, adds=did in {"made", "opened"}, what="hole"))
        case YarnEntry(place, "carried", source):
            gone = _changed(ledger.yarns, source, adds=False, what="working yarn at")
            return replace(ledger, yarns=_changed(gone, place, adds=True, what="working yarn at"))
        case YarnEntry(place, did):
            return replace(ledger, yarns=_changed(ledger.yarns, place, adds=did == "joined", what="working yarn at"))
        case PostureEntry(_, after):
            return replace(ledger, posture=after)


def _post(ledger: Ledger, posting: Posting) -> Ledger:
    if posting.stitches < 1:
        raise Unbalanced(f"a posting moves at least 1 stitch, not {posting.stitches}")
    stitches = dict(ledger.stitches)
    for account, change in ((posting.source, -posting.stitches), (posting.to, posting.stitches)):
        count = stitches.get(account, 0) + change
        if count < 0 and account not in OUTSIDE:
            raise Unbalanced(
                f"{account} has {plural(ledger.on(account), 'stitch')}, {posting.stitches} were to be taken"
            )
        if count:
            stitches[account] = count
        else:
            stitches.pop(account, None)
    # Written out rather than replaced: this is the one entry there are hundreds of.
    kept = (ledger.tails, ledger.markers, ledger.holes, ledger.yarns, ledger.posture)
    return Ledger(MappingProxyType(stitches), *kept)


def _tail(ledger: Ledger, entry: TailEntry) -> Ledger:
    tails = dict(ledger.tails)
    if (entry.did in {"made", "unwoven"}) == (entry.tail in tails):
        is_there = "is there already" if entry.tail in tails else "is not there"
        raise Unbalanced(f"the tail {entry.tail!r} {is_there}")
    match entry.did:
        case "made":
            tails[entry.tail] = 0
        case "unwoven":
            tails[entry.tail] = entry.used
        case "shortened":
            tails[entry.tail] += 1
        case "lengthened":
            tails[entry.tail] -= 1
        case "woven" | "unmade":
            del tails[entry.tail]
    return replace(ledger, tails=MappingProxyType(tails))


def _changed(names: tuple[str, ...], name: str, *, adds: bool, what: str) -> tuple[str, ...]:
    if adds == (name in names):
        raise Unbalanced(f"the {what} {name!r} {'is there already' if adds else 'is not there'}")
    if not adds:
        return tuple(one for one in names if one != name)
    at = bisect_left(names, name)
    return (*names[:at], name, *names[at:])
