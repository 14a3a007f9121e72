"""What speaks against a step being done: each doubt is told, and the step is done all the same when asked again."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.decide.stages import made, sentence
from finishing_tui.garment.state import State
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.counts import count_of


def doubts_about(state: State, step: int, work: StepWork) -> list[str]:
    """Return why ``step``, which stands as ``work``, may not be done: what is left of it, and counts it leaves."""
    return [*_unworked(work), *_unexpected(state, step)]


def _unworked(work: StepWork) -> list[str]:
    """Return what is left of the step, as a sentence of doubt; nothing when it is complete."""
    if work.complete:
        return []
    stage, mark = work.stages[work.at], work.progress[work.at].mark
    if stage.unit == "value":
        return ["nothing was typed yet"]
    of = stage.target if stage.unit == "spot" else stage.units
    return [f"{stage.title}: {made(stage, mark)} of {of} so far"]


def _unexpected(state: State, step: int) -> list[str]:
    """Return what the step leaves otherwise than the recipe expects, as sentences of doubt."""
    recipe_step, plan = state.plan.step(step), state.plan
    here = plan.here(state.ledger)
    doubts = []
    for place, count in recipe_step.expect.items():
        held = state.ledger.on(place)
        try:
            wanted = count_of(count, here.numbers, here.size)
        except FinishingError as error:
            doubts.append(f"what the recipe expects on the {here.name(place)} cannot be worked out: {sentence(error)}")
            continue
        if wanted != held:
            doubts.append(f"the recipe expects {wanted} on the {here.name(place)}, and there are {held}")
    place, repeat = recipe_step.main_place, recipe_step.repeat
    if repeat and place and not repeat.takes(state.ledger.on(place)):
        plus = f" and {repeat.plus}" if repeat.plus else ""
        doubts.append(f"{state.ledger.on(place)} on the {here.name(place)} is not a multiple of {repeat.of}{plus}")
    return doubts
