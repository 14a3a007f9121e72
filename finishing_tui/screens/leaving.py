"""What every screen needs as it comes and when it is left: keys and timers are faster than screens are."""

from collections.abc import Callable
from typing import Any

from textual.await_complete import AwaitComplete
from textual.screen import Screen, ScreenResultType


class Leaving(Screen[ScreenResultType]):
    """A screen that is left once, and that is not drawn any more when it was.

    ``unasked``: what is asked there by itself, if anything: it takes no key that came before it could be seen.
    """

    unasked: object | None = None

    @property
    def is_there(self) -> bool:
        """Whether it lies among the open screens still, and the program is not being left."""
        return self.app.is_running and self in self.app.screen_stack

    def dismiss(self, result: ScreenResultType | None = None) -> AwaitComplete:
        """Leave, once: a key that is held down asks again before the screen is gone, and would take the next one too.

        A line that is written in gets its keys ahead of its box, so several enters may be under way.
        """
        return super().dismiss(result) if self in self.app.screen_stack else AwaitComplete()

    def call_after_refresh(self, callback: Callable[..., Any], *args: Any, **kwargs: Any) -> bool:
        """Call it once all is drawn, unless the screen was left meanwhile: then there is nothing to draw it on."""
        return super().call_after_refresh(lambda: callback(*args, **kwargs) if self.is_there else None)
