"""How far a step is: its stages as they were fixed when it began, and the progress in each.

These are values that events carry and evolve puts in place. Nothing here decides anything, and nothing here plans:
``walk`` reads an edge, ``decide`` makes changes.
"""

from dataclasses import dataclass, field, replace
from typing import Literal

from finishing_tui.craft.ledger import Ledger
from finishing_tui.craft.spacing import Rhythm
from finishing_tui.recipe.stage import Stage

Status = Literal["to-come", "under-way", "done", "left-out"]
"""How a step stands."""


@dataclass(frozen=True, slots=True)
class Reached:
    """How far a stage is.

    ``units``: units done (spots passed, in a stage of spots); ``within``: loops already made in the next spot, where
    it takes two; ``loops``: stitches made in the stage.
    """

    units: int = 0
    within: int = 0
    loops: int = 0


@dataclass(frozen=True, slots=True)
class Stretch:
    """Part of a stage of spots that goes by one rhythm: the spots from ``start`` + 1 on, until the next stretch.

    ``moved``: spots whose planned loops were changed to make up for a stray, as (spot, loops); ``strayed``: spots at
    which something else was done than planned, as (spot, loops). Both hold what differs from the rhythm only, so that
    a long edge costs no more than a short one. ``loops``: the loops that were there at ``start``, as counted.
    """

    start: int
    rhythm: Rhythm
    moved: tuple[tuple[int, int], ...] = ()
    strayed: tuple[tuple[int, int], ...] = ()
    loops: int = 0


@dataclass(frozen=True, slots=True)
class Progress:
    """How a stage stands: its mark, its stretches (none but in a stage of spots), and what was counted in it.

    ``confirmed``: the last count that was confirmed, as (loops, spot); ``value``: what was typed, where one is asked;
    ``doubled``: pairs at which two were worked together on one needle, as (pair, needle).
    """

    mark: Reached = Reached()
    stretches: tuple[Stretch, ...] = ()
    confirmed: tuple[int, int] = (0, 0)
    value: str = ""
    doubled: tuple[tuple[int, str], ...] = ()


@dataclass(frozen=True, slots=True)
class StepWork:
    """A step that was begun: ``stages`` and the ``progress`` in each, and the ledger ``before`` its first entry.

    ``at``: the index of the stage under way: the first that is not complete; the number of stages when all are;
    ``complete``: whether every stage is complete. Both are worked out once, since every press asks for them many times.
    """

    stages: tuple[Stage, ...]
    progress: tuple[Progress, ...]
    before: Ledger
    at: int = field(init=False, repr=False, compare=False)
    complete: bool = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        at = len(self.stages)
        # One of a stranger's journal may have other progress than stages; whoever reads it refuses it.
        for index, (stage, progress) in enumerate(zip(self.stages, self.progress, strict=False)):
            if progress.mark.units < stage.units:
                at = index
                break
        object.__setattr__(self, "at", at)
        object.__setattr__(self, "complete", at == len(self.stages))

    @property
    def ticks(self) -> bool:
        """Whether there are only things to tick off."""
        return all(stage.unit == "item" for stage in self.stages)

    def with_progress(self, stage: int, progress: Progress) -> "StepWork":
        """Return this work with the progress of one stage replaced."""
        return replace(self, progress=(*self.progress[:stage], progress, *self.progress[stage + 1 :]))


@dataclass(frozen=True, slots=True)
class Standing:
    """How a step stands, with its work once it was begun."""

    status: Status = "to-come"
    work: StepWork | None = None


def fresh(stage: Stage) -> Progress:
    """Return the progress of a stage that was not begun."""
    return Progress(stretches=(Stretch(0, stage.rhythm),) if stage.rhythm is not None else ())
