"""``finishing`` without a command, or ``finishing shelf``: opens the shelf of garments in hand."""

import argparse

from finishing_tui.commands.answer import Answer
from finishing_tui.commands.work import opened
from finishing_tui.garment.shelf import shelf_folder

EXAMPLE = """\
The shelf is a folder in the user's data folder, or the one that FINISHING_SHELF names.

  FINISHING_SHELF=~/knitting finishing
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Take nothing."""
    del parser


def answer(args: argparse.Namespace) -> Answer:
    """Open the shelf; raises ``FinishingError`` without a terminal."""
    del args
    return opened(shelf_folder())
