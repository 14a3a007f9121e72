import io
import json
import os
import pty
import select
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import check
from finishing_tui.plain.running import work
from finishing_tui.settings import Settings
from tests.plain.making import TREE, Twin, command, crew, environment, events, talked, typed


def start(folder: Path) -> "subprocess.Popen[str]":
    """Start the real command with pipes."""
    return subprocess.Popen(
        command(folder), stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
        env=environment(), encoding="utf-8",
    )  # fmt: skip


def refused(folder: Path, typed: str = "") -> str:
    """Return the one sentence of a refusal; nothing else is said on standard error."""
    done = subprocess.run(
        command(folder), input=typed, capture_output=True, text=True, check=False, env=environment(), encoding="utf-8"
    )
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    return done.stderr


def last_lines(folder: Path) -> list[str]:
    """Return the kinds of the last two events."""
    return [kind for kind, _, _ in events(folder)][-2:]


def test_bad_folders(tmp_path: Path) -> None:
    """A folder that is not there, holds no garment, or one with a recipe there is not: exit status 2 and a sentence."""
    (tmp_path / "empty").mkdir()
    assert "there is no folder" in refused(tmp_path / "none")
    assert "there is no garment here" in refused(tmp_path / "empty")
    other = crew(tmp_path / "other")
    (other / "garment.toml").write_text((other / "garment.toml").read_text().replace("crew-neck", "crow-neck"))
    assert "did you mean 'crew-neck'" in refused(other)


LOADED = """
import io, json, sys
from finishing_tui.cli import main
sys.stdin = io.TextIOWrapper(io.BytesIO(b"d\\nwhere\\n5\\nescape\\nhelp\\nwords\\n"))
status = main(["work", sys.argv[1], "--plain"])
print(json.dumps([status, sorted({name.partition(".")[0] for name in sys.modules})]))
"""


def test_neither_screens_nor_validation_are_loaded(tmp_path: Path) -> None:
    """A garment under way is worked without textual, rich or pydantic, in a fresh process."""
    folder = crew(tmp_path / "crew")
    talked(folder, "d")
    script = [sys.executable, "-c", LOADED, str(folder)]
    done = subprocess.run(script, check=True, capture_output=True, text=True, env=environment(), cwd=TREE)
    status, modules = json.loads(done.stdout.splitlines()[-1])
    assert status == 0
    assert {"textual", "rich", "pydantic", "pydantic_core", "tree_sitter"}.isdisjoint(modules)


@pytest.mark.parametrize("answers", [3, 8, 15, 30])
def test_killed_in_mid_script(tmp_path: Path, answers: int) -> None:
    """Killed with SIGKILL at any answer, everything that was answered is on the disk; what was only typed may be."""
    folder = crew(tmp_path / "crew")
    talked(folder, *"dddd", "d", "enter")
    with start(folder) as child:
        assert child.stdin is not None
        assert child.stdout is not None
        child.stdin.write("d\n" * 40)
        child.stdin.flush()
        acknowledged = 0
        for line in child.stdout:
            if line.endswith(" of 46 stitches.\n"):
                acknowledged = int(line.split()[0])
            if acknowledged >= answers:
                child.send_signal(signal.SIGKILL)
                break
        for line in child.stdout:  # what it said before it died counts too; a last line may be cut short
            if line.endswith(" of 46 stitches.\n"):
                acknowledged = int(line.split()[0])
    assert child.returncode == -signal.SIGKILL
    assert check(folder).fault is None
    hand = InHand.open(folder, look=True)
    hand.close()
    work = hand.state.steps[1].work
    assert work is not None
    assert acknowledged <= work.progress[0].mark.units <= 40
    assert f"you were at step 2, Count the back holder: {work.progress[0].mark.units} of 46 stitches." in talked(folder)


def test_the_end_of_the_input_puts_it_down(tmp_path: Path) -> None:
    """At the end of the input the sitting is ended, the journal is one file, and a line cut short was not taken."""
    folder = crew(tmp_path / "crew")
    with start(folder) as child:
        said, error = child.communicate("d\nd")
    assert (child.returncode, error) == (0, "")
    assert said.endswith("put down; everything is kept.\n")
    assert last_lines(folder) == ["Worked", "PutDown"]
    assert sorted(path.name for path in folder.iterdir()) == ["garment.toml", "journal.lock", "journal.sqlite3"]


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT])
def test_signals_put_it_down(tmp_path: Path, number: signal.Signals) -> None:
    """A hang-up, a terminate signal or an interrupt while a line is waited for puts the garment down."""
    folder = crew(tmp_path / "crew")
    with start(folder) as child:
        assert child.stdin is not None
        assert child.stdout is not None
        child.stdin.write("d\n")
        child.stdin.flush()
        while child.stdout.readline() != "1 of 5.\n":
            pass
        child.send_signal(number)
        said, error = child.communicate()
    assert (child.returncode, error) == (0, "")
    assert said.endswith("put down; everything is kept.\n")
    assert last_lines(folder) == ["Worked", "PutDown"]


def test_a_reader_that_goes_away(tmp_path: Path) -> None:
    """When nobody reads the answers any more the garment is put down, without a complaint."""
    folder = crew(tmp_path / "crew")
    with start(folder) as child:
        assert child.stdin is not None
        assert child.stdout is not None
        assert child.stderr is not None
        child.stdout.readline()
        child.stdout.close()
        child.stdin.write("d\n")
        child.stdin.flush()
        assert child.stderr.read() == ""
        assert child.wait() == 0
    assert last_lines(folder)[-1] == "PutDown"


def test_in_hand_elsewhere(tmp_path: Path) -> None:
    """A garment in hand elsewhere can be looked at when that is wanted, and nothing can be changed then."""
    folder = crew(tmp_path / "crew")
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.flush(30)
    before = events(folder)
    said = typed(folder, "yes", "where", "d", "b", "enter", "n a note", "q")
    assert "garment: under test, size 2 years." in said.splitlines()
    assert said.count("You can only look at this garment here.") == 4
    for answer in ("no\n", ""):
        assert "open in another window" in refused(folder, answer)
    assert events(folder) == before
    assert hand.put_down()


def test_in_a_terminal(tmp_path: Path) -> None:
    """In a terminal it works as in a pipe, and writes nothing that steers it: no escape, no bell, no cursor."""
    folder = crew(tmp_path / "crew")
    pid, handle = pty.fork()
    if pid == 0:  # pragma: no cover  (the child)
        os.execve(sys.executable, command(folder), environment(TERM="xterm-256color"))
    os.write(handle, b"d\nwhere\nhelp\nq\nin the bag\n")
    raw = b""
    while b"put down; everything is kept." not in raw:
        assert select.select([handle], [], [], 60)[0]
        raw += os.read(handle, 65536)
    _, status = os.waitpid(pid, 0)
    os.close(handle)
    assert os.waitstatus_to_exitcode(status) == 0
    assert all(sign.isprintable() or sign in "\r\n" for sign in raw.decode())
    assert "1 of 5." in raw.decode()
    assert last_lines(folder) == ["Worked", "PutDown"]


def test_a_garment_begins_with_the_pace_that_is_set(tmp_path: Path) -> None:
    """The settings hold here too: a garment that was never in hand goes at their pace, and keeps it."""
    folder = crew(tmp_path / "garment")
    for pace, wanted in (("run", "run"), ("spot", "run")):
        (tmp_path / "settings.toml").write_text(f'pace = "{pace}"\n')
        surroundings = environment(FINISHING_SETTINGS=str(tmp_path / "settings.toml"))
        subprocess.run(command(folder), input="", capture_output=True, text=True, check=True, env=surroundings)
        hand = InHand.open(folder)
        assert hand.state.pace == wanted
        hand.close()


def test_lengths_are_told_in_the_units_that_are_set(tmp_path: Path) -> None:
    """The yarn that a bind-off still takes is told in inches where these are set, and else as the gauge is given."""
    twin = Twin(crew(tmp_path / "crew"))
    twin.works_to(next(at for at, step in enumerate(twin.hand.state.plan.recipe.step) if step.do == "bind off"))
    twin.puts_down("")
    told = []
    for settings in (None, Settings(units="cm"), Settings(units="in")):
        sink = io.BytesIO()
        work(twin.hand.folder, io.BytesIO(b"next\n"), sink, settings=settings)
        told += [line for line in sink.getvalue().decode().splitlines() if line.startswith("Yarn still needed")]
    given, centimetres, inches = told
    assert given == centimetres
    assert " cm " in given
    assert " in " in inches
    assert " cm " not in inches


def test_what_another_window_did_is_said_first(tmp_path: Path) -> None:
    """Who looks only hears before each answer what was done meanwhile, and that it was put down; else nothing."""
    folder = crew(tmp_path / "crew")
    talked(folder, *"ddddd", "enter")
    other = InHand.open(folder)
    assert other.pick_up() is None

    def press() -> None:
        assert other.do(Press()) is None
        assert other.flush(30)

    def put_down() -> None:
        assert other.put_down()

    meanwhile = iter((press, lambda: None, put_down))

    class Lines(io.BytesIO):
        """Lines, before each of which but the first the other window does something."""

        def readline(self, size: int | None = -1, /) -> bytes:
            if self.tell():
                next(meanwhile, lambda: None)()
            return super().readline(size)

    sink = io.BytesIO()
    work(folder, Lines(b"yes\ntime\ntime\nwhere\n"), sink)
    said = sink.getvalue().decode()
    went_on, down = said.index("the other window went on."), said.index("the other window has put it down.")
    assert said.count("the other window") == 2
    assert "1 of 46 stitches." in said[went_on:down]
    assert said.endswith("you only looked; nothing changed.\n")
