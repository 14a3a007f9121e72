"""A stage: part of a step done in one way, as plain values that can be stored.

A kind of step turns itself into stages for one size and one ledger. The audit enters whole stages; at the needles a
press does the next unit. Both go through ``entries_between``, and because what a stage has entered after so many
units is a function of that number alone, all presses together always equal the whole stage.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from finishing_tui.craft.ledger import EDGE, Entry, Posting
from finishing_tui.craft.rhythm import Rhythm

HAND = "working needle"
"""The place for the one loop that a join holds between its pairs; every ledger has it."""

Unit = Literal["spot", "stitch", "pair", "round", "item", "value"]
"""What one press stands for."""

Doing = Literal[
    "arrange",
    "bind-off",
    "block",
    "cast-on",
    "check",
    "close",
    "count",
    "cut",
    "decrease",
    "fasten-off",
    "graft",
    "hole",
    "increase",
    "knit",
    "lift",
    "mark",
    "measure",
    "pair",
    "pick",
    "rest",
    "round",
    "row",
    "set-up",
    "sew",
    "sew-on",
    "shape",
    "slip",
    "unmark",
    "weave-in",
]
"""What is done in a stage, as it is stored; ``glance`` has the words for it."""


@dataclass(frozen=True, slots=True)
class Flow:
    """``stitches`` that move from ``source`` to ``to``, spread evenly over the units ``first`` to ``last`` (1-based).

    In a stage of spots the units are the loops made, in all others the units done.
    """

    source: str
    to: str
    stitches: int
    first: int
    last: int

    def moved(self, units: int) -> int:
        """Return how many stitches have moved once ``units`` units are done."""
        done = min(max(units - self.first + 1, 0), self.last - self.first + 1)
        return self.stitches * done // (self.last - self.first + 1)


@dataclass(frozen=True, slots=True)
class Item:
    """One thing to tick off, and what doing it enters in the ledger."""

    text: str
    entries: tuple[Entry, ...] = ()


@dataclass(frozen=True, slots=True)
class Moves:
    """What the hands do in every unit from ``first`` (1-based) on, move by move, until other moves are given."""

    first: int
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Stage:
    """Part of a step that is done in one way.

    ``unit``, ``units``: what a press stands for and how many there are (for spots: the spots of the section).
    ``title``: what it is called ("left front neck"). ``act``: what is done.
    ``spot``: the name of a spot (row, ridge, chain, stitch), or of what is worked (round, row); ``rhythm``: which spots
    are picked.
    ``target``: stitches it should give, where that is what is counted. ``place``: the place its count is read on.
    ``flows``, ``items``: what units enter; ``opening`` and ``closing``: what is entered when it begins and ends.
    ``halts``: spots after which a recount is due; of an edge counted stitch by stitch, its pins. ``words``: what to do,
    in a sentence. ``said``: words for single units, as (unit, words). ``natural``: the natural ratio of stitches to
    spots, if known, as "3/4"; ``per_10cm``: band stitches in 10 cm, if known.
    ``front``, ``back``: the two needles of a pair; ``empties``: both are to be empty in the end.
    ``takes_all``: whether ``enter`` may do all that is left at one go. ``of``: for a value, what it is measured in.
    ``moves``: where a unit is several moves, each said on its own. ``bars``: in a seam, for each of its two sides how
    many bars every unit takes; ``front`` and ``back`` are then the sides, in words.
    ``mirrors``: the title of the section of this step that it is the mirror of, being walked second; ``as_worked``: its
    rhythm is the mirror of what was really picked there, not of what was planned. ``as_planned``: the stage that it was
    begun with, where it goes another way since, so or in a seam. ``counts``: its units are only
    counted, to see that they are there. ``uncounted``: what nobody counted of an edge: its ``spots`` (``units`` is then
    where the target is reached at ``natural``), or ``all`` of it (and its target is no more than a guess).
    """

    unit: Unit
    units: int
    title: str
    act: Doing
    words: str = ""
    target: int = 0
    place: str = ""
    spot: str = ""
    rhythm: Rhythm | None = None
    ends: Literal["open", "closed"] = "open"
    style: Literal["easy", "even"] = "easy"
    natural: str = ""
    per_10cm: int | None = None
    flows: tuple[Flow, ...] = ()
    items: tuple[Item, ...] = ()
    opening: tuple[Entry, ...] = ()
    closing: tuple[Entry, ...] = ()
    halts: tuple[int, ...] = ()
    said: tuple[tuple[int, str], ...] = ()
    takes_all: bool = False
    of: str = ""
    front: str = ""
    back: str = ""
    empties: bool = False
    moves: tuple[Moves, ...] = ()
    bars: tuple[tuple[int, ...], ...] = ()
    mirrors: str = ""
    as_worked: bool = False
    as_planned: "Stage | None" = None
    counts: bool = False
    uncounted: Literal["", "spots", "all"] = ""

    @property
    def rate(self) -> Fraction:
        """Stitches a spot, of a stage of spots: the natural ratio where it is known, else the plan's own."""
        return Fraction(self.natural) if self.natural else Fraction(max(self.target, 1), max(self.units, 1))

    @property
    def pinned(self) -> bool:
        """Whether it is an edge in pinned parts, counted stitch by stitch."""
        return bool(self.halts) and self.unit == "stitch"

    def moves_of(self, unit: int) -> tuple[str, ...]:
        """Return the moves of the ``unit``-th unit, in turn; none where a unit is one move."""
        return next((moves.said for moves in reversed(self.moves) if moves.first <= unit), ())


def lot_onto(place: str, many: int, title: str, act: Doing, words: str) -> Stage:
    """Return the stage in which ``many`` loops that were on no needle come onto a place, all at one go if need be."""
    return Stage("stitch", many, title, act, words, many, place, flows=loops_onto(place, many), takes_all=True)


def ticked(title: str, act: Doing, text: str, *entries: Entry) -> Stage:
    """Return the stage of one thing that is done and ticked off: its words are what is ticked."""
    return Stage("item", 1, title, act, text, items=(Item(text, entries),))


def none_of(title: str, act: Doing) -> Stage:
    """Return the stage of what there is none of in this size: it is done as it begins and enters nothing."""
    return Stage("stitch", 0, title, act, "There is none of this in this size.")


def entries_between(stage: Stage, before: int, after: int) -> tuple[Entry, ...]:
    """Return what going from ``before`` to ``after`` units enters (loops, in a stage of spots), without the closing.

    ``after`` may be smaller: the postings then run the other way, and items give their inverses.
    """
    if after < before:
        return tuple(entry.inverse() for entry in reversed(entries_between(stage, after, before)))
    postings = (
        Posting(flow.source, flow.to, stitches)
        for flow in stage.flows
        if (stitches := flow.moved(after) - flow.moved(before))
    )
    ticked = (entry for item in stage.items[before:after] for entry in item.entries)
    return (*postings, *ticked)


def whole(stage: Stage) -> tuple[Entry, ...]:
    """Return everything the stage enters from its beginning to its end, done as planned."""
    done = stage.target if stage.unit == "spot" else stage.units
    return (*stage.opening, *entries_between(stage, 0, done), *stage.closing)


def loops_onto(place: str, most: int) -> tuple[Flow, ...]:
    """Return the flow of loops picked up from an edge onto ``place``, one a unit, ``most`` at the most.

    A deviation or a recount may make more loops than were planned, so ``most`` is what the edge can give at all.
    """
    return (Flow(EDGE, place, most, 1, most),) if most else ()
