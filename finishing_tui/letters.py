"""What can be drawn only in plain letters: why, and our signs in ASCII."""

import codecs
import os
import unicodedata
from typing import TextIO

ALIKE = "alike"
"""The codec's way with a sign that an encoding lacks: one of ASCII that looks like it, or a question mark."""

POOR = ("linux", "dumb")
"""Kinds of terminal, as ``TERM`` names them, that lack many signs."""

_SIGNS = {
    **dict.fromkeys("·…", "."),
    **dict.fromkeys("–—━─", "-"),
    **dict.fromkeys("▸▷›→", ">"),
    **dict.fromkeys("◂‹←", "<"),
    **dict.fromkeys("║╔╗╚╝╞╡", "#"),
    **dict.fromkeys("│╷", "|"),
    **dict.fromkeys("‘’", "'"),
    **dict.fromkeys("“”", '"'),
    **dict.fromkeys("╭╮", "."),
    **dict.fromkeys("╰╯", "'"),
    **dict.fromkeys("├┤┼", "+"),
    "×": "x",
    "½": "h",
    **dict.fromkeys("▾↓", "v"),
    "■": "#",
    **dict.fromkeys("□▔", "_"),
    "◆": "%",
    "◇": "8",
    "▲": "^",
    "≠": "!",
    "∩": "n",
    "∪": "u",
    "╲": "\\",
    "╱": "/",
    "╤": "T",
    "═": "=",
    "¦": ":",
    "╵": "'",
}


def _alike(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    return "".join(map(_plain, error.object[error.start : error.end])), error.end


def _plain(sign: str) -> str:
    letter = unicodedata.normalize("NFD", sign)[0]  # without its accent
    return _SIGNS.get(sign, letter if letter.isascii() else "?")


codecs.register_error(ALIKE, _alike)


def in_ascii(text: str) -> str:
    """Return ``text`` in signs of ASCII only, as wide as before."""
    return text.encode("ascii", ALIKE).decode("ascii")


def why_plain(stream: TextIO) -> str:
    """Return in a sentence why ``stream`` is written in plain letters only; nothing where it takes all signs."""
    encoding = codecs.lookup(stream.encoding or "utf-8").name
    kind = os.environ.get("TERM", "")
    if not encoding.startswith("utf"):
        return f"Plain letters only: text here is in {encoding}. Set LC_ALL to a UTF-8 locale for every sign."
    if kind in POOR and stream.isatty():
        return f"Plain letters only: TERM is {kind}. Set FINISHING_LOOKS=dark for every sign."
    return ""
