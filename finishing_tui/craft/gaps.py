"""Extra loops where a hole would open beside a gap, and what becomes of them.

The corner where live stitches meet a picked-up edge, and both ends of an underarm, pull open. One loop more than was
planned is lifted there and taken away again a round or two later, or grafted away in pairs. This module counts; the
ledger keeps the hole until it is closed with a tail.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.words import listing, plural


@dataclass(frozen=True, slots=True)
class ExtraLoops:
    """Loops lifted beside gaps in excess of the plan."""

    planned: tuple[int, ...]
    """Stitches planned for each part."""
    picked: tuple[int, ...]
    """Stitches really picked up for each part."""
    extra: int
    """How many more that is in all: as many are decreased later."""
    decrease_round: int | None
    """The round in which they go (1 or 2); None when the parts are grafted and every loop finds a partner."""
    text: str


def extra_loops(planned: Sequence[int], *, each: int = 1, decrease_round: int = 2) -> ExtraLoops:
    """Return what to pick up in place of ``planned``, with ``each`` extra loops a part, decreased in a later round.

    6 + 6 in place of 5 + 5, then 2 decreased, leaves the 10 that were planned. ``decrease_round`` is 1 or 2. Raises
    Impossible for counts out of range.
    """
    parts = _parts(planned)
    counted("the extra loops beside a gap", each, 1, 4)
    counted("the round that decreases them", decrease_round, 1, 2)
    picked = tuple(part + each for part in parts)
    extra = each * len(parts)
    text = (
        f"Pick up {_sum(picked)} = {sum(picked)} instead of {_sum(parts)} = {sum(parts)}: {plural(each, 'extra loop')} "
        f"beside each gap, lifted from top to bottom so that it lies as the others do. In round {decrease_round} work "
        f"each extra loop together with the stitch beside it (ssk before the gap, k2tog after it): "
        f"{plural(extra, 'decrease')}, {plural(sum(parts), 'stitch')} left. Draw the tail round the hole on the wrong "
        f"side."
    )
    return ExtraLoops(parts, picked, extra, decrease_round, text)


def grafted_gap(front: int, back: int, *, each: int = 1) -> ExtraLoops:
    """Return what both needles of a grafted underarm hold with ``each`` extra loops at each end of both.

    10 and 10 become 12 and 12 (J. Fee): the graft takes the extra loops as pairs, so none is decreased. Raises
    Impossible for counts out of range, or when the needles differ.
    """
    parts = _parts((front, back))
    counted("the extra loops at each end", each, 1, 4)
    if front != back:
        raise Impossible(
            f"{front} and {back} cannot be grafted pair by pair: make both needles hold the same number before adding"
        )
    picked = tuple(part + 2 * each for part in parts)
    text = (
        f"Lift {plural(each, 'extra loop')} at each end of both needles, {picked[0]} and {picked[1]} instead of "
        f"{front} and {back}, and graft {plural(picked[0], 'pair')}; nothing is left to decrease."
    )
    return ExtraLoops(parts, picked, 4 * each, None, text)


def undone(cast_on: int) -> int:
    """Return the live loops that a cast-on of ``cast_on`` stitches gives when it is undone: one fewer.

    The loops on the other side lie between the stitches (15 give 14, H. Briscoe). Raises Impossible below 2.
    """
    return counted("the stitches cast on", cast_on, 2) - 1


def _parts(planned: Sequence[int]) -> tuple[int, ...]:
    if not 1 <= len(planned) <= 100:
        raise Impossible(f"{len(planned)} parts cannot be worked: give the stitches of 1 to 100 parts")
    return tuple(counted("the stitches of a part", part) for part in planned)


def _sum(parts: tuple[int, ...]) -> str:
    return listing([str(part) for part in parts]) if len(parts) > 12 else " + ".join(str(part) for part in parts)
