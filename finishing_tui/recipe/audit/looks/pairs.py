"""Two needles worked off together: both must hold the same number, unless that is different on purpose.

Sources: A. Rangel; L. A. Bestor; Kelbourne Woolens (the three-needle bind-off).
"""

from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Look


def look(look: Look) -> Findings:
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
