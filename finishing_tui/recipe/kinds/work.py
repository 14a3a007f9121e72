"""``work``: rounds or rows of a band, with shaping said and entered round by round."""

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import EDGE, OFF
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName, Written
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.stage import Flow, Stage, none_of

MOST_SHAPED = 2_000
"""Shapings in one step; the longest edges that anyone works have some hundreds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaping(Written):
    """Rounds (or rows) in which the number of stitches changes: one ``round``, or ``every`` so many ``from`` one on."""

    change: int
    """Stitches more (or, negative, fewer) after each such round."""
    round: int | None = None
    """The one round, counted from 1."""
    every: int | None = None
    """Every so many rounds."""
    from_: int = 1
    """The first round, with ``every``."""
    times: int | None = None
    """How often, with ``every``; to the end where it is left out."""
    at: str = ""
    """Where in the round, in words."""
    method: str = ""
    """How, in words."""

    def rounds(self, last: int) -> range:
        """Return the rounds of this shaping in a step of ``last`` rounds."""
        if self.round is not None:
            return range(self.round, self.round + 1)
        if self.every is None or self.every < 1:
            raise FinishingError("a shaping needs either round, or every (1 or more) with from and times")
        times = len(range(self.from_, last + 1, self.every)) if self.times is None else self.times
        return range(self.from_, self.from_ + times * self.every, self.every)


@dataclass(frozen=True, slots=True, kw_only=True)
class Work(Step):
    """Work rounds or rows on a needle."""

    main = "on"
    do: Literal["work"] = "work"
    on: PlaceName
    """The needle."""
    rounds: Count | None = None
    """How many rounds, in the round."""
    rows: Count | None = None
    """How many rows, flat."""
    pattern: str = ""
    """What is worked, in words: "k2, p2 rib"."""
    change: int | None = None
    """Stitches more (or, negative, fewer) after the first round, where that is all the shaping there is."""
    shaping: tuple[Shaping, ...] = ()
    """The shaping, round by round."""
    short_rows: ShortRows | None = None
    """Rows at the beginning of the step that turn before the end."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of rounds or rows, with what each shaped or short one says and what it enters."""
        if here.absent(self.on):
            return (none_of(here.name(self.on), "row" if self.rounds is None else "round"),)
        here.holding(self.on, 1, "worked")
        given = self.rounds if self.rows is None else self.rows
        if given is None or (self.rounds is None) == (self.rows is None):
            raise CannotBegin(f"the step {self.title!r} says neither rounds nor rows, or both; it needs one of them")
        many = count_of(given, here.numbers, here.size)
        name: Literal["round", "row"] = "round" if self.rows is None else "row"
        changes = dict[int, int]()
        hints = dict[int, str]()
        for number, change, hint in self._changes(many):
            if not 1 <= number <= many:
                raise CannotBegin(f"the shaping of {self.title!r} names {name} {number}, of {many}")
            changes[number] = changes.get(number, 0) + change
            hints[number] = f"{hints[number]}; {hint}" if number in hints else hint
        held, flows, said = here.ledger.on(self.on), list[Flow](), dict[int, str]()
        standing = {1: held}  # the stitches there are from a round on
        for number in sorted(changes):
            change = changes[number]
            if held + change < 0:
                raise CannotBegin(f"{name} {number} of {self.title!r} would take {-change} of {held} stitches")
            held += change
            if change:
                ends = (self.on, OFF) if change < 0 else (EDGE, self.on)
                flows.append(Flow(*ends, abs(change), number, number))
            said[number] = f"{hints[number]}: {'makes' if change > 0 else 'leaves'} {held}"
            standing[number + 1] = held
        if self.short_rows is not None:
            starts = sorted(standing)
            for number, turn in self.short_rows.said(
                here, lambda row: standing[starts[bisect_right(starts, row) - 1]], many
            ):
                said[number] = f"{turn}; {said[number]}" if number in said else turn
        words = f"Work {many} {name if many == 1 else name + 's'}{' of ' + self.pattern if self.pattern else ''}."
        return (
            Stage(
                "round",
                many,
                f"{name}s",
                name,
                words,
                0,
                self.on,
                name,
                flows=tuple(flows),
                said=tuple(sorted(said.items())),
            ),
        )

    def _changes(self, many: int) -> Iterator[tuple[int, int, str]]:
        """Yield (round, change, words) for every shaped round, of ``many``. Raises ``CannotBegin`` for too many."""
        if self.change:
            yield 1, self.change, _hint(self.change, "", "evenly")
        shaped = 0
        for shaping in self.shaping:
            rounds = shaping.rounds(many)
            shaped += len(rounds)
            if shaped > MOST_SHAPED:
                raise CannotBegin(f"{shaped} times of shaping are too many for {self.title!r}: up to {MOST_SHAPED}")
            for number in rounds:
                yield number, shaping.change, _hint(shaping.change, shaping.method, shaping.at)


def _hint(change: int, method: str, at: str) -> str:
    did = "increase" if change > 0 else "decrease"
    return " ".join(part for part in (did, str(abs(change)), at, f"({method})" if method else "") if part)
