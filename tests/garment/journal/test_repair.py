"""What was acknowledged is written again if the file turns out to lack it."""

from pathlib import Path

import pytest

from finishing_tui.garment.journal import NAME, Row
from finishing_tui.garment.journal.chain import link
from finishing_tui.garment.journal.errors import Displaced
from finishing_tui.garment.journal.repair import opened_again
from finishing_tui.garment.journal.store import Store
from tests.garment.journal.making import contents, fill, read


def test_a_file_that_lacks_what_was_saved(tmp_path: Path) -> None:
    """The names lead elsewhere than before, to less than was acknowledged: all of it is there again, that is beside."""
    folder, other = tmp_path / "garment", tmp_path / "other"
    folder.mkdir()
    other.mkdir()
    rows = fill(folder, 5)
    fill(other, 2)
    less = (other / NAME).read_bytes()
    old = Store(folder / NAME)
    for one in folder.glob(f"{NAME}*"):
        one.unlink()
    (folder / NAME).write_bytes(less)
    store = opened_again(folder / NAME, old, (rows[-1].seq, rows[-1].chain))
    assert store.last == (rows[-1].seq, rows[-1].chain)
    store.put_down()
    assert read(folder) == rows
    assert (folder / "journal.replaced-1.sqlite3").read_bytes() == less


@pytest.mark.parametrize("suffix", ["", "-wal"])
def test_a_commit_into_a_file_without_a_name_does_not_count(tmp_path: Path, suffix: str) -> None:
    """SQLite commits happily into a file that was deleted under it; that is not called saved."""
    rows = fill(tmp_path, 5)
    store = Store(tmp_path / NAME)
    (tmp_path / f"{NAME}{suffix}").unlink()
    chain = link(rows[-1].chain, 11, 11, "", 1, 1, "", 1, "{}")
    with pytest.raises(Displaced):
        store.commit([Row(11, 11, "", 1, 1, "", 1, "{}", chain)])
    store.close()


def test_what_cannot_be_proved_is_not_written(tmp_path: Path) -> None:
    """What is still open lacks rows that were acknowledged: no journal is made that would pass for the whole."""
    rows = fill(tmp_path, 5)
    old = Store(tmp_path / NAME)
    for one in tmp_path.glob(f"{NAME}*"):
        one.unlink()
    with pytest.raises(Displaced):
        opened_again(tmp_path / NAME, old, (rows[-1].seq + 1, "0" * 64))
    assert contents(tmp_path) == {}
    opened_again(tmp_path / NAME, old, (rows[-1].seq, rows[-1].chain)).put_down()
    assert read(tmp_path) == rows


def test_a_file_that_is_in_place_is_opened_as_it_is(tmp_path: Path) -> None:
    """After an error of the disk the same file is opened again, with everything in it, and nothing is made beside."""
    rows = fill(tmp_path, 5)
    old = Store(tmp_path / NAME)
    store = opened_again(tmp_path / NAME, old, (rows[-1].seq, rows[-1].chain))
    assert store.in_place()
    assert list(rows) == list(store.rows())
    store.put_down()
    assert set(contents(tmp_path)) == {NAME}
