"""What is known when a step has been done on paper, so that it can be looked at: the ground all looks stand on.

A *look* is a function from this to what it finds. The looks of a kind of step stand beside each other in ``looks``.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from finishing_tui.craft.ledger import Ledger
from finishing_tui.craft.lengths import Length
from finishing_tui.craft.lies import End, Side
from finishing_tui.recipe.audit.finding import Compared, Finding, Level, SumPart
from finishing_tui.recipe.audit.footing import AuditFooting
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Stage


@dataclass(frozen=True, slots=True)
class Hangs:
    """Where a tail hangs, as far as that is known: on which side of the wearer's, at which end; ``said``: in words."""

    side: Side | None = None
    end: End | None = None
    said: str = ""

    def fits(self, side: Side | None, end: End | None) -> bool:
        """Return whether nothing that is known of both is another thing."""
        return not (self.side and side and self.side != side) and not (self.end and end and self.end != end)

    def agreed(self, other: "Hangs") -> "Hangs":
        """Return what both have in common."""
        return Hangs(
            self.side if self.side == other.side else None,
            self.end if self.end == other.end else None,
            self.said if self.said == other.said else "",
        )


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge that the stitches on a needle were picked up along: where it begins and ends.

    ``at``: at which of the two the working yarn hangs, 0 or 1; None where nobody knows.
    """

    first: Hangs = Hangs()
    last: Hangs = Hangs()
    at: int | None = None

    @property
    def both(self) -> Hangs:
        """What its two ends have in common."""
        return self.first.agreed(self.last)

    @property
    def other_end(self) -> Hangs:
        """Where a row from here ends."""
        return self.both if self.at is None else (self.last, self.first)[self.at]

    def after(self, rows: int | None, *, turned: bool = False) -> "Edge":
        """Return the edge after so many rows; None: after rounds, that end where it begins. ``turned``: short ones."""
        if rows is None:
            return Edge(self.first, self.first, 0)
        return replace(self, at=None if turned or self.at is None else (self.at + rows) % 2)


@dataclass(frozen=True, slots=True)
class Trail:
    """What the steps before this one leave to remember that the ledger does not keep.

    ``band``: the stitches of the last edge that was bound off whole; ``arranged``: whether the work
    lies as a step laid it, and nothing but looking came since; ``unsure``: places whose count is not known, since a
    step that names them could not be done; ``odd``: (place, stitches) told not to be of their repeat, so that it is
    not told again while nothing changes; ``buttonholes``: those worked so far;
    ``tails``: how long those are whose length a step said; ``ends``: where those hang of which that is known;
    ``edges``: what the stitches on needles were picked up along.
    """

    band: int = 0
    arranged: bool = False
    unsure: frozenset[str] = frozenset()
    odd: frozenset[tuple[str, int]] = frozenset()
    buttonholes: int = 0
    tails: tuple[tuple[str, Length], ...] = ()
    ends: tuple[tuple[str, Hangs], ...] = ()
    edges: tuple[tuple[str, Edge], ...] = ()


@dataclass(frozen=True, slots=True)
class Look:
    """A step, done on paper.

    ``before`` is the ledger it began from (after what had to be mended), ``after`` the ledger after each of its
    ``stages``. ``wrong``: the numbers whose print is known to differ from their sum, with what the sum comes to.
    ``off``: the stitches that were worked off in it already, where it was under way.
    """

    footing: AuditFooting
    at: int
    step: Step
    before: Ledger
    stages: tuple[Stage, ...]
    after: tuple[Ledger, ...]
    trail: Trail
    wrong: Mapping[str, int]
    off: int = 0

    @property
    def here(self) -> Here:
        """Where the step began."""
        return self.footing.here(self.before)

    @property
    def ledger(self) -> Ledger:
        """The ledger after the step."""
        return self.after[-1] if self.after else self.before

    def name(self, place: str) -> str:
        """Return a place's name in words."""
        return self.footing.name(place)

    def count(self, count: Count) -> int:
        """Return what ``count`` comes to in this size."""
        return count_of(count, self.footing.numbers, self.footing.size)

    def where(self, *key: str | int) -> tuple[str | int, ...]:
        """Return where ``key`` of this step stands in the recipe."""
        return ("step", self.at, *key)

    def finding(self, level: Level, kind: str, message: str, *key: str | int, **rest: Any) -> Finding:
        """Return a finding about this step, at its ``key``; ``rest``: expected, found, place, sum, suggestion."""
        return Finding(
            level=level,
            kind=kind,
            message=message,
            where=self.where(*key),
            size=self.footing.size_name,
            step=self.at,
            **rest,
        )

    def compared(self, about: str, expected: int, found: int, *key: str | int) -> Compared:
        """Return a comparison made at ``key`` of this step."""
        return Compared(self.at, self.where(*key), about, expected, found)

    def parts(self, place: str) -> tuple[SumPart, ...]:
        """Return what each stage did to ``place``, those that did nothing left out."""
        found, held = [], self.before.on(place)
        for stage, ledger in zip(self.stages, self.after, strict=True):
            change, held = ledger.on(place) - held, ledger.on(place)
            if change:
                found.append(SumPart(stage.title, change))
        return tuple(found)


Findings = Iterator[Finding | Compared]
"""What a look yields."""

Looker = Callable[[Look], Findings]
"""A look at a step that was done."""

Instead = tuple[Step, tuple[Finding, ...]]
"""A step that can be done, in place of one that cannot, with what was wrong with that."""
