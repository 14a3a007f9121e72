"""Reads a settings file. One walk over the fields says what is valid, and in sentences what is not.

A file without mistakes costs the standard library's parser and this walk; what finds lines is loaded only to report.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path as File
from types import MappingProxyType
from typing import Any

from finishing_tui.files import read_plain, reason
from finishing_tui.recipe.annotations import Annotation, fields_of
from finishing_tui.recipe.reader import BadRecipe, Problem
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.guards import decoded
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.placing import placed
from finishing_tui.recipe.reader.sentences import given
from finishing_tui.recipe.reader.syntax import table_in
from finishing_tui.recipe.reader.text import tidy
from finishing_tui.recipe.reader.values import problems
from finishing_tui.settings.keys import wrong_keys
from finishing_tui.settings.looks import wrong_looks
from finishing_tui.settings.model import Settings

MOST_BYTES = 64 * 1024
"""Settings are far smaller than this."""


class BadSettings(BadRecipe):
    """A settings file that cannot be used; ``problems`` are all that is wrong with it."""


class NoSettings(BadSettings):
    """There is no settings file at all."""


def read_file(path: File) -> Settings:
    """Return the settings in the file ``path``.

    Raises ``NoSettings`` where there is none, ``BadSettings`` with everything that is wrong with it.
    """
    try:
        raw = read_plain(path, MOST_BYTES + 1)
    except (FileNotFoundError, NotADirectoryError):
        raise NoSettings(str(path), [Problem(None, "", "there is no settings file here")]) from None
    except (OSError, ValueError) as error:
        why = reason(error) if isinstance(error, OSError) else "its name cannot be one of a file"
        raise BadSettings(str(path), [Problem(None, "", f"the file cannot be read: {why}")]) from None
    if len(raw) > MOST_BYTES:
        why = f"the file is larger than {MOST_BYTES // 1024} kB; settings are far smaller than that"
        raise BadSettings(str(path), [Problem(None, "", why)])
    text = decoded(raw)
    if isinstance(text, Problem):
        raise BadSettings(str(path), [text])
    return settings_in(tidy(text), str(path))


def settings_in(text: str, file: str) -> Settings:
    """Return the settings that a text holds; ``file`` is its name for sentences. Raises ``BadSettings``."""
    data = table_in(text, file, BadSettings)
    found = [*problems(data), *_wrong(data)]
    if found:
        raise BadSettings(file, placed(found, text))
    if "keys" in data:  # a group in which nothing is set says nothing
        data["keys"] = {group: table for group, table in data["keys"].items() if table}
    return Settings(**{key: _frozen(value) for key, value in data.items()})


def _wrong(data: Mapping[str, Any]) -> Iterator[tuple[Path, str]]:
    settings = fields_of(Settings)
    for key, value in data.items():
        if key not in settings:
            yield (key,), f"{key!r} is no setting; {near(key, settings, 'the settings are')}"
        elif key == "keys":
            yield from wrong_keys(value)
        elif not _fits(settings[key].annotation, value):
            yield (key,), f"{given(value)} stands here; {_right(settings[key].annotation, value)}"
        elif key == "looks" and not value:
            yield (key,), 'this list is empty; name how the screens should look, such as looks = ["dark"]'
        elif key == "looks" and (why := wrong_looks([value] if isinstance(value, str) else value)):
            yield (key,), why
        elif key == "speak_with" and not all(value):
            yield (key,), "an empty text stands in this list; the program and each thing it is given need one"


def _fits(wanted: Annotation, value: Any) -> bool:
    if wanted.literals:
        return isinstance(value, str) and value in wanted.literals
    if wanted.item is not None:
        return isinstance(value, list) and all(_fits(wanted.item, item) for item in value)
    return type(value) is wanted.bare or any(_fits(arm, value) for arm in wanted.arms)


def _right(wanted: Annotation, value: Any) -> str:
    """Say what would be right instead of ``value``; of a list of words, instead of the first wrong one."""
    for arm in wanted.each:
        if arm.item is not None and arm.item.literals and isinstance(value, list):
            wrong = next(one for one in value if not _fits(arm.item, one))
            return f"in it stands {given(wrong)}; {_one_of(arm.item.literals, wrong)}"
    words = next((arm.literals for arm in wanted.each if arm.literals), ())
    if words and isinstance(value, str):
        return _one_of(words, value)
    return f"{' or '.join(map(_words, wanted.each))} is wanted"


def _one_of(words: tuple[str, ...], value: Any) -> str:
    meant = near(value, words, "") if isinstance(value, str) else ""
    quoted = [f'"{word}"' for word in words]
    return meant if "?" in meant else f"it is {', '.join(quoted[:-1])} or {quoted[-1]}"


def _words(one: Annotation) -> str:
    quoted = ", ".join(f'"{word}"' for word in (one.item or one).literals)
    if one.item is not None:
        return f"a list of some of [{quoted}]" if quoted else 'a list of texts, such as ["a", "b"]'
    return f"one of {quoted}" if quoted else "true or false"


def _frozen(value: Any) -> Any:
    if isinstance(value, list):
        return tuple(value)
    return MappingProxyType({key: _frozen(item) for key, item in value.items()}) if isinstance(value, dict) else value
