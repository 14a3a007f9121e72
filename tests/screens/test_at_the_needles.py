"""What the keys do at the needles: the state they lead to, and what stands on the screen then."""

from functools import partialmethod
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot

from finishing_tui.garment.commands import ChoosePace, Command, Other, Press
from finishing_tui.garment.decide.mirror import choice
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import Journal
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.one_line import OneLine
from finishing_tui.screens.shelf import ShelfScreen
from finishing_tui.talk.action import Action
from finishing_tui.talk.acts import ACTS, put_down
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.top import Top
from tests.plain.making import Twin, crew
from tests.plain.test_not_saved import Disk
from tests.plain.test_whole_garments import NECKBAND
from tests.screens.hands import (
    BLOCK,
    COUNT,
    JOIN,
    PICK_UP,
    RIB,
    app_for,
    comes_to,
    front,
    needles,
    settled,
    shelf,
    shown,
    still,
    work_to,
)


def _prepared(at: Path, step: int, *commands: Command, **changes: str) -> FinishingApp:
    folder = shelf(at, **changes)
    work_to(folder, step, *commands)
    return app_for(folder)


def _loops(app: FinishingApp) -> int:
    """Return the units or loops done in the stage under way."""
    assert app.in_hand is not None
    standing = app.in_hand.state.standing
    assert standing is not None
    assert standing.work is not None
    return standing.work.progress[standing.work.at].mark.loops


def _spot(app: FinishingApp) -> int:
    assert app.in_hand is not None
    standing = app.in_hand.state.standing
    assert standing is not None
    assert standing.work is not None
    return standing.work.progress[standing.work.at].mark.units


def _said(app: FinishingApp) -> str:
    return needles(app).talk.said


@pytest.fixture
def rings(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """Return the bells rung, as how often each time."""
    rung: list[int] = []
    monkeypatch.setattr(FinishingApp, "bell_pattern", lambda _, times: rung.append(times))
    return rung


async def test_space_is_done_x_is_the_other_thing_and_backspace_takes_back(tmp_path: Path) -> None:
    """Every press counts one; ``x`` makes a loop where a skip was due; backspace is exact, and ``u`` puts it back."""
    app = _prepared(tmp_path, PICK_UP)
    async with app.run_test() as pilot:
        await pilot.press("space", "space")
        assert (_loops(app), _spot(app)) == (2, 2)
        await pilot.press("x")  # row 3 was to be skipped
        assert (_loops(app), _spot(app)) == (3, 3)
        await pilot.press("backspace")  # not a press, so it is named first
        assert (_loops(app), _said(app)) == (3, "Backspace again takes back: row 3, picked against the plan.")
        await pilot.press("backspace")
        assert (_loops(app), _spot(app)) == (2, 2)
        await pilot.press("backspace")
        assert (_loops(app), _spot(app)) == (1, 1)
        await pilot.press("u")
        assert (_loops(app), _spot(app)) == (2, 2)


async def test_a_held_key_counts_every_press_and_a_paste_none(tmp_path: Path) -> None:
    """Keys queue in order; text pasted into the terminal is no key."""
    app = _prepared(tmp_path, PICK_UP, size="large")
    async with app.run_test() as pilot:
        app.screen.post_message(events.Paste("   x\n14\n"))
        await pilot.pause()
        assert (_loops(app), needles(app).talk.typed) == (0, "")
        for _ in range(30):
            app.post_message(events.Key("space", " "))
        await still(pilot)
        assert _loops(app) == 30


async def test_a_press_with_digits_typed_is_refused_once(tmp_path: Path, rings: list[int]) -> None:
    """Digits are a count that was not taken: the first press says so and rings, the next forgets them and counts."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 4)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.press("1", "4", "space")
        assert (needles(app).talk.typed, _loops(app), rings) == ("14", 4, [1])
        assert "Enter uses 14; space again clears it and goes on." in shown(app)
        await pilot.press("x")
        assert (needles(app).talk.typed, _loops(app)) == ("14", 4)
        await pilot.press("space")
        assert (needles(app).talk.typed, _loops(app)) == ("14", 4)
        await pilot.press("space")
        assert (needles(app).talk.typed, _loops(app)) == ("", 5)
        await settled(pilot)


async def test_digits_build_a_number_that_says_what_it_means(tmp_path: Path) -> None:
    """Digits are shown, backspace takes the last one, escape clears them, and nothing changes until enter."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 4)
    async with app.run_test() as pilot:
        await pilot.press("1", "4")
        assert needles(app).talk.typed == "14"
        assert "enter: stitches counted" in shown(app)
        await pilot.press("backspace")
        assert needles(app).talk.typed == "1"
        await pilot.press("escape")
        assert (needles(app).talk.typed, _loops(app)) == ("", 4)
        await pilot.press(*"123456789")
        assert needles(app).talk.typed == "123456"


async def test_a_step_that_is_not_done_is_asked_about_again(tmp_path: Path) -> None:
    """Enter with work left names what is left; only the same key again, with nothing in between, finishes it."""
    app = _prepared(tmp_path, RIB)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("enter", "escape", "enter")
        assert app.in_hand.state.current == RIB
        assert "0 of 6 done" in _said(app)
        await pilot.press("enter")
        assert app.in_hand.state.current == RIB + 1


async def test_another_step_can_be_looked_at_while_the_work_stays(tmp_path: Path) -> None:
    """Left and right look; space acts on the step under way and comes back to it; enter takes the other one up."""
    app = _prepared(tmp_path, RIB)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("right")
        assert "Bind off in rib" in shown(app)
        assert app.in_hand.state.current == RIB
        await pilot.press("space")
        assert needles(app).talk.looking is None
        assert _loops(app) == 1
        await pilot.press("right", "enter")
        assert app.in_hand.state.current == RIB + 1
        await pilot.press("left", "left", "left", "left", "left", "left", "left")
        assert _said(app) == "That is the first step."
        before = app.in_hand.state
        await pilot.press("enter")
        assert "is done; rip back to it" in _said(app)
        assert app.in_hand.state == before, "enter on a done step that is looked at finishes nothing"


async def test_at_a_join_counts_and_doubles_ask_for_the_needle(tmp_path: Path) -> None:
    """A number at a join asks which needle; two together go on the longer one without a question."""
    app = _prepared(tmp_path, JOIN)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("7", "enter")
        assert isinstance(front(app), ChoiceBox)
        await pilot.press("1", "7", "enter", "2")
        assert app.in_hand.state.ledger.on("left_front") == 7
        await pilot.press("2")  # every way
        await _carry_on(pilot)
        await pilot.press("x")
        assert (app.in_hand.state.ledger.on("left_front"), app.in_hand.state.ledger.on("left_back")) == (5, 5)


async def test_a_measure_is_typed_with_its_point(tmp_path: Path) -> None:
    """Where a measure is asked for digits are that, and a point may stand in them; in a count it may not."""
    app = _prepared(tmp_path, BLOCK, Press())
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("2", "8", "full_stop", "full_stop", "5", "enter")
        work = app.in_hand.state.steps[BLOCK].work
        assert work is not None
        assert work.progress[1].value == "28.5"
        await pilot.press("full_stop")
        assert _said(app) == "A count is a whole number."


async def test_the_lot_is_taken_with_enter_and_a_count_says_how_many(tmp_path: Path) -> None:
    """At stitches that may be taken at one go a number is how many are done, and enter alone is all of them."""
    app = _prepared(tmp_path, COUNT)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("2", "5", "enter", "2", "5", "enter", "2")
        assert app.in_hand.state.ledger.on("neck") == 25
        await pilot.press("2")  # every way
        await _carry_on(pilot)


async def test_the_pace_changes_with_its_key_and_says_so(tmp_path: Path) -> None:
    """A press stands for a loop, a spot or a run; the word on the screen follows."""
    app = _prepared(tmp_path, PICK_UP)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("p")
        assert (app.in_hand.state.pace, _said(app)) == ("spot", "One press = one row.")
        await pilot.press("p", "space")
        assert (app.in_hand.state.pace, _spot(app)) == ("run", 3)
        await pilot.press("p")
        assert app.in_hand.state.pace == "loop"


async def test_the_bell_rings_at_runs_recounts_targets_and_refusals(tmp_path: Path, rings: list[int]) -> None:
    """Once at the end of a run and at a refusal, twice when a recount is due, three times when a part is complete."""
    app = _prepared(tmp_path, PICK_UP)
    async with app.run_test() as pilot:
        await pilot.press("space")
        assert rings == []
        await pilot.press("space")
        assert rings == [1]
        await pilot.press(*["space"] * 7)
        assert 2 in rings
        rings.clear()
        await pilot.press("enter")
        assert rings == []
        await pilot.press("enter")
        assert rings == [1]
        await pilot.press(*["space"] * 8)
        assert rings[-1] == 3


@pytest.mark.parametrize(
    ("keys", "loops", "spot"),
    [
        (("1", "2", "enter", "1", "2", "enter", "3", "1"), 12, 17),  # I missed a press: the plan has 12 at row 17
        (("1", "2", "enter", "1", "2", "enter", "2", "1"), 12, 15),  # the loops differ: re-space from here
        (("1", "0", "enter", "1", "0", "enter", "4", "1", "0", "enter", "1"), 10, 14),  # ten rows are left of 24
        (("9", "enter", "9", "enter", "5", "1"), 9, 12),  # I am at the fold mark
    ],
)
async def test_a_count_that_differs_is_put_down_to_one_of_the_ways(
    keys: tuple[str, ...], loops: int, spot: int, tmp_path: Path
) -> None:
    """Each answer leads to its spot, and what was shown is what happens; the target is still met where it can be."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 11)
    async with app.run_test() as pilot:
        assert (_loops(app), _spot(app)) == (11, 15)
        await pilot.press(*keys)
        assert (_loops(app), _spot(app)) == (loops, spot)


async def test_a_count_that_is_right_takes_no_question(tmp_path: Path) -> None:
    """The common case: ``r`` and enter, or the number and enter; the total on the needle is said."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 9)
    async with app.run_test() as pilot:
        await pilot.press("r", "enter")
        assert _said(app) == "9 counted, as planned."
        await pilot.press("9", "enter")
        assert _said(app) == "9 counted, as planned."
        await pilot.press("r", "1", "backspace", "escape")
        assert _loops(app) == 9


async def test_a_count_that_cannot_be_is_refused_where_it_is_typed(tmp_path: Path) -> None:
    """A number beyond what the section can hold is refused with the most it can be, and nothing is lost."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 9)
    async with app.run_test() as pilot:
        await pilot.press("r", "9", "9", "9", "enter")
        assert isinstance(front(app), LargeAsk)
        assert "it holds up to 48" in " ".join(shown(app).split())
        await pilot.press("escape")
        assert _loops(app) == 9


async def test_ripping_back_goes_where_it_is_told_and_names_what_falls(tmp_path: Path) -> None:
    """To a row of this section by its number; to a step before only when what falls with it was named."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 5)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("t", "1", "3", "enter")
        assert (_spot(app), _loops(app)) == (3, 2)
        await pilot.press("t", "down", "down", "down", "enter")
        assert "This undoes" in " ".join(shown(app).split())
        assert app.in_hand.state.current == PICK_UP
        await pilot.press("2")
        assert app.in_hand.state.current == PICK_UP - 1


async def test_what_falls_is_named_again_after_another_place_was_looked_at(tmp_path: Path) -> None:
    """Only the same place asked for twice in a row is meant; a refusal does not stand beside another place."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 5)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("t", "down", "down", "down", "enter")
        assert "This undoes" in " ".join(shown(app).split())
        await pilot.press("escape")
        assert "This undoes" not in " ".join(shown(app).split())
        await pilot.press("down", "down", "enter", "enter")
        assert app.in_hand.state.current == PICK_UP
        await pilot.press("t", "1", "9", "enter")
        assert "!" in shown(app)
        await pilot.press("escape")
        assert "!" not in shown(app)


async def test_notes_and_where_it_was_left_come_back(tmp_path: Path) -> None:
    """A note and the line on putting down are there when it is picked up again; the count may wait."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 5)
    async with app.run_test() as pilot:
        await pilot.press("n", *"loose", "enter")
        assert _said(app) == "The note is kept."
        await pilot.press("q")
        assert isinstance(front(app), OneLine)
        await pilot.press("escape")
        needles(app)
        await pilot.press("q", *"bag", "enter")
        assert "The shelf" in shown(app)
        await pilot.press("enter")
        text = shown(app)
        assert "You wrote: bag" in text
        assert "Note: loose" in text
        assert "5 of 17 stitches" in " ".join(text.split())
        await pilot.press("enter")
        assert _loops(app) == 5


async def test_a_count_on_coming_back_is_a_recount(tmp_path: Path) -> None:
    """A number given on coming back is looked at as any other; one that differs asks its question."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 9)
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down()
    app = app_for(folder)
    async with app.run_test() as pilot:
        await pilot.press("8", "enter", "8", "enter")
        assert isinstance(front(app), LargeAsk)
        await pilot.press("2", "1")
        assert _loops(app) == 8


async def test_what_is_not_saved_is_marked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """While something is not on the disk its number stands on the screen, with what keeps it off; then it goes."""
    app = _prepared(tmp_path, JOIN)
    async with app.run_test() as pilot:
        await settled(pilot)
        assert "not saved" not in shown(app)
        with monkeypatch.context() as patched:
            patched.setattr(InHand, "unsaved", property(lambda _: 7))
            patched.setattr(InHand, "trouble", property(lambda _: "The disk is full: make room."))
            needles(app).draw()
            await pilot.pause()
            assert "7 not saved" in shown(app)
            assert "The disk is full: make room." in shown(app)
        await pilot.press("space")
        await settled(pilot)
        assert "not saved" not in shown(app)


@pytest.mark.parametrize("stays", [True, False])
async def test_what_cannot_be_saved_is_asked_about_before_it_is_put_down(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, stays: bool
) -> None:
    """With a full disk, putting down says how much is not saved and why; staying loses nothing, leaving is told of."""
    app = _prepared(tmp_path, JOIN)
    disk = Disk(monkeypatch)
    monkeypatch.setattr(put_down, "PATIENCE", 0.5)
    async with app.run_test() as pilot:
        await settled(pilot)
        disk.full = True
        await pilot.press("space", "q", *"bag", "enter")
        assert isinstance(front(app), ChoiceBox)
        assert "1 not saved yet. The disk is full" in " ".join(shown(app).split())
        assert app.in_hand is not None
        hand = app.in_hand
        if stays:
            await pilot.press("1")
            assert needles(app).talk.hand is hand
            disk.full = False
            await pilot.press("space")
            assert hand.flush(30)
            await pilot.press("q", *"bag", "enter")
        else:
            monkeypatch.setattr(Journal, "close", partialmethod(Journal.close, timeout=0.5))
            await pilot.press("2")
            assert "could not be saved (the disk is full)" in " ".join(shown(app).split())
            await pilot.press("enter")
        assert isinstance(front(app), ShelfScreen)
        assert bool(app.given_up) is not stays
    looked = InHand.open(hand.folder, look=True)
    looked.close()
    assert looked.state.sittings[-1].where == ("bag" if stays else "")
    joined = looked.state.steps[JOIN].work
    assert joined is not None
    assert joined.progress[0].mark.units == (2 if stays else 0)


@pytest.mark.turns(of=6)
@pytest.mark.parametrize("action", ACTS, ids=lambda action: action.id)
async def test_every_action_is_alive(action: Action, tmp_path: Path) -> None:
    """Its key does something: the garment changes, a screen opens, or it is said why not."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, ChoosePace("spot"), *[Press()] * 4)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await _not_coming_back(pilot)
        assert app.in_hand is not None
        before = (app.in_hand.state, app.screen, needles(app).talk.shown_step)
        await pilot.press(action.key)

        def does_something() -> bool:
            assert app.in_hand is not None
            screen = app.screen
            after = (app.in_hand.state, screen, needles(app).talk.shown_step if screen is before[1] else None)
            return after != before or bool(_said(app))

        await comes_to(pilot, does_something)


async def _carry_on(pilot: Pilot[None]) -> None:
    """Leave what a count changes further on as it is."""
    assert isinstance(pilot.app.screen, LargeAsk)
    assert "This affects later steps" in shown_on(pilot)
    await pilot.press("escape")


def shown_on(pilot: Pilot[None]) -> str:
    """Return the screen of a pilot as text."""
    assert isinstance(pilot.app, FinishingApp)
    return shown(pilot.app)


async def _not_coming_back(pilot: Pilot[None]) -> None:
    if pilot.app.screen.query("#asked"):
        await pilot.press("escape")


async def test_resizing_in_mid_step_loses_nothing(tmp_path: Path) -> None:
    """Too small says how small it can be; grown again, the work goes on with what was typed."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 4)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("1")
        await pilot.resize_terminal(30, 10)
        await pilot.pause()
        assert "40 x 20" in " ".join(shown(app).split())
        await pilot.resize_terminal(60, 22)
        await pilot.pause()
        assert needles(app).talk.typed == "1"
        await pilot.press("escape", "space")
        assert _loops(app) == 5


async def test_a_press_draws_only_what_changed(tmp_path: Path) -> None:
    """At a press in the middle of a run the head and the words are not drawn again, and nothing is laid out anew."""
    app = _prepared(tmp_path, PICK_UP, *[Press()] * 3)
    async with app.run_test() as pilot:
        await settled(pilot)
        top = app.screen.query_one(Top)
        drawn = top._drawn  # noqa: SLF001
        layouts: list[object] = []
        app.screen.screen_layout_refresh_signal.subscribe(app.screen, layouts.append, immediate=True)
        await pilot.press("space")
        await settled(pilot)
        assert [row.plain for row in top._drawn] == [row.plain for row in drawn]  # noqa: SLF001
        assert not layouts
        await pilot.resize_terminal(100, 30)
        await comes_to(pilot, lambda: bool(layouts))  # it would have been heard


async def test_a_second_side_that_can_go_two_ways_says_so_at_the_foot(tmp_path: Path) -> None:
    """Where a second side is about to begin, its key stands at the foot of the screen, and lets it go the other way."""
    twin = Twin(crew(tmp_path / "crew"))
    twin.works_to(NECKBAND, 0, 5)
    twin.does(Other(), "x")
    while choice(twin.hand.state) is None:
        assert twin.hand.state.current == NECKBAND
        twin.works_on()
    twin.puts_down("")
    app = app_for(twin.hand.folder)
    async with app.run_test(size=(100, 30)) as pilot:
        await _not_coming_back(pilot)
        assert "m use the plan" in shown(app)
        await pilot.press("m")
        assert "m mirror it" in shown(app)
        keys = app.screen.query_one(KeyLine).keys_shown
        order = [action.shown for action in ACTS]
        assert [key for key, _ in keys] == [key for key in order if key in dict(keys)]
        assert keys[-1] == ("?", "help")


async def test_a_step_left_out_is_asked_about_first(tmp_path: Path) -> None:
    """Leaving a step out is asked twice, and can be taken back."""
    app = _prepared(tmp_path, COUNT)
    async with app.run_test() as pilot:
        assert app.in_hand is not None
        await pilot.press("o")
        assert app.in_hand.state.steps[COUNT].status == "under-way"
        await pilot.press("o")
        assert app.in_hand.state.steps[COUNT].status == "left-out"
        await pilot.press("backspace", "backspace")
        assert app.in_hand.state.steps[COUNT].status == "under-way"
