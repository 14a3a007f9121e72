"""``finishing record`` and ``finishing doctor``, as they are typed."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press, TakeCount
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from tests.commands.prompt import ask, ask_json, leave, refused
from tests.full_disk import FullDisk, file_of
from tests.garment.folders import Watch, garment_in
from tests.garment.journal.making import contents
from tests.garment.recipes import EDGE


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Return the folder of a garment with twenty presses and a count in it, put down."""
    hand = InHand.open(garment_in(tmp_path / "grey", EDGE), clock=Watch().clock())
    hand.pick_up()
    for _ in range(20):
        assert hand.do(Press()) is None
    assert hand.do(TakeCount(20)) is None
    assert hand.put_down("on the chair")
    return tmp_path / "grey"


def test_the_record_says_where_it_stands(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """For programs and for people; nothing in the folder is changed."""
    before = contents(folder)
    data = ask_json(capsys, "record", str(folder))
    assert (data["title"], data["step"], data["steps"], data["count"], data["target"]) == (
        "grey pullover",
        1,
        4,
        20,
        48,
    )
    assert [one["counted"] for one in data["counts"]] == [20]
    assert [(one["number"], one["acts"], one["where"]) for one in data["sittings"]] == [(1, 21, "on the chair")]
    text = ask(capsys, "record", str(folder))
    assert "Step 1 of 4: Pick up the band; front edge: 20 of 48" in text
    assert "counted 20 (front edge), as expected" in text
    assert contents(folder) == before


def test_a_garment_in_hand_can_be_recorded(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Another process has it: what is saved is told."""
    hand = InHand.open(folder)
    hand.pick_up()
    hand.do(Press())
    assert hand.flush(30)
    assert ask_json(capsys, "record", str(folder))["count"] == 21
    assert "is open now" in ask(capsys, "doctor", str(folder))
    hand.put_down()


def test_a_garment_on_the_shelf_is_found_by_name(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """As ``finishing work`` finds it."""
    monkeypatch.setenv("FINISHING_SHELF", str(folder.parent))
    assert ask_json(capsys, "record", "grey")["count"] == 20
    assert ask_json(capsys, "doctor", "grey")["fault"] is None


def test_a_garment_not_begun_has_a_record_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Its plan; and there is no journal to check yet."""
    folder = str(garment_in(tmp_path, EDGE))
    assert ask_json(capsys, "record", folder)["begun"] is False
    assert "Not begun yet." in ask(capsys, "record", folder)
    assert refused(capsys, "doctor", folder)
    assert not (tmp_path / NAME).exists()


@pytest.mark.parametrize("command", ["record", "doctor"])
def test_what_is_not_there_is_said(command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """No such folder, a folder without a garment, a file: one sentence and status 2."""
    (tmp_path / "empty").mkdir()
    (tmp_path / "file").write_text("x", encoding="utf-8")
    for name in ("nowhere", "empty", "file"):
        assert refused(capsys, command, str(tmp_path / name))
    assert leave(command) == 2


def test_what_is_no_journal_is_not_touched(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Something else under its name: refused, found fault with, and left as it is."""
    (garment_in(tmp_path, EDGE) / NAME).write_bytes(b"not a journal" * 100)
    before = contents(tmp_path)
    assert refused(capsys, "record", str(tmp_path))
    assert leave("doctor", str(tmp_path)) == 1
    assert "If you have a copy of the garment's folder, use that" in capsys.readouterr().out
    assert contents(tmp_path) == before


def test_the_doctor_names_a_rescue_file_that_fits(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """What could not be saved is named with its file, for programs too, and nothing is changed."""
    file = file_of(FullDisk(monkeypatch).left_full(folder, presses=2).given_up)
    before = contents(folder), file.read_bytes()
    told = ask(capsys, "doctor", str(folder))
    assert "3 entries not saved (" in told
    assert f"It is in ~/{file.relative_to(Path.home())}." in told
    assert ask_json(capsys, "doctor", str(folder))["rescue"] == str(file)
    assert (contents(folder), file.read_bytes()) == before
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.put_down()
    assert "no longer fits" in ask(capsys, "doctor", str(folder))
    assert ask_json(capsys, "doctor", str(folder))["rescue"] is None
    file.unlink()


def test_the_doctor_finds_a_whole_journal_whole(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Checked or asked to recover, nothing is changed."""
    before = contents(folder)
    assert ask(capsys, "doctor", str(folder)) == "The journal is whole: 25 events."
    assert ask(capsys, "doctor", str(folder), "--recover").endswith("Nothing was changed.")
    data = ask_json(capsys, "doctor", str(folder), "--recover")
    assert (data["events"], data["fault"], data["aside"]) == (25, None, None)
    assert contents(folder) == before


def test_the_doctor_recovers_what_is_proved_and_destroys_nothing(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A byte of an event flipped: found, told, and on request recovered up to there, the damaged one kept beside."""
    journal = folder / NAME
    damaged = journal.read_bytes()
    at = damaged.index(b'"counted":20')
    damaged = damaged[:at] + b'"counted":21' + damaged[at + 12 :]
    journal.write_bytes(damaged)
    assert leave("doctor", str(folder)) == 1
    told = capsys.readouterr().out
    assert told.startswith("The journal is damaged: ")
    assert "run this again with --recover" in told
    assert journal.read_bytes() == damaged
    assert "damaged" in refused(capsys, "record", str(folder))
    data = ask_json(capsys, "doctor", str(folder), "--recover")
    assert data["fault"]
    assert Path(data["aside"]).read_bytes() == damaged
    assert Path(data["aside"]).parent == folder
    assert data["events"] == 23
    assert ask_json(capsys, "record", str(folder))["count"] == 20
    assert "whole" in ask(capsys, "doctor", str(folder))


def test_the_doctor_says_what_to_do_where_nothing_can_be_recovered(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Cut off after one page, then empty: in words of people, with what can be done, and begun anew on request."""
    journal = folder / NAME
    for raw, fault in (
        (journal.read_bytes()[:4096], "parts of the file are missing or were written over"),
        (b"", "the file is empty"),
    ):
        journal.write_bytes(raw)
        assert leave("doctor", str(folder)) == 1
        told = capsys.readouterr().out
        assert fault in told
        assert "with --recover sets it aside" in told
        assert fault in refused(capsys, "record", str(folder))
        assert "SQLite" not in told
        recovered = ask(capsys, "doctor", str(folder), "--recover")
        assert "Nothing could be kept. The garment starts over from its files" in recovered
        assert ask(capsys, "doctor", str(folder)).startswith("The journal is whole and still empty.")
        assert ask(capsys, "doctor", str(folder), "--recover").endswith("Nothing was changed.")
        assert ask_json(capsys, "record", str(folder))["sittings"] == []


def test_the_record_of_a_damaged_journal_says_how_to_recover_it(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The hint names the very word that is needed."""
    journal = folder / NAME
    journal.write_bytes(journal.read_bytes().replace(b'"counted":20', b'"counted":21', 1))
    assert "Run 'finishing doctor NAME --recover' to get back the first 23 events" in refused(
        capsys, "record", str(folder)
    )


def test_the_doctor_says_that_a_whole_journal_is_of_a_later_program(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The chain is whole, but an event is not known here: status 1 and a sentence, no traceback."""
    monkeypatch.setattr("finishing_tui.garment.stored._KINDS", {})
    assert leave("doctor", str(folder)) == 1
    told = capsys.readouterr().out
    assert "The journal is whole: 25 events." in told
    assert "later version" in told
