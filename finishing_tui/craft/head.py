"""Does it go over the head: the neck at full stretch against a head.

A computed answer is a first one; the head that will wear the garment is always the better measure, and whoever shows an
answer for a child says so. A neck that is too tight is a hazard, not a flaw, so every rounding is against it.
"""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import Length, length, say_length
from finishing_tui.craft.words import capital

ORDINARY_STRETCH = Fraction(16) / Fraction("11.5")
"""What an ordinary bind-off stretches to: 11.5 cm relaxed, 16 cm stretched, 39 % more (S. Winter 2019)."""

WIDTH_AND_DEPTH = length(Fraction("25.5"), "cm")
"""An adult's neck passes the head when its width and front depth together reach this (S. Melville's rule)."""

CAUTION = (
    "For a child always try the neck on, or measure the head that will wear it: it must pass without being forced."
)


@dataclass(frozen=True, slots=True)
class OverTheHead:
    """A neck opening at full stretch against a head."""

    relaxed: Length
    stretched: Length
    head: Length
    goes: bool
    text: str


def opening(stitches: int, per_10_cm: Fraction) -> Length:
    """Return the relaxed length around a band of ``stitches`` with ``per_10_cm`` stitches in 10 cm.

    Raises Impossible out of range.
    """
    counted("the stitches of the neck", stitches)
    if not 1 <= per_10_cm <= 200:
        raise Impossible("the gauge of the band must be from 1 to 200 stitches in 10 cm")
    return length(Fraction(stitches * 10) / per_10_cm, "cm")


def over_the_head(relaxed: Length, head: Length, stretch: Fraction = ORDINARY_STRETCH) -> OverTheHead:
    """Return whether an opening ``relaxed`` around passes ``head`` when stretched to ``stretch`` times its length.

    ``stretch`` is from 1 (does not give) to 4. Raises Impossible out of range.
    """
    if not 1 <= stretch <= 4:
        raise Impossible("the stretch must be from 1 (does not give at all) to 4 times the relaxed length")
    stretched = Length(relaxed.cm * stretch, relaxed.unit)
    goes = stretched.cm >= head.cm
    verdict = "it should go over" if goes else "it won't go over"
    cure = "Try it on." if goes else "Bind off more loosely, pick up more stitches, or make an opening."
    text = (
        f"{capital(say_length(relaxed))} around, {say_length(stretched)} at full stretch: {verdict} a head of "
        f"{say_length(head)}. {cure} {CAUTION}"
    )
    return OverTheHead(relaxed, stretched, head, goes, text)


def wide_and_deep_enough(width: Length, front_depth: Length) -> bool:
    """Return whether an adult's neck, ``width`` across and ``front_depth`` deep, passes the head (Melville's rule)."""
    return width.cm + front_depth.cm >= WIDTH_AND_DEPTH.cm
