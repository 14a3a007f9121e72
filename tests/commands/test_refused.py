"""What is refused leaves nothing behind: neither ``demo`` nor ``start`` puts a garment on the shelf for nothing."""

import errno
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.garment import shelf as shelf_room
from finishing_tui.garment.starting import Draft, file_text
from finishing_tui.screens.app import FinishingApp
from tests.commands.prompt import leave, refused


@pytest.fixture(autouse=True)
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the shelf of a test, and let nothing be drawn."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    monkeypatch.setattr(FinishingApp, "run", _not_to_be_run)
    return tmp_path / "shelf"


def _not_to_be_run(*_: object, **__: object) -> None:
    raise AssertionError("what is refused opens no screens")


@pytest.fixture
def terminal(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the streams look like a terminal."""
    del capsys
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)


def _bad_settings(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (folder / "settings.toml").write_text("hand = 2020-01-01\n")
    monkeypatch.setenv("FINISHING_SETTINGS", str(folder / "settings.toml"))


def _bad_keys(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (folder / "settings.toml").write_text('[keys.needles]\npress = "x"\n')
    monkeypatch.setenv("FINISHING_SETTINGS", str(folder / "settings.toml"))


def _settings_of_nobody(_: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FINISHING_SETTINGS", "~nobody-of-this-name/x")


def _bad_looks(_: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("FINISHING_LOOKS", "lihgt")


Trouble = Callable[[Path, pytest.MonkeyPatch], None]


@pytest.mark.usefixtures("terminal")
@pytest.mark.parametrize("trouble", [_bad_settings, _bad_keys, _settings_of_nobody, _bad_looks])
def test_a_demo_that_cannot_be_opened_is_not_copied(
    trouble: Trouble, tmp_path: Path, shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Settings, keys and looks are asked about before the copy is made."""
    trouble(tmp_path, monkeypatch)
    refused(capsys, "demo", "slate-crew")
    assert not shelf.exists()


def test_a_demo_without_a_terminal_is_not_copied(shelf: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nor where there is nothing to draw on."""
    assert "need a terminal" in refused(capsys, "demo", "slate-crew")
    assert not shelf.exists()


@pytest.mark.parametrize("trouble", [_bad_settings, _bad_keys, _settings_of_nobody])
def test_a_start_with_wrong_settings_leaves_nothing(
    trouble: Trouble, tmp_path: Path, shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The hand is asked of the settings before anything is written."""
    trouble(tmp_path, monkeypatch)
    refused(capsys, "start", "crew-neck", "--size", "M")
    assert not shelf.exists()


@pytest.mark.parametrize(
    "words", [("start", "crew-neck", "--size", "M"), ("start", "crew-neck", "--size", "M", "--json"),
              ("demo", "slate-crew", "--json")],
)  # fmt: skip
def test_a_shelf_that_cannot_be_made_durable_is_left_empty(
    words: tuple[str, ...], shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A disk that fails once the garment has its name: it is refused, so it is not there either, whole or in part."""

    def fails(_: Path) -> None:
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(shelf_room, "sync_folder", fails)
    assert "input/output error" in refused(capsys, *words)
    assert not any(shelf.iterdir())


def test_a_recipe_that_changes_while_it_is_started_leaves_nothing(
    tmp_path: Path, shelf: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """What is on the shelf is read once more; where that is refused, it is taken away."""
    recipe = tmp_path / "own.toml"
    recipe.write_text(shipped.recipe("crew-neck").read_text())

    def changed(draft: Draft, name: str) -> str:
        recipe.write_text("format = 2020-01-01\n")
        return file_text(draft, name)

    monkeypatch.setattr("finishing_tui.commands.start.file_text", changed)
    assert leave("start", str(recipe), "--size", "M") == 2
    assert "format: the date or time 2020-01-01 stands here" in capsys.readouterr().err
    assert not any(shelf.iterdir())
