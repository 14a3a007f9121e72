"""Sums in a recipe: ``"back_neck + 2 * side + 4"``, worked out for one size.

The grammar is design.md's: whole numbers, names, ``+ - * ( )``. A sum is read into a flat list in postfix order, so
neither a long nor a deeply nested one can exhaust the stack, and no text is ever handed to Python itself.
"""

import re
from collections.abc import Mapping
from functools import lru_cache

from finishing_tui.craft import counts
from finishing_tui.craft.errors import FinishingError

MOST = counts.MOST
"""No count in a recipe, written or worked out, is larger than this."""

_TOKEN = re.compile(r"\s*(?:(?P<number>\d+)|(?P<name>[A-Za-z_][A-Za-z0-9_]*)|(?P<sign>[-+*()]))")
_BINDS = {"+": 1, "-": 1, "*": 2}


class BadSum(FinishingError):
    """A sum that cannot be read, names something that is not there, or comes out where no count can be."""


@lru_cache(maxsize=4096)
def postfix(text: str) -> tuple[int | str, ...]:
    """Read ``text`` into postfix order: whole numbers, names (not signs), and the signs ``+ - *``.

    Raises ``BadSum`` when it is not a sum.
    """
    out: list[int | str] = []
    waiting: list[str] = []  # signs and open brackets not yet placed
    at, wants_value = 0, True
    text = text.rstrip()
    while at < len(text):
        token = _TOKEN.match(text, at)
        if token is None or wants_value != (token["sign"] in {None, "("}):
            found = text[at:].strip()[:1]
            wanted = "a number, a name or '('" if wants_value else "+, -, * or ')'"
            raise BadSum(f"the sum {text!r} has {found!r} where {wanted} should stand")
        at = token.end()
        if token["number"] is not None:
            out.append(_small(token["number"], text))
            wants_value = False
        elif token["name"] is not None:
            out.append(token["name"])
            wants_value = False
        elif token["sign"] == "(":
            waiting.append("(")
        elif token["sign"] == ")":
            while waiting and waiting[-1] != "(":
                out.append(waiting.pop())
            if not waiting:
                raise BadSum(f"the sum {text!r} closes a bracket that was never opened")
            waiting.pop()
        else:
            while waiting and waiting[-1] != "(" and _BINDS[waiting[-1]] >= _BINDS[token["sign"]]:
                out.append(waiting.pop())
            waiting.append(token["sign"])
            wants_value = True
    if wants_value:
        raise BadSum(f"the sum {text!r} ends where a number or a name should stand")
    if "(" in waiting:
        raise BadSum(f"the sum {text!r} opens a bracket that is never closed")
    return (*out, *reversed(waiting))


def names_in(text: str) -> tuple[str, ...]:
    """Return the names a sum uses, in the order they come. Raises ``BadSum`` when it is not a sum."""
    return tuple(part for part in postfix(text) if isinstance(part, str) and part not in _BINDS)


def work_out(text: str, numbers: Mapping[str, int]) -> int:
    """Return what the sum comes to with these ``numbers``.

    Raises ``BadSum`` when it cannot be read, names a number that is not there, or passes 100,000 on the way.
    """
    stack: list[int] = []
    for part in postfix(text):
        if isinstance(part, int):
            stack.append(part)
        elif part in _BINDS:
            right, left = stack.pop(), stack.pop()
            stack.append(left + right if part == "+" else left - right if part == "-" else left * right)
        elif part in numbers:
            stack.append(numbers[part])
        else:
            raise BadSum(f"the sum {text!r} names {part!r}, which is not a number of this recipe")
        if abs(stack[-1]) > MOST:
            raise BadSum(f"the sum {text!r} comes to {stack[-1]}, and no count is above {MOST:,}")
    return stack[0]


def _small(digits: str, text: str) -> int:
    if len(digits) > 6 or int(digits) > MOST:
        raise BadSum(f"the sum {text!r} has a number above {MOST:,}")
    return int(digits)
