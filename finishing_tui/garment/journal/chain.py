"""The chained checksum that proves a row, and everything before it, to be as it was written.

SQLite's own check does not see a flipped byte inside a row, nor a row that is missing. Each row therefore carries
SHA-256 over the row before and over an encoding of all its own columns that no two different rows share. What is
encoded here may never change: every journal ever written depends on it.
"""

from hashlib import sha256

START = "0" * 64
"""What stands for the row before the first."""


def link(
    before: str, seq: int, group: int, at: str, sitting: int, after_ms: int, kind: str, version: int, text: str
) -> str:
    """Return the chain of a row: 64 hexadecimal digits, from the chain of the row before and the row's columns.

    Numbers are written in decimal, and each text as its length in characters, a colon and the text, all separated by
    commas: since every length is said before its text, nothing in a text can pass for the next column.
    """
    return sha256(
        f"{before},{seq},{group},{len(at)}:{at},{sitting},{after_ms},{len(kind)}:{kind},{version},{len(text)}:{text}".encode()
    ).hexdigest()


def seal(seq: int, chain: str, version: int, text: str) -> str:
    """Return the checksum of a snapshot, encoded the same way; ``chain`` is that of the event it was taken after."""
    return sha256(f"{seq},{chain},{version},{len(text)}:{text}".encode()).hexdigest()
