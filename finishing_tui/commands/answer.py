"""What a command answers with, and how numbers and amounts typed at the prompt are read.

Nothing here prints: ``finishing_tui.cli`` does, so that every command speaks both to people and to programs.
"""

import argparse
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from finishing_tui.craft.counts import span
from finishing_tui.craft.errors import Impossible


@dataclass(frozen=True, slots=True)
class Answer:
    """A command's answer: ``text`` for people, ``data`` for programs (one JSON object), and the exit ``status``.

    ``complaint``: what went wrong besides, for standard error, where the rest could be answered all the same.
    """

    text: str
    data: Mapping[str, Any]
    status: int = 0
    complaint: str = ""


def whole(least: int, most: int) -> Callable[[str], int]:
    """Return an argparse type that reads a whole number from ``least`` to ``most`` and refuses anything else."""

    def read(typed: str) -> int:
        # isdecimal() also takes digits of other scripts and int() takes "1_0": only plain digits are meant here.
        digits = typed.removeprefix("-")
        if not (digits.isascii() and digits.isdecimal() and len(digits) <= 12):
            raise argparse.ArgumentTypeError(f"{typed!r} is not a whole number: use {span(least, most)}")
        number = int(typed)
        if not least <= number <= most:
            raise argparse.ArgumentTypeError(f"{number:,} is out of range: use {span(least, most, number)}")
        return number

    return read


_Read = TypeVar("_Read")


def typed(reader: Callable[[str], _Read]) -> Callable[[str], _Read]:
    """Return an argparse type that reads with ``reader`` and refuses with its sentence."""

    def read(text: str) -> _Read:
        try:
            return reader(text)
        except Impossible as error:
            raise argparse.ArgumentTypeError(str(error)) from error

    return read
