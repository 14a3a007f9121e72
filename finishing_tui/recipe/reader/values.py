"""Looks over the values of a parsed file: their characters and their size, whatever key they stand at."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.sentences import given
from finishing_tui.recipe.reader.text import named, tidy, unprintable
from finishing_tui.recipe.sums import MOST

_SEVERAL_LINES = frozenset({"about", "say", "how", "look", "mend", "mind", "see", "items"})
"""Keys whose text may have several lines; all other text stands in one line of a screen."""


def tidied(value: Any) -> Any:
    """Return a parsed value with all its text brought into one form (see ``text.tidy``); keys are left as they are."""
    if isinstance(value, str):
        return tidy(value)
    if isinstance(value, dict):
        return {key: tidied(item) for key, item in value.items()}
    return [tidied(item) for item in value] if isinstance(value, list) else value


def as_json(data: Mapping[str, Any]) -> str:
    """Return a parsed file as JSON for the validation, which is strict there as it is nowhere else.

    Only in JSON does "strict" mean that a list is right for a tuple and a table for a dataclass. No key takes a date, a
    time or a fraction, and JSON has no dates: all of them go in as one fraction, which no key can take for its own.
    """
    plain = {key: _plain(item) for key, item in data.items()}
    if isinstance(plain.get("format"), bool):
        plain["format"] = _WRONG  # true equals 1, also where one number alone is right
    return json.dumps(plain)


_WRONG = 0.5


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_plain(item) for item in value]
    return value if isinstance(value, str | int) else _WRONG


def problems(value: Any, path: Path = (), *, several: bool = False) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for text that may not be shown and numbers that no count can be.

    ``several``: whether text at this place may have several lines.
    """
    if isinstance(value, str):
        if (char := unprintable(value)) is not None:
            yield path, f"the character {named(char)} stands in this text; take it out"
        elif not several and unprintable(value, "") is not None:
            yield path, "this text has several lines or a tab in it; it must stand on one line"
    elif isinstance(value, dict):
        for key, item in value.items():
            if unprintable(key, "") is not None or tidy(key) != key:
                yield (*path, key), "this key has characters that cannot be shown in it; write it in plain letters"
            yield from problems(item, (*path, key), several=several or key in _SEVERAL_LINES)
    elif isinstance(value, list):
        for place, item in enumerate(value):
            yield from problems(item, (*path, place), several=several)
    elif isinstance(value, int) and not -MOST <= value <= MOST:
        yield path, f"{given(value)} is too large; no count is above {MOST:,}"
