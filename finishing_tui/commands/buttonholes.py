"""``finishing buttonholes``: where the holes go on a band."""

import argparse
from dataclasses import asdict

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.buttonholes import MOST_HOLES, buttonholes
from finishing_tui.craft.counts import MOST

EXAMPLE = """a worked example:
  finishing buttonholes 100 --holes 7 --width 4 --first 3 --last 3
  Work 3, bind off 4, (work 10, bind off 4) 6 times, work 2. 7 holes (the first, the last and 5 between); 6 gaps
  of 11 stitches. Each bind-off works one stitch more than it takes off; that stitch stays on the right needle as
  the first of the next group and is not counted in the number to work next. Next row: work across and cast on 4
  above each hole: 100 stitches again.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing buttonholes`` takes."""
    parser.add_argument("stitches", type=whole(1, MOST), help="stitches of the band")
    parser.add_argument("--holes", type=whole(1, MOST_HOLES), required=True, metavar="N", help="how many buttonholes")
    parser.add_argument("--width", type=whole(1, MOST), required=True, metavar="W", help="stitches bound off for each")
    parser.add_argument("--first", type=whole(1, MOST), default=3, metavar="M", help="stitches before the first (3)")
    parser.add_argument(
        "--last",
        type=whole(1, MOST),
        metavar="M",
        help="stitches after the last (what one hole leaves; else as before the first)",
    )


def answer(args: argparse.Namespace) -> Answer:
    """Say the row; raises ``Impossible`` when the band cannot hold the holes."""
    last = args.last
    if last is None:  # one hole leaves only one answer
        last = args.first if args.holes > 1 else max(args.stitches - args.first - args.width, 1)
    found = buttonholes(args.stitches, args.holes, args.width, args.first, last)
    return Answer(found.text, asdict(found))
