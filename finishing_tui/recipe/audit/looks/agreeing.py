"""Numbers that must agree on paper: a count with what is there, two places, two needles, buttons with their holes.

Sources: A. Rangel; L. A. Bestor; Kelbourne Woolens (the three-needle bind-off).
"""

from finishing_tui.craft.words import listing, plural
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.recipe.kinds.sew_on import SewOn


def counted(look: Look) -> Findings:
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
            sum=_off(held - wanted),
            suggestion=f"print {held}, or mend what comes before",
        )


def _off(off: int) -> str:
    """Say how far off a count is, in all and on each of two sides: an underarm or a front may have been left out."""
    text = f"{abs(off)} too {'many' if off > 0 else 'few'}"
    return text if off % 2 else f"{text}, {abs(off) // 2} a side"


def same(look: Look) -> Findings:
    """Yield a comparison of every place with the first, and one finding where they differ."""
    step = look.step
    if not isinstance(step, Check) or step.unequal or not step.same:
        return
    held = [look.before.on(place) for place in step.same]
    for place, count in zip(step.same[1:], held[1:], strict=True):
        yield look.compared(place, held[0], count, "same")
    if len(set(held)) > 1:
        counts = listing([f"{count} on the {look.name(place)}" for place, count in zip(step.same, held, strict=True)])
        yield look.finding(
            "error",
            "places differ",
            f"these should hold the same number: {counts}",
            "same",
            expected=held[0],
            found=next(count for count in held if count != held[0]),
            suggestion="mend what comes before, or say unequal = true",
        )


def pairs(look: Look) -> Findings:
    """Yield a comparison for every stage that is to leave two needles empty, and a finding where they differ."""
    for stage, before in zip(look.stages, (look.before, *look.after), strict=False):
        if stage.empties:
            front, back = before.on(stage.front), before.on(stage.back)
            few, more = sorted((front, back))
            if not look.step.unequal:
                yield look.compared("pairs", front, back)
            if not look.trail.unsure.isdisjoint({stage.front, stage.back}):
                continue
            if more > 2 * few or (more != few and not look.step.unequal):
                fuller = look.name(stage.front if front > back else stage.back)
                extra = more - few
                yield look.finding(
                    "error",
                    "needles differ",
                    f"the {look.name(stage.front)} holds {front} and the {look.name(stage.back)} {back}; "
                    "both must hold the same number",
                    expected=front,
                    found=back,
                    sum=f"{more} - {few} = {extra}",
                    suggestion=f"have {extra} fewer on the {fuller} ({few}), or {plural(extra, 'stitch')} more on the "
                    f"other ({more})"
                    + (", or say unequal = true and work two together there" if more <= 2 * few else ""),
                )


def buttons(look: Look) -> Findings:
    """Yield a comparison where buttons are sewn on and there are holes for them, and a warning where they differ."""
    step, holes = look.step, look.trail.buttonholes
    if not isinstance(step, SewOn) or "button" not in step.what.lower() or not holes or step.unequal:
        return
    buttons = look.count(step.count)
    yield look.compared("buttons", holes, buttons, "count")
    if buttons != holes:
        yield look.finding(
            "warning",
            "buttons",
            f"{plural(buttons, 'button')} for {plural(holes, 'buttonhole')}",
            "count",
            expected=holes,
            found=buttons,
            suggestion=f"sew {holes} on, or work {plural(buttons, 'hole')}; the first and the last are counted too",
        )
