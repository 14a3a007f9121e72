"""``finishing buttonholes`` as a newcomer types it."""

import pytest

from tests.commands.prompt import ask, ask_json, help_of, refused

HUNDRED = ("buttonholes", "100", "--holes", "7", "--width", "4", "--first", "3", "--last", "3")


def test_the_worked_example_is_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    """What the help shows is what the command says, with the convention stated."""
    said = ask(capsys, *HUNDRED)
    assert said in " ".join(help_of(capsys, "buttonholes").split())
    assert "not counted" in said


def test_programs_get_gaps_and_starts(capsys: pytest.CaptureFixture[str]) -> None:
    """The keys of the format, starts counted from 1; margins are 3 and alike where nothing is said."""
    found = ask_json(capsys, *HUNDRED)
    assert found["gaps"] == [11] * 6
    assert found["starts"] == [4, 19, 34, 49, 64, 79, 94]
    assert ask_json(capsys, "buttonholes", "100", "--holes", "7", "--width", "4") == found


def test_one_hole_leaves_one_answer(capsys: pytest.CaptureFixture[str]) -> None:
    """20 stitches, 3 before a hole of 2: 15 are after it, and nobody has to work that out."""
    found = ask_json(capsys, "buttonholes", "20", "--holes", "1", "--width", "2", "--first", "3")
    assert (found["last"], found["gaps"], found["starts"]) == (15, [], [4])


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("100",), "required: --holes, --width"),
        (("20", "--holes", "9", "--width", "9"), "95 at least"),
        (("20", "--holes", "0", "--width", "2"), "use 1 to 1,000"),
        (("20", "--holes", "1", "--width", "2", "--last", "3"), "not 3"),
        (("5", "--holes", "1", "--width", "2"), "6 at least"),
    ],
)
def test_refusals(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str) -> None:
    """One sentence, exit status 2."""
    assert says in refused(capsys, "buttonholes", *words)
