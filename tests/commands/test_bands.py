"""``finishing rib``, ``corner``, ``shoulder``, ``gap`` and ``head`` as a newcomer types them."""

import pytest

from tests.commands.prompt import ask, ask_json, help_of, refused


@pytest.mark.parametrize(
    "words",
    [
        ("rib", "k2p2", "169", "--round"),
        ("corner", "30", "32", "--rounds", "4", "--every", "2"),
        ("shoulder", "16", "--steps", "3"),
        ("shoulder", "103", "--each", "10", "--rows", "6"),
    ],
)
def test_the_worked_example_is_the_answer(capsys: pytest.CaptureFixture[str], words: tuple[str, ...]) -> None:
    """What the help shows is what the command says."""
    said = ask(capsys, *words)
    assert said in " ".join(help_of(capsys, words[0]).split())


@pytest.mark.parametrize("words", [("gap", "5", "5"), ("head", "104", "--gauge", "22", "--wearer", "woman")])
def test_the_worked_example_begins_the_answer(capsys: pytest.CaptureFixture[str], words: tuple[str, ...]) -> None:
    """Where the help breaks off with dots, it is what the command begins with."""
    said = ask(capsys, *words)
    shown = " ".join(help_of(capsys, words[0]).split())
    assert said[:70] in shown
    assert "..." in shown


def test_a_rib_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    """Whether it fits, the nearest numbers, and where the rib stands."""
    found = ask_json(capsys, "rib", "k2p2", "169", "--round")
    assert (found["fits"], found["nearest"], found["repeat"]) == (False, [168, 172], "4m")
    centred = ask_json(capsys, "rib", "k2p2", "100", "--round", "--middle", "50")
    assert (centred["middle"], centred["row"]) == ("knit", "p1, (k2, p2) 24 times, k2, p1")
    parts = ask_json(capsys, "rib", "k1p1", "18", "15", "18", "11", "24", "12", "--round", "--printed", "97")
    assert parts["total"] == 98
    assert "prints 97, which is 1 too few" in parts["text"]


def test_a_flat_rib_that_keeps_its_count(capsys: pytest.CaptureFixture[str]) -> None:
    """Both ways out are offered; where no rib can be centred only the one."""
    assert "Or keep the count" in ask(capsys, "rib", "k2p2", "60")
    assert ask_json(capsys, "rib", "k2p2", "60")["edges_mirror"] is False
    assert "keep" not in ask(capsys, "rib", "k2p2", "61")


def test_a_seamed_rib(capsys: pytest.CaptureFixture[str]) -> None:
    """Each seam has its own numbers, and says what the pieces must begin with."""
    assert ask_json(capsys, "rib", "k2p2", "62", "--seam", "full")["fits"] is True
    half = ask_json(capsys, "rib", "k2p2", "63", "--seam", "half")
    assert half["repeat"] == "4m + 1"
    assert "each takes 4m + 3" in half["text"]
    assert "begins with the same stitch" in ask(capsys, "rib", "k3p2", "61", "--seam", "half")


def test_corners_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    """The count after each round."""
    assert ask_json(capsys, "corner", "31", "--rounds", "3")["counts"] == [29, 27, 25]
    out = ask_json(capsys, "corner", "100", "--rounds", "4", "--outside", "--corners", "4")
    assert (out["counts"], out["shaped"]) == ([108, 108, 116, 116], [1, 3])


def test_shoulders_gaps_and_heads_for_programs(capsys: pytest.CaptureFixture[str]) -> None:
    """Their numbers under names of their own."""
    assert ask_json(capsys, "shoulder", "16", "--steps", "3")["steps"] == [5, 5, 6]
    assert ask_json(capsys, "shoulder", "103", "--each", "10", "--rows", "6")["live"] == 30
    assert ask_json(capsys, "gap", "5", "5")["picked"] == [6, 6]
    assert ask_json(capsys, "gap", "10", "10", "--graft")["picked"] == [12, 12]
    tight = ask_json(capsys, "head", "70", "--gauge", "22", "--size", "50.1 cm", "--stretch", "5/4")
    assert (tight["goes"], tight["head_cm"]) == (False, "501/10")
    assert ask_json(capsys, "head", "84", "--gauge", "22", "--wearer", "6 years")["head_cm"] == "53"
    usual = ask_json(capsys, "head", "115", "--gauge", "100", "--wearer", "man")
    assert (usual["relaxed_cm"], usual["stretched_cm"]) == ("23/2", "16")  # as the help says: 11.5 to 16


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("rib", "2x2", "60"), "write it as k2p2"),
        (("rib", "k2p2", "0"), "use 1 or more"),
        (("rib", "k2p2", "60", "--middle", "3"), "add --round"),
        (("rib", "k2p2", "61", "--round", "--middle", "3"), "1 fewer (60)"),
        (("rib", "k2p2", "60", "--seam", "third"), "invalid choice"),
        (("corner", "1", "2", "3", "--rounds", "2"), "3 were given"),
        (("corner", "30", "31", "--rounds", "2"), "both sides of the center stitch"),
        (("corner", "30", "32", "--rounds", "2", "--outside"), "leave --outside"),
        (("corner", "5", "--rounds", "9"), "up to 2 times"),
        (("shoulder", "9"), "Give --steps"),
        (("shoulder", "9", "--steps", "3", "--rows", "4"), "Give --steps"),
        (("shoulder", "9", "--steps", "10"), "9 steps at most"),
        (("gap", "10", "11", "--graft"), "same number"),
        (("gap", "10", "--graft"), "give two counts"),
        (("head", "70", "--gauge", "x", "--wearer", "man"), "not a number"),
        (("head", "70", "--gauge", "22", "--wearer", "dog"), "say an age"),
        (("head", "70", "--gauge", "22"), "required"),
        (("head", "100000", "--gauge", "1", "--wearer", "man"), "up to 10000 cm"),
        (("head", "70", "--gauge", "22", "--wearer", "man", "--stretch", "9"), "stretch must be"),
    ],
)
def test_refusals(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str) -> None:
    """One sentence, exit status 2."""
    assert says in refused(capsys, *words)
