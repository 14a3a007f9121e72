"""What was really done in a stage, in words: what is there, not what was planned."""

from collections.abc import Iterator

from finishing_tui.craft.spacing import say
from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.walk import against_plan, planned, strays
from finishing_tui.garment.work import Progress, Reached, StepWork
from finishing_tui.glance.stored_words import ACTS, AGAINST_PLAN
from finishing_tui.recipe.stage import Stage


def done_words(work: StepWork) -> Iterator[str]:
    """Yield a line for every stage of a step of which something was done, and for every item that was ticked off."""
    for stage, progress in zip(work.stages, work.progress, strict=True):
        if stage.unit == "item":
            yield from (item.text.rstrip(".") for item in stage.items[: progress.mark.units])
        elif progress.mark != Reached():
            yield _done(stage, progress)


def _done(stage: Stage, progress: Progress) -> str:
    units = progress.mark.units
    of = "" if units >= stage.units else f" of {stage.units}"
    match stage.unit:
        case "spot":
            return f"{stage.title}: {_edge(stage, progress)}"
        case "pair":
            return f"{stage.title}: {units}{of}{_doubled(progress)}"
        case "round":
            said = [f"{stage.spot} {at}, {words}" for at, words in stage.said if at <= units]
            return "; ".join([f"{plural(units, stage.spot)}{of}", *said])
        case "stitch":
            many = progress.mark.loops if stage.counts else units
            return f"{stage.title}: {ACTS[stage.act].lower()} {many}{of}"
        case _:
            value = f"{progress.value} {stage.of}".rstrip() if progress.value else "not written down"
            return f"{stage.title}: {value}"


def _edge(stage: Stage, progress: Progress) -> str:
    """Say a walked edge: its loops and spots, how they were spaced, and where it strayed."""
    mark = progress.mark
    parts = [f"{plural(mark.loops, 'loop')} from {plural(mark.units, stage.spot)}"]
    if mark.units < stage.units and stage.uncounted:
        parts[0] += f" (of {stage.target})" if stage.uncounted == "spots" else " so far"
    elif mark.units < stage.units:
        parts[0] += f" (of {stage.target} from {stage.units})"
    for stretch in progress.stretches:
        if stretch.rhythm.spots and stretch.start < mark.units:
            start = f"from {stage.spot} {stretch.start + 1} " if stretch.start else ""
            at_its_rate = stage.uncounted and not stretch.start
            parts.append(start + (stage.words if at_its_rate else say(stretch.rhythm, unit=stage.spot)))
    for spot, loops in strays(progress):
        parts.append(f"{stage.spot} {spot} {AGAINST_PLAN[against_plan(loops, planned(progress, spot))]}")
    return "; ".join(parts)


def _doubled(progress: Progress) -> str:
    if not progress.doubled:
        return ""
    pairs = listing([str(pair) for pair, _ in progress.doubled])
    return f", two together at {'pair' if len(progress.doubled) == 1 else 'pairs'} {pairs}"
