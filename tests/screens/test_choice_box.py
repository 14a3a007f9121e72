"""A question over another screen: it fits whatever the terminal, and a digit chooses its line at once."""

from pathlib import Path

import pytest
from textual.events import Key

from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.widgets.choices import Choice
from finishing_tui.widgets.key_line import KeyLine
from tests.screens.hands import settled, shown, still

LINES = tuple(
    f"step {number}, a step with a long title: neck needle {100 + number}, not 104" for number in range(3, 11)
)
WAYS = tuple(
    Choice(f"way {number} of going on, in as many words as a repair has at times, and some", (f"look {number}",))
    for number in range(1, 7)
)


def _app(at: Path) -> FinishingApp:
    (at / "shelf").mkdir()
    return FinishingApp(at / "shelf")


@pytest.mark.parametrize("size", [(40, 20), (60, 20), (80, 24), (100, 30)])
async def test_the_box_fits_and_the_answer_at_the_caret_is_seen(size: tuple[int, int], tmp_path: Path) -> None:
    """However many lines and answers: keys and box are whole, and the whole answer at the caret is on the screen."""
    app = _app(tmp_path)
    async with app.run_test(size=size) as pilot:
        app.push_screen(ChoiceBox("This affects later steps", WAYS, LINES))
        await settled(pilot)
        await settled(pilot)
        for number in range(1, len(WAYS) + 1):
            told = shown(app)
            assert f"▸ {number}  way {number}" in told
            assert f"look {number}" in told
            assert all(word in told for word in ("enter 1-6 choose", "escape leave", "╭", "╰"))
            assert "This affects later steps" in told
            hidden = len(LINES) - told.count("· step")
            assert (f"... and {hidden} line" in told) == bool(hidden)
            await pilot.press("down")
            await settled(pilot)


async def test_a_digit_chooses_at_once_where_lines_have_numbers(tmp_path: Path) -> None:
    """Whatever is told above them; lines without numbers are chosen with enter alone."""
    app = _app(tmp_path)
    taken: list[int | None] = []
    async with app.run_test() as pilot:
        app.push_screen(ChoiceBox("This affects later steps", WAYS, LINES), taken.append)
        await pilot.press("3")
        assert taken == [2]
        app.push_screen(ChoiceBox("Sure?", WAYS[:2], numbered=False), taken.append)
        await settled(pilot)
        assert "1  way" not in shown(app)
        await pilot.press("2", "enter")
        assert taken == [2, 0]


@pytest.mark.parametrize(("unasked", "taken"), [(True, []), (False, [2])])
async def test_what_comes_by_itself_takes_no_key_from_before_it_could_be_seen(
    unasked: bool,  # noqa: FBT001
    taken: list[int | None],
    tmp_path: Path,
) -> None:
    """Digits and enter that were under way do nothing there, and ring; once it is drawn a digit chooses."""
    app = _app(tmp_path)
    got: list[int | None] = []
    async with app.run_test() as pilot:
        await settled(pilot)
        app.push_screen(ChoiceBox("This came by itself", WAYS, LINES, unasked=unasked), got.append)
        for key in ("3", "enter") if unasked else ("3",):
            app.post_message(Key(key, key if key == "3" else "\r"))
        await settled(pilot)
        assert got == taken
        if unasked:
            await still(pilot)
            await pilot.press("3")
            assert got == [2]


async def test_keys_that_do_nothing_ring(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A letter, a number too high, and a caret at either end ring the bell and change nothing."""
    app = _app(tmp_path)
    rung: list[str] = []
    async with app.run_test() as pilot:
        app.push_screen(ChoiceBox("This affects later steps", WAYS, LINES))
        await settled(pilot)
        monkeypatch.setattr(app, "bell", lambda: rung.append("bell"))
        for many, key in enumerate(("x", "0", "9", "up"), 1):
            await pilot.press(key)
            assert len(rung) == many, key
        await pilot.press("down")
        assert len(rung) == 4


async def test_the_keys_behind_a_box_are_not_shown(tmp_path: Path) -> None:
    """While a box is open the keys of the screen behind are blank; after it they are back."""
    app = _app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        foot = app.screen.query_one(KeyLine).keys_shown[-1]
        last = f"{foot[0]} {foot[1]}"
        assert last in shown(app).split("\n")[-1]
        app.push_screen(ChoiceBox("Which?", WAYS[:2]))
        await settled(pilot)
        assert shown(app).split("\n")[-1] == ""
        await pilot.press("escape")
        await settled(pilot)
        assert last in shown(app).split("\n")[-1]
