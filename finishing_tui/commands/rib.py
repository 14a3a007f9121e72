"""``finishing rib``: whether a band comes out in its rib, and where the rib stands on it."""

import argparse
from typing import Any

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.ribs import (
    Rib,
    added,
    balanced,
    centred,
    edges_mirror,
    fitting,
    in_the_round,
    nearest,
    read_rib,
    seamed,
    start_of_round,
)
from finishing_tui.craft.totals import Repeat

EXAMPLE = """a worked example:
  finishing rib k2p2 169 --round
  169 stitches do not fit the repeat (4m): work 1 fewer (168) or 3 more (172) in the set-up round.

with the parts of a band, and the total a pattern prints:
  finishing rib k1p1 18 15 18 11 24 12 --round --printed 97

with a rib centered after the 50th stitch of the round:
  finishing rib k2p2 100 --round --middle 50
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing rib`` takes."""
    parser.add_argument("rib", help="the rib: k2p2, k1p1, k3p2 ...")
    parser.add_argument("parts", nargs="+", type=whole(0, MOST), metavar="STITCHES", help="the band, or its parts")
    lie = parser.add_mutually_exclusive_group()
    lie.add_argument("--flat", action="store_true", help="worked flat, both edges alike (default)")
    lie.add_argument("--round", action="store_true", help="in the round")
    lie.add_argument("--seam", choices=("half", "full"), help="sewn into a tube: half or full edge stitches taken in")
    parser.add_argument("--middle", type=whole(0, MOST), metavar="N", help="in the round: center a rib after stitch N")
    parser.add_argument("--printed", type=whole(1, MOST), metavar="N", help="the total that the pattern prints")


def answer(args: argparse.Namespace) -> Answer:
    """Say whether the band fits its rib, and how it begins; raises ``Impossible`` for what cannot be read."""
    rib = read_rib(args.rib)
    if args.middle is not None and not args.round:
        raise Impossible("--middle is for a band in the round: add --round, or leave it out (a flat row is centered)")
    repeat = _repeat(rib, args)
    band = added(args.parts, repeat, args.printed) if len(args.parts) > 1 or args.printed else None
    total = sum(args.parts)
    near = nearest(total, repeat.of, repeat.plus)
    said = [band.text if band else fitting(total, repeat)]
    data: dict[str, Any] = {"total": total, "repeat": str(repeat), "fits": repeat.holds(total), "nearest": list(near)}
    if args.seam:
        said.append(_sewn(rib, args.seam))
    elif args.round and args.middle is not None:
        placed = start_of_round(total, rib, args.middle)
        said.append(placed.text)
        data |= {"row": placed.row, "middle": placed.middle}
    elif not args.round:
        data["edges_mirror"] = edges_mirror(total, rib)
        if not repeat.holds(total):
            said.append(_centred(total, rib, data))
    text = " ".join(sentence for sentence in said if sentence)
    return Answer(text, data | {"text": text})


def _repeat(rib: Rib, args: argparse.Namespace) -> Repeat:
    if args.seam:
        return seamed(rib, "half stitch" if args.seam == "half" else "full stitch").alike
    return in_the_round(rib) if args.round else balanced(rib)


def _sewn(rib: Rib, seam: str) -> str:
    turned = seamed(rib, "half stitch" if seam == "half" else "full stitch").turned
    if turned is None:
        return "Every piece begins with the same stitch of the rib."
    return (
        f"This is for pieces that begin alike; of two, one begun k{rib.knit} and one p{rib.purl}, each takes {turned}."
    )


def _centred(total: int, rib: Rib, data: dict[str, Any]) -> str:
    try:
        placed = centred(total, rib)
    except Impossible:
        return ""
    data |= {"row": placed.row, "middle": placed.middle}
    return f"Or keep the count: {placed.text[0].lower()}{placed.text[1:]}"
