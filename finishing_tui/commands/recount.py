"""``finishing recount``: after a count on the way, how the rest lies, how it should go, and how far to rip back."""

import argparse
from fractions import Fraction
from typing import Any

from finishing_tui.commands.answer import Answer, whole
from finishing_tui.commands.rhythms import add_style, drawn, ratio, rhythm_data
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.open_edges import FOLD_OFF, at_the_fold
from finishing_tui.craft.recount import Recount, recount
from finishing_tui.craft.unknown_row import CountedAt, place, second_half
from finishing_tui.craft.words import many, number, plural

EXAMPLE = """\
example: 71 stitches wanted from 88 rows; at row 44 there are 33 loops

  $ finishing recount 71 88 --at 44 --counted 33 --unit row
  33 of 71 at row 44 of 88. Pick up 38 over the last 44 rows.
  Re-spaced, the rest shows a little: 2.5 stitches too many for its rows (7%).
  1. Pick up 38 stitches over the last 44 rows: 6 of every 7, four times, then 7 of every 8, twice.
  2. Go on at the rate your gauge gives (4 of every 5, four times, then 5 of every 6, four times): that gives 69; \
increase 2 evenly in the first row or round.
  3. Rip back to row 38 (29 stitches). From there it lies flat: 5 of every 6, six times, then 6 of every 7, twice.

  The rest, re-spaced:

  xxxxxx.xxxxxx.xxxxxx.xxxxxx.xxxxxxx.xxxxxxx.
  (x pick, . skip; in the order you walk)

If you don't know the rows, fold the edge and mark its half; there, use --half and the rhythm you kept:

  $ finishing recount 75 --half --counted 36 --rhythm 2/3
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("stitches", metavar="STITCHES", type=whole(1, MOST), help="stitches wanted from the whole edge")
    parser.add_argument(
        "spots", metavar="SPOTS", nargs="?", type=whole(1, MOST), help="spots of the whole edge, if you know them"
    )
    parser.add_argument("--counted", metavar="N", type=whole(0, MOST), required=True, help="loops there are now")
    parser.add_argument("--at", metavar="S", type=whole(0, MOST), help="you are at this spot (the last one walked)")
    parser.add_argument("--left", metavar="S", type=whole(0, MOST), help="so many spots are left")
    parser.add_argument(
        "--half", action="store_true", help="you are halfway; with --at or --left and no SPOTS, those are one half"
    )
    parser.add_argument(
        "--rhythm", metavar="A/B", type=ratio, help="the natural ratio of this edge, or the rhythm you kept: 2/3"
    )
    parser.add_argument(
        "--confirmed",
        metavar=("LOOPS", "SPOT"),
        nargs=2,
        type=whole(0, MOST),
        default=(0, 0),
        help="the last count before this one that was right, and where",
    )
    parser.add_argument("--per-10cm", metavar="N", type=whole(1, 1000), help="band stitches in 10 cm (default: 20)")
    add_style(parser)


def answer(args: argparse.Namespace) -> Answer:
    """Answer with what is left, how it lies and what to do.

    Raises:
        Impossible: too little is known, or the numbers contradict each other.

    """
    found = place(
        args.stitches,
        args.spots,
        counted=args.counted,
        at=args.at,
        left=args.left,
        half=args.half,
        rhythm=args.rhythm,
    )
    if found is None:
        return _by_the_first_half(args)
    _refuse_confirmed(args, found.at)
    done = recount(
        args.stitches,
        found.spots,
        at=found.at,
        counted=args.counted,
        confirmed=(args.confirmed[0], args.confirmed[1]),
        natural=args.rhythm,
        style=args.style,
        ends=args.ends,
        per_10cm=args.per_10cm,
        unit=args.unit,
    )
    folded = args.half and args.spots is None
    text = _text(done, found, args.unit, FOLD_OFF if folded else 1)
    data = _data(done, found, every=args.picked)
    if folded and (left := args.stitches - args.counted) > 0:
        lies = at_the_fold(left, found.at, done.natural, target=args.stitches, per_10cm=args.per_10cm)
        data["verdict"] = None if lies is None else lies.value.replace("-", " ")
        text += "" if lies is not None else _FOLDED.format(off=FOLD_OFF, unit=many(args.unit))
    return Answer(text, data)


_FOLDED = """

A fold finds the half give or take {off} {unit}, and over that range it does not lie the same everywhere: count the \
{unit} that are left when about an inch remains."""


def _refuse_confirmed(args: argparse.Namespace, at: int) -> None:
    """Raise ``Impossible`` for a last count that lies beyond this one, or had more loops than there are now."""
    loops, spot = args.confirmed
    if spot > at or loops > args.counted:
        raise Impossible(
            f"the count before ({loops} loops at {args.unit} {spot}) does not lie before this one "
            f"({args.counted} at {at}): leave out --confirmed if loops were taken out since"
        )


def _by_the_first_half(args: argparse.Namespace) -> Answer:
    """Answer where neither spots nor rhythm are known: the first half is the measure."""
    half = second_half(args.stitches, counted=args.counted, per_10cm=args.per_10cm, unit=args.unit)
    judged = half.judgement
    data = {
        "left": {"stitches": half.stitches, "spots": None},
        "at": None,
        "spots": None,
        "spots_sure": False,
        "picked": None,
        "runs": None,
        "text": half.text,
        **_judged(judged.off, judged.change, judged.verdict),
        "rip_back_to": None,
    }
    return Answer(half.text, data)


def _data(done: Recount, found: CountedAt, *, every: bool) -> dict[str, Any]:
    """Return the JSON; ``picked`` counts spots from the next one, which is 1."""
    back = done.rip_back
    return {
        "left": {"stitches": done.stitches_left, "spots": done.spots_left},
        "at": found.at,
        "spots": found.spots,
        "spots_sure": found.sure,
        "text": done.text,
        **rhythm_data(done.rhythm, every=every),
        **_judged(done.off, done.change, done.verdict),
        "rip_back_to": None if back is None else {"spot": back.spot, "loops": back.loops},
        "repairs": [
            {"repair": way.mend, "total": way.total, "difference": way.difference, "text": way.text}
            for way in done.repairs
        ],
    }


def _judged(off: Fraction, change: Fraction, verdict: Verdict) -> dict[str, str]:
    return {"off": str(off), "change": str(change), "verdict": verdict.value.replace("-", " ")}


def _text(done: Recount, found: CountedAt, unit: str, off: int) -> str:
    """Return the answer for people; ``off``: how far the spots may be off where they were worked out."""
    parts = [done.text]
    if not found.sure:
        parts.append(
            f"The {many(unit)} are worked out, not counted ({plural(found.spots, unit)} in all, "
            f"give or take {number(off)}): "
            f"if the edge ends a {unit} sooner or later, it is the count that must come out."
        )
    if done.rhythm is not None and done.rhythm.stitches:
        picture = drawn(done.rhythm)
        parts += [f"The rest, re-spaced:\n\n{picture}"] if picture else []
    return "\n\n".join(parts)
