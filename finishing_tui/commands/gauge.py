"""``finishing gauge``: the natural ratio of an edge, the simple rhythms near it, and what an edge wants in all.

It reads what was typed and says the answer; the sums are in ``craft.edges``, ``craft.ratio`` and
``craft.markers``.
"""

import argparse
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any, get_args

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.commands.typed_edge import plain, read_edge, read_unit, say_edge, say_error, say_ratio
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.edges import (
    USUAL,
    EdgeSection,
    EdgeUnit,
    GapEdge,
    HeldEdge,
    Measured,
    SlopeEdge,
    SpotsEdge,
    doubt,
    doubt_of,
    ideal,
    natural_ratio,
    spots_in,
    unit_of,
)
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.gauge import Gauge, before_blocking, read_gauge, say_gauge
from finishing_tui.craft.judging import SHOWS
from finishing_tui.craft.lengths import say_length
from finishing_tui.craft.markers import APART, by_fold, divide, mark, parts_for
from finishing_tui.craft.ratio import near_ratios
from finishing_tui.craft.slopes import count_along, rows_of
from finishing_tui.craft.spacing import say, space
from finishing_tui.craft.words import decimal, listing, many, plural

EXAMPLE = """\
The edge may be 'rows', 'ridges', 'chains' or 'stitches', with a number before it if you know it ('120 rows');
a length ('25 cm'); or a slope ('1 stitch every 2 rows, 5 times, then 18 rows straight'). A garter ridge and a
chain of a slipped selvedge are two rows each: look which of them you are counting before anything else.

a worked example:
  finishing gauge "16 x 24 over 4 in" --edge "120 rows"
  Along rows the natural ratio is 2 stitches for 3 rows: pick up and knit 2 of every 3 rows (exactly right).
  120 rows want 80 stitches: 2 of every 3, 40 times.
  Mark the edge in 6 parts of 20 rows, with 13 or 14 stitches in each: 13, 14, 13, 13, 14, 13.

when nobody counted the rows:
  finishing gauge --edge rows --stitches 72
"""

_KINDS: tuple[EdgeUnit, ...] = get_args(EdgeUnit)
_SHOWN = 4
_SMALL = 20


@dataclass(slots=True)
class _Told:
    """What has been said so far, for people and for programs."""

    lines: list[str] = field(default_factory=list)
    data: dict[str, Any] = field(default_factory=dict)


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing gauge`` takes."""
    parser.add_argument("gauge", nargs="?", help="of the body: '20 x 28 over 10 cm' (3 of 4 rows where not known)")
    parser.add_argument("--band", help="the band's own gauge, if it differs, blocked: '22 stitches over 10 cm'")
    parser.add_argument("--blocked", metavar="GAUGE", help="of the body after blocking, if measured: this one counts")
    parser.add_argument("--edge", help="what the edge is, and how much of it: 'ridges', '120 rows', '25 cm'")
    parser.add_argument("--stitches", type=whole(1, MOST), help="the stitches you mean to pick up along it")
    parser.add_argument("--parts", type=whole(1, 1_000), help="how many parts to mark the edge in")


def answer(args: argparse.Namespace) -> Answer:
    """Say the natural ratio and what the edge wants; raises ``Impossible`` for whatever cannot be read or done."""
    before = read_gauge(args.gauge) if args.gauge is not None else None
    blocked = read_gauge(args.blocked) if args.blocked is not None else None
    band = read_gauge(args.band) if args.band is not None else None
    if before is None and (blocked or band):
        raise Impossible("give the gauge of the body first, such as '20 x 28 over 10 cm', then --band or --blocked")
    body = blocked or before  # where both are known, the blocked gauge counts
    unit, edge = _read_edge(args.edge)
    told = _Told()
    if body is not None and blocked is not None:
        told.lines.append(f"The blocked gauge counts: {say_gauge(body)}.")
    _say_ratios(told, _KINDS if unit is None and edge is None else _kinds(unit, edge), body, band)
    if edge is not None:
        _say_edge(told, edge, args, body, band)
        if isinstance(edge, Measured) and before is not None and blocked is not None:
            _say_blocking(told, edge, before, blocked)
    elif args.stitches is not None:
        _say_fold(told, unit or "row", args, body, band)
    elif args.parts is not None:
        raise Impossible("say what to mark in parts: give --edge with a number or a length, or --stitches")
    text = "\n".join(told.lines)
    return Answer(text, {**told.data, "text": text})


def _read_edge(typed: str | None) -> tuple[EdgeUnit | None, EdgeSection | None]:
    if typed is None:
        return None, None
    unit = read_unit(plain(typed, "the edge"))
    if unit is not None:
        return unit, None
    edge = read_edge("the edge", typed)
    if isinstance(edge, HeldEdge | GapEdge):
        raise Impossible(f"{say_edge(edge)} need no ratio: each is knitted once")
    return unit_of(edge), edge


def _kinds(unit: EdgeUnit | None, edge: EdgeSection | None) -> Sequence[EdgeUnit]:
    """Return the kinds of edge to speak of; none for a slope (its own ratio is told) and for a length."""
    return () if unit is None or isinstance(edge, SlopeEdge) else (unit,)


def _say_ratios(told: _Told, kinds: Sequence[EdgeUnit], body: Gauge | None, band: Gauge | None) -> None:
    told.data["edges"] = {}
    for unit in kinds:
        natural = USUAL[unit] if body is None else natural_ratio(unit, body, band)
        near = near_ratios(natural)
        shown = [one for one in near if abs(one.error) <= SHOWS][:_SHOWN] or list(near[:1])
        if body is None:
            told.lines.append(
                f"Along {_called(unit)} pick up and knit {say_ratio(near[0], unit)}, "
                "as is usual where no gauge is known."
            )
        else:
            said = [f"{say_ratio(one, unit)} ({say_error(one.error)})" for one in shown]
            told.lines.append(
                f"Along {_called(unit)} the natural ratio is {_say_natural(natural, unit)}: "
                f"pick up and knit {listing(said, 'or')}."
            )
        told.data["edges"][unit] = {
            "natural": str(natural),
            "ratios": [{"pick": one.pick, "of": one.of, "error": str(one.error)} for one in near],
        }


def _called(unit: EdgeUnit) -> str:
    if unit == "stitch":
        return "the stitches of a cast-on or bound-off edge"
    return many(unit) if unit == "row" else f"{many(unit)} (two rows each)"


def _say_natural(natural: Fraction, unit: EdgeUnit) -> str:
    """Return the natural ratio in words: exactly where the numbers are small, else to three decimals."""
    if natural.denominator > _SMALL:
        return f"about {decimal(natural, 3)} stitches for each {unit}"
    spots = f"each {unit}" if natural.denominator == 1 else plural(natural.denominator, unit)
    return f"{plural(natural.numerator, 'stitch')} for {spots}"


def _say_edge(told: _Told, edge: EdgeSection, args: argparse.Namespace, body: Gauge | None, band: Gauge | None) -> None:
    """Say what the edge wants in all, how to walk it, and how to mark it."""
    wanted = ideal(edge, body, band)
    nearest = count_along(edge.legs, body, band) if isinstance(edge, SlopeEdge) and body else rounded(wanted)
    if nearest == 0:
        raise Impossible(f"{say_edge(edge)} is too short for a single stitch: give a longer edge")
    count = nearest if args.stitches is None else args.stitches
    spots, unit = spots_in(edge), unit_of(edge) or "row"
    line = f"{_wants(edge)} {plural(nearest, 'stitch')}{_exactly(edge, wanted, body, band)}"
    if spots is None:
        doubtful = doubt_of(count, wanted)
    else:
        known = body is not None or isinstance(edge, SlopeEdge)  # how long a slope is for its rows needs no gauge
        doubtful = doubt(unit, count, spots, wanted / spots if known else None)
        if count > 2 * spots:
            raise Impossible(
                f"{plural(spots, unit)} cannot take {count} stitches: at most two in each, {2 * spots} in all"
            )
    rhythm = "" if spots is None else say(space(count, spots), unit)
    if args.stitches is None:
        told.lines.append(f"{line}: {rhythm}." if rhythm else f"{line}.")
    else:
        told.lines.append(f"{line}.")
        if rhythm:
            told.lines.append(f"Your {plural(count, 'stitch')}: {rhythm}.")
        if doubtful is None:
            told.lines.append("That suits the edge.")
    if doubtful is not None:
        told.lines.append(doubtful.text)
    told.data |= {
        "edge": say_edge(edge),
        "spots": spots,
        "unit": None if spots is None else unit,
        "ideal": str(wanted),
        "stitches": count,
        "warning": None if doubtful is None else doubtful.text,
    }
    _say_parts(told, edge, spots, unit, count, args.parts)


def _wants(edge: EdgeSection) -> str:
    if isinstance(edge, SlopeEdge):
        return "This slope wants"
    return f"{say_edge(edge)} {'want' if isinstance(edge, SpotsEdge) and edge.spots > 1 else 'wants'}"


def _exactly(edge: EdgeSection, wanted: Fraction, body: Gauge | None, band: Gauge | None) -> str:
    """Return what stands behind the whole number: the ideal itself, and what a slope would take without shaping."""
    notes = [] if wanted.denominator == 1 else [f"{decimal(wanted, 2)} to be exact"]
    if isinstance(edge, SlopeEdge) and body is not None:
        rows = rows_of(edge.legs)
        straight = natural_ratio("row", body, band) * rows
        notes.append(f"{plural(rows, 'row')} without shaping would want {decimal(straight, 2)}")
    return f" ({'; '.join(notes)})" if notes else ""


def _say_parts(
    told: _Told, edge: EdgeSection, spots: int | None, unit: EdgeUnit, count: int, parts: int | None
) -> None:
    """Say where the markers go; nothing where the edge is short and nobody asked."""
    if parts is None and count <= APART:
        return
    if spots is not None:
        marked = mark(spots, count, parts)
        stitches = marked.stitches
        said = f"{_one_or_two(marked.spots)} {many(unit)}"
        told.data["parts"] = {"spots": list(marked.spots), "stitches": list(stitches)}
    else:
        assert isinstance(edge, Measured)
        stitches = divide(count, parts or parts_for(count))
        said = say_length(replace(edge.length, cm=edge.length.cm / len(stitches)))
        told.data["parts"] = {"spots": None, "stitches": list(stitches)}
    told.lines.append(
        f"Mark the edge in {plural(len(stitches), 'part')} of {said}, "
        f"with {_one_or_two(stitches)} {'stitch' if max(stitches) == 1 else 'stitches'} in each{_in_turn(stitches)}."
    )


def _in_turn(sizes: Sequence[int]) -> str:
    """Return the sizes one after the other, where they differ and are few enough to be read."""
    return f": {', '.join(map(str, sizes))}" if len(set(sizes)) > 1 and len(sizes) <= 24 else ""


def _one_or_two(sizes: Sequence[int]) -> str:
    return listing([str(size) for size in sorted(set(sizes))], "or")


def _say_fold(told: _Told, unit: EdgeUnit, args: argparse.Namespace, body: Gauge | None, band: Gauge | None) -> None:
    """Say how to work where nobody counted the spots: by the ratio, with a count at the fold."""
    fold = by_fold(args.stitches, None if body is None else natural_ratio(unit, body, band), USUAL[unit])
    halves = sorted({args.stitches // 2, fold.half})
    told.lines.append(
        f"You need not count the {many(unit)}: fold the edge in half and mark the fold, then pick up "
        f"{say_ratio(fold.rhythm, unit)}. At the mark {_one_or_two(halves)} of {plural(args.stitches, 'stitch')} "
        "should be on the needle; count there, and ask 'finishing recount' if it is another number."
    )
    stitches = divide(args.stitches, args.parts or parts_for(args.stitches))
    if len(stitches) > 1:
        told.lines.append(
            f"To find a slip sooner, mark the edge in {len(stitches)} equal parts, with {_one_or_two(stitches)} "
            f"stitches in each{_in_turn(stitches)}."
        )
    told.data |= {
        "unit": unit,
        "stitches": args.stitches,
        "half": fold.half,
        "pick": fold.rhythm.pick,
        "of": fold.rhythm.of,
        "parts": {"spots": None, "stitches": list(stitches)},
    }


def _say_blocking(told: _Told, edge: Measured, before: Gauge, blocked: Gauge) -> None:
    """Say how many rows make the length that is wanted after blocking."""
    work = before_blocking(edge.length, before, blocked)
    told.lines.append(
        f"For {say_length(edge.length)} after blocking work {plural(work.rows, 'row')}; until then they measure "
        f"{say_length(work.before)}. Count rows, do not measure."
    )
    told.data["blocking"] = {
        "rows": work.rows,
        "before_cm": str(work.before.cm),
        "after_cm": str(work.after.cm),
    }
