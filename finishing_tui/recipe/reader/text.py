"""Which characters a recipe may hold, and how text is brought into one form.

Text goes to terminals, files and web pages as it stands, so nothing that steers any of them may be in it. Marks in
brackets are only text here and everywhere.
"""

import re
import unicodedata

_JOINERS = "\u200c\u200d"
"""Needed inside words of several scripts, and harmless."""

_SPACES = dict.fromkeys((0x00A0, *range(0x2000, 0x200B), 0x202F, 0x205F, 0x3000), " ")
"""Spaces that look like a space: editors put them in unasked, and two names would look alike and not be so."""

_SUSPECT = re.compile(r"[^\x20-\x7e]")


def tidy(text: str) -> str:
    """Return ``text`` with ordinary spaces and composed letters (Unicode's form NFC)."""
    if text.isascii():
        return text
    return unicodedata.normalize("NFC", text.translate(_SPACES))


def unprintable(text: str, allowed: str = "\n\t") -> str | None:
    """Return the first character of ``text`` that may not stand in a recipe, or ``None``.

    Refused are control and escape characters, direction overrides, invisible characters and line separators: all that
    Unicode calls unprintable, but for the look-alikes of a space (``tidy`` turns those into one).
    """
    if text.isascii() and text.isprintable():
        return None
    for found in _SUSPECT.finditer(text):
        char = found[0]
        if not (char.isprintable() or char in allowed or char in _JOINERS or ord(char) in _SPACES):
            return char
    return None


def named(char: str) -> str:
    """Return an unprintable character as a sentence names it: "U+202E (right-to-left override)"."""
    name = unicodedata.name(char, "a control character").lower()
    return f"U+{ord(char):04X} ({name})"
