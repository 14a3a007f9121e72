"""The natural ratio of an edge, the edge as a walk of sections, and when a count on it is doubtful.

The natural ratio is stitches of the band over a length ÷ rows of the body over the same length. It depends on
what a *spot* of the edge is: a ridge (garter stitch) and a chain (slipped selvedge) are two rows each, and
taking them for rows is the commonest reason for a band half as long as it should be. So every function here
asks for the unit first. It shares nothing out: see ``craft.sharing``.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from finishing_tui.craft.counts import MOST, span
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.judging import SHOWS
from finishing_tui.craft.lengths import Length, length
from finishing_tui.craft.sections import Portion
from finishing_tui.craft.slopes import Leg, rows_of, stitches_along
from finishing_tui.craft.words import decimal, percent, plural

EdgeUnit = Literal["row", "ridge", "chain", "stitch"]
"""What one spot of an edge is."""

ROWS_PER: dict[EdgeUnit, int] = {"row": 1, "ridge": 2, "chain": 2}
"""Rows in one spot; a stitch edge has none."""

USUAL: dict[EdgeUnit, Fraction] = {
    "row": Fraction(3, 4),
    "ridge": Fraction(1),
    "chain": Fraction(3, 2),
    "stitch": Fraction(1),
}
"""Stitches a spot where no gauge is known: 3 of 4 rows (so 3 for 2 chains), 1 a garter ridge, 1 a stitch.

Sources: Studio Knits, Expert Knitter ch. 23; Knit Yourself Happy; illi tilli.
"""

USUAL_GAUGE = Gauge(Fraction(3), Fraction(4), length(1, "cm"))
"""A gauge at which the usual ratio of rows is the natural one; how long a slope is for its rows needs no more of it."""

_UNKNOWN: dict[EdgeUnit, tuple[Fraction, Fraction]] = {
    "row": (Fraction(3, 5), Fraction(19, 20)),
    # Two rows a spot, so up to 1.9; but garter stitch wants only 1 a ridge, so the floor is just under that.
    "ridge": (Fraction(9, 10), Fraction(19, 10)),
    "chain": (Fraction(9, 10), Fraction(19, 10)),
    "stitch": (Fraction(0), Fraction(1)),
}


@dataclass(frozen=True, slots=True)
class SpotsEdge:
    """A straight section of ``spots`` spots, each one ``unit``."""

    along: str
    spots: int
    unit: EdgeUnit


@dataclass(frozen=True, slots=True)
class SlopeEdge:
    """A shaped section; its spots are the rows of its ``legs``."""

    along: str
    legs: tuple[Leg, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """A section of which only the length is known."""

    along: str
    length: Length


@dataclass(frozen=True, slots=True)
class HeldEdge:
    """Live stitches on a holder, each knitted once: a fixed count."""

    along: str
    stitches: int


@dataclass(frozen=True, slots=True)
class GapEdge:
    """A corner where ``extra`` loops are picked up so that no hole is left: a fixed count."""

    along: str
    extra: int


EdgeSection = SpotsEdge | SlopeEdge | Measured | HeldEdge | GapEdge
"""One part of an edge with one nature."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """Why a count on an edge is doubtful, in one sentence (``text``); ``few`` tells pucker from flare.

    ``off`` is how far the count is off the natural one, as a share of it (negative: too few); None without a
    gauge.
    """

    few: bool
    off: Fraction | None
    text: str


def natural_ratio(unit: EdgeUnit, body: Gauge, band: Gauge | None = None) -> Fraction:
    """Return the stitches of the band that lie along one spot of the edge, exactly.

    The band's gauge is the body's where it has none of its own; give the blocked gauge of each. Row: band
    stitches per length ÷ body rows per length; ridge and chain: twice that; stitch: band stitches ÷ body
    stitches (1 with no band gauge).

    Raises:
        Impossible: the body's rows are not known and the unit needs them.

    """
    stitches = (band or body).stitches_per_cm
    if unit == "stitch":
        return stitches / body.stitches_per_cm
    return ROWS_PER[unit] * stitches / body.rows_per_cm


def ideal(section: EdgeSection, body: Gauge | None, band: Gauge | None = None) -> Fraction:
    """Return the stitches that ``section`` would take if parts of a stitch could be picked up.

    Held stitches and gaps take what they are. Without a gauge (``body`` None) spots take the usual ratio, 3
    of 4 rows and so on, and a slope is as long as with a gauge of that ratio.

    Raises:
        Impossible: a section of no spots or of more than 100,000, or a length with no gauge to turn it into
        stitches.

    """
    if isinstance(section, HeldEdge | GapEdge):
        count = section.stitches if isinstance(section, HeldEdge) else section.extra
        _in_range(section.along, count)
        return Fraction(count)
    if isinstance(section, Measured):
        if body is None and band is None:
            raise Impossible(f"{section.along} is given by its length: give the gauge too, or count its rows")
        gauge = band or body
        assert gauge is not None
        return gauge.stitches_in(section.length)
    if isinstance(section, SlopeEdge):
        body, band = (USUAL_GAUGE, None) if body is None else (body, band)
        return stitches_along(section.legs, body, band)
    _in_range(section.along, section.spots)
    return section.spots * (USUAL[section.unit] if body is None else natural_ratio(section.unit, body, band))


def walk(sections: Sequence[EdgeSection], body: Gauge | None, band: Gauge | None = None) -> tuple[Portion, ...]:
    """Return the edge ready for sharing: each section in walking order with its ideal, fixed where it is.

    Straight and shaped sections are bounded by what they can hold, two stitches a spot. Raises as ``ideal``.
    """
    return tuple(
        Portion(
            ideal(section, body, band),
            fixed=isinstance(section, HeldEdge | GapEdge),
            holds=None if (spots := spots_in(section)) is None else 2 * spots,
            along=section.along,
        )
        for section in sections
    )


def spots_in(section: EdgeSection | None) -> int | None:
    """Return how many spots a section has, None where that is not known."""
    if isinstance(section, SpotsEdge):
        return section.spots
    return rows_of(section.legs) if isinstance(section, SlopeEdge) else None


def unit_of(section: EdgeSection | None) -> EdgeUnit | None:
    """Return what one spot of a section is; None where it has none."""
    if isinstance(section, SpotsEdge):
        return section.unit
    return "row" if isinstance(section, SlopeEdge) else None


def _in_range(along: str, count: int) -> None:
    if not 1 <= count <= MOST:
        raise Impossible(f"{along or 'a section'} has {count:,}: use {span(1, MOST, count)}")


def doubt(unit: EdgeUnit, stitches: int, spots: int, natural: Fraction | None = None) -> Doubt | None:
    """Return why ``stitches`` over ``spots`` spots is doubtful, or None when it is not.

    ``natural`` is the natural ratio in stitches a spot; for a slope, its ideal stitches ÷ its rows. Doubtful is more
    than 10 % off it. Without it: under 0.6 or over 0.95 stitches a row (0.9 to 1.9 a ridge or chain), over 1 a stitch.
    Less than one stitch off is never doubtful: on a short section no whole number may be nearer.

    Raises:
        Impossible: no spots, or a natural ratio of 0.

    """
    _in_range("the edge", spots)
    ratio = Fraction(stitches, spots)
    counts = f"{plural(stitches, 'stitch')} over {plural(spots, unit)}"
    if natural is not None:
        found = doubt_of(stitches, natural * spots, counts)
        wrong = "" if found is None else _wrong_unit(unit, ratio / natural)
        return replace(found, text=f"{found.text} {wrong}") if found is not None and wrong else found
    low, high = _UNKNOWN[unit]
    if low <= ratio <= high or abs(stitches - USUAL[unit] * spots) < 1:
        return None
    few = ratio < low
    fault = f"under {decimal(low, 2)}" if few else f"over {decimal(high, 2)}"
    return Doubt(few, None, f"{counts} is {fault} a {unit}: the band may {_fault(few)}. {_ask(unit, few)}")


def doubt_of(stitches: int, wanted: Fraction, counts: str = "") -> Doubt | None:
    """Return why ``stitches`` is doubtful where ``wanted`` would be ideal, or None; ``counts`` says what is counted.

    Doubtful is more than 10 % off and at least one whole stitch off.

    Raises:
        Impossible: nothing is wanted.

    """
    if wanted <= 0:
        raise Impossible("where nothing is to be picked up there is no natural ratio")
    off = stitches / wanted - 1
    if abs(off) <= SHOWS or abs(stitches - wanted) < 1:
        return None
    few = off < 0
    return Doubt(
        few,
        off,
        f"{counts or plural(stitches, 'stitch')} is {percent(abs(off))} too {'few' if few else 'many'} "
        f"for your gauge, which wants about {decimal(wanted)}: the band will {_fault(few)}.",
    )


def _fault(few: bool) -> str:  # noqa: FBT001  (private, and named at every call)
    return "pucker" if few else "flare"


def _ask(unit: EdgeUnit, few: bool) -> str:  # noqa: FBT001  (private, and named at every call)
    if unit == "stitch":
        return "One for each stitch is usual."
    if unit == "row":
        return f"3 of every 4 rows is usual{'.' if few else '; are these ridges or chains, of two rows each?'}"
    return f"A {unit} is two rows{'; was each taken for one?' if few else '.'}"


def _wrong_unit(unit: EdgeUnit, of_natural: Fraction) -> str:
    """Return the guess that rows and two-row spots were mistaken for each other, or nothing."""
    half = abs(of_natural * 2 - 1) <= SHOWS
    twice = abs(of_natural / 2 - 1) <= SHOWS
    if half and unit in {"ridge", "chain"}:
        return f"It is about half: a {unit} is two rows, and it looks as if each was taken for one."
    if twice and unit == "row":
        return "It is about twice as many: it looks as if ridges or chains of two rows were counted as rows."
    return ""
