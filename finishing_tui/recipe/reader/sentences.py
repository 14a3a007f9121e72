"""Turns what the validation found into sentences a pattern writer can act on."""

import datetime
import re
from collections.abc import Iterator, Mapping
from typing import Any

from finishing_tui.recipe.annotations import Annotation, fields_of
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.base import RepeatOf
from finishing_tui.recipe.kinds.seam import Side
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.model import BandGauge, Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.settling import settle

_NOUNS: Mapping[type, str] = {
    Recipe: "a recipe",
    RecipeGauge: "the gauge",
    BandGauge: "the gauge of the band",
    Number: "a number",
    Place: "a place",
    RepeatOf: "a repeat",
    Along: "a section along an edge",
    Held: "a section of held stitches",
    Gap: "a gap",
    Side: "a side of a seam",
    ShortRows: "short_rows",
}
_OTHER_WORDS: Mapping[str, str] = {"tension": "gauge", "name": "title", "description": "about", "text": "say"}
_COUNT = "a whole number, a list with one for each size, or in quotes the name of a number or a sum"


def sentences(errors: list[Any], data: Any, model: type) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for the validation's ``errors`` about ``data`` as a ``model``, once for each path."""
    told: set[Path] = set()
    for error in errors:
        settled = settle(model, data, error["loc"])
        if settled is None:
            continue
        path, wanted, value, owner = settled
        if error["type"].startswith("union_tag"):
            path = (*path, *_telling(wanted, value))
        if path not in told:
            told.add(path)
            yield path, _sentence(error["type"], path, wanted, value, owner, _around(data, path))


def noun(cls: type) -> str:
    """Return what a model class is called in a sentence, with its article: "a join step"."""
    if cls in _NOUNS:
        return _NOUNS[cls]
    do = next((word for word, kind in KINDS.items() if kind is cls), "")
    name = f"{do} step" if do else re.sub(r"(?<=[a-z])(?=[A-Z])", " ", cls.__name__).lower()
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


def meaning(cls: type, key: str) -> str:
    """Return what a key of a model class means, as part of a sentence: the first one under its field."""
    first = field_texts(cls).get(key, "").split(". ")[0].replace("``", "'").rstrip(".")
    return first[:1].lower() + first[1:]


def _around(data: Any, path: Path) -> Any:
    for part in path[:-1]:
        data = data[part]
    return data


def _sentence(error: str, path: Path, wanted: Annotation | None, value: Any, owner: type | None, table: Any) -> str:
    key = str(path[-1]) if path else ""
    if error == "missing" and owner is not None:
        means = meaning(owner, key)
        return f"{noun(owner)} needs the key {key!r}" + (f": {means}" if means else "")
    if error == "unexpected_keyword_argument" and owner is not None:
        return _unknown(key, owner, table)
    if error.startswith("union_tag"):
        return _untold(wanted, value)
    if path == ("format",):
        read = " and ".join(map(str, wanted.literals)) if wanted else "1"
        return f"{given(value)} stands here; this program reads format {read}"
    return f"{given(value)} stands here; {_right(wanted, value)}"


def _unknown(key: str, owner: type, table: Mapping[str, Any]) -> str:
    wrong = f"{key!r} is not a key of {noun(owner)}"
    keys = fields_of(owner)
    if _OTHER_WORDS.get(key) in keys:
        return f"{wrong}; here it is called {_OTHER_WORDS[key]!r}"
    free = [other for other in keys if other not in table]
    return f"{wrong}; {near(key, free, 'the others it can have are')}"


def _telling(wanted: Annotation | None, value: Any) -> tuple[str, ...]:
    """Return the key that should tell what a table is, where it stands there and tells something there is not."""
    choice = wanted.choice if wanted else None
    return (choice.key,) if choice is not None and choice.key and choice.key in value else ()


def _untold(wanted: Annotation | None, value: Any) -> str:
    """Say that a table does not show what it is, or shows something there is not, or is no table."""
    choice = wanted.choice if wanted else None
    names = list(choice.choices) if choice else []
    if not isinstance(value, Mapping):
        return f"{given(value)} stands here; a table is wanted that has one of the keys {', '.join(names)}"
    if choice is None or not choice.key:
        return f"this section does not say what it is; give it one of the keys {', '.join(names)}"
    if choice.key not in value:
        return f"this step does not say what is done; add 'do', one of {', '.join(names)}"
    do = value[choice.key]
    if not isinstance(do, str):
        return f"'do' is {given(do)}; it is one of {', '.join(names)}, in quotes"
    return f"there is no kind of step {given(do)}; {near(do, [*names, *BRITISH], 'the kinds are')}"


def given(value: Any) -> str:
    """Return a value as a sentence names it: cropped, and always on one line."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        text = " ".join(value.split())
        return f'"{text[:40]}…"' if len(text) > 40 else f'"{text}"'
    if isinstance(value, list):
        return "a list"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, datetime.date | datetime.time):
        return f"the date or time {value}"
    return str(value)


def _right(wanted: Annotation | None, value: Any) -> str:
    """Say what would be right instead of ``value``."""
    if wanted is None:
        return "nothing is wanted"
    if isinstance(value, dict) and any(map(_is_list_of_tables, wanted.each)):
        return "there can be several, so its name stands in two brackets, such as [[step]]"
    words = (
        _COUNT
        if wanted.marks == ("count",)
        else " or ".join(
            dict.fromkeys(_words(arm) for arm in wanted.each if arm.literals != ("",))  # "": left out, to be sure
        )
    )
    right = f"{words} is wanted"
    only = wanted.each[0].bare if len(wanted.each) == 1 else None
    if isinstance(value, str):
        literals = [word for arm in wanted.each for word in arm.literals if word]
        if only is int and value.strip().isdecimal() and value.isascii():
            return f"{right}: {value.strip()}, without quotes"
        if literals and all(arm.literals for arm in wanted.each):
            return f"it is {_choices(literals)}"
    if only is str and isinstance(value, int | float) and not isinstance(value, bool):
        return f'{right}: "{value}"'
    return right


def _is_list_of_tables(one: Annotation) -> bool:
    return one.item is not None and (one.item.table is not None or one.item.choice is not None)


_PLAIN: Mapping[Any, str] = {str: "text in quotes", int: "a whole number", bool: "true or false"}
_LISTS: Mapping[Any, str] = {
    int: "a list with a whole number for each size",
    str: 'a list of texts, such as ["a", "b"],',
}


def _words(one: Annotation) -> str:
    if "count" in one.marks:
        return _COUNT
    if one.literals:
        return _choices([word for word in one.literals if word != ""])
    if one.item is not None:
        return _LISTS.get(one.item.bare, "a list of tables")
    if one.table is not None:
        return f"{noun(one.table)}, a table of keys,"
    return _PLAIN.get(one.bare, "a table of keys")


def _choices(words: list[Any]) -> str:
    quoted = [f'"{word}"' for word in words]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} or {quoted[-1]}"
