"""A full disk, line by line: where the rest is kept is said on leaving, and asked about on coming back."""

import io
import re
from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import rescue_places as places
from finishing_tui.garment.journal.rescue_places import RescuePlace
from finishing_tui.plain import running
from tests.full_disk import FullDisk, file_of
from tests.plain.making import crew, events, talked


@pytest.fixture
def disk(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> FullDisk:
    """Return a disk that is not full yet; answers do not wait for it, and rescue files have a place of their own."""
    for name in ("WAIT", "WAIT_IN_TROUBLE"):
        monkeypatch.setattr(running, name, 0.1)
    monkeypatch.setattr(places, "places", lambda: (RescuePlace(tmp_path / "elsewhere"),))
    return FullDisk(monkeypatch)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Return a garment that was picked up once."""
    folder = crew(tmp_path / "crew")
    talked(folder, "d", "q", "")
    return folder


def work(folder: Path, typed: bytes) -> tuple[list[str], str]:
    """Type lines; return what is said, and the sentence it ends with where that is an error."""
    sink = io.BytesIO()
    try:
        running.work(folder, io.BytesIO(typed), sink)
    except FinishingError as error:
        return sink.getvalue().decode().splitlines(), str(error)
    return sink.getvalue().decode().splitlines(), ""


def count(folder: Path) -> int:
    """Return how many presses are in the journal."""
    return sum(kind == "Worked" for kind, _, _ in events(folder))


@pytest.mark.parametrize("end", [b"", b"q\nbag\n2\n", b"q\nbag\n"], ids=["end of input", "put down", "end while asked"])
def test_left_with_a_full_disk_and_taken_in(end: bytes, folder: Path, disk: FullDisk) -> None:
    """The sentence names the file and promises nothing untrue; with yes the count is there and the file gone."""
    disk.full = True
    said, error = work(folder, b"d\nd\n" + end)
    disk.full = False
    assert not any("everything is kept" in line for line in said)
    assert error.startswith("The last 4 entries could not be saved (the disk is full). They are in ")
    assert "itself" not in error
    named = re.search(r"They are in (.*); next time", error)
    assert named is not None
    file = Path(named[1])
    assert file.is_file()
    assert count(folder) == 1
    said, error = work(folder, b"yes\nwhere\nq\n\n")
    assert error == ""
    assert re.fullmatch(r"under test: 4 entries not saved \([-0-9: to]+ UTC\).", said[0])
    assert said[1].startswith("With them you are at step 1, ")
    told = [f"It is in {file}.", "Add the unsaved work?", "  Type yes or no."]
    assert [line for line in said if line in told] == told
    assert "4 entries added; everything is saved." in said
    assert ("you wrote: bag." in said or "you wrote: bag" in said) is (end != b"")
    assert count(folder) == 3
    assert not file.exists()


@pytest.mark.parametrize("answers", [b"no\nno\n", b"", b"d\nd\n", b"no\n"])
def test_without_a_yes_it_stays(answers: bytes, folder: Path, disk: FullDisk) -> None:
    """Without a yes nothing is changed: the file stays, it fits the next time too, and one can only look until then."""
    hand = disk.left_full(folder)
    file = file_of(hand.given_up)
    before = events(folder)
    said, error = work(folder, answers + b"d\nq\n" if answers.count(b"\n") == 2 else answers)
    assert error == ""
    assert said[-1] == "you only looked; nothing changed."
    assert file.exists()
    assert events(folder) == before
    talked(folder, "yes", "q", "")
    assert count(folder) == 4


def test_thrown_away(folder: Path, disk: FullDisk) -> None:
    """Thrown away on a second yes, and the sitting goes on from what was saved."""
    file = file_of(disk.left_full(folder).given_up)
    said, error = work(folder, b"no\nyes\nd\nq\n\n")
    assert error == ""
    assert "thrown away." in said
    assert not file.exists()
    assert count(folder) == 2


def test_one_that_no_longer_fits_is_said_once(folder: Path, disk: FullDisk) -> None:
    """It is not asked about: one sentence a sitting, and the sitting goes its way."""
    file = file_of(disk.left_full(folder).given_up)
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down()
    for _ in range(2):
        said, error = work(folder, b"d\nd\nq\n\n")
        assert error == ""
        assert sum(str(file) in line for line in said) == 1
        assert said[-1] == "put down; everything is kept."


def test_still_full_on_coming_back(folder: Path, disk: FullDisk, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where they cannot be taken in, that is a sentence, and they stay where they are."""
    monkeypatch.setattr("finishing_tui.garment.rescued.PATIENCE", 0.2)
    file = file_of(disk.left_full(folder).given_up)
    disk.full = True
    _, error = work(folder, b"yes\nd\n")
    disk.full = False
    assert error == f"The unsaved work could not be added (the disk is full). It is still in {file}."
    assert file.exists()


def test_nowhere_to_put_it(folder: Path, disk: FullDisk, monkeypatch: pytest.MonkeyPatch) -> None:
    """With no place that can be written, they are said to be lost, with the number."""
    monkeypatch.setattr(places, "places", lambda: (RescuePlace(folder / "inside"),))
    disk.full = True
    _, error = work(folder, b"d\nd\n")
    disk.full = False
    assert error.startswith("The last 4 entries are lost (the disk is full).")
    assert not (folder / "inside").exists()
