"""Garments on paper that are one section of an edge, and questions about them."""

from typing import Any

from hypothesis import strategies as st

from finishing_tui.garment.commands import ChoosePace, Finish, Other, Press, TakeMeasure
from finishing_tui.garment.events import Pace
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Progress, StepWork
from finishing_tui.recipe.stage import Stage
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along as along_edge
from tests.recipe_texts import place, recipe, step

GAUGE = {"stitches": 21, "rows": 28, "over": "10 cm"}
"""A gauge that three of four rows suit."""

PACES: tuple[Pace, ...] = ("loop", "spot", "run")
"""What a press may stand for along an edge."""


def along(
    spots: int,
    stitches: int,
    style: str = "easy",
    ends: str = "open",
    *,
    pace: Pace = "loop",
    gauge: dict[str, Any] | None = None,
) -> Paper:
    """Return a garment just begun: one section with a recount at its half, then two rows of a band, a marker, a check.

    ``gauge``: its keys, if there is one.
    """
    paper = Paper(
        plan_for(
            recipe(
                "One section",
                place("band"),
                step(
                    "pick up and knit",
                    "Pick up",
                    along_edge("edge", spots, stitches, unit="row", style=style, ends=ends),
                    onto="band",
                ),
                step("work", "Work the band", on="band", rows=2),
                step("mark", "Mark it", marker="it"),
                step("check", "Look at it", items=["It lies flat."]),
                **({"gauge": gauge} if gauge else {}),
            )
        )
    )
    return paper if pace == "loop" else paper.did(ChoosePace(pace))


@st.composite
def sections(draw: st.DrawFn, least: int = 1, most: int = 40) -> tuple[int, int, str, str]:
    """Return spots, stitches, style and ends that can be: up to two stitches a spot, ends that can be picked."""
    spots = draw(st.integers(least, most))
    ends = draw(st.sampled_from(("open", "closed")))
    stitches = draw(st.integers(2 if ends == "closed" and spots > 1 else 1, 2 * spots))
    return spots, stitches, draw(st.sampled_from(("easy", "even"))), ends


def work_of(state: State, step: int | None = None) -> StepWork:
    """Return the work of the step under the needles, or of another one that was begun."""
    standing = state.standing if step is None else state.steps[step]
    assert standing is not None
    assert standing.work is not None
    return standing.work


def section(paper: Paper) -> tuple[Stage, Progress]:
    """Return the first section of the first step that was begun, and how it stands."""
    work = work_of(paper.state, paper.state.order[0])
    return work.stages[0], work.progress[0]


def press_to_the_end(paper: Paper) -> Paper:
    """Press until the step under the needles is complete; values are typed, and x takes in what a needle has more."""
    while not (work := work_of(paper.state)).complete:
        stage = work.stages[work.at]
        refusal = paper.do(TakeMeasure("61 cm") if stage.unit == "value" else Press())
        if refusal is not None:
            front, back = paper.state.ledger.on(stage.front), paper.state.ledger.on(stage.back)
            paper.did(Other(stage.front if front > back else stage.back))
    return paper


def reach(paper: Paper, step: int) -> Paper:
    """Work every step to its end until the one at ``step`` is under the needles."""
    while paper.state.current != step:
        finish(paper)
    return paper


def finish(paper: Paper) -> Paper:
    """Work the step under the needles to its end, and say that it is done."""
    if paper.state.standing is not None and paper.state.standing.work is None:
        paper.did(Press())
    press_to_the_end(paper).surely(Finish())
    return paper
