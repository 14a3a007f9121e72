"""What the commands about rhythms share: their options, how a rhythm goes into JSON, and how it is shown to people."""

import argparse
import re
from fractions import Fraction
from typing import Any

from finishing_tui.craft.spacing import Rhythm, draw

LISTED = 10_000
"""Up to so many spots, every picked spot is listed without being asked for."""

_DRAWN = 600
_WIDE = 60


def add_style(parser: argparse.ArgumentParser) -> None:
    """Add the options that say what kind of rhythm is wanted, and what a spot is called."""
    parser.add_argument(
        "--style",
        choices=("easy", "even"),
        default="easy",
        help="easy (default): short repeats, never more than a stitch off; even: the most even",
    )
    parser.add_argument(
        "--ends",
        choices=("open", "closed"),
        default="open",
        help="open (default): the edge runs on into the next; closed: first and last spot picked",
    )
    parser.add_argument(
        "--unit",
        choices=("spot", "row", "ridge", "chain", "stitch"),
        default="spot",
        help="what one spot of this edge is; a ridge or a chain is two rows",
    )
    parser.add_argument(
        "--picked", action="store_true", help=f"list every picked spot in the JSON, beyond {LISTED} spots too"
    )


def ratio(typed: str) -> Fraction:
    """Read a rhythm such as ``2/3`` or ``1``, more than 0 and at most 2, for argparse."""
    found = re.fullmatch(r"([0-9]{1,6})(?:/([0-9]{1,6}))?", typed)
    if not found or not 0 < int(found[1]) <= 2 * int(found[2] or 1):
        raise argparse.ArgumentTypeError(f"{typed!r} is not a rhythm: write 2/3 for 2 of every 3, at most 2")
    return Fraction(int(found[1]), int(found[2] or 1))


def rhythm_data(rhythm: Rhythm | None, *, every: bool) -> dict[str, Any]:
    """Return ``runs`` and ``picked`` for JSON; ``picked`` is null where the spots are too many and not asked for."""
    if rhythm is None:
        return {"runs": [], "picked": []}
    runs = [{"pick": run.pick, "of": run.of, "times": run.times} for run in rhythm.as_runs()]
    return {"runs": runs, "picked": rhythm.picked() if every or rhythm.spots <= LISTED else None}


def drawn(rhythm: Rhythm) -> str:
    """Return the drawing for people, in lines, with what its signs mean; nothing for a very long edge."""
    if not 0 < rhythm.spots <= _DRAWN:
        return ""
    picture = draw(rhythm)
    lines = [picture[start : start + _WIDE] for start in range(0, len(picture), _WIDE)]
    signs = [sign for mark, sign in (("x", "x pick"), (".", ". skip"), ("2", "2 pick two")) if mark in picture]
    return "\n".join(f"  {line}" for line in lines) + f"\n  ({', '.join(signs)}; in the order you walk)"
