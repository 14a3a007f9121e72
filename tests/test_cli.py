"""The command line as a whole: what holds whichever command is asked for."""

import re
import tomllib
from pathlib import Path

import pytest

from finishing_tui.cli import COMMANDS, main
from tests.commands.prompt import ask, leave, refused

PROJECT = Path(__file__).parents[1] / "pyproject.toml"
HOUSE = PROJECT.parent / "finishing_tui"


def test_the_version_is_the_projects(capsys: pytest.CaptureFixture[str]) -> None:
    """``--version`` says what ``pyproject.toml`` says, and nothing else."""
    with pytest.raises(SystemExit) as end:
        main(["--version"])
    assert end.value.code == 0
    version = tomllib.loads(PROJECT.read_text(encoding="utf-8"))["project"]["version"]
    assert capsys.readouterr().out == f"finishing {version}\n"


def test_help_names_what_is_read_of_the_environment(capsys: pytest.CaptureFixture[str]) -> None:
    """Every variable that the program's own files ask for stands there on a line of its own, in 80 columns."""
    assert leave("--help") == 0
    lines = capsys.readouterr().out.splitlines()
    asked = {name for path in HOUSE.rglob("*.py") for name in re.findall(r"FINISHING_\w+", path.read_text())}
    for name in (*asked, "NO_COLOR", "TERM"):
        assert sum(line.split()[:1] == [name] for line in lines) == 1
    assert all(len(line) <= 80 for line in lines if not line.startswith("usage"))


def test_a_command_called_like_a_key_is_understood_still(capsys: pytest.CaptureFixture[str]) -> None:
    """The old word answers as the new one does, and no help lists it."""
    assert ask(capsys, "space", "24", "32") == ask(capsys, "spread", "24", "32")
    assert leave("--help") == 0
    assert not re.search(r"^ *space", capsys.readouterr().out, re.MULTILINE)


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("spce", "did you mean spread?"),
        ("recipe", "did you mean recipes?"),
        ("Doctor", "did you mean doctor?"),
        ("zzzzz", "see 'finishing --help'"),
    ],
)
def test_a_command_there_is_not(typed: str, hint: str, capsys: pytest.CaptureFixture[str]) -> None:
    """One sentence, with the nearest name where one is near."""
    assert refused(capsys, typed, "12") == f"finishing: there is no command {typed!r}; {hint}\n"


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_explains_itself(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """``--help`` of each says what it is for, and shows an example of it."""
    with pytest.raises(SystemExit) as end:
        main([name, "--help"])
    assert end.value.code == 0
    told = capsys.readouterr().out
    assert f"finishing {name}" in told
    assert COMMANDS[name][1][1:] in " ".join(told.split())
