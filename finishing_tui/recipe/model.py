"""The recipe as typed values: what a pattern writer said, for all sizes, before any number is worked out.

Nothing here computes; ``recipe.numbers`` works out counts for one size, and the kinds of step turn themselves into
stages. Field names are the keys of the file (design.md, section 6); a trailing underscore marks a key that is a
Python word (``is_`` is written ``is``).
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Annotated, Literal

from finishing_tui.craft.counts import MOST
from finishing_tui.recipe.keys import Count, OneOf, Written
from finishing_tui.recipe.kinds import KINDS, AnyStep


@dataclass(frozen=True, slots=True, kw_only=True)
class BandGauge(Written):
    """The band's gauge, if it differs from the body's."""

    stitches: int
    """Stitches over the length ``over``."""
    rows: int
    """Rows over the length ``over``."""
    over: str = "10 cm"
    """The length the gauge was counted over, in cm or in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecipeGauge(Written):
    """The gauge the recipe assumes; a garment may say otherwise."""

    stitches: int
    """Stitches of the body over the length ``over``."""
    rows: int
    """Rows of the body over the length ``over``."""
    over: str = "10 cm"
    """The length the gauge was counted over, in cm or in."""
    band: BandGauge | None = None
    """The band's gauge, if it differs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Number(Written):
    """A number of the recipe, printed by size or worked out, which the knitter may be asked to confirm.

    One with neither ``by_size`` nor ``is`` is not printed: the audit finds out what it must be.
    """

    text: str
    """What it is, in words."""
    how: str = ""
    """How to count it on the garment."""
    by_size: int | tuple[int, ...] | None = None
    """Its value in every size, as printed: one number for all, or a list with an entry a size."""
    is_: str = ""
    """What it must be, as a sum of other numbers."""
    ask: bool = False
    """Whether the knitter confirms or corrects it on her own garment."""
    least: int = 0
    """The least it can sensibly be."""
    most: int = MOST
    """The most it can sensibly be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place(Written):
    """Where live stitches can be."""

    text: str
    """What it is called, in words."""
    kind: Literal["needle", "holder", "waste yarn", "pin"]
    """What kind of thing holds the stitches."""
    live: Count = 0
    """The stitches it holds before the first step."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipe(Written):
    """A finishing procedure for one kind of garment, in all its sizes."""

    format: Literal[1, 2]
    """The format of the file: 1, or 2 where it uses a key that came with format 2."""
    title: str
    """What is finished, in a few words."""
    about: str = ""
    """What it is for, in a sentence or two."""
    sizes: tuple[str, ...]
    """The names of the sizes, smallest first."""
    gauge: RecipeGauge | None = None
    """The gauge it assumes."""
    number: Mapping[str, Number] = field(default_factory=lambda: MappingProxyType({}))
    """Its numbers, by name."""
    place: Mapping[str, Place] = field(default_factory=lambda: MappingProxyType({}))
    """Its places, by name."""
    tails: tuple[str, ...] = ()
    """The tails hanging from the pieces before the first step."""
    step: tuple[Annotated[AnyStep, OneOf(KINDS, "do")], ...]
    """The steps, in order."""
