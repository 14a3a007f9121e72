"""The steps that come next, on a line of their own where a screen is large enough for more than the step in hand."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.glance.values import StepLine
from finishing_tui.widgets.plain import packed
from finishing_tui.widgets.rows import Rows

HIGH = 48
"""From so many lines on there is room for it."""


class Ahead(Rows):
    """As many of the steps that are still to be done as fit whole on the line, which stands there always."""

    def __init__(self) -> None:
        super().__init__(id="ahead")
        self._steps: tuple[StepLine, ...] = ()

    def show(self, steps: tuple[StepLine, ...]) -> None:
        """Show which of all ``steps`` come after the one under the needles."""
        if steps != self._steps:
            self._steps = steps
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the line under an empty one; nothing on a screen that is not as high."""
        del height
        if self.app.size.height < HIGH:
            return ()
        here = next((step.number for step in self._steps if step.here), len(self._steps))
        coming = [step for step in self._steps if step.number > here and step.status in {"to-come", "under-way"}]
        texts = ["next:", *(f"{step.number} {step.title}" for step in coming)] if coming else [""]
        return [Content(), *packed(texts, width, "$quiet")[:1]]
