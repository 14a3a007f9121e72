"""Where work can be taken out to: the parts of the step under way, and the beginnings of steps before."""

from dataclasses import dataclass

from finishing_tui.garment.commands import TakeOut
from finishing_tui.garment.decide.rip import spot_with_left
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Progress
from finishing_tui.recipe.stage import Stage


@dataclass(frozen=True, slots=True)
class RipPoint:
    """A place work can be taken out to, in words.

    Without a ``most``, ``command`` is ready. With one, a number from 0 to ``most`` of ``unit``s is asked for, and
    ``to`` gives the command. ``left``: the section of which so many stitches are to be left, where they are counted.
    """

    text: str
    command: TakeOut
    most: int = 0
    unit: str = ""
    left: tuple[Stage, Progress] | None = None

    @property
    def asks(self) -> str:
        """The question for the number."""
        if self.left is None:
            return f"Rip back to which {self.unit}? You're at {self.unit} {self.most}."
        return f"Rip back to how many stitches of the {self.left[0].title}? You have {self.most}."

    def to(self, units: int) -> TakeOut:
        """Return the command that takes it out to ``units`` units, or until so many stitches are left.

        Raises ``FinishingError`` where no row has so many stitches left.
        """
        if self.left is not None:
            units = spot_with_left(*self.left, units)
        return TakeOut(self.command.step, self.command.stage, units)


def rip_points(state: State) -> tuple[RipPoint, ...]:
    """Return the places work can be taken out to, nearest first."""
    points: list[RipPoint] = []
    for step in reversed(state.order):
        work = state.steps[step].work
        if work is None:
            continue
        title = state.plan.step(step).title
        for index in range(min(work.at, len(work.stages) - 1), -1, -1):
            stage, mark = work.stages[index], work.progress[index].mark
            if not mark.units:
                continue
            if stage.unit in {"spot", "round", "pair", "stitch"}:
                unit = _unit(stage)
                text = f"step {step + 1}, {stage.title}: to a {unit} (you're at {mark.units})"
                points.append(RipPoint(text, TakeOut(step, index, mark.units), mark.units, unit))
            if stage.unit == "spot" and (loops := mark.loops - mark.within):
                text = f"step {step + 1}, {stage.title}: to a number of stitches (you have {loops})"
                left = stage, work.progress[index]
                points.append(RipPoint(text, TakeOut(step, index, mark.units), loops, "stitch", left))
        points.append(RipPoint(f"the start of step {step + 1}, {title}", TakeOut(step)))
    return tuple(points)


def _unit(stage: Stage) -> str:
    return stage.spot if stage.unit in {"spot", "round"} else stage.unit
