"""Turns what the validation found into sentences a pattern writer can act on."""

import datetime
import re
from collections.abc import Iterator, Mapping
from typing import Any, Literal, get_args, get_origin

from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.base import RepeatOf
from finishing_tui.recipe.kinds.seam import Side
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.model import BandGauge, Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.shape import arms, bare, fields_of, is_model, meanings, one_of, settle

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


def _around(data: Any, path: Path) -> Any:
    for part in path[:-1]:
        data = data[part]
    return data


def _sentence(error: str, path: Path, wanted: Any, value: Any, owner: type | None, table: Any) -> str:
    key = str(path[-1]) if path else ""
    if error == "missing" and owner is not None:
        means = meanings(owner).get(key, "")
        return f"{noun(owner)} needs the key {key!r}" + (f": {means}" if means else "")
    if error == "unexpected_keyword_argument" and owner is not None:
        return _unknown(key, owner, table)
    if error.startswith("union_tag"):
        return _untold(wanted, value)
    if path == ("format",):
        return f"{given(value)} stands here; this program reads format 1"
    return f"{given(value)} stands here; {_right(wanted, value)}"


def _unknown(key: str, owner: type, table: Mapping[str, Any]) -> str:
    wrong = f"{key!r} is not a key of {noun(owner)}"
    keys = fields_of(owner)
    if _OTHER_WORDS.get(key) in keys:
        return f"{wrong}; here it is called {_OTHER_WORDS[key]!r}"
    free = [other for other in keys if other not in table]
    return f"{wrong}; {near(key, free, 'the others it can have are')}"


def _telling(wanted: Any, value: Any) -> tuple[str, ...]:
    """Return the key that should tell what a table is, where it stands there and tells something there is not."""
    choice = one_of(bare(wanted)[1])
    return (choice.key,) if choice is not None and choice.key and choice.key in value else ()


def _untold(wanted: Any, value: Any) -> str:
    """Say that a table does not show what it is, or shows something there is not, or is no table."""
    choice = one_of(bare(wanted)[1])
    names = list(choice.choices) if choice else []
    if not isinstance(value, Mapping):
        return f"{given(value)} stands here; a table is wanted that has one of the keys {', '.join(names)}"
    if choice is None or not choice.key:
        return f"what this section is cannot be told; give it one of the keys {', '.join(names)}"
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


def _right(wanted: Any, value: Any) -> str:
    """Say what would be right instead of ``value``."""
    kinds = [bare(arm)[0] for arm in arms(bare(wanted)[0])]
    if isinstance(value, dict) and any(_is_list_of_tables(kind) for kind in kinds):
        return "there can be several, so its name stands in two brackets, such as [[step]]"
    arms_said = [arm for arm in arms(bare(wanted)[0]) if get_args(bare(arm)[0]) != ("",)]  # "": left out, to be sure
    words = " or ".join(dict.fromkeys(map(_words, arms_said))) if wanted else "nothing"
    if bare(wanted)[1] == ("count",):
        words = _COUNT
    right = f"{words} is wanted"
    if isinstance(value, str):
        literals = [word for kind in kinds if get_origin(kind) is Literal for word in get_args(kind) if word]
        if kinds == [int] and value.strip().isdecimal() and value.isascii():
            return f"{right}: {value.strip()}, without quotes"
        if literals and all(get_origin(kind) is Literal for kind in kinds):
            return f"it is {_choices(literals)}"
    if kinds == [str] and isinstance(value, int | float) and not isinstance(value, bool):
        return f'{right}: "{value}"'
    return right


def _is_list_of_tables(kind: Any) -> bool:
    item = get_args(kind)[0] if get_origin(kind) is tuple else None
    return is_model(bare(item)[0]) or one_of(bare(item)[1]) is not None


def _words(wanted: Any) -> str:
    inner, marks = bare(wanted)
    if "count" in marks:
        return _COUNT
    if inner is str:
        return "text in quotes"
    if inner is int:
        return "a whole number"
    if inner is bool:
        return "true or false"
    if get_origin(inner) is Literal:
        return _choices([word for word in get_args(inner) if word != ""])
    if get_origin(inner) is tuple:
        item = bare(get_args(inner)[0])[0]
        if item is int:
            return "a list with a whole number for each size"
        return 'a list of texts, such as ["a", "b"],' if item is str else "a list of tables"
    if is_model(inner):
        return f"{noun(inner)}, a table of keys,"
    return "a table of keys"


def _choices(words: list[Any]) -> str:
    quoted = [f'"{word}"' for word in words]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} or {quoted[-1]}"
