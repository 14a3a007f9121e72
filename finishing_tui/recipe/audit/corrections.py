"""Which single printed number, changed, would put an error right: each is tried on paper, the likeliest comes first.

An editor looks for the misprint that makes the sizes go evenly again. So do these: of all numbers that would do, first
those after which the fewest errors are left, then those whose list goes the most evenly from size to size.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.audit.correction_words import said
from finishing_tui.recipe.audit.finding import Correction, Finding, Where
from finishing_tui.recipe.audit.printing import printed_numbers, resting_on, value_at, with_value
from finishing_tui.recipe.audit.tally import Tally, TooMuch
from finishing_tui.recipe.counts import NoNumber, count_of
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.model import Recipe

_ERRORS = 3
"""Errors of one size that corrections are looked for: what comes after them mostly comes of them."""

_FROM_ONE = frozenset({"of", "every", "times", "round", "from", "rows"})
"""Keys whose number is never 0."""

ErrorsIn = Callable[[Recipe, tuple[int, ...], Tally], list[Finding]]
"""Audits a recipe in some sizes and returns the errors; what it does is counted, and may come to ``TooMuch``."""


@dataclass(frozen=True, slots=True)
class _Printed:
    """A number as it is printed for a size: ``wheres`` it stands (two that mirror each other are changed together)."""

    wheres: tuple[Where, ...]
    size: int | None
    was: int

    @property
    def least(self) -> int:
        """The least it can be: a change stays one that adds, or one that takes away."""
        if self.was < 0:
            return 10 * self.was
        first = self.wheres[0]
        return int(first[-1] in _FROM_ONE or first[0] == "gauge" or first[-1] == "change")

    @property
    def most(self) -> int:
        """The most that is tried: a misprint drops a digit, and no more."""
        return -1 if self.was < 0 else 10 * self.was + 100


class Corrections:
    """Looks for corrections in a recipe; ``errors_in`` audits it, and takes what it does from the ``tally``."""

    def __init__(self, recipe: Recipe, errors_in: ErrorsIn, tally: Tally) -> None:
        self._recipe = recipe
        self._errors_in = errors_in
        self._numbers = (*((where,) for where in printed_numbers(recipe)), *_mirrored(recipe))
        self._backward = all(number.is_ or number.by_size is not None for number in recipe.number.values())
        self._tally = tally
        self._every = tuple(range(len(recipe.sizes)))
        self._tried: dict[tuple[_Printed | None, int, tuple[int, ...]], list[Finding] | None] = {}

    def put_right(self, size: int, findings: Sequence[Finding]) -> tuple[Finding, ...]:
        """Return the findings of a size, with corrections for suggestions where any single number would do."""
        first = [one for one in findings if one.level == "error"][:_ERRORS]
        told = {id(one): text for one in first if (text := said(self._recipe, one, self.of(one, size, findings)))}
        return tuple(replace(one, suggestion=told[id(one)]) if id(one) in told else one for one in findings)

    def of(self, finding: Finding, size: int, findings: Sequence[Finding]) -> list[Correction]:
        """Return what would put one of the ``findings`` of a size right, the likeliest first."""
        errors = [one for one in findings if one.level == "error"]
        found = list[Correction]()
        try:
            for number in self._in(size, finding):
                found += self._by(finding, size, errors, number)
        except TooMuch:
            return []  # told as far as it can be without
        return sorted(found, key=lambda one: one.unlikely)

    def _in(self, size: int, finding: Finding) -> Iterator[_Printed]:
        """Yield the numbers printed for a size that can matter to a finding."""
        for wheres in self._numbers:
            value = value_at(self._recipe, wheres[0])
            if not self._matters(wheres[0], finding):
                continue
            if not isinstance(value, tuple):
                if value:  # what is 0 in every size was most likely never printed
                    yield _Printed(wheres, None, value)
            elif size < len(value):
                yield _Printed(wheres, size, value[size])

    def _matters(self, where: Where, finding: Finding) -> bool:
        """Return whether a number may: one of a later step may not, unless a number is worked out from what follows."""
        if not self._backward:
            return True
        if finding.where[0] == "number" and len(finding.where) > 1:
            return where[0] == "number" and where[1] in resting_on(self._recipe, {str(finding.where[1])})
        return not (where[0] == "step" and finding.step is not None and int(where[1]) > finding.step)

    def _by(self, finding: Finding, size: int, errors: Sequence[Finding], number: _Printed) -> Iterator[Correction]:
        values = set(self._solved(finding, size, errors, number)) - {number.was}
        sizes = (size,) if number.size is not None or len(self._every) == 1 else self._every
        for now in sorted(value for value in values if number.least <= value <= number.most):
            if self._mends(finding, len(errors), self._errors(number, now, (size,))) is None:
                continue
            before = len(errors) if sizes == (size,) else len(self._errors(number, number.was, sizes) or ())
            left = self._mends(finding, before, self._errors(number, now, sizes))
            if left is None:
                continue
            uneven = 0
            if number.size is not None:
                changed = self._with(number, now)
                uneven = sum(
                    _uneven(value_at(changed, where)) - _uneven(value_at(self._recipe, where))
                    for where in number.wheres
                )
            yield Correction(
                number.wheres,
                number.size,
                number.was,
                now,
                left=left,
                one_each=_one_each(self._recipe, number.wheres[0], size, now),
                uneven=uneven,
                printed=number.wheres[0] == finding.where[: len(number.wheres[0])],
            )

    def _mends(self, finding: Finding, before: int, after: Sequence[Finding] | None) -> int | None:
        """Return how many errors are left; None where the finding is, or as many as before."""
        if after is None or len(after) >= before or any(_same(finding, one) for one in after):
            return None
        return len(after)

    def _solved(self, finding: Finding, size: int, errors: Sequence[Finding], number: _Printed) -> Iterator[int]:
        """Yield what a number would have to be, by what one more or fewer does to the error; and what is even."""
        matters = False
        for step in (1, -1):
            if not number.least <= number.was + step <= number.most:
                continue
            after = self._errors(number, number.was + step, (size,))
            if after is None:
                continue
            same = next((one for one in after if _same(finding, one)), None)
            if same is None:
                matters = True
                if len(after) < len(errors):
                    yield number.was + step
            elif (gone := _off(finding) - _off(same)) and _off(finding) % gone == 0:
                matters = True
                yield number.was + step * (_off(finding) // gone)
            else:
                matters = matters or same.message != finding.message
        if matters and number.size is not None:
            yield from _even(value_at(self._recipe, number.wheres[0]), number.size)

    def _with(self, number: _Printed, now: int) -> Recipe:
        changed, at = self._recipe, number.size
        for where in number.wheres:
            value: Any = value_at(changed, where)
            changed = with_value(changed, where, now if at is None else (*value[:at], now, *value[at + 1 :]))
        return changed

    def _errors(self, number: _Printed, now: int, sizes: tuple[int, ...]) -> list[Finding] | None:
        """Return the errors with a number changed, once for all that is asked; None where it cannot be audited."""
        tried = (number, now, sizes) if now != number.was else (None, 0, sizes)
        if tried not in self._tried:
            try:
                self._tried[tried] = self._errors_in(self._with(number, now), sizes, self._tally)
            except TooMuch:
                raise
            except FinishingError:
                self._tried[tried] = None
        return self._tried[tried]


def _mirrored(recipe: Recipe) -> Iterator[tuple[Where, ...]]:
    """Yield where the same number is printed for two sections that mirror each other: it is changed in both."""
    for at, step in enumerate(recipe.step):
        if not isinstance(step, PickUpAndKnit):
            continue
        along = {one.along: (place, one) for place, one in enumerate(step.section) if isinstance(one, Along)}
        for place, one in along.values():
            if one.mirrors not in along:
                continue
            other_place, other = along[one.mirrors]
            for key in ("spots", "stitches"):
                mine = getattr(one, key)
                if mine is not None and not isinstance(mine, str) and mine == getattr(other, key):
                    yield ("step", at, "section", other_place, key), ("step", at, "section", place, key)


def _one_each(recipe: Recipe, where: Where, size: int, now: int) -> bool:
    """Return whether a section of stitches would then have one for each: of those, all others are doubtful."""
    section = value_at(recipe, where[:-1]) if where[-1] == "stitches" else None
    if not isinstance(section, Along) or section.unit != "stitch" or section.spots is None:
        return False
    try:
        numbers = {name: _printed_in(number.by_size, size) for name, number in recipe.number.items()}
        return count_of(section.spots, numbers, size) == now
    except (NoNumber, ValueError):
        return False


def _printed_in(by_size: int | tuple[int, ...] | None, size: int) -> int:
    if isinstance(by_size, tuple):
        return by_size[size] if size < len(by_size) else 0
    return by_size or 0


def _same(one: Finding, other: Finding) -> bool:
    return (one.kind, one.step, one.where, one.size) == (other.kind, other.step, other.where, other.size)


def _off(finding: Finding) -> int:
    found, expected = finding.found, finding.expected
    return found - expected if isinstance(found, int) and isinstance(expected, int) else 0


def _uneven(counts: Sequence[int]) -> int:
    """Return how unevenly counts go from size to size: how much each step differs from the last; a fall twice."""
    steps = [after - before for before, after in pairwise(counts)]
    return sum(abs(after - before) for before, after in pairwise(steps)) + sum(-2 * step for step in steps if step < 0)


def _even(counts: Sequence[int], at: int) -> Iterator[int]:
    """Yield what would go evenly with the counts of the sizes beside one."""
    last = len(counts) - 1
    if 0 < at < last:
        between = counts[at - 1] + counts[at + 1]
        yield from (between // 2, -(-between // 2))
    if at > 0:
        yield counts[at - 1]
    if at < last:
        yield counts[at + 1]
    if at > 1:
        yield 2 * counts[at - 1] - counts[at - 2]
    if at < last - 1:
        yield 2 * counts[at + 1] - counts[at + 2]
