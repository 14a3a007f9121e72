"""A ``count`` step: the number that should be there against the ledger's."""

from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.count import CountStitches


def look(look: Look) -> Findings:
    """Yield a comparison where a number is printed, and a finding where the ledger has another."""
    step = look.step
    if not isinstance(step, CountStitches) or step.count is None:
        return
    wanted, held = look.count(step.count), look.before.on(step.place)
    yield look.compared("count", wanted, held, "count")
    if wanted != held and not (isinstance(step.count, str) and look.wrong.get(step.count.strip()) == held):
        yield look.finding(
            "error",
            "printed count",
            f"the {look.name(step.place)} has {plural(held, 'stitch')} when it is counted, printed {wanted}",
            "count",
            expected=wanted,
            found=held,
            place=step.place,
            suggestion=f"{_off(held - wanted)}; print {held}, or mend what comes before",
        )


def _off(off: int) -> str:
    """Say how far off a count is, in all and on each of two sides: an underarm or a front may have been left out."""
    text = f"{abs(off)} too {'many' if off > 0 else 'few'}"
    return text if off % 2 else f"{text}, {abs(off) // 2} a side"
