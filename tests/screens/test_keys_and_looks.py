"""Keys, looks, and text from outside: what must hold on every screen."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from textual.binding import Binding
from textual.color import Color
from textual.theme import Theme

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.demos import DemoScreen
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.ledger import LedgerScreen
from finishing_tui.screens.one_line import OneLine
from finishing_tui.screens.shelf import ShelfScreen
from finishing_tui.screens.what_if import WhatIfScreen
from finishing_tui.talk.acts import BY_ID
from finishing_tui.widgets.looks import DARK, LIGHT, LIGHT_OF_FEW, WORDS
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows
from tests.screens.hands import PICK_UP, app_for, shelf, shown, work_to
from tests.steering import steering

SCREENS = (
    AtTheNeedles,
    ChoiceBox,
    ComingBackScreen,
    DemoScreen,
    HelpScreen,
    LedgerScreen,
    OneLine,
    LargeAsk,
    LargeAsk,
    ShelfScreen,
    WhatIfScreen,
)

SIGNS = {"question_mark", "full_stop", "slash"}
ARRIVING = {"space", "enter", "escape", "backspace", "left", "right", "up", "down", *SIGNS, "ctrl+p"}
"""Keys besides plain letters and digits that every terminal sends as they are."""


@pytest.mark.parametrize("screen", SCREENS)
def test_every_binding_is_alive(screen: type[AtTheNeedles]) -> None:
    """Each key of each screen leads to an action that is there, and one of its keys arrives from every terminal."""
    for binding in screen.BINDINGS:
        assert isinstance(binding, Binding)
        name = binding.action.split("(")[0]
        owner = FinishingApp if name.startswith("app.") else screen
        assert callable(getattr(owner, f"action_{name.removeprefix('app.')}")), binding
        same = [other.key for other in screen.BINDINGS if isinstance(other, Binding) and other.action == binding.action]
        assert any(key in ARRIVING or re.fullmatch("[a-z0-9]", key) for key in same), binding


def test_every_action_has_a_key_of_its_own_and_can_be_given_another() -> None:
    """At the needles no two actions share a key, and each binding has an id by which it can be changed."""
    bindings = [binding for binding in AtTheNeedles.BINDINGS if isinstance(binding, Binding)]
    assert len({binding.key for binding in bindings}) == len(bindings)
    assert len({binding.id for binding in bindings if binding.id}) == len(bindings)
    assert {f"needles.{action}" for action in BY_ID} <= {binding.id for binding in bindings}


@pytest.mark.parametrize("theme", [DARK, LIGHT, LIGHT_OF_FEW], ids=lambda theme: str(theme.name))
def test_all_text_has_contrast(theme: Theme) -> None:
    """Every colour of words has a contrast of at least 4.5 : 1 on both grounds (WCAG 2.2, success criterion 1.4.3)."""
    grounds = [Color.parse(str(theme.background)), Color.parse(str(theme.panel))]
    for name in WORDS:
        for ground in grounds:
            assert _contrast(Color.parse(theme.variables[name]), ground) >= 4.5, (name, ground)
    for ground in grounds:
        assert _contrast(Color.parse(str(theme.foreground)), ground) >= 7


def _contrast(one: Color, two: Color) -> float:
    """Return the contrast ratio of WCAG 2.2."""
    light, dark = sorted((_luminance(one), _luminance(two)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(color: Color) -> float:
    parts = [part / 255 for part in color.rgb]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


HOSTILE = "[@click=app.quit]x[/] [red]y [/ $error \\[b 漢字かな e\u0301 " + "w" * 90


async def test_text_from_outside_is_inert_on_every_screen(tmp_path: Path) -> None:
    """Markup, brackets, wide signs, combining marks and long words stand there as they are, and nothing breaks."""
    folder = shelf(tmp_path, title=HOSTILE.replace("\\", "\\\\"), needles=HOSTILE.replace("\\", "\\\\"))
    recipe = folder.parent / "every_face.toml"
    quoted = HOSTILE.replace("\\", "\\\\")
    text = re.sub(  # every text of the recipe
        r'(?m)^(\s*(?:title|text|say|how|look|mend|mind|along) = ").*"$', rf'\g<1>{quoted}"', recipe.read_text()
    )
    recipe.write_text(text.replace("\\[", "\\\\["))
    work_to(folder, PICK_UP, *[Press()] * 9)
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down(HOSTILE)
    app = app_for(folder)
    async with app.run_test() as pilot:
        for size in ((80, 24), (40, 20)):
            await pilot.resize_terminal(*size)
            for keys in (
                ("escape",),
                ("1",),
                ("escape",),
                ("?",),
                ("escape",),
                ("t",),
                ("escape",),
                ("l",),
                ("escape",),
                ("w", "1", "2"),
                ("escape",),
                ("n",),
                ("escape",),
                ("1", "1", "enter", "1", "1", "enter", "2"),
                ("escape",),
                ("right",),
                ("left",),
                ("q",),
                ("enter",),
                ("enter",),
            ):
                await pilot.press(*keys)
                for widget in app.screen.query(Rows):
                    assert app.screen.region.contains_region(widget.region) or widget.size.height == 0 or _paged(widget)
                assert app.is_running
        assert "[@click=app.quit]x[/] [red]y [/" in " ".join(shown(app).split())


def _paged(widget: Rows) -> bool:
    """Return whether it is on a page that scrolls."""
    return any(parent.id == "page" for parent in widget.ancestors)


@given(st.text(max_size=80), st.integers(1, 60))
def test_plain_text_is_inert_and_wraps_whole(text: str, width: int) -> None:
    """No style comes from a text, nothing that steers is left in it, and no line of it is too wide."""
    content = plain(text)
    assert not content.spans
    assert "\n" not in content.plain
    assert not steering(content.plain)
    for line in wrapped(content, max(width, 2)):
        assert line.cell_length <= max(width, 2)
