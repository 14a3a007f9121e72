"""``finishing start``: what is started, what is refused, and what the audit stops."""

import shutil
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.garment.file import plan_of
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.shelf import NOT_BEGUN, on_shelf
from tests.commands.prompt import ask, ask_json, help_of, leave, refused


@pytest.fixture(autouse=True)
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Let every garment of a test go on a shelf of its own."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    return tmp_path / "shelf"


def test_a_garment_is_started_with_everything_that_was_said(capsys: pytest.CaptureFixture[str], shelf: Path) -> None:
    """Size, numbers, both gauges, hand, name, yarn and needles are in the garment on the shelf."""
    words = ("crew-neck", "--size", "M", "--number", "front_rows=34", "--gauge", "21 x 29 over 4 in")
    more = ("--band-gauge", "23.5 x 30 over 10 cm", "--hand", "left", "--name", "slate [b]crew", "--yarn", "grey wool")
    told = ask(capsys, "start", *words, *more)
    assert "Started slate [b]crew: Crew neck on held shoulders, size M, left-handed." in told
    plan = plan_of(shelf / "slate-b-crew")
    assert (plan.title, plan.size, plan.hand, plan.yarn) == ("slate [b]crew", "M", "left", "grey wool")
    assert dict(plan.own) == {"front_rows": 34}
    assert plan.gauge is not None
    assert plan.gauge.band is not None
    assert (plan.gauge.stitches, plan.gauge.over) == (21, "4 in")
    assert (plan.gauge.band.stitches, plan.gauge.band.over) == (47, "20 cm")  # 23.5 over 10 cm, in whole stitches


def test_for_a_child_in_a_size_that_does_not_say_so(capsys: pytest.CaptureFixture[str], shelf: Path) -> None:
    """The child's check of the recipe stays in, its head is allowed for, and the file is of format 2.

    Without a wearer the file is of format 1 still, and a size that is an adult's has no such step.
    """
    ask(capsys, "start", "crew-neck", "--size", "S", "--name", "for me")
    ask(capsys, "start", "crew-neck", "--size", "S", "--wearer", "10 years", "--name", "for a child")
    mine, childs = plan_of(shelf / "for-me"), plan_of(shelf / "for-a-child")
    (safe,) = [at for at, step in enumerate(mine.recipe.step) if step.title == "Safe for a child"]
    assert [plan.is_for(safe) for plan in (mine, childs)] == [False, True]
    assert (mine.wearer, childs.wearer, childs.footing.wearer) == ("", "10 years", "10 years")
    assert [plan.file_text.split("\n")[0] for plan in (mine, childs)] == ["format  = 1", "format  = 2"]
    bound_off = ("crew-neck", "--size", "2 years", "--accept")
    assert "the head to allow for" in ask(capsys, "start", *bound_off, "--wearer", "teen")
    assert "the head to allow for" not in ask(capsys, "start", *bound_off)


def test_what_is_started_needs_nothing_but_its_folder(
    capsys: pytest.CaptureFixture[str], shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its recipe edited, then deleted, its folder elsewhere, another home: it is what it was when it was started."""
    recipe = tmp_path / "own.toml"
    text = shipped.recipes()["crew-neck"].read_text()
    recipe.write_text(text)
    ask(capsys, "start", str(recipe), "--size", "M", "--name", "slate crew")
    (garment,) = on_shelf(shelf)
    assert (garment.heading, garment.size) == (NOT_BEGUN, "M")
    started = InHand.open(garment.folder, look=True)
    recipe.write_text(text.replace("Crew neck on held shoulders", "Another neck"))
    elsewhere = tmp_path / "elsewhere" / "slate"
    shutil.copytree(garment.folder, elsewhere)
    recipe.unlink()
    monkeypatch.setenv("HOME", str(tmp_path / "another home"))
    opened = InHand.open(elsewhere)
    assert opened.state == started.state
    assert opened.pick_up() is None
    assert opened.changed_plan() is None
    assert opened.put_down()
    started.close()


def test_an_edited_recipe_changes_nothing_of_what_was_started_unasked(
    capsys: pytest.CaptureFixture[str], shelf: Path, tmp_path: Path
) -> None:
    """Not even before its first sitting; there the new one is offered."""
    recipe = tmp_path / "own.toml"
    text = shipped.recipes()["crew-neck"].read_text()
    recipe.write_text(text)
    ask(capsys, "start", str(recipe), "--size", "M", "--name", "slate crew")
    recipe.write_text(text.replace("Crew neck on held shoulders", "Another neck"))
    hand = InHand.open(shelf / "slate-crew")
    changed = hand.changed_plan()
    assert hand.state.plan.recipe.title == "Crew neck on held shoulders"
    assert changed is not None
    assert changed.recipe.title == "Another neck"
    assert hand.close()


def test_numbers_nobody_gave_are_told_with_how_they_are_counted(capsys: pytest.CaptureFixture[str]) -> None:
    """Who cannot see the screens is told what it would ask; a number given just as printed is not told again."""
    words = ("start", "crew-neck", "--size", "M")
    assert "from the recipe: 32 rows along one side" in (told := ask(capsys, *words))
    assert "Count the small V shapes" in told
    assert "from the recipe" not in ask(capsys, *words, "--number", "front_rows=32")


def test_errors_stop_it_unless_they_are_accepted(capsys: pytest.CaptureFixture[str], shelf: Path) -> None:
    """36 + 16 + 2 x 25 + 4 are 106 in the band, no multiple of 4: told, and nothing is started before --accept."""
    words = ("start", "crew-neck", "--size", "M", "--number", "side=25")
    assert leave(*words) == 1
    told = capsys.readouterr().out
    assert "106 on the neck needle is not a multiple of 4" in told
    assert "stitches of the neckband: 106; the recipe says 104" in told
    assert not shelf.exists()
    found = ask_json(capsys, *words, "--accept")
    assert not found["ok"]
    assert plan_of(Path(found["folder"])).numbers()["band"] == 106
    assert {one["level"] for one in found["findings"]} >= {"error", "differs"}


def test_a_number_that_nothing_tells_must_be_given(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A recipe that prints no count of a place: without it nothing can be started, --accept or not; given, it can."""
    recipe = tmp_path / "own.toml"
    recipe.write_text(
        'format = 1\ntitle = "Own"\nsizes = ["one"]\n[number.held]\ntext = "stitches held"\n'
        '[place.pin]\ntext = "pin"\nkind = "pin"\nlive = "held"\n'
        '[[step]]\ndo = "bind off"\ntitle = "Bind off"\nfrom = "pin"\ntail = "end"\n'
        '[[step]]\ndo = "weave in"\ntitle = "Ends"\ntails = "all"\n'
    )
    assert leave("start", str(recipe), "--accept") == 1
    assert "give the missing number" in capsys.readouterr().out
    found = ask_json(capsys, "start", str(recipe), "--number", "held=12")
    assert found["recipe"] == str(recipe)
    assert plan_of(Path(found["folder"])).opening().live == {"pin": 12}


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("crew-neck",), "say which size with --size"),
        (("crew-neck", "--size", "huge"), "no size 'huge'"),
        (("crewneck", "--size", "M"), "did you mean"),
        (("nowhere.toml",), "no such file"),
        (("crew-neck", "--size", "M", "--number", "front_rows=8"), "use 12 to 80"),
        (("crew-neck", "--size", "M", "--number", "front_rows"), "NAME=N"),
        (("crew-neck", "--size", "M", "--number", "front_neck="), "not a whole number"),
        (("crew-neck", "--size", "M", "--number", "front_rows=1e9"), "not a whole number"),
        (("crew-neck", "--size", "M", "--number", "fronts=8"), "no number 'fronts'"),
        (("crew-neck", "--size", "M", "--wearer", "dog"), "--wearer: say an age"),
        (("crew-neck", "--size", "M", "--gauge", "twenty"), "--gauge: 'twenty' is not a gauge"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(
    words: tuple[str, ...], told: str, capsys: pytest.CaptureFixture[str], shelf: Path
) -> None:
    """One sentence that says what would be right, and nothing is on the shelf."""
    assert told in refused(capsys, "start", *words)
    assert not shelf.exists()


def test_the_example_of_the_help_holds(capsys: pytest.CaptureFixture[str]) -> None:
    """The example shown is what happens."""
    shown = help_of(capsys, "start")
    told = ask(
        capsys,
        *("start", "crew-neck", "--size", "M", "--number", "front_rows=34"),
        *("--gauge", "21 x 29 over 10 cm", "--name", "slate crew"),
    )
    assert told.split("\n")[0] in shown
