"""The numbers of a garment at the needles: looked at, changed, shown what it changes first, and taken back."""

from pathlib import Path

from finishing_tui.commands.record import read_record
from finishing_tui.garment.hand import InHand
from finishing_tui.record import as_text
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.numbers import NumbersScreen
from tests.screens.hands import JOIN, PICK_UP, WAIT, app_for, front, needles, pressing, settled, shelf, shown, work_to


async def test_a_number_is_changed_only_after_it_was_shown_what_that_changes(tmp_path: Path) -> None:
    """Typed, out of range, left, taken with a reason: each does just that; backspace twice takes it back."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        while not isinstance(front(app), AtTheNeedles):
            await pilot.press("escape")
        state = needles(app).talk.state
        await pressing("e", "9", "9", "9", "9", "9", "9", "enter")(pilot)
        assert isinstance(front(app), NumbersScreen)
        assert "999,999 is too many" in shown(app)
        await pressing("down", "escape", "up", "2", "6", "enter", WAIT)(pilot)
        assert isinstance(front(app), ChoiceBox)
        assert "26, was 24" in " ".join(shown(app).split())
        assert app.in_hand is not None
        assert app.in_hand.state is state
        await pressing("enter", WAIT)(pilot)
        assert app.in_hand.state is state
        await pressing("enter", WAIT, "3", WAIT, *"recounted", "enter", WAIT)(pilot)
        assert dict(app.in_hand.state.plan.own) == {"front_rows": 26}
        assert "yours (recipe: 24)" in shown(app)
        await pressing("escape", "backspace", "backspace")(pilot)
        assert needles(app).talk.state.plan == state.plan
        await pressing("u")(pilot)
        assert dict(needles(app).talk.state.plan.own) == {"front_rows": 26}
    told = " ".join(as_text(read_record(folder)).split())
    assert "rows along the front neck: 26, was 24; recounted" in told


async def test_a_step_come_to_takes_the_number_counted_there(tmp_path: Path) -> None:
    """At the pick-up, before its first loop, 20 rows are counted, not 24: its section has 20 at once."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        while not isinstance(front(app), AtTheNeedles):
            await pilot.press("escape")
        await pressing("e", "2", "0", "enter", WAIT, "2", "escape", "space")(pilot)
    hand = InHand.open(folder, look=True)
    standing = hand.state.standing
    assert standing is not None
    assert standing.work is not None
    assert standing.work.stages[0].units == 20
    hand.close()
