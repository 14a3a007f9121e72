"""``finishing start``: a garment started from a recipe at the prompt, with the audit in one's own numbers."""

import argparse
import uuid
from typing import Any

from finishing_tui import shipped
from finishing_tui.commands.answer import Answer
from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.words import listing
from finishing_tui.garment.shelf import put_on_shelf, shelf_folder
from finishing_tui.garment.starting import Draft, file_text, source_of
from finishing_tui.glance.audited import Audited, PointLevel, audited
from finishing_tui.glance.numbers import named, number_lines
from finishing_tui.glance.starting import NUMBER, questions, summary, typed
from finishing_tui.recipe.numbers import size_index
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.settings import read_settings

EXAMPLE = """\
RECIPE is a shipped recipe's name or the path of a recipe file. The recipe supplies what you leave out. Every step is
checked with your numbers first; if that finds errors, nothing is started and the exit status is 1, unless you give
--accept.

  finishing start crew-neck --size M --number front_rows=34 --gauge "21 x 29 over 10 cm" --name "slate crew"

  Started slate crew: Crew neck on held shoulders, size M, right-handed.
"""

_HEADINGS: dict[PointLevel, str] = {
    "error": "error",
    "warning": "warning",
    "implied": "worked out",
    "differs": "differs from the recipe",
}


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("recipe", metavar="RECIPE", help="a shipped recipe's name, or a recipe file")
    parser.add_argument("--size", help="the size, if the recipe has several")
    parser.add_argument(
        "--number",
        action="append",
        default=[],
        metavar="NAME=N",
        help="a number of your own garment, by its name in the recipe (may be given again for others); "
        "rows that nobody counted: NAME=",
    )
    parser.add_argument("--gauge", metavar="GAUGE", help="your gauge, such as '20 x 28 over 10 cm'")
    parser.add_argument("--band-gauge", metavar="GAUGE", help="the band's gauge, if it differs")
    parser.add_argument("--hand", choices=("right", "left"), help="which hand you knit with (default: your settings)")
    parser.add_argument("--name", metavar="TITLE", help="what you call it")
    parser.add_argument(
        "--wearer", metavar="WHO", help="who will wear it, if the size doesn't say: an age, 'child', 'woman' ..."
    )
    parser.add_argument("--yarn", default="", help="the yarn, in words")
    parser.add_argument("--needles", default="", help="the needles, in words")
    parser.add_argument("--accept", action="store_true", help="start it even if the audit finds errors")


def answer(args: argparse.Namespace) -> Answer:
    """Put the garment on the shelf; raises ``FinishingError`` for what cannot be read, is out of range or not kept."""
    draft = _draft(args)
    found = audited(draft.inputs)
    lines = [f"{_HEADINGS[point.level]}: {point.text}" for point in found.points]
    data: dict[str, Any] = {
        "folder": None,
        "ok": found.ok,
        "title": draft.called,
        "recipe": draft.source,
        "size": draft.size,
        "numbers": {line.name: line.value for line in number_lines(draft.recipe, draft.size, draft.own)},
        "own": dict(draft.own),
        "findings": [{"level": one.level, "message": one.text, "number": one.number} for one in found.points],
    }
    if not found.possible or (not found.ok and not args.accept):
        return Answer("\n".join([*lines, _not_started(found)]), data, 1)
    about = summary(draft)
    lines += _as_printed(draft, args)
    lines += [f"Started {draft.called}: {about[0]}.", *(f"  {line}" for line in about[1:])]
    # Last of all, so that nothing is on the shelf of a garment that was refused.
    folder = put_on_shelf(shelf_folder(), draft.called, file_text(draft, str(uuid.uuid4())))
    return Answer("\n".join([*lines, f"  {folder}"]), {**data, "folder": str(folder)})


def _draft(args: argparse.Namespace) -> Draft:
    source, path = source_of(args.recipe, shipped.recipes())
    recipe = read_recipe(path)
    if args.size is None and len(recipe.sizes) > 1:
        raise FinishingError(
            f"say which size with --size; {recipe.title} has {listing(recipe.sizes)} "
            f"('finishing recipes {args.recipe} --held PLACE=COUNT' finds it out)"
        )
    size = recipe.sizes[0] if args.size is None else args.size
    size_index(recipe, size)
    draft = Draft(recipe=recipe, source=source, size=size, hand=args.hand or read_settings(args.tell).hand)
    for one in args.number:
        name, sign, count = one.partition("=")
        if not sign:
            raise FinishingError(f"{one[:40]!r} does not give a number; write it as NAME=N, such as front_rows=34")
        line = named(number_lines(recipe, size, draft.own), name.strip())
        draft = typed(draft, f"{NUMBER}{line.name}", count.strip() or ("" if line.needless else "?"))
    options = {"gauge": args.gauge, "band": args.band_gauge, "title": args.name}
    options |= {"yarn": args.yarn, "needles": args.needles}
    draft = _said_at(draft, "wearer", args.wearer or "")
    for key in questions(draft):
        if options.get(key):
            draft = _said_at(draft, key, options[key])
    return draft


def _said_at(draft: Draft, key: str, text: str) -> Draft:
    option = {"gauge": "--gauge", "band": "--band-gauge"}.get(key, f"--{key}")
    try:
        return typed(draft, key, text)
    except Impossible as error:
        raise FinishingError(f"{option}: {error}") from error


def _as_printed(draft: Draft, args: argparse.Namespace) -> list[str]:
    """Return the numbers that the recipe asks for and that nobody gave, with how they are counted."""
    return [
        f"from the recipe: {line.value} {line.text} ({line.name}){f'. {line.how}' if line.how else ''}"
        for line in number_lines(draft.recipe, draft.size, draft.own)
        if line.asked and not line.own and not _said(args, line.name)
    ]


def _said(args: argparse.Namespace, name: str) -> bool:
    return any(one.partition("=")[0].strip() == name for one in args.number)


def _not_started(found: Audited) -> str:
    if not found.possible:
        return "Nothing was started: give the missing number with --number."
    return "Nothing was started: fix the numbers with --number, or start anyway with --accept."
