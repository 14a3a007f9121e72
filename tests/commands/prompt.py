"""The prompt, as tests type at it: an answer, an answer for programs, or one sentence of refusal."""

import json
from typing import Any

import pytest

from finishing_tui.cli import main


def ask(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Return what a command prints for people, without the line's end."""
    assert main(list(words)) == 0
    said = capsys.readouterr()
    assert said.err == ""
    return said.out.removesuffix("\n")


def ask_json(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    """Return the one JSON object a command answers to a program."""
    found = json.loads(ask(capsys, *words, "--json"))
    assert isinstance(found, dict)
    return found


def leave(*words: str) -> int:
    """Return the exit status of a command line, whichever way it leaves."""
    try:
        return main(list(words))
    except SystemExit as left:  # argparse leaves by itself
        return left.code if isinstance(left.code, int) else -1


def refused(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Return the one sentence of a refusal: exit status 2, and nothing printed as an answer."""
    status = leave(*words)
    said = capsys.readouterr()
    assert (status, said.out) == (2, "")
    assert said.err.count("\n") == 1
    return said.err


def help_of(capsys: pytest.CaptureFixture[str], command: str) -> str:
    """Return a command's help."""
    assert leave(command, "--help") == 0
    return capsys.readouterr().out
