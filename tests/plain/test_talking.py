"""What the conversation asks, said in lines: sentences name words that do it, and a question is left where it was."""

from pathlib import Path

from finishing_tui.garment.commands import ChoosePace, LeaveOut, Replan, TakeCount
from finishing_tui.glance.numbers import named, number_lines, renumbering
from finishing_tui.plain.asks import SHAPES
from finishing_tui.plain.choices import MOST_LINES
from finishing_tui.plain.pages import PAGES
from finishing_tui.talk import asks
from tests.plain.making import Twin, crew, events, garment, talked
from tests.plain.test_hostile_texts import RECIPE, hostile
from tests.plain.test_whole_garments import NECKBAND


def test_every_shape_of_question_can_be_said_and_heard() -> None:
    """No ask of the conversation is without its lines: it is asked, or a page, or worked out at once."""
    every = {one for one in vars(asks).values() if isinstance(one, type) and issubclass(one, asks.Ask)} - {asks.Ask}
    assert every == {one for one in SHAPES if one.__module__ == asks.__name__} | {*PAGES} | {asks.WorkOut}


def at_the_back_holder(folder: Path) -> Twin:
    """Return a crew neck whose back holder is counted next."""
    twin = Twin(crew(folder))
    twin.works_to(1)
    return twin


def both(twin: Twin, folder: Path, *lines: str) -> list[str]:
    """Type the twin's lines and ``lines``; return what is said, once the journals were found to be the same."""
    twin.puts_down("")
    down = twin.lines[-2:]
    said = talked(crew(folder / "plain"), *twin.lines[:-2], *lines, *down)
    assert events(folder / "plain") == events(twin.hand.folder)
    return said


def test_the_key_that_a_sentence_names_does_it(tmp_path: Path) -> None:
    """Refused for another step, that step is looked at, so that the key named there does it; what fell out is named."""
    twin = at_the_back_holder(tmp_path / "twin")
    twin.does(LeaveOut(2, sure=True), "leave out 3", "o")
    said = both(twin, tmp_path)
    assert "looking at step 3; you are at step 2." in said
    assert "step 3, left out: Count the front neck holder." in said


def test_a_step_that_is_refused_for_good_is_not_looked_at(tmp_path: Path) -> None:
    """What was looked at before still is: nothing may be asked for once more."""
    said = both(at_the_back_holder(tmp_path / "twin"), tmp_path, "step 5", "leave out 1", "take up 1", "step")
    assert said.count("looking at step 5; you are at step 2.") == 3
    assert not any(line.startswith("looking at step 1") for line in said)


def test_taking_up_the_step_under_the_needles_does_not_finish_it(tmp_path: Path) -> None:
    """It is there already, and says so: the key for both is the same."""
    said = both(at_the_back_holder(tmp_path / "twin"), tmp_path, "take up 2", "take up 2")
    assert said.count("You are on step 2.") == 2


def test_a_count_is_asked_for_as_it_is_typed_here(tmp_path: Path) -> None:
    """No enter follows a number in a line, for that would finish the step; the number is the line."""
    twin = at_the_back_holder(tmp_path / "twin")
    twin.does(TakeCount(46, "back"), "recount", "46")
    said = both(twin, tmp_path)
    assert "Count the back holder, and type the number." in said


def test_a_count_that_was_left_is_forgotten(tmp_path: Path) -> None:
    """At a join it is asked on which needle; left without an answer, the next line is not taken for more digits."""
    twin = Twin(crew(tmp_path / "twin"))
    join = next(at for at, step in enumerate(twin.hand.state.plan.recipe.step) if step.do == "join")
    twin.works_to(join, 0, 2)
    twin.lines += ["9", "escape"]
    twin.works_on()
    said = both(twin, tmp_path)
    assert "9 counted on which needle?" in said
    assert "Nothing changed." in said


def test_any_pace_is_one_event(tmp_path: Path) -> None:
    """From a run to a spot, which a key goes to by way of a loop, is one event; a pace that is none is not guessed."""
    twin = at_the_back_holder(tmp_path / "twin")
    twin.works_to(NECKBAND, 0, 5)
    for pace in ("run", "spot"):
        twin.does(ChoosePace(pace), "pace rum", f"pace {pace}")
    said = both(twin, tmp_path)
    assert said.count("The paces are loop, spot and run.") == 2
    assert "One press = one row." in said


def changed(twin: Twin, value: int, why: str = "") -> Replan:
    """Return the command that gives the rows of the front another value."""
    plan = twin.hand.state.plan
    line = named(number_lines(plan.recipe, plan.size, plan.own), "front_rows")
    return renumbering(twin.hand.state, line, value).because(why)


def test_numbers_are_a_question_until_escape(tmp_path: Path) -> None:
    """Asked about alone until escape; with a number behind the word the line goes back to the needles by itself."""
    twin = Twin(crew(tmp_path / "twin"))
    twin.does(changed(twin, 28), "numbers", "d", "front_rows", "front_rows 28", "2", "front_rows 28", "escape")
    twin.does(changed(twin, 30, "counted again"), "numbers front_rows 30", "3", "counted again")
    twin.works_on()
    said = both(twin, tmp_path)
    assert sum(line.startswith("front_neck, ") for line in said) == 1
    assert sum("already 28" in line for line in said) == 1


MEASURED = """
format = 1
title  = "A band"
sizes  = ["one"]

[[step]]
do        = "measure"
title     = "Measure the band"
what      = "the band"
value     = "24.5 cm"
tolerance = "1 cm"
"""


def test_a_measure_off_its_tolerance_says_to_measure_again(tmp_path: Path) -> None:
    """It is written down, and said to be off; one that is within the tolerance is only written down."""
    said = []
    for value in ("27", "24"):
        folder = garment(tmp_path / value, "measured.toml", "one")
        (folder / "measured.toml").write_text(MEASURED)
        said.append(" ".join(talked(folder, "enter", value)))
    assert "measure again, or note what you do about it." in said[0]
    assert "measure again" not in said[1]


def test_files_that_were_changed_are_asked_about_first(tmp_path: Path) -> None:
    """What is another way is said, not more lines of it than an ear can bear, and the change is taken by its number."""
    folder = hostile(tmp_path / "hostile")
    talked(folder, "q", "")
    more = "".join(f'[place.extra_{at}]\ntext = "extra {at}"\nkind = "holder"\nlive = 1\n\n' for at in range(20))
    (folder / "hostile.toml").write_text(RECIPE.replace("[[step]]", f"{more}[[step]]", 1))
    said = talked(folder, "d", "2", "q", "")
    at = said.index("The recipe has changed since you started.")
    told = said[at + 1 : said.index("1: Keep the old version.")]
    assert len(told) == MOST_LINES + 1
    assert told[-1].startswith("And ")
    assert "The new version is in use." in said
    assert sum(kind == "Replanned" for kind, _, _ in events(folder)) == 1
