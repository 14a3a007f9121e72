"""The command line as a whole: what holds whichever command is asked for."""

import tomllib
from pathlib import Path

import pytest

from finishing_tui.cli import COMMANDS, main

PROJECT = Path(__file__).parents[1] / "pyproject.toml"


def test_the_version_is_the_projects(capsys: pytest.CaptureFixture[str]) -> None:
    """``--version`` says what ``pyproject.toml`` says, and nothing else."""
    with pytest.raises(SystemExit) as end:
        main(["--version"])
    assert end.value.code == 0
    version = tomllib.loads(PROJECT.read_text(encoding="utf-8"))["project"]["version"]
    assert capsys.readouterr().out == f"finishing {version}\n"


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_explains_itself(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """``--help`` of each says what it is for, and shows an example of it."""
    with pytest.raises(SystemExit) as end:
        main([name, "--help"])
    assert end.value.code == 0
    told = capsys.readouterr().out
    assert f"finishing {name}" in told
    assert COMMANDS[name][1][1:] in " ".join(told.split())
