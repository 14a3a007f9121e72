"""``finishing recipes``: what comes with the program, and files of one's own."""

import json
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.cli import main
from tests.recipe.reader.good import GOOD


@pytest.fixture
def good(tmp_path: Path) -> Path:
    """Return a recipe file without mistakes."""
    path = tmp_path / "good.toml"
    path.write_text(GOOD, encoding="utf-8")
    return path


def test_all_shipped_recipes_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    """Without a file, each is named with its title, sizes and steps, and all of them can be read."""
    assert main(["recipes", "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)["recipes"]
    assert [recipe["name"] for recipe in listed] == list(shipped.recipes())
    assert main(["recipes"]) == 0
    text = capsys.readouterr().out
    assert all(recipe["title"] in text for recipe in listed)


def test_a_file_is_told_in_outline_for_one_size(good: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The numbers of that size, what the places hold, and its steps: not those for other sizes."""
    assert main(["recipes", str(good), "--size", "3"]) == 0
    text = capsys.readouterr().out
    assert "size 3 of 1, 2, 3" in text
    assert "    28  stitches held for one shoulder (shoulder)" in text
    assert "then 65 on the neck needle" in text
    assert "Bind off" not in text
    assert main(["recipes", str(good)]) == 0
    assert "Bind off (bind off)" in capsys.readouterr().out


def test_programs_get_the_same(good: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With --json one object by file: title, sizes, steps and the numbers of the size."""
    assert main(["recipes", str(good), "--size", "2", "--json"]) == 0
    (told,) = json.loads(capsys.readouterr().out).values()
    assert told["size"] == "2"
    assert told["numbers"] == {"shoulder": 26, "front_rows": 32, "side": 24, "band": 65}
    assert told["steps"][1] == {"do": "join", "title": "Join the left shoulder"}


def test_every_mistake_of_every_file_is_told(good: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Bad files are told whole, on standard error, with exit status 2, and nothing is printed as an answer."""
    bad = tmp_path / "bad.toml"
    bad.write_text(GOOD.replace("[24, 26, 28]", "[24]").replace("extra = 1", "extra = -1"), encoding="utf-8")
    assert main(["recipes", str(bad), str(good), str(tmp_path / "none.toml")]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.count("bad.toml:") == 2
    assert "none.toml: there is no such file" in told.err


def test_a_size_that_is_not_there(good: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Another size is answered with those there are."""
    assert main(["recipes", str(good), "--size", "XL"]) == 2
    assert "has no size 'XL'; its sizes are 1, 2, 3" in capsys.readouterr().err


class TestHeld:
    """The size found from the stitches that are held."""

    def test_the_worked_example(self, capsys: pytest.CaptureFixture[str]) -> None:
        """What the help shows is what the command says."""
        assert main(["recipes", "crew-neck", "--held", "left_front=20", "--held", "front_held=16"]) == 0
        assert capsys.readouterr().out == "Size M fits exactly.\n"

    @pytest.mark.parametrize("typed", ["back", "back=", "back=x", "nowhere=3", "back=1_0", "back=9999999"])
    def test_what_cannot_be_read_is_refused(self, capsys: pytest.CaptureFixture[str], typed: str) -> None:
        """In one sentence, with exit status 2."""
        assert main(["recipes", "crew-neck", "--held", typed]) == 2
        assert capsys.readouterr().err.count("\n") == 1

    def test_the_nearest_and_why(self, capsys: pytest.CaptureFixture[str]) -> None:
        """With one stitch missing the nearest size is named, with the place that differs."""
        assert main(["recipes", "crew-neck", "--held", "left_front=20", "--held", "front_held=15"]) == 0
        assert "The nearest is M: front_held holds 15, size M has 16." in capsys.readouterr().out
