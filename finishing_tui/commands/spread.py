"""``finishing spread``: spread stitches over the rows of an edge, as a hand can follow."""

import argparse
from fractions import Fraction

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.commands.rhythms import add_style, drawn, rhythm_data
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.spacing import least_drift, say, space
from finishing_tui.craft.words import decimal, plural

EXAMPLE = """\
example: 31 stitches along an edge of 44 rows

  $ finishing spread 31 44 --unit row
  31 stitches from 44 rows:

  2 of every 3, eight times, then 3 of every 4, five times

  xx.xx.xx.xx.xx.xx.xx.xx.xxx.xxx.xxx.xxx.xxx.
  (x pick, . skip; in the order you walk)

  Never more than one stitch from even; the most even there is (--style even): 0.5 of a stitch.

With more stitches than spots some spots take two loops, up to two in every one.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("stitches", metavar="STITCHES", type=whole(1, MOST), help="stitches to pick up")
    parser.add_argument(
        "spots", metavar="SPOTS", type=whole(1, MOST), help="places along the edge: rows, ridges, chains or stitches"
    )
    add_style(parser)


def answer(args: argparse.Namespace) -> Answer:
    """Answer with the rhythm.

    Raises:
        Impossible: the edge cannot hold the stitches, or its ends cannot be closed.

    """
    rhythm = space(args.stitches, args.spots, style=args.style, ends=args.ends)
    least, drift = least_drift(args.stitches, args.spots, args.ends), rhythm.drift
    text = say(rhythm, args.unit)
    data = {
        "stitches": args.stitches,
        "spots": args.spots,
        "style": args.style,
        "ends": args.ends,
        "text": text,
        "drift": str(drift),
        "least_drift": str(least),
        **rhythm_data(rhythm, every=args.picked),
    }
    both = f", first and last {args.unit} picked" if args.ends == "closed" else ""
    stray = f"Never more than {_at_most(drift)} from even"
    if drift == 0:
        stray = "Exactly even."
    elif drift == least:
        stray += "; nothing is more even."
    else:
        stray += f"; the most even there is (--style even): {_at_most(least)}."
    parts = [
        f"{plural(args.stitches, 'stitch')} from {plural(args.spots, args.unit)}{both}:",
        f"  {text}",
        drawn(rhythm),
        stray,
    ]
    return Answer("\n\n".join(part for part in parts if part), data)


def _at_most(drift: Fraction) -> str:
    """Say a drift, rounded up to a tenth so that "never more than" is true."""
    tenths = Fraction(-((-drift * 10) // 1), 10)
    return "one stitch" if tenths == 1 else f"{decimal(tenths)} of a stitch"
