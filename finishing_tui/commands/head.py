"""``finishing head``: does the neck go over the head."""

import argparse

from finishing_tui.commands.answer import Answer, typed, whole
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import read_number
from finishing_tui.craft.head import ORDINARY_STRETCH, opening, over_the_head
from finishing_tui.craft.lengths import read_length
from finishing_tui.craft.wearers import UNKNOWN_WEARER, Wearer, wearer_of

EXAMPLE = """a worked example:
  finishing head 104 --gauge 22 --wearer woman
  About 47.3 cm around, about 65.8 cm at full stretch: it should go over a head of 60 cm. Try it on. ...

with a head you have measured, and a bind-off that stretches to 1 1/4 of its length:
  finishing head 88 --gauge 24 --size "51 cm" --stretch 5/4

wearers: an age ("9 months", "2T", "18-24 months", "6 years"), newborn, baby, toddler, child, teen, woman, man, adult.
Between two ages of the table the older one's head is allowed for. The answer says which figure it took.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing head`` takes."""
    parser.add_argument("stitches", type=whole(1, MOST), help="stitches round the neck")
    parser.add_argument(
        "--gauge", type=typed(read_number), required=True, metavar="N", help="stitches of the band in 10 cm"
    )
    head = parser.add_mutually_exclusive_group(required=True)
    head.add_argument("--size", type=typed(read_length), metavar="LENGTH", help="the head, measured: '54 cm'")
    head.add_argument("--wearer", type=typed(_wearer), help="who will wear it: 'woman', 'child', '9 months', '2T'")
    parser.add_argument(
        "--stretch",
        type=typed(read_number),
        metavar="TIMES",
        help="full stretch, times the relaxed length (without it 16/11.5, near 1.39: an ordinary bind-off)",
    )


def answer(args: argparse.Namespace) -> Answer:
    """Say whether it goes over; raises ``Impossible`` for what cannot be."""
    wearer: Wearer | None = args.wearer
    stretch = ORDINARY_STRETCH if args.stretch is None else args.stretch
    found = over_the_head(opening(args.stitches, args.gauge), args.size if wearer is None else wearer.head, stretch)
    text = found.text if wearer is None else f"{found.text} The head is {wearer.basis}."
    data = {
        "relaxed_cm": str(found.relaxed.cm),
        "stretched_cm": str(found.stretched.cm),
        "head_cm": str(found.head.cm),
        "goes": found.goes,
        "text": text,
    }
    if wearer is not None:
        data["basis"] = wearer.basis
    return Answer(text, data)


def _wearer(text: str) -> Wearer:
    """Return who is meant; raises ``Impossible`` for a text that tells neither an age nor a child nor an adult."""
    wearer = wearer_of(text)
    if wearer is None:
        raise Impossible(f"no head is known for {text[:20]!r}: {UNKNOWN_WEARER}")
    return wearer
