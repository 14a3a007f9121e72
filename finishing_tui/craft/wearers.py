"""Who a size is for, as people write it, and the head to allow for: "9 months", "2T", "18-24 mos", "women's M".

A neck that is too tight is a hazard, so every doubt goes to the larger head: between two ages of the table the older
one's, of a range its end, of girls and boys (or women and men) the larger where both are known.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import NUMBER, read_number, unfolded
from finishing_tui.craft.lengths import Length, length

MEDICAL = {3: Fraction("41.7"), 6: Fraction("44.6"), 12: Fraction("47.6"), 24: Fraction("50.1"), 36: Fraction("51.4")}
"""The heads of girls in cm by age in months, the 95th percentile (medical table). No table of boys is known here."""

_GIRLS = "the medical table's 95th percentile of girls"

WOMAN = (Fraction(53), Fraction(60))
"""The smallest and largest heads of women in cm (craft charts)."""

MAN = (Fraction(56), Fraction(62))
"""The smallest and largest heads of men in cm (craft charts)."""

_OLDEST_CHILD = 16
GROWN = _OLDEST_CHILD * 12
"""Months from which someone is an adult."""

_BEYOND = (
    (8 * 12, WOMAN[0], "a small woman's"),
    (13 * 12, MAN[0], "a small man's"),
    (GROWN, WOMAN[1], "a large woman's"),
)
"""Up to which month, and what is allowed for there beyond the medical table, for no table of those ages is known here.

Each is a figure of the craft charts and larger than the one before. Where one ends and the next begins is a choice on
the safe side, with no source.
"""

_WORDS = (
    (r"preemies?|premature|new ?borns?|birth", 3),
    (r"bab(?:y|ies)|infants?", 24),
    (r"toddlers?", 36),
    (r"child|children|childs|kids?|girls?|boys?", 13 * 12 - 1),
    (r"youths?|juniors?|teens?|teenagers?|tweens?", GROWN - 1),
)
"""What the sizes of children are called, and the oldest who wears one, in months. Common practice, no source."""

_CHILDS = "|".join(words for words, _ in _WORDS)
_RANGE = rf"(?:{NUMBER} ?(?:-|–|/|to|or|and) ?)*(?P<oldest>{NUMBER})"
_AGE = re.compile(
    rf"\b(?P<before>(?:ages?|aged|{_CHILDS})(?:'?s'?)? )?{_RANGE}(?![0-9.,/])"
    r"(?P<unit> ?(?:months?|mos?|mths?|years?|yrs?|yo|y/o)(?![a-z])|[mty](?![a-z])| [mty]$)?"
    r"(?! ?(?:cm|in|inch|inches)\b)"
)
_ADULTS = (
    (re.compile(r"\b(?:wom[ae]n|lady|ladies|misses|females?)(?:'?s)?\b"), (WOMAN,)),
    (re.compile(r"\b(?:m[ae]n|gents?|gentlem[ae]n|males?)(?:'?s)?\b"), (MAN,)),
    (re.compile(r"\b(?:adults?|unisex|grown-?ups?)(?:'?s)?\b"), (WOMAN, MAN)),
)


UNKNOWN_WEARER = "say an age (9 months, 2T, 6 years), or newborn, baby, toddler, child, teen, woman, man or adult"
"""What to say of who will wear it, where what was said is none of that."""


@dataclass(frozen=True, slots=True)
class Wearer:
    """Who wears a size: ``child``, under 16; ``head``, the one to allow for; ``basis``, which figure of which table."""

    child: bool
    head: Length
    basis: str


@cache
def wearer_of(size: str) -> Wearer | None:
    """Return who a size is for; None where its name tells neither an age nor a child nor an adult."""
    text = unfolded(size.lower().replace("’", "'"))
    called = (Fraction(oldest) for words, oldest in _WORDS if re.search(rf"\b(?:{words})(?:'?s)?\b", text))
    months = max(_ages(text), default=None) or next(called, None)
    if months is not None:
        return of_age(months)
    for named, charts in _ADULTS:
        if named.search(text):
            return _grown(charts)
    return None


def is_childs(size: str) -> bool:
    """Return whether a size, or whoever is said to wear it, is a child's."""
    wearer = wearer_of(size)
    return wearer is not None and wearer.child


def of_age(months: Fraction | int) -> Wearer:
    """Return the wearer of that age, from birth on: between two ages of the table the older one's head is allowed for.

    From 16 years on it is an adult.
    """
    if months >= GROWN:
        return _grown((WOMAN, MAN))
    for age, cm in MEDICAL.items():
        if months <= age:
            head = length(cm, "cm")
            return Wearer(child=True, head=head, basis=f"{_GIRLS} at {age} months")
    cm, whose = next((cm, whose) for end, cm, whose in _BEYOND if months < end)
    head = length(cm, "cm")
    basis = f"{whose} in craft charts: the medical table ends at 36 months"
    return Wearer(child=True, head=head, basis=basis)


def _grown(charts: tuple[tuple[Fraction, Fraction], ...]) -> Wearer:
    head = length(max(most for _, most in charts), "cm")
    whose = "a large woman's" if charts == (WOMAN,) else "a large man's"
    return Wearer(child=False, head=head, basis=f"{whose} in craft charts")


def _ages(text: str) -> Iterator[Fraction]:
    """Yield every age in months that ``text`` names; a number without a unit is one in years after "age" or a child."""
    for found in _AGE.finditer(text):
        unit = (found["unit"] or "").strip()
        try:
            oldest = read_number(found["oldest"])
        except Impossible:
            continue
        if unit or (found["before"] and oldest <= _OLDEST_CHILD):
            yield oldest if unit.startswith("m") else oldest * 12
