"""Whether what is on a screen can be read: the contrast of every sign, as the web's guidelines reckon it."""

from collections.abc import Iterator

from rich.color import Color, ColorSystem
from rich.segment import Segment
from rich.style import Style
from rich.terminal_theme import DEFAULT_TERMINAL_THEME, MONOKAI, TerminalTheme
from textual.app import App
from textual.color import Color as Shade
from textual.geometry import Region

from finishing_tui.screens.box import Box

LEAST = 4.5
"""The least contrast of text, WCAG 2.2, success criterion 1.4.3."""

LEAST_OF_FEW = 3.0
"""The same where a terminal has so few colours that the nearest must do."""

_DEPTHS = {"truecolor": ColorSystem.TRUECOLOR, "256": ColorSystem.EIGHT_BIT, "standard": ColorSystem.STANDARD}

GROUNDS: tuple[TerminalTheme, ...] = (MONOKAI, DEFAULT_TERMINAL_THEME)
"""A dark and a light terminal, for what is drawn in its own colours."""

LINES = frozenset("─│╭╮╰╯┌┐└┘-|+")
"""Signs that only frame something."""


def faint(app: App[None]) -> list[tuple[str, float]]:
    """Return what cannot be read well on the screen in front: each piece of text and its contrast, at its worst."""
    depth = _DEPTHS.get(app.console.color_system or "")
    if depth is None:  # a terminal that nothing is known of: signs are all that goes there
        return []
    least = LEAST if depth is ColorSystem.TRUECOLOR else LEAST_OF_FEW
    found = []
    for segment in _in_front(app):
        if segment.text.strip() and not LINES.issuperset(segment.text.replace(" ", "")):
            ratio = min(_contrast(segment, depth, ground) for ground in GROUNDS)
            if ratio < least:
                found.append((segment.text, ratio))
    return found


def letters(app: App[None]) -> int:
    """Return how many signs there are to read on the screen in front."""
    return sum(not sign.isspace() for segment in _in_front(app) for sign in segment.text)


def _in_front(app: App[None]) -> Iterator[Segment]:
    """Yield what is of the screen in front; what lies behind a box is dimmed on purpose."""
    region: Region = app.screen.query_one(".box").region if isinstance(app.screen, Box) else app.screen.region
    for y, strip in enumerate(app.screen._compositor.render_strips()):  # noqa: SLF001
        x = 0
        for segment in strip:
            if region.contains(x, y):
                yield segment
            x += segment.cell_length


def _contrast(segment: Segment, depth: ColorSystem, ground: TerminalTheme) -> float:
    style = segment.style or Style.null()
    one, other = sorted(
        _luminance((color or Color.default()).downgrade(depth).get_truecolor(ground, foreground=front))
        for color, front in ((style.color, True), (style.bgcolor, False))
    )
    return (other + 0.05) / (one + 0.05)


def _luminance(color: tuple[int, int, int]) -> float:
    """Return the relative luminance of WCAG 2.2."""
    parts = [part / 255 for part in Shade(*color).rgb]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
