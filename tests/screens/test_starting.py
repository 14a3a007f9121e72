"""Starting a garment, driven by keys: every way forward and back, every refusal, and what is on the shelf then."""

from pathlib import Path
from threading import Event

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input

from finishing_tui import shipped
from finishing_tui.garment.file import plan_of
from finishing_tui.garment.shelf import folders_on
from finishing_tui.garment.starting import LONGEST_TITLE, one_line
from finishing_tui.glance.audited import Audited, audited
from finishing_tui.glance.starting import questions
from finishing_tui.recipe.audit import Inputs
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.numbers import NumbersScreen
from finishing_tui.screens.shelf import ShelfScreen
from finishing_tui.screens.starting.audit import AuditScreen
from finishing_tui.screens.starting.questions import StartScreen
from finishing_tui.screens.starting.reading import ReadingScreen
from finishing_tui.screens.starting.recipes import RecipesScreen
from finishing_tui.screens.starting.which_size import WhichSizeScreen
from finishing_tui.widgets.choices import Choices
from finishing_tui.widgets.entry import EntryBox
from finishing_tui.widgets.fits import Fits
from tests.screens.hands import WAIT, front, pressing, settled, shown
from tests.screens.opened import Opened, draft, shipped_recipe

HOSTILE = "[@click=app.quit]x[/] [red]y [/ $error \\[b 漢字かな e\u0301 " + "w" * 90


def _words(app: FinishingApp) -> str:
    """Return the words on the screen in order, wherever a box breaks its lines (a path may be of any length)."""
    return " ".join(shown(app).replace("│", " ").split())


def _start(app: FinishingApp) -> StartScreen:
    assert isinstance(app.screen, StartScreen), app.screen
    return app.screen


def _audit(app: FinishingApp) -> AuditScreen:
    assert isinstance(app.screen, AuditScreen), app.screen
    return app.screen


async def _press(pilot: Pilot[None], *keys: str) -> None:
    await pressing(*keys)(pilot)


async def test_a_garment_is_started_from_an_empty_shelf(tmp_path: Path) -> None:
    """Recipe, size, number, gauges, hand, name, yarn, needles, audit: then it is at the needles, as it was said."""
    app = FinishingApp(tmp_path / "shelf")
    async with app.run_test() as pilot:
        await _press(pilot, "s", WAIT)
        await _press(pilot, *_down_to("crew-neck"), "r")
        assert isinstance(front(app), ReadingScreen)
        assert "pieces and places" in shown(app)
        await _press(pilot, "pagedown", "escape", "enter", "6")  # size M
        assert "Is it for a child?" in _words(app)
        await _press(pilot, *_keys("dog"), "enter")
        assert "Say an age" in _words(app)
        await _press(pilot, *["backspace"] * 3, *_keys("no"), "enter")
        assert "Rows along one side" in _words(app)
        await _press(pilot, "3", "4", "enter")
        await _press(pilot, *_keys("21 x 29 over 4 in"), "enter", "enter", "2")
        await _press(pilot, *_keys("slate"), "enter", "enter", *_keys("4 mm"), "enter", WAIT)
        assert "All counts agree" in shown(app)
        await _press(pilot, "enter", WAIT)
        assert isinstance(front(app), AtTheNeedles)
        (folder,) = folders_on(tmp_path / "shelf")
        plan = plan_of(folder)
        assert (plan.title, plan.size, plan.hand, plan.needles) == ("slate", "M", "left", "4 mm")
        assert dict(plan.own) == {"front_rows": 34}
        assert plan.gauge is not None
        assert (plan.gauge.stitches, plan.gauge.rows, plan.gauge.over) == (21, 29, "4 in")
        await _press(pilot, "space", "q", "enter")
        assert isinstance(front(app), ShelfScreen)
        assert "slate · size M" in _words(app)


def _down_to(name: str) -> list[str]:
    return ["down"] * list(shipped.recipe_titles()).index(name)


async def _paste(pilot: Pilot[None], text: str) -> None:
    pilot.app.screen.query_one(Input).post_message(events.Paste(text))
    await settled(pilot)


def _keys(text: str) -> list[str]:
    return ["space" if sign == " " else sign for sign in text]


async def test_one_may_go_back_to_the_first_question_and_lose_nothing(tmp_path: Path) -> None:
    """Answers stand when one comes by again, a half-typed line too; from the first one, leaving is asked about."""
    app = Opened(tmp_path, "", lambda _: RecipesScreen(tmp_path))
    async with app.run_test() as pilot:
        await settled(pilot)
        await _press(pilot, *_down_to("crew-neck"), "enter", "6", "enter", "3", "6", "enter", "enter", "9", "9")
        screen = _start(app)
        assert screen.asked.key == "band"
        await _press(pilot, "escape", "escape", "escape", "escape")
        assert (screen.asked.key, screen.draft.size) == ("size", "M")
        await _press(pilot, "7", "enter", "enter", "enter")
        assert screen.draft.size == "L"
        assert dict(screen.draft.own) == {"front_rows": 36}
        assert screen.query_one(EntryBox).value == "99"
        await _press(pilot, *["escape"] * 5)
        assert isinstance(front(app), RecipesScreen)
        await _press(pilot, "escape")
        assert isinstance(front(app), ChoiceBox)
        await _press(pilot, "1", "enter")
        assert _start(app).draft.own == {"front_rows": 36}
        await _press(pilot, "escape", "escape", "2")
        assert isinstance(front(app), ShelfScreen)
    assert folders_on(tmp_path) == ()


@pytest.mark.turns(of=4)
@pytest.mark.parametrize(
    ("at", "typed", "told"),
    [
        ("number: front_rows", "8", "use 12 to 80"),
        ("number: front_rows", "-3", "not a whole number"),
        ("number: front_rows", "9999999999999999999", "not a whole number"),
        ("number: front_rows", "3 4", "not a whole number"),
        ("gauge", "20 x 28", "not a gauge"),
        ("gauge", "20 over 10 cm", "ount the rows too"),
        ("band", "x", "not a gauge"),
    ],
)
async def test_what_cannot_be_is_refused_where_it_is_typed(at: str, typed: str, told: str, tmp_path: Path) -> None:
    """The sentence says what would be right, what was typed stands, and one more line is all it takes."""
    start = draft()
    app = Opened(tmp_path, "", lambda shelf: StartScreen(start, shelf))
    async with app.run_test() as pilot:
        await settled(pilot)
        screen = _start(app)
        screen.at = questions(start).index(at) - 1
        screen._on()  # noqa: SLF001  (as if all before it were answered)
        await _press(pilot, *_keys(typed), "enter")
        assert told in _words(app)
        assert screen.query_one(EntryBox).value == typed
        assert (screen.asked.key, screen.draft) == (at, start)


async def test_a_size_is_found_by_what_is_held(tmp_path: Path) -> None:
    """21 on a shoulder is nearest to M and L; 80 on the back tells them apart; the caret goes there, enter takes it."""
    app = Opened(tmp_path, "", lambda shelf: StartScreen(draft(size="2 years"), shelf))
    async with app.run_test() as pilot:
        sizes = len(shipped_recipe("crew-neck").sizes)
        await _press(pilot, *["down"] * sizes, "enter")
        assert isinstance(front(app), WhichSizeScreen)
        await _press(pilot, "enter")
        assert "first" in _words(app)
        await _press(pilot, "2", "1")
        assert "M or L" in _words(app)
        await _press(pilot, "up", "enter")  # nothing is above the first; enter goes on to the next place
        assert "enter size M" in _words(app)
        await _press(pilot, "2", "2", "enter", "enter")
        assert _start(app).draft.size == "L"
        await _press(pilot, "enter", *_keys("10 years"), "enter")
        assert _start(app).asked.key == "number: front_rows"
        assert _start(app).draft.wearer == "10 years"


async def test_errors_and_warnings_are_settled_before_the_start(tmp_path: Path) -> None:
    """Start is refused while something is open; an error is accepted twice, a warning understood; then it starts."""
    app = Opened(tmp_path, "", lambda shelf: AuditScreen(draft(front_rows=40, side=25), shelf))
    async with app.run_test() as pilot:
        await settled(pilot)
        screen = _audit(app)
        last = len(screen.query_one(Choices)) - 1
        assert screen.query_one(Choices).at == 0
        await _press(pilot, *["down"] * last, "enter")
        assert "comes first" in _words(app)
        assert screen.query_one(Choices).at == 0
        await _press(pilot, "x", "x", "enter")
        assert screen.query_one(Choices).at == last
        await _press(pilot, "enter", WAIT)
        (folder,) = folders_on(tmp_path)
        assert dict(plan_of(folder).own) == {"front_rows": 40, "side": 25}


async def test_an_error_leads_to_its_number_and_the_audit_is_done_again(tmp_path: Path) -> None:
    """Enter on the error opens the number it is about; 26 a side makes 108 in the band, a multiple of 4."""
    app = Opened(tmp_path, "", lambda shelf: AuditScreen(draft(side=25), shelf))
    async with app.run_test() as pilot:
        await _press(pilot, WAIT, "enter")
        assert isinstance(front(app), NumbersScreen)
        await _press(pilot, "9", "9", "9", "9", "9", "9", "enter")
        assert "999,999 is too many" in _words(app)
        await _press(pilot, "escape", "2", "6", "enter", "escape", WAIT)
        screen = _audit(app)
        assert screen.draft.own == {"side": 26}
        assert "error" not in _words(app)
        assert "108; the recipe says 104" in _words(app)


async def test_a_slow_audit_holds_no_key_up(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """While it runs nothing can be started and one may go back; that it ends afterwards changes nothing."""
    go_on = Event()

    def slow(inputs: Inputs) -> Audited:
        assert go_on.wait(60)
        return audited(inputs)

    monkeypatch.setattr("finishing_tui.screens.starting.audit.audited", slow)
    app = Opened(tmp_path, "", lambda shelf: AuditScreen(draft(), shelf))
    async with app.run_test() as pilot:
        await pilot.press("enter", "e", "escape")
        assert isinstance(front(app), NumbersScreen | AuditScreen | ShelfScreen)
        while not isinstance(front(app), ShelfScreen):
            await pilot.press("escape")
        go_on.set()
        await settled(pilot)
        assert isinstance(front(app), ShelfScreen)
    assert folders_on(tmp_path) == ()


async def test_pasted_lines_and_hostile_names_stay_inert(tmp_path: Path) -> None:
    """Several pasted lines become one; markup, wide and combining signs in a name are shown as they stand."""
    app = FinishingApp(tmp_path)
    async with app.run_test(size=(40, 20)) as pilot:
        await _press(pilot, "s", WAIT, *_down_to("crew-neck"), *["enter"] * 6)
        screen = _start(app)
        assert screen.asked.key == "title"
        await _paste(pilot, "[red]two\nlines\x1b]0;x\x07\n")
        assert screen.query_one(EntryBox).value == "[red]two lines]0;x"
        screen.query_one(EntryBox).value = HOSTILE
        await _press(pilot, "enter", "enter", "enter", WAIT)
        assert "[@click=app.quit]x[/]" in _words(app)
        await _press(pilot, "enter", WAIT)
        assert isinstance(front(app), AtTheNeedles)
        await _press(pilot, "q", "enter", WAIT)
        assert isinstance(front(app), ShelfScreen)
        assert "[@click=app.quit]x[/]" in _words(app)
        (folder,) = folders_on(tmp_path)
        assert plan_of(folder).title == one_line(HOSTILE, LONGEST_TITLE)


async def test_a_recipe_file_of_ones_own(tmp_path: Path) -> None:
    """A path that leads nowhere and a file with mistakes are told, and may be typed again; a good one is chosen."""
    hostile = "[b]" + "漢" * 30
    good = tmp_path / "own.toml"
    good.write_text(
        f'format = 1\ntitle = "{hostile}"\nabout = "[red]x"\nsizes = ["[i]one"]\n[place.pin]\ntext = "[/pin]"\n'
        'kind = "pin"\nlive = 12\n[[step]]\ndo = "bind off"\ntitle = "[x]"\nsay = "[y]"\nfrom = "pin"\ntail = "end"\n'
        '[[step]]\ndo = "weave in"\ntitle = "Ends"\ntails = "all"\n'
    )
    bad = tmp_path / "bad.toml"
    bad.write_text("format = 1\n")
    app = FinishingApp(tmp_path / "shelf")
    async with app.run_test(size=(40, 20)) as pilot:
        await _press(pilot, "s", WAIT)
        for path, told in ((bad, "title"), (tmp_path / "nowhere.toml", "no such file")):
            await _press(pilot, "f")
            await _paste(pilot, str(path))
            await _press(pilot, "enter", WAIT)
            assert isinstance(front(app), ChoiceBox)
            assert told in _words(app)
            await _press(pilot, "escape")
        await _press(pilot, "f")
        await _paste(pilot, str(good))
        await _press(pilot, "enter", WAIT)
        assert _start(app).draft.source == str(good)
        await _press(pilot, "escape", "r")
        assert isinstance(front(app), ReadingScreen)
        assert hostile[:10] in shown(app)
        await _press(pilot, "end", "escape", "enter", *["enter"] * 8, WAIT, "enter", WAIT)
        assert isinstance(front(app), AtTheNeedles)
        (folder,) = folders_on(tmp_path / "shelf")
        assert plan_of(folder).recipe.title == hostile


async def test_the_sizes_stand_nearest_first(tmp_path: Path) -> None:
    """What every size holds stands below what is counted, and each figure says by a sign whether it agrees."""
    app = Opened(tmp_path, "", lambda _: WhichSizeScreen(shipped_recipe("crew-neck")))
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert [row.plain.split()[0] for row in app.screen.query_one(Fits)._drawn[5:8]] == ["S", "M", "L"]  # noqa: SLF001
        await pilot.press("2", "2")
        await settled(pilot)
        nearest = app.screen.query_one(Fits)._drawn[1].plain  # noqa: SLF001
        assert nearest.split() == ["L", "22=", "22", "16", "80"]
