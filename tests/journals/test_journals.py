"""Journals of every format there was lead to the state they led to when they were written, for ever."""

import hashlib
import json
import shutil
from pathlib import Path

import pytest

from finishing_tui.garment.events import Taken
from finishing_tui.garment.evolve import evolve, first_state
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME, Journal, check
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import VERSIONS, from_row, happenings, state_of
from finishing_tui.record import as_data, as_text, record_of
from tests.garment.no_planning import no_planning
from tests.journals.make import HERE, main, worked
from tests.journals.scripts import SCRIPTS

NAMES = sorted(path.stem for path in HERE.glob("*.sqlite3"))


@pytest.fixture
def folder(request: pytest.FixtureRequest, tmp_path: Path) -> Path:
    """Return a folder with a copy of the journal a test is about."""
    shutil.copy(HERE / f"{request.param}.sqlite3", tmp_path / NAME)
    return tmp_path


def stored(name: str) -> State:
    """Return the state that a journal must lead to, as it was stored then."""
    return state_of(json.loads((HERE / f"{name}.json").read_text(encoding="utf-8")))


def replayed(folder: Path) -> State:
    """Return the state that the events alone lead to, without a snapshot."""
    with Journal.open(folder, look=True) as journal:
        first, *rest = journal.rows()
        taken = from_row(first).event
        assert isinstance(taken, Taken)
        state = first_state(taken)
        for row in rest:
            state = evolve(state, from_row(row))
        return state


@pytest.mark.parametrize(("folder", "name"), [(name, name) for name in NAMES], indirect=["folder"])
def test_a_stored_journal_replays_to_its_state(folder: Path, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """From its first event, and as it is opened, with nothing worked out on the way."""
    no_planning(monkeypatch)
    assert check(folder).fault is None
    state = replayed(folder)
    assert state == stored(name)
    hand = InHand.open(folder, look=True)
    hand.close()
    assert hand.state == state


@pytest.mark.parametrize("folder", NAMES, indirect=True)
def test_a_stored_journal_can_be_gone_on_with(folder: Path) -> None:
    """Everything in it can be taken back to its beginning, and put back to where it was; and it makes a record."""
    hand = InHand.open(folder)
    before, times = hand.state, 0
    while hand.state.top:
        assert hand.take_back() is None
        times += 1
    assert times
    assert hand.state.ledger.live == hand.state.plan.opening().live
    for _ in range(times):
        assert hand.put_back() is None
    assert (hand.state.steps, hand.state.ledger, hand.state.plan) == (before.steps, before.ledger, before.plan)
    hand.put_down()
    with Journal.open(folder, look=True) as journal:
        record = record_of(happenings(journal.rows()))
    assert as_text(record)
    assert as_data(record)["places"] == before.ledger.live


def test_stored_journals_are_never_changed() -> None:
    """Each has the checksum it was made with, and its script; none is missing."""
    lines = (HERE / "sums.txt").read_text(encoding="utf-8").splitlines()
    found = [f"{hashlib.sha256((HERE / f'{name}.sqlite3').read_bytes()).hexdigest()}  {name}.sqlite3" for name in NAMES]
    assert sorted(lines) == sorted(found)
    assert set(SCRIPTS) == set(NAMES)


def test_every_kind_of_event_that_is_written_has_been_stored(tmp_path: Path) -> None:
    """Each in the version it is written in today."""
    seen = set()
    for name in NAMES:
        shutil.copy(HERE / f"{name}.sqlite3", tmp_path / NAME)
        with Journal.open(tmp_path, look=True) as journal:
            seen |= {(row.kind, row.version) for row in journal.rows()}
    assert set(VERSIONS.items()) <= seen


@pytest.mark.parametrize("name", SCRIPTS)
def test_a_script_still_works(name: str, tmp_path: Path) -> None:
    """What made a journal still makes one that replays; where it leads may change with the arithmetic."""
    state = worked(name, tmp_path)
    assert replayed(tmp_path) == state


def test_a_stored_journal_is_not_made_over(capsys: pytest.CaptureFixture[str]) -> None:
    """Its name is taken."""
    assert main([NAMES[0]]) == 1
    assert "never changed" in capsys.readouterr().out
