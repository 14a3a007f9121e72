"""``finishing settings``: where the settings file is, every setting with its explanation, and what it is now."""

import argparse
import os
import textwrap
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any

from finishing_tui.commands.answer import Answer
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.files import private_folder, write_whole
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.settings import Settings, read_settings, settings_file
from finishing_tui.settings.writing import commented, keys_text, value_text
from finishing_tui.speech import NoProgram, program_for
from finishing_tui.talk.key_names import shown
from finishing_tui.talk.keys import USUAL, Keys
from finishing_tui.talk.rooms import GROUPS, KEYED

EXAMPLE = """\
Your settings are a file in your configuration folder, or the one FINISHING_SETTINGS names. --write makes a file that
explains every setting and sets none; remove the # before those you want.

  finishing settings --write

A pedal that sends f13 counts, and the counts are spoken:

  speech = "counts"

  [keys.needles]
  press = ["space", "f13"]
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument(
        "--write", action="store_true", help="make a file that explains every setting, if there is none"
    )


def answer(args: argparse.Namespace) -> Answer:
    """Tell of the settings, or write the file; raises ``BadSettings`` for a file with mistakes, ``NotWritten``."""
    path = settings_file()
    if args.write:
        return _written(path)
    there = path.exists()
    settings = read_settings()
    keys = settings.in_force
    text = "\n".join(_told(path, settings, keys, there=there))
    data = {"settings": _settings(settings), "keys": _keys(keys), "speaks": _speaks(settings)[0]}
    return Answer(text, {"file": str(path), "exists": there, **data})


def _written(path: Path) -> Answer:
    if path.exists() or path.is_symlink():
        raise FinishingError(f"{path} is there already; change it with an editor")
    private_folder(path.parent)
    write_whole(path, commented())
    return Answer(f"Written: {path}\nNothing is set in it yet.", {"file": str(path), "written": True})


def _told(path: Path, settings: Settings, keys: Keys, *, there: bool) -> Iterator[str]:
    yield str(path) if there else f"{path} (no such file: the usual settings hold; --write makes one)"
    for field in fields(Settings):
        if field.name == "keys":
            continue
        yield ""
        yield f"{field.name} = {value_text(getattr(settings, field.name))}"
        yield from textwrap.wrap(field_texts(Settings)[field.name], 100, initial_indent="  ", subsequent_indent="  ")
        if field.name == "speak_with":
            yield f"  {_speaks(settings)[1]}"
        if field.name == "looks" and os.environ.get("FINISHING_LOOKS"):
            yield f"  Now FINISHING_LOOKS says: {os.environ['FINISHING_LOOKS']}"
    yield ""
    yield "keys"
    yield from textwrap.wrap(field_texts(Settings)["keys"], 100, initial_indent="  ", subsequent_indent="  ")
    for group, where in GROUPS.items():
        yield ""
        yield f"[keys.{group}]  {where}"
        for action in KEYED.values():
            if action.group == group:
                own = "" if keys.of(action.id) == USUAL.of(action.id) else f" (usually {USUAL.every(action.id)})"
                yield f"  {action.name} = {keys_text(keys.of(action.id))}  {action.help}{own}"


def _speaks(settings: Settings) -> tuple[str | None, str]:
    """Return the program that speaks, if there is one, and that in a sentence."""
    try:
        found = program_for(settings.speak_with).command[0]
    except NoProgram as error:
        return None, sentence(str(error))
    return found, f"Now it would be {found}."


def _settings(settings: Settings) -> dict[str, Any]:
    usual = Settings()
    return {
        field.name: {
            "value": getattr(settings, field.name),
            "usual": getattr(usual, field.name),
            "text": field_texts(Settings)[field.name],
        }
        for field in fields(Settings)
        if field.name != "keys"
    }


def _keys(keys: Keys) -> dict[str, Any]:
    return {
        group: {
            one.name: {
                "keys": [shown(key) for key in keys.of(one.id)],
                "usual": [shown(key) for key in USUAL.of(one.id)],
                "text": one.help,
            }
            for one in KEYED.values()
            if one.group == group
        }
        for group in GROUPS
    }
