"""What is cut says which key shows all, and nothing lies over that; long words break where they may."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from textual.content import Content

from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.plain import cut_short, plain, wrapped
from tests.screens.hands import pressing, settled, shown
from tests.screens.scenes import SCENES, SIZES

CUT = ("join-uneven", "seam", "count-taken", "take-back-named", "spot-loop", "mirror", "two-together-refused")
"""Scenes with more words than there is room for, or with a notice over them."""


@pytest.mark.parametrize("name", CUT)
async def test_no_sentence_is_cut_without_the_key_that_shows_all(name: str, tmp_path: Path) -> None:
    """At 80x24 a line that ends with an ellipsis names the key; the notice hides neither that nor what is held."""
    app = SCENES[name].app(tmp_path)
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await settled(pilot)
        await pressing(*SCENES[name].keys)(pilot)
        lines = shown(app).split("\n")
        notice = app.screen.query_one(Notice)
        assert all("…" not in line or line.endswith("? shows all") for line in lines)
        assert any("needle" in line and "tail" in line for line in lines) or "shoulder" in lines[1] or "Sew" in lines[1]
        if notice.text and any("draw a loop" in line or "Join new yarn" in line for line in lines):
            assert any(line.endswith("? shows all") for line in lines)


@given(st.lists(st.text("ab-/", min_size=1, max_size=60), min_size=1, max_size=5), st.integers(8, 40))
def test_long_words_break_behind_a_stroke_or_a_dash(words: list[str], width: int) -> None:
    """Every letter stays, no line is too wide, and a word is broken elsewhere only where it has no stroke or dash."""
    text = " ".join(words)
    lines = wrapped(plain(text), width)
    assert "".join(line.plain for line in lines).replace(" ", "") == text.replace(" ", "")
    assert all(line.cell_length <= width for line in lines)


def test_a_path_is_read_in_its_parts() -> None:
    """The right value: its parts whole, each line ended by a stroke or a dash."""
    path = "~/.local/state/finishing/rescue/finishing-rescue-every-face-b14b638e52d36753-00000000.jsonl"
    lines = [line.plain.rstrip() for line in wrapped(plain(f"It is in {path}."), 36)]
    assert lines == [
        "It is in",
        "~/.local/state/finishing/rescue/",
        "finishing-rescue-every-face-",
        "b14b638e52d36753-00000000.jsonl.",
    ]


@given(st.lists(st.text("abc ", min_size=1, max_size=30), min_size=1, max_size=9), st.integers(1, 9))
def test_what_is_cut_short_says_so(texts: list[str], most: int) -> None:
    """As many lines as there may be, the last with the key; all of them where they fit."""
    lines = [Content(text) for text in texts]
    found = cut_short(lines, 30, most, "?")
    assert len(found) == min(len(lines), most)
    assert found[-1].plain.endswith("… ? shows all") == (len(lines) > most)
    assert all(line.cell_length <= 30 for line in found)
