"""Line by line a caution is said once a garment, as on the screen, and answered whenever it is asked for."""

from pathlib import Path

from tests.plain.making import crew, talked

LIGHT = "take care: Good light and a steady seat."
CORDS = "take care: Cords at the necks of children's clothes can strangle"


def many(said: list[str], start: str) -> int:
    """Return how many lines begin so."""
    return sum(line.startswith(start) for line in said)


def test_a_caution_is_said_once_and_whenever_it_is_asked_for(tmp_path: Path) -> None:
    """Gone to the first stitch and back, the first step is said again, and its caution only for the word."""
    folder = crew(tmp_path / "crew")
    assert many(talked(folder, "q", ""), LIGHT) == 1
    said = talked(folder, "g", "take up 1")
    assert sum("Lay front and back flat" in line for line in said) == 2
    assert many(said, LIGHT) == 1
    assert many(talked(folder, "take up 1", "mind"), LIGHT) == 1


def test_a_childs_caution_is_said_every_time(tmp_path: Path) -> None:
    """Come to, left for another step, and come to again."""
    folder = crew(tmp_path / "crew")
    said = talked(folder, "take up 21", "take up 21", "take up 22", "take up 21")
    assert many(said, CORDS) == 2
