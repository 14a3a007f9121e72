"""Amounts typed at the prompt: read by the craft, refused by argparse in the craft's own sentence."""

import argparse
from collections.abc import Callable
from typing import TypeVar

from finishing_tui.craft.errors import Impossible

_Read = TypeVar("_Read")


def typed(reader: Callable[[str], _Read]) -> Callable[[str], _Read]:
    """Return an argparse type that reads with ``reader`` and refuses with its sentence."""

    def read(text: str) -> _Read:
        try:
            return reader(text)
        except Impossible as error:
            raise argparse.ArgumentTypeError(str(error)) from error

    return read
