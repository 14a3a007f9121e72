"""What speaks against a step being done: each doubt is told, and the step is done all the same when asked again."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.decide.first_round import first_rounds_on, mended_by
from finishing_tui.garment.decide.stages import made, sentence
from finishing_tui.garment.labels import EndDoubt, Label, Said, as_said
from finishing_tui.garment.state import State
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.counts import count_of

ASKED: Mapping[Said, str] = MappingProxyType(
    {
        "as-said": "{names[0]}",
        "nothing-typed": "no measurement is typed yet",
        "unfinished": "{names[0]}: {numbers[0]} of {numbers[1]} done",
        "unexpected-count": "{numbers[1]} on the {names[0]}, {numbers[0]} expected",
        "no-whole-repeat": "{numbers[0]} on the {names[0]} is not a multiple of {numbers[1]}",
        "no-whole-repeat-and": "{numbers[0]} on the {names[0]} is not a multiple of {numbers[1]} plus {numbers[2]}",
    }
)
"""What is said of each while it can still be put right; a step that is done in spite of them keeps them as labels."""


def doubts_words(doubts: Sequence[Label]) -> str:
    """Return ``doubts`` as they are asked about; where work is left, that alone, for the counts follow from it."""
    unfinished = [doubt for doubt in doubts if doubt.what == "unfinished"]
    doubts = unfinished or doubts
    return "; ".join(ASKED[doubt.what].format(names=doubt.names, numbers=doubt.numbers) for doubt in doubts)


def doubts_about(state: State, step: int, work: StepWork) -> list[Label]:
    """Return why ``step``, which stands as ``work``, may not be done: what is left of it, and counts it leaves."""
    return [*_unworked(work), *_unexpected(state, step)]


def _unworked(work: StepWork) -> list[Label]:
    """Return what is left of the step as a doubt; nothing when it is complete."""
    if work.complete:
        return []
    stage, mark = work.stages[work.at], work.progress[work.at].mark
    if stage.unit == "value":
        return [Label("nothing-typed")]
    if stage.uncounted == "all":
        return [as_said(f"{stage.title}: {made(stage, mark)} picked up, and you have not said that it ends here")]
    of = stage.target if stage.unit == "spot" else stage.units
    return [Label("unfinished", names=(stage.title,), numbers=(made(stage, mark), of))]


def _unexpected(state: State, step: int) -> list[Label]:
    """Return what the step leaves otherwise than the recipe expects."""
    recipe_step, plan = state.plan.step(step), state.plan
    here = plan.here(state.ledger)
    doubts = []
    for place, count in recipe_step.expect.items():
        held, name = state.ledger.on(place), here.name(place)
        try:
            wanted = count_of(count, here.numbers, here.size)
        except FinishingError as error:
            doubts.append(as_said(f"what the recipe expects on the {name} cannot be worked out: {sentence(error)}"))
            continue
        if wanted not in {held, held + _left_to_a_round(state, step, place)}:
            doubts.append(Label("unexpected-count", names=(name,), numbers=(wanted, held)))
    place, repeat = recipe_step.main_place, recipe_step.repeat
    held = state.ledger.on(place) if place else 0
    if repeat and place and not repeat.takes(held) and not repeat.takes(held + _left_to_a_round(state, step, place)):
        what: EndDoubt = "no-whole-repeat-and" if repeat.plus else "no-whole-repeat"
        numbers = (held, repeat.of, repeat.plus)
        doubts.append(Label(what, names=(here.name(place),), numbers=numbers if repeat.plus else numbers[:2]))
    return doubts


def _left_to_a_round(state: State, step: int, place: str) -> int:
    """Return the stitches that the first round to come on ``place`` is to make, so that nobody asks for them before."""
    found = first_rounds_on(state, place, step + 1)
    return mended_by(found[1]) if found else 0
