"""Which program speaks: the one that is named, or a usual one that is there."""

import shutil
import sys
from pathlib import Path

import pytest

from finishing_tui.speech import NoProgram, program_for
from finishing_tui.speech.programs import USUAL


def made(at: Path, *names: str) -> None:
    """Put programs of these names into a folder."""
    for name in names:
        (at / name).write_text("#!/bin/sh\n")
        (at / name).chmod(0o700)


@pytest.mark.parametrize(
    ("system", "there", "chosen"),
    [
        ("linux", ("espeak", "espeak-ng", "spd-say"), "spd-say"),
        ("linux", ("espeak", "espeak-ng", "say"), "espeak-ng"),
        ("darwin", ("say", "spd-say"), "say"),
        ("win32", ("powershell", "say"), "powershell"),
        ("freebsd", ("espeak",), "espeak"),
    ],
)
def test_a_usual_one_is_found(
    monkeypatch: pytest.MonkeyPatch, system: str, there: tuple[str, ...], chosen: str
) -> None:
    """The first of the usual ones on this kind of computer that is on the path, started as it wants."""
    monkeypatch.setattr(shutil, "which", lambda name: f"here/{name}" if name in there else None)
    monkeypatch.setattr(sys, "platform", system)
    program = program_for(())
    assert program.command[0] == f"here/{chosen}"
    usual = next(one for one in USUAL.get(system, USUAL[""]) if one.command[0] == chosen)
    assert program.command[1:] == usual.command[1:]
    command, given = program.with_text("-v")
    assert ("-v" in command) is program.argument
    assert command[-2:] == ("--", "-v") if program.argument else given == "-v"


def test_where_there_is_none_it_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The sentence names what would help, and the one that was named in vain."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(sys, "platform", "linux")
    with pytest.raises(NoProgram, match="spd-say or espeak-ng or espeak would be needed"):
        program_for(())
    with pytest.raises(NoProgram, match="there is no program 'parrot' here, which speak_with names"):
        program_for(("parrot", "-q"))


def test_a_named_one_is_started_as_it_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its arguments are those of the settings, each one whole."""
    made(tmp_path, "parrot")
    monkeypatch.setenv("PATH", str(tmp_path))
    program = program_for(("parrot", "-s", "a b; c"))
    assert program.command == (str(tmp_path / "parrot"), "-s", "a b; c")
    assert program.with_text("pick") == (program.command, "pick")
