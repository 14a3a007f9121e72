"""What there is to see of the garment that is talked about: at the needles, and at the step that is looked at."""

from datetime import UTC

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.state import State
from finishing_tui.glance.glancing import look_at
from finishing_tui.glance.values import Glance
from finishing_tui.glance.wishes import Wishes
from finishing_tui.plain import telling
from finishing_tui.talk.conversation import Talk


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
