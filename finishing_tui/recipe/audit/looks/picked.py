"""Picking up along an edge: what a section can hold, its natural ratio, its mirror, and the side that faces."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from finishing_tui.craft.edges import ROWS_PER, doubt
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.lengths import say_length
from finishing_tui.craft.words import decimal, plural
from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.look import Findings, Instead, Look
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along


def instead(look: Look) -> Instead:
    """Return the step with what a section cannot hold put on as many spots as it takes, and what was wrong with it."""
    step = look.step
    if not isinstance(step, PickUpAndKnit):
        return step, ()
    told: list[Finding] = []
    sections = list(step.section)
    for place, section in enumerate(step.section):
        if not isinstance(section, Along) or section.uncounted(look.here):
            continue
        spots = section.walked(look.here)
        stitches = section.wanted(look.here, spots)
        if _fits(section, step, spots, stitches):
            continue
        told.append(_cannot(look, place, section, spots, stitches))
        roomy: Along = replace(section, spots=stitches, stitches=stitches, mirrors="")
        sections[place] = roomy
    return (replace(step, section=tuple(sections)) if told else step), tuple(told)


def _fits(section: Along, step: PickUpAndKnit, spots: int, stitches: int) -> bool:
    """Return whether a section can hold its stitches; none of either is none of it in this size."""
    if not spots or not stitches:
        return spots == stitches
    closed = (section.ends or step.ends) == "closed"
    return stitches <= 2 * spots and not (closed and stitches == 1 < spots)


def _cannot(look: Look, place: int, section: Along, spots: int, stitches: int) -> Finding:
    natural = section.natural(look.here, spots) if spots else None
    if not stitches or (spots and stitches == 1):
        suggestion = f"{decimal(natural * spots)} would be natural" if natural else f"pick {spots} or fewer, but some"
        wrong = f"{section.along} has {plural(spots, section.unit)}, and {plural(stitches, 'stitch')} cannot close it"
    else:
        suggestion = f"pick up to {2 * spots}, or count the {section.unit}s again"
        wrong = f"{section.along} has {plural(spots, section.unit)} and cannot hold {plural(stitches, 'stitch')}"
    return look.finding(
        "error",
        "pick-up does not fit",
        wrong,
        "section",
        place,
        "stitches" if section.stitches is not None else "spots",
        expected=2 * spots,
        found=stitches,
        suggestion=suggestion,
    )


def look(look: Look) -> Findings:
    """Yield what is doubtful in a pick-up that can be done."""
    step = look.step
    if not isinstance(step, PickUpAndKnit):
        return
    along: dict[str, tuple[int | None, int]] = {}
    for place, section in enumerate(step.section):
        if not isinstance(section, Along):
            continue
        if section.uncounted(look.here):
            if section.stitches is not None:
                stitches = look.count(section.stitches)
                along.setdefault(section.along, (None, stitches))
                yield from _length(look, step, place, section, stitches)
            continue
        spots = section.walked(look.here)
        stitches = section.wanted(look.here, spots)
        if not _fits(section, step, spots, stitches):
            continue
        along.setdefault(section.along, (spots, stitches))
        told = along.get(section.mirrors) == (spots, stitches)  # beside the section it mirrors
        if section.stitches is not None and spots and not told:
            yield from _natural(look, place, section, spots, stitches)
    if not step.unequal:
        yield from _mirrors(look, step, along)
    yield from _facing(look, step)


def _natural(look: Look, place: int, section: Along, spots: int, stitches: int) -> Findings:
    natural = section.natural(look.here, spots)
    doubtful = doubt(section.unit, stitches, spots, natural)
    if doubtful is not None:
        wanted = rounded(natural * spots) if natural else None
        yield look.finding(
            "warning",
            "natural ratio",
            f"{section.along}: {doubtful.text.rstrip('.')}",
            "section",
            place,
            "stitches",
            expected=wanted,
            found=stitches,
            suggestion=f"use {wanted} to have it lie flat" if wanted else "",
        )


def _length(look: Look, step: PickUpAndKnit, place: int, section: Along, stitches: int) -> Findings:
    """Yield how long an edge is that nobody counted, where the gauge tells: that is likely, and only ever said so."""
    if look.here.body is None or not stitches or section.unit == "stitch":
        return
    rate, _ = section.rate(look.here, step.ratio)
    spots = rounded(stitches / rate)
    rows = spots * ROWS_PER[section.unit]
    yield look.finding(
        "implied",
        "length fits",
        f"{section.along}: {plural(stitches, 'stitch')} fit an edge of about {plural(spots, section.unit)} "
        f"({say_length(look.here.body.length_of_rows(Fraction(rows)))})",
        "section",
        place,
        "stitches",
        expected=spots,
    )


def _mirrors(look: Look, step: PickUpAndKnit, along: Mapping[str, tuple[int | None, int]]) -> Findings:
    for place, section in enumerate(step.section):
        if not isinstance(section, Along) or not {section.along, section.mirrors} <= along.keys():
            continue
        mine, other = along[section.along], along[section.mirrors]
        if None in {mine[0], other[0]}:  # of an edge nobody counted only the stitches can be compared
            mine, other = (None, mine[1]), (None, other[1])
        for what, one, two in zip(("spots", "stitches"), mine, other, strict=True):
            if one is not None and two is not None:
                yield look.compared(what, two, one, "section", place, what)
        if mine != other:
            which = 0 if mine[1] == other[1] else 1
            units = (f"{section.unit}s", "stitches")
            yield look.finding(
                "error",
                "mirror",
                f"{section.along} should mirror {section.mirrors}, and they differ: {mine[which]} and {other[which]} "
                f"{units[which]}",
                "section",
                place,
                ("spots", "stitches")[which],
                expected=other[which],
                found=mine[which],
                suggestion=f"{other[which]} or {mine[which]} on both, or say unequal = true",
            )


def _facing(look: Look, step: PickUpAndKnit) -> Findings:
    lie = look.before.posture.facing
    if step.facing and lie and step.facing != lie:
        yield look.finding(
            "error",
            "facing",
            f"the {lie} side faces, and this step picks up with the {step.facing} side facing",
            "facing",
            expected=step.facing,
            found=lie,
            suggestion="turn the work in an 'arrange' step before it, or mend facing",
        )
    elif lie == "wrong" and not step.facing:
        yield look.finding(
            "warning",
            "facing",
            "the wrong side faces, and stitches are picked up with the right side facing",
            expected="right",
            found="wrong",
            suggestion='turn the work first; where it is meant (a turned collar, a lining) say facing = "wrong"',
        )
