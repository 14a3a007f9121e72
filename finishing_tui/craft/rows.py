"""A row in words: what is done over and over is said once, as a knitter writes it.

``k3, k2tog, (k6, k2tog) 9 times, k3``; a repeat within a repeat stands in square brackets. Nothing here computes a
count: it only shortens what another module laid out stitch by stitch.
"""

from collections.abc import Sequence
from itertools import groupby

from finishing_tui.craft.words import times

_LONGEST = 16
"""The longest group worth saying as one repeat; beyond it nobody keeps the place."""


def _again(words: str, count: int, left: str = "(", right: str = ")") -> str:
    """Say ``words`` done ``count`` times; a single word needs no brackets."""
    if count == 1:
        return words
    if "," not in words and left == "(":
        return f"{words} {times(count, figures=True)}"
    return f"{left}{words}{right} {times(count, figures=True)}"


def _repeats(tokens: Sequence[str], start: int, period: int) -> int:
    """Return how many times the ``period`` tokens at ``start`` stand there one after the other."""
    count, block, at = 1, tokens[start : start + period], start + period
    while tokens[at : at + period] == block:
        count += 1
        at += period
    return count


def told(phrases: Sequence[str]) -> str:
    """Return ``phrases`` (one group each, in the order worked) as one row, repeats said once.

    A phrase may itself hold commas (``k6, k2tog``). Equal neighbours are folded first, then groups of up to 16 of
    those, whichever saves the most words at each place.
    """
    tokens = [_again(phrase, sum(1 for _ in same)) for phrase, same in groupby(phrases)]
    said: list[str] = []
    at = 0
    while at < len(tokens):
        best, period = 1, 1
        for length in range(2, min(_LONGEST, (len(tokens) - at) // 2) + 1):
            count = _repeats(tokens, at, length)
            if (count - 1) * length > (best - 1) * period:
                best, period = count, length
        block = ", ".join(tokens[at : at + period])
        left, right = ("[", "]") if "(" in block else ("(", ")")
        said.append(_again(block, best, left, right))
        at += best * period
    return ", ".join(said)


def plain(count: int, ground: str = "k") -> list[str]:
    """Return the word for ``count`` plain stitches, or none at all for none."""
    return [f"{ground}{count}"] if count else []
