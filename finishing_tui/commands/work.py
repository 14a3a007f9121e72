"""``finishing work``: takes a garment up, in the screens."""

import argparse
import signal
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from finishing_tui.commands.answer import Answer
from finishing_tui.commands.folders import garment_folder
from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.shelf import shelf_folder
from finishing_tui.settings import Settings, read_settings
from finishing_tui.settings.looks import looks_in_force

EXAMPLE = """\
The folder of a garment, or the name of one on the shelf. The keys you need are at the foot of the screen; ? shows all
of them. Leave whenever you like: each press is saved as you make it. If the disk can't save, the screen says so. You
learn where the rest is kept when you leave, and the program asks about it when you next open the garment.

  finishing work ~/knitting/slate-crew

With --plain you read and type line by line, for screen readers, braille displays and pipes; type help there.

  finishing work slate-crew --plain

FINISHING_LOOKS sets how the screens look: light, terminal (the terminal's own colors), ascii (plain letters only), or
several. 'finishing settings' has looks that stay, your own keys, the bell and speech.
"""

FOR_PROGRAMS = False
"""There is no --json: what a garment's journal holds is told to programs by ``record``."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the garment's folder, or its name on the shelf")
    parser.add_argument("--plain", action="store_true", help="line by line: words in, words out, nothing drawn")


def answer(args: argparse.Namespace) -> Answer:
    """Open the garment; raises ``FinishingError`` when there is none, or no terminal."""
    folder = garment_folder(args.folder)
    if args.plain:
        from finishing_tui.plain.running import on_standard_streams  # noqa: PLC0415  (only when it is asked for)

        on_standard_streams(folder, read_settings(args.tell))
        return Answer("", {"folder": str(folder)})
    return opened(shelf_folder(), ready(args.tell), garment=folder)


@dataclass(frozen=True, slots=True)
class Ready:
    """That the screens can be opened, and with what: nothing that could refuse it is left to ask."""

    settings: Settings
    looks: str
    said: str = ""
    """What the first screen says."""


def ready(tell: Callable[[str], None]) -> Ready:
    """Ask everything that could keep the screens from being opened, before anything is done for them.

    ``tell`` is given what is to be said beforehand. Raises ``FinishingError`` without a terminal, and for settings or
    looks that are wrong.
    """
    said = list[str]()

    def told(text: str) -> None:
        tell(text)  # where the screens are left, or never opened
        said.append(text)

    settings = read_settings(told)
    looks, plain = looks_in_force(settings, sys.stderr)
    need_terminal()
    return Ready(settings, " ".join(looks), " ".join(filter(None, [*said, plain])))


def opened(shelf: Path, ready: Ready, *, garment: Path | None = None, demos: bool = False) -> Answer:
    """Run the screens until they are left, and return what is to be said then.

    Raises ``FinishingError`` when not everything could be saved.
    """
    # There ctrl+c is a key like any other, which leaves; struck again while all is put away it must not cut that short.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    from finishing_tui.screens.app import FinishingApp  # noqa: PLC0415  (only when a screen is opened)

    app = FinishingApp(shelf, garment=garment, demos=demos, settings=ready.settings, looks=ready.looks, said=ready.said)
    try:
        app.run(mouse=False)
    finally:
        app.put_down()
    if app.given_up:
        raise FinishingError(" ".join(str(one) for one in app.given_up))
    return Answer("", {"shelf": str(shelf)}, app.return_code or 0)


def need_terminal() -> None:
    """Raise ``FinishingError`` where there is no terminal to draw on."""
    if not (sys.stdin.isatty() and sys.stderr.isatty()):
        raise FinishingError("the screens need a terminal to draw on, and this is not one")
