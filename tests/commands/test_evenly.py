"""``finishing evenly`` as a newcomer types it."""

import pytest

from tests.commands.prompt import ask, ask_json, help_of, refused
from tests.craft.row_reader import worked


def test_the_worked_example_is_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    """What the help shows is what the command says."""
    said = ask(capsys, "evenly", "80", "70", "--flat")
    assert "k3, k2tog, (k6, k2tog) 9 times, k3" in said
    assert "70 stitches are left" in said
    shown = " ".join(help_of(capsys, "evenly").split())
    assert said in shown


def test_programs_get_the_row_and_its_gaps(capsys: pytest.CaptureFixture[str]) -> None:
    """The keys of the format, and a text that works out."""
    found = ask_json(capsys, "evenly", "51", "55", "--round")
    assert (found["before"], found["after"], found["plain"]) == (51, 55, [13, 13, 13, 12])
    assert worked(found["text"]) == (51, 55)
    flat = ask_json(capsys, "evenly", "80", "70")
    assert flat["plain"] == [3, *[6] * 9, 3]
    assert flat["flat"] is True


def test_every_option(capsys: pytest.CaptureFixture[str]) -> None:
    """Method, margin, double and the left hand reach the sum."""
    assert ask_json(capsys, "evenly", "48", "60", "--method", "KFB")["method"] == "kfb"
    assert ask_json(capsys, "evenly", "80", "70", "--margin", "8")["plain"][0] == 8
    assert ask_json(capsys, "evenly", "80", "70", "--left-handed")["shapings"] == ["ssk"] * 10
    doubled = ask_json(capsys, "evenly", "20", "9", "--method", "ssk", "--double")["shapings"]
    assert set(doubled) == {"ssk", "sssk"}


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("80",), "required: after"),
        (("eighty", "70"), "'eighty' is not a whole number: use 1 or more"),
        (("80", "7.5"), "'7.5' is not a whole number"),
        (("0", "5"), "0 is out of range: use 1 or more"),
        (("80", "999999999999999999999"), "is not a whole number"),
        (("80", "70", "--flat", "--round"), "not allowed with"),
        (("80", "70", "--method", "k2tgo"), "try k2tog"),
        (("20", "8", "--method", "k2tog"), "9 times at most"),
        (("80", "70", "--round", "--margin", "3"), "no margins"),
        (("80", "70", "--margin", "40"), "too few to shape"),
    ],
)
def test_refusals(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str) -> None:
    """One sentence, exit status 2."""
    assert says in refused(capsys, "evenly", *words)
