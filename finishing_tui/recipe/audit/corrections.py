"""Which single printed number, changed, would put an error right: each is tried on paper, the likeliest comes first.

An editor looks for the misprint that makes the sizes go evenly again. So do these: of all numbers that would do, first
those after which the fewest errors are left, then those whose list goes the most evenly from size to size.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import listing
from finishing_tui.recipe.audit.finding import Finding, Where
from finishing_tui.recipe.audit.printing import printed_numbers, value_at, with_value
from finishing_tui.recipe.audit.tally import Tally, TooMuch
from finishing_tui.recipe.model import Recipe

MOST = 3
"""Corrections named for one error."""

_ERRORS = 3
"""Errors of one size that corrections are looked for: what comes after them mostly comes of them."""


ErrorsIn = Callable[[Recipe, tuple[int, ...], Tally], list[Finding]]
"""Audits a recipe in some sizes and returns the errors; what it does is counted, and may come to ``TooMuch``."""


@dataclass(frozen=True, slots=True)
class Correction:
    """A printed number that would put an error right: where it stands, in which size (None for all), and the change.

    ``left``: the errors left then; ``uneven``: how much less evenly its list goes from size to size; ``printed``: it is
    the very count that was found to differ.
    """

    where: Where
    size: int | None
    was: int
    now: int
    left: int
    uneven: int
    printed: bool


class Corrections:
    """Looks for corrections in a recipe; ``errors_in`` audits it, and takes what it does from the ``tally``."""

    def __init__(self, recipe: Recipe, errors_in: ErrorsIn) -> None:
        self._recipe = recipe
        self._errors_in = errors_in
        self._numbers = tuple(printed_numbers(recipe))
        self._tally = Tally()
        self._every = tuple(range(len(recipe.sizes)))

    def put_right(self, size: int, findings: Sequence[Finding]) -> tuple[Finding, ...]:
        """Return the findings of a size, with corrections for suggestions where any single number would do."""
        errors = [one for one in findings if one.level == "error"]
        told = {id(one): said for one in errors[:_ERRORS] if (said := self._said(one, self._of(one, size, errors)))}
        return tuple(replace(one, suggestion=told[id(one)]) if id(one) in told else one for one in findings)

    def of(self, finding: Finding, size: int, findings: Sequence[Finding]) -> list[Correction]:
        """Return what would put one of the ``findings`` of a size right, the likeliest first."""
        return self._of(finding, size, [one for one in findings if one.level == "error"])

    def _of(self, finding: Finding, size: int, errors: Sequence[Finding]) -> list[Correction]:
        found = list[Correction]()
        try:
            for where, at, was in self._in(size):
                found += self._by(finding, size, errors, where, at, was)
        except TooMuch:
            return []  # told as far as it can be without
        return sorted(found, key=lambda one: (one.left, one.uneven, one.printed, abs(one.now - one.was)))

    def _in(self, size: int) -> Iterator[tuple[Where, int | None, int]]:
        """Yield the numbers printed for a size: where, their place in a list by size, and what they are."""
        for where in self._numbers:
            value = value_at(self._recipe, where)
            if isinstance(value, tuple):
                if size < len(value):
                    yield where, size, value[size]
            else:
                yield where, None, value

    def _by(
        self, finding: Finding, size: int, errors: Sequence[Finding], where: Where, at: int | None, was: int
    ) -> Iterator[Correction]:
        values = {
            now for now in self._solved(finding, size, errors, where, at, was) if now != was and now >= min(was, 0)
        }
        sizes = (size,) if at is not None else self._every
        before = len(errors) if at is not None or not values else len(self._errors(self._recipe, sizes) or ())
        for now in sorted(values):
            changed = self._with(where, at, now)
            after = self._errors(changed, sizes)
            if after is None or len(after) >= before or any(_same(finding, one) for one in after):
                continue
            uneven = 0
            if at is not None:
                uneven = _uneven(value_at(changed, where)) - _uneven(value_at(self._recipe, where))
            printed = where == finding.where[: len(where)]
            yield Correction(where, at, was, now, len(after), uneven, printed)

    def _solved(
        self, finding: Finding, size: int, errors: Sequence[Finding], where: Where, at: int | None, was: int
    ) -> Iterator[int]:
        """Yield what a number would have to be, by what one more or fewer does to the error; else what is even."""
        found = False
        for step in (1, -1):
            if was + step < min(was, 0):
                continue
            after = self._errors(self._with(where, at, was + step), (size,))
            if after is None:
                continue
            same = next((one for one in after if _same(finding, one)), None)
            if same is None:
                if len(after) < len(errors):
                    found = True
                    yield was + step
            elif (gone := _off(finding) - _off(same)) and _off(finding) % gone == 0:
                found = True
                yield was + step * (_off(finding) // gone)
        if not found and at is not None:
            yield from _even(value_at(self._recipe, where), at)

    def _with(self, where: Where, at: int | None, now: int) -> Recipe:
        value = value_at(self._recipe, where)
        changed: Recipe = with_value(self._recipe, where, now if at is None else (*value[:at], now, *value[at + 1 :]))
        return changed

    def _errors(self, recipe: Recipe, sizes: tuple[int, ...]) -> list[Finding] | None:
        """Return the errors of a recipe in some sizes; None where it cannot be audited at all."""
        try:
            return self._errors_in(recipe, sizes, self._tally)
        except TooMuch:
            raise
        except FinishingError:
            return None

    def _said(self, finding: Finding, found: Sequence[Correction]) -> str:
        """Return corrections in words, an editor's first; "print N" is last unless nothing goes as evenly."""
        few = list(found[:MOST])
        first = bool(few) and few[0].printed
        few = [one for one in few if not one.printed or (first and one is few[0])]
        said = [_words(self._recipe, one, finding) for one in few]
        last = next((one for one in found if one.printed), None)
        if last is None or first:
            return listing(said, "or")
        return f"{listing(said, 'or')}; else print {last.now}" if said else ""


def _same(one: Finding, other: Finding) -> bool:
    return (one.kind, one.step, one.where, one.size) == (other.kind, other.step, other.where, other.size)


def _off(finding: Finding) -> int:
    found, expected = finding.found, finding.expected
    return found - expected if isinstance(found, int) and isinstance(expected, int) else 0


def _uneven(counts: Sequence[int]) -> int:
    """Return how unevenly counts go from size to size: how much each step differs from the last, and every fall twice."""
    steps = [after - before for before, after in pairwise(counts)]
    return sum(abs(after - before) for before, after in pairwise(steps)) + sum(-2 * step for step in steps if step < 0)


def _even(counts: Sequence[int], at: int) -> Iterator[int]:
    """Yield what would go evenly with the counts of the sizes beside one."""
    others = [*counts[:at], *counts[at + 1 :]]
    if 0 < at < len(counts) - 1:
        yield (counts[at - 1] + counts[at + 1]) // 2
    if at > 0:
        yield counts[at - 1]
    if at < len(counts) - 1:
        yield counts[at + 1]
    if at > 1:
        yield max(2 * counts[at - 1] - counts[at - 2], 0)
    if at < len(counts) - 2:
        yield max(2 * counts[at + 1] - counts[at + 2], 0)
    if len(set(others)) == 1:
        yield others[0]


def _words(recipe: Recipe, one: Correction, finding: Finding) -> str:
    """Say a correction as an editor writes it: "bind off 16, not 17", "between = 22, not 20", "side 22, not 23"."""
    if one.printed:
        return f"print {one.now}"
    match one.where:
        case ("number", str(name), _):
            return f"{name} {one.now}, not {one.was}"
        case ("place", str(name), *_):
            return f"{one.now} on the {recipe.place[name].text} at the start, not {one.was}"
        case ("gauge", *_, str(key)):
            return f"gauge {one.now} {key}, not {one.was}"
        case ("step", int(at), *path):
            key = str(path[-1])
            step = recipe.step[at]
            in_step = "" if at == finding.step else f" in step {at + 1}"
            if path[0] == "expect":
                return f"print {one.now}, not {one.was}{in_step}"
            if key == "count":
                return f"{getattr(step, 'do', key)} {one.now}, not {one.was}{in_step}"
            if key == "times":
                return f"{one.now} times, not {one.was}{in_step}"
            return f"{key} = {one.now}, not {one.was}{in_step}"
    return f"{one.where[-1]} = {one.now}, not {one.was}"
