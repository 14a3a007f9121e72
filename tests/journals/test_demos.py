"""The seven demo garments as people may have them: put down in the middle of a section, before stored names had ids."""

import hashlib
import json
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from finishing_tui.craft.ledger import Ledger
from finishing_tui.garment.commands import TakeOut
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME, check
from finishing_tui.garment.stored import state_of
from finishing_tui.garment.work import Standing
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Item, Stage
from tests.demos.scripts import do, end_step
from tests.garment.no_planning import no_planning
from tests.journals.make import HERE

DEMOS = HERE / "demos"
NAMES = sorted(path.stem for path in DEMOS.glob("*.sqlite3"))


def laid(name: str, folder: Path) -> Path:
    """Lay a copy of a journal into ``folder`` and return it."""
    shutil.copy(DEMOS / f"{name}.sqlite3", folder / NAME)
    return folder


def test_they_are_never_changed() -> None:
    """Each has the checksum it was made with."""
    sums = [hashlib.sha256((DEMOS / f"{name}.sqlite3").read_bytes()).hexdigest() for name in NAMES]
    found = [f"{one}  {name}.sqlite3" for one, name in zip(sums, NAMES, strict=True)]
    assert found == (DEMOS / "sums.txt").read_text(encoding="utf-8").splitlines()
    assert len(found) == 7


@pytest.mark.parametrize("name", NAMES)
def test_each_leads_to_the_state_it_led_to(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With nothing worked out on the way; and the state, as it was stored then, is read as the same one."""
    no_planning(monkeypatch)
    assert check(laid(name, tmp_path)).fault is None
    hand = InHand.open(tmp_path, look=True)
    hand.close()
    assert hand.state == state_of(json.loads((DEMOS / f"{name}.json").read_text(encoding="utf-8")))


@pytest.mark.turns(of=2)
@pytest.mark.parametrize("name", NAMES)
def test_each_is_worked_to_an_empty_ledger_and_undone_to_its_first_press(name: str, tmp_path: Path) -> None:
    """The steps begun then go on as they were begun; all of it can be taken back, and put back again."""
    hand = InHand.open(laid(name, tmp_path))
    assert hand.pick_up() is None
    while hand.state.current is not None:
        end_step(hand, ["26"])
    assert hand.state.ledger.empty
    ended, groups = hand.state, 0
    while hand.state.top:
        assert hand.take_back() is None
        groups += 1
    assert hand.state.ledger.live == hand.state.plan.opening().live
    assert all(standing.status == "to-come" for standing in hand.state.steps[1:])
    for _ in range(groups):
        assert hand.put_back() is None
    assert (hand.state.steps, hand.state.ledger, hand.state.plan) == (ended.steps, ended.ledger, ended.plan)
    assert hand.put_down()
    assert check(tmp_path).fault is None
    again = InHand.open(tmp_path, look=True)
    again.close()
    assert again.state == hand.state


def _worked_on(folder: Path, step: int) -> list[tuple[Ledger, Standing]]:
    """Work the step under way to its end, rip it back to its start, and work it again: how it stood at each."""
    hand, found = InHand.open(folder), []
    assert hand.state.current == step
    for again in (False, True):
        if again:
            do(hand, TakeOut(step))
            found.append((hand.state.ledger, hand.state.steps[step]))
        end_step(hand, [])
        found.append((hand.state.ledger, hand.state.steps[step]))
    hand.put_down()
    return found


@pytest.mark.parametrize("name", NAMES)
def test_a_begun_step_goes_on_by_the_stages_it_was_begun_with(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever its kind would make of it now: a stage more at its start, and other words in all of them."""
    hand = InHand.open(laid(name, tmp_path), look=True)
    hand.close()
    step = hand.state.current
    assert step is not None
    before = _worked_on(tmp_path, step)
    begun = hand.state.plan.step(step)
    stages: Callable[[Step, Here], tuple[Stage, ...]] = type(begun).stages  # type: ignore[assignment]

    def otherwise(self: Step, here: Here) -> tuple[Stage, ...]:
        made = stages(self, here)
        if self != begun:
            return made
        first = Stage("item", 1, "something new", "check", items=(Item("something new"),))
        return (first, *(replace(stage, words="otherwise", said=()) for stage in made))

    monkeypatch.setattr(type(begun), "stages", otherwise)
    assert _worked_on(laid(name, tmp_path), step) == before
