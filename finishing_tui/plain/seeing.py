"""What there is to see of the garment that is talked about, here or at another step, and what a change led to."""

from collections.abc import Mapping
from datetime import UTC
from types import MappingProxyType

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.state import State
from finishing_tui.glance.glancing import look_at
from finishing_tui.glance.rings import Ring
from finishing_tui.glance.values import Glance
from finishing_tui.glance.wishes import Wishes
from finishing_tui.plain import telling
from finishing_tui.talk.conversation import Talk

_RINGS: Mapping[Ring, str] = MappingProxyType(
    {"run": "end of a repeat.", "recount": "halfway.", "target": "this part is complete."}
)


class Seeing:
    """Looks at the garment of ``talk``; ``wishes``: what it is told in."""

    def __init__(self, talk: Talk, clock: Clock, wishes: Wishes) -> None:
        self._talk = talk
        self._clock = clock
        self._wishes = wishes

    def under_way(self, state: State | None = None) -> Glance:
        """Return all there is to see of the step under the needles, now or in another ``state``."""
        state = state or self._talk.state
        return self._look_at(state, state.current)

    def shown(self) -> Glance:
        """Return all there is to see of the step that is looked at."""
        return self._look_at(self._talk.state, self._talk.shown_step)

    def turned_to(self) -> list[str]:
        """Return what is said when another step is looked at, or that under the needles again."""
        seen = self.shown()
        if self._talk.looking is None:
            return telling.heading(seen)
        return [*telling.beginning(seen), f"it stands: {telling.upcoming(seen.face)}", *telling.standing(seen.face)]

    def _look_at(self, state: State, step: int | None) -> Glance:
        now = self._clock.now().astimezone(UTC)
        return look_at(state, step, now, self._wishes, lasted=self._talk.hand.lasted)


def changes(was: Glance, seen: Glance, rang: Ring | None) -> list[str]:
    """Return what is to be said after ``was`` has become ``seen``, where the bell would ring for ``rang``."""
    lines = [_RINGS[rang]] if rang else []
    here = {was.step, seen.step}
    for before, line in zip(was.list, seen.list, strict=True):
        if before.status != line.status and line.number not in here:
            lines += telling.steps((line,))
    if seen.step != was.step:
        return [*lines, *telling.beginning(seen), *telling.standing(seen.face)]
    if seen.part != was.part:
        lines += telling.part(seen)
    return [*lines, *telling.standing(seen.face)]
