"""Parses TOML, and says in a person's words what keeps it from being TOML."""

import re
import tomllib
from typing import Any

from finishing_tui.recipe.reader.errors import BadRecipe, Problem
from finishing_tui.recipe.reader.guards import looked_over, where_unended
from finishing_tui.recipe.reader.values import tidied

_PLACE = re.compile(r" \(at (?:line (?P<line>\d+), column \d+|end of document)\)$")

# what the parser says, and what a person is told
_WORDS: tuple[tuple[str, str], ...] = (
    ("Invalid value", "what stands after '=' here is no value; text stands in quotes, yes and no are true and false"),
    ("Invalid initial character for a key part", "a key should stand here; a key is a plain word, such as title"),
    ("Invalid statement", "this line is no TOML; write key = value, or a [table] in brackets"),
    ("Expected '=' after a key", "a key must be followed by '=' and its value; in brackets it is a table"),
    ("Expected newline or end of document after a statement", "something follows the value; give it a line of its own"),
    ("Expected ']]' at the end", "the name of a table that began with '[[' must end with ']]'"),
    ("Expected ']' at the end", "the name of a table that began with '[' must end with ']'"),
    ("Unclosed array", "a list is not closed; put a comma between its entries and ']' at its end"),
    ("Unclosed inline table", "a table in braces is not closed; put a comma between its keys and '}' at its end"),
    ("Unterminated string", "a text that begins here never ends; close it with the same quotes it begins with"),
    (
        "Illegal character '\\n'",
        "a text is not closed on its line; end it with a quote, or use three quotes for several lines",
    ),
    ("Illegal character", "a character stands here that may not be in a TOML file; take it out"),
    ("Unescaped '\\' in a string", "a '\\' in this text means nothing; write '\\\\' for one, or use single quotes"),
    ("Cannot overwrite a value", "this key is here a second time; keep one of them"),
    ("Duplicate inline table key", "a key is twice in this table in braces; keep one of them"),
    (
        "Cannot declare",
        "this table is here a second time; join the two, or use [[two brackets]] for one more of a list",
    ),
    ("Cannot redefine namespace", "this name is in use for another table; give one of them another name"),
    (
        "Cannot mutate immutable namespace",
        "a list or table in braces cannot be added to here; write it in one way only",
    ),
    ("Invalid hex value", "an escape in this text needs hexadecimal digits after it"),
    ("Escaped character is not a Unicode scalar value", "an escape in this text names no character"),
    ("Invalid date or datetime", "this is no date; a recipe needs none: text stands in quotes"),
)


def table_in(text: str, name: str, bad: type[BadRecipe]) -> dict[str, Any]:
    """Return what stands in ``text``, looked over before it is parsed, and tidied.

    Raises ``bad`` for the file ``name`` where it is no TOML, or none that may be parsed.
    """
    found = looked_over(text) or parsed(text)
    if isinstance(found, Problem):
        raise bad(name, [found])
    data: dict[str, Any] = tidied(found)
    return data


def parsed(text: str) -> dict[str, Any] | Problem:
    """Return the values of a TOML text, or its first mistake.

    The text must have been looked over (``guards``), or the parser may hang or fail in other ways.
    """
    try:
        return tomllib.loads(text)
    except ValueError as error:  # a mistake in TOML, or in a number, date or time that has the right shape
        return _problem(text, str(error))


def _problem(text: str, said: str) -> Problem:
    place = _PLACE.search(said)
    last = text.count("\n", 0, len(text.rstrip())) + 1
    line = int(place["line"]) if place and place["line"] else last
    if said.startswith("Unterminated string"):
        line = where_unended(text) or line
    told = next(
        (words for start, words in _WORDS if said.startswith(start)), "this is not TOML; see the guide to recipes"
    )
    return Problem(line, "", told)
