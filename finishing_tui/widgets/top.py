"""The head of the screen: which garment, where in the recipe, what is done, and how the work lies."""

from collections.abc import Sequence
from functools import lru_cache

from textual.content import Content

from finishing_tui.glance.cautions import CARE
from finishing_tui.glance.values import Glance
from finishing_tui.widgets.plain import between, fits_between, plain, wrapped
from finishing_tui.widgets.rows import Rows
from finishing_tui.widgets.step_words import is_cut, is_pictured

_MARKS = {
    "done": ("■", "$quiet"),
    "here": ("▸", "$count"),
    "under-way": ("◆", "$count"),
    "to-come": ("□", "$quiet"),
    "left-out": ("×", "$quiet"),
}

NARROW = 60
"""Below so many columns the garment's name gives way to the step."""


LINES = {"low": 3, "": 4}
"""How many lines the head takes, on the lowest screen and on all others."""


class Top(Rows):
    """Garment and step; what is not saved is marked here, in shape and words."""

    def __init__(self) -> None:
        super().__init__(id="top")
        self._seen: Glance | None = None
        self._unsaved = 0
        self._look = False
        self._care, self._roomy = "", True

    def show(self, seen: Glance, unsaved: int, *, look: bool, care: str = "", roomy: bool = True) -> None:
        """Show a glance; ``unsaved`` commands are not on the disk, and ``look`` says that nothing may be done.

        ``care``: the key that shows what is to be taken care of, where the lowest screen has no room for all its words;
        ``roomy``: it has room for some.
        """
        self._seen, self._unsaved, self._look, self._care, self._roomy = seen, unsaved, look, care, roomy
        self.redraw()

    def mark(self, unsaved: int) -> None:
        """Mark how many commands are not on the disk."""
        if unsaved != self._unsaved:
            self._unsaved = unsaved
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the lines of the head: always as many on a screen of one size, so that nothing below it moves."""
        del height
        seen = self._seen
        if seen is None:
            return ()
        heading, part = (
            plain(seen.heading, "bold"),
            plain("" if seen.part == seen.heading else seen.part, "$foreground"),
        )
        if seen.looking:
            part = plain("just looking; your place is kept", "bold $mark")
        posture = "" if is_pictured(seen.lying, width, self.tallness) else seen.posture
        lie = " · ".join(text for text in (posture, seen.needles) if text)
        if width < NARROW:
            lines, is_timed = self._narrow(seen, heading, part, width)
            lie = lie if is_timed else " · ".join(text for text in (seen.time_left, lie) if text)
        else:
            lines = [self._first(seen, width)]
            lines += [between(heading, part, width)] if fits_between(heading, part, width) else [heading, part]
        high = LINES["low" if self.tallness == "low" else ""]
        lines = [line.truncate(width, ellipsis=True) for line in lines[:high]]
        cut = self.tallness == "low" and is_cut(seen.lines, width, roomy=self._roomy)
        care = plain(f"{CARE}: press {self._care}", "bold $alarm") if cut else Content()
        room = width - care.cell_length - 2 if cut and len(lines) == high - 1 else width
        lines += _in_parts(lie, room, high - len(lines)) if lie and len(lines) < high else []
        lines += [Content()] * (high - len(lines))
        if cut:
            lines[-1] = between(lines[-1], care, width)
        return lines

    def _narrow(self, seen: Glance, heading: Content, part: Content, width: int) -> tuple[list[Content], bool]:
        """Return the head without the garment's name: the step, the time, its part, and what is not saved.

        Say also whether the time left is in it.
        """
        step = plain(f"{seen.step}/{seen.steps}" if seen.step else "all done", "$quiet")
        timed = step + _minutes(seen)
        step = timed if fits_between(heading, timed, width) else step
        first, *rest = wrapped(heading, width - step.cell_length - 2, 2)
        lines = [between(first, step, width), *rest]
        state, left = self._state(), plain(seen.time_left, "$quiet")
        is_timed = not state and fits_between(part, left, width)
        state = left if is_timed else state
        if part and not fits_between(part, state, width):
            lines += wrapped(part, width, 2)
            part = Content()
        return [*lines, between(part, state, width)] if part or state else lines, is_timed

    def _first(self, seen: Glance, width: int) -> Content:
        left = plain(seen.title, "$quiet") + plain(f" · size {seen.size}", "$quiet")
        step = f"step {seen.step} of {seen.steps}" if seen.step else f"all {seen.steps} steps"
        right = plain(step, "$foreground")
        track = _track(
            tuple([("here" if line.here else line.status) for line in seen.list]), seen.step, looking=seen.looking
        )
        minutes = _minutes(seen)
        time_left = plain(f" · {seen.time_left}", "$quiet") if seen.time_left else Content()
        state = self._state()
        right = state + right if not state else state + Content("   ") + right
        whole = right + minutes + time_left
        # How long it still takes is worth more than a sign a step.
        for more in (track + Content("  ") + whole, whole, right + minutes):
            if fits_between(left, more, width):
                return between(left, more, width)
        return between(left, right, width)

    def _state(self) -> Content:
        if self._look:
            return plain("looking only", "bold $mark")
        return plain(f"◇ {self._unsaved} not saved", "bold $alarm") if self._unsaved else Content()


@lru_cache(maxsize=16)
def _track(steps: tuple[str, ...], shown: int, *, looking: bool) -> Content:
    """Return a sign a step; the one shown stands out where it is only looked at, whatever its state."""
    track = Content()
    for number, status in enumerate(steps, 1):
        sign, style = _MARKS[status]
        track += plain(sign, f"bold {style} reverse" if looking and number == shown else style)
    return track


def _in_parts(text: str, width: int, most: int) -> list[Content]:
    """Return as many of the parts of a text as have room in ``most`` lines, none of them cut in its middle."""
    parts = text.split(" · ")
    for many in range(len(parts), 0, -1):
        lines = wrapped(plain(" · ".join(parts[:many]), "$quiet"), width)
        if len(lines) <= most:
            return lines
    return []


def _minutes(seen: Glance) -> Content:
    """Return how long the sitting lasts, ready to stand behind the step; nothing in its first minute."""
    return plain(f" · {seen.minutes} min", "$quiet") if seen.minutes else Content()
