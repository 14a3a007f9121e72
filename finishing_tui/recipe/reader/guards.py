"""Looks a file over before the TOML parser sees it, so that no file can make the parser hang or fall over.

The parser takes seconds for long dotted keys, fails with an error of its own on deep brackets and on numbers of
thousands of digits, and lets characters pass that steer a terminal. These are simple looks at the text, each in
time proportional to its length.
"""

import re
from collections.abc import Mapping
from pathlib import Path as File
from types import MappingProxyType

from finishing_tui.files import read_plain, reason
from finishing_tui.recipe.reader.errors import BadRecipe, Problem
from finishing_tui.recipe.reader.text import named, unprintable

MOST_BYTES = 256 * 1024
"""A recipe of forty steps in twenty sizes has less than a tenth of this."""
MOST_LINE = 4_000
"""Characters in one line."""
MOST_PARTS = 8
"""Parts of a dotted key."""
MOST_DEPTH = 20
"""Brackets and braces inside each other."""
MOST_DIGITS = 12
"""Digits in a number; any number this long is above the largest count by far."""

_TOKEN = re.compile(
    r"""
      (?P<comment>\#[^\n]*+)
    | (?P<string>
          \"{3}(?:[^\\\"]|\\.|\"(?!\"\"))*+\"{3,5}
        | '{3}(?:[^']|'(?!''))*+'{3,5}
        | \"(?:[^\\\"\n]|\\.)*+\"
        | '[^'\n]*+'
      )
    | (?P<open>[\[{])
    | (?P<close>[\]}])
    | (?P<dot>\.)
    | (?P<line>\n)
    | (?P<space>[ \t\r]++)
    | (?P<bare>[A-Za-z0-9_+-]++)
    | (?P<quote>["'])
    | (?P<other>.)
    """,
    re.VERBOSE | re.DOTALL,
)
_LONG_NUMBER = re.compile(rf"[+-]?(?:[0-9]_?){{{MOST_DIGITS + 1},}}|0[xob][0-9A-Fa-f_]{{{MOST_DIGITS + 1},}}")


def text_in(path: File, bad: type[BadRecipe], said: Mapping[type[OSError], str] = MappingProxyType({})) -> str:
    """Return the text of the file at ``path``. Raises ``bad`` where it cannot be read, ``said`` of some errors."""
    try:
        text = decoded(read_plain(path, MOST_BYTES + 1))
    except ValueError:
        text = Problem(None, "", "the file cannot be read: its name cannot be one of a file")
    except OSError as error:
        text = Problem(None, "", said.get(type(error), f"the file cannot be read: {reason(error)}"))
    if isinstance(text, Problem):
        raise bad(str(path), [text])
    return text


def decoded(raw: bytes) -> str | Problem:
    """Return the text of a file, with plain line ends, or what is wrong with its bytes."""
    if len(raw) > MOST_BYTES:
        return Problem(None, "", f"the file is larger than {MOST_BYTES // 1024} kB; a recipe is far smaller than that")
    try:
        text = raw.decode()
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        return Problem(line, "", "this line is not UTF-8 text; save the file in the encoding UTF-8")
    return text.replace("\r\n", "\n")


def looked_over(text: str) -> Problem | None:
    """Return the first thing in ``text`` for which the parser must not see it, or ``None``."""
    if text.startswith("\ufeff"):
        return Problem(1, "", "the file begins with a byte order mark (U+FEFF); save it as UTF-8 without one")
    for number, line in enumerate(text.split("\n"), 1):
        if len(line) > MOST_LINE:
            return Problem(number, "", f"this line has {len(line)} characters; break it up, {MOST_LINE} is the most")
        if (char := unprintable(line, "\t")) is not None:
            return Problem(number, "", f"the character {named(char)} stands in this line; take it out")
    return _structure(text)


def _structure(text: str) -> Problem | None:
    """Return the first key or number that is too long, or bracket too deep."""
    line, depth, parts, joined, at = 1, 0, 0, False, 0
    while at < len(text):
        token = _TOKEN.match(text, at)
        if token is None or token.lastgroup == "quote":
            return None  # a string that never ends: the parser stops here, at the latest, and says so
        at = token.end()
        match token.lastgroup:
            case "bare" | "string":
                parts = parts + 1 if joined else 1
                joined = False
                if parts > MOST_PARTS:
                    return Problem(line, "", f"a key of this line has more than {MOST_PARTS} parts; use a shorter one")
                if token.lastgroup == "bare" and _LONG_NUMBER.fullmatch(token[0]):
                    return Problem(line, "", "a number of this line is far too large; no count is above 100,000")
            case "dot":
                joined = True
            case "open":
                depth += 1
                if depth > MOST_DEPTH:
                    return Problem(line, "", f"brackets stand in each other more than {MOST_DEPTH} deep here")
            case "close":
                depth = max(depth - 1, 0)
            case _:
                pass
        if token.lastgroup in {"open", "close", "line", "other"}:
            joined = False
        line += token[0].count("\n")
    return None


def where_unended(text: str) -> int | None:
    """Return the line on which the string begins that never ends, or ``None`` when every string does."""
    at = 0
    while at < len(text):
        token = _TOKEN.match(text, at)
        if token is None:
            return None
        if token.lastgroup == "quote":
            return text.count("\n", 0, at) + 1
        at = token.end()
    return None
