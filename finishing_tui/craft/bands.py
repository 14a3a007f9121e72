"""A band as its parts: whether their sum is what is printed, and which part the print has left out.

Patterns print the total and most of the parts; an error in either only shows when they are added.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.ribs import fitting
from finishing_tui.craft.totals import EVERY, Repeat


@dataclass(frozen=True, slots=True)
class Band:
    """The parts of a band added up."""

    total: int
    fits: bool
    """Whether the total is of the repeat asked for."""
    text: str


def added(parts: Sequence[int], repeat: Repeat = EVERY, printed: int | None = None) -> Band:
    """Return the total of ``parts`` (stitches), checked against the repeat and the ``printed`` total if there is one.

    Raises Impossible for counts out of range.
    """
    if not parts:
        raise Impossible("a band without parts cannot be added up: give the stitches of each part")
    for part in parts:
        counted("the stitches of a part", part, 0)
    total = counted("the stitches of the band", sum(parts))
    text = f"{' + '.join(str(part) for part in parts)} = {total}. " if len(parts) <= 24 else f"{total} in all. "
    if printed is not None and printed != total:
        text += f"The pattern prints {printed}, which is {abs(printed - total)} {_beside(printed, total)}. "
    return Band(total, repeat.holds(total), text + fitting(total, repeat) if repeat != EVERY else text.strip())


def left_out(printed: int, parts: Sequence[int]) -> int:
    """Return the stitches of the one part that is not among ``parts`` of a band of ``printed`` stitches.

    Raises Impossible when the parts already hold more than the band.
    """
    counted("the stitches of the band", printed)
    rest = printed - sum(counted("the stitches of a part", part, 0) for part in parts)
    if rest < 0:
        raise Impossible(f"the parts hold {printed - rest} stitches and the band only {printed}: one of them is wrong")
    return rest


def _beside(printed: int, total: int) -> str:
    return "too many" if printed > total else "too few"
