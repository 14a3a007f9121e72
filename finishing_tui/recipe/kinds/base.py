"""What all kinds of step have in common, and what a step may know when it turns itself into stages.

A kind is a frozen dataclass of the keys it takes in a recipe, with one method, ``stages``. It must depend on nothing
but the ``Here`` it is given, so that the audit and a real garment get the same answer from the same state.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.ledger import FOUND, Entry, Ledger, Posting, TailEntry, YarnEntry
from finishing_tui.craft.totals import Repeat
from finishing_tui.craft.words import plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName, Written
from finishing_tui.recipe.stage import Stage

FAR = 1_000
"""At the needles an edge of which nothing is known goes on for so many spots: until she says that it ends."""


class CannotBegin(FinishingError):
    """The ledger cannot bear this step; the sentence names what is missing.

    ``kind`` is the audit's word for a fault of this sort; ``expected`` and ``found`` are the counts, where it is about
    counts; ``mend`` is what, entered in the ledger beforehand, would let the step begin: the audit goes on from there.
    ``empty``: places that hold nothing of what was to be worked; the audit goes on as if that were so in this size.
    """

    def __init__(
        self,
        message: str,
        *,
        kind: str = "cannot begin",
        expected: int | None = None,
        found: int | None = None,
        mend: tuple[Entry, ...] = (),
        empty: tuple[str, ...] = (),
    ) -> None:
        super().__init__(message)
        self.kind = kind
        self.expected = expected
        self.found = found
        self.mend = mend
        self.empty = empty


@dataclass(frozen=True, slots=True, kw_only=True)
class RepeatOf(Written):
    """A count must be ``of`` times a whole number, plus ``plus``."""

    of: int
    """Stitches in one repeat."""
    plus: int = 0
    """Stitches beyond the whole repeats."""

    def takes(self, stitches: int) -> bool:
        """Return whether ``stitches`` is such a number."""
        return Repeat(self.of, self.plus).holds(stitches)


@dataclass(frozen=True, slots=True)
class Here:
    """Where a step begins: the size, its numbers, the ledger, and the hand that knits.

    ``numbers`` are the recipe's, worked out for this size (``count_of`` takes them); ``texts`` are the places' names in
    words; ``natural`` is the natural ratio of stitches to each spot (row, ridge, chain, stitch), empty where no gauge
    is known, and
    ``per_10cm`` the stitches of the band in 10 cm, None where it is not. ``body`` and ``band``: the gauges themselves,
    where they are known (a band without one of its own has the body's). ``none``: the places that hold nothing in this
    size, as printed: what is done with their stitches is not for this size. ``uncounted``: the numbers that the knitter
    did not count; ``guess``: the spots that an edge is taken to have of which neither spots nor stitches are known.
    """

    size: int
    numbers: Mapping[str, int]
    ledger: Ledger
    texts: Mapping[str, str]
    natural: Mapping[str, Fraction] = field(default_factory=lambda: MappingProxyType({}))
    hand: Literal["right", "left"] = "right"
    per_10cm: int | None = None
    none: frozenset[str] = frozenset()
    body: Gauge | None = None
    band: Gauge | None = None
    uncounted: frozenset[str] = frozenset()
    guess: int = FAR

    def name(self, place: str) -> str:
        """Return a place's name as a sentence takes it: its words, or its key where it has none."""
        return self.texts.get(place, place)

    def holding(self, place: str, wanted: int, done: str) -> None:
        """Raise ``CannotBegin`` unless ``place`` holds ``wanted`` stitches; ``done``: what was to be done to them."""
        held = self.ledger.on(place)
        if held < wanted:
            be = "was" if wanted == 1 else "were"
            raise CannotBegin(
                f"the {self.name(place)} has {plural(held, 'stitch')}, {wanted} {be} to be {done}",
                kind="too few stitches",
                expected=wanted,
                found=held,
                mend=(Posting(FOUND, place, wanted - held),),
            )

    def taking(self, count: Count | Literal["all"], done: str, *places: str) -> int:
        """Return how many are taken from each of ``places``: ``count``, or all that match; 0 for none in this size.

        ``done`` as for ``holding``. Raises ``CannotBegin`` where a place holds fewer, or none of what there should be.
        """
        if self.absent(*places):
            return 0
        if count == "all":
            held = {place: self.ledger.on(place) for place in places}
            for place in places:
                self._not_empty(place, held, done)
            return min(held.values())
        many = count_of(count, self.numbers, self.size)
        for place in places:
            self.holding(place, many, done)
        return many

    def _not_empty(self, place: str, held: Mapping[str, int], done: str) -> None:
        """Raise ``CannotBegin`` where ``place``, of those ``held`` stitches are taken from, has none."""
        if held[place]:
            return
        wanted = max(held.values())
        raise CannotBegin(
            f"the {self.name(place)} is empty; its stitches were to be {done}",
            kind="too few stitches",
            expected=wanted or None,
            found=0,
            mend=(Posting(FOUND, place, wanted),) if wanted else (),
            empty=() if wanted else tuple(held),
        )

    def absent(self, *places: str) -> bool:
        """Return whether ``places`` are printed to hold nothing in this size, and nothing was put there since."""
        return all(place in self.none and not self.ledger.on(place) for place in places)

    def tail(self, tail: str, done: str) -> None:
        """Raise ``CannotBegin`` unless there is a tail named ``tail``; ``done``: what was to be done with it."""
        if tail not in self.ledger.tails:
            raise CannotBegin(
                f"there is no tail named {tail!r} to {done}", kind="tail", mend=(TailEntry(tail, "made"),)
            )

    def cut_at(self, *places: str) -> tuple[Entry, ...]:
        """Return the entry that cuts the working yarn hanging from the first of ``places`` that has one."""
        hangs = next((place for place in places if place in self.ledger.yarns), None)
        return (YarnEntry(hangs, "cut"),) if hangs else ()

    def after(self, *entries: Entry) -> "Here":
        """Return where a step would be with ``entries`` entered."""
        return replace(self, ledger=self.ledger.enter(*entries))

    def carry(self, to: str, *places: str) -> tuple[Entry, ...]:
        """Return the entry that carries the working yarn from the first of ``places`` that has one to ``to``.

        Raises ``CannotBegin`` when another yarn hangs there.
        """
        hangs = next((place for place in places if place in self.ledger.yarns), None)
        if not hangs or hangs == to:
            return ()
        if to in self.ledger.yarns:
            raise CannotBegin(
                f"working yarn hangs from the {self.name(to)} already, and this would bring another; cut one first",
                kind="yarn",
                mend=(YarnEntry(to, "cut"),),
            )
        return (YarnEntry(to, "carried", hangs),)

    def joins(self, place: str) -> tuple[Entry, ...]:
        """Return the entry that joins new yarn at ``place``; raises ``CannotBegin`` when yarn hangs there already."""
        if place in self.ledger.yarns:
            raise CannotBegin(
                f'working yarn hangs from the {self.name(place)} already; cut it first, or say yarn = "same"',
                kind="yarn",
                mend=(YarnEntry(place, "cut"),),
            )
        return (YarnEntry(place, "joined"),)

    def new_tail(self, tail: str, beside: tuple[Entry, ...] = ()) -> tuple[Entry, ...]:
        """Return the entry that makes the tail ``tail``, besides those that the same step makes.

        Raises ``CannotBegin`` when there is one of that name.
        """
        if TailEntry(tail, "made") in beside:
            raise CannotBegin(f"both tails of this step are named {tail!r}; give each a name of its own", kind="tail")
        if tail in self.ledger.tails:
            raise CannotBegin(
                f"there is a tail named {tail!r} already; give this one another name",
                kind="tail",
                mend=(TailEntry(tail, "woven", self.ledger.tails[tail]),),
            )
        return (TailEntry(tail, "made"),)


@dataclass(frozen=True, slots=True, kw_only=True)
class Step(Written):
    """One thing to do in a recipe; the kinds add their own keys."""

    main = ""  # the field that holds the place whose stitches this step is about, where there is one

    title: str
    """What is done, as a short request: "Join the left shoulder"."""
    say: str = ""
    """How it is done. ``{start end}`` and ``{far end}`` turn round for a left-handed knitter."""
    how: str = ""
    """How to count or measure it."""
    look: str = ""
    """How it should look when it is right."""
    mend: str = ""
    """What goes wrong, and how to mend it."""
    mind: str = ""
    """A caution, shown once a garment; one about a child, or about cords or swallowing, is shown every time."""
    see: str = ""
    """Where to read more."""
    expect: Mapping[PlaceName, Count] = field(default_factory=lambda: MappingProxyType({}))
    """Live stitches on places after this step, as the pattern prints them."""
    repeat: RepeatOf | None = None
    """What the stitches on this step's place must be a multiple of after it."""
    for_: tuple[str, ...] = ()
    """The sizes this step is for; none named means all."""
    unequal: bool = False
    """Different numbers on the two sides are meant."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return what this step is made of, begun from ``here``.

        Raises ``CannotBegin`` when the ledger cannot bear it, and ``FinishingError`` for counts that cannot be had.
        """
        raise NotImplementedError

    @property
    def main_place(self) -> str:
        """The place whose stitches this step is about, or an empty text."""
        return str(getattr(self, self.main)) if self.main else ""

    @property
    def own_tail(self) -> str:
        """The name for a tail that this step leaves without naming it."""
        return self.title[:1].lower() + self.title[1:]
