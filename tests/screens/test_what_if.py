"""What if, on the screen and line by line: few keys, nothing changes until it is taken, and then it can be undone."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.what_if import WhatIfScreen
from finishing_tui.widgets.answer_table import AnswerTable
from tests.plain.making import events, talked
from tests.screens.hands import JOIN, PICK_UP, RIB, app_for, front, needles, pressing, settled, shelf, shown, work_to
from tests.screens.scenes import SCENES, SIZES


async def test_another_target_is_four_keys(tmp_path: Path) -> None:
    """``w``, the number, enter: the plan is another; looked at and left, nothing has changed; undo has it back."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        before = needles(app).talk.state
        await pilot.press("w", "1", "1")
        assert isinstance(front(app), WhatIfScreen)
        assert "This affects later steps" in shown(app)
        later, plans = (shown(app).index(words) for words in ("This affects later steps", "Keep the plan"))
        assert later < plans
        assert "11 from 24 rows. From row 6: 1 of every 2, twice. Then 1 of every 3, five" in shown(app)
        assert ("if so" in shown(app), "now" in shown(app)) == (True, False)
        assert "^ not as planned" in shown(app)
        await pilot.press("escape")
        assert needles(app).talk.state is before
        await pilot.press("w", "1", "1", "enter")
        assert isinstance(front(app), AtTheNeedles)
        work = needles(app).talk.state.steps[PICK_UP].work
        assert work is not None
        assert work.stages[0].target == 11
        assert "Changed: 11 from 24 rows" in shown(app)
        await pilot.press("backspace", "backspace")
        assert needles(app).talk.state.steps == before.steps
        await settled(pilot)


async def test_every_field_and_no_dead_key(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Rows, a typed rhythm and the spread can be asked; what cannot be is said in place of the plan, and not taken."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    app = app_for(folder)
    rung: list[int] = []
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        monkeypatch.setattr(app, "bell", lambda: rung.append(1))
        await pilot.press("w", "enter")
        assert "Type a number first" in shown(app)
        await pilot.press("2")
        assert "You have 4 stitches" in shown(app)
        await pilot.press("enter")
        assert isinstance(front(app), WhatIfScreen)
        assert len(rung) == 2
        await pilot.press("backspace", "down", "2", "2")
        assert "17 from 22 rows" in shown(app)
        await pilot.press("down", "1", "/", "2")
        assert "1 of every 2" in shown(app)
        await pilot.press("space")
        assert "spread even" in shown(app)
        await pilot.press("/")
        assert len(rung) == 3
        await pilot.press("escape")
        await settled(pilot)


async def test_other_rounds_and_where_nothing_can_be_asked(tmp_path: Path) -> None:
    """At a band the number is its rounds; at a join the refusal says why nothing can be asked."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("w")
        assert isinstance(front(app), AtTheNeedles)
        assert "uses the stitches you have" in shown(app)
        await settled(pilot)


async def test_rounds_of_a_band(tmp_path: Path) -> None:
    """Another number of rounds is taken like another target."""
    folder = shelf(tmp_path)
    work_to(folder, RIB, Press())
    app = app_for(folder)
    async with app.run_test(size=(40, 20)) as pilot:
        await settled(pilot)
        await pilot.press("w", "9", "enter")
        work = needles(app).talk.state.steps[RIB].work
        assert work is not None
        assert work.stages[0].units == 9
        await settled(pilot)


def test_line_by_line_it_leads_to_the_same_events(tmp_path: Path) -> None:
    """Both plans are said, yes takes the new one, and the journal has what the keys would have made of it."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    said = talked(folder, "w 11", "1", "what if", "22 rows, even", "2", "w 2/3", "escape", "w two", "w 11 cm", "q", "")
    text = " ".join(said)
    assert "11 from 24 rows" in text
    assert "This affects later steps." in said
    assert "Changed: 17 from 22 rows" in text
    assert "Nothing changed." in said
    assert text.count("That isn't a number of stitches or rows, a rhythm or a spread.") == 2
    assert [kind for kind, _, _ in events(folder)].count("Replanned") == 1


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("name", ["what-if-other", "what-if-pucker", "what-if-rhythm"])
@pytest.mark.parametrize("size", ["100x30", "160x50"])
async def test_what_changes_later_is_told_on_every_larger_screen(name: str, size: str, tmp_path: Path) -> None:
    """All of it, and the large word is what the hands do next whichever plan it is."""
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES[size]) as pilot:
        await pressing(*scene.keys)(pilot)
        view = app.screen.query_one(AnswerTable).answers
        assert view is not None
        assert {row.verb for row in view.rows} == {"PICK"}
        assert "… and" not in shown(app)
        assert all(f"· Step {step}" in shown(app) for step in (4, 6))


async def test_more_rounds_are_work(tmp_path: Path) -> None:
    """Three rounds more are three rounds of work; that nothing later changes is a sentence like the others."""
    folder = shelf(tmp_path)
    work_to(folder, RIB, Press())
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("w", "9")
        assert "3 more rounds" in shown(app)
        assert "Nothing later changes" in shown(app)
        await pilot.press("backspace", "5")
        assert "1 fewer round" in shown(app)
