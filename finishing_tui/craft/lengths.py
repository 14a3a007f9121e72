"""Lengths in centimetres and inches, exact: 1 in is 127/50 cm (the international inch, 1959).

A length remembers the unit it was given in, so that it is said back in that unit; two lengths are equal when
they are equally long. Nothing here rounds except to say a length aloud.
"""

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import NUMBER, read_number, rounded, unfolded
from finishing_tui.craft.words import decimal

LengthUnit = Literal["cm", "in"]
"""The units a length is given and said in."""

CM_PER: dict[LengthUnit, Fraction] = {"cm": Fraction(1), "in": Fraction(127, 50)}
"""Centimetres in one of each unit."""

LONGEST = 10_000
"""The greatest length taken, in cm: longer than any edge of a garment or a blanket."""

_LENGTH = re.compile(
    rf"(?P<number>{NUMBER})?\s*(?P<unit>centimetres?|centimeters?|cms?|inches|inch|ins?|\"|″|'')\.?", re.IGNORECASE
)


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length of ``cm`` centimetres (more than 0, at most 10,000), to be said in ``unit``.

    Raises:
        Impossible: the length is out of range.

    """

    cm: Fraction
    unit: LengthUnit = field(default="cm", compare=False)

    def __post_init__(self) -> None:
        if not 0 < self.cm <= LONGEST:
            raise Impossible(f"a length must be more than 0, up to {LONGEST} cm (about 3,937 in)")

    @property
    def amount(self) -> Fraction:
        """How many of its own unit it is long."""
        return self.cm / CM_PER[self.unit]


def length(amount: Fraction | int, unit: LengthUnit) -> Length:
    """Return the length of ``amount`` cm or in; raises ``Impossible`` out of range."""
    return Length(amount * CM_PER[unit], unit)


def read_length(typed: str) -> Length:
    """Return the length written in ``typed``: "10 cm", "4 in", ``4"``, "9 1/2 in", "9½ inches", "24.5 cm", "24,5 cm".

    The unit must be there, since 10 is a length in neither; one unit alone ("inch") is one of it. A comma is
    a decimal comma, except before three digits, where it could mean a thousand.

    Raises:
        Impossible: no unit, another unit, no number, a number with two readings, or a length out of range.

    """
    found = _LENGTH.fullmatch(unfolded(typed)) if len(typed) <= 40 else None
    if found is None:
        raise Impossible(f"{typed[:40]!r} is not a length: write a number and its unit, such as 10 cm or 4 in")
    unit: LengthUnit = "cm" if found["unit"].lower().startswith("c") else "in"
    return length(read_number(found["number"]) if found["number"] else 1, unit)


def say_length(given: Length) -> str:
    """Return ``given`` in its own unit: "24.5 cm", "9 1/2 in"; "about" stands before what had to be rounded.

    Centimetres are said to one decimal, inches to the nearest eighth, as rulers are marked.
    """
    amount = given.amount
    if given.unit == "cm":
        said, exact = decimal(amount), (amount * 10).denominator == 1
    else:
        eighths = rounded(amount * 8)
        whole, rest = divmod(eighths, 8)
        part = Fraction(rest, 8)
        said = f"{whole} {part}" if whole and rest else str(part if rest else whole)
        exact = amount == Fraction(eighths, 8)
    if said == "0":
        return f"less than {'0.1 cm' if given.unit == 'cm' else '1/8 in'}"
    return f"{said} {given.unit}" if exact else f"about {said} {given.unit}"
