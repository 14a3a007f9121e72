"""``finishing evenly``: increase or decrease evenly in one row or round."""

import argparse

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.methods import METHODS
from finishing_tui.craft.shaping import evenly

EXAMPLE = f"""a worked example:
  finishing evenly 80 70 --flat
  Decrease 10 stitches evenly over 80, worked flat: k3, k2tog, (k6, k2tog) 9 times, k3.
  70 stitches are left after this row. k2tog: knit two stitches together.

in the round, with a method of your own:
  finishing evenly 48 60 --round --method kfb

methods: {", ".join(METHODS)}
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing evenly`` takes."""
    parser.add_argument("before", type=whole(1, MOST), help="stitches on the needle now")
    parser.add_argument("after", type=whole(1, MOST), help="stitches wanted after the row")
    lie = parser.add_mutually_exclusive_group()
    lie.add_argument("--flat", action="store_true", help="in a row: the edge stitches stay plain (default)")
    lie.add_argument("--round", action="store_true", help="in the round")
    parser.add_argument("--method", metavar="NAME", help="how to shape (default: k2tog or M1)")
    parser.add_argument(
        "--margin", type=whole(1, MOST), metavar="N", help="plain stitches at each edge of a row, at least (1)"
    )
    parser.add_argument(
        "--double",
        action="store_true",
        help="allow double decreases where singles don't fit (default without --method)",
    )
    parser.add_argument("--left-handed", action="store_true", help="swap the methods that lean: k2tog and ssk ...")


def answer(args: argparse.Namespace) -> Answer:
    """Say the row; raises ``Impossible`` when it cannot hold the shapings."""
    found = evenly(
        args.before,
        args.after,
        flat=not args.round,
        method=args.method,
        margin=args.margin,
        double=True if args.double else None,
        left_handed=args.left_handed,
    )
    data = {
        "before": found.before,
        "after": found.after,
        "flat": found.flat,
        "method": found.method.name,
        "shapings": [way.name for way in found.shapings],
        "plain": list(found.plain),
        "text": found.text,
        "sentence": found.sentence,
    }
    return Answer(found.sentence, data)
