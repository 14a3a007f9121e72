"""The audit of a whole recipe: every size, step by step, and what only shows when the sizes lie side by side.

Numbers and places that the recipe names and never uses are told too.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.audit.corrections import Corrections
from finishing_tui.recipe.audit.finding import Finding, LedgerRow
from finishing_tui.recipe.audit.footing import Inputs, footing
from finishing_tui.recipe.audit.implied import implied
from finishing_tui.recipe.audit.numbers import misprinted, sums
from finishing_tui.recipe.audit.printing import places_of, printed_counts
from finishing_tui.recipe.audit.running import run
from finishing_tui.recipe.audit.sizes import falls_and_jumps
from finishing_tui.recipe.audit.tally import Tally, TooMuch
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import names_in


@dataclass(frozen=True, slots=True)
class SizeAudit:
    """One size: a ``row`` a step, every finding of this size, its numbers, and the ``start``: live stitches before.

    ``implied``: the numbers that are not printed, as they must be.
    """

    size: str
    start: Mapping[str, int]
    rows: tuple[LedgerRow, ...]
    findings: tuple[Finding, ...]
    numbers: Mapping[str, int]
    implied: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Audit:
    """A recipe in every size (or those asked for); ``general``: findings about the recipe as a whole."""

    sizes: tuple[SizeAudit, ...]
    general: tuple[Finding, ...]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Everything found: what is general first, then size by size."""
        return (*self.general, *(finding for size in self.sizes for finding in size.findings))

    @property
    def ok(self) -> bool:
        """Whether it can be knitted as written: no errors."""
        return not any(finding.level == "error" for finding in self.findings)


def audit(recipe: Recipe, sizes: tuple[int, ...] | None = None) -> Audit:
    """Audit ``recipe`` in the sizes at the positions ``sizes``, or in all of them.

    Raises ``TooMuch`` when it takes more entries in the ledger than an audit may.
    """
    tally = Tally()
    across = tuple(falls_and_jumps(recipe))
    wanted = range(len(recipe.sizes)) if sizes is None else sizes
    audits = tuple(audit_size(Inputs(recipe=recipe, size=size, tally=tally), across) for size in wanted)
    if any(finding.level == "error" for each in audits for finding in each.findings):
        look = Corrections(recipe, errors_in, tally)
        found = zip(wanted, audits, strict=True)
        audits = tuple(replace(each, findings=look.put_right(size, each.findings)) for size, each in found)
    return Audit(audits, tuple(unused(recipe)))


def errors_in(recipe: Recipe, sizes: tuple[int, ...], tally: Tally) -> list[Finding]:
    """Return the errors of some sizes, with nothing looked for that would put them right. Raises ``TooMuch``."""
    audits = (audit_size(Inputs(recipe=recipe, size=size, tally=tally)) for size in sizes)
    return [finding for each in audits for finding in each.findings if finding.level == "error"]


def audit_size(inputs: Inputs, across: tuple[Finding, ...] = ()) -> SizeAudit:
    """Audit one size, with a knitter's own numbers, gauge and hand where there is a knitter.

    ``across``: what is found from size to size; it only shows to a writer, as does what is never used. Raises
    ``TooMuch``.
    """
    name = inputs.recipe.sizes[inputs.size]
    mine = tuple(finding for finding in across if finding.size == name)
    try:
        solved = implied(inputs)
        ground = footing(replace(inputs, own=MappingProxyType({**inputs.own, **solved.values})))
    except TooMuch:
        raise
    except FinishingError as error:
        told = Finding(level="error", kind="number", message=str(error), where=("number",), size=name)
        nothing: Mapping[str, int] = MappingProxyType({})
        return SizeAudit(name, nothing, (), (told, *mine), nothing, nothing)
    wrong = misprinted(ground)
    done = run(ground, wrong=wrong)
    printed = (one for one in sums(ground, wrong) if isinstance(one, Finding))
    found = (*solved.findings, *printed, *mine, *done.findings)
    return SizeAudit(name, ground.live, done.rows, found, ground.numbers, solved.values)


def unused(recipe: Recipe) -> Iterator[Finding]:
    """Yield a warning for each; a printed number with a sum of its own is of use, since the two are compared."""
    named = {name for _, count in printed_counts(recipe) if isinstance(count, str) for name in names_in(count)}
    named |= {name for number in recipe.number.values() if number.is_ for name in names_in(number.is_)}
    for name, number in recipe.number.items():
        if name not in named and not (number.is_ and number.by_size is not None):
            yield _never("number", name, number.text)
    places = {place for step in recipe.step for place in places_of(step)}
    for name, place in recipe.place.items():
        if name not in places:
            yield _never("place", name, place.text)


def _never(what: str, name: str, text: str) -> Finding:
    return Finding(
        level="warning",
        kind="never used",
        message=f"the {what} {name} ({text}) is never used",
        where=(what, name),
        found=name,
        suggestion="use it in a step, or take it out",
    )
