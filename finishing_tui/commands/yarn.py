"""``finishing yarn``: how much yarn an edge takes, and whether what is left will do."""

import argparse
from fractions import Fraction
from typing import Any

from finishing_tui.commands.answer import Answer, typed
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import read_number, rounded
from finishing_tui.craft.lengths import Length, read_length, say_length
from finishing_tui.craft.words import decimal, listing
from finishing_tui.craft.yarn import CLOSE_A_HOLE, OPERATIONS, WEAVE_IN, in_weight, needed, rounds_left, will_it_do

EXAMPLE = f"""OPERATION is one of: {", ".join(OPERATIONS)}.

worked examples:
  finishing yarn bind-off 60 cm
  For the bind-off of an edge of 60 cm: 240 cm, 4 times its width (published: 3 to 6 times, 180 cm to 360 cm), and
  15 cm (about 6 in) more for the tail.

  finishing yarn sewn 60 cm --have "250 cm"      will 250 cm do? (a sewn bind-off goes by the stretched width)
  finishing yarn weight 80 --ball 113 --metres 384   80 g left of a ball of 113 g and 384 m
  finishing yarn rounds 27 24 --between 1/2      27 g, half a round, 24 g: how many rounds are left?
  finishing yarn tail                            how long a tail to leave
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare what ``finishing yarn`` takes."""
    parser.add_argument("what", metavar="OPERATION|weight|rounds|tail", help="what to work out")
    parser.add_argument(
        "given", nargs="*", metavar="AMOUNT", help="the width; the grams left; the two weighings in grams"
    )
    parser.add_argument("--have", type=typed(read_length), metavar="LENGTH", help="the yarn in hand: '250 cm'")
    parser.add_argument("--ball", type=typed(read_number), metavar="GRAMS", help="with weight: what a ball weighs")
    parser.add_argument("--metres", type=typed(read_number), metavar="M", help="with weight: meters in that ball")
    parser.add_argument(
        "--between", type=typed(read_number), metavar="ROUNDS", help="with rounds: worked between the weighings (1)"
    )


def answer(args: argparse.Namespace) -> Answer:
    """Say the answer to what was asked; raises ``Impossible`` for what cannot be read or reckoned."""
    what = args.what.lower()
    allowed = {"weight": {"ball", "metres"}, "rounds": {"between"}, "tail": set[str]()}.get(what, {"have"})
    for option in ("have", "ball", "metres", "between"):
        if getattr(args, option) is not None and option not in allowed:
            raise Impossible(f"--{option} has no meaning with {args.what[:20]!r}: leave it out")
    if what == "tail":
        return _tail(args)
    if what == "weight":
        return _weight(args)
    if what == "rounds":
        return _rounds(args)
    return _operation(args)


def _taken(args: argparse.Namespace, count: int, wanted: str) -> list[str]:
    given: list[str] = args.given
    if len(given) != count:
        raise Impossible(f"'finishing yarn {args.what[:20]}' takes {wanted}: {len(given)} given")
    return given


def _operation(args: argparse.Namespace) -> Answer:
    words = [args.what, *args.given]  # typed without quotes, "mattress seam 60 cm" comes as four
    at = next((at for at, word in enumerate(words) if word[0:1].isdigit()), len(words))
    name = " ".join(words[:at])
    need = needed(name, Length(Fraction(1)))  # an unknown operation is the first thing to say
    if at == len(words):
        raise Impossible(f"How wide is the edge: 'finishing yarn {need.operation} 60 cm' would be one of 60 cm")
    need = needed(name, read_length(" ".join(words[at:])))
    data: dict[str, Any] = {
        "operation": need.operation,
        "least_cm": str(need.least.cm),
        "usual_cm": str(need.usual.cm),
        "most_cm": str(need.most.cm),
        "tail_cm": str(WEAVE_IN.cm),
    }
    text = need.text
    if args.have is not None:
        verdict, sentence = will_it_do(need, args.have)
        data["verdict"] = verdict
        text = f"{text} {sentence}"
    return Answer(text, data | {"text": text})


def _grams(text: str) -> Fraction:
    return read_number(text.removesuffix("g"))


def _weight(args: argparse.Namespace) -> Answer:
    (grams,) = (_grams(each) for each in _taken(args, 1, "one weight, the grams left"))
    if args.ball is None or args.metres is None:
        raise Impossible("A weight says nothing without the yarn's label: give --ball GRAMS and --metres M too")
    metres = in_weight(grams, args.ball, args.metres)
    text = f"{decimal(grams)} g of a yarn of {decimal(args.ball)} g to {decimal(args.metres)} m hold "
    text += f"about {rounded(metres)} m." if metres >= 10 else f"about {decimal(metres)} m."
    return Answer(text, {"metres": str(metres), "text": text})


def _rounds(args: argparse.Namespace) -> Answer:
    weighings = _taken(args, 2, "two weighings in grams, the earlier first")
    before, after = (_grams(each) for each in weighings)
    found = rounds_left(before, after, args.between if args.between is not None else Fraction(1))
    data = {
        "grams_per_round": str(found.per_round),
        "grams_to_bind_off": str(found.bind_off),
        "rounds": found.rounds,
        "safe_rounds": found.safe_rounds,
        "can_bind_off": found.can_bind_off,
        "text": found.text,
    }
    return Answer(found.text, data)


def _tail(args: argparse.Namespace) -> Answer:
    _taken(args, 0, "nothing more")
    hole = listing([say_length(each) for each in CLOSE_A_HOLE], "to")
    text = (
        f"Leave {say_length(WEAVE_IN)} (about 6 in) to weave in, and {hole} (12 to 18 in) where the tail will close an "
        f"underarm or a corner."
    )
    return Answer(
        text,
        {"weave_in_cm": str(WEAVE_IN.cm), "close_a_hole_cm": [str(each.cm) for each in CLOSE_A_HOLE], "text": text},
    )
