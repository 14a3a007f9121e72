"""What could not be saved in an earlier sitting: asked about before its garment is picked up again."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from finishing_tui.garment.rescued import take_in, throw_away, tidied


@dataclass(frozen=True, slots=True)
class Settled:
    """What came of it: whether the garment may only be looked at, and what is to be said first."""

    look: bool
    lines: tuple[str, ...]


def settle(folder: Path, says_yes: Callable[[Sequence[str]], bool]) -> Settled:
    """Ask about each rescue file that fits the garment in ``folder``, until none does or one is left for later.

    ``says_yes`` says lines and returns whether the answer to them was yes. Raises ``FinishingError`` where entries
    cannot be taken in; they are where they were then.
    """
    lines: list[str] = []
    while True:
        found = tidied(folder)
        fitting = found.fits
        if fitting is None:
            return Settled(look=False, lines=(*lines, *found.others))
        if says_yes([*lines, *fitting.told, f"{fitting.question} Type yes or no."]):
            take_in(folder, fitting)
            lines = [fitting.taken]
        elif says_yes(["Throw away what you counted then? Type yes or no; no leaves it where it is."]):
            throw_away(fitting)
            lines = ["thrown away."]
        else:
            return Settled(look=True, lines=(fitting.left,))
