"""A rhythm: which spots of a section are picked, in walking order.

It is either ``Runs`` (what a hand remembers) or a ``Line`` (the most even there is). Both answer the same questions
and both are made only of whole numbers, which a journal can hold. Whoever uses a rhythm should not need to know
which of the two it has in hand.
"""

from finishing_tui.craft.line import Line
from finishing_tui.craft.runs import Run, Runs

__all__ = ["Line", "Rhythm", "Run", "Runs", "draw"]

Rhythm = Runs | Line


def draw(rhythm: Rhythm) -> str:
    """Draw a rhythm spot by spot in walking order: ``x`` picked, ``.`` skipped, ``2`` two loops in it."""
    return "".join(".x2"[rhythm.at(spot)] for spot in range(1, rhythm.spots + 1))
