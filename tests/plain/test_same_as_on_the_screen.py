"""A garment worked by lines and the same garment worked by keys on the screen: one journal."""

from pathlib import Path

from finishing_tui.garment.hand import InHand
from finishing_tui.screens.app import FinishingApp
from tests.plain.making import events, typed
from tests.screens.hands import app_for, settled, sewn


def next_keys(app: FinishingApp) -> tuple[tuple[str, ...], str]:
    """Return the keys that go on with the garment in hand, and the line that says the same."""
    assert app.in_hand is not None
    standing = app.in_hand.state.standing
    work = standing.work if standing else None
    if work is None or work.complete:
        return ("enter",), "enter"
    stage = work.stages[work.at]
    if stage.unit == "value":
        return ("2", "8", "enter"), "28"
    return ("space",), "d"


async def test_keys_and_lines_leave_the_same_events(tmp_path: Path) -> None:
    """A graft and a seam from the first press to the last, with a note, a stray and a tink: event for event the same.

    Only when they happened differs.
    """
    by_keys, by_lines = sewn(tmp_path / "keys"), sewn(tmp_path / "lines")
    app, lines = app_for(by_keys), list[str]()
    async with app.run_test() as pilot:
        await pilot.press("n", *"by the window", "enter", "space", "space", "backspace", "u")
        lines += ["note by the window", "d", "d", "b", "u"]
        while app.in_hand is not None and app.in_hand.state.current is not None:
            keys, line = next_keys(app)
            await pilot.press(*keys)
            lines.append(line)
            await settled(pilot)
        await pilot.press("q", *"bag", "enter")
        lines += ["q", "bag"]
        await pilot.pause()
    typed(by_lines, *lines)
    found = events(by_keys)
    assert found == events(by_lines)
    assert len(found) > 25
    hand = InHand.open(by_lines, look=True)
    hand.close()
    assert hand.state.current is None
