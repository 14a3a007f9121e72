"""Plain letters: what is drawn where other signs are lacking, and where that is."""

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.letters import ALIKE, in_ascii, why_plain
from finishing_tui.settings import Settings
from finishing_tui.settings.looks import looks_in_force


class Stream(io.TextIOWrapper):
    """A stream in ``encoding``, of a terminal unless it is said to be none."""

    def __init__(self, encoding: str, *, terminal: bool = True) -> None:
        super().__init__(io.BytesIO(), encoding=encoding)
        self._terminal = terminal

    def isatty(self) -> bool:
        """Return whether it is a terminal."""
        return self._terminal


@given(st.text() | st.text("½×●○▸–é…"))
def test_any_text_in_ascii_is_as_wide(text: str) -> None:
    """A sign for a sign, each of ASCII; what was of ASCII stays."""
    plain = in_ascii(text)
    assert plain.isascii()
    assert len(plain) == len(text)
    assert all(new == old for new, old in zip(plain, text, strict=True) if old.isascii())


@given(st.text(), st.sampled_from(["ascii", "latin-1", "cp1252", "koi8-r"]))
def test_what_an_encoding_lacks_is_written_alike(text: str, encoding: str) -> None:
    """No text makes a stream fail, and what it has of signs is kept."""
    written = text.encode(encoding, ALIKE).decode(encoding)
    kept = text.encode(encoding, "ignore").decode(encoding)
    assert [new for new, old in zip(written, text, strict=True) if new == old != "?"] == [
        sign for sign in kept if sign != "?"
    ]


@pytest.mark.parametrize(
    ("kind", "encoding", "terminal", "why"),
    [
        ("xterm-256color", "utf-8", True, ""),
        ("linux", "utf-8", True, ": TERM is linux."),
        ("dumb", "UTF8", True, ": TERM is dumb."),
        ("linux", "utf-8", False, ""),
        ("xterm", "latin-1", True, ": text here is in iso8859-1."),
        ("xterm", "ascii", False, ": text here is in ascii."),
    ],
)
def test_where_signs_are_lacking(
    kind: str,
    encoding: str,
    terminal: bool,  # noqa: FBT001  (a case)
    why: str,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The kind of a terminal and the encoding decide, and one sentence says so; looks that are named win."""
    monkeypatch.setenv("TERM", kind)
    stream = Stream(encoding, terminal=terminal)
    said = why_plain(stream)
    assert (why in said) if why else not said
    assert looks_in_force(Settings(), stream) == (("auto", "ascii") if why else ("auto",), said)
    assert looks_in_force(Settings(looks="light"), stream) == (("light",), "")
    monkeypatch.setenv("FINISHING_LOOKS", "dark")
    assert looks_in_force(Settings(), stream) == (("dark",), "")
