"""The seven demo garments as people may have them: put down in the middle of a section, before stored names had ids."""

import hashlib
import json
import shutil
from pathlib import Path

import pytest

from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME, check
from finishing_tui.garment.stored import state_of
from tests.demos.scripts import end_step
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
