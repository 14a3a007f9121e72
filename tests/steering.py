"""What must never reach a terminal, and texts that hold all of it."""

import unicodedata

POISON = "\x1b]0;owned\x07\x9b31m\u202e\u2066\u2028\x7f\x00\x85\u200b\U000e0041\ud800"
"""A new title for the window, a colour, an override, an isolate, line ends that are none, NUL, half a character."""

IN_UTF_8 = POISON.replace("\ud800", "")
"""The same without half a character, so that a program may write it on."""

ON_DISK = "\x1b]0;owned\x07\u009b31m\u202e\u2066\u2028\x7f\x85\u200b\U000e0041"
"""The same without what no file's name and no argument can hold."""


def steering(shown: str | bytes) -> list[str]:
    """Return the characters of ``shown`` that could steer: all controls, formats and separators but what is needed.

    Needed are the line's end, and the two joiners that scripts have. Raises ``UnicodeDecodeError`` for bytes that are
    no UTF-8: a terminal may take those for controls too.
    """
    text = shown.decode() if isinstance(shown, bytes) else shown
    return [
        f"U+{ord(sign):04X}"
        for sign in text
        if sign not in "\n\u200c\u200d" and unicodedata.category(sign) in {"Cc", "Cf", "Cs", "Zl", "Zp"}
    ]
