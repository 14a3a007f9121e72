"""Techniques said line by line: move by move, the drawing in words, the others by number."""

from pathlib import Path

from finishing_tui.glance.techniques import all_techniques
from tests.plain.making import crew, talked


def test_a_technique_is_said_move_by_move(tmp_path: Path) -> None:
    """The first that helps is said whole, and any other by its number."""
    folder = crew(tmp_path / "crew")
    counting = next(one for one in all_techniques() if one.title == "Counting without losing count")
    said = " ".join(" ".join(line.split()) for line in talked(folder, "technique"))
    for text in (counting.about, counting.shows, *counting.moves, counting.look, counting.mend):
        assert text in said
    assert counting.lines[0] not in said
    joined = [line for line in talked(folder, "step 7", "h") if line]
    assert any("Three-needle bind-off" in line for line in joined)
    assert any(line.startswith("technique 2: ") for line in joined)
    second = " ".join(talked(folder, "step 7", "technique 2"))
    assert "Right sides together, or wrong" in second


def test_a_number_that_is_not_there_is_said(tmp_path: Path) -> None:
    """Nothing is guessed."""
    folder = crew(tmp_path / "crew")
    for line in ("technique 0", "technique 99", "technique two", "technique ²"):
        assert "Nothing was done." in " ".join(talked(folder, line))
