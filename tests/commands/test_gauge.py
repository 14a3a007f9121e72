"""``finishing gauge`` as a newcomer types it."""

import json
import re
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.cli import main
from finishing_tui.commands.gauge import EXAMPLE
from tests.examples import share


def ask(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Return what the command prints for people."""
    assert main(["gauge", *words]) == 0
    return capsys.readouterr().out


def ask_json(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    """Return what the command answers to a program."""
    found = json.loads(ask(capsys, *words, "--json"))
    assert isinstance(found, dict)
    return found


def test_the_worked_example_is_what_it_answers(capsys: pytest.CaptureFixture[str]) -> None:
    """The answer printed under --help is the answer, line by line."""
    said = ask(capsys, "16 x 24 over 4 in", "--edge", "120 rows")
    shown = EXAMPLE.split('--edge "120 rows"\n')[1].split("\n\n")[0]
    assert said.splitlines() == [line.removeprefix("  ") for line in shown.splitlines()]


def test_the_ratio_of_every_kind_of_edge(capsys: pytest.CaptureFixture[str]) -> None:
    """Without an edge all four kinds are told, each with its unit and its nearest simple rhythms with their error."""
    data = ask_json(capsys, "20 x 28 over 10 cm")
    naturals = {unit: one["natural"] for unit, one in data["edges"].items()}
    assert naturals == {"row": "5/7", "ridge": "10/7", "chain": "10/7", "stitch": "1"}
    assert data["edges"]["row"]["ratios"][:3] == [
        {"pick": 5, "of": 7, "error": "0"},
        {"pick": 3, "of": 4, "error": "1/20"},
        {"pick": 2, "of": 3, "error": "-1/15"},
    ]
    said = ask(capsys, "20 x 28 over 10 cm")
    assert "5 of every 7 rows (exactly right), 3 of every 4 rows (5% too many)" in said
    assert "ridges (two rows each)" in said
    assert "chains (two rows each)" in said


@pytest.mark.parametrize(
    ("typed", "stitches", "ideal"),
    [
        (("20 x 28 over 10 cm", "--edge", "28 rows"), 20, Fraction(20)),
        (("20 x 28 over 10 cm", "--edge", "14 ridges"), 20, Fraction(20)),
        (("20 x 28 over 10 cm", "--edge", "14 chains"), 20, Fraction(20)),
        (("20 x 28 over 10 cm", "--edge", "30 stitches"), 30, Fraction(30)),
        (("20 x 28 over 10 cm", "--edge", "25 cm"), 50, Fraction(50)),
        (("5 sts, 7 rows per inch", "--edge", '9 1/2"'), 48, Fraction(95, 2)),
        (("20 x 28 over 10 cm", "--band", "22 stitches over 10 cm", "--edge", "28 rows"), 22, Fraction(22)),
        (("20 x 28 over 10 cm", "--blocked", "20 x 25 over 10 cm", "--edge", "25 rows"), 20, Fraction(20)),
        (("--edge", "100 rows"), 75, Fraction(75)),
    ],
)
def test_what_an_edge_wants(
    capsys: pytest.CaptureFixture[str], typed: tuple[str, ...], stitches: int, ideal: Fraction
) -> None:
    """Rows, ridges, chains, stitches and lengths, band and blocked gauge: the count and the exact ideal."""
    data = ask_json(capsys, *typed)
    assert data["stitches"] == stitches
    assert Fraction(data["ideal"]) == ideal


def test_a_slope_is_longer_than_its_rows(capsys: pytest.CaptureFixture[str]) -> None:
    """The slope of the design's example: 22 stitches where 28 rows without shaping would want 20."""
    said = ask(capsys, "20 x 28 over 10 cm", "--edge", "1 stitch every 2 rows, 5 times, then 18 rows straight")
    assert "wants 22 stitches (21.58 to be exact; 28 rows without shaping would want 20)" in said


def test_your_own_number_is_judged(capsys: pytest.CaptureFixture[str]) -> None:
    """A number that suits is said to; one that does not is warned of, with the likely mistake of the unit."""
    assert "That suits the edge." in ask(capsys, "20 x 28 over 10 cm", "--edge", "40 rows", "--stitches", "30")
    said = ask(capsys, "20 x 24 over 10 cm", "--edge", "6 ridges", "--stitches", "5")
    assert "50% too few" in said
    assert "a ridge is two rows" in said
    assert "pucker" in ask(capsys, "20 x 28 over 10 cm", "--edge", "25 cm", "--stitches", "40")


def test_rows_unknown_is_worked_to_the_fold(capsys: pytest.CaptureFixture[str]) -> None:
    """Without a count of rows: 3 of every 4, half the stitches at the fold, and a count there."""
    said = ask(capsys, "--edge", "rows", "--stitches", "72")
    assert "pick up 3 of every 4 rows" in said
    assert "At the mark 36 of 72 stitches" in said
    data = ask_json(capsys, "20 x 30 over 10 cm", "--stitches", "71")
    assert (data["pick"], data["of"], data["half"], data["unit"]) == (2, 3, 36, "row")
    assert sum(data["parts"]["stitches"]) == 71


def test_markers_in_any_number_of_parts(capsys: pytest.CaptureFixture[str]) -> None:
    """The parts asked for are made; if none are, no marker is more than 15 stitches away."""
    data = ask_json(capsys, "--edge", "96 rows", "--stitches", "71", "--parts", "4")
    assert data["parts"]["spots"] == [24, 24, 24, 24]
    assert sorted(data["parts"]["stitches"]) == [17, 18, 18, 18]
    assert max(ask_json(capsys, "--edge", "500 rows")["parts"]["stitches"]) <= 15


def test_blocking_is_worked_to_rows(capsys: pytest.CaptureFixture[str]) -> None:
    """A length wanted after blocking is given in rows, with their length on the ruler until then."""
    said = ask(capsys, "26 x 35 over 4 in", "--blocked", "24 x 31 over 4 in", "--edge", "10 in")
    assert "For 10 in after blocking work 78 rows; until then they measure about 8 7/8 in." in said


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (("20x28",), "such as '20 x 28 over 10 cm'"),
        (("20 x 28 over 10",), "10 cm or 4 in"),
        (("0 x 28 over 10 cm",), "more than 0"),
        (("99999 x 28 over 10 cm",), "up to 1000"),
        (("20 stitches over 10 cm", "--edge", "5 rows"), "no rows"),
        (("--band", "20 stitches over 10 cm"), "gauge of the body first"),
        (("--blocked", "20 x 28 over 10 cm"), "gauge of the body first"),
        (("--edge", "25 cm"), "give the gauge"),
        (("--edge", "5 sheep"), "32 rows"),
        (("--edge", "0 rows"), "use 1 or more"),
        (("--edge", "16 held"), "no ratio"),
        (("--edge", "40 rows", "--stitches", "90"), "at most two in each, 80 in all"),
        (("--edge", "40 rows", "--parts", "41"), "cannot be 41"),
        (("--parts", "4"), "say what to mark"),
        (("--stitches", "0"), "out of range"),
        (("--stitches", "many"), "not a whole number"),
        (("20 x 28 over 10000 cm", "--edge", "1 cm"), "too short"),
        (("1000 x 1 over 1 cm",), "at most 100"),
        (("--edge", "rows\x07"), "plain text"),
        (("1,000 x 28 over 10 cm",), "two things"),
    ],
)
def test_bad_input_is_one_clear_sentence(capsys: pytest.CaptureFixture[str], typed: tuple[str, ...], says: str) -> None:
    """Whatever is wrong is said in one sentence with what would be right; the exit status is 2."""
    try:
        status = main(["gauge", *typed])
    except SystemExit as left:  # argparse leaves by itself
        status = int(left.code or 0)
    said = capsys.readouterr()
    assert (status, said.out) == (2, "")
    assert said.err.count("\n") == 1
    assert re.search(says, said.err)


sizes = st.from_regex(r"[0-9]{1,6} (rows|ridges|stitches|cm|in)", fullmatch=True)


@settings(max_examples=share(60))
@given(
    st.text(max_size=30) | st.from_regex(r"[0-9]{1,4} x [0-9]{1,4} over [0-9]{1,5} (cm|in)", fullmatch=True),
    st.text(max_size=30) | sizes,
    st.integers(-1, 100_001),
)
def test_any_typing_is_answered_or_refused(gauge: str, edge: str, stitches: int) -> None:
    """No typed text or number ends in anything but an answer or exit status 2."""
    try:
        assert main(["gauge", f"--edge={edge}", f"--stitches={stitches}", "--", gauge]) in {0, 2}
    except SystemExit as left:
        assert left.code == 2  # noqa: PT017  (argparse leaves so)
