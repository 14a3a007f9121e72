"""Settings in force in the running program: pace, bell, speech, hand and looks."""

from functools import partial
from pathlib import Path
from typing import get_args

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.starting.questions import StartScreen
from finishing_tui.screens.starting.recipes import RecipesScreen
from finishing_tui.settings import Settings
from finishing_tui.settings.model import Bell
from finishing_tui.settings.reading import BadSettings, settings_in
from finishing_tui.speech.speaker import FAILURES, Speaker
from finishing_tui.widgets.entry import EntryBox
from tests.screens.hands import PICK_UP, Hours, comes_to, needles, settled, shelf, shown, work_to
from tests.speech.talking import Talk, until


def app_with(folder: Path, settings: Settings) -> FinishingApp:
    """Return the program with the garment in ``folder`` in hand."""
    return FinishingApp(folder.parent, garment=folder, settings=settings, clock=Hours().clock())


async def test_a_garment_begins_with_the_pace_that_is_set_and_keeps_its_own(tmp_path: Path) -> None:
    """Picked up for the first time it goes at the pace of the settings; later at the one it was given."""
    folder = shelf(tmp_path)
    async with app_with(folder, Settings(pace="run")).run_test() as pilot:
        app = pilot.app
        assert isinstance(app, FinishingApp)
        assert needles(app).talk.state.pace == "run"
        await pilot.press("q", "enter")
    async with app_with(folder, Settings(pace="spot")).run_test() as pilot:
        app = pilot.app
        assert isinstance(app, FinishingApp)
        assert app.in_hand is not None
        assert app.in_hand.state.pace == "run"
    hand = InHand.open(folder)
    assert (hand.state.pace, hand.state.top) == ("run", 0), "there is nothing to take back of it"
    hand.close()


@pytest.mark.turns(of=2)
@pytest.mark.parametrize(
    ("settings", "rung"),
    [
        (Settings(), [1, 2, 1, 3]),
        (Settings(bell=False), []),
        (Settings(bell=("target",)), [3]),
        (Settings(bell=("run", "refused")), [1, 1]),
    ],
)
async def test_only_what_is_set_is_rung_for(
    tmp_path: Path, settings: Settings, rung: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The end of a run, a recount, a refusal and a target ring as often as they are known by, or not at all."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 1)
    rings: list[int] = []
    monkeypatch.setattr(FinishingApp, "bell_pattern", lambda _, times: rings.append(times))
    async with app_with(folder, settings).run_test() as pilot:
        await pilot.press("space")
        assert rings == [times for times in rung if times == 1][:1] * ("run" in _heard(settings))
        await pilot.press(*["space"] * 7)
        await pilot.press("enter")
        await pilot.press(*["space"] * 8)
    kinds = {times for times in rings if times > 1}
    assert kinds == {times for times in rung if times > 1}
    assert bool(rings) == bool(rung)


def _heard(settings: Settings) -> set[str]:
    return {one for one in get_args(Bell) if settings.rings_for(one)}


async def test_the_next_word_and_the_count_are_spoken_after_a_press(tmp_path: Path) -> None:
    """The program that the settings name is given each text; a refusal and a verdict too."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    talk = Talk(tmp_path)
    app = app_with(folder, Settings(speech="counts", speak_with=talk.command))
    async with app.run_test() as pilot:
        for keys, said in (
            (("space",), "pick, 5 of "),
            (("enter",), "Enter again ends the step anyway."),
            (("x",), "pick, 5 of "),
            (("1", "1", "enter", "1", "1", "enter", "2"), "you counted 11, "),
        ):
            before = len(talk.heard())
            await pilot.press(*keys)
            assert until(partial(_heard_last, talk, before, said)), talk.heard()


def _heard_last(talk: Talk, before: int, said: str) -> bool:
    """Return whether more than so many texts were heard, the last of them with these words."""
    heard = talk.heard()
    return len(heard) > before and said in heard[-1]


async def test_keys_lead_to_texts_in_their_order(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """At the needles and all through a recount each key has its text, a question too; a digit has none."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    said: list[str] = []
    monkeypatch.setattr(FinishingApp, "speak", lambda _, text: said.extend([text] if text else ()))
    app = app_with(folder, Settings(speech="counts", speak_with=Talk(tmp_path).command))
    async with app.run_test() as pilot:
        assert said == ["skip 1, pick, 4 of 17"]
        for key, text in (
            ("1", ""),
            ("escape", ""),
            ("space", "pick, 5 of 17"),
            ("backspace", "back to 4. skip 1, pick, 4 of 17"),
            ("3", ""),
            ("enter", "You counted 3; it should be 4. Count the left front neck again."),
            ("3", ""),
            (
                "enter",
                "You counted 3; the count here is 4. What happened? 1: A stitch slipped off the tip: pick it up ",
            ),
            ("2", "1 short: you counted 3, planned 4. 1: Re-space the rest. 2: See every way."),
            ("2", "1 short: you counted 3, planned 4. 1: Re-space the rest, the rest lies flat."),
            ("backspace", "You counted 3; the count here is 4. What happened? 1: "),
            ("escape", ""),
            ("r", "Count the left front neck."),
            ("enter", "4 counted, as planned. skip 1, pick, 4 of 17"),
            ("enter", "Left front neck: 4 of 17 done. Enter again ends the step anyway."),
        ):
            said.clear()
            await pilot.press(key)
            await pilot.pause()
            assert len(said) == bool(text), (key, said)
            assert "".join(said).startswith(text)


def _failed_more(speaker: Speaker, than: int) -> bool:
    return speaker._failures > than  # noqa: SLF001


async def test_a_program_that_fails_is_given_up_with_a_sentence(tmp_path: Path) -> None:
    """After three failures it is said once at the foot, and keys go on as ever."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_with(folder, Settings(speech="counts", speak_with=Talk(tmp_path, "fails").command))
    async with app.run_test(size=(100, 30)) as pilot:
        speaker = app._speaker  # noqa: SLF001
        assert speaker is not None
        while (failures := speaker._failures) < FAILURES:  # noqa: SLF001
            app.speak(f"text {failures}")
            await comes_to(pilot, partial(_failed_more, speaker, failures))
        await comes_to(pilot, lambda: "failed 3 times." in shown(app))
        await pilot.press("space")
        assert "failed 3 times." not in shown(app)


async def test_no_program_is_said_and_nothing_else_changes(tmp_path: Path) -> None:
    """Where the program that is named is not there, that is said when a garment is picked up, once."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_with(folder, Settings(speech="all", speak_with=("no-such-parrot",)))
    async with app.run_test(size=(100, 30)) as pilot:
        assert "Nothing is spoken: there is no program 'no-such-parrot' here, which speak_with names." in shown(app)
        await pilot.press("space", "x")
        assert "no-such-parrot" not in shown(app)


async def test_a_line_is_written_whatever_the_keys_of_lists_are(tmp_path: Path) -> None:
    """A letter that moves in lists is a letter on a line; the line is kept and left by the keys of lines."""
    text = '[keys.lists]\nup = "7"\n'
    with pytest.raises(BadSettings, match="digits are for counts"):
        settings_in(text, "settings.toml")
    text = '[keys.lists]\nup = "i"\nleave = "j"\n[keys.lines]\nkeep = "f14"\nleave = "f15"\n'
    app = FinishingApp(tmp_path, settings=settings_in(text, "settings.toml"), clock=Hours().clock())
    async with app.run_test(size=(100, 40)) as pilot:
        await pilot.press("s")
        await settled(pilot)
        await pilot.press("enter", "down", "i", "enter")
        await settled(pilot)
        screen = app.screen
        assert isinstance(screen, StartScreen)
        assert (screen.at, "f14 next" in shown(app), "f15 back" in shown(app)) == (1, True, True)
        await pilot.press("i", "j", "end", "a")
        assert screen.query_one(EntryBox).value.endswith("ija")
        await pilot.press("f14")
        assert screen.at == 1
        await pilot.press("f15")
        assert screen.at == 0
        await pilot.press("j")
        assert isinstance(app.screen, RecipesScreen)


async def test_a_garment_is_started_for_the_hand_that_is_set(tmp_path: Path) -> None:
    """The draft begins left-handed, and leaving without having said anything asks nothing."""
    app = FinishingApp(tmp_path, settings=Settings(hand="left"), clock=Hours().clock())
    async with app.run_test() as pilot:
        await pilot.press("s")
        await settled(pilot)
        await pilot.press("enter")
        assert isinstance(app.screen, StartScreen)
        assert app.screen.draft.hand == "left"
        await pilot.press("escape")
        assert isinstance(app.screen, RecipesScreen)
        await pilot.press("q")
        assert not isinstance(app.screen, RecipesScreen)
