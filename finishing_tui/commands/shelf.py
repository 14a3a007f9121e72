"""``finishing`` without a command, or ``finishing shelf``: opens the shelf of garments in hand."""

import argparse
from pathlib import Path

from finishing_tui.commands.answer import Answer
from finishing_tui.commands.work import opened, ready
from finishing_tui.garment.shelf import on_shelf, shelf_folder

EXAMPLE = """\
Your shelf is a folder in your data folder, or the one FINISHING_SHELF names.

  FINISHING_SHELF=~/knitting finishing

With --json, lists your garments and how far each is.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Take nothing."""
    del parser


def answer(args: argparse.Namespace) -> Answer:
    """Open the shelf, or list what is on it for programs; raises ``FinishingError`` without a terminal."""
    shelf = shelf_folder()
    return listed(shelf) if args.json else opened(shelf, ready(args.tell))


def listed(shelf: Path) -> Answer:
    """Return the garments on ``shelf`` with how far each is, the one touched last first."""
    told = ("title", "size", "step", "steps", "heading", "touched", "finished", "trouble")
    garments = [{"folder": str(one.folder), **{key: getattr(one, key) for key in told}} for one in on_shelf(shelf)]
    return Answer("", {"shelf": str(shelf), "garments": garments})
