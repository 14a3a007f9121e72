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
        said = run("space", "24", "32", stdout=full.fileno())
    assert said.returncode == 2
    assert said.stderr.decode() == "finishing: the answer could not be written: no space left on device\n"


def test_a_terminal_that_knows_few_signs_gets_what_it_can_show() -> None:
    """In a locale with ASCII alone: a question mark for people, and for programs the very same values."""
    plain = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    said = run("audit", CREW, environment=plain)
    assert (said.returncode, said.stderr) == (0, b"")
    assert said.stdout.isascii()
    listed = run("recipes", "--json", environment=plain)
    assert listed.stdout.isascii()
    assert json.loads(listed.stdout) == json.loads(run("recipes", "--json", environment={"PYTHONUTF8": "1"}).stdout)


@pytest.mark.parametrize("words", [["shelf", "--json"], ["demo", "slate-crew", "--json"], ["record", "slate-crew"]])
def test_a_home_folder_that_there_is_not(words: list[str]) -> None:
    """A tilde that names nobody: told as such, for the shelf and for a folder."""
    said = run(*words, environment={"FINISHING_SHELF": "~nobody-of-this-name/shelf"})
    assert said.returncode == 2
    assert b"names a home folder that there is not" in said.stderr
    assert said.stderr.count(b"\n") == 1


@pytest.mark.parametrize("shelf", ["/dev/null", "x" * 300])
def test_a_shelf_where_none_can_be(shelf: str) -> None:
    """A device, or a name that is too long: nothing is copied, and the reason is told."""
    said = run("demo", "slate-crew", "--json", environment={"FINISHING_SHELF": shelf})
    assert said.returncode == 2
    assert b"could not be made" in said.stderr
    assert said.stderr.count(b"\n") == 1
