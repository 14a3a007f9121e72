"""A number printed in every size against the sum it must be, and against its own least and most."""

from collections.abc import Mapping

from finishing_tui.craft.counts import span
from finishing_tui.recipe.audit.finding import Compared, Finding
from finishing_tui.recipe.audit.footing import AuditFooting
from finishing_tui.recipe.audit.look import Findings
from finishing_tui.recipe.audit.showing import in_figures
from finishing_tui.recipe.sums import work_out


def misprinted(footing: AuditFooting) -> dict[str, int]:
    """Return the numbers whose value differs from their sum, with what the sum comes to."""
    return {
        name: total
        for name, number in footing.recipe.number.items()
        if number.is_ and number.by_size is not None
        if (total := work_out(number.is_, footing.numbers)) != footing.numbers[name]
    }


def sums(footing: AuditFooting, wrong: Mapping[str, int]) -> Findings:
    """Yield a comparison for every number that is printed and a sum too, and a finding for each that is ``wrong``."""
    for name, number in footing.recipe.number.items():
        value = footing.numbers[name]
        if number.is_ and number.by_size is not None:
            yield Compared(None, ("number", name), "is", wrong.get(name, value), value)
        if name in wrong:
            yield _misprinted(footing, name, value, wrong[name])
        if not number.least <= value <= number.most:
            yield Finding(
                level="error",
                kind="out of range",
                message=f"the number {name} comes to {value}, and may be {span(number.least, number.most, value)}",
                where=("number", name),
                size=footing.size_name,
                expected=span(number.least, number.most, value),
                found=value,
                suggestion="mend its least and most, or what it is worked out from",
            )


def _misprinted(footing: AuditFooting, name: str, value: int, total: int) -> Finding:
    number = footing.recipe.number[name]
    where = ("number", name, "by_size", *((footing.size,) if isinstance(number.by_size, tuple) else ()))
    return Finding(
        level="error",
        kind="sum",
        message=f"the number {name} ({number.text}) is printed {value}, and its parts come to {total}",
        where=where,
        size=footing.size_name,
        expected=total,
        found=value,
        sum=f"{in_figures(number.is_, footing.numbers)} = {total}",
        suggestion=f"print {total}",
    )
