"""Numbers that are not printed: what each must be for the printed ones to come out, solved exactly.

Every comparison the audit makes changes with such a number along a straight line, as long as no step refuses. So the
recipe is run for a guess and once more with each number one greater; that gives the lines, and elimination in fractions
gives the numbers (Gauss). Where a step refused on the way the lines bend, so it is done again from the answer.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial
from types import MappingProxyType

from finishing_tui.craft.counts import span
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.words import listing
from finishing_tui.recipe.audit.finding import Compared, Finding
from finishing_tui.recipe.audit.footing import Inputs, footing
from finishing_tui.recipe.audit.numbers import misprinted, sums
from finishing_tui.recipe.audit.running import run
from finishing_tui.recipe.audit.tally import TooMuch
from finishing_tui.recipe.numbers import unprinted_in
from finishing_tui.recipe.sums import MOST

_GUESSES = (20, 60, 200, 3)
"""First guesses, tried one after the other until one leads to an answer."""

_ROUNDS = 8
"""How often an answer is taken as the next guess."""

Unknown = tuple[object, ...]
Equation = tuple[list[Fraction], Fraction]


@dataclass(frozen=True, slots=True)
class Solved:
    """What the numbers that are not printed must be, by name, and what is told about them.

    ``values`` has every one of them, so that the audit can go on: a guess for those that nothing tells.
    """

    values: Mapping[str, int]
    findings: tuple[Finding, ...]


def implied(inputs: Inputs) -> Solved:
    """Return what every number must be that is not printed and that ``inputs.own`` does not have.

    Raises ``TooMuch`` when finding them out takes more entries in the ledger than an audit may.
    """
    unknown = [name for name in unprinted_in(inputs.recipe) if name not in inputs.own]
    if not unknown:
        return Solved(MappingProxyType({}), ())
    best: tuple[int, dict[str, int], list[Equation]] | None = None
    for guess in _GUESSES:
        values = dict.fromkeys(unknown, guess)
        rows: list[Equation] = []
        for _ in range(_ROUNDS):
            rows = _lines(inputs, values)
            better = {name: _whole(_single(rows, at), values[name]) for at, name in enumerate(unknown)}
            if better == values:
                break
            values = better
        told = sum(_single(rows, at) is not None for at in range(len(unknown)))
        if best is None or told > best[0]:
            best = (told, values, rows)
        if told == len(unknown):
            break
    assert best is not None
    _, values, rows = best
    findings = [_told(inputs, name, at, values, rows, unknown) for at, name in enumerate(unknown)]
    return Solved(MappingProxyType(values), tuple(findings))


def _told(
    inputs: Inputs, name: str, at: int, values: Mapping[str, int], rows: list[Equation], unknown: list[str]
) -> Finding:
    number, size = inputs.recipe.number[name], inputs.recipe.sizes[inputs.size]
    exact = _single(rows, at)
    finding = partial(Finding, where=("number", name), size=size)
    if exact is None:
        shared = next((row for row in rows if row[0][at]), None)
        if shared is None:
            text = f"the number {name} ({number.text}) is missing, and no count gives it"
            mend = "print it, or print a count that it is part of"
        else:
            others = [other for place, other in enumerate(unknown) if shared[0][place]]
            text = f"{listing(others)} cannot be told apart: {_equation(shared, unknown)}"
            mend = "print one of them"
        return finding(level="warning", kind="not worked out", message=text, suggestion=mend)
    if exact.denominator != 1 or not max(number.least, 0) <= exact <= number.most:
        return finding(
            level="error",
            kind="no number fits",
            message=f"no whole number makes the number {name} ({number.text}) come out: it would have to be {exact}",
            expected=span(number.least, number.most),
            found=str(exact),
            suggestion="mend a count that it is part of",
        )
    return finding(
        level="implied",
        kind="implied",
        message=f"the number {name} ({number.text}) is not printed and must be {values[name]}",
        expected=values[name],
    )


def _equation(row: Equation, unknown: list[str]) -> str:
    terms = [
        (name if abs(weight) == 1 else f"{abs(weight)} * {name}", weight < 0)
        for name, weight in zip(unknown, row[0], strict=True)
        if weight
    ]
    text = "".join(f"{' - ' if minus else ' + ' if place else ''}{term}" for place, (term, minus) in enumerate(terms))
    return f"{text} = {row[1]}"


def _single(rows: list[Equation], at: int) -> Fraction | None:
    """Return the value that the solved rows give to the unknown at ``at``; None where it hangs together with others."""
    for weights, total in rows:
        if weights[at] and not any(weight for place, weight in enumerate(weights) if place != at):
            return total
    return None


def _whole(value: Fraction | None, otherwise: int) -> int:
    if value is None:
        return otherwise
    return min(rounded(max(value, Fraction(0))), MOST)


def _lines(inputs: Inputs, values: Mapping[str, int]) -> list[Equation]:
    """Return the conditions on the unknowns near ``values``, solved as far as they go (reduced row echelon form)."""
    base = _compared(inputs, values)
    steps = [_compared(inputs, {**values, name: value + 1}) for name, value in values.items()]
    rows: list[Equation] = []
    for key, off in base.items():
        if len(rows) == len(values):
            break  # what comes after follows from these, or contradicts them
        weights = [Fraction(step.get(key, off) - off) for step in steps]
        if any(weights):
            total = sum((w * v for w, v in zip(weights, values.values(), strict=True)), Fraction(-off))
            _eliminate(rows, (weights, total))
    return rows


def _eliminate(rows: list[Equation], row: Equation) -> None:
    """Add ``row`` to the solved ``rows``, unless it follows from them or contradicts them: the first one counts."""
    for solved in rows:
        row = _without(row, solved)
    pivot = next((at for at, weight in enumerate(row[0]) if weight), None)
    if pivot is None:
        return
    scale = row[0][pivot]
    row = ([weight / scale for weight in row[0]], row[1] / scale)
    rows[:] = [_without(solved, row) for solved in rows]
    rows.append(row)


def _without(row: Equation, solved: Equation) -> Equation:
    pivot = next(at for at, weight in enumerate(solved[0]) if weight)
    factor = row[0][pivot] / solved[0][pivot]
    if not factor:
        return row
    return (
        [one - factor * other for one, other in zip(row[0], solved[0], strict=True)],
        row[1] - factor * solved[1],
    )


def _compared(inputs: Inputs, values: Mapping[str, int]) -> dict[Unknown, int]:
    """Return how far off every comparison is with these values, by what it is."""
    try:
        ground = footing(replace(inputs, own=MappingProxyType({**inputs.own, **values})))
    except TooMuch:
        raise
    except FinishingError:
        return {}
    done = run(ground, trust="ledger").compared
    both = [*(one for one in sums(ground, misprinted(ground)) if isinstance(one, Compared)), *done]
    return {(one.step, one.where, one.about): one.off for one in both}
