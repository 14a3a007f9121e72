"""The answers to a question about numbers, side by side: what to do first, how it lies, the work, and the total.

Every question of that kind is this one value, whatever raised it; the screens draw it as a table, ``plain`` says it.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TypeVar

from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.words import plural
from finishing_tui.garment.walk import planned_on
from finishing_tui.glance.stored_words import verdict_words
from finishing_tui.glance.values import Edge
from finishing_tui.recipe.kinds.base import RepeatOf

_T = TypeVar("_T")

_SHAPES: Mapping[Verdict, str] = MappingProxyType(
    {
        Verdict.LIES_FLAT: "==",
        Verdict.JUST_SHOWS: "=~",
        Verdict.WILL_PUCKER: "><",
        Verdict.WILL_FLARE: "<>",
        Verdict.CANNOT_BE: "!!",
    }
)
"""The shape of a verdict, so that it is told apart without color."""


THE_REST = "the rest"
"""What lies as a table says, where a part of the edge is picked up already."""

NO_WORK = "none"
"""What a way costs that adds no work."""


@dataclass(frozen=True, slots=True)
class Answer:
    """One way to go on.

    ``text``: what to do first, ``verb``: the same in one verb, to be read from afar; ``verdict``: how it lies then;
    ``made``: so many increases (below 0: decreases), ``ripped``: so many stitches to rip back, ``to_do``: other work in
    words; ``total``: what there is then, in ``unit`` if that is not stitches (None: not known yet); ``note``: what is
    wrong with that. ``edge``: how the edge would go, and ``more``: that in words, or why.
    """

    text: str
    verb: str
    verdict: Verdict | None
    total: int | None
    made: int = 0
    ripped: int = 0
    unit: str = ""
    note: str = ""
    edge: Edge | None = None
    more: str = ""
    to_do: str = ""

    @property
    def lies(self) -> str:
        """How it lies, in words."""
        return verdict_words(self.verdict)

    @property
    def shape(self) -> str:
        """The same in a shape of two signs."""
        return _SHAPES[self.verdict] if self.verdict is not None else ""

    @property
    def shows(self) -> bool:
        """Whether it lies so that it will be seen from afar."""
        return self.verdict not in {None, Verdict.LIES_FLAT, Verdict.JUST_SHOWS}

    @property
    def harms(self) -> bool:
        """Whether it cannot be, will be seen from afar, or takes work out."""
        return self.shows or self.ripped > 0

    @property
    def work(self) -> str:
        """What it costs in work."""
        made = plural(abs(self.made), "increase" if self.made > 0 else "decrease") if self.made else ""
        ripped = f"{self.ripped} to rip" if self.ripped else ""
        return ", ".join(part for part in (ripped, made, self.to_do) if part) or NO_WORK

    @property
    def comes_to(self) -> str:
        """What the total becomes, with what is wrong with it."""
        if self.total is None:
            return ""
        total = plural(self.total, self.unit) if self.unit else str(self.total)
        return f"{total} · {self.note}" if self.note else total


@dataclass(frozen=True, slots=True)
class Answers:
    """``heading``: the difference, ``said``: its two numbers in words; ``rows``: the ways, in the order they are told.

    ``numbers``: what there is and what was planned, where these are what it is about; ``planned``: the edge as it was
    planned, where there is one. ``lying``: what lies as the rows say, where that is not all of it: "the rest".
    """

    heading: str
    said: str
    rows: tuple[Answer, ...]
    numbers: tuple[int, int] | None = None
    planned: Edge | None = None
    lying: str = ""

    @property
    def first(self) -> int:
        """Which way the caret starts at: the first that does no harm, where there is one."""
        return next((at for at, row in enumerate(self.rows) if not row.harms), 0)

    def lies(self, row: Answer) -> str:
        """Say what lies how with one of the ways; nothing where nothing lies any way."""
        return f"{self.lying} {row.lies}".strip() if row.lies else ""

    def changed(self, at: int) -> tuple[int, ...]:
        """Return the spots that the way at ``at`` has, or works, otherwise than planned, as far as both edges go."""
        edge = self.rows[at].edge
        if edge is None or self.planned is None:
            return ()
        last = min(edge.spots, self.planned.spots)
        passed = min(edge.at, last)
        was = [*self.planned.loops(0, passed), *planned_on(self.planned.progress, passed, last)]
        now = edge.loops(0, last)
        return tuple(
            spot
            for spot, (old, new) in enumerate(zip(was, now, strict=True), 1)
            if old != new or (new and self.planned.at < spot <= passed)
        )


def off_by(difference: int) -> str:
    """Say how many are there too many (below 0: too few)."""
    if not difference:
        return "as planned"
    return f"{-difference} short" if difference < 0 else f"{difference} too many"


def wrong_with(total: int, planned: int, repeat: RepeatOf | None) -> str:
    """Return what is wrong with a total that is not the planned one, or not of its repeat; empty where nothing is."""
    wrong = [off_by(total - planned)] if total != planned else []
    if repeat is not None and not repeat.takes(total):
        wrong.append(f"not a multiple of {repeat.of}{f' plus {repeat.plus}' if repeat.plus else ''}")
    return ", ".join(wrong)


def risks(one: Answer) -> tuple[bool, bool, bool, bool, bool, int]:
    """Return what speaks against a way, the gravest first.

    That it cannot be; that its total is wrong; that it will be seen from afar; that work is taken out, which nothing
    puts back; that it shows a little; and how much work it is.
    """
    gravest = one.verdict is Verdict.CANNOT_BE, bool(one.note), one.shows, one.ripped > 0
    return *gravest, one.verdict is Verdict.JUST_SHOWS, one.ripped + abs(one.made)


def safest_first(ways: Iterable[tuple[Answer, _T]]) -> list[tuple[Answer, _T]]:
    """Return ways, each with what it leads to, with those first that least speaks against; else as they come.

    This is the order of every table of ways but those at the end of an edge, which have that of hands.
    """
    return sorted(ways, key=lambda way: risks(way[0]))
