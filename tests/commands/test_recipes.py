"""``finishing recipes``: what comes with the program, and files of one's own."""

import json
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.cli import main
from finishing_tui.glance.glancing import turned
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.recipe.reader.techniques import read_technique
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
    """Without a size the outline of the first; with one the whole, without the steps that are for other sizes."""
    assert main(["recipes", str(good)]) == 0
    outline = capsys.readouterr().out
    assert "    24  stitches held for one shoulder (shoulder)" in outline
    assert "Bind off (bind off)" in outline
    assert main(["recipes", str(good), "--size", "3"]) == 0
    text = capsys.readouterr().out
    assert "size 3 of 1, 2, 3" in text
    assert "   28  stitches held for one shoulder (shoulder)" in text
    assert "then 65 on the neck needle" in text
    assert "Bind off" not in text


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


class TestWhole:
    """A recipe told from top to bottom for one size."""

    def test_every_step_of_the_size_is_told_in_full(self, capsys: pytest.CaptureFixture[str]) -> None:
        """Each text of each step for that size is there, in order; nothing of a step for another size; no wide line."""
        recipe = read_recipe(shipped.recipe("pouch-pocket"))
        assert main(["recipes", "pouch-pocket", "--size", "S"]) == 0
        out = capsys.readouterr().out
        assert max(map(len, out.splitlines())) <= 78
        flat = " ".join(out.split())
        at = flat.index("STEPS")
        for step in recipe.step:
            if step.for_ and "S" not in step.for_:
                assert step.title not in flat
                continue
            for text in (step.title, step.say, step.how, step.look, step.mend, step.mind):
                told = turned(text, "right")
                assert told in flat[at:], (step.title, told)
            at = flat.index(step.title, at)

    def test_figures_are_those_of_the_size(self, capsys: pytest.CaptureFixture[str]) -> None:
        """The rhythm over the rows of an edge, shaped rounds and even shaping are said as they come out."""
        assert main(["recipes", "crew-neck", "--size", "M"]) == 0
        out = capsys.readouterr().out
        assert "- left front neck: 24 over 32 rows, 3 of every 4, eight times" in out
        assert "then 104 on the neck needle" in out
        assert main(["recipes", "boat-neck", "--size", "2XL"]) == 0
        assert "round 2: decrease 4 two at each point" in capsys.readouterr().out

    def test_left_handed(self, capsys: pytest.CaptureFixture[str]) -> None:
        """The words that turn round are turned, and the edge is walked the other way."""
        orders = []
        for hand in ("right", "left"):
            assert main(["recipes", "crew-neck", "--size", "M", "--hand", hand]) == 0
            out = capsys.readouterr().out
            assert f"armhole edges are at the {hand}-hand end" in " ".join(out.split())
            orders.append(out.index("- left front neck:") < out.index("- right front neck:"))
        assert orders == [True, False]

    @pytest.mark.parametrize("name", shipped.recipes())
    def test_every_recipe_can_be_told(self, name: str, capsys: pytest.CaptureFixture[str]) -> None:
        """In its largest size nothing cannot be done, and no brace of a text that turns round is left."""
        size = read_recipe(shipped.recipe(name)).sizes[-1]
        assert main(["recipes", name, "--size", size]) == 0
        out = capsys.readouterr().out
        assert "cannot be done" not in out
        assert "{" not in out

    def test_what_cannot_be_done_is_said_at_its_step(self, good: Path, capsys: pytest.CaptureFixture[str]) -> None:
        """A recipe with a fault that only shows on paper is told all the same, without figures from there on."""
        good.write_text(good.read_text(encoding="utf-8").replace('live = "shoulder"', "live = 0", 1), encoding="utf-8")
        assert main(["recipes", str(good), "--size", "1"]) == 0
        out = capsys.readouterr().out
        assert "This cannot be done as it is written" in out
        assert "Knit the band" in out


class TestTechnique:
    """How the hands do one thing, at the prompt."""

    def test_they_are_listed(self, capsys: pytest.CaptureFixture[str]) -> None:
        """Without a name every technique is named with its title."""
        assert main(["recipes", "--technique"]) == 0
        out = capsys.readouterr().out
        assert all(name in out for name in shipped.techniques())
        assert main(["recipes", "--technique", "--json"]) == 0
        assert len(json.loads(capsys.readouterr().out)["techniques"]) == len(shipped.techniques())

    @pytest.mark.parametrize("typed", ["grafting", "Grafting in four moves", "GRAFT"])
    def test_one_is_told_with_its_drawing(self, typed: str, capsys: pytest.CaptureFixture[str]) -> None:
        """By its name, its title, or a part that no other has: the drawing, the moves, what is right and what not."""
        shown = read_technique(shipped.techniques()["grafting"])
        assert main(["recipes", "--technique", typed]) == 0
        out = capsys.readouterr().out
        assert shown.lines
        assert all(f"  {line}".rstrip() in out.splitlines() for line in shown.lines)
        for text in (shown.title, shown.about, *shown.moves, shown.look, shown.mend, shown.shows):
            assert text in out

    def test_programs_get_the_same(self, capsys: pytest.CaptureFixture[str]) -> None:
        """With --json its name, its texts, its moves and its drawing."""
        assert main(["recipes", "--technique", "turned-collar", "--json"]) == 0
        told = json.loads(capsys.readouterr().out)
        shown = read_technique(shipped.techniques()["turned-collar"])
        assert (told["name"], told["title"], told["drawing"]) == ("turned-collar", shown.title, shown.drawing)
        assert tuple(told["moves"]) == shown.moves

    @pytest.mark.parametrize(
        ("typed", "told"), [("graftng", "did you mean 'grafting'?"), ("mattress", "mattress-chains"), ("\x1b[1m", "")]
    )
    def test_a_miss_names_what_is_near(self, typed: str, told: str, capsys: pytest.CaptureFixture[str]) -> None:
        """Refused in one sentence with what was perhaps meant, and nothing typed is drawn as it stands."""
        assert main(["recipes", "--technique", typed]) == 2
        error = capsys.readouterr().err
        assert told in error
        assert "\x1b" not in error

    def test_not_with_a_recipe(self, capsys: pytest.CaptureFixture[str]) -> None:
        """The one or the other is asked for."""
        assert main(["recipes", "crew-neck", "--technique", "grafting"]) == 2
        assert "the one or the other" in capsys.readouterr().err
