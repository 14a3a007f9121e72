import sys
import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.inert import STAND_IN, inert

KEPT = "\u200c\u200d"
"""The joiners: needed inside words of several scripts, and harmless."""


def test_steering_characters_are_those_of_unicode() -> None:
    """Just what Unicode calls a control, a format, half a character or a separator of lines is replaced."""
    for code in range(sys.maxunicode + 1):
        char = chr(code)
        if unicodedata.category(char) == "Cn":  # a later Unicode than this Python's may have given it a meaning
            continue
        steers = unicodedata.category(char) in {"Cc", "Cf", "Cs", "Zl", "Zp"} and char not in KEPT
        assert (inert(char, lines=False) == STAND_IN) == (steers or char == STAND_IN), hex(code)


@given(st.text(), st.booleans())
def test_as_long_and_settled(text: str, lines: bool) -> None:  # noqa: FBT001  (hypothesis gives it by place)
    """Every character keeps its place, what is inert stays so, and any stream of UTF-8 takes it."""
    once = inert(text, lines=lines)
    assert len(once) == len(text)
    assert inert(once, lines=lines) == once
    assert once.encode().decode() == once


def test_lines_stay_where_they_are_meant() -> None:
    """Text of several lines keeps them; a line keeps none."""
    assert inert("a\n\tb\x1b[31m") == f"a\n\tb{STAND_IN}[31m"
    assert inert("a\nb", lines=False) == f"a{STAND_IN}b"
