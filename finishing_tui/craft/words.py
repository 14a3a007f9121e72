"""Numbers and lists as a sentence says them, so that every part of the program says them alike.

Plain functions from numbers to text; nothing here knows what is being counted, and nothing here rounds a count.
"""

from collections.abc import Sequence
from fractions import Fraction

_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def number(count: int) -> str:
    """Say a count: in words up to twelve (``no`` for 0), in figures beyond."""
    return _SMALL[count] if 0 <= count < len(_SMALL) else str(count)


def times(count: int, *, figures: bool = False) -> str:
    """Say how often: ``once``, ``twice``, ``eight times``, ``17 times``; with ``figures``, as rows do, ``8 times``."""
    return {1: "once", 2: "twice"}.get(count) or f"{count if figures else number(count)} times"


def many(noun: str) -> str:
    """Return the plural of a noun of this trade: ``rows``, ``stitches``, ``entries``."""
    if noun.endswith("ry"):
        return f"{noun[:-1]}ies"
    return noun + ("es" if noun.endswith(("ch", "sh", "s", "x")) else "s")


def plural(count: int, noun: str) -> str:
    """Say a count in figures with its noun: ``1 row``, ``12 stitches``."""
    return f"{count} {noun if abs(count) == 1 else many(noun)}"


def ordinal(place: int) -> str:
    """Say a place in a row: ``1st``, ``22nd``, ``113th``."""
    ending = "th" if place % 100 in {11, 12, 13} else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place}{ending}"


def capital(text: str) -> str:
    """Return ``text`` begun with a capital."""
    return text[:1].upper() + text[1:]


def sentence(text: str) -> str:
    """Return ``text`` with a capital and, where it has no end yet, a full stop."""
    text = capital(text)
    return text if text.endswith((".", "?", "!")) else f"{text}."


def listing(parts: Sequence[str], last: str = "and") -> str:
    """Join parts as a sentence does: ``a``, ``a and b``, ``a, b and c``."""
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {last} {parts[-1]}"


def decimal(value: Fraction, places: int = 1) -> str:
    """Say an exact value with at most ``places`` decimals (halves go away from nought): ``2.8``, ``-0.5``, ``12``."""
    scaled = (abs(value) * 10**places * 2 + 1) // 2
    units, rest = divmod(scaled, 10**places)
    figures = f"{units}.{rest:0{places}d}".rstrip("0").rstrip(".") if places else str(units)
    return f"-{figures}" if value < 0 and scaled else figures


def percent(value: Fraction) -> str:
    """Say a share of one as a percentage with at most one decimal: ``5 %``, ``-7.5 %``."""
    return f"{decimal(value * 100)}%"
