"""An edge as it is typed at the prompt: "32 rows", "25 cm", "16 held", or a slope in words.

Shared by the commands that ask for one. It only reads; the sums are in ``craft.edges``.
"""

import re
from fractions import Fraction
from typing import get_args

from finishing_tui.craft.edges import EdgeSection, EdgeUnit, GapEdge, HeldEdge, Measured, SlopeEdge, SpotsEdge
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import unfolded
from finishing_tui.craft.lengths import read_length, say_length
from finishing_tui.craft.ratio import NearRatio
from finishing_tui.craft.slopes import read_slope, say_slope
from finishing_tui.craft.words import many, percent, plural

LONGEST = 500
"""The most characters of one argument."""

_UNITS: dict[str, EdgeUnit] = {word: unit for unit in get_args(EdgeUnit) for word in (unit, many(unit))}
_SPOTS = re.compile(r"(?P<spots>[0-9]{1,6}) ?(?P<unit>[a-z]+)")
_HELD = re.compile(r"(?P<count>[0-9]{1,6})(?: stitches| stitch)? held(?: stitches| stitch)?")
_EXTRA = re.compile(r"(?P<count>[0-9]{1,6}) extra(?: loops?| stitches| stitch)?")


def plain(typed: str, what: str) -> str:
    """Return ``typed`` with its spaces tidied; refuse what is too long or would not stay plain text on a screen."""
    if len(typed) > LONGEST or not typed.isprintable():
        raise Impossible(f"{what} must be plain text of at most {LONGEST} characters")
    return unfolded(typed)


def read_unit(typed: str) -> EdgeUnit | None:
    """Return the unit that ``typed`` names ("rows"), or None."""
    return _UNITS.get(typed.lower())


def read_edge(along: str, typed: str) -> EdgeSection:
    """Return the section that ``typed`` describes.

    Taken: "32 rows" (or ridges, chains, stitches), "25 cm", "16 held", "1 extra", "1 stitch every 2 rows, 5
    times, then 18 rows straight".

    Raises:
        Impossible: none of these, or a number out of range.

    """
    text = plain(typed, "an edge")
    lower = text.lower()
    if found := _SPOTS.fullmatch(lower):
        unit = read_unit(found["unit"])
        if unit is not None:
            return SpotsEdge(along, int(found["spots"]), unit)
    if found := _HELD.fullmatch(lower):
        return HeldEdge(along, int(found["count"]))
    if found := _EXTRA.fullmatch(lower):
        return GapEdge(along, int(found["count"]))
    if "every" in lower or "straight" in lower:
        return SlopeEdge(along, read_slope(text))
    if re.search(r"(cm|centimet\w+|ins?\.?|inch\w*|\"|″)$", lower):
        return Measured(along, read_length(text))
    raise Impossible(
        f"{text[:60]!r} is not an edge that can be read here: write '32 rows' (or ridges, chains, stitches), '25 cm', "
        "'16 held', '1 extra' or '1 stitch every 2 rows, 5 times, then 18 rows straight'"
    )


def say_edge(section: EdgeSection) -> str:
    """Return what a section is, in words: "32 rows", "16 held stitches"."""
    match section:
        case SpotsEdge():
            return plural(section.spots, section.unit)
        case SlopeEdge():
            return say_slope(section.legs)
        case Measured():
            return say_length(section.length)
        case HeldEdge():
            return plural(section.stitches, "held stitch")
        case GapEdge():
            return f"{section.extra} extra {'loop' if section.extra == 1 else 'loops'}"


def say_ratio(near: NearRatio, unit: EdgeUnit) -> str:
    """Return a ratio as hands do it: "3 of every 4 rows", "one in every stitch", "10 stitches in every 7 ridges"."""
    if near.pick == near.of:
        return f"one in every {unit}"
    if near.pick < near.of:
        return f"{near.pick} of every {near.of} {many(unit)}"
    spots = unit if near.of == 1 else f"{near.of} {many(unit)}"
    return f"{near.pick} stitches in every {spots}"


def say_error(error: Fraction) -> str:
    """Return how far a ratio is off: "exactly right", "5 % too many"."""
    if not error:
        return "exactly right"
    size = percent(abs(error))
    return f"{'less than 0.1%' if size == '0%' else size} too {'many' if error > 0 else 'few'}"
