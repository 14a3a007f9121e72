import io

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from finishing_tui.plain.streams import LONGEST, LineWriter, Unheard, laid_out, read_line
from tests.steering import steering


def heard(raw: bytes) -> list[str | Unheard]:
    """Return everything that is heard of ``raw``."""
    source, lines = io.BytesIO(raw), []
    while (line := read_line(source)) is not None:
        lines.append(line)
    return lines


@pytest.mark.parametrize(
    ("raw", "why"),
    [
        (b"\x1b[A\n", "U+001B"),
        (b"1\t2\n", "U+0009"),
        (b"2\x7f\n", "U+007F"),
        ("1\u202e2\n".encode(), "right-to-left override"),
        (b"\xff\n", "UTF-8"),
        (b"x" * (LONGEST + 1) + b"\n", "up to 1000"),
        (b"1" * 200_000 + b"\n", "up to 1000"),
        (b"1", "cut short"),
    ],
)
def test_what_is_not_taken(raw: bytes, why: str) -> None:
    """A line with a steering sign, too long, not text or cut short is refused in words; the next one is heard."""
    first, *others = heard(raw + (b"d\n" if raw.endswith(b"\n") else b""))
    assert isinstance(first, Unheard)
    assert why in first.why
    assert first.why.endswith("Nothing was done.")
    assert others == (["d"] if raw.endswith(b"\n") else [])


def test_what_is_taken() -> None:
    """Line ends of other systems, spaces around a line, and spaces of other kinds are no hindrance."""
    assert heard("d\r\n  24 \n\u00a0pace\u2009run\n\n".encode()) == ["d", "24", "pace run", ""]
    assert heard(b"n" * LONGEST + b"\n") == ["n" * LONGEST]


@given(st.binary(max_size=60))
@example(b"\r\n\r\n\r")
def test_every_line_is_heard_or_refused(raw: bytes) -> None:
    """Whatever bytes come in, every line of them is either printable text or refused in a printable sentence."""
    lines = heard(raw)
    assert len(lines) == raw.count(b"\n") + (not raw.endswith(b"\n") and bool(raw))
    for line in lines:
        assert line.why.isprintable() if isinstance(line, Unheard) else line.isprintable() or line >= "\u200c"


@given(st.lists(st.text(max_size=40), max_size=4))
def test_what_goes_out_is_inert(texts: list[str]) -> None:
    """Nothing from outside steers anything or begins a line of its own, whatever it holds."""
    sink = io.BytesIO()
    LineWriter(sink).say([f"do: {text}" for text in texts])
    said = sink.getvalue().decode()
    assert not steering(said)
    assert all(line.startswith(("do:", "  ")) or not line for line in said.splitlines())


def test_one_sentence_a_line() -> None:
    """A text is laid out a sentence a line, and measures are left whole."""
    assert laid_out(["do: Cut 3.5 cm off. Leave it.\nThen rest! \x1b[31mWell"]) == [
        "do: Cut 3.5 cm off.\n  Leave it.\n  Then rest!\n  \N{REPLACEMENT CHARACTER}[31mWell"
    ]


def test_signs_the_stream_cannot_show() -> None:
    """A stream of an old encoding gets what looks alike, or a question mark, and no failure."""
    sink = io.BytesIO()
    LineWriter(sink, "ascii").say(["caf\N{LATIN SMALL LETTER E WITH ACUTE} \u0416"])
    assert sink.getvalue() == b"cafe ?\n"
