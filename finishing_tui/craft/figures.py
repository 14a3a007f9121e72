"""Numbers as people write them, read exactly.

It exists so that a gauge, a length and an ideal are all read by one rule. It must never go through a float:
``24.1`` is 241/10, not the nearest binary number.
"""

import re
import unicodedata
from fractions import Fraction

from finishing_tui.craft.errors import Impossible

_VULGAR = {sign: unicodedata.normalize("NFKC", sign).replace("\N{FRACTION SLASH}", "/") for sign in "¼½¾⅓⅔⅛⅜⅝⅞"}
# Written once for every reader of numbers: digits are plain 0 to 9, and few enough that nothing can grow absurd.
NUMBER = r"(?:[0-9]{1,6}(?:[ -]?[0-9]{1,3}/[0-9]{1,3}|[.,][0-9]{1,6}|/[0-9]{1,6})?)"
_NUMBER = re.compile(
    r"(?P<whole>[0-9]{1,6})"
    r"(?:(?P<mark>[.,])(?P<decimals>[0-9]{1,6})|[ -](?P<top>[0-9]{1,3})/(?P<under>[0-9]{1,3})|/(?P<over>[0-9]{1,6}))?"
)


def unfolded(text: str) -> str:
    """Return ``text`` with fraction signs written out ("9½" becomes "9 1/2") and every run of spaces made one."""
    for sign, written in _VULGAR.items():
        text = re.sub(rf"(?<=[0-9])\s*{sign}", f" {written}", text).replace(sign, written)
    return " ".join(text.split())


def read_number(typed: str) -> Fraction:
    """Return the number written in ``typed``, exactly.

    Taken: ``24``, ``24.5``, ``24,5``, ``49/2``, ``24 1/2``, ``24-1/2``, ``24½``. A comma followed by exactly
    three digits is refused, because it is a thousand to one reader and a decimal to the next.

    Raises:
        Impossible: what is written is no number of that form, or can be read in two ways.

    """
    found = _NUMBER.fullmatch(unfolded(typed)) if len(typed) <= 40 else None
    if found is None:
        raise Impossible(f"{typed[:40]!r} is not a number: write 24, 24.5, 49/2 or 24 1/2")
    whole = int(found["whole"])
    if found["decimals"]:
        decimals = found["decimals"]
        if found["mark"] == "," and len(decimals) == 3:
            raise Impossible(f"{typed!r} could mean two things: write {whole}{decimals} or {whole}.{decimals}")
        return whole + Fraction(int(decimals), 10 ** len(decimals))
    under = int(found["under"] or found["over"] or 1)
    if under == 0:
        raise Impossible(f"{typed!r} divides by nothing: write a fraction such as 1/2")
    if found["over"]:
        return Fraction(whole, under)
    return whole + Fraction(int(found["top"] or 0), under)


def rounded(number: Fraction) -> int:
    """Return the whole number nearest to ``number``, which is not negative; a half goes up, as in the trade."""
    return (2 * number.numerator + number.denominator) // (2 * number.denominator)
