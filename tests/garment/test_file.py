"""``garment.toml``: what is wrong with it is said with file, line and key, all at once; nothing in it is trusted."""

from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.file import BadGarment, plan_of, read_garment
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.sources import recipe_path
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import BadRecipe, read_text, read_with_text
from tests.garment.folders import garment_in
from tests.garment.recipes import EDGE, NECKBAND


def told(folder: Path) -> str:
    """Return what is said of a garment that cannot be begun."""
    with pytest.raises(FinishingError) as refused:
        plan_of(folder)
    return str(refused.value)


def rewritten(folder: Path, *changes: tuple[str, str]) -> Path:
    """Return the folder with texts of its garment file replaced."""
    path = folder / "garment.toml"
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")
    return folder


def test_a_garment_becomes_a_plan(tmp_path: Path) -> None:
    """Its words, numbers, gauge and hand, and both texts just as they stand."""
    more = (
        'hand = "left"\nyarn = "grey wool"\nneedles = "3.5 mm"\nnotes = "mind the [left] side"\n[number]\nrows = 15\n'
        '[gauge]\nstitches = 21\nrows = 30\nover = "10 cm"'
    )
    plan = plan_of(garment_in(tmp_path, NECKBAND, "large", more=more))
    assert (plan.title, plan.size, plan.hand, plan.yarn, plan.needles) == (
        "grey pullover",
        "large",
        "left",
        "grey wool",
        "3.5 mm",
    )
    assert (plan.numbers()["rows"], plan.numbers()["side"]) == (15, 12)
    assert plan.gauge is not None
    assert plan.gauge.rows == 30
    assert plan.text == NECKBAND
    assert plan.file_text == (tmp_path / "garment.toml").read_text(encoding="utf-8")
    assert plan.notes == "mind the [left] side"


def test_everything_wrong_is_told_at_once_with_its_line(tmp_path: Path) -> None:
    """A key too many with the one that was meant, a wrong word, a number in quotes: three lines, three sentences."""
    folder = garment_in(tmp_path, NECKBAND, more='yran = "grey"\nhand = "middle"\n[number]\nrows = "15"')
    said = told(folder)
    assert "garment.toml:6" in said
    assert "'yarn'" in said
    assert ":7" in said
    assert ":9" in said
    assert "a whole number is wanted" in said
    assert len(said.splitlines()) == 3


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("[number]\nrow = 15", "rows"),
        ("[number]\nrows = 100001", "no count is above 100,000"),
        ("[number]\nrows = -1", "-1 is too few"),
        ('yarn = "\\u001b[2J"', "yarn"),
        ('yarn = "\\u202e"', "yarn"),
        ('title = "twice"', "second time"),
        ("yarn = 3", "text in quotes is wanted"),
        ("gauge = 3", "gauge"),
    ],
)
def test_what_cannot_be_is_told_with_what_would_be_right(more: str, words: str, tmp_path: Path) -> None:
    """An unknown number, one out of range, text that could move a cursor, a key given twice, another type."""
    said = told(garment_in(tmp_path, NECKBAND, more=more))
    assert words in said
    assert "garment.toml:" in said
    assert said.isprintable() or "\n" in said
    assert "\x1b" not in said


def test_the_size_must_be_one_of_the_recipe(tmp_path: Path) -> None:
    """Those there are are named."""
    said = told(garment_in(tmp_path, NECKBAND, "medium"))
    assert "small, large" in said
    assert "garment.toml:5" in said


def test_every_place_can_begin(tmp_path: Path) -> None:
    """A number of the knitter's that a place cannot begin with is told with what it comes to."""
    text = UNPRINTED.replace('live = "held"', 'live = "held - 2"').replace("the stitches", "stitches")
    folder = garment_in(tmp_path, text, "m", more="[number]\nheld = 1")
    assert "held - 2 comes to -1; a count is 0 or more" in told(folder)


def test_the_text_that_is_kept_is_the_one_that_was_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The recipe is saved anew while it is read: the recipe and its text are still one another's."""
    folder = garment_in(tmp_path, NECKBAND)
    corrected = NECKBAND.replace("rounds  = 3", "rounds  = 5")
    assert corrected != NECKBAND

    def read_and_save(path: Path) -> tuple[Recipe, str]:
        read = read_with_text(path)
        path.write_text(corrected, encoding="utf-8")
        return read

    monkeypatch.setattr("finishing_tui.garment.file.read_with_text", read_and_save)
    plan = plan_of(folder)
    assert (plan.text, read_text(plan.text, "x")) == (NECKBAND, plan.recipe)


def test_a_later_format_is_named(tmp_path: Path) -> None:
    """And nothing else is complained about."""
    folder = rewritten(garment_in(tmp_path, NECKBAND, more="colour = 3"), ("format = 1", "format = 3"))
    assert "format 3" in told(folder)
    assert len(told(folder).splitlines()) == 1


def test_who_will_wear_it_came_with_format_2(tmp_path: Path) -> None:
    """A wearer in a file of format 1, and one that nobody knows, are told on their line."""
    folder = garment_in(tmp_path, NECKBAND, more='wearer = "child"')
    assert "'wearer' needs format = 2" in told(folder)
    assert plan_of(rewritten(folder, ("format = 1", "format = 2"))).wearer == "child"
    assert "say an age" in told(rewritten(folder, ('"child"', '"dog"')))


def test_a_folder_without_a_garment_is_told_so(tmp_path: Path) -> None:
    """No file, a folder under its name, a file that is no text, one that is far too large."""
    assert "there is no garment here" in told(tmp_path)
    file = tmp_path / "garment.toml"
    file.mkdir()
    assert "cannot be read" in told(tmp_path)
    file.rmdir()
    file.write_bytes(b"\xff\xfe\x00")
    assert "garment.toml" in told(tmp_path)
    file.write_bytes(b"# " + b"x" * 300_000)
    assert "kB" in told(tmp_path)


def test_a_recipe_is_a_file_beside_it_or_a_shipped_one(tmp_path: Path) -> None:
    """By its path, or by its name; a name that does not come with the program is told with those that do."""
    assert recipe_path(tmp_path, "mine.toml") == tmp_path / "mine.toml"
    assert recipe_path(tmp_path, "crew-neck").name == "crew-neck.toml"
    folder = rewritten(garment_in(tmp_path, EDGE), ('"recipe.toml"', '"no-such"'))
    said = told(folder)
    assert said.startswith(f"{folder / 'garment.toml'}:4: recipe: no recipe of this name comes with the program; ")
    assert "there are baby-jacket, " in said
    assert "did you mean 'crew-neck'?" in told(rewritten(folder, ('"no-such"', '"crewneck"')))


def test_mistakes_of_the_recipe_are_told_as_such(tmp_path: Path) -> None:
    """With the recipe's file and lines."""
    folder = garment_in(tmp_path, EDGE)
    (folder / "recipe.toml").write_text(EDGE.replace("spots    = 64", "spots    = 'sixty'"), encoding="utf-8")
    with pytest.raises(BadRecipe, match=r"recipe\.toml:\d+"):
        plan_of(folder)


def test_line_ends_of_another_system_do_not_matter(tmp_path: Path) -> None:
    """The text is kept as it is read, and reads the same."""
    folder = garment_in(tmp_path, EDGE)
    path = folder / "garment.toml"
    path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    assert read_garment(folder)[0].title == "grey pullover"
    with pytest.raises(BadGarment):
        read_garment(folder / "nowhere")


UNPRINTED = """
format = 1
title = "A holder that is not printed"
sizes = ["s", "m"]
[number.held]
text = "the stitches of the held front"
[place.front]
text = "front holder"
kind = "holder"
live = "held"
[place.neck]
text = "neck needle"
kind = "needle"
[[step]]
do = "pick up and knit"
title = "Pick up"
onto = "neck"
expect = { neck = [40, 44] }
  [[step.section]]
  along = "side"
  spots = 32
  stitches = 24
  [[step.section]]
  from = "front"
"""


class TestNotPrinted:
    """Numbers the recipe does not print."""

    def _plan(self, at: Path, text: str, numbers: str = "") -> Plan:
        (at / "recipe.toml").write_text(text, encoding="utf-8")
        garment = f'format = 1\nid = "x"\ntitle = "x"\nrecipe = "recipe.toml"\nsize = "m"\n{numbers}'
        (at / "garment.toml").write_text(garment, encoding="utf-8")
        return plan_of(at)

    def test_what_only_one_value_makes_come_out_is_taken(self, tmp_path: Path) -> None:
        """44 in the band, 24 of them picked: the holder must hold 20, and the garment begins with that."""
        assert self._plan(tmp_path, UNPRINTED).opening().on("front") == 20

    def test_the_knitter_s_own_number_comes_first(self, tmp_path: Path) -> None:
        """What she counted stands, whatever would come out."""
        assert self._plan(tmp_path, UNPRINTED, "[number]\nheld = 19\n").opening().on("front") == 19

    def test_what_nothing_tells_is_asked_for(self, tmp_path: Path) -> None:
        """Without a printed count that it is part of, the garment's file must give it; the sentence says where."""
        untold = UNPRINTED.replace("expect = { neck = [40, 44] }\n", "")
        with pytest.raises(BadGarment, match=r"number\.held: the recipe does not print the stitches of the held front"):
            self._plan(tmp_path, untold)


@pytest.mark.parametrize(
    "gauge", ['over = "0 cm"', 'over = "banana"', 'over = "10 cm"\nband = { stitches = 0, rows = 1 }']
)
def test_a_gauge_that_cannot_be_is_told_when_it_is_read(tmp_path: Path, gauge: str) -> None:
    """With its file and line, and not only when the first step needs it."""
    folder = garment_in(tmp_path, EDGE)
    path = folder / "garment.toml"
    path.write_text(
        f"{path.read_text(encoding='utf-8')}\n[gauge]\nstitches = 20\nrows = 28\n{gauge}\n", encoding="utf-8"
    )
    with pytest.raises(BadGarment, match=r"garment\.toml:\d+: gauge: "):
        plan_of(folder)
