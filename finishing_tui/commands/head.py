"""``finishing head``: does the neck go over the head."""

import argparse

from finishing_tui.commands.answer import Answer, typed, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.figures import read_number
from finishing_tui.craft.head import HEADS, ORDINARY_STRETCH, head_of, opening, over_the_head
from finishing_tui.craft.lengths import Length, read_length
from finishing_tui.recipe.audit.looks.head import AGE, head_for

EXAMPLE = f"""a worked example:
  finishing head 104 --gauge 22 --wearer woman
  About 47.3 cm round, about 65.8 cm at full stretch: it goes over a head of 60 cm. ...

with a head you have measured, and a bind-off that stretches to 1 1/4 of its length:
  finishing head 88 --gauge 24 --size "51 cm" --stretch 5/4

wearers: {", ".join(HEADS)}; or an age: '6 years'. For children beyond the table the smallest woman's head is allowed
for, from ten years on the smallest man's.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing head`` takes."""
    parser.add_argument("stitches", type=whole(1, MOST), help="stitches round the neck")
    parser.add_argument(
        "--gauge", type=typed(read_number), required=True, metavar="N", help="stitches of the band in 10 cm"
    )
    head = parser.add_mutually_exclusive_group(required=True)
    head.add_argument("--size", type=typed(read_length), metavar="LENGTH", help="the head, measured: '54 cm'")
    head.add_argument("--wearer", help="whose head it is, from the table, or an age: 'woman', '24 months', '6 years'")
    parser.add_argument(
        "--stretch",
        type=typed(read_number),
        metavar="TIMES",
        help="full stretch, times the relaxed length (without it 16/11.5, near 1.39: an ordinary bind-off)",
    )


def answer(args: argparse.Namespace) -> Answer:
    """Say whether it goes over; raises ``Impossible`` for what cannot be."""
    head = args.size if args.size is not None else _head_of(args.wearer)
    stretch = ORDINARY_STRETCH if args.stretch is None else args.stretch
    found = over_the_head(opening(args.stitches, args.gauge), head, stretch)
    data = {
        "relaxed_cm": str(found.relaxed.cm),
        "stretched_cm": str(found.stretched.cm),
        "head_cm": str(found.head.cm),
        "goes": found.goes,
        "text": found.text,
    }
    return Answer(found.text, data)


def _head_of(wearer: str) -> Length:
    """Return the head to allow for; raises ``Impossible`` for who is neither in the table nor named by an age."""
    return head_for(wearer)[0] if AGE.fullmatch(" ".join(wearer.split())) else head_of(wearer)
