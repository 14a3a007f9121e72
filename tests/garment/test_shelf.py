"""The shelf: what lies on it, how far each is, and copies that are whole or not there."""

from pathlib import Path

import pytest

from finishing_tui.files import NotWritten
from finishing_tui.garment.commands import Press
from finishing_tui.garment.file import read_garment
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from finishing_tui.garment.shelf import on_shelf, shelf_folder, take_copy
from tests.garment.folders import Watch, garment_in
from tests.garment.recipes import EDGE, NECKBAND


def test_the_shelf_is_where_the_user_says(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """``FINISHING_SHELF``, or a folder of the user's own data."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path))
    assert shelf_folder() == tmp_path
    monkeypatch.delenv("FINISHING_SHELF")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert shelf_folder().name == "shelf"
    assert not shelf_folder().exists(), "looking makes nothing"


def test_garments_on_the_shelf_the_one_touched_last_first(tmp_path: Path) -> None:
    """One not begun, one under way, one whose file is bad, one whose journal is not ours; strangers are passed over."""
    garment_in(tmp_path / "fresh", EDGE)
    hand = InHand.open(garment_in(tmp_path / "under way", NECKBAND), clock=Watch().clock())
    hand.pick_up()
    hand.do(Press())
    hand.put_down()
    garment_in(tmp_path / "bad", EDGE, "enormous", more="nonsense = 1")
    (garment_in(tmp_path / "strange", EDGE) / NAME).write_bytes(b"not a journal")
    (tmp_path / "a stranger").mkdir()
    (tmp_path / "file").write_text("x", encoding="utf-8")
    found = {one.folder.name: one for one in on_shelf(tmp_path)}
    assert next(iter(found)) == "under way"
    assert found.keys() == {"fresh", "under way", "bad", "strange"}
    assert (found["fresh"].heading, found["fresh"].steps) == ("not begun", 0)
    under_way = found["under way"]
    assert (under_way.step, under_way.steps, under_way.heading) == (1, 20, "Look the pieces over")
    assert under_way.touched.startswith("2024-05-01T12:00:")
    assert "nonsense" in found["bad"].trouble
    assert found["strange"].trouble


def test_the_bar_has_the_steps_of_its_size(tmp_path: Path) -> None:
    """A step for the other size only is in no bar; the one under the needles is told apart."""
    garment_in(tmp_path / "x", NECKBAND)
    hand = InHand.open(tmp_path / "x", clock=Watch().clock())
    hand.pick_up()
    hand.put_down()
    (seen,) = on_shelf(tmp_path)
    assert seen.track[0] == "here"
    assert set(seen.track[1:]) == {"to-come"}
    assert len(seen.track) < seen.steps
    assert len(seen.track) == sum(not step.for_ or seen.size in step.for_ for step in hand.state.plan.recipe.step)


def test_there_may_be_no_shelf_yet(tmp_path: Path) -> None:
    """Then nothing lies on it."""
    assert on_shelf(tmp_path / "nowhere") == ()


def test_a_copy_gets_a_name_and_an_id_of_its_own(tmp_path: Path) -> None:
    """The same garment twice: two folders, two ids, readable by their owner only, and nothing half-made beside them."""
    source, shelf = garment_in(tmp_path / "Crew neck!", EDGE), tmp_path / "shelf"
    first, second = take_copy(source, shelf), take_copy(source, shelf)
    assert (first.name, second.name) == ("crew-neck", "crew-neck-2")
    ids = {read_garment(folder)[0].id for folder in (source, first, second)}
    assert len(ids) == 3
    assert sorted(path.name for path in shelf.iterdir()) == ["crew-neck", "crew-neck-2"]
    assert all(path.stat().st_mode & 0o077 == 0 for path in (first, *first.iterdir()))


def test_folders_in_a_garment_are_copied_and_stay_open_to_their_owner(tmp_path: Path) -> None:
    """Photographs in a folder of their own: folders 0700, files 0600, all the way down."""
    source = garment_in(tmp_path / "source", EDGE)
    (source / "photographs" / "front").mkdir(parents=True)
    (source / "photographs" / "front" / "neck.txt").write_text("x", encoding="utf-8")
    copy = take_copy(source, tmp_path / "shelf")
    modes = {path.name: path.stat().st_mode & 0o777 for path in copy.rglob("*")}
    assert (modes["photographs"], modes["front"], modes["neck.txt"]) == (0o700, 0o700, 0o600)
    assert copy.stat().st_mode & 0o777 == 0o700


def test_a_garment_that_is_no_text_is_not_copied(tmp_path: Path) -> None:
    """Its file is not UTF-8: said in a sentence, and nothing half-made is left on the shelf."""
    source, shelf = garment_in(tmp_path / "source", EDGE), tmp_path / "shelf"
    (source / "garment.toml").write_bytes(b'title = "\xff"\n')
    with pytest.raises(NotWritten, match="not UTF-8 text"):
        take_copy(source, shelf)
    assert list(shelf.iterdir()) == []


def test_what_cannot_be_copied_is_said_and_leaves_nothing(tmp_path: Path) -> None:
    """A folder without a garment in it."""
    source, shelf = tmp_path / "empty", tmp_path / "shelf"
    source.mkdir()
    with pytest.raises(NotWritten, match="could not be copied"):
        take_copy(source, shelf)
    assert list(shelf.iterdir()) == []
