"""Rescue files: what is written comes back, and nothing else is ever read as one."""

import dataclasses
import errno
import json
import os
import stat
import tempfile
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.files import NotWritten
from finishing_tui.garment.journal import NewEvent
from finishing_tui.garment.journal import rescue as rescuing
from finishing_tui.garment.journal import rescue_places as places
from finishing_tui.garment.journal.chain import START, link
from finishing_tui.garment.journal.rescue import NotOurs, Rescue, Unsound, digest_of, for_garment, groups, read, write
from finishing_tui.garment.journal.rows import Row, moment, written
from finishing_tui.garment.journal.writer import MOST_UNSAVED
from tests.garment.journal.making import NOON, entries, press, texts

numbers = st.integers(0, 2**63 - 1)
afters = st.tuples(st.integers(0, 10**6), st.text("0123456789abcdef", min_size=64, max_size=64))
folders = st.text(st.characters(min_codepoint=1, exclude_categories=["Cs"]), min_size=1)


def chained(after: tuple[int, str], together: list[list[NewEvent]], *, sitting: int = 1, after_ms: int = 0) -> Rescue:
    """Return a rescue of the groups ``together``, chained as a journal chains them."""
    seq, chain = after
    rows: list[Row] = []
    for group in together:
        first = seq + 1
        for one in group:
            seq += 1
            columns = (seq, first, moment(NOON), sitting, after_ms, one.kind, one.version, written(one.body))
            chain = link(chain, *columns)
            rows.append(Row(*columns, chain))
    return Rescue("grey", "/shelf/grey", after, tuple(rows))


rescues = st.builds(
    chained,
    afters,
    st.lists(st.lists(entries, min_size=1, max_size=3), min_size=1, max_size=4),
    sitting=numbers,
    after_ms=numbers,
)
SMALL = chained((3, "a" * 64), [[press(1)], [press(2), press(3)]])


@given(rescues, texts, folders)
def test_what_is_written_comes_back(rescue: Rescue, garment: str, folder: str) -> None:
    """Any rows of any garment, in a file for this user alone, whose name says for which garment it is."""
    rescue = dataclasses.replace(rescue, garment=garment, folder=folder)
    with tempfile.TemporaryDirectory() as place:
        file = write(rescue, Path(place))
        assert read(file) == rescue
        assert for_garment(file.name) == digest_of(garment)
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
        assert list(Path(place).iterdir()) == [file]


def test_a_folder_whose_name_is_no_text(tmp_path: Path) -> None:
    """A name with bytes that are not UTF-8 comes back as it is."""
    rescue = dataclasses.replace(SMALL, folder=os.fsdecode(b"/shelf/gr\xffy"))
    assert read(write(rescue, tmp_path)) == rescue


def test_any_byte_that_is_changed(tmp_path: Path) -> None:
    """Each single byte put otherwise, left away or doubled is refused in words."""
    file = write(SMALL, tmp_path)
    whole = file.read_bytes()
    for at, byte in enumerate(whole):
        for other in (bytes([byte ^ 1]), bytes([byte ^ 0x80]), b"", bytes([byte, byte])):
            if whole[:at] + other + whole[at + 1 :] != whole:
                file.write_bytes(whole[:at] + other + whole[at + 1 :])
                with pytest.raises(Unsound):
                    read(file)


@given(st.binary(max_size=300), st.booleans())
def test_any_bytes_at_all(content: bytes, sealed: bool) -> None:  # noqa: FBT001  (hypothesis gives it)
    """Whatever lies under such a name, sealed or not, is refused in words."""
    content = content + b"\n" if sealed else content
    with tempfile.TemporaryDirectory() as place:
        file = write(SMALL, Path(place))
        file.write_bytes(content + _seal(content) if sealed else content)
        with pytest.raises(Unsound):
            read(file)


def _seal(content: bytes) -> bytes:
    return f'{{"sha256": "{sha256(content).hexdigest()}"}}\n'.encode()


def _crafted(header: dict[str, object], *rows: object) -> bytes:
    """Return a file with a right checksum, as someone could make one who knows the format."""
    content = "".join(f"{json.dumps(one)}\n" for one in (header, *rows)).encode()
    return content + _seal(content)


HEADER = {
    "finishing": "rescue", "format": 1, "garment": "grey", "folder": "/shelf/grey",
    "seq": 3, "chain": "a" * 64, "rows": 3,
}  # fmt: skip
COLUMNS: list[list[Any]] = [list(one) for one in SMALL.rows]


@pytest.mark.parametrize(
    "change",
    [
        {"finishing": "journal"}, {"format": 0}, {"format": 2}, {"format": True}, {"format": "1"}, {"garment": None},
        {"folder": 7}, {"seq": -1}, {"seq": 2**63}, {"seq": 3.0}, {"seq": True}, {"chain": "A" * 64}, {"chain": ""},
        {"rows": 2}, {"rows": 4}, {"rows": 10**30}, {"more": 1},
    ],
)  # fmt: skip
def test_a_first_line_that_is_wrong(change: dict[str, object], tmp_path: Path) -> None:
    """Each key of the first line, of a wrong type or out of range, is refused in words; the checksum is right."""
    file = write(SMALL, tmp_path)
    file.write_bytes(_crafted(HEADER, *COLUMNS))
    assert read(file) == SMALL
    file.write_bytes(_crafted({**HEADER, **change}, *COLUMNS))
    with pytest.raises(Unsound):
        read(file)
    if "more" not in change:
        file.write_bytes(_crafted({key: value for key, value in HEADER.items() if key not in change}, *COLUMNS))
        with pytest.raises(Unsound):
            read(file)


@given(
    at=st.integers(0, 8),
    value=st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text() | st.just([1])
    | st.sampled_from(["2024-05-01", "[]", "NaN", "\ud800", '{"n":1}', "[" * 50_000, "9" * 5000]),
)  # fmt: skip
def test_a_row_that_is_wrong(at: int, value: object) -> None:
    """A column that is wrong is refused in words, though the chain and the checksum are made to fit."""
    columns = list(COLUMNS[0])
    if columns[at] == value and type(columns[at]) is type(value):
        return
    columns[at] = value
    try:
        chain = link("a" * 64, *columns[:8])
    except (TypeError, UnicodeEncodeError):
        chain = "b" * 64
    columns[8] = value if at == 8 else chain
    with tempfile.TemporaryDirectory() as place:
        file = write(SMALL, Path(place))
        file.write_bytes(_crafted({**HEADER, "rows": 1}, columns))
        try:
            found = read(file)
        except Unsound:
            return
    (one,) = found.rows  # what is taken is of the right kind: another text, number or body
    assert at in {3, 4, 5, 6, 7} or (at == 1 and one.group < one.seq)  # its group may have begun before it
    assert isinstance(one.body, dict)
    assert all(0 <= number <= 2**63 - 1 for number in (one.sitting, one.after_ms, one.version))


def test_no_rows_and_too_many(tmp_path: Path) -> None:
    """A file without a row, and one with more groups than ever wait, are refused."""
    file = write(SMALL, tmp_path)
    file.write_bytes(_crafted({**HEADER, "rows": 0}))
    with pytest.raises(Unsound):
        read(file)
    most = chained((0, START), [[press(number)] for number in range(MOST_UNSAVED)])
    assert read(write(most, tmp_path)) == most
    more = chained((0, START), [[press(number)] for number in range(MOST_UNSAVED + 1)])
    assert groups(more.rows) == MOST_UNSAVED + 1
    with pytest.raises(Unsound, match="more entries"):
        read(write(more, tmp_path))


def test_what_is_no_plain_file(tmp_path: Path) -> None:
    """A link, a pipe, a folder and nothing at all are never read, and nobody waits for the pipe."""
    file = write(SMALL, tmp_path)
    (tmp_path / "link").symlink_to(file)
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "folder").mkdir()
    for name in ("link", "pipe", "folder", "nothing"):
        with pytest.raises(NotOurs):
            read(tmp_path / name)


def test_what_others_could_have_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A second name, and rights for others to write, are refused; so is a file that belongs to someone else."""
    file = write(SMALL, tmp_path)
    os.link(file, tmp_path / "second")
    with pytest.raises(Unsound, match="second name"):
        read(file)
    (tmp_path / "second").unlink()
    for mode in (0o620, 0o602):
        file.chmod(mode)
        with pytest.raises(Unsound, match="others"):
            read(file)
    file.chmod(0o644)
    assert read(file) == SMALL
    monkeypatch.setattr(os, "geteuid", lambda: os.getuid() + 1)
    with pytest.raises(NotOurs, match="someone else"):
        read(file)


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() != 0, reason="only a superuser can give a file away")
def test_a_file_of_another_owner(tmp_path: Path) -> None:
    """A file that really belongs to another user is not read."""
    file = write(SMALL, tmp_path)
    os.chown(file, 12345, 12345)
    with pytest.raises(NotOurs, match="someone else"):
        read(file)


def test_too_large(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file larger than the cap is neither read nor written; its size is looked at before it is read."""
    file = write(SMALL, tmp_path)
    os.truncate(file, 2**40)  # no file system holds that many bytes here: reading them would show
    with pytest.raises(Unsound, match="more than"):
        read(file)
    file.unlink()
    monkeypatch.setattr(rescuing, "MOST_BYTES", 100)
    with pytest.raises(NotWritten):
        write(SMALL, tmp_path)
    assert not list(tmp_path.iterdir())


def test_what_cannot_be_written_whole_is_removed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that fails at the last moment leaves nothing behind."""

    def failing(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(rescuing, "sync", failing)
    with pytest.raises(NotWritten, match="no space left"):
        write(SMALL, tmp_path)
    assert not list(tmp_path.iterdir())


def _placed(monkeypatch: pytest.MonkeyPatch, devices: dict[Path, int], *among: places.RescuePlace) -> None:
    monkeypatch.setattr(places, "places", lambda: among)
    monkeypatch.setattr(places, "_device", devices.get)


def test_another_disk_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of the places in their order those on another disk than the garment come first; one that fails is passed over."""
    garment, state, home, temporary = (tmp_path / name for name in ("garment", "state", "home", "temporary"))
    for folder in (garment, home, temporary):
        folder.mkdir()
    among = places.RescuePlace(state), places.RescuePlace(home), places.RescuePlace(temporary, temporary=True)
    for devices, wanted in (((1, 1, 1), state), ((1, 2, 2), home), ((1, 1, 2), temporary), ((2, 2, 2), state)):
        _placed(monkeypatch, {garment: 1, **dict(zip((state, home, temporary), devices, strict=True))}, *among)
        put = places.put(SMALL, garment)
        assert put.file.parent == wanted
        assert put.temporary is (wanted == temporary)
        assert read(put.file) == SMALL
        put.file.unlink()
    home.rmdir()
    home.write_text("no folder")
    _placed(monkeypatch, {garment: 1, state: 1, home: 2, temporary: 1}, *among)
    assert places.put(SMALL, garment).file.parent == state


def test_never_in_the_garments_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A place that is the garment's folder or lies in it, by a link too, is not taken; with no other, that is said."""
    garment = tmp_path / "garment"
    garment.mkdir()
    (tmp_path / "link").symlink_to(garment)
    inside = (
        places.RescuePlace(garment),
        places.RescuePlace(garment / "state"),
        places.RescuePlace(tmp_path / "link", temporary=True),
    )
    _placed(monkeypatch, {}, *inside)
    with pytest.raises(NotWritten):
        places.put(SMALL, garment)
    assert not list(garment.iterdir())


def test_names_are_found_in_every_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Files named as rescue files are found wherever one may lie, and nothing else is."""
    _placed(
        monkeypatch,
        {},
        places.RescuePlace(tmp_path / "none"),
        places.RescuePlace(tmp_path),
        places.RescuePlace(tmp_path / "more"),
    )
    (tmp_path / "more").mkdir()
    found = write(SMALL, tmp_path), write(SMALL, tmp_path / "more")
    (tmp_path / "finishing-rescue-grey.jsonl").write_text("")
    assert places.rescue_files() == tuple(sorted(found))


def test_the_real_places(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The user's state folder, home and the temporary folder, in this order; without a home that one is left out."""
    monkeypatch.setenv("HOME", str(tmp_path))
    found = places.places()
    assert [one.temporary for one in found] == [False, False, True]
    assert found[0].folder.is_relative_to(tmp_path)
    assert found[1].folder == tmp_path
    monkeypatch.setenv("HOME", str(tmp_path / "nowhere"))
    assert tmp_path / "nowhere" not in {one.folder for one in places.places()}
