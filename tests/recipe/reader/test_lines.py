"""Lines: every key and entry of a TOML text is found on the line it stands on."""

import json
import tomllib
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.recipe.reader.errors import Path, spoken
from finishing_tui.recipe.reader.lines import line_of, lines_of

NAMES = st.one_of(
    st.sampled_from(("a", "b-c", "d_1", "7", "to.do", "é", "x y", 'q"q', "'", "")),
    st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\x7f"), max_size=4),
)


class Document:
    """A TOML text that is written line by line, remembering the line of everything in it."""

    def __init__(self, draw: st.DrawFn) -> None:
        self.draw = draw
        self.text: list[str] = [""]
        self.known: dict[Path, int] = {}

    def put(self, text: str) -> None:
        """Write on, perhaps in the next line."""
        self.text[-1] += text

    def wrap(self) -> None:
        """Perhaps begin a new line, perhaps with a comment at the end of this one."""
        self.text[-1] += self.draw(st.sampled_from(("", "", " # ] } = [x]")))
        if self.text[-1].endswith("]") and "#" not in self.text[-1]:
            return
        self.text.append(self.draw(st.sampled_from(("", "  "))))

    def key(self, name: str) -> None:
        """Write a key: bare where it can be, else in quotes."""
        plain = name.isascii() and name.replace("_", "").replace("-", "").isalnum()
        self.put(name if plain and self.draw(st.booleans()) else json.dumps(name, ensure_ascii=False))

    def value(self, path: Path, depth: int, *, inline: bool) -> None:
        """Write a value, remembering what is in it."""
        sort = self.draw(st.sampled_from(("plain", "text", "list", "table"))) if depth else "plain"
        if sort == "list":
            self.put("[")
            for place in range(self.draw(st.integers(0, 3))):
                if not inline:
                    self.wrap()
                self.known[*path, place] = len(self.text)
                self.value((*path, place), depth - 1, inline=inline)
                self.put(",")
            self.put("]")
        elif sort == "table":
            self.put("{")
            names = self.draw(st.lists(NAMES, max_size=3, unique=True))
            for place, name in enumerate(names):
                self.put(", " if place else "")
                self.known[*path, name] = len(self.text)
                self.key(name)
                self.put(" = ")
                self.value((*path, name), depth - 1, inline=True)
            self.put("}")
        elif sort == "text" and not inline:
            self.put('"""a # "\n[b]\nc = 1"""')
            self.text += ["", ""]  # two more lines, already written
        else:
            self.put(self.draw(st.sampled_from(("1", "-2.5", "true", '"# = ["', "'''q'''", "1979-05-27"))))

    def pairs(self, path: Path) -> None:
        """Write some keys of the table ``path``, some of them dotted."""
        for name in self.draw(st.lists(NAMES, max_size=3, unique=True)):
            self.text.append("")
            at = (*path, name)
            self.known[at] = len(self.text)
            self.key(name)
            if self.draw(st.booleans()):
                self.put(" . ")
                self.known[*at, "n"] = len(self.text)
                at = (*at, "n")
                self.key("n")
            self.put(" = ")
            self.value(at, 2, inline=False)
            self.put(" # end")

    def header(self, names: tuple[str, ...], brackets: int) -> None:
        """Write the header of a table."""
        self.text.append("[" * brackets)
        for place, name in enumerate(names):
            self.put("." if place else "")
            self.key(name)
        self.put("]" * brackets)


@st.composite
def documents(draw: st.DrawFn) -> tuple[str, dict[Path, int]]:
    """Return a TOML text and the line of every path in it."""
    made = Document(draw)
    made.pairs(())
    top = draw(st.lists(NAMES.map(lambda name: f"T{name}"), max_size=3, unique=True))
    for name in top:
        if draw(st.booleans()):
            made.header((name,), 1)
            made.known[name,] = len(made.text)
            made.pairs((name,))
            made.header((name, "Tdeep", "Tdeeper"), 1)
            made.known[name, "Tdeep"] = made.known[name, "Tdeep", "Tdeeper"] = len(made.text)
            made.pairs((name, "Tdeep", "Tdeeper"))
            continue
        for one in range(draw(st.integers(1, 3))):
            made.header((name,), 2)
            made.known.setdefault((name,), len(made.text))
            made.known[name, one] = len(made.text)
            made.pairs((name, one))
            for other in range(draw(st.integers(0, 2))):
                made.header((name, "Tmany"), 2)
                made.known.setdefault((name, one, "Tmany"), len(made.text))
                made.known[name, one, "Tmany", other] = len(made.text)
                made.pairs((name, one, "Tmany", other))
            if draw(st.booleans()):
                made.header((name, "Tone"), 1)
                made.known[name, one, "Tone"] = len(made.text)
                made.pairs((name, one, "Tone"))
    return joined(made.text), made.known


def joined(lines: list[str]) -> str:
    """Return the text; lines that were written already, as part of a text of several lines, are not written again."""
    out: list[str] = []
    written = 0
    for line in lines:
        if written:
            written -= 1
            out[-1] += line
            continue
        out.append(line)
        written = line.count("\n")
    return "\n".join(out)


@given(documents())
def test_every_path_has_its_line(document: tuple[str, dict[Path, int]]) -> None:
    """Keys bare, quoted and dotted, lists and tables in braces, tables, lists of tables and tables inside those."""
    text, known = document
    assert lines_of(text) == known


@given(documents())
def test_every_value_has_a_line(document: tuple[str, dict[Path, int]]) -> None:
    """Every path of the values that the standard parser gives is among the lines, so none needs a guess."""
    text, _ = document
    assert set(paths(tomllib.loads(text))) == set(lines_of(text))


def paths(value: Any, path: Path = ()) -> list[Path]:
    """Return the path of everything in a parsed value."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [found for key, item in items for found in ((*path, key), *paths(item, (*path, key)))]


def test_what_is_not_there_has_the_line_of_what_is_around_it() -> None:
    """A missing key is told at its table; a missing table at the top has no line."""
    lines = lines_of("a = 1\n\n[b]\nc = 1\n")
    assert line_of(("b", "missing"), lines) == 3
    assert line_of(("missing",), lines) is None


def test_places_are_said_as_people_count() -> None:
    """Lists are counted from 1."""
    assert spoken(("step", 2, "section", 0, "spots")) == "step 3.section 1.spots"
    assert spoken(()) == ""
