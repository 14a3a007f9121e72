"""Damage is found, never replayed as truth, and what the chain proves is kept byte for byte."""

import shutil
import sqlite3
import tempfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.garment.journal import NAME, Damaged, Journal, Row, check, recover
from finishing_tui.garment.journal.errors import Newer
from finishing_tui.garment.journal.recovery import Recovery
from tests.examples import share
from tests.garment.journal.making import NOON, contents, fill, press, read

PAGE = 4096


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> tuple[bytes, tuple[Row, ...]]:
    """Give the bytes and the rows of a sound journal of many pages."""
    folder = tmp_path_factory.mktemp("sound")
    rows = fill(folder, 150)
    return (folder / NAME).read_bytes(), rows


def lay(folder: Path, content: bytes) -> Path:
    """Put ``content`` as the journal into ``folder``; return its path."""
    path = folder / NAME
    path.write_bytes(content)
    return path


def recovered(folder: Path, content: bytes, rows: tuple[Row, ...]) -> Recovery:
    """Recover ``content``, and prove what must hold after every recovery; return what it says of itself."""
    result = recover(folder)
    back = read(folder)
    assert back == rows[: result.events]
    if result.aside is None:
        assert result.fault is None
        assert result.events == len(rows)
    else:
        assert result.aside.read_bytes() == content
        assert result.fault
        assert result.unsure == (back[-1].group if back else None)
    assert check(folder).fault is None
    with Journal.open(folder) as journal:
        journal.append([press(1)], at=NOON, sitting=2, after_ms=0)
    assert read(folder)[:-1] == back
    return result


@settings(max_examples=share(25))
@given(data=st.data())
def test_a_flipped_bit_anywhere(sound: tuple[bytes, tuple[Row, ...]], data: st.DataObject) -> None:
    """One bit flipped anywhere in the file: reading gives the truth or refuses, and recovery gives a true beginning.

    On the first page, which is the same in every journal but for its counters, nothing at all is lost.
    """
    content, rows = sound
    at = data.draw(st.integers(0, len(content) - 1) | st.integers(0, PAGE - 1), "byte")
    changed = bytearray(content)
    changed[at] ^= 1 << data.draw(st.integers(0, 7), "bit")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay(folder, bytes(changed))
        whole = len(rows)
        try:
            assert read(folder) == rows
        except Newer:
            assert 60 <= at < 64  # a format of the future may look like this: it is left alone
            assert contents(folder) == {NAME: bytes(changed)}
            return
        except Damaged as error:
            whole = error.whole
        result = recovered(folder, bytes(changed), rows)
        assert result.events == whole
        if at < PAGE:
            assert result.events == len(rows)


@settings(max_examples=share(25))
@given(data=st.data())
def test_a_flipped_bit_in_a_body(sound: tuple[bytes, tuple[Row, ...]], data: st.DataObject) -> None:
    """One bit flipped in the body of event n: exactly the n - 1 before it are kept."""
    content, rows = sound
    row = data.draw(st.sampled_from(rows), "event")
    at = content.index(row.text.encode()) + data.draw(st.integers(0, len(row.text.encode()) - 1), "byte")
    changed = bytearray(content)
    changed[at] ^= 1 << data.draw(st.integers(0, 7), "bit")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay(folder, bytes(changed))
        with pytest.raises(Damaged) as caught:
            Journal.open(folder)
        assert caught.value.whole == row.seq - 1
        assert recovered(folder, bytes(changed), rows).events == row.seq - 1


@settings(max_examples=share(25))
@given(data=st.data())
def test_a_file_cut_short(sound: tuple[bytes, tuple[Row, ...]], data: st.DataObject) -> None:
    """A file cut anywhere: refused, and every event before the first that was cut away is kept."""
    content, rows = sound
    length = data.draw(st.integers(0, len(content) - 1), "length")
    lost = next(
        row.seq for row in rows if content.index(row.chain.encode()) + len(row.chain) > length
    )  # its last column
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay(folder, content[:length])
        with pytest.raises(Damaged) as caught:
            Journal.open(folder)
        result = recovered(folder, content[:length], rows)
        assert result.events == caught.value.whole <= lost - 1
        if length % PAGE == 0 and length > 2 * PAGE:
            assert result.events == lost - 1


@pytest.mark.parametrize("at", [*range(16, 20), 59, *range(68, 72)])
def test_every_byte_of_the_head_that_counts(tmp_path: Path, sound: tuple[bytes, tuple[Row, ...]], at: int) -> None:
    """A byte that says how the file is to be read, or whose it is, is rubbish: found, and nothing is lost."""
    content, rows = sound
    changed = content[:at] + b"\x9e" + content[at + 1 :]
    lay(tmp_path, changed)
    with pytest.raises(Damaged) as caught:
        Journal.open(tmp_path)
    assert caught.value.whole == len(rows)
    assert check(tmp_path).events == len(rows)
    assert recovered(tmp_path, changed, rows).events == len(rows)


def overwritten(content: bytes) -> bytes:
    """Return ``content`` with a page in the middle overwritten."""
    middle = len(content) // PAGE // 2 * PAGE
    return content[:middle] + b"\xa5" * PAGE + content[middle + PAGE :]


@pytest.mark.parametrize(
    "harm",
    [
        overwritten,
        lambda _: b"",
        lambda content: b"\0" * len(content),
        lambda _: b"not a journal at all\n" * 1000,
        lambda _: b"short",
        lambda content: content[: 2 * PAGE],
        lambda content: content[PAGE:],
        lambda content: b"\xff" * PAGE + content[PAGE:],
        lambda content: content[:18] + b"\x9e" + content[19:],
        lambda content: content.replace(b"BEGIN SELECT", b"BEG\xc9N SELECT", 1),
    ],
    ids=["page", "empty", "zeros", "text", "short", "start", "headless", "first page", "mode", "no text"],
)
def test_gross_harm(tmp_path: Path, sound: tuple[bytes, tuple[Row, ...]], harm: Callable[[bytes], bytes]) -> None:
    """Whatever happened to the file: one sentence, a copy aside, and a journal of what can be proved."""
    content, rows = sound
    lay(tmp_path, harm(content))
    for look in (True, False):
        with pytest.raises(Damaged, match="damaged"):
            Journal.open(tmp_path, look=look)
    recovered(tmp_path, harm(content), rows)


def test_a_lost_first_page_costs_nothing(tmp_path: Path, sound: tuple[bytes, tuple[Row, ...]]) -> None:
    """A first page of rubbish hides where the tables begin, but that is known: every event is kept."""
    content, rows = sound
    lay(tmp_path, b"\xff" * PAGE + content[PAGE:])
    assert recover(tmp_path).events == len(rows)


def test_missing_rows_are_found(tmp_path: Path) -> None:
    """Events taken out by someone who dropped the triggers: found, and those before the gap are kept."""
    rows = fill(tmp_path, 10, 1)
    with closing(sqlite3.connect(tmp_path / NAME)) as connection:
        (again,) = connection.execute("SELECT sql FROM sqlite_schema WHERE name = 'events_are_kept'").fetchone()
        connection.execute("DROP TRIGGER events_are_kept")
        connection.execute("DELETE FROM events WHERE seq IN (5, 6)")
        connection.execute(again)
        connection.commit()
    assert check(tmp_path).fault == "event 5 is missing"
    with pytest.raises(Damaged) as caught:
        Journal.open(tmp_path)
    assert caught.value.whole == 4
    assert recover(tmp_path).events == 4
    assert read(tmp_path) == rows[:4]


def test_tables_that_are_not_ours_are_not_trusted(tmp_path: Path) -> None:
    """A trigger slipped into the file is found before anything is written; recovery keeps every event without it."""
    rows = fill(tmp_path, 5)
    with closing(sqlite3.connect(tmp_path / NAME)) as connection:
        connection.execute("CREATE TRIGGER extra AFTER INSERT ON events BEGIN DELETE FROM snapshots; END")
        connection.commit()
    with pytest.raises(Damaged, match="tables"):
        Journal.open(tmp_path)
    assert recover(tmp_path).events == len(rows)
    assert read(tmp_path) == rows


def test_nothing_is_ever_overwritten(tmp_path: Path, sound: tuple[bytes, tuple[Row, ...]]) -> None:
    """Damaged twice, recovered twice: both damaged journals are kept, under two names, open to their owner only."""
    content, _ = sound
    kept = []
    for number in range(2):
        harmed = content[: (3 + number) * PAGE]
        lay(tmp_path, harmed)
        aside = recover(tmp_path).aside
        assert aside is not None
        assert aside.stat().st_mode & 0o077 == 0
        kept.append((aside, harmed))
    assert len({aside for aside, _ in kept}) == 2
    assert [aside.read_bytes() for aside, _ in kept] == [harmed for _, harmed in kept]


def test_a_sound_journal_is_left_alone(tmp_path: Path) -> None:
    """There is nothing to recover in a sound journal, and nothing is done."""
    rows = fill(tmp_path, 5)
    before = contents(tmp_path)
    assert recover(tmp_path) == Recovery(len(rows), None, None, None)
    assert contents(tmp_path) == before


@pytest.fixture(scope="module")
def in_hand(tmp_path_factory: pytest.TempPathFactory) -> tuple[bytes, bytes, tuple[Row, ...]]:
    """Give the file, the log and the rows of a journal as they lie on the disk while it is in hand."""
    folder = tmp_path_factory.mktemp("in hand")
    fill(folder, 20)
    with Journal.open(folder) as journal:
        for number in range(30):
            journal.append([press(100 + number)], at=NOON, sitting=2, after_ms=number)
            assert journal.flush(30)
        rows = tuple(journal.rows())
        copy = (folder / NAME).read_bytes(), (folder / f"{NAME}-wal").read_bytes()
    assert copy[1]
    return *copy, rows


@settings(max_examples=share(40))
@given(data=st.data())
def test_a_torn_log(in_hand: tuple[bytes, bytes, tuple[Row, ...]], data: st.DataObject) -> None:
    """A log cut or flipped anywhere, as after a power cut or in a copy made while open: shorter, but only true rows."""
    file, log, rows = in_hand
    if data.draw(st.booleans(), "cut"):
        log = log[: data.draw(st.integers(0, len(log)), "length")]
    else:
        at = data.draw(st.integers(0, len(log) - 1), "byte")
        log = log[:at] + bytes([log[at] ^ (1 << data.draw(st.integers(0, 7), "bit"))]) + log[at + 1 :]
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay(folder, file)
        (folder / f"{NAME}-wal").write_bytes(log)
        with Journal.open(folder) as journal:
            back = tuple(journal.rows())
            assert back == rows[: len(back)]
            assert len(back) >= 40
            journal.append([press(1)], at=NOON, sitting=3, after_ms=0)
        assert len(read(folder)) == len(back) + 1


def test_a_copy_of_an_open_garment(in_hand: tuple[bytes, bytes, tuple[Row, ...]], tmp_path: Path) -> None:
    """The file with its log is all of it; the file alone lacks the last rows and is whole."""
    file, log, rows = in_hand
    lay(tmp_path, file)
    assert read(tmp_path) == rows[:40]
    shutil.rmtree(tmp_path)
    tmp_path.mkdir()
    lay(tmp_path, file)
    (tmp_path / f"{NAME}-wal").write_bytes(log)
    assert read(tmp_path) == rows


def test_damage_with_a_log(in_hand: tuple[bytes, bytes, tuple[Row, ...]], tmp_path: Path) -> None:
    """Damage in the file, with rows in the log: the log is kept aside too, and the copy pairs with it."""
    file, log, rows = in_hand
    at = file.index(rows[7].text.encode())
    harmed = file[:at] + b"?" + file[at + 1 :]
    # every page that the log has anew hides the harm in the file below it
    newest = [log[at + 24 : at + 24 + PAGE] for at in range(32, len(log), 24 + PAGE)]
    hidden = any(rows[7].text.encode() in page for page in newest)
    assert not hidden
    lay(tmp_path, harmed)
    (tmp_path / f"{NAME}-wal").write_bytes(log)
    result = recover(tmp_path)
    assert result.events == 7
    assert result.aside is not None
    assert result.aside.read_bytes() == harmed
    assert result.aside.with_name(result.aside.name + "-wal").read_bytes() == log
    assert read(tmp_path) == rows[:7]
    assert not (tmp_path / f"{NAME}-wal").exists()
