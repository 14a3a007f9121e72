"""``finishing share``: the stitches of a band shared among the sections of its edge.

It reads what was typed and says the answer; the sums are in ``craft.sharing`` and ``craft.edges``.
"""

import argparse
import re
from dataclasses import dataclass, replace
from difflib import get_close_matches
from fractions import Fraction
from typing import Any

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.commands.typed_edge import plain, read_edge, say_edge
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.edges import (
    Doubt,
    EdgeSection,
    SlopeEdge,
    SpotsEdge,
    doubt,
    doubt_of,
    natural_ratio,
    spots_in,
    unit_of,
    walk,
)
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import read_number
from finishing_tui.craft.gauge import Gauge, read_gauge
from finishing_tui.craft.sections import MOST_SECTIONS
from finishing_tui.craft.sharing import Portion, Shares, share
from finishing_tui.craft.spacing import say, space
from finishing_tui.craft.words import decimal, plural

EXAMPLE = """\
Write each section in walking order as 'name: what it is'. What it is may be
  32 rows, 20 ridges, 20 chains, 24 stitches    spots of the edge (a ridge and a chain are two rows each)
  1 stitch every 2 rows, 5 times, then 18 rows straight    a slope
  25 cm, 9 1/2 in      a length (needs --gauge)
  16 held, 1 extra     fixed: stitches from a holder, extra loops at a corner
  23.4                 the stitches that would be ideal for it
and behind it: mirrors NAME, at least 10, at most 30.

a worked example:
  finishing share "left front: 33 rows" "front: 16 held" "right front: 33 rows, mirrors left front" \\
      "back neck: 40 held" --gauge "20 x 28 over 10 cm" --repeat 4m
  Pick up and knit 104 stitches in all: 26 times the repeat of 4 (the ideals come to 103.1).
    left front: 24 stitches over 33 rows (ideal 23.6): 2 of every 3, three times, then 3 of every 4, six times
    front: 16 held stitches
    right front: 24 stitches over 33 rows (ideal 23.6): 3 of every 4, six times, then 2 of every 3, three times; \
skip first in each repeat
    back neck: 40 held stitches
"""

_AT = re.compile(r"(?P<rest>.+?)[,;]? at (?P<which>least|most) (?P<count>[0-9]{1,6})", re.IGNORECASE)
_MIRRORS = re.compile(r"(?P<rest>.+?)[,;]? mirrors (?P<name>.+)", re.IGNORECASE)
_REPEAT = re.compile(r"(?P<of>[0-9]{1,4}) ?m?(?: ?\+ ?(?P<plus>[0-9]{1,4}))?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Typed:
    """One section as typed: ``edge`` is what it is, or None where only its ideal was given."""

    along: str
    edge: EdgeSection | None
    ideal: Fraction
    least: int | None
    most: int | None
    mirrors: str | None


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing share`` takes."""
    parser.add_argument("sections", nargs="+", metavar="SECTION", help="a section in walking order, 'name: what it is'")
    parser.add_argument("--total", type=whole(1, MOST), help="stitches in all (else the nearest that fits)")
    parser.add_argument("--repeat", metavar="4m+2", help="the total must be of this form, as 4m or 4m+2 for k2p2")
    parser.add_argument("--gauge", help="of the body, blocked: '20 x 28 over 10 cm' (3 of 4 rows where not given)")
    parser.add_argument("--band", help="the band's own gauge, if it differs: '22 stitches over 10 cm'")


def answer(args: argparse.Namespace) -> Answer:
    """Share the stitches; raises ``Impossible`` with one sentence for whatever cannot be read or shared."""
    if len(args.sections) > MOST_SECTIONS:
        raise Impossible(f"an edge has from 1 to {MOST_SECTIONS} sections, and {len(args.sections)} were given")
    body = read_gauge(args.gauge) if args.gauge is not None else None
    band = read_gauge(args.band) if args.band is not None else None
    if band is not None and body is None:
        raise Impossible("the band's gauge needs the body's beside it: give --gauge too")
    typed = [_read(number, text) for number, text in enumerate(args.sections, 1)]
    repeat = _read_repeat(args.repeat) if args.repeat is not None else None
    sections = _sections(typed, body, band)
    shares = share(sections, total=args.total, repeat=repeat)
    return _say(typed, sections, shares, repeat, body, band)


def _read(number: int, typed: str) -> _Typed:
    text = plain(typed, f"section {number}")
    along, colon, rest = text.partition(":")
    along, rest = (along.strip(), rest.strip()) if colon else (f"section {number}", text)
    if not 1 <= len(along) <= 60:
        raise Impossible(f"the name of section {number} must have from 1 to 60 characters")
    limits: dict[str, int] = {}
    mirrors: str | None = None
    while (found := _AT.fullmatch(rest)) or (found := _MIRRORS.fullmatch(rest)):
        rest = found["rest"]
        if found.re is _AT:
            limits[found["which"].lower()] = int(found["count"])
        else:
            mirrors = found["name"].strip()
    if rest and not re.search(r"[A-Za-z\"″]", rest):
        return _Typed(along, None, read_number(rest), limits.get("least"), limits.get("most"), mirrors)
    return _Typed(along, read_edge(along, rest), Fraction(0), limits.get("least"), limits.get("most"), mirrors)


def _read_repeat(typed: str) -> tuple[int, int]:
    found = _REPEAT.fullmatch(plain(typed, "the repeat"))
    if found is None:
        raise Impossible(f"{typed[:40]!r} is not a repeat that can be read here: write 4m or 4m+2")
    return int(found["of"]), int(found["plus"] or 0)


def _sections(typed: list[_Typed], body: Gauge | None, band: Gauge | None) -> list[Portion]:
    """Return the sections for sharing, with the limits and mirrors that were typed."""
    names = [one.along.lower() for one in typed]
    sections = []
    for one in typed:
        section = Portion(one.ideal, along=one.along) if one.edge is None else walk([one.edge], body, band)[0]
        if section.fixed and (one.least is not None or one.most is not None):
            raise Impossible(f"{one.along} is fixed, so it cannot have a limit: leave the limit out")
        least = section.least if one.least is None else one.least
        _check_limits(one, section.holds)
        mirrors = None if one.mirrors is None else _place(one.mirrors, one.along, names)
        sections.append(replace(section, least=least, most=one.most, mirrors=mirrors))
    return sections


def _check_limits(one: _Typed, holds: int | None) -> None:
    """Raise ``Impossible`` where the limits typed for a section leave it no count; ``holds``: the most it takes."""
    for which, limit in (("least", one.least), ("most", one.most)):
        if limit is not None and limit > MOST:
            raise Impossible(f"{one.along} is to get at {which} {limit:,}: use up to {MOST:,}")
    if one.least is None:
        return
    if one.most is not None and one.least > one.most:
        raise Impossible(
            f"{one.along} is to get at least {one.least} and at most {one.most}, which no count is: raise the most or "
            "lower the least"
        )
    if holds is not None and one.least > holds:
        raise Impossible(
            f"{one.along} is to get at least {one.least}, and its edge holds {holds} at most, two in every spot: lower "
            "the least, or count the edge again"
        )


def _place(name: str, of: str, names: list[str]) -> int:
    """Return the place of the section called ``name``."""
    places = [place for place, known in enumerate(names) if known == name.lower()]
    if len(places) == 1:
        return places[0]
    if places:
        raise Impossible(f"{of} mirrors {name}, but {len(places)} sections have that name: give each its own")
    near = get_close_matches(name.lower(), names, n=1)
    raise Impossible(f"{of} mirrors {name}, but there is no such section" + (f": is it {near[0]}?" if near else ""))


def _say(
    typed: list[_Typed],
    sections: list[Portion],
    shares: Shares,
    repeat: tuple[int, int] | None,
    body: Gauge | None,
    band: Gauge | None,
) -> Answer:
    head = f"Pick up and knit {plural(shares.total, 'stitch')} in all"
    if repeat is not None:
        times = (shares.total - repeat[1]) // repeat[0]
        more = f" and {repeat[1]} more" if repeat[1] else ""
        head += f": {times} times the repeat of {repeat[0]}{more}"
    if shares.ideal_total != shares.total:
        head += f" (the ideals come to {decimal(shares.ideal_total)})"
    lines, warnings, rows = [f"{head}."], [], []
    for one, section, count in zip(typed, sections, shares.counts, strict=True):
        text = _say_section(one, section, count)
        lines.append(f"  {one.along}: {text}")
        doubtful = _doubt(one, section, count, body, band)
        if doubtful is not None:
            warnings.append(f"{one.along}: {doubtful.text}")
        rows.append(_row(one, section, count, text))
    lines += [f"Look again at {warning}" for warning in warnings]
    if body is None and any(isinstance(one.edge, SpotsEdge | SlopeEdge) for one in typed):
        lines.append("No gauge was given, so 3 of every 4 rows (one in every ridge or stitch) was taken as the ideal.")
    text = "\n".join(lines)
    data = {
        "total": shares.total,
        "repeat": None if repeat is None else {"of": repeat[0], "plus": repeat[1]},
        "ideal_total": str(shares.ideal_total),
        "measure": str(shares.measure),
        "sections": rows,
        "warnings": warnings,
        "text": text,
    }
    return Answer(text, data)


def _say_section(one: _Typed, section: Portion, count: int) -> str:
    if one.edge is not None and section.fixed:
        return say_edge(one.edge)
    ideal = f"(ideal {decimal(section.ideal)})"
    if one.edge is None:
        return f"{plural(count, 'stitch')} {ideal}"
    said = f"{plural(count, 'stitch')} over {say_edge(one.edge)} {ideal}"
    spots = spots_in(one.edge)
    if spots is None or count == 0:
        return said
    unit = unit_of(one.edge) or "row"
    rhythm = space(count, spots)
    return f"{said}: {say(rhythm.mirrored() if one.mirrors else rhythm, unit)}"


def _doubt(one: _Typed, section: Portion, count: int, body: Gauge | None, band: Gauge | None) -> Doubt | None:
    if section.fixed or section.ideal == 0:
        return None
    spots = spots_in(one.edge)
    if spots is None:
        return doubt_of(count, section.ideal)
    unit = unit_of(one.edge) or "row"
    if body is None:
        return doubt(unit, count, spots)
    natural = natural_ratio(unit, body, band) if isinstance(one.edge, SpotsEdge) else section.ideal / spots
    return doubt(unit, count, spots, natural)


def _row(one: _Typed, section: Portion, count: int, text: str) -> dict[str, Any]:
    return {
        "along": one.along,
        "stitches": count,
        "ideal": str(section.ideal),
        "fixed": section.fixed,
        "spots": spots_in(one.edge),
        "unit": unit_of(one.edge),
        "text": text,
    }
