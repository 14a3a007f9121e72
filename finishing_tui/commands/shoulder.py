"""``finishing shoulder``: a sloped shoulder in steps, and stepped bind-offs turned into short rows."""

import argparse
from dataclasses import asdict

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.shoulders import stepped, steps

EXAMPLE = """a worked example:
  finishing shoulder 16 --steps 3
  16 stitches in 3 steps: 5, 5 and 6; 2 turns.

"bind off 10 stitches at the beginning of the next 6 rows", of 103, for a three-needle bind-off later:
  finishing shoulder 103 --each 10 --rows 6
  In place of binding off, leave 10, 20 and 30 stitches unworked at the end of the rows, in turn on each side: 30
  stitches live for each shoulder and 43 between them.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing shoulder`` takes."""
    parser.add_argument(
        "stitches", type=whole(1, MOST), help="of the shoulder; with --each and --rows, of the whole row"
    )
    parser.add_argument("--steps", type=whole(1, MOST), metavar="N", help="steps of one shoulder")
    parser.add_argument("--each", type=whole(1, MOST), metavar="N", help="stitches printed for each bind-off")
    parser.add_argument("--rows", type=whole(2, MOST), metavar="N", help="rows that begin with one")


def answer(args: argparse.Namespace) -> Answer:
    """Say the steps; raises ``Impossible`` when they do not fit."""
    if args.steps is not None and args.each is None and args.rows is None:
        slope = steps(args.stitches, args.steps)
        return Answer(slope.text, asdict(slope))
    if args.steps is None and args.each is not None and args.rows is not None:
        found = stepped(args.stitches, args.each, args.rows)
        data = {"left_unworked": list(found.left_unworked), "live": found.live, "middle": found.middle}
        return Answer(found.text, data | {"text": found.text})
    raise Impossible("Give --steps N for one shoulder, or both --each N and --rows N for a printed line of bind-offs")
