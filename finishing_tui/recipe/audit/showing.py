"""Shows a sum in figures."""

import re
from collections.abc import Mapping, Sequence

from finishing_tui.recipe.audit.finding import SumPart

_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")


def added(before: int, parts: Sequence[SumPart]) -> str:
    """Return the sum of what was there and what was done: ``22 + 16 + 22 + 38 = 98``; empty where nothing was done."""
    terms = ([before] if before else []) + [part.change for part in parts]
    if len(terms) < 2:
        return ""
    shown = str(terms[0]) + "".join(f" {'-' if term < 0 else '+'} {abs(term)}" for term in terms[1:])
    return f"{shown} = {sum(terms)}"


def in_figures(text: str, numbers: Mapping[str, int]) -> str:
    """Return a sum with its names replaced by their numbers: ``28 + 16 + 2 * 22 + 4``."""
    return _NAME.sub(lambda name: str(numbers.get(name[0], name[0])), text)
