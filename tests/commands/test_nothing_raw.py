"""Whatever a journal, a file, a name, a setting or an argument holds: no command lets it steer the terminal."""

import io
import json
import sys
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui import shipped
from finishing_tui.cli import COMMANDS
from finishing_tui.commands.printing import for_programs, shown
from finishing_tui.garment.journal import NAME
from tests.commands.prompt import leave
from tests.poisoned import MARK, PICKED, poisoned
from tests.screens.hands import PICK_UP, shelf
from tests.steering import ON_DISK, POISON, steering

ESCAPES = json.dumps(ON_DISK)[1:-1].replace("\\udb40\\udc41", "\\U000E0041").replace("\x7f", "\\u007f")
"""The same as a TOML file may spell it."""


@dataclass(frozen=True)
class Poisoned:
    """Where all is poisoned: a ``garment`` by its journal and its folder's name, and ``files`` by what they hold."""

    garment: Path
    fresh: Path
    files: tuple[Path, ...]

    @property
    def names(self) -> list[str]:
        """Every file and folder, and a file and a folder that are not there."""
        return [*map(str, (self.garment, self.fresh, *self.files)), f"{self.garment}{POISON}", POISON]


@pytest.fixture
def places(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Poisoned:
    """Make the poisoned files, on a shelf with such a name; the settings are the usual ones."""
    at = tmp_path / ON_DISK
    at.mkdir()
    made = poisoned(at, PICK_UP, *PICKED)
    garment = made.rename(made.with_name(f"worked{ON_DISK}"))
    (at / "fresh").mkdir()
    fresh = shelf(at / "fresh")
    fresh = fresh.rename(garment.with_name(f"fresh{ON_DISK}"))
    (fresh / "garment.toml").write_text((fresh / "garment.toml").read_text().replace("Slate", ESCAPES))
    good = (garment.parent / "every_face.toml").read_text()
    texts = {
        "whole": good.replace(MARK, ""),
        "escaped": good.replace(MARK, ESCAPES),
        "raw": good.replace(MARK, ON_DISK),
        "key": good.replace("sizes =", f'"{ESCAPES}" = 1\nsizes ='),
        "word": good.replace('"holder"', f'"{ESCAPES}"'),
        "size": good.replace('"small"', f'"{ESCAPES}"'),
        "ledger": good.replace(MARK, "").replace("live = 8", "live = 1"),
        "none": ON_DISK,
    }
    files = []
    for name, text in texts.items():
        files.append(at / f"{name}{ON_DISK}.toml")
        files[-1].write_text(text)
    monkeypatch.setenv("FINISHING_SHELF", str(garment.parent))
    monkeypatch.setenv("FINISHING_SETTINGS", str(Path(__file__).parents[1] / "settings" / "usual.toml"))
    return Poisoned(garment, fresh, tuple(files))


Lines = Iterator[tuple[str, ...]]


def _garments(places: Poisoned) -> Lines:
    yield from ((name,) for name in places.names)
    yield (places.garment.name,)


def _doctor(places: Poisoned) -> Lines:
    yield from _garments(places)
    raw = bytearray((places.garment / NAME).read_bytes())
    raw[len(raw) // 2 : len(raw) // 2 + 4000] = bytes(4000)
    (places.garment / NAME).write_bytes(raw)
    yield (str(places.garment),)
    yield (str(places.garment), "--recover")
    yield (str(places.fresh), "--recover")


def _recipes(places: Poisoned) -> Lines:
    for name in places.names:
        yield (name,)
        yield (name, "--size", "small")
        yield (name, "--size", POISON)
        yield (name, "--held", f"{POISON}=1")
    yield ("--technique", POISON)
    yield ("crew-neck", "--held", POISON)


def _audit(places: Poisoned) -> Lines:
    for name in places.names:
        yield (name, "--ledger")
    yield (str(places.files[0]), "--size", POISON)
    yield tuple(map(str, places.files))
    yield (str(places.files[0].parent),)


def _start(places: Poisoned) -> Lines:
    for name in places.names:
        yield (name, "--size", "small", "--accept")
    told = ("--name", POISON), ("--yarn", POISON), ("--needles", POISON), ("--size", POISON), ("--gauge", POISON)
    for option in (*told, ("--number", POISON), ("--number", f"side={POISON}"), ("--hand", POISON)):
        yield (str(places.files[0]), "--size", "small", *option)
    yield ("crew-neck", "--size", "M", "--accept", "--name", POISON, "--yarn", POISON, "--needles", POISON)


def _nothing(_: Poisoned) -> Lines:
    yield ()


CASES: Mapping[str, Callable[[Poisoned], Lines]] = {
    "shelf": _nothing,
    "start": _start,
    "demo": _nothing,
    "work": _garments,
    "record": _garments,
    "doctor": _doctor,
    "settings": _nothing,
    **dict.fromkeys(
        ("spread", "recount", "share", "gauge", "evenly", "pair", "buttonholes", "rib", "corner"), _nothing
    ),
    **dict.fromkeys(("shoulder", "gap", "head", "yarn", "schema"), _nothing),
    "audit": _audit,
    "recipes": _recipes,
}
"""For every command what is poisoned besides its arguments."""


def _any_arguments() -> Lines:
    """Yield arguments for any command: one in place of what it takes, of an option, of a word too many."""
    for many in range(1, 5):
        yield (POISON,) * many
        yield (*("12",) * many, POISON)
        yield (*("12",) * many, f"--{POISON}")
    yield ("--method", POISON)
    yield ("--json", f"--json={POISON}")


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("command", COMMANDS)
def test_no_command_lets_anything_steer(
    command: str, places: Poisoned, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    """Every command, for people and for programs: all bytes it writes, on either stream, are inert; JSON stays JSON.

    A command that is not in the table of cases fails here.
    """
    answered = 0
    for words in (*CASES[command](places), *_any_arguments()):
        for more in ((), ("--json",)):
            status = leave(command, *words, *more)
            said = capsysbinary.readouterr()
            assert status in {0, 1, 2}, words
            assert not steering(said.out), words
            assert not steering(said.err), words
            if more and said.out:
                json.loads(said.out)
            answered += status != 2
    assert answered or command not in {"record", "doctor", "audit", "recipes", "start", "shelf"}


def test_before_a_command_nothing_steers(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    """A command that there is not, and an option that there is not."""
    for words in ((POISON,), (f"--{POISON}",), ("--version", POISON), ("--help", POISON)):
        leave(*words)
        said = capsysbinary.readouterr()
        assert not steering(said.out + said.err), words


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("name", ["FINISHING_SETTINGS", "FINISHING_LOOKS", "FINISHING_SHELF", "HOME"])
@pytest.mark.parametrize("command", COMMANDS)
def test_nothing_of_the_environment_steers(
    command: str, name: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    """A path that the environment names, or looks that it asks for."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    poison = ON_DISK if name == "FINISHING_LOOKS" else str(tmp_path / ON_DISK)
    monkeypatch.setenv(name, poison)
    for words in ((), ("crew-neck",), ("crew-neck", "--size", "M"), ("slate-crew", "--json"), ("--json",)):
        leave(command, *words)
        said = capsysbinary.readouterr()
        assert not steering(said.out + said.err), words


SETTINGS = (
    f'looks = "{ESCAPES}"',
    f'looks = ["{ESCAPES}"]',
    f'speak_with = ["{ESCAPES}"]\nspeech = "all"',
    f'"{ESCAPES}" = 1',
    f'[keys.needles]\npress = "{ESCAPES}"',
    f'[keys.needles]\n"{ESCAPES}" = "x"',
    f'[keys."{ESCAPES}"]\npress = "x"',
    f"# {ON_DISK}",
    f"looks = {ON_DISK}",
)


@pytest.mark.parametrize("text", SETTINGS)
def test_no_setting_steers(
    text: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    """A settings file with a mistake is told of, whatever the mistake consists of."""
    file = tmp_path / f"{ON_DISK}.toml"
    file.write_text(text)
    monkeypatch.setenv("FINISHING_SETTINGS", str(file))
    for words in (
        ("settings",),
        ("settings", "--json"),
        ("settings", "--write"),
        ("start", "crew-neck", "--size", "M"),
    ):
        assert leave(*words) == 2
        said = capsysbinary.readouterr()
        assert not steering(said.out + said.err)


LINES = (
    *("where", "next", "needles", "edge", "steps", "words", "say", "how", "look", "mend", "mind", "see", "notes"),
    *("ledger", "numbers", "what if", "technique", "step 1", "step 2", "step", "r", "11", "escape", "t", "escape", "o"),
    *("escape", POISON, f"note {POISON}", "d", "b", "u", "q"),
)
"""What may be asked line by line, and a line and a note that are poison."""


@pytest.mark.parametrize("lines", [LINES, ("q", POISON), ("q", "escape"), ("f", "f", "take up 3", "q", "")])
@pytest.mark.parametrize("which", ["garment", "fresh"])
def test_line_by_line_nothing_steers(
    which: str,
    lines: tuple[str, ...],
    places: Poisoned,
    monkeypatch: pytest.MonkeyPatch,
    capsysbinary: pytest.CaptureFixture[bytes],
) -> None:
    """A poisoned garment worked line by line, with poison typed at it."""
    typed = "".join(f"{line}\n" for line in lines).encode("utf-8", "surrogatepass")
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(typed)))
    leave("work", "--plain", str(getattr(places, which)))
    said = capsysbinary.readouterr()
    assert not steering(said.out)
    assert not steering(said.err)
    assert which == "fresh" or said.out.count(b"\n") > len(lines)


@given(
    st.recursive(
        st.text(st.characters(min_codepoint=0, exclude_categories=[])) | st.integers(),
        lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    )
)
def test_programs_get_the_very_value(value: object) -> None:
    """Whatever an answer holds, half characters too: its JSON is one line that steers nothing, and reads back alike."""
    said = for_programs({"value": value})
    assert not steering(said)
    assert "\n" not in said
    assert json.loads(said) == {"value": value}
    assert said.encode()


@given(st.text(st.characters(min_codepoint=0, exclude_categories=[])))
def test_people_get_every_line(text: str) -> None:
    """Nothing steers in what is printed for people, and it has as many lines as it had."""
    assert not steering(shown(text))
    assert shown(text).count("\n") == text.count("\n")


def test_the_shipped_recipes_hold_nothing_to_hide() -> None:
    """A stand-in is seen only where something is wrong: no shipped recipe comes out with one."""
    for path in shipped.recipes().values():
        text = path.read_text(encoding="utf-8")
        assert shown(text) == text
