"""Enter on a choice that nobody looked at does no harm: where the caret begins."""

from pathlib import Path

import pytest
from textual.pilot import Pilot

from finishing_tui.garment.events import RippedBack
from finishing_tui.garment.state import State
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.talk.asks import Weigh
from finishing_tui.widgets.answer_table import AnswerTable
from finishing_tui.widgets.choices import Choices
from tests.screens.hands import pressing, settled
from tests.screens.scenes import SCENES

MOST_BACK = 8
"""So many backspaces take back whatever one choice does."""


def _at_the_needles(app: FinishingApp) -> AtTheNeedles | None:
    return next((one for one in app.screen_stack if isinstance(one, AtTheNeedles)), None)


def _caret_at(app: FinishingApp) -> int | None:
    """Return where the caret is among answers; None where there are none to choose from."""
    screen = app.screen
    if not isinstance(screen, LargeAsk | ChoiceBox):
        return None
    table = screen.query(AnswerTable)
    if table and table.first().answers is not None:
        return table.first().at
    choices = screen.query_one(Choices)
    return choices.at if choices.choices and choices.display else None


async def _leaves(app: FinishingApp, pilot: Pilot[None]) -> AtTheNeedles:
    """Leave whatever is asked."""
    while not isinstance(app.screen, AtTheNeedles):
        await pilot.press("escape")
        await settled(pilot)
    return app.screen


def _work(state: State) -> object:
    return state.plan, state.steps, state.ledger, state.current


@pytest.mark.turns(of=12)
@pytest.mark.parametrize("name", SCENES)
async def test_enter_on_the_first_choice_can_be_taken_back(name: str, tmp_path: Path) -> None:
    """What enter does there takes no work out, and backspace at the needles has all back as it was.

    Where the choice is itself to take back what was done last, as counting again is, the key that redoes has it back.
    Of ways side by side it neither takes work out nor will be seen from afar, where another one does neither.
    """
    app = SCENES[name].app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await pressing(*SCENES[name].keys)(pilot)
        below, at = _at_the_needles(app), _caret_at(app)
        if below is None or at is None:
            return
        ask, before, known = below.talk.asked, below.talk.state, below.talk.hand.known
        if isinstance(ask, Weigh):
            rows = ask.answers.rows
            assert not rows[at].harms or all(row.harms for row in rows)
        await pilot.press("enter")
        await settled(pilot)
        needles = await _leaves(app, pilot)
        assert not any(isinstance(one.event, RippedBack) for one in needles.talk.hand.lately(99) if one.group > known)
        key = "u" if needles.talk.state.undone else "backspace"
        for _ in range(MOST_BACK):
            if _work(needles.talk.state) == _work(before):
                return
            await pilot.press(key)
            await settled(pilot)
        raise AssertionError(f"enter on the first choice of {ask} is not taken back")
