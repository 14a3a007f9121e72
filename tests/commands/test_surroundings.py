"""The program in surroundings that are not as they should be: always one sentence, and never a traceback."""

import json
import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType

import pytest

from finishing_tui import shipped
from tests.commands.prompt import refused

CREW = str(shipped.recipe("crew-neck"))


def run(
    *words: str, stdout: int = subprocess.PIPE, environment: Mapping[str, str] = MappingProxyType({})
) -> "subprocess.CompletedProcess[bytes]":
    """Run the program in a process of its own, with more of the environment."""
    return subprocess.run(
        [sys.executable, "-m", "finishing_tui", *words],
        stdout=stdout, stderr=subprocess.PIPE, stdin=subprocess.DEVNULL, check=False, env={**os.environ, **environment},
    )  # fmt: skip


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="there is no such device here")
def test_an_answer_that_cannot_be_written_is_a_sentence() -> None:
    """A full disk behind a redirection: status 2, so that no script takes what is there for the answer."""
    with Path("/dev/full").open("wb") as full:
        said = run("spread", "24", "32", stdout=full.fileno())
    assert said.returncode == 2
    assert said.stderr.decode() == "finishing: the answer could not be written: no space left on device\n"


def test_a_terminal_that_knows_few_signs_gets_what_it_can_show() -> None:
    """In a locale with ASCII alone: signs that look alike for people, told once; for programs the very same values."""
    plain = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    said = run("audit", CREW, environment=plain)
    assert said.returncode == 0
    assert said.stdout.isascii()
    assert said.stderr.startswith(b"finishing: Plain letters only: text here is in ascii.")
    assert said.stderr.count(b"\n") == 1
    assert run("spread", "12", "12", environment=plain).stderr == b""
    listed = run("recipes", "--json", environment=plain)
    assert listed.stdout.isascii()
    assert json.loads(listed.stdout) == json.loads(run("recipes", "--json", environment={"PYTHONUTF8": "1"}).stdout)


STARTED = ["start", "crew-neck", "--size", "M"]


@pytest.mark.turns(of=6)
@pytest.mark.parametrize(
    ("variable", "words"),
    [
        ("FINISHING_SHELF", ["shelf", "--json"]),
        ("FINISHING_SHELF", ["demo", "slate-crew", "--json"]),
        ("FINISHING_SHELF", ["record", "slate-crew"]),
        ("FINISHING_SHELF", STARTED),
        ("FINISHING_SETTINGS", ["settings"]),
        ("FINISHING_SETTINGS", ["settings", "--write"]),
        ("FINISHING_SETTINGS", ["shelf"]),
        ("FINISHING_SETTINGS", ["demo", "slate-crew"]),
        ("FINISHING_SETTINGS", STARTED),
    ],
)
def test_a_home_folder_that_there_is_not(variable: str, words: list[str], tmp_path: Path) -> None:
    """A tilde that names nobody: one sentence that names the variable, for the shelf and for the settings."""
    said = run(*words, environment={"FINISHING_SHELF": str(tmp_path), variable: "~nobody-of-this-name/x"})
    assert said.returncode == 2
    there_is_not = f"finishing: {variable}: '~nobody-of-this-name/x' names a home folder that there is not"
    assert said.stderr.decode().startswith(there_is_not)
    assert said.stderr.count(b"\n") == 1
    assert not any(tmp_path.iterdir())


def test_a_tilde_before_a_folder_that_is_typed() -> None:
    """The same where a folder is named at the prompt."""
    said = run("record", "~nobody-of-this-name/x")
    assert said.returncode == 2
    assert said.stderr.startswith(b"finishing: '~nobody-of-this-name/x' names a home folder that there is not")


@pytest.mark.turns(of=4)
@pytest.mark.skipif(sys.platform in {"win32", "darwin"}, reason="these variables are of other systems")
@pytest.mark.parametrize("nonsense", ["part/of a path", "~/x", ".", "~nobody-of-this-name/x"])
def test_half_a_path_is_no_folder(nonsense: str, tmp_path: Path) -> None:
    """It would be another one in every folder the program is started in, so it is passed over, as the standard says."""
    home = {"HOME": str(tmp_path), "FINISHING_SHELF": "", "FINISHING_SETTINGS": ""}
    usual = run("start", "crew-neck", "--size", "M", "--json", environment=home)
    found = run(*STARTED, "--json", environment={**home, "XDG_DATA_HOME": nonsense, "XDG_CONFIG_HOME": nonsense})
    assert (found.returncode, found.stderr) == (0, b"")
    folders = [Path(json.loads(one.stdout)["folder"]).parent for one in (usual, found)]
    assert folders[0] == folders[1]
    assert folders[0].is_relative_to(tmp_path)


@pytest.mark.skipif(sys.platform == "win32", reason="a home is another thing there")
@pytest.mark.parametrize(
    ("variable", "words"),
    [
        ("FINISHING_SHELF", ["shelf", "--json"]),
        ("FINISHING_SHELF", ["demo", "slate-crew", "--json"]),
        ("FINISHING_SHELF", STARTED),
        ("FINISHING_SETTINGS", ["settings"]),
        ("FINISHING_SETTINGS", STARTED),
    ],
)
def test_nobody_has_no_home(
    variable: str, words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Without ``HOME``, for a user whom the system does not know: a sentence that says what could be set."""

    def unknown(_: int) -> None:
        raise KeyError

    monkeypatch.setattr("pwd.getpwuid", unknown)
    for name in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path))
    monkeypatch.delenv(variable)
    assert f"set HOME, or name one with {variable}" in refused(capsys, *words)
    assert not any(tmp_path.iterdir())


def test_without_a_folder_for_what_is_passing(tmp_path: Path) -> None:
    """A ``TMPDIR`` that there is not is passed over: what is written lies beside what it replaces."""
    environment = {"TMPDIR": str(tmp_path / "none"), "FINISHING_SHELF": str(tmp_path / "shelf")}
    said = run(*STARTED, environment=environment)
    assert (said.returncode, said.stderr) == (0, b"")
    assert run("doctor", "crew-neck-on-held-shoulders", environment=environment).returncode in {0, 2}


@pytest.mark.parametrize("looks", ["no such looks", "light dark", "\x1b[31m", "ascii," * 300 + "x"])
def test_looks_there_are_not(looks: str, tmp_path: Path) -> None:
    """One sentence, and no sign of a terminal's own passes through it."""
    said = run("demo", "slate-crew", environment={"FINISHING_LOOKS": looks, "FINISHING_SHELF": str(tmp_path)})
    assert said.returncode == 2
    assert said.stderr.startswith(b"finishing: FINISHING_LOOKS: ")
    assert said.stderr.count(b"\n") == 1
    assert b"\x1b" not in said.stderr
    assert not any(tmp_path.iterdir())


@pytest.mark.parametrize(("words", "status"), [(STARTED, 0), (["work", "slate-crew", "--plain"], 0), (["shelf"], 2)])
def test_settings_named_in_vain_are_told_once(words: list[str], status: int, tmp_path: Path) -> None:
    """One line before the answer, and the usual settings hold: nothing is refused for it."""
    shelf = {"FINISHING_SHELF": str(tmp_path / "shelf")}
    assert run("demo", "slate-crew", "--json", environment=shelf).returncode == 0
    said = run(*words, environment={**shelf, "FINISHING_SETTINGS": str(tmp_path / "none.toml")})
    assert said.returncode == status  # the shelf: there is no terminal here
    told = f"{tmp_path / 'none.toml'}: there is no settings file here. The usual settings hold; "
    assert said.stderr.decode().count(told) == 1
    assert said.stderr.decode().startswith(told)
    assert len(said.stderr.decode().splitlines()) == (1 if status == 0 else 2)


@pytest.mark.parametrize("shelf", ["/dev/null", "x" * 300])
def test_a_shelf_where_none_can_be(shelf: str) -> None:
    """A device, or a name that is too long: nothing is copied, and the reason is told."""
    said = run("demo", "slate-crew", "--json", environment={"FINISHING_SHELF": shelf})
    assert said.returncode == 2
    assert b"could not be made" in said.stderr
    assert said.stderr.count(b"\n") == 1
