"""What could not be saved: put elsewhere, said for what it is, and taken in again when that is wanted."""

import dataclasses
import shutil
from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import NotWritten
from finishing_tui.garment import given_up as giving_up
from finishing_tui.garment import rescued
from finishing_tui.garment.commands import Press, Replan, WriteNote
from finishing_tui.garment.given_up import GivenUp
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import Journal, check
from finishing_tui.garment.journal import rescue_places as places
from finishing_tui.garment.journal.chain import link
from finishing_tui.garment.journal.rescue import Rescue, read, write
from finishing_tui.garment.journal.rescue_places import PutAway, RescuePlace
from finishing_tui.garment.journal.rows import Row
from finishing_tui.garment.journal.writer import MOST_UNSAVED
from finishing_tui.garment.rescued import NotTakenIn, found_for, take_in, throw_away, tidied
from finishing_tui.garment.shelf import take_copy
from finishing_tui.garment.state import State
from finishing_tui.shipped import demos
from tests.full_disk import FullDisk, file_of
from tests.plain.making import crew


@pytest.fixture
def disk(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> FullDisk:
    """Return a disk that is not full yet; rescue files have a place of their own."""
    monkeypatch.setattr(places, "places", lambda: (RescuePlace(tmp_path / "elsewhere"),))
    monkeypatch.setattr(rescued, "PATIENCE", 0.5)
    return FullDisk(monkeypatch)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Return a garment that was put down once."""
    folder = crew(tmp_path / "crew")
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down()
    return folder


def state_of(folder: Path) -> State:
    """Return what the garment's journal says."""
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state


def test_taken_in_it_is_as_if_it_had_been_saved(folder: Path, disk: FullDisk) -> None:
    """The rows go into the journal just as they were: time, sitting and chain; the state is what it was; no file."""
    hand = disk.left_full(folder, saved=1)
    file = file_of(hand.given_up)
    rows = read(file).rows
    assert state_of(folder) != hand.state
    found = tidied(folder)
    assert found.fits is not None
    assert (found.fits.file, found.fits.rows, found.all_in, found.others) == (file, rows, (), ())
    take_in(folder, found.fits)
    assert state_of(folder) == hand.state
    assert hand.state.sittings[-1].where == "bag"
    with Journal.open(folder, look=True) as journal:
        assert tuple(journal.rows(rows[0].seq - 1)) == rows
    assert check(folder).fault is None
    assert not file.exists()
    assert tidied(folder) == rescued.Rescued()


def test_a_first_sitting(tmp_path: Path, disk: FullDisk) -> None:
    """A disk that was full from the start: the whole first sitting is taken in, the recipe too."""
    folder = crew(tmp_path / "crew")
    disk.full = True
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.do(Press()) is None
    assert not hand.put_down()
    disk.full = False
    fits = tidied(folder).fits
    assert fits is not None
    assert fits.rows[0].seq == 1
    take_in(folder, fits)
    assert state_of(folder) == hand.state


def test_without_consent_nothing_changes(folder: Path, disk: FullDisk) -> None:
    """Looking for it, and looking at the garment, leave file and journal as they are; thrown away it is gone."""
    file = file_of(disk.left_full(folder).given_up)
    before = state_of(folder), file.read_bytes()
    fits = tidied(folder).fits
    assert fits is not None
    assert (state_of(folder), file.read_bytes()) == before
    throw_away(fits)
    assert not file.exists()
    assert tidied(folder).fits is None
    assert state_of(folder) == before[0]


def test_still_full(folder: Path, disk: FullDisk) -> None:
    """Where they still cannot be saved that is said, the file stays, and the next time they are taken in."""
    hand = disk.left_full(folder)
    file = file_of(hand.given_up)
    fits = tidied(folder).fits
    assert fits is not None
    disk.full = True
    with pytest.raises(NotTakenIn, match="the disk is full") as said:
        take_in(folder, fits)
    assert str(file) in str(said.value)
    disk.full = False
    assert file.exists()
    fits = tidied(folder).fits
    assert fits is not None
    take_in(folder, fits)
    assert state_of(folder) == hand.state


def test_some_of_it_is_in_already(folder: Path, disk: FullDisk) -> None:
    """Saved in part after all: only the rest is taken in. Saved whole: there is nothing to ask, and the file goes."""
    hand = disk.left_full(folder)
    file = file_of(hand.given_up)
    rows = read(file).rows
    with Journal.open(folder) as journal:
        journal.adopt(rows[:2])
        assert journal.flush(30)
    fits = tidied(folder).fits
    assert fits is not None
    assert fits.rows == rows[2:]
    with Journal.open(folder) as journal:
        journal.adopt(rows[2:])
        assert journal.flush(30)
    assert found_for(folder).all_in == (file,)
    assert file.exists()
    assert tidied(folder).fits is None
    assert not file.exists()
    assert state_of(folder) == hand.state


def test_worked_on_without_it(folder: Path, disk: FullDisk) -> None:
    """Once the garment was worked on it fits no more: it is left alone, and there is one sentence about it."""
    file = file_of(disk.left_full(folder).given_up)
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down()
    found = tidied(folder)
    assert found.fits is None
    (said,) = found.others
    assert str(file) in said
    assert "no longer fits" in said
    assert file.exists()


def test_a_journal_that_ends_before_it(folder: Path, disk: FullDisk, tmp_path: Path) -> None:
    """An older copy of the garment put in its place: the file goes on from what is not there, and is left alone."""
    older = Path(shutil.copytree(folder, tmp_path / "older"))
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down()
    file = file_of(disk.left_full(folder).given_up)
    shutil.rmtree(folder)
    older.rename(folder)
    found = tidied(folder)
    assert found.fits is None
    assert ["ends before it" in one for one in found.others] == [True]
    assert file.exists()


@pytest.mark.usefixtures("disk")
def test_a_folder_that_is_gone(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Opened by a name that means nothing any more once the folder was taken away: kept, with its place."""
    monkeypatch.chdir(folder)
    hand = InHand.open(Path())
    hand.pick_up()
    assert hand.flush(30)
    shutil.rmtree(folder)
    assert hand.do(Press()) is None
    assert not hand.put_down("bag")
    assert "cannot be reached" in str(hand.given_up)
    assert read(file_of(hand.given_up)).folder == str(folder)


def test_of_several_the_one_that_fits(folder: Path, disk: FullDisk) -> None:
    """One from before and one that fits: the latter is offered, the former mentioned."""
    old = file_of(disk.left_full(folder).given_up)
    new = file_of(disk.left_full(folder, presses=2).given_up)
    found = tidied(folder)
    assert found.fits is not None
    assert found.fits.file == new
    assert [str(old) in one for one in found.others] == [True]


def test_another_garment(folder: Path, disk: FullDisk, tmp_path: Path) -> None:
    """A copy has the same id and the same journal, and is not asked; the garment itself is, when it was moved."""
    file = file_of(disk.left_full(folder).given_up)
    copy = Path(shutil.copytree(folder, tmp_path / "copy"))
    assert tidied(copy) == rescued.Rescued()
    shutil.rmtree(folder)
    fits = tidied(copy).fits
    assert fits is not None
    assert fits.file == file
    text = (copy / "garment.toml").read_text(encoding="utf-8").replace("under-test", "another")
    other = tmp_path / "other"
    other.mkdir()
    (other / "garment.toml").write_text(text, encoding="utf-8")
    InHand.open(other).close()
    assert tidied(other) == rescued.Rescued()


def test_in_hand_elsewhere(folder: Path, disk: FullDisk) -> None:
    """While another window has the garment in hand nothing is offered."""
    disk.left_full(folder)
    hand = InHand.open(folder)
    assert tidied(folder) == rescued.Rescued()
    hand.close()
    assert tidied(folder).fits is not None


def _chained_on(rescue: Rescue, kind: str, text: str) -> Rescue:
    """Return ``rescue`` with one more row of this content, its chain made to fit."""
    last = rescue.rows[-1]
    columns = (last.seq + 1, last.seq + 1, last.at, last.sitting, last.after_ms, kind, 1, text)
    more = Row(*columns, link(last.chain, *columns))
    return dataclasses.replace(rescue, rows=(*rescue.rows, more))


@pytest.mark.parametrize(
    ("kind", "text"),
    [("Nothing", "{}"), ("Worked", "{}"), ("Worked", '{"is":"Worked"}'), ("PutDown", '{"where":7}'), ("Taken", "{}")],
)
def test_what_makes_no_sense_is_never_taken_in(kind: str, text: str, folder: Path, disk: FullDisk) -> None:
    """A file made by someone who knows the format: a journal never loses what it has, so nonsense stays out of it."""
    file = file_of(disk.left_full(folder).given_up)
    crafted = _chained_on(read(file), kind, text)
    file.unlink()
    file = write(crafted, file.parent)
    before = state_of(folder)
    found = tidied(folder)
    assert found.fits is None
    assert ["does not make sense" in one for one in found.others] == [True]
    assert state_of(folder) == before


def test_damaged(folder: Path, disk: FullDisk) -> None:
    """A file of the garment that is not as it was written is left alone, and mentioned."""
    file = file_of(disk.left_full(folder).given_up)
    file.write_bytes(file.read_bytes().replace(b"bag", b"box"))
    found = tidied(folder)
    assert found.fits is None
    assert ["not as it was written" in one for one in found.others] == [True]


def test_rows_that_do_not_follow(folder: Path, disk: FullDisk) -> None:
    """The journal itself takes nothing in that does not follow its last row, and nothing when it is only looked at."""
    rows = read(file_of(disk.left_full(folder).given_up)).rows
    with Journal.open(folder) as journal:
        last = journal.last
        wrong = rows[0]._replace(chain="0" * 64)
        for some in (rows[1:], (wrong, *rows[1:]), (*rows, rows[0])):
            with pytest.raises(FinishingError):
                journal.adopt(some)
            assert (journal.last, journal.unsaved) == (last, 0)
    with Journal.open(folder, look=True) as journal, pytest.raises(FinishingError):
        journal.adopt(rows)


def test_what_is_said_of_it(folder: Path, disk: FullDisk, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """After the end no sentence says that anything saves itself: it names the file, or that it is lost, with number."""
    hand = disk.left_full(folder)
    file = file_of(hand.given_up)
    told = f"The last 4 entries could not be saved (the disk is full). They are in {file}; "
    assert str(hand.given_up) == told + "next time the program asks whether to add them."
    file.unlink()
    monkeypatch.setattr(places, "places", lambda: (RescuePlace(tmp_path, temporary=True),))
    assert str(disk.left_full(folder).given_up).endswith("restarting the computer may delete it.")

    def nowhere(*_: object) -> PutAway:
        raise NotWritten("permission denied")

    monkeypatch.setattr(giving_up, "put", nowhere)
    hand = disk.left_full(folder, presses=2)
    assert str(hand.given_up) == (
        "The last 3 entries are lost (the disk is full). They could not be put anywhere else: permission denied."
    )
    assert "saves itself" in hand.trouble
    one = disk.left_full(folder, presses=0)
    assert str(one.given_up).startswith("The last entry is lost (the disk is full). It could not")


def test_more_than_can_wait(folder: Path, disk: FullDisk, monkeypatch: pytest.MonkeyPatch) -> None:
    """With as many waiting as may, the end of the sitting is refused: what was written about it is said to be lost."""
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.flush(30)
    disk.full = True
    monkeypatch.setattr("finishing_tui.garment.journal.writer.MOST_UNSAVED", 2)
    assert [hand.do(Press()) is None for _ in range(3)] == [True, True, False]
    assert not hand.put_down("bag")
    assert str(hand.given_up).startswith("The last 2 entries could not be saved")
    assert str(hand.given_up).endswith("Your line about where you left it is lost.")
    assert MOST_UNSAVED == 500


def test_all_saved_but_the_end() -> None:
    """Where the disk came back at the last moment, only the end of the sitting is said not to be there."""
    assert str(GivenUp(0, "", None, ended=False)) == ("Everything you counted is saved. The end of the sitting is not.")


def test_a_changed_plan_with_another_id_changes_nothing_of_whose_it_is(tmp_path: Path, disk: FullDisk) -> None:
    """A copy of a demo has an id of its own, which a changed plan brings with it: its rescue file is found.

    Both where that plan was saved, and where it is among what could not be.
    """
    for saved in (True, False):
        folder = take_copy(demos()["rust-crew"], tmp_path / "shelf")
        text = (folder / "garment.toml").read_text(encoding="utf-8")
        (folder / "garment.toml").write_text(text.replace("rust crew", "my crew"), encoding="utf-8")
        hand = InHand.open(folder)
        hand.pick_up()
        plan = hand.changed_plan()
        assert plan is not None
        assert plan.name != hand.state.plan.name
        disk.full = not saved
        assert hand.do(Replan(plan, "the files were changed")) is None
        assert hand.flush(10) or not saved
        disk.full = True
        assert hand.do(WriteNote("on a full disk")) is None
        assert not hand.put_down()
        disk.full = False
        found = found_for(folder).fits
        assert found is not None
        assert found.file == file_of(hand.given_up)
        take_in(folder, found)
        assert state_of(folder).notes[-1].text == "on a full disk"
