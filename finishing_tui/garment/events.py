"""Everything that can happen to a garment, as it is stored for ever.

An event carries the answers: what was entered in the ledger, and how each step stood before and after. ``evolve``
only puts these in place, so a later mend of the arithmetic cannot change an old garment, and undo needs no
arithmetic either: the inverse of an event is the same values the other way round.

What these classes and their fields are called on disk stands in ``stored_names``; never change what an old name means.
"""

from dataclasses import dataclass, replace
from typing import Literal, Self

from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.ledger import Entry, Ledger, inverses
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan, StepId
from finishing_tui.garment.work import Progress, Reached, Standing
from finishing_tui.recipe.kinds import AnyStep

Pace = Literal["loop", "spot", "run"]
"""What a press stands for in a stage of spots."""

WhyOff = Literal[
    "presses",
    "loops",
    "rows-left",
    "half-way",
    "rows-to-spare",
    "ends-at",
    "past-half",
    "before-half",
    "not-known",
    "edge-ends",
]
"""What is said with a count: what a difference from the presses is put down to, or where on the edge it was taken.

``presses``: I missed or doubled presses. ``loops``: I am at this spot and the loops differ. ``rows-left`` and
``half-way``: so many rows are left, or I am at the fold mark. ``rows-to-spare``, ``ends-at``: I counted ahead; at this
rate the number is reached with so many rows to spare, or the edge ends at so many stitches. ``past-half``,
``before-half``: a bit past it or before it. ``not-known``: she can't tell. ``edge-ends``: the edge ends here, or with
so many rows left over.
"""

Put = Literal["as-planned", "counted"] | WhyOff
"""What any count is put down to: it is what presses say, it was only counted, or one of the answers."""

RepairChoice = Literal["space-the-rest", "first-round", "rip-back", "as-it-is", "double-last", "strand", "next-section"]
"""What is done about it.

``space-the-rest``: spread what is left over what is left. ``first-round``: pick the rest at the natural ratio and put
the difference right evenly in the first round. ``rip-back``: take out to where the rest lies flat. ``as-it-is``: take
the count down and go on by the plan there is. Where the edge ends short: ``double-last``: a second one in one of the
last rows; ``strand``: a strand lifted here; ``next-section``: the next section takes what is missing.
"""

PuttingRight = Literal["here", "re-space", "first-round", "as-it-is"]
"""Where a difference is put right: here and now, in a step to come, in a first round, or not at all."""


@dataclass(frozen=True, slots=True)
class Marked:
    """The mark of one stage went on, or back."""

    step: StepId
    stage: int
    before: Reached
    after: Reached

    def inverse(self) -> "Marked":
        """Return the change that undoes this one."""
        return Marked(self.step, self.stage, self.after, self.before)


@dataclass(frozen=True, slots=True)
class Progressed:
    """More than the mark of one stage changed: its rhythm, its strays, a confirmed count, a value."""

    step: StepId
    stage: int
    before: Progress
    after: Progress

    def inverse(self) -> "Progressed":
        """Return the change that undoes this one."""
        return Progressed(self.step, self.stage, self.after, self.before)


@dataclass(frozen=True, slots=True)
class Stood:
    """A step stands another way: begun, done, left out, taken up again, or replanned."""

    step: StepId
    before: Standing
    after: Standing

    def inverse(self) -> "Stood":
        """Return the change that undoes this one."""
        return Stood(self.step, self.after, self.before)


Change = Marked | Progressed | Stood
"""One way in which a step stands differently."""


@dataclass(frozen=True, slots=True)
class Turned:
    """The hands turned from one step to another; None before the first and after the last."""

    before: StepId | None
    after: StepId | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """What all acts at the needles have in common; an act can be taken back.

    ``entries`` for the ledger; ``changes`` to steps; ``turned``: the step under way, where that changed; ``label``:
    what was done, None for a plain press; ``under``: the group that was the latest before this one, on the first event
    of a group only.
    """

    entries: tuple[Entry, ...] = ()
    changes: tuple[Change, ...] = ()
    turned: Turned | None = None
    label: Label | None = None
    under: int | None = None

    def inverse(self) -> Self:
        """Return the act whose changes and entries undo those of this one."""
        turned = Turned(self.turned.after, self.turned.before) if self.turned else None
        changes = tuple(change.inverse() for change in reversed(self.changes))
        return replace(self, entries=inverses(self.entries), changes=changes, turned=turned)


@dataclass(frozen=True, slots=True, kw_only=True)
class Begun(Act):
    """A step was begun: its stages are fixed from here on."""

    step: StepId


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked(Act):
    """The next thing was done, once or up to the end of a stage."""

    step: StepId


@dataclass(frozen=True, slots=True, kw_only=True)
class Strayed(Act):
    """The other thing was done; ``at``: the unit, ``loops``: what was made there."""

    step: StepId
    at: int
    loops: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Recounted(Act):
    """A count was taken. ``expected``: what was known; ``answer``: what the difference was put down to.

    ``what``: what was counted, in words: a section of an edge, or a place.
    """

    step: StepId
    place: str
    counted: int
    expected: int
    answer: Put
    what: str
    verdict: Verdict | None = None
    repair: RepairChoice | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RippedBack(Act):
    """Work was taken out, ``to`` a point of it; ``fell``: later steps that fell with it."""

    step: StepId
    to: Label
    fell: tuple[StepId, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Valued(Act):
    """A measure was typed."""

    step: StepId
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Mended(Act):
    """What was done about a difference: ``how`` (here, or not at all), on which place, and stitches more or fewer."""

    place: str
    how: PuttingRight
    difference: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Mirrored(Act):
    """The second side was to follow the first as it was really worked (``as_worked``), or as it was planned."""

    step: StepId
    as_worked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Finished(Act):
    """A step is done; ``although``: what was asked again before it was accepted."""

    step: StepId
    although: tuple[Label, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut(Act):
    """A step is left out."""

    step: StepId


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenUp(Act):
    """Another step was taken up."""

    step: StepId


@dataclass(frozen=True, slots=True, kw_only=True)
class DoneElsewhere(Act):
    """Steps were done away from the program; the ledger is taken as the recipe leaves it after them."""

    steps: tuple[StepId, ...]


@dataclass(frozen=True, slots=True)
class Edited:
    """One step of the plan was changed."""

    step: StepId
    before: AnyStep
    after: AnyStep


@dataclass(frozen=True, slots=True, kw_only=True)
class Replanned(Act):
    """The plan changed for steps not yet begun: ``why``, and what the knitter wrote about that (``note``).

    Single steps (a repair) are ``edits``; a corrected recipe or other numbers are a whole plan, before and after.
    """

    edits: tuple[Edited, ...] = ()
    plan_before: Plan | None = None
    plan_after: Plan | None = None
    why: Label | None = None
    note: str = ""

    def change(self, plan: Plan) -> Plan:
        """Return ``plan`` as this act leaves it."""
        plan = self.plan_after or plan
        for edit in self.edits:
            plan = plan.with_step(plan.index_of(edit.step), edit.after)
        return plan

    def inverse(self) -> "Replanned":
        """Return the act that undoes this one, the plan included."""
        edits = tuple(Edited(edit.step, edit.after, edit.before) for edit in reversed(self.edits))
        return replace(Act.inverse(self), edits=edits, plan_before=self.plan_after, plan_after=self.plan_before)


@dataclass(frozen=True, slots=True, kw_only=True)
class StepInserted(Act):
    """A step came into the plan, right ``behind`` another one (None: as the first), or went out of it again.

    ``before`` and ``after``: the step there was and is; None where there was none, or is none any more.
    """

    step: StepId
    behind: StepId | None
    before: AnyStep | None
    after: AnyStep | None

    def inverse(self) -> "StepInserted":
        """Return the act that undoes this one, the plan included."""
        return replace(Act.inverse(self), before=self.after, after=self.before)


AnyAct = (
    Begun
    | Worked
    | Strayed
    | Recounted
    | RippedBack
    | Valued
    | Mended
    | Mirrored
    | Finished
    | LeftOut
    | TakenUp
    | DoneElsewhere
    | Replanned
    | StepInserted
)
"""Any act that can be taken back."""


@dataclass(frozen=True, slots=True)
class Taken:
    """The recipe was taken for this garment: the first event of every journal."""

    plan: Plan
    ledger: Ledger
    steps: int


@dataclass(frozen=True, slots=True)
class SittingBegan:
    """The garment was picked up."""

    sitting: int


@dataclass(frozen=True, slots=True)
class PutDown:
    """The garment was put down; ``where``: what the knitter wrote about where she left it."""

    where: str = ""


@dataclass(frozen=True, slots=True)
class Noted:
    """A note was written, at the step it was written at."""

    text: str
    step: StepId | None


@dataclass(frozen=True, slots=True)
class PaceChosen:
    """A press stands for something else from here on."""

    pace: Pace


@dataclass(frozen=True, slots=True)
class TakenBack:
    """The latest standing group was taken back. ``acts`` are the inverses, in the order to apply them.

    ``top`` and ``top_label``: the group that is the latest standing one after it, and what it was.
    """

    group: int
    acts: tuple[AnyAct, ...]
    top: int
    top_label: Label | None


@dataclass(frozen=True, slots=True)
class PutBack:
    """A group that was taken back stands again; ``acts`` are its own."""

    group: int
    acts: tuple[AnyAct, ...]


Event = AnyAct | Taken | SittingBegan | PutDown | Noted | PaceChosen | TakenBack | PutBack
"""Anything that can happen to a garment."""
