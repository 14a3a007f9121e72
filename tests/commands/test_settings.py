"""``finishing settings``: what is set, what each setting means, and a file to begin with."""

import re
import stat
import sys
from pathlib import Path

import pytest

from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.settings import Settings, read_settings
from finishing_tui.talk.rooms import KEYED
from tests.commands.prompt import ask, ask_json, refused


@pytest.fixture
def path(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return where the settings are to be, with no file there yet."""
    monkeypatch.setenv("FINISHING_SETTINGS", str(tmp_path / "new" / "mine.toml"))
    return tmp_path / "new" / "mine.toml"


def test_a_file_is_written_whole_and_private_and_only_once(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """``--write`` makes it, in a folder it makes too; a second time it stays as it is."""
    assert ask(capsys, "settings", "--write").startswith(f"Written: {path}")
    assert read_settings() == Settings()
    if sys.platform != "win32":
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert [file.name for file in path.parent.iterdir()] == [path.name]
    path.write_text('hand = "left"\n')
    assert "is there already; change it with an editor" in refused(capsys, "settings", "--write")
    assert path.read_text() == 'hand = "left"\n'


def test_every_setting_is_told_with_its_value_and_its_meaning(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """People read values as a file has them; programs get the same as JSON, every action with its keys."""
    path.parent.mkdir()
    path.write_text('pace = "run"\nbell = ["target"]\n[keys.needles]\npress = ["?", "f13"]\nhelp = "f1"\n')
    told = ask(capsys, "settings")
    assert told.splitlines()[0] == str(path)
    assert 'pace = "run"\n' in told
    assert 'bell = ["target"]\n' in told
    assert '  press = ["?", "f13"]  count one, or tick it off (usually space)\n' in told
    assert all(meaning in " ".join(told.split()) for meaning in field_texts(Settings).values())
    found = ask_json(capsys, "settings")
    assert (found["file"], found["exists"]) == (str(path), True)
    assert found["settings"]["pace"] == {"value": "run", "usual": "loop", "text": field_texts(Settings)["pace"]}
    assert found["keys"]["needles"]["press"]["keys"] == ["?", "f13"]
    assert found["keys"]["needles"]["press"]["usual"] == ["space"]
    assert {f"{group}.{name}" for group, names in found["keys"].items() for name in names} == set(KEYED)


def test_the_program_that_speaks_is_told(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Where there is one its whole name is told, and where not, what would be needed."""
    path.parent.mkdir()
    path.write_text(f"speak_with = [{str(Path(sys.executable))!r}]\n")
    assert f"Now it would be {sys.executable}." in ask(capsys, "settings")
    path.write_text('speak_with = ["no-such-parrot"]\n')
    assert "Nothing is spoken: there is no program 'no-such-parrot' here" in ask(capsys, "settings")
    assert ask_json(capsys, "settings")["speaks"] is None


def test_the_looks_of_the_environment_are_told(
    path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the environment counts instead of the file, that is said."""
    path.parent.mkdir()
    path.write_text("")
    monkeypatch.setenv("FINISHING_LOOKS", "light")
    assert "Now FINISHING_LOOKS says: light" in ask(capsys, "settings")


@pytest.mark.parametrize("command", [("settings",), ("shelf",), ("work", "."), ("start", "crew-neck", "--size", "M")])
def test_whatever_is_wrong_ends_with_status_2(
    path: Path, command: tuple[str, ...], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every command that goes by the settings names file, line, key and what would be right."""
    path.parent.mkdir()
    path.write_text('looks = "lihgt"\n')
    (path.parent / "garment.toml").write_text("")
    monkeypatch.chdir(path.parent)
    monkeypatch.setenv("FINISHING_SHELF", str(path.parent / "shelf"))
    said = refused(capsys, *command)
    assert re.fullmatch(rf"finishing: {path}:1: looks: \"lihgt\" stands here; did you mean 'light'\?\n", said)


def test_a_file_that_is_named_and_missing_is_told(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It says so once, in its answer, and how to get one."""
    told = ask(capsys, "settings").splitlines()[0]
    assert told == f"{path} (no such file: the usual settings hold; --write makes one)"
    assert not path.exists()
