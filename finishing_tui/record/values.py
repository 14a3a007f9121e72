"""What a record holds, as plain frozen values. Steps are counted from 1 here, as people count them."""

from dataclasses import dataclass

from finishing_tui.garment.events import Recounted
from finishing_tui.garment.state import State


@dataclass(frozen=True, slots=True)
class CountTaken:
    """A count that stands, and the ``act`` that took it."""

    step: int | None
    at: str
    act: Recounted


@dataclass(frozen=True, slots=True)
class Happened:
    """Something worth telling, at a step (None: at no step in particular), in words."""

    step: int | None
    at: str
    text: str


@dataclass(frozen=True, slots=True)
class RippedOut(Happened):
    """Work was taken out; ``fell``: later steps that fell with it."""

    fell: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Sat:
    """A sitting: when it began and ended (empty if it was cut off or goes on), and how many acts it had.

    ``lasted_ms``: from the one to the other in milliseconds, by a clock that never jumps; None if it has no end.
    """

    number: int
    began: str
    ended: str
    where: str
    acts: int
    lasted_ms: int | None = None


@dataclass(frozen=True, slots=True)
class Record:
    """Where a garment stands (``state``) and what was done, each in the order in which it happened.

    ``deviations``: the other thing was done, a step was left out, or finished although a count said otherwise;
    ``changes``: of the plan. ``events``: how many events all of it rests on, 0 when nothing is begun.
    """

    state: State
    counts: tuple[CountTaken, ...] = ()
    deviations: tuple[Happened, ...] = ()
    ripped: tuple[RippedOut, ...] = ()
    changes: tuple[Happened, ...] = ()
    sittings: tuple[Sat, ...] = ()
    events: int = 0
