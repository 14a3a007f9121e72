"""The settings file: what stands in it is what is set, and everything wrong with it is told at once, by line."""

import dataclasses
import io
import json
import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any, get_args

import hypothesis.strategies as st
import pytest
from hypothesis import given

from finishing_tui.garment.events import Pace
from finishing_tui.glance.spoken import Speech
from finishing_tui.glance.wishes import Units
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.settings import Settings, read_settings, settings_file
from finishing_tui.settings.looks import BadLooks, looks_in_force
from finishing_tui.settings.model import Bell, ScreenLook
from finishing_tui.settings.reading import BadSettings, read_file, settings_in
from finishing_tui.settings.writing import commented, value_text
from finishing_tui.talk.keys import USUAL

VALUES: dict[str, st.SearchStrategy[Any]] = {
    "pace": st.sampled_from(get_args(Pace)),
    "bell": st.booleans() | st.lists(st.sampled_from(get_args(Bell))).map(tuple),
    "speech": st.sampled_from(get_args(Speech)),
    "speak_with": st.lists(st.text('abc -/$;"\\é', min_size=1)).map(tuple),
    "units": st.sampled_from(get_args(Units)),
    "hand": st.sampled_from(["right", "left"]),
    "looks": st.sampled_from(get_args(ScreenLook)) | st.sampled_from([("ascii",), ("light", "ascii"), ("terminal",)]),
}
ANY = st.recursive(
    st.booleans() | st.integers(-9, 9) | st.text("abruntif", max_size=6) | st.just(1.5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text("abc", min_size=1), inner, max_size=2),
    max_leaves=5,
)
"""Values that TOML has."""


def as_toml(data: dict[str, Any]) -> str:
    """Return a file in which these values stand, one a line."""
    return "".join(f"{key} = {inline(value)}\n" for key, value in data.items())


def inline(value: Any) -> str:
    """Return a value as TOML has it on one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key} = {inline(item)}" for key, item in value.items()) + "}"
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(inline, value))}]"
    return json.dumps(value, ensure_ascii=False)


@given(st.fixed_dictionaries({}, optional=VALUES))
def test_what_stands_in_the_file_is_set(data: dict[str, Any]) -> None:
    """Every valid value is taken as it is, and what does not stand there is as usual."""
    settings = settings_in(as_toml(data), "settings.toml")
    for field in dataclasses.fields(Settings):
        assert getattr(settings, field.name) == data.get(field.name, getattr(Settings(), field.name))


@given(st.sampled_from(sorted(VALUES)), ANY, st.integers(0, 3))
def test_any_other_value_is_refused_at_its_line(key: str, value: Any, before: int) -> None:
    """What is no value of a setting is told once, with its line and key; what is one is taken."""
    text = "# a line\n" * before + as_toml({key: value})
    wrong: BadSettings | None = None
    try:
        settings = settings_in(text, "settings.toml")
    except BadSettings as error:
        wrong = error
    if wrong is not None:
        assert [(one.line, one.key) for one in wrong.problems] == [(before + 1, key)]
        assert str(wrong).startswith(f"settings.toml:{before + 1}: {key}: ")
    else:
        taken = getattr(settings, key)
        assert taken == (tuple(value) if isinstance(value, list) else value)
        assert type(taken) is (tuple if isinstance(value, list) else type(value))


FAULTS = {
    'pase = "run"': ("pase", "'pase' is no setting; did you mean 'pace'?"),
    'pace = "rum"': ("pace", "\"rum\" stands here; did you mean 'run'?"),
    "pace = true": ("pace", 'true stands here; one of "loop", "spot", "run" is wanted'),
    "bell = 1": (
        "bell",
        '1 stands here; true or false or a list of some of ["run", "recount", "target", "refused"] is',
    ),
    'bell = "loud"': ("bell", '"loud" stands here; true or false or a list of some of ["run"'),
    'bell = ["run", "ring"]': ("bell", 'in it stands "ring"; it is "run", "recount", "target" or "refused"'),
    'speech = "loud"': ("speech", 'it is "off", "next", "counts" or "all"'),
    'speak_with = "espeak -s 140"': ("speak_with", 'a list of texts, such as ["a", "b"] is wanted'),
    'speak_with = ["espeak", ""]': ("speak_with", "an empty text stands in this list"),
    'speak_with = ["a\\u0000b"]': ("speak_with 1", "the character U+0000 (a control character) stands in this text"),
    'units = "mm"': ("units", 'it is "as given", "cm" or "in"'),
    'hand = "lft"': ("hand", "did you mean 'left'?"),
    'looks = "lamp"': ("looks", 'it is "auto", "dark", "light", "terminal" or "ascii"'),
    'looks = ["dark", "light"]': ("looks", "dark and light cannot both be; leave one out"),
    "keys = 7": ("keys", "7 stands here; a table for each group is wanted, such as [keys.needles]"),
    "pace = ": ("", "what stands after '=' here is no value"),
    'pace = "run"\npace = "loop"': ("", "this key is here a second time"),
    "pace = 1979-05-27": ("pace", "the date or time 1979-05-27 stands here"),
}


@pytest.mark.parametrize("line", FAULTS)
def test_what_is_wrong_is_told_in_words(line: str) -> None:
    """Each mistake is told with what would be right."""
    key, said = FAULTS[line]
    with pytest.raises(BadSettings) as refused:
        settings_in(f"\n{line}\n", "settings.toml")
    (problem,) = refused.value.problems
    assert (problem.line, problem.key) == (1 + len(line.splitlines()), key)
    assert said in problem.message


def test_everything_wrong_is_told_at_once(tmp_path: Path) -> None:
    """Values, keys and names are all told, in the order of the file, each with the file's name."""
    path = tmp_path / "mine.toml"
    path.write_text('pace = "fast"\nbel = true\n[keys.needles]\npress = "9"\nother = "enter"\n')
    with pytest.raises(BadSettings) as refused:
        read_file(path)
    lines = str(refused.value).splitlines()
    assert [line.partition(": ")[0] for line in lines] == [f"{path}:{number}" for number in (1, 2, 4, 5)]


def test_no_file_is_as_usual_and_one_named_in_vain_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a file all is usual; ``FINISHING_SETTINGS`` names another, and where there is none that is said once."""
    monkeypatch.delenv("FINISHING_SETTINGS")
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    monkeypatch.setenv("HOME", str(tmp_path))
    assert settings_file().name == "settings.toml"
    assert settings_file().is_relative_to(tmp_path) or sys.platform == "win32"
    assert read_settings() == Settings()
    (tmp_path / "file").touch()
    for vain in ("mine.toml", "no folder/mine.toml", "file/mine.toml"):
        said: list[str] = []
        monkeypatch.setenv("FINISHING_SETTINGS", str(tmp_path / vain))
        assert read_settings(said.append) == Settings()
        assert [line.partition(". ")[0] for line in said] == [f"{tmp_path / vain}: there is no settings file here"]
    (tmp_path / "mine.toml").write_bytes(b'hand = "left"\r\n')
    monkeypatch.setenv("FINISHING_SETTINGS", str(tmp_path / "mine.toml"))
    assert read_settings(said.append).hand == "left"
    assert len(said) == 1


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        (b"#" * 66_000, "the file is larger than 64 kB"),
        (b"# " + b"x" * 5000, "this line has 5002 characters"),
        (b'hand = "\xff"', "this line is not UTF-8 text"),
        (b'\xef\xbb\xbfhand = "left"', "byte order mark"),
        ("# \u202e".encode(), "the character U+202E (right-to-left override)"),
        (b"a" + b".a" * 20_000 + b" = 1", "characters; break it up"),
        (b"x = " + b"[" * 50 + b"]" * 50, "brackets stand in each other"),
    ],
)
def test_a_hostile_file_is_refused_before_it_is_parsed(tmp_path: Path, raw: bytes, said: str) -> None:
    """Size, encoding, steering characters and depth are looked at first."""
    (tmp_path / "settings.toml").write_bytes(raw)
    with pytest.raises(BadSettings, match=re.escape(said)):
        read_file(tmp_path / "settings.toml")


def test_a_folder_or_no_right_to_read_is_a_sentence(tmp_path: Path) -> None:
    """What is no file cannot be read, and that is said."""
    with pytest.raises(BadSettings, match="the file cannot be read: "):
        read_file(tmp_path)


def test_a_written_file_sets_nothing_and_explains_everything() -> None:
    """As it is written it is as usual; with every setting taken out of its comment it still is."""
    text = commented()
    assert settings_in(text, "settings.toml") == Settings()
    uncommented = re.sub(r"(?m)^#(?=\w+ = )", "", text)
    settings = settings_in(uncommented, "settings.toml")
    assert dataclasses.replace(settings, keys={}) == dataclasses.replace(Settings(), keys={})
    keys = settings.in_force
    assert set(keys.own) == set(USUAL.keymap() or keys.own)
    assert all(keys.of(action) == USUAL.of(action) for action in keys.own)
    for field in dataclasses.fields(Settings):
        assert field_texts(Settings)[field.name] in " ".join(text.replace("\n# ", " ").split())
        if field.name != "keys":
            assert f"#{field.name} = {value_text(getattr(Settings(), field.name))}\n" in text
    assert all(len(line) <= 120 for line in text.splitlines())


@pytest.mark.parametrize(
    ("named", "words"), [("", ("auto",)), ("ascii", ("ascii",)), ("light,ascii", ("light", "ascii"))]
)
def test_the_environment_counts_for_looks(named: str, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch) -> None:
    """``FINISHING_LOOKS`` wins over the file, where it says anything."""
    monkeypatch.setenv("FINISHING_LOOKS", named)
    own = Settings(looks=("terminal", "ascii"))
    with io.TextIOWrapper(io.BytesIO(), encoding="utf-8") as stream:
        assert looks_in_force(Settings(), stream) == (words, "")
        assert looks_in_force(own, stream) == (words if named else ("terminal", "ascii"), "")


@pytest.mark.parametrize(
    ("named", "said"),
    [
        ("lihgt", "FINISHING_LOOKS: there are no looks 'lihgt'; did you mean 'light'?"),
        ("light terminal", "FINISHING_LOOKS: light and terminal cannot both be; leave one out"),
    ],
)
def test_unknown_looks_of_the_environment_are_refused(named: str, said: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A word that means nothing is not passed over."""
    monkeypatch.setenv("FINISHING_LOOKS", named)
    with pytest.raises(BadLooks, match=re.escape(said)):
        looks_in_force(Settings(), sys.stderr)


READ = """
import sys
from finishing_tui.settings import read_settings
print(read_settings().hand)
print(sorted({name.partition(".")[0] for name in sys.modules} & {"pydantic", "tree_sitter", "textual", "rich"}))
"""


NONE = """
import sys
from finishing_tui.settings import read_settings
read_settings()
print(sorted(name for name in sys.modules if name in ("tomllib", "pydantic", "finishing_tui.recipe.reader")))
"""


def test_where_there_is_no_file_nothing_is_loaded_that_reads_one(tmp_path: Path) -> None:
    """Without settings, in a fresh process, not even the parser is loaded."""
    environment = {**os.environ, "XDG_CONFIG_HOME": str(tmp_path), "HOME": str(tmp_path)}
    del environment["FINISHING_SETTINGS"]
    command = [sys.executable, "-c", NONE]
    answer = subprocess.run(command, check=True, capture_output=True, text=True, env=environment)
    assert answer.stdout == "[]\n"


def test_a_right_file_loads_neither_validation_nor_lines(tmp_path: Path) -> None:
    """Reading a file without mistakes, in a fresh process, loads no validation, no second parser, nothing drawn."""
    path = tmp_path / "settings.toml"
    path.write_text('hand = "left"\n[keys.needles]\npress = ["space", "f13"]\n')
    command = [sys.executable, "-c", READ]
    environment = {**os.environ, "FINISHING_SETTINGS": str(path)}
    answer = subprocess.run(command, check=True, capture_output=True, text=True, env=environment)
    assert answer.stdout.split("\n")[:2] == ["left", "[]"]
