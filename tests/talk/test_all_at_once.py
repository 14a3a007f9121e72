"""A join, a seam or a bind off that was not tapped through: enter, and one question."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Command, Press, TakeCount
from finishing_tui.garment.hand import InHand
from finishing_tui.talk.asks import Choose
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.offers import offers
from tests.plain.making import events, talked
from tests.screens.hands import BIND_OFF, JOIN, RIB, Hours, app_for, settled, sewn, shelf, work_to

SEAM = 1
"""The step with the seam, counted from 0."""

GRAFT = 2
"""So many presses set up the graft before it."""


def garment(at: Path, step: int, *then: Command, seam: bool = False) -> Path:
    """Return a garment worked to ``step``, and on."""
    at.mkdir(exist_ok=True)
    folder = sewn(at) if seam else shelf(at)
    work_to(folder, step, *then)
    return folder


def in_talk(folder: Path) -> Talk:
    """Return the conversation about it."""
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    return Talk(hand, "", USUAL)


WHOLE = [(JOIN, False), (BIND_OFF, False), (0, True), (SEAM, True)]
"""A join, a bind off, a graft and a seam."""


@pytest.mark.parametrize(("step", "seam"), WHOLE)
@pytest.mark.parametrize("tapped", [0, 2])
def test_yes_is_the_same_as_tapping_all_of_it(step: int, seam: bool, tapped: int, tmp_path: Path) -> None:  # noqa: FBT001
    """The ledger, and what is under way, are as after a press for each; one thing taken back is all of it."""
    presses = [Press()] * (tapped + (GRAFT if seam and not step else 0))
    said = in_talk(garment(tmp_path / "said", step, *presses, seam=seam))
    pressed = in_talk(garment(tmp_path / "pressed", step, *presses, seam=seam))
    before, work = said.state, said.state.standing.work if said.state.standing else None
    assert work is not None
    index, stage = work.at, work.stages[work.at]
    label = next(one.label for one in offers(said.state) if one.action == "finish")
    assert label == f"all {stage.units}"
    ask_for(said, "finish")
    assert isinstance(said.asked, Choose)
    said.answer(0)
    while (now := pressed.state.standing) and now.work and now.work.at == index and not now.work.complete:
        assert pressed.hand.do(Press()) is None
    assert said.state.ledger == pressed.state.ledger
    assert said.state.standing == pressed.state.standing
    assert said.hand.take_back() is None
    assert said.state.steps == before.steps


@pytest.mark.parametrize(("keys", "lines"), [(("enter", "enter"), ("f", "1")), (("enter", "2"), ("f", "2"))])
async def test_both_mouths_ask_it_alike(keys: tuple[str, ...], lines: tuple[str, ...], tmp_path: Path) -> None:
    """All of a bind off, or the step ended with some left."""
    screens, plain = (garment(tmp_path / name, BIND_OFF, Press()) for name in ("screens", "plain"))
    app = app_for(screens)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press(*keys)
        await settled(pilot)
        while app.in_hand is not None and needs_answer(app.screen):
            await pilot.press("2")
            await settled(pilot)
        await pilot.press("q", "enter")
        await settled(pilot)
    talked(plain, *lines, *(["2"] if keys[-1] == "2" else []), "q", "")
    assert events(screens) == events(plain)


def needs_answer(screen: object) -> bool:
    """Return whether something is asked over the needles."""
    return type(screen).__name__ != "AtTheNeedles"


def test_needles_that_do_not_match_are_not_all_done(tmp_path: Path) -> None:
    """It is said as it was before: the difference first."""
    talk = in_talk(garment(tmp_path / "uneven", JOIN, TakeCount(5, "left_front")))
    ask_for(talk, "finish")
    assert talk.asked is None
    assert talk.alarm


def test_rounds_are_not_told_whole(tmp_path: Path) -> None:
    """A round may hold a shaping: it is counted, or the step is ended with some left, asked twice."""
    talk = in_talk(garment(tmp_path / "rib", RIB))
    ask_for(talk, "finish")
    assert talk.asked is None
    assert talk.again is not None
