"""What the audit finds, as plain values: nothing here looks for anything."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal

Where = tuple[str | int, ...]
"""Where in the recipe: keys as the file has them, and positions in lists from 0. ``recipe.reader`` knows its line."""

Level = Literal["error", "warning", "implied"]
"""``error``: cannot be knitted as written, or contradicts itself. ``warning``: can be, but is doubtful. ``implied``: a
number that is not printed, and what it must be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing found in one size.

    ``kind`` is a short name that stays the same from release to release ("needles differ"). ``message`` is one sentence
    that says what is wrong; ``sum`` shows how the number found came about, and ``suggestion`` what would mend it.
    """

    level: Level
    kind: str
    message: str
    where: Where
    size: str = ""
    """The size's name; empty where it is about the recipe as a whole."""
    step: int | None = None
    """The step's position, from 0; ``None`` where it is about no step."""
    expected: int | str | None = None
    """What the recipe says, or what would be right."""
    found: int | str | None = None
    """What is there."""
    place: str = ""
    """Of a printed count that the ledger contradicts: the place it is printed of."""
    sum: str = ""
    suggestion: str = ""

    @property
    def sentence(self) -> str:
        """The message with the sum and the suggestion, as it is read."""
        shown = f" ({self.sum})" if self.sum else ""
        return f"{self.message}{shown}{'; ' + self.suggestion if self.suggestion else ''}"


@dataclass(frozen=True, slots=True)
class Correction:
    """A printed number that would put an error right: ``wheres`` it stands, in which size (None for all), the change.

    ``left``: the errors left then; ``one_each``: an edge of stitches then has one for each; ``uneven``: how much less
    evenly its list goes from size to size; ``printed``: it is the very count that was found to differ.
    """

    wheres: tuple[Where, ...]
    size: int | None
    was: int
    now: int
    left: int
    one_each: bool
    uneven: int
    printed: bool

    @property
    def unlikely(self) -> tuple[int, ...]:
        """A key by which the likeliest comes first."""
        return self.left, not self.one_each, self.uneven, self.printed, abs(self.now - self.was)


@dataclass(frozen=True, slots=True)
class Compared:
    """A number the recipe says (``expected``) held against another (``found``), right or wrong.

    ``where`` and ``about`` tell which comparison of a step it was, so that two runs can be compared.
    """

    step: int | None
    where: Where
    about: str
    expected: int
    found: int

    @property
    def off(self) -> int:
        """How far what was found is above what was expected."""
        return self.found - self.expected


@dataclass(frozen=True, slots=True)
class SumPart:
    """What one stage did to the stitches of the place that is looked at: part of a sum.

    ``title``: what it is called; ``change``: stitches more or, negative, fewer.
    """

    title: str
    change: int


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """One step of the recipe as the audit did it: a row of the table an editor pins to the wall.

    ``step``: its position from 0; ``live``: stitches on every place that holds some after it; ``tails``, ``markers``,
    ``holes``: those in the work after it; ``held``: the stitches on every place before it; ``begun``: whether it could
    be done at all, after what was mended, and ``stopped``: whether anything had to be; ``unsure``: places that hold
    stitches, but on paper nobody knows how many; ``printed``: the counts printed of
    places that hold another number, where the rows below go on from the print.
    """

    step: int
    do: str
    title: str
    live: Mapping[str, int]
    tails: tuple[str, ...]
    markers: tuple[str, ...]
    holes: tuple[str, ...]
    findings: tuple[Finding, ...]
    held: Mapping[str, int]
    begun: bool = True
    stopped: bool = False
    unsure: frozenset[str] = frozenset()
    printed: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
