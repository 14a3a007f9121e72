"""Shows a sum in figures and says which of its parts would mend it, the likeliest first."""

import re
from collections.abc import Mapping, Sequence

from finishing_tui.craft.words import listing
from finishing_tui.recipe.audit.finding import SumPart
from finishing_tui.recipe.sums import BadSum, names_in, work_out

_MOST_SHOWN = 3
"""Parts named in one suggestion."""

_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")


def added(before: int, parts: Sequence[SumPart]) -> str:
    """Return the sum of what was there and what was done: ``22 + 16 + 22 + 38 = 98``; empty where nothing was done."""
    terms = ([before] if before else []) + [part.change for part in parts]
    if len(terms) < 2:
        return ""
    shown = str(terms[0]) + "".join(f" {'-' if term < 0 else '+'} {abs(term)}" for term in terms[1:])
    return f"{shown} = {sum(terms)}"


def instead(parts: Sequence[SumPart], wanted: int, found: int, pairs: Mapping[str, str]) -> str:
    """Return what would give ``wanted`` in place of ``found``: other numbers for single parts, or another print.

    ``pairs``: the sections that mirror each other, by name, both ways.
    """
    off = found - wanted
    ways: list[str] = []
    told: set[str] = set()
    for part in sorted((part for part in parts if part.free), key=lambda part: _unlikely(part, off)):
        if part.title in told:
            continue
        told |= {part.title, pairs.get(part.title, "")}
        both = part.title in pairs
        each = off // 2 if both and off % 2 == 0 else off
        new = part.change - each
        if not 1 <= new <= 2 * part.spots:
            continue
        if not both:
            edge = f", one for each of its {part.spots} stitches" if _one_each(part, off) else ""
            ways.append(f"{new} from {part.title} instead of {part.change}{edge}")
        elif each is off:
            ways.append(f"{new} on one side ({part.title} or {pairs[part.title]}) instead of {part.change}")
        else:
            ways.append(f"{new} on each side ({part.title} and {pairs[part.title]}) instead of {part.change}")
        if len(ways) == _MOST_SHOWN or _one_each(part, off):
            break
    if not ways:
        return f"print {found}"
    return f"{wanted} would need {listing(ways, 'or')}; else print {found}"


def _one_each(part: SumPart, off: int) -> bool:
    return part.unit == "stitch" and part.change - off == part.spots


def _unlikely(part: SumPart, off: int) -> tuple[bool, int]:
    """Return a key by which the likeliest part to be wrong comes first: one a stitch, then the largest."""
    return not _one_each(part, off), -part.change


def in_figures(text: str, numbers: Mapping[str, int]) -> str:
    """Return a sum with its names replaced by their numbers: ``28 + 16 + 2 * 22 + 4``."""
    return _NAME.sub(lambda name: str(numbers.get(name[0], name[0])), text)


def other_numbers(text: str, numbers: Mapping[str, int], wanted: int) -> list[str]:
    """Return what single numbers of a sum would have to be for it to come to ``wanted``: "side 22 instead of 23"."""
    found = work_out(text, numbers)
    ways = []
    for name in dict.fromkeys(names_in(text)):
        try:
            weight = work_out(text, {**numbers, name: numbers[name] + 1}) - found
        except BadSum:
            continue
        if not weight or (wanted - found) % weight:
            continue
        value = numbers[name] + (wanted - found) // weight
        if value >= 0 and work_out(text, {**numbers, name: value}) == wanted:
            ways.append(f"{name} {value} instead of {numbers[name]}")
    return ways[:_MOST_SHOWN]
