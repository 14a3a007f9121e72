"""``finishing pair`` as a newcomer types it."""

import pytest

from tests.commands.prompt import ask, ask_json, help_of, refused


def test_the_worked_example_is_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    """What the help shows is what the command says, with both ways to choose from."""
    said = ask(capsys, "pair", "24", "27")
    assert said in " ".join(help_of(capsys, "pair").split())
    assert "take two together" in said
    assert "make 3 on the front needle" in said


def test_programs_get_the_pairs(capsys: pytest.CaptureFixture[str]) -> None:
    """The keys of the format; equal needles have nothing extra."""
    found = ask_json(capsys, "pair", "24", "27")
    assert (found["pairs"], found["extra_on"], found["double_at"]) == (24, "back", [4, 12, 20])
    equal = ask_json(capsys, "pair", "24", "24")
    assert (equal["pairs"], equal["extra_on"], equal["double_at"]) == (24, None, [])


def test_edges_sewn_together(capsys: pytest.CaptureFixture[str]) -> None:
    """Rows to rows and stitches to rows."""
    assert ask_json(capsys, "pair", "83", "80", "--rows")["extra_on"] == "front"
    assert ask_json(capsys, "pair", "5", "7", "--stitches-to-rows")["taken"] == [1, 2, 1, 1, 2]
    assert "two bars" in ask(capsys, "pair", "80", "83", "--rows")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("24",), "required: back"),
        (("4", "90"), "count both needles again"),
        (("4", "90", "--rows"), "measure both edges"),
        (("4", "90", "--stitches-to-rows"), "measure both edges"),
        (("-4", "9"), "use 1 or more"),
    ],
)
def test_refusals(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str) -> None:
    """One sentence, exit status 2."""
    assert says in refused(capsys, "pair", *words)
