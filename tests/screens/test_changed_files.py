"""A recipe or garment file that was changed: the screen and the lines name what is another way before it is taken."""

from pathlib import Path

from finishing_tui.garment.commands import Press
from finishing_tui.recipe.kinds.work import Work
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from tests.plain.making import talked
from tests.screens.hands import PICK_UP, RIB, app_for, front, needles, settled, shelf, shown, work_to


def edited(at: Path) -> Path:
    """Return a garment at its picking up, whose recipe was then given two rounds more."""
    folder = shelf(at)
    work_to(folder, PICK_UP, Press())
    recipe = folder.parent / "every_face.toml"
    recipe.write_text(recipe.read_text().replace("rounds = 6", "rounds = 8"))
    return folder


async def test_the_change_is_named_and_only_taken_when_it_is_chosen(tmp_path: Path) -> None:
    """Enter alone goes on by the plan there is; the second answer takes the change."""
    folder = edited(tmp_path)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert isinstance(front(app), ChoiceBox)
        assert "step 6, Work the rib: rounds: 8, not 6" in shown(app)
        await pilot.press("down", "enter")
        assert isinstance(front(app), AtTheNeedles)
        step = needles(app).talk.state.plan.step(RIB)
        assert isinstance(step, Work)
        assert step.rounds == 8
        await settled(pilot)


def test_line_by_line_it_is_named_too(tmp_path: Path) -> None:
    """Yes takes it, and the change is among those of the plan."""
    said = talked(edited(tmp_path), "2", "ledger 1", "q", "")
    assert "Step 6, Work the rib: rounds: 8, not 6." in said
    assert "The new version is in use." in said


def test_what_cannot_be_taken_is_said_to_be_for_a_new_garment(tmp_path: Path) -> None:
    """A recipe with another step stays with the plan there is; why is said."""
    folder = edited(tmp_path)
    recipe = folder.parent / "every_face.toml"
    recipe.write_text(recipe.read_text() + '\n[[step]]\ndo = "check"\ntitle = "Once more"\nitems = ["all"]\n')
    said = talked(folder, "1", "q", "")
    assert "Steps: 13, not 12." in said
    assert any("The changed recipe has a different number of steps" in line for line in said)
