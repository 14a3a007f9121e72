"""The files a garment comes from, and whether they are still as they were; nothing here reads what they mean.

A garment under way needs no more of its files than this, so that taking it up imports no reader.
"""

from pathlib import Path

from finishing_tui import shipped

FILE = "garment.toml"
"""The name of the file in a garment's folder that says what it is."""


def recipe_path(folder: Path, named: str) -> Path:
    """Return the file of the recipe that a garment names: one beside it, or a shipped one.

    Raises ``shipped.NotShipped`` with the names there are.
    """
    return folder / named if named.endswith(".toml") else shipped.recipe(named)


def same_text(path: Path, text: str) -> bool:
    """Return whether the file holds ``text`` just as it stands; whatever cannot be read does not."""
    try:
        return path.read_text(encoding="utf-8") == text
    except (OSError, UnicodeDecodeError):
        return False
