"""The command ``finishing``: reads the request, imports the one module that answers it, and prints the answer.

It must stay quick to start: nothing but the standard library is imported before the request is understood, and the
screens only when one is to be opened. Whatever goes wrong is one sentence on standard error and exit status 2.
"""

import argparse
import importlib
import sys
from collections.abc import Sequence
from typing import Any, NoReturn

from finishing_tui.commands.printing import complain, for_programs, put_out, shown
from finishing_tui.craft.errors import FinishingError
from finishing_tui.inert import inert

# name: (module, what it is for). The order is the order of the help.
COMMANDS: dict[str, tuple[str, str]] = {
    "shelf": ("shelf", "open your shelf: the garments in progress (also without a command)"),
    "start": ("start", "start a garment from a recipe, with your own numbers"),
    "demo": ("demo", "practice on a demo garment"),
    "work": ("work", "pick up a garment where you left it"),
    "record": ("record", "show what you did on a garment, and what is left"),
    "doctor": ("doctor", "check a garment's journal, or recover a damaged one"),
    "settings": ("settings", "show your keys, pedals, bell, speech and looks, and what each means"),
    "spread": ("spread", "spread stitches over the rows of an edge"),
    "recount": ("recount", "space the rest of an edge after a count"),
    "share": ("share", "share a band's stitches among the sections of its edge"),
    "gauge": ("gauge", "find the natural ratio of an edge, and what the edge needs"),
    "evenly": ("evenly", "increase or decrease evenly in a row or round"),
    "pair": ("pair", "work or sew two unequal needles or edges together"),
    "buttonholes": ("buttonholes", "place buttonholes on a band"),
    "rib": ("rib", "check whether a band fits its rib, and where the rib lies"),
    "corner": ("corner", "shape a miter or a V, with the count after each round"),
    "shoulder": ("shoulder", "slope a shoulder in steps, for short rows"),
    "gap": ("gap", "close a gap with extra stitches"),
    "head": ("head", "check whether a neck goes over the head"),
    "yarn": ("yarn", "estimate the yarn an edge needs, and whether yours will do"),
    "audit": ("audit", "check a recipe in every size"),
    "schema": ("schema", "print the JSON Schema of a recipe file, for editors"),
    "recipes": ("recipes", "list or print recipes, and the techniques they use"),
}

OLD = {"space": "spread"}
"""What commands were called once; it is still understood."""

SURROUNDINGS = """\
environment:
  FINISHING_SHELF     the folder of your garments
  FINISHING_SETTINGS  your settings file
  FINISHING_LOOKS     auto, dark, light, terminal, ascii; beats your settings
  NO_COLOR            set it for no colors
  TERM                plain letters on linux and dumb, unless you set looks
"""
"""What the program reads of its environment."""


class _Parser(argparse.ArgumentParser):
    """A parser whose complaint is one sentence and not a page of usage."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {inert(message, lines=False)}. See '{self.prog} --help'.\n")

    def _print_message(self, message: str, file: Any = None) -> None:
        if file is sys.stdout:  # help
            put_out(message.removesuffix("\n"))
        else:
            super()._print_message(shown(message), file)


class _Version(argparse.Action):
    """``--version``: which one this is."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> NoReturn:
        from importlib.metadata import version  # noqa: PLC0415  (slow, and only this asks for it)

        put_out(f"finishing {version('finishing-tui')}")
        parser.exit()


def _parser(asked: Sequence[str]) -> argparse.ArgumentParser:
    """Build the parser; only the command named in ``asked`` is imported and given its arguments."""
    parser = _Parser(
        prog="finishing",
        description="Finish a hand-knitted garment at the needles.\nWithout a command, your shelf opens.",
        epilog=SURROUNDINGS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="show the version and exit")
    named = next((word for word in asked if word in COMMANDS), None)
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    for name, (module, purpose) in COMMANDS.items():
        sub = commands.add_parser(
            name,
            help=purpose,
            description=purpose[0].upper() + purpose[1:] + ".",
            formatter_class=argparse.RawDescriptionHelpFormatter,
            allow_abbrev=False,
        )
        if name != named:
            continue
        found = importlib.import_module(f"finishing_tui.commands.{module}")
        sub.epilog = found.EXAMPLE
        found.arguments(sub)
        if getattr(found, "FOR_PROGRAMS", True):
            sub.add_argument("--json", action="store_true", help="answer as one JSON object, for programs")
        sub.set_defaults(answer=found.answer, json=False, tell=complain)
    return parser


def _unknown(word: str) -> str:
    from difflib import get_close_matches  # noqa: PLC0415  (only where a command is mistyped)

    near = get_close_matches(word[:60], [*COMMANDS, *OLD], n=1)
    hint = f"did you mean {OLD.get(near[0], near[0])}?" if near else "see 'finishing --help'"
    return f"finishing: there is no command {word[:60]!r}; {hint}"


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line ``argv`` (the process's own when not given) and return the exit status."""
    first, *rest = list(sys.argv[1:] if argv is None else argv) or ["shelf"]
    words = [OLD.get(first, first), *rest]
    if words[0] not in COMMANDS and not first.startswith("-"):
        complain(_unknown(first))
        return 2
    args = _parser(words).parse_args(words)
    try:
        answer = args.answer(args)
    except KeyboardInterrupt:
        return 130  # as a shell has it for ctrl+c; nothing is left half written
    except FinishingError as error:
        complain(f"finishing: {error}")
        return 2
    except OSError as error:  # a name that no file can have, a disk that fails under a reader
        complain(f"finishing: {inert(str(error.filename or 'a file'), lines=False)}: {error.strerror or error}")
        return 2
    if answer.complaint:
        complain(answer.complaint)
    if unwritten := put_out(for_programs(answer.data) if args.json else answer.text):
        complain(f"finishing: the answer could not be written: {unwritten}")
        return 2
    return int(answer.status)
