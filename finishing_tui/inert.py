"""Makes text from outside inert: nothing in it can steer a terminal, a page or the direction of writing.

This is the one door for it. A recipe that holds such a character is refused when it is read; a journal, a file's name
or a message of the system cannot be refused for it, so there a stand-in is shown in its place.
"""

import re

_STEERING = (
    "\x00-\x08\x0b-\x1f\x7f-\x9f"  # control characters, ESC and BEL among them
    "\u00ad\u0600-\u0605\u061c\u06dd\u070f\u0890\u0891\u08e2\u180e\u200b\u200e\u200f"  # invisible, or turning direction
    "\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"  # line separators, overrides, isolates, byte order marks
    "\ud800-\udfff"  # half characters: JSON can name them, and no stream takes them
    "\U000110bd\U000110cd\U00013430-\U0001343f\U0001bca0-\U0001bca3\U0001d173-\U0001d17a\U000e0001\U000e0020-\U000e007f"
)
"""Unicode's categories Cc, Cf, Cs, Zl and Zp, but for the newline, the tab and the two joiners that scripts need."""

_IN_TEXT = re.compile(f"[{_STEERING}]")
_IN_LINE = re.compile(f"[{_STEERING}\t\n]")

STAND_IN = "\N{REPLACEMENT CHARACTER}"
"""What is shown where a character may not be."""


def inert(text: str, *, lines: bool = True) -> str:
    """Return ``text`` with a stand-in for each character that could steer; newlines and tabs stay if ``lines``."""
    if text.isprintable():
        return text
    return (_IN_TEXT if lines else _IN_LINE).sub(STAND_IN, text)


def escaped(document: str) -> str:
    """Return a JSON ``document`` with an escape for each character that could steer: inert, and the same value."""
    return document if document.isprintable() else _IN_TEXT.sub(_escape, document)


def _escape(found: re.Match[str]) -> str:
    units = found[0].encode("utf-16-be", "surrogatepass")  # JSON names a character beyond U+FFFF by its two halves
    return "".join(f"\\u{units[at : at + 2].hex()}" for at in range(0, len(units), 2))
