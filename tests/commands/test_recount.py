"""``finishing recount`` answers people and programs alike, from whatever is known."""

import json
import re

import pytest

from finishing_tui.cli import main
from finishing_tui.commands.recount import EXAMPLE


def asked(words: str, capsys: pytest.CaptureFixture[str]) -> dict[str, object]:
    """Return the JSON that a command line answers with."""
    assert main([*words.split(), "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert isinstance(answer, dict)
    return answer


def test_the_json_says_what_is_left_how_it_lies_and_where_to_rip_back_to(capsys: pytest.CaptureFixture[str]) -> None:
    """33 of 71 half way along 88: worked out by hand from the plan's own 71/88."""
    answer = asked("recount 71 88 --at 44 --counted 33", capsys)
    assert answer["left"] == {"stitches": 38, "spots": 44}
    assert answer["off"] == "5/2"  # 38 - 71/88 * 44
    assert answer["change"] == "5/71"  # over 71/88 * 44 = 35.5
    assert answer["verdict"] == "just shows"
    assert answer["rip_back_to"] == {"spot": 38, "loops": 29}
    assert answer["runs"] == [{"pick": 6, "of": 7, "times": 4}, {"pick": 7, "of": 8, "times": 2}]
    picked = answer["picked"]
    assert isinstance(picked, list)
    assert (len(picked), picked[0], picked[-1]) == (38, 1, 43)


def test_the_same_place_can_be_said_in_three_ways(capsys: pytest.CaptureFixture[str]) -> None:
    """From the start, from the end, and by the fold mark."""
    first, *others = [
        asked(f"recount 71 88 {where} --counted 36", capsys) for where in ("--at 44", "--left 44", "--half")
    ]
    assert others == [first, first]
    assert first["verdict"] == "lies flat"
    assert first["rip_back_to"] is None


def test_half_way_with_only_a_rhythm(capsys: pytest.CaptureFixture[str]) -> None:
    """36 loops at 2 of every 3 stand for 54 rows; as many are left, give or take three, and no one verdict holds."""
    answer = asked("recount 75 --half --counted 36 --rhythm 2/3", capsys)
    assert answer["left"] == {"stitches": 39, "spots": 54}
    assert (answer["off"], answer["change"], answer["verdict"]) == ("3", "1/12", None)
    assert answer["spots_sure"] is False


def test_half_way_with_nothing_but_the_count(capsys: pytest.CaptureFixture[str]) -> None:
    """The first half is the measure: no spots, so no rhythm spot by spot."""
    answer = asked("recount 75 --half --counted 36", capsys)
    assert answer["left"] == {"stitches": 39, "spots": None}
    assert (answer["off"], answer["verdict"], answer["runs"], answer["picked"]) == ("3", "just shows", None, None)


def test_a_confirmed_count_limits_how_far_to_rip_back(capsys: pytest.CaptureFixture[str]) -> None:
    """What was counted right at spot 40 need not come out."""
    answer = asked("recount 75 100 --at 60 --counted 38 --confirmed 30 40", capsys)
    assert answer["verdict"] == "will flare"
    assert answer["rip_back_to"] == {"spot": 45, "loops": 32}


def test_hopeless(capsys: pytest.CaptureFixture[str]) -> None:
    """More counted than wanted: no rhythm, and the first round named as a way out."""
    answer = asked("recount 24 32 --at 16 --counted 30", capsys)
    assert (answer["verdict"], answer["runs"], answer["picked"]) == ("cannot be", [], [])
    assert "evenly in the first row or round" in str(answer["text"])


def test_the_example_in_the_help_is_what_the_command_says(capsys: pytest.CaptureFixture[str]) -> None:
    """The command line shown, run again, prints the lines shown."""
    shown = re.search(r"\$ finishing (.+?)\n(.+?)\n\nIf you don't know", EXAMPLE, re.DOTALL)
    assert shown
    assert main(shown[1].split()) == 0
    printed = [line.strip() for line in capsys.readouterr().out.splitlines()]
    assert printed == [line.strip() for line in shown[2].splitlines()]


def test_worked_out_rows_are_said_to_be_so(capsys: pytest.CaptureFixture[str]) -> None:
    """Give or take three where the half was found by folding, and what to do then."""
    assert main(["recount", "75", "--half", "--counted", "36", "--rhythm", "2/3", "--unit", "row"]) == 0
    assert "108 rows in all, give or take three" in capsys.readouterr().out
    assert main(["recount", "75", "--half", "--counted", "36"]) == 0
    assert "at halfway: 39 to pick in the second half" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("recount 71 88 --counted 33", "the spots left, or that it is halfway"),
        ("recount 71 --at 44 --counted 33", "such as 2/3"),
        ("recount 71 88 --at 89 --counted 33", "from 0 to 88"),
        ("recount 71 --half --counted 0", "nothing is counted"),
    ],
)
def test_what_cannot_be_told_is_one_sentence_and_status_2(
    words: str, says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing on standard output, one line on standard error."""
    assert main(words.split()) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert says in printed.err
    assert printed.err.count("\n") == 1


@pytest.mark.parametrize("rhythm", ["0/3", "3", "7/3", "-1/2", "two/3", "1/0"])
def test_a_rhythm_that_is_none_is_refused(rhythm: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 2 and one sentence."""
    with pytest.raises(SystemExit) as refused:
        main(["recount", "71", "--half", "--counted", "33", f"--rhythm={rhythm}"])
    assert refused.value.code == 2
    assert capsys.readouterr().err.count("\n") == 1


@pytest.mark.parametrize("confirmed", [("10", "50"), ("40", "20"), ("80", "10")])
def test_a_count_before_that_contradicts_this_one_is_refused(
    capsys: pytest.CaptureFixture[str], confirmed: tuple[str, str]
) -> None:
    """A last count beyond this spot, or with more loops than there are now, cannot be: one sentence, status 2."""
    assert main(["recount", "71", "88", "--at", "44", "--counted", "33", "--confirmed", *confirmed]) == 2
    assert "does not lie before this one" in capsys.readouterr().err
