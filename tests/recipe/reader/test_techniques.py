"""Files of techniques come from outside: what is wrong with one is said by line and key."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.reader.techniques import BadTechnique, read_technique, read_technique_text

GOOD = """format = 1
title = "Tying a bow"
about = "For a bag, never for a child's neck."
order = 10
moves = ["Cross the ends.", "Draw a loop through."]
look = "It lies flat."
mend = "Tie it again."
drawing = '''
 o--o
'''
shows = "Two loops."
helps = [{ do = "sew on", says = "bow" }]
"""


def test_a_good_one_is_read() -> None:
    """Everything that stands in the file is there, the drawing line by line."""
    technique = read_technique_text(GOOD, "bow.toml")
    assert technique.moves == ("Cross the ends.", "Draw a loop through.")
    assert technique.lines == (" o--o",)
    assert technique.helps[0].says == "bow"


@pytest.mark.parametrize(
    ("old", "new", "line", "said"),
    [
        ('do = "sew on"', 'do = "sow on"', 12, "sew on"),
        ("order = 10", 'order = "10"', 4, "whole number"),
        ("order = 10", "ordre = 10", None, ""),
        ('look = "It lies flat."', "look = 3", 6, "text in quotes"),
        ("format = 1", "format = 2", 1, "format 1"),
        ("says =", "say =", 12, "says"),
        ('shows = "Two loops."', "", 8, "shows"),
        (" o--o", " o" + 40 * "-", 8, "36 columns"),
        (" o--o", 11 * " o\n", 8, "10 lines"),
        (" o--o", " o\to", 8, "tab"),
        ("Cross the ends.", "Cross\\nthe ends.", 5, "one line"),
        ("Tying a bow", "Tying \\u001b[31m a bow", 2, "U+001B"),
        ("It lies flat.", "It lies \u202eflat.", 6, "U+202E"),
        ('title = "Tying a bow"', 'title = "Tying', 2, "not closed"),
        ("order = 10", f"order = {'9' * 40}", 4, "too large"),
    ],
)
def test_a_bad_one_is_refused_by_line_and_key(old: str, new: str, line: int | None, said: str) -> None:
    """One mistake gives sentences that name its line and what would be right."""
    assert old in GOOD
    with pytest.raises(BadTechnique) as caught:
        read_technique_text(GOOD.replace(old, new), "bow.toml")
    assert any(said in found.message for found in caught.value.problems)
    assert line is None or line in {found.line for found in caught.value.problems}


def test_a_file_that_is_not_there_is_said(tmp_path: Path) -> None:
    """No traceback for a missing file, nor for one that is no text."""
    with pytest.raises(FinishingError, match="cannot be read"):
        read_technique(tmp_path / "none.toml")
    (tmp_path / "bytes.toml").write_bytes(b"\xff\xfe")
    with pytest.raises(FinishingError, match="UTF-8"):
        read_technique(tmp_path / "bytes.toml")


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Whatever stands in a file, it is a technique or it is refused in a sentence."""
    with pytest.raises(FinishingError):
        read_technique_text(text, "any.toml")
