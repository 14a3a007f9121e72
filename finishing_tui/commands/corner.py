"""``finishing corner``: the rounds of a mitred band or of a V, with the count after each."""

import argparse

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.mitres import Round, inside, outside, vee
from finishing_tui.craft.words import plural

EXAMPLE = """a worked example:
  finishing corner 30 32 --rounds 4 --every 2        a V: 30 and 32 stitches beside one center stitch
  Work to 1 stitch before the center stitch, centered double decrease (slip two together knitwise, knit one, pass the
  two over it), work to the end: 2 stitches fewer, in every other round from round 1 on, 2 times; 63 stitches become 59.
  Count after each round: 61, 61, 59, 59.

  finishing corner 31 --rounds 3                     one inside corner
  finishing corner 100 --rounds 4 --outside --corners 4 --every 2
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing corner`` takes."""
    parser.add_argument(
        "stitches", nargs="+", type=whole(1, MOST), metavar="STITCHES", help="the band; or both sides of a V"
    )
    parser.add_argument("--rounds", type=whole(1, 1_000), required=True, metavar="N", help="rounds of the band")
    parser.add_argument("--every", type=whole(1, 1_000), metavar="N", help="shape every so many rounds (1; outside 2)")
    parser.add_argument("--first", type=whole(1, 1_000), default=1, metavar="N", help="the first shaped round (1)")
    parser.add_argument("--corners", type=whole(1, 100), metavar="N", help="corners of the band (1)")
    parser.add_argument("--outside", action="store_true", help="corners that spread: two stitches more at each")


def answer(args: argparse.Namespace) -> Answer:
    """Say the counts; raises ``Impossible`` when the stitches run out."""
    if len(args.stitches) > 2:
        raise Impossible(f"A band is one count and a V two, its sides: {len(args.stitches)} were given")
    if len(args.stitches) == 2:
        if args.outside or args.corners:
            raise Impossible("A V has one corner and draws in: leave --outside and --corners out, or give one count")
        left, right = args.stitches
        found = vee(left, right, args.rounds, every=args.every or 1, first=args.first)
        return _told(found.text, found.rounds)
    work = outside if args.outside else inside
    every = args.every or (2 if args.outside else 1)
    corners = args.corners or 1
    rounds = work(args.stitches[0], args.rounds, corners=corners, every=every, first=args.first)
    more = "more" if args.outside else "fewer"
    how = "make one on each side of the corner stitch" if args.outside else "a centered double decrease"
    at = plural(corners, "corner")
    shaped = sum(1 for each in rounds if each.shaped)
    text = (
        f"{plural(2 * corners, 'stitch')} {more} in each of {plural(shaped, 'round')} ({how}, at {at}): "
        f"{plural(args.stitches[0], 'stitch')} become {rounds[-1].count}."
    )
    return _told(text, rounds)


def _told(text: str, rounds: tuple[Round, ...]) -> Answer:
    counts = [each.count for each in rounds]
    text += f" Count after each round: {', '.join(map(str, counts))}."
    return Answer(text, {"counts": counts, "shaped": [each.number for each in rounds if each.shaped], "text": text})
