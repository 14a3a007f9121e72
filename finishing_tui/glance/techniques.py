"""The techniques that help at a step; they are read when they are asked for, since most sittings need none."""

from functools import cache
from typing import TYPE_CHECKING

from finishing_tui import shipped
from finishing_tui.garment.state import State
from finishing_tui.recipe.techniques import Technique, helping_at

if TYPE_CHECKING:
    from collections.abc import Sequence


@cache
def all_techniques() -> tuple[Technique, ...]:
    """Return every technique that comes with the program, by title.

    Raises ``FinishingError`` with a sentence when the install lacks them, or one cannot be read.
    """
    # The reader loads pydantic; a garment under way is taken up without it.
    from finishing_tui.recipe.reader.techniques import read_technique  # noqa: PLC0415

    return tuple(sorted(map(read_technique, shipped.techniques().values()), key=lambda one: one.title))


def techniques_for(state: State, looking_at: int | None = None) -> tuple[Technique, ...]:
    """Return the techniques that help at the step under the needles, or at the one that is looked at, best first.

    None help when every step is done. Raises ``FinishingError`` as ``all_techniques`` does.
    """
    step = state.current if looking_at is None else looking_at
    return () if step is None else helping_at(state.plan.step(step), all_techniques())


def others(helping: "Sequence[Technique]") -> tuple[Technique, ...]:
    """Return the techniques that are not among ``helping``, by title."""
    return tuple(one for one in all_techniques() if one not in helping)
