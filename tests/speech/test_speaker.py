"""The speaker: the newest text is spoken, and no program, however it behaves, holds anything up."""

import os
import subprocess
import sys
from functools import partial
from pathlib import Path

import hypothesis.strategies as st
import pytest
from hypothesis import given

from finishing_tui.speech import Speaker, SpeechProgram
from finishing_tui.speech.speaker import FAILURES, LONGEST, speakable
from tests.speech.talking import Talk, until

TOP = Path(__file__).parents[2]


def _wait_for(talk: Talk, kind: str, many: int) -> None:
    assert until(lambda: len(talk.heard(kind)) == many)


def _failed(speaker: Speaker, times: int) -> bool:
    return speaker._failures == times  # noqa: SLF001


def running(speaker: Speaker) -> bool:
    """Return whether a speaker's thread still runs."""
    return speaker._thread is not None and speaker._thread.is_alive()  # noqa: SLF001


def collected(pid: int) -> bool:
    """Return whether there is no process of this number, not even an ended one."""
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return True
    return False


def gone(pid: int) -> bool:
    """Return whether no process of this number runs any more."""
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return True
    state = Path(f"/proc/{pid}/stat")
    return state.exists() and state.read_text().rpartition(")")[2].split()[0] == "Z"


def test_a_text_is_given_on_standard_input_and_nothing_else(tmp_path: Path) -> None:
    """The program gets it whole, as text, and its arguments stay as they were, whatever the text looks like."""
    talk, trouble = Talk(tmp_path), list[str]()
    speaker = Speaker(talk.program, trouble.append)
    texts = ["pick, 14 of 24", "--help", "-f /etc/passwd", "$(touch x); `y`", 'it\'s "so" \\n %s', "é \u2019 漢"]
    for number, text in enumerate(texts, 1):
        speaker.say(text)
        _wait_for(talk, "ended", number)
    assert talk.heard() == texts
    assert talk.arguments() == [[]] * len(texts)
    speaker.close()
    assert trouble == []


@pytest.mark.parametrize("text", ["-x; rm y", "--help", "$(id)", 'it\'s "so"', "-- -v"])
def test_a_text_as_an_argument_stands_behind_what_ends_options(tmp_path: Path, text: str) -> None:
    """A program that takes no standard input gets the text last and whole, behind ``--``."""
    talk = Talk(tmp_path)
    speaker = Speaker(SpeechProgram(talk.command, argument=True), print)
    speaker.say(text)
    assert until(lambda: talk.heard("ended"))
    assert talk.arguments() == [["--", text]]
    speaker.close()


def test_a_program_may_have_spaces_in_its_name(tmp_path: Path) -> None:
    """A folder and a name with spaces and signs of a shell are the program all the same."""
    place = tmp_path / "a b; $c"
    place.mkdir()
    talk = Talk(place)
    speaker = Speaker(talk.program, print)
    speaker.say("pick")
    assert until(lambda: talk.heard("ended") == ["pick"])
    speaker.close()


@given(st.text(max_size=2 * LONGEST))
def test_whatever_is_spoken_is_one_short_printable_line(text: str) -> None:
    """Nothing in it steers a terminal, nothing printable is lost but what is too long, and it can be encoded."""
    told = speakable(text)
    assert told.isprintable()
    assert len(told) <= LONGEST
    told.encode()
    shown = [sign for sign in text if sign.isprintable() and sign != " "]
    kept = [sign for sign in told if sign != " "]
    assert kept == shown[: len(kept)]
    if len(text) <= LONGEST:
        assert kept == shown


def test_no_text_steers_a_terminal_or_is_endless(tmp_path: Path) -> None:
    """What is not printable becomes a space, and a text is cut after the last word that can be spoken."""
    talk = Talk(tmp_path)
    speaker = Speaker(talk.program, print)
    speaker.say("a\x1b]0;b\x07\x00\nc " + "d" * (LONGEST - 20) + " " + "e" * 100_000)
    assert until(lambda: talk.heard("ended"))
    assert talk.heard() == ["a ]0;b c " + "d" * (LONGEST - 20)]
    speaker.say(" \n ")
    speaker.close()
    assert len(talk.heard()) == 1


def test_the_newest_text_wins(tmp_path: Path) -> None:
    """While one is spoken others come: it is cut off at once, and of those only the last is spoken."""
    talk = Talk(tmp_path, "slow")
    speaker = Speaker(talk.program, print)
    speaker.say("first")
    assert until(lambda: talk.heard() == ["first"])
    for number in range(50):
        speaker.say(f"{number} of 50")
    speaker.say("last")
    assert until(lambda: "last" in talk.heard())
    speaker.close()
    assert len(talk.heard()) <= 4, "the texts between are dropped, but for those just begun"
    assert talk.heard("ended") == []


@pytest.mark.parametrize("how", ["deaf", "slow", "unread", "family"])
def test_a_program_that_does_not_end_is_ended(tmp_path: Path, how: str) -> None:
    """One that sleeps, is deaf to signals, reads nothing or has children is gone when all is over, and they with it."""
    talk = Talk(tmp_path, how)
    speaker = Speaker(talk.program, print)
    speaker.say("first")
    assert until(lambda: talk.heard("child" if how == "family" else "begun"))
    speaker.close(10)
    assert not running(speaker)
    for pid in talk.heard("child"):
        assert until(partial(gone, int(pid)))


def test_noise_of_a_program_is_discarded(tmp_path: Path) -> None:
    """A million letters on both its outputs neither block it nor reach the terminal."""
    talk = Talk(tmp_path, "noisy")
    speaker = Speaker(talk.program, print)
    speaker.say("first")
    assert until(lambda: talk.heard("ended") == ["first"])
    speaker.close()


@pytest.mark.parametrize("how", ["fails", "slow", "none"])
def test_a_program_that_keeps_failing_is_given_up(tmp_path: Path, how: str) -> None:
    """Whether it fails, never ends, or cannot be started: after three times it is told once, and left alone."""
    talk, trouble = Talk(tmp_path, how), list[str]()
    program = SpeechProgram((str(tmp_path / "none"),)) if how == "none" else talk.program
    speaker = Speaker(program, trouble.append, patience=0.3)
    for number in range(1, FAILURES + 1):
        speaker.say(f"text {number}")
        assert until(partial(_failed, speaker, number))
    assert until(lambda: trouble)
    name = Path(program.command[0]).name
    assert trouble == [f"Nothing is spoken any more: {name} failed 3 times."]
    heard = talk.heard()
    speaker.say("once more")
    speaker.close(20)
    assert not running(speaker)
    assert talk.heard() == heard


def test_saying_never_waits(tmp_path: Path) -> None:
    """With a program that never reads and never ends, a thousand texts are taken, and it is started for few of them."""
    talk = Talk(tmp_path, "unread")
    speaker = Speaker(talk.program, print)
    speaker.say("first")
    assert until(lambda: talk.heard())
    for number in range(1000):
        speaker.say(str(number))
    speaker.close(20)
    assert not running(speaker)
    assert len(talk.heard()) < 100


def test_a_program_that_ends_by_itself_leaves_nothing_behind(tmp_path: Path) -> None:
    """Neither a process that waits to be collected, nor the thread once all is over."""
    talk = Talk(tmp_path)
    speaker = Speaker(talk.program, print)
    for number in range(1, 4):
        speaker.say(f"{number} of 3")
        _wait_for(talk, "ended", number)
    speaker.close(20)
    assert not running(speaker)
    for pid in talk.heard("process"):
        assert until(partial(collected, int(pid)))


LEAVE = """
import sys
sys.path.insert(0, sys.argv[1])
from finishing_tui.speech import Program, Speaker
from tests.speech.talking import Talk, until
from pathlib import Path
talk = Talk(Path(sys.argv[2]), "deaf")
speaker = Speaker(talk.program, print)
speaker.say("still speaking")
assert until(lambda: talk.heard("process"))
"""


def test_the_program_ends_while_something_is_spoken(tmp_path: Path) -> None:
    """Even without closing, a speaker keeps no process from ending, and nothing goes on talking."""
    command = [sys.executable, "-I", "-c", LEAVE, str(TOP), str(tmp_path)]
    subprocess.run(command, check=True, timeout=50)
    (pid,) = Talk(tmp_path).heard("process")
    assert until(partial(gone, int(pid)))
