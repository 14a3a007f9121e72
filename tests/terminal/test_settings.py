"""Settings in a real terminal: a pedal's key, the keys of one's own, and a program that speaks."""

import json
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.shelf import take_copy
from tests.speech.talking import Talk, until
from tests.terminal.terminal import Terminal

F13, F13_OLD, F14 = "\x1b[57376u", "\x1b[25~", "\x1b[57377u"
"""A pedal's key as terminals of today send it, as older ones do, and the next one."""


def test_a_garment_is_worked_with_a_pedal_and_heard(tmp_path: Path) -> None:
    """The pedal counts, takes back and keeps a line; its key is named at the foot; what comes next is spoken."""
    shelf, talk = tmp_path / "shelf", Talk(tmp_path)
    folder = take_copy(shipped.demo("slate-crew"), shelf)
    settings = tmp_path / "mine.toml"
    settings.write_text(
        f'looks = ["dark", "ascii"]\nspeech = "all"\nspeak_with = {json.dumps(talk.command)}\n'
        '[keys.needles]\npress = "f13"\ntake_back = "f14"\n[keys.lines]\nkeep = ["f14"]\n'
    )
    extra = {"FINISHING_SETTINGS": str(settings)}
    with Terminal("work", str(folder), shelf=shelf, extra=extra) as terminal:
        terminal.wait_for("f13 tick off")
        assert terminal.text.isascii()
        terminal.press(F13, F13_OLD)
        assert until(lambda: talk.heard())
        terminal.press(F14, "q")
        terminal.wait_for("Where did you leave it?")
        terminal.press(F14)
        terminal.wait_for("The shelf")
        terminal.press("q")
        assert terminal.wait_for_end() == 0
    assert _done(folder) == 1


def _done(folder: Path) -> int:
    """Return how many units are done of the first part of the step under way."""
    hand = InHand.open(folder, look=True)
    standing = hand.state.standing
    hand.close()
    assert standing is not None
    assert standing.work is not None
    return standing.work.progress[0].mark.units


def test_what_is_wrong_with_the_settings_ends_it_in_a_sentence(tmp_path: Path) -> None:
    """Nothing is drawn: file, line and key stand there, and the status is 2."""
    settings = tmp_path / "mine.toml"
    settings.write_text('[keys.needles]\npress = "x"\n')
    with Terminal("shelf", shelf=tmp_path / "shelf", extra={"FINISHING_SETTINGS": str(settings)}) as terminal:
        assert terminal.wait_for_end() == 2
        assert "mine.toml:2: keys.needles.press: x is a key of needles.other too" in terminal.text.replace("\n", "")


POOR = ({"TERM": "linux"}, {"TERM": "dumb"}, {"PYTHONIOENCODING": "latin-1"})


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("extra", POOR, ids=str)
def test_a_terminal_that_lacks_signs_gets_plain_letters(extra: dict[str, str], tmp_path: Path) -> None:
    """On the shelf and at the needles all is ASCII, and the first screen says so; looks that are set win."""
    shelf = tmp_path / "shelf"
    folder = take_copy(shipped.demo("slate-crew"), shelf)
    with Terminal("shelf", shelf=shelf, extra=extra) as terminal:
        terminal.wait_for("Plain letters only")
        terminal.wait_for("not begun")
        assert terminal.text.isascii()
        terminal.press("q")
        assert terminal.wait_for_end() == 0
    with Terminal("work", str(folder), shelf=shelf, extra=extra) as terminal:
        terminal.wait_for("Plain letters only")
        assert terminal.text.isascii()
        terminal.press("space")
        terminal.wait_for(lambda text: "Plain letters" not in text)
    if "TERM" in extra:
        with Terminal("shelf", shelf=shelf, extra={**extra, "FINISHING_LOOKS": "dark"}) as terminal:
            terminal.wait_for("▸")
            assert "Plain letters" not in terminal.text


def test_settings_that_are_not_there_are_told_on_the_first_screen(tmp_path: Path) -> None:
    """The usual ones hold, and the sentence stands where it is seen."""
    extra = {"FINISHING_SETTINGS": str(tmp_path / "none.toml")}
    with Terminal("shelf", shelf=tmp_path / "shelf", extra=extra) as terminal:
        terminal.wait_for(lambda text: "of your own" in text and "usual settings hold" in " ".join(text.split()))
        terminal.press("q")
        assert terminal.wait_for_end() == 0
