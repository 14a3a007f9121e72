"""The files a garment comes from, and whether they are still as they were; nothing here reads what they mean.

A garment under way needs no more of its files than this, so that taking it up imports no reader.
"""

import re
from pathlib import Path

from finishing_tui import shipped
from finishing_tui.files import read_plain

FILE = "garment.toml"
"""The name of the file in a garment's folder that says what it is."""

MOST_IN_ID = 1000
"""Bytes by which the id in a copy may be longer."""

_ID = re.compile(r'(?m)^(id\s*=\s*").*(")')


def recipe_path(folder: Path, named: str) -> Path:
    """Return the file of the recipe that a garment names: one beside it, or a shipped one.

    Raises ``shipped.NotShipped`` with the names there are.
    """
    return folder / named if named.endswith(".toml") else shipped.recipe(named)


def with_id(text: str, name: str) -> str:
    """Return the text of a garment's file with another id in it. An id says which garment it is, not what to do."""
    return _ID.sub(lambda found: f"{found[1]}{name}{found[2]}", text, count=1)


def same_garment(path: Path, text: str) -> bool:
    """Return whether the garment's file holds ``text``, whatever its id: a copy has one of its own."""
    try:
        return with_id(_text(path, like=text), "") == with_id(text, "")
    except (OSError, UnicodeDecodeError):
        return False


def same_text(path: Path, text: str) -> bool:
    """Return whether the file holds ``text`` just as it stands; whatever cannot be read does not."""
    try:
        return _text(path, like=text) == text
    except (OSError, UnicodeDecodeError):
        return False


def _text(path: Path, like: str) -> str:
    """Return what is in the file, no more of it than shows whether it is the text ``like``: it may lead anywhere."""
    most = 2 * len(like.encode()) + MOST_IN_ID  # every line end of it may be two characters in the file
    return read_plain(path, most).decode().replace("\r\n", "\n")
