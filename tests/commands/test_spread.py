"""``finishing spread`` answers people and programs alike, and refuses in one sentence."""

import json
import re

import pytest

from finishing_tui.cli import main
from finishing_tui.commands.spread import EXAMPLE


def asked(words: str, capsys: pytest.CaptureFixture[str]) -> dict[str, object]:
    """Return the JSON that a command line answers with."""
    assert main([*words.split(), "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert isinstance(answer, dict)
    return answer


def test_the_json_holds_what_was_asked_and_the_whole_rhythm(capsys: pytest.CaptureFixture[str]) -> None:
    """71 of 88 with both ends picked: 17 skips, and picks in 17 groups of four and one of three."""
    answer = asked("spread 71 88 --ends closed", capsys)
    assert (answer["stitches"], answer["spots"]) == (71, 88)
    assert answer["runs"] == [{"pick": 4, "of": 5, "times": 17}, {"pick": 3, "of": 3, "times": 1}]
    assert answer["text"] == "4 of every 5, 17 times, then each of the last three spots"
    assert (answer["drift"], answer["least_drift"]) == ("17/22", "1/2")
    picked = answer["picked"]
    assert isinstance(picked, list)
    drawing = "".join("x" if spot in picked else "." for spot in range(1, 89))
    assert sorted(map(len, drawing.split("."))) == [3] + [4] * 17
    assert len(picked) == 71


def test_a_doubled_spot_stands_twice(capsys: pytest.CaptureFixture[str]) -> None:
    """Five stitches from four spots: the last one takes two."""
    assert asked("spread 5 4", capsys)["picked"] == [1, 2, 3, 4, 4]


def test_an_even_rhythm_has_the_least_drift(capsys: pytest.CaptureFixture[str]) -> None:
    """Both fractions are the same."""
    answer = asked("spread 31 44 --style even", capsys)
    assert answer["drift"] == answer["least_drift"] == "1/2"


def test_a_very_long_edge_is_listed_only_when_asked(capsys: pytest.CaptureFixture[str]) -> None:
    """Up to 10,000 spots always, beyond that with --picked."""
    for words, length in (("space 5000 10000", 5000), ("space 5001 10001 --picked", 5001)):
        picked = asked(words, capsys)["picked"]
        assert isinstance(picked, list)
        assert len(picked) == length
    assert asked("spread 5001 10001", capsys)["picked"] is None


def test_the_example_in_the_help_is_what_the_command_says(capsys: pytest.CaptureFixture[str]) -> None:
    """The command line shown, run again, prints the lines shown."""
    shown = re.search(r"\$ finishing (.+?)\n(.+?)\n\nWith more", EXAMPLE, re.DOTALL)
    assert shown
    assert main(shown[1].split()) == 0
    printed = [line.strip() for line in capsys.readouterr().out.splitlines()]
    assert printed == [line.strip() for line in shown[2].splitlines()]


def test_for_people_the_ends_and_the_unit_are_named(capsys: pytest.CaptureFixture[str]) -> None:
    """The unit given is the word used; a rhythm that is exactly even is said to be so."""
    assert main(["spread", "12", "12", "--unit", "ridge"]) == 0
    assert "every ridge" in (printed := capsys.readouterr().out)
    assert "Exactly even." in printed
    assert main(["spread", "30", "40", "--ends", "closed", "--unit", "row", "--style", "even"]) == 0
    assert "first and last row picked" in (printed := capsys.readouterr().out)
    assert "nothing is more even" in printed


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("space 100 20", "at most 40"),
        ("space 1 20 --ends closed", "at least 2 stitches"),
    ],
)
def test_what_cannot_be_is_one_sentence_and_status_2(words: str, says: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing on standard output, one line on standard error."""
    assert main(words.split()) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert says in printed.err
    assert printed.err.count("\n") == 1


@pytest.mark.parametrize(
    "words", ["space 0 20", "space -3 20", "space 3 100001", "space 3.5 20", "space 3", "space x 9"]
)
def test_numbers_out_of_range_are_refused_with_the_range(words: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 2 and one sentence, never a traceback."""
    with pytest.raises(SystemExit) as refused:
        main(words.split())
    assert refused.value.code == 2
    assert capsys.readouterr().err.count("\n") == 1
