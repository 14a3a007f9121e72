"""From events to a record: which of them stand, and what each was."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.decide.steps import next_step
from finishing_tui.garment.events import (
    Act,
    Finished,
    LeftOut,
    PutBack,
    PutDown,
    Recounted,
    Replanned,
    RippedBack,
    SittingBegan,
    Strayed,
    Taken,
    TakenBack,
)
from finishing_tui.garment.evolve import Happening, begun_with, evolve, first_state
from finishing_tui.garment.meaning import understood
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.glance.label_words import label_words, labels_words, reason_words
from finishing_tui.record.values import CountTaken, Happened, Record, RippedOut, Sat


class NothingRecorded(FinishingError):
    """There are no events to make a record of."""


@dataclass(slots=True)
class _Seen:
    """What the events said until now: the acts by group, the groups taken back, and of each sitting its acts and times.

    The times are milliseconds by a clock that never jumps: when it began, and when it ended if it did.
    """

    acts: dict[int, list[tuple[str, Act]]] = field(default_factory=dict)
    gone: set[int] = field(default_factory=set)
    sittings: list[set[int]] = field(default_factory=list)
    began: list[int] = field(default_factory=list)
    ended: dict[int, int] = field(default_factory=dict)

    def take(self, happening: Happening) -> None:
        match happening.event:
            case SittingBegan():
                self.sittings.append(set())
                self.began.append(happening.after_ms)
            case PutDown():
                self.ended[len(self.sittings) - 1] = happening.after_ms
            case TakenBack(group):
                self.gone.add(group)
            case PutBack(group):
                self.gone.discard(group)
            case Act() as act:
                self.acts.setdefault(happening.group, []).append((happening.at, act))
                if self.sittings:
                    self.sittings[-1].add(happening.group)
            case _:
                pass

    def lasted(self, sitting: int) -> int | None:
        """Return how many milliseconds a sitting, counted from 0, lasted; None if it was never put down."""
        return self.ended[sitting] - self.began[sitting] if sitting in self.ended else None

    def standing(self) -> Iterator[tuple[str, Act]]:
        """Yield (when, act) for every act that stands, in order."""
        for group, acts in self.acts.items():
            if group not in self.gone:
                yield from acts


def not_begun(plan: Plan) -> Record:
    """Return the record of a garment that was never picked up: its plan, and what it holds off the needles."""
    state = first_state(Taken(plan, plan.opening(), len(plan.recipe.step)))
    return Record(State(plan, state.ledger, state.steps, current=next_step(state, -1)))


def record_of(happenings: Iterable[Happening]) -> Record:
    """Return the record that ``happenings``, all of a journal, make.

    Raises ``NothingRecorded`` when there are none, and whatever reading them raises.
    """
    seen, state, events = _Seen(), None, 0
    for happening in happenings:
        events += 1
        state = begun_with(happening) if state is None else evolve(state, happening)
        seen.take(happening)
    if state is None:
        raise NothingRecorded("nothing of this garment is recorded yet")
    understood(state)
    standing = tuple(seen.standing())
    return Record(
        state=state,
        counts=tuple(
            CountTaken(state.plan.number_of(act.step), at, act) for at, act in standing if isinstance(act, Recounted)
        ),
        deviations=tuple(_deviations(state.plan, standing)),
        ripped=tuple(_ripped(state.plan, at, act) for at, act in standing if isinstance(act, RippedBack)),
        changes=tuple(
            Happened(None, at, reason_words(state.plan, act)) for at, act in standing if isinstance(act, Replanned)
        ),
        sittings=tuple(
            Sat(sitting.number, sitting.began, sitting.ended, sitting.where, len(groups), seen.lasted(index))
            for index, (sitting, groups) in enumerate(zip(state.sittings, seen.sittings, strict=True))
        ),
        events=events,
    )


def _deviations(plan: Plan, standing: Iterable[tuple[str, Act]]) -> Iterator[Happened]:
    for at, act in standing:
        match act:
            case Strayed():
                yield Happened(plan.number_of(act.step), at, label_words(plan, act.label))
            case LeftOut():
                yield Happened(plan.number_of(act.step), at, "left out")
            case Finished() if act.although:
                yield Happened(plan.number_of(act.step), at, f"finished although {labels_words(plan, act.although)}")
            case _:
                pass


def _ripped(plan: Plan, at: str, act: RippedBack) -> RippedOut:
    fell = (plan.number_of(step) for step in act.fell)
    return RippedOut(
        plan.number_of(act.step), at, label_words(plan, act.to), tuple(number for number in fell if number is not None)
    )
