"""``finishing share`` as a newcomer types it."""

import json
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.cli import main
from finishing_tui.commands.share import EXAMPLE
from tests.examples import share


def ask(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Return what the command prints for people."""
    assert main(["share", *words]) == 0
    return capsys.readouterr().out


def ask_json(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    """Return what the command answers to a program."""
    found = json.loads(ask(capsys, *words, "--json"))
    assert isinstance(found, dict)
    return found


def refused(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Return the one sentence of a refusal; its exit status is 2 and nothing is printed as an answer."""
    try:
        status = main(["share", *words])
    except SystemExit as left:  # argparse leaves by itself
        status = int(left.code or 0)
    said = capsys.readouterr()
    assert (status, said.out) == (2, "")
    assert said.err.count("\n") == 1
    return said.err


NECK = ("left front: 33 rows", "front: 16 held", "right front: 33 rows, mirrors left front", "back neck: 40 held")


def test_the_worked_example_is_what_it_answers(capsys: pytest.CaptureFixture[str]) -> None:
    """The answer printed under --help is the answer, line by line."""
    said = ask(capsys, *NECK, "--gauge", "20 x 28 over 10 cm", "--repeat", "4m")
    shown = EXAMPLE.split("--repeat 4m\n")[1]
    assert said.splitlines() == [line.removeprefix("  ") for line in shown.splitlines()]


def test_the_json_has_the_same_counts(capsys: pytest.CaptureFixture[str]) -> None:
    """The counts add up to the total, in walking order, with the ideals as exact fractions."""
    data = ask_json(capsys, *NECK, "--gauge", "20 x 28 over 10 cm", "--repeat", "4m")
    assert [one["stitches"] for one in data["sections"]] == [24, 16, 24, 40]
    assert data["total"] == 104
    assert data["repeat"] == {"of": 4, "plus": 0}
    assert data["sections"][0]["ideal"] == "165/7"
    assert data["ideal_total"] == "722/7"
    assert data["warnings"] == []


@pytest.mark.parametrize(
    ("typed", "counts"),
    [
        (("10", "20", "10", "--total", "41"), [10, 21, 10]),
        (("a: 10.5", "b: 21", "c: 10,5 mirrors a", "--total", "43"), [11, 21, 11]),
        (("a: 10", "b: 10, at most 8", "--total", "20"), [12, 8]),
        (("a: 10", "b: 10, at least 12", "--total", "20"), [8, 12]),
        (("a: 12 stitches", "b: 20 ridges", "corner: 1 extra loop"), [12, 20, 1]),
        (("a: 25 cm", "b: 10 in", "--gauge", "20 x 28 over 10 cm"), [50, 51]),
        (("a: 28 rows", "--gauge", "20 x 28 over 10 cm", "--band", "22 stitches over 10 cm"), [22]),
        (("side: 1 stitch every 2 rows, 5 times, then 18 rows straight, at most 21",
          "--gauge", "20 x 28 over 10 cm"), [21]),
        (("a: 9", "b: 9", "--repeat", "4m+2"), [9, 9]),
        (("a: 9", "b: 9", "--repeat", "4M + 2"), [9, 9]),
        (("a: 9", "b: 10", "--repeat", "4"), [9, 11]),
    ],
)  # fmt: skip
def test_what_a_newcomer_types(capsys: pytest.CaptureFixture[str], typed: tuple[str, ...], counts: list[int]) -> None:
    """Ideals, limits, mirrors, every unit, lengths and slopes give the right counts."""
    assert [one["stitches"] for one in ask_json(capsys, *typed)["sections"]] == counts


def test_a_doubtful_count_is_pointed_out(capsys: pytest.CaptureFixture[str]) -> None:
    """A total far from the natural ratio is shared all the same, with a warning that names the section."""
    said = ask(capsys, "front: 40 rows", "--gauge", "20 x 28 over 10 cm", "--total", "20")
    assert "Look again at front: 20 stitches over 40 rows is 30% too few" in said
    data = ask_json(capsys, "front: 25 cm", "--gauge", "20 x 28 over 10 cm", "--total", "60")
    assert len(data["warnings"]) == 1


def test_a_missing_gauge_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    """Without a gauge the answer says that 3 of every 4 rows was taken."""
    assert "No gauge was given" in ask(capsys, "a: 40 rows")
    assert "No gauge was given" not in ask(capsys, "a: 40")


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (("a: 20 rows", "b: 20 rows, mirrors a", "--total", "31"), "30 and 32"),
        (("a: 33 held", "b: 5", "c: 5 mirrors b", "--repeat", "4m"), "every total is odd"),
        (("a: 5", "b: 5 mirrors c"), "no such section"),
        (("left: 5", "b: 5 mirrors lift"), "is it left"),
        (("a: 5", "a: 5", "b: 5 mirrors a"), "2 sections have that name"),
        (("a: 5 sheep",), "cannot be read|can be read"),
        (("a:",), "can be read"),
        ((": 5",), "1 to 60 characters"),
        ((f"{'a' * 61}: 5",), "1 to 60 characters"),
        (("a" * 501,), "500 characters"),
        (("a: 5\x1b[31m",), "plain text"),
        (("a: 25 cm",), "give the gauge"),
        (("a: 5", "--band", "20 stitches over 10 cm"), "--gauge"),
        (("a: 5", "--gauge", "20x28"), "not a gauge"),
        (("a: 5", "--repeat", "m4"), "4m"),
        (("a: 5", "--repeat", "0m"), "1 to 1000"),
        (("a: 5", "--total", "0"), "out of range"),
        (("a: 5", "--total", "99999999999999"), "not a whole number"),
        (("a: 16 held, at most 3",), "fixed"),
        (("a: 33 rows, at least 30, at most 20",), "at least 30 and at most 20, which no count is"),
        (("a: 33 rows, at least 80",), "its edge holds 66 at most, two in every spot"),
        (("a: 33 rows, at most 999999",), "at most 999,999: use up to 100,000"),
        (("a: 33 rows, at most 80", "--total", "70"), "the nearest total that can be met is 66"),
        (("a: 999999 rows",), "1 to 100,000"),
        (("5",) * 101, "1 to 100"),
        ((), "required"),
    ],
)
def test_bad_input_is_one_clear_sentence(capsys: pytest.CaptureFixture[str], typed: tuple[str, ...], says: str) -> None:
    """Whatever is wrong is said in one sentence with what would be right; the exit status is 2."""
    assert re.search(says, refused(capsys, *typed))


@settings(max_examples=share(60))
@given(st.lists(st.text(max_size=30) | st.from_regex(r"[a-c]: [0-9]{1,6} (rows|held|cm|mirrors a)", fullmatch=True)))
def test_any_typing_is_answered_or_refused(typed: list[str]) -> None:
    """No typed text ends in anything but an answer or exit status 2."""
    try:
        assert main(["share", "--", *typed]) in {0, 2}
    except SystemExit as left:
        assert left.code == 2  # noqa: PT017  (argparse leaves so)
