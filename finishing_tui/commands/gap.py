"""``finishing gap``: extra loops where a hole would be, and what becomes of them."""

import argparse
from dataclasses import asdict

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gaps import extra_loops, grafted_gap

EXAMPLE = """a worked example:
  finishing gap 5 5
  Pick up 6 + 6 = 12 instead of 5 + 5 = 10: 1 extra loop beside each gap, lifted from top to bottom so that it lies as
  the others do. In round 2 work each extra loop together with the stitch beside it ...

an underarm that is grafted (both needles hold 10):
  finishing gap 10 10 --graft
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing gap`` takes."""
    parser.add_argument("parts", nargs="+", type=whole(1, MOST), metavar="STITCHES", help="planned for each part")
    parser.add_argument("--extra", type=whole(1, 4), default=1, metavar="N", help="extra loops beside each gap (1)")
    ending = parser.add_mutually_exclusive_group()
    ending.add_argument("--decrease-round", type=whole(1, 2), default=2, metavar="N", help="1 or 2 (2)")
    ending.add_argument("--graft", action="store_true", help="two needles to be grafted: nothing to decrease")


def answer(args: argparse.Namespace) -> Answer:
    """Say what to pick up; raises ``Impossible`` when a graft cannot match."""
    if args.graft:
        if len(args.parts) != 2:
            raise Impossible(f"A graft has two needles: give two counts, not {len(args.parts)}")
        found = grafted_gap(*args.parts, each=args.extra)
    else:
        found = extra_loops(args.parts, each=args.extra, decrease_round=args.decrease_round)
    return Answer(found.text, asdict(found))
