"""Whether what is on a screen can be read: the contrast of every sign, as the web's guidelines reckon it."""

from rich.color import Color
from rich.segment import Segment
from rich.style import Style
from textual.app import App
from textual.color import Color as Shade
from textual.geometry import Region

from finishing_tui.screens.box import Box

LEAST = 4.5
"""The least contrast of text, WCAG 2.2, success criterion 1.4.3."""

LINES = frozenset("─│╭╮╰╯┌┐└┘-|+")
"""Signs that only frame something."""


def faint(app: App[None]) -> list[tuple[str, float]]:
    """Return what cannot be read well on the screen in front: each piece of text and its contrast."""
    found = []
    for y, strip in enumerate(app.screen._compositor.render_strips()):  # noqa: SLF001
        x = 0
        for segment in strip:
            if _in_front(app, x, y) and not LINES.issuperset(segment.text.replace(" ", "")):
                ratio = _contrast(segment)
                if ratio < LEAST:
                    found.append((segment.text, ratio))
            x += segment.cell_length
    return found


def _in_front(app: App[None], x: int, y: int) -> bool:
    """Return whether this is of the screen in front; what lies behind a box is dimmed on purpose."""
    region: Region = app.screen.query_one(".box").region if isinstance(app.screen, Box) else app.screen.region
    return region.contains(x, y)


def _contrast(segment: Segment) -> float:
    style = segment.style or Style.null()
    one, other = sorted((_luminance(style.color), _luminance(style.bgcolor)))
    return (other + 0.05) / (one + 0.05)


def _luminance(color: Color | None) -> float:
    """Return the relative luminance of WCAG 2.2 of a colour, which must be a true one."""
    assert color is not None
    assert color.triplet is not None, color
    parts = [part / 255 for part in Shade(*color.triplet).rgb]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
