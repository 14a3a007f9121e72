"""The state of one garment: everything that follows from its events so far, as plain frozen values."""

from dataclasses import dataclass

from finishing_tui.craft.ledger import Ledger
from finishing_tui.garment.events import Pace
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan, StepId
from finishing_tui.garment.work import Standing, StepWork

RECENT = 40
"""How many presses the pace of a sitting is reckoned from."""

MOST_KEPT = 10_000
"""The most sittings, notes, or groups taken back one after another: almost thirty years of sittings, one a day. Each
event copies those before it, so reading a stranger's has to end somewhere."""

MOST_HELD = 1_000
"""The most places, tails, markers, holes or yarns that a ledger holds; each entry copies those before it."""

LONGEST_NOTE = 500
"""The longest note, and the longest word of where a garment was left, in characters."""


@dataclass(frozen=True, slots=True)
class Note:
    """A note, with the step it was written at and when (UTC, ISO 8601)."""

    at: str
    step: StepId | None
    text: str


@dataclass(frozen=True, slots=True)
class Sitting:
    """From picking the garment up (``began``) to putting it down (``ended``; empty while it lasts or if cut off)."""

    number: int
    began: str
    ended: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class State:
    """One garment right now.

    ``steps``: how each step of the plan stands; ``current``: the one under the needles, None when none is left;
    ``order``: the steps in the order they were begun; ``by_turns``: those since whose beginning one begun earlier was
    gone on with; ``top``, ``top_label``: the latest group that can be taken back,
    and what it was; ``undone``: groups taken back that may be put back, latest last; ``presses``: when the last presses
    were, in ms of this sitting; ``last``: when and at which step the last act was; ``inserted``: how many steps were
    ever inserted. A step is meant by where it stands in the plan, counted from 0; only what is stored for ever names
    it by its id.
    """

    plan: Plan
    ledger: Ledger
    steps: tuple[Standing, ...]
    current: int | None = 0
    order: tuple[int, ...] = ()
    by_turns: tuple[int, ...] = ()
    pace: Pace = "loop"
    top: int = 0
    top_label: Label | None = None
    undone: tuple[int, ...] = ()
    sittings: tuple[Sitting, ...] = ()
    notes: tuple[Note, ...] = ()
    presses: tuple[int, ...] = ()
    last_act: str = ""
    inserted: int = 0

    @property
    def standing(self) -> Standing | None:
        """How the step under the needles stands; None when none is left."""
        return None if self.current is None else self.steps[self.current]

    @property
    def work(self) -> StepWork | None:
        """The work of the step under the needles; None where none is left, or it was not begun."""
        return None if self.current is None else self.steps[self.current].work

    @property
    def unfinished(self) -> list[int]:
        """The steps of this size that are to come or under way, in the order of the recipe."""
        still = {"to-come", "under-way"}
        return [at for at, one in enumerate(self.steps) if one.status in still and self.plan.is_for(at)]
