"""``finishing yarn`` as a newcomer types it."""

import pytest

from tests.commands.prompt import ask, ask_json, help_of, refused


def test_the_worked_example_is_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    """What the help shows is what the command says, quoted or not."""
    said = ask(capsys, "yarn", "bind-off", "60", "cm")
    assert said in " ".join(help_of(capsys, "yarn").split())
    assert said == ask(capsys, "yarn", "bind off", "60 cm") == ask(capsys, "yarn", "bind", "off", "60cm")


def test_an_operation_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    """Lengths in cm as exact numbers, and a verdict where the yarn in hand is given."""
    found = ask_json(capsys, "yarn", "mattress", "seam", "10", "in", "--have", "200 cm")
    assert (found["operation"], found["usual_cm"], found["verdict"]) == ("mattress seam", "381/5", "enough")


def test_weights(capsys: pytest.CaptureFixture[str]) -> None:
    """80 g left of 113 g and 384 m; 27 g, half a round, 24 g."""
    assert "about 272 m" in ask(capsys, "yarn", "weight", "80g", "--ball", "113", "--metres", "384")
    assert ask_json(capsys, "yarn", "weight", "80", "--ball", "113", "--metres", "384")["metres"] == "30720/113"
    found = ask_json(capsys, "yarn", "rounds", "27", "24", "--between", "1/2")
    assert (found["grams_per_round"], found["grams_to_bind_off"], found["rounds"]) == ("6", "8", 2)


def test_a_thin_rest_holds_a_little(capsys: pytest.CaptureFixture[str]) -> None:
    """Below ten metres a tenth of one still counts."""
    assert "about 3.4 m" in ask(capsys, "yarn", "weight", "1", "--ball", "113", "--metres", "384")


def test_tails(capsys: pytest.CaptureFixture[str]) -> None:
    """Both lengths, in both units."""
    said = ask(capsys, "yarn", "tail")
    assert "15 cm (about 6 in)" in said
    assert "30 cm to 45 cm (12 to 18 in)" in said


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((), "required"),
        (("bind-off",), "How wide is the edge"),
        (("bind-off", "60"), "10 cm or 4 in"),
        (("knotting", "60 cm"), "use bind-off"),
        (("knotting",), "use bind-off"),
        (("bind-off", "9000 cm"), "too long"),
        (("bind-off", "60 cm", "--ball", "50"), "no meaning"),
        (("bind-off", "60 cm", "--have", "much"), "not a length"),
        (("weight", "80"), "give --ball GRAMS and --metres M"),
        (("weight",), "takes one weight"),
        (("weight", "x", "--ball", "50", "--metres", "100"), "not a number"),
        (("weight", "50", "--ball", "0", "--metres", "100"), "more than 0"),
        (("rounds", "27"), "takes two weighings"),
        (("rounds", "24", "27"), "must be less than the first"),
        (("rounds", "27", "24", "--between", "0"), "more than 0"),
        (("tail", "5"), "takes nothing more"),
    ],
)
def test_refusals(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str) -> None:
    """One sentence, exit status 2."""
    assert says in refused(capsys, "yarn", *words)
