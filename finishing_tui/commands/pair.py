"""``finishing pair``: two needles, or two edges, that do not hold the same number, worked or sewn together."""

import argparse
from dataclasses import asdict

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.pairing import pair, rows_to_rows
from finishing_tui.craft.seams import stitches_to_rows

EXAMPLE = """a worked example:
  finishing pair 24 27
  The back needle holds 3 more. Either work 24 pairs and take two together from it at pairs 4, 12 and 20 of 24; or
  first make 3 on the front needle, after stitches 4, 12 and 20, and work 27 pairs. Choose one.

edges sewn together:
  finishing pair 80 83 --rows                  both edges are rows (count the bars)
  finishing pair 60 84 --stitches-to-rows      60 stitches to 84 rows
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing pair`` takes."""
    parser.add_argument("front", type=whole(1, MOST), help="loops on the nearer needle (or bars, or stitches)")
    parser.add_argument("back", type=whole(1, MOST), help="loops on the further needle (or bars, or rows)")
    kind = parser.add_mutually_exclusive_group()
    kind.add_argument("--rows", action="store_true", help="both are edges of rows, sewn bar by bar")
    kind.add_argument("--stitches-to-rows", action="store_true", help="the first is stitches, the second rows")


def answer(args: argparse.Namespace) -> Answer:
    """Say how the two go together; raises ``Impossible`` when they cannot."""
    if args.rows:
        bars = rows_to_rows(args.front, args.back)
        longer = None if args.front == args.back else "front" if args.front > args.back else "back"
        data = {"pairs": bars.short, "extra_on": longer, "double_at": list(bars.double_at), "text": bars.text}
        return Answer(bars.text, data)
    if args.stitches_to_rows:
        sewn = stitches_to_rows(args.front, args.back)
        return Answer(sewn.text, asdict(sewn))
    found = pair(args.front, args.back)
    return Answer(
        found.text,
        {
            "pairs": found.pairs,
            "extra_on": found.extra_on,
            "double_at": list(found.double_at),
            "make_after": list(found.make_after),
            "text": found.text,
        },
    )
