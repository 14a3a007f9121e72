"""``finishing demo``: a garment to practice on, copied to the shelf so that nothing can be spoilt."""

import argparse

from finishing_tui import shipped
from finishing_tui.commands.answer import Answer
from finishing_tui.commands.work import opened, ready
from finishing_tui.garment.file import read_garment
from finishing_tui.garment.shelf import shelf_folder, take_copy

EXAMPLE = """\
Without a NAME, choose from a list. You get a copy on your shelf, open and ready. With --json, lists the demo garments,
or copies the one you name.

  finishing demo
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("name", nargs="?", metavar="NAME", help="the demo garment you want")


def answer(args: argparse.Namespace) -> Answer:
    """Open a demo garment, or the list of them; raises ``FinishingError`` for a name there is not.

    Nothing is copied where the screens could not be opened: without a terminal, or for settings that are wrong.
    """
    shelf = shelf_folder()
    if args.name is None:
        return _listed() if args.json else opened(shelf, ready(args.tell), demos=True)
    source = shipped.demo(args.name)
    if args.json:
        return Answer("", {"folder": str(take_copy(source, shelf))})
    able = ready(args.tell)  # before a copy is made for nothing
    return opened(shelf, able, garment=take_copy(source, shelf))


def _listed() -> Answer:
    demos = []
    for name, folder in shipped.demos().items():
        garment, _ = read_garment(folder)
        demos.append({"name": name, "title": garment.title, "size": garment.size, "about": garment.about})
    return Answer("", {"demos": demos})
