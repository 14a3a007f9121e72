"""What a knitter can ask for. A command says what she did or wants; ``decide`` works out what follows."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.garment.events import AnyAct, Pace, PuttingRight, RepairChoice, WhyOff
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan
from finishing_tui.recipe.kinds import AnyStep


class Command:
    """What a knitter wants done."""

    __slots__ = ()


@dataclass(frozen=True, slots=True)
class Press(Command):
    """The next thing was done."""


@dataclass(frozen=True, slots=True)
class Other(Command):
    """The other thing was done; at a join, ``side`` is the needle on which two were worked together.

    At a hole ``side`` is the tail that it was closed with instead.
    """

    side: str = ""


@dataclass(frozen=True, slots=True)
class Finish(Command):
    """This step is done, or the lot of this stage; ``sure`` when asked again."""

    sure: bool = False


@dataclass(frozen=True, slots=True)
class FinishAll(Command):
    """All that is left of this join, seam or bind off was done, without a press for each."""


@dataclass(frozen=True, slots=True)
class TakeUp(Command):
    """Go on with another step."""

    step: int


@dataclass(frozen=True, slots=True)
class AlreadyAt(Command):
    """I am already at this step: the ones before it were done elsewhere."""

    step: int


@dataclass(frozen=True, slots=True)
class LeaveOut(Command):
    """Leave a step out; ``sure`` when asked again."""

    step: int
    sure: bool = False


@dataclass(frozen=True, slots=True)
class TakeCount(Command):
    """The count is ``counted``, on ``place`` (the section under way where it is empty)."""

    counted: int
    place: str = ""
    answer: WhyOff | None = None
    left: int | None = None
    repair: RepairChoice = "space-the-rest"


@dataclass(frozen=True, slots=True)
class TakeMeasure(Command):
    """A value was typed, in the unit the stage asks for."""

    value: str


@dataclass(frozen=True, slots=True)
class PutRight(Command):
    """Put a difference right: ``difference`` stitches more or fewer on ``place``, here, in ``step``, or not at all."""

    how: PuttingRight
    place: str
    difference: int
    step: int | None = None


@dataclass(frozen=True, slots=True)
class ChooseMirror(Command):
    """Let the section that mirrors another follow it as it was worked (``as_worked``), or as it was planned."""

    as_worked: bool


@dataclass(frozen=True, slots=True)
class PinEdge(Command):
    """Pin the edge that is about to be picked up in ``parts`` equal parts."""

    parts: int


@dataclass(frozen=True, slots=True)
class WhatIf(Command):
    """Let what is under way go another way from here: a section of an edge, or the rounds of a band.

    ``target``: so many loops of it in all; ``spots``: it has so many; ``style``: as hands remember it, or most evenly;
    ``rhythm``: (a, b) for a of every b to its end, which gives its own target; ``rounds``: so many rounds or rows.
    What is not given stays.
    """

    target: int | None = None
    spots: int | None = None
    style: Literal["easy", "even"] | None = None
    rhythm: tuple[int, int] | None = None
    rounds: int | None = None


@dataclass(frozen=True, slots=True)
class TakeOut(Command):
    """Work was taken out, to ``units`` units of ``stage`` of ``step``; ``sure`` when later work falls with it."""

    step: int
    stage: int = 0
    units: int = 0
    sure: bool = False


@dataclass(frozen=True, slots=True)
class TakeBack(Command):
    """Take the latest standing group back. Whoever holds the journal fills these in.

    ``acts``: what happened in ``group``; ``top``, ``top_label``: the group that stands under it, and what it was.
    """

    group: int
    acts: tuple[AnyAct, ...]
    top: int
    top_label: Label | None


@dataclass(frozen=True, slots=True)
class PutBackAgain(Command):
    """Let the group that was taken back last stand again; ``acts``: what happened in it."""

    group: int
    acts: tuple[AnyAct, ...]


@dataclass(frozen=True, slots=True)
class Hold(Command):
    """The latest ``groups``, first one first, were one key held down. Whoever holds the journal fills these in.

    Each is its number and what happened in it; ``most``: so many of them stand, or those up to the first stop where
    it is None; ``under``, ``under_label``: the group under them, and what it was.
    """

    groups: tuple[tuple[int, tuple[AnyAct, ...]], ...]
    most: int | None
    under: int
    under_label: Label | None


@dataclass(frozen=True, slots=True)
class ChoosePace(Command):
    """A press is to stand for this from here on."""

    pace: Pace


@dataclass(frozen=True, slots=True)
class WriteNote(Command):
    """Write a note at the step under way."""

    text: str


@dataclass(frozen=True, slots=True)
class PickUpGarment(Command):
    """A sitting begins."""


@dataclass(frozen=True, slots=True)
class PutGarmentDown(Command):
    """The sitting ends; ``where``: what the knitter writes about where she left it."""

    where: str = ""


@dataclass(frozen=True, slots=True)
class InsertStep(Command):
    """Put ``step`` into the plan, right ``behind`` the one that stands there, counted from 0 (-1: as the first)."""

    step: AnyStep
    behind: int


@dataclass(frozen=True, slots=True)
class Replan(Command):
    """Take a changed plan for the steps that are not begun yet: ``why``, and what the knitter wrote about it."""

    plan: Plan
    note: str = ""
    why: Label | None = None


@dataclass(frozen=True, slots=True)
class Refusal:
    """A command was not carried out: ``sentence`` says why.

    ``again``: the command that carries it out all the same, where asking twice is enough; ``does``: what that does, as
    it is said of the key.
    """

    sentence: str
    again: Command | None = None
    does: str = ""


def may_change_later(command: Command) -> bool:
    """Return whether later numbers may be others after ``command``: a count, or a step given up with more to do."""
    return isinstance(command, TakeCount) or (isinstance(command, Finish | LeaveOut) and command.sure)
