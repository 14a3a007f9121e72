"""A garment worked on paper: like one in hand, but its journal is a list, and every event goes through the store.

``evolve`` gets what was written and read back, so whatever a test reaches has been through encoding and decoding.
"""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Literal, cast

from finishing_tui.garment.commands import Command, Finish, LeaveOut, Press, PutBackAgain, Refusal, TakeBack, TakeOut
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.steps import begin, next_step
from finishing_tui.garment.events import Act, AnyAct, Begun, Event, Taken
from finishing_tui.garment.evolve import evolve, first_state
from finishing_tui.garment.journal import Row
from finishing_tui.garment.journal.rows import written
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import from_row, to_store
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_text

NOON = "2024-05-01T12:00:00.000Z"
"""When everything on paper happens."""


@cache
def recipe_of(text: str) -> Recipe:
    """Return the recipe in ``text``, read once."""
    return read_text(text, "a recipe of the tests")


def plan_for(
    text: str, size: str = "", *, hand: Literal["right", "left"] = "right", own: Mapping[str, int] | None = None
) -> Plan:
    """Return the plan of a garment after the recipe ``text``, in its first size where none is named."""
    recipe = recipe_of(text)
    return Plan(
        name="a garment of the tests",
        title="grey pullover",
        recipe=recipe,
        source="recipe.toml",
        text=text,
        size=size or recipe.sizes[0],
        hand=hand,
        own=MappingProxyType(dict(own or {})),
    )


class Paper:
    """A garment worked on paper: its ``state`` and its ``rows``."""

    def __init__(self, plan: Plan) -> None:
        self.rows: list[Row] = []
        taken = Taken(plan, plan.opening(), len(plan.recipe.step))
        self.state: State = first_state(taken)
        first = next_step(self.state, -1)
        opening = begin(self.state, first) if first is not None else None
        self._store((taken, opening) if isinstance(opening, Begun) else (taken,))

    def do(self, command: Command) -> Refusal | None:
        """Carry ``command`` out, or say why not."""
        events = decide(self.state, command)
        if isinstance(events, Refusal):
            return events
        if events:
            self._store(events)
        return None

    def did(self, *commands: Command) -> "Paper":
        """Carry out ``commands``, none of which may be refused."""
        for command in commands:
            refusal = self.do(command)
            assert refusal is None, (command, refusal)
        return self

    def surely(self, command: Finish | LeaveOut | TakeOut) -> None:
        """Carry ``command`` out, asking again where that is enough."""
        refusal = self.do(command)
        if refusal is not None:
            assert refusal.again is not None, refusal
            self.did(refusal.again)

    def press(self, times: int = 1) -> "Paper":
        """Press so often; none may be refused."""
        return self.did(*[Press()] * times)

    def take_back(self) -> Refusal | None:
        """Take the latest standing group back."""
        if not self.state.top:
            return Refusal("nothing is left to take back")
        acts = self.acts(self.state.top)
        under = acts[0].under or 0
        return self.do(TakeBack(self.state.top, acts, under, self.acts(under)[0].label if under else None))

    def put_back(self) -> Refusal | None:
        """Let the group that was taken back last stand again."""
        if not self.state.undone:
            return Refusal("nothing was taken back that could be put back")
        group = self.state.undone[-1]
        return self.do(PutBackAgain(group, self.acts(group)))

    def acts(self, group: int) -> tuple[AnyAct, ...]:
        """Return what happened in a group."""
        events = (from_row(one).event for one in self.rows if one.group == group)
        return tuple(event for event in events if isinstance(event, Act))

    @property
    def latest(self) -> tuple[Event, ...]:
        """The events of the latest command that changed anything."""
        return tuple(from_row(one).event for one in self.rows if one.group == self.rows[-1].group)

    def replayed(self, *, after: int = 0, state: State | None = None) -> State:
        """Return the state that the rows after number ``after`` lead to, from ``state`` or from the first row."""
        if state is None:
            state = first_state(cast("Taken", from_row(self.rows[0]).event))
            after = max(after, 1)
        for one in self.rows[after:]:
            state = evolve(state, from_row(one))
        return state

    def _store(self, events: tuple[Event, ...]) -> None:
        group = len(self.rows) + 1
        for entry in to_store(events):
            number, sitting = len(self.rows) + 1, len(self.state.sittings)
            text = written(entry.body)
            self.rows.append(Row(number, group, NOON, sitting, 1000 * number, entry.kind, entry.version, text, ""))
            if number > 1:
                self.state = evolve(self.state, from_row(self.rows[-1]))
