"""Files are written whole and privately, or not at all."""

import os
import sys
import tempfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.files import NotWritten, as_written, expanded, private_folder, read_plain, write_whole
from finishing_tui.garment.file import file_text
from finishing_tui.garment.sources import same_garment, same_text
from finishing_tui.recipe.reader import BadRecipe, read_recipe
from finishing_tui.recipe.reader.techniques import read_technique

posix = pytest.mark.skipif(sys.platform == "win32", reason="rights work otherwise there")


@given(old=st.none() | st.binary(), new=st.binary() | st.text(st.characters(exclude_categories=["Cs"])))
def test_what_was_written_is_there(old: bytes | None, new: bytes | str) -> None:
    """Whatever stood there: afterwards the file is the new content to the byte, and nothing else is in the folder."""
    with tempfile.TemporaryDirectory() as name:
        path = Path(name) / "one.toml"
        if old is not None:
            path.write_bytes(old)
        write_whole(path, new)
        assert path.read_bytes() == (new.encode() if isinstance(new, str) else new)
        assert os.listdir(name) == ["one.toml"]  # noqa: PTH208  (all there is, by name)


@posix
def test_files_and_folders_are_private(tmp_path: Path) -> None:
    """Both are open to their owner only, also where an open file stood before; folders that were there stay."""
    tmp_path.chmod(0o755)
    private_folder(tmp_path / "shelf" / "garment")
    private_folder(tmp_path / "shelf")
    path = tmp_path / "shelf" / "garment" / "file"
    path.write_text("open")
    path.chmod(0o644)
    write_whole(path, "private")
    assert path.stat().st_mode & 0o777 == 0o600
    assert path.parent.stat().st_mode & 0o777 == path.parent.parent.stat().st_mode & 0o777 == 0o700
    assert tmp_path.stat().st_mode & 0o777 == 0o755


@posix
def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """What a link leads to is replaced, not the link."""
    (tmp_path / "real").write_text("old")
    (tmp_path / "link").symlink_to("real")
    write_whole(tmp_path / "link", "new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_text() == "new"


@pytest.mark.parametrize("failing", ["fsync", "replace"])
def test_a_failure_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, failing: str) -> None:
    """When the disk fails at any point: one sentence, the old content stands, and nothing is left over."""
    path = tmp_path / "one.toml"
    path.write_text("old")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, failing, full)
        with pytest.raises(NotWritten, match=r"^one\.toml could not be written: no space left on device\.$"):
            write_whole(path, "new")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_what_cannot_be_made_is_said(tmp_path: Path) -> None:
    """No folder to write to, or a file where a folder should be: one sentence each."""
    with pytest.raises(NotWritten, match="could not be written"):
        write_whole(tmp_path / "none" / "file", "")
    (tmp_path / "file").write_text("")
    with pytest.raises(NotWritten, match="could not be made"):
        private_folder(tmp_path / "file" / "folder")


@pytest.mark.skipif(sys.platform == "win32", reason="there are no such files there")
def test_a_path_is_said_as_people_write_it() -> None:
    """A tilde for the home folder, which leads back to the same place; any other path as it is."""
    for path in (Path.home() / "knitting" / "crew", Path.home(), Path("/elsewhere/crew"), Path("crew")):
        assert expanded(Path(as_written(path))) == path
    assert as_written(Path.home() / "crew") == f"~{os.sep}crew"


@pytest.mark.parametrize("name", ["pipe", "device"])
def test_what_is_no_plain_file_is_refused_before_it_is_opened(tmp_path: Path, name: str) -> None:
    """A pipe that nobody writes to, a device without an end: a sentence at once, wherever a file is read."""
    path = tmp_path / "garment.toml"
    if name == "pipe":
        os.mkfifo(path)
    else:
        path.symlink_to("/dev/zero")
    with pytest.raises(OSError, match="no plain file"):
        read_plain(path)
    for read in (read_recipe, read_technique, lambda at: file_text(at.parent)):
        with pytest.raises(BadRecipe, match="the file cannot be read: it is no plain file but a pipe"):
            read(path)
    assert not same_garment(path, "")
    assert not same_text(path, "")


def test_no_more_of_a_file_is_read_than_was_asked_for(tmp_path: Path) -> None:
    """A huge file costs no more than its first bytes; a link leads to what it names."""
    (tmp_path / "large").write_bytes(b"x" * 1000)
    (tmp_path / "link").symlink_to("large")
    assert read_plain(tmp_path / "large", 10) == b"x" * 10
    assert read_plain(tmp_path / "link") == b"x" * 1000
