"""The technique screen: opened from any step, one technique at a time, readable on the smallest screen."""

import shutil
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

from finishing_tui import shipped
from finishing_tui.glance.techniques import all_techniques, techniques_for
from finishing_tui.recipe.techniques import HelpsAt, Technique
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.technique import Explained, TechniqueScreen
from tests.screens.hands import JOIN, PICK_UP, app_for, front, needles, settled, shelf, work_to


def page(screen: TechniqueScreen, width: int = 36) -> str:
    """Return what stands on the page, scrolled or not."""
    return "\n".join(line.plain for line in screen.query_one(Explained).rows(width, None))


async def at_the_needles(pilot: Pilot[Any]) -> None:
    """Wait until the garment is under the needles, with nothing asked any more."""
    await settled(pilot)
    if not isinstance(pilot.app.screen, AtTheNeedles):
        await pilot.press("escape")
    assert isinstance(pilot.app.screen, AtTheNeedles)


async def test_opened_with_a_key_at_any_step(tmp_path: Path) -> None:
    """At every step, under the needles or looked at, h opens what helps there; nothing of the garment changes."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await at_the_needles(pilot)
        state = needles(app).talk.state
        for _ in range(len(state.steps)):
            step = needles(app).talk.shown_step
            await pilot.press("h")
            screen = front(app)
            assert isinstance(screen, TechniqueScreen)
            assert techniques_for(state, step)[0].title in page(screen, 80)
            await pilot.press("escape", "right")
        assert needles(app).talk.state == state


async def test_left_and_right_turn_the_page_round_and_round(tmp_path: Path) -> None:
    """Those that help come first, then all others, and then the first again."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await at_the_needles(pilot)
        helping = techniques_for(needles(app).talk.state)
        await pilot.press("h")
        screen = front(app)
        assert isinstance(screen, TechniqueScreen)
        seen = []
        for _ in all_techniques():
            seen.append(page(screen, 80).split("\n", 1)[0])
            await pilot.press("right")
        assert seen[: len(helping)] == [one.title for one in helping]
        assert sorted(seen) == [one.title for one in all_techniques()]
        assert page(screen, 80).split("\n", 1)[0] == seen[0]
        await pilot.press("left")
        assert page(screen, 80).split("\n", 1)[0] == seen[-1]


@pytest.mark.parametrize("hand", ["right", "left"])
async def test_it_stands_on_the_smallest_screen(hand: str, tmp_path: Path) -> None:
    """At 40 by 20 every line of every technique fits, drawings stand as they are, and all can be scrolled to."""
    folder = shelf(tmp_path, hand=hand)
    app = app_for(folder)
    async with app.run_test(size=(40, 20)) as pilot:
        await settled(pilot)
        await pilot.press("h")
        screen = front(app)
        assert isinstance(screen, TechniqueScreen)
        explained, column = screen.query_one(Explained), screen.query_one("#page")
        width = explained.size.width
        for technique in all_techniques():
            explained.show(technique, "1 of 1", mirrored=hand == "left")
            lines = page(screen, width).split("\n")
            assert all(len(line) <= width for line in lines)
            assert all(line in lines for line in technique.lines)
            assert ("mirror image" in " ".join(lines)) == (hand == "left" and bool(technique.lines))
        await settled(pilot)
        while (before := column.scroll_y) < column.max_scroll_y:
            await pilot.press("pagedown")
            assert column.scroll_y > before
        assert before > 0
        await pilot.press("right")
        await settled(pilot)
        assert column.scroll_y == 0


async def test_text_is_inert(tmp_path: Path) -> None:
    """Whatever stands in a technique is shown as it stands."""
    technique = Technique(
        format=1,
        title="[bold]Bow[/]",
        about="[red]for a bag",
        order=1,
        moves=("[link=x]one[/link]",),
        look="$alarm",
        mend="{start end}",
        drawing="[@click=app.quit]o--o[/]",
        shows="two",
        helps=(HelpsAt(do="check"),),
    )
    app = app_for(shelf(tmp_path))
    async with app.run_test() as pilot:
        await settled(pilot)
        await app.push_screen(TechniqueScreen((technique,), ()))
        await settled(pilot)
        screen = front(app)
        assert isinstance(screen, TechniqueScreen)
        for text in ("[bold]Bow[/]", "[red]for a bag", "[link=x]one[/link]", "$alarm", "{start end}", "[@click=app."):
            assert text in page(screen, 80)


async def test_a_finished_garment_says_where_to_look(tmp_path: Path) -> None:
    """With every step done nothing helps, and a step that is looked at has its own help."""
    shutil.copytree(shipped.demo("ochre-jacket"), tmp_path / "ochre-jacket")
    app = app_for(tmp_path / "ochre-jacket")
    async with app.run_test() as pilot:
        await at_the_needles(pilot)
        await pilot.press("h")
        assert isinstance(front(app), AtTheNeedles)
        assert "look at one" in needles(app).talk.said
        await pilot.press("left", "h")
        assert isinstance(front(app), TechniqueScreen)
