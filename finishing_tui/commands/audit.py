"""``finishing audit``: the ledger run through recipes in every size; findings first, then the ledger, step by step.

It finds the files and the lines and sets the answer out; whatever is found is found by ``recipe.audit``. One file is
read, audited and told after the other, so that the thousandth takes no longer than the first.
"""

import argparse
import shutil
import textwrap
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from finishing_tui import shipped
from finishing_tui.commands.answer import Answer
from finishing_tui.commands.audit_table import table
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import capital, listing, plural
from finishing_tui.craft.words import sentence as sentence_of
from finishing_tui.files import read_plain
from finishing_tui.inert import inert
from finishing_tui.recipe.audit import Audit, Finding, SizeAudit, audit
from finishing_tui.recipe.audit.finding import Where
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import size_index
from finishing_tui.recipe.reader import BadRecipe, read_recipe
from finishing_tui.recipe.reader.errors import spoken
from finishing_tui.recipe.reader.guards import decoded

EXAMPLE = """\
Checks every step in every size. An error cannot be knitted as written; a warning needs a second look. Numbers the
pattern leaves out are worked out. The ledger below shows the live stitches in every place after each step (! error,
? warning) in the sizes with findings, or in all of them where there are none; --ledger shows every size of every
file. The exit status is 1 when there are errors.

  finishing audit my_neckband.toml --size 2
  finishing audit patterns/
"""

_NARROW, _WIDE = 40, 120
"""Lines are never set wider than this; a narrower window than the other is taken as that wide."""

_GARMENT = "garment.toml"
"""In a folder, files of this name are no recipes: they belong to garments in hand."""
_TECHNIQUES = "techniques"
"""In a folder of this name lie explanations of what the hands do, and no recipes."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument(
        "files",
        nargs="+",
        type=Path,
        metavar="FILE",
        help="a recipe file, a folder of them, or a shipped recipe's name",
    )
    parser.add_argument("--size", help="only this size (default: all)")
    parser.add_argument("--ledger", action="store_true", help="show the ledger of every size of every file")


def answer(args: argparse.Namespace) -> Answer:
    """Return the audit of every file.

    Raises ``FinishingError`` with every mistake when not one of the files can be read and audited. Where some cannot,
    that is a complaint besides, and the exit status is 2.
    """
    texts, data, wrong = list[str](), dict[str, Any](), list[str]()
    alone = args.ledger or (len(args.files) == 1 and not args.files[0].is_dir())
    width = min(max(shutil.get_terminal_size((80, 24)).columns, _NARROW), _WIDE)
    status = 0
    for file in _recipes(args.files):
        name, path = inert(str(file), lines=False), shipped.recipe_file(file)
        try:
            recipe = read_recipe(path)
            found = audit(recipe, None if args.size is None else (size_index(recipe, args.size),))
        except FinishingError as error:
            wrong.append(str(error) if isinstance(error, BadRecipe) else f"{name}: {error}")
            data[name] = {"ok": False, "sizes": {}, "unreadable": wrong[-1]}
            continue
        line = _lines(path) if found.findings else lambda _: None
        status = max(status, 0 if found.ok else 1)
        texts.append("\n".join(_told(name, recipe, found, line, width, ledger=alone, every=args.ledger)))
        data[name] = _data(recipe, found, line)
    if wrong and len(wrong) == len(data):
        raise FinishingError("\n".join(wrong))
    return Answer("\n\n".join(texts), data, 2 if wrong else status, "\n".join(wrong))


def _recipes(files: list[Path]) -> Iterator[Path]:
    """Yield the files named, and those in the folders named; raises ``FinishingError`` for a folder without any."""
    for file in files:
        if not file.is_dir():
            yield file
            continue
        found = sorted(file.rglob("*.toml"))
        inside = [path for path in found if path.name != _GARMENT and path.parent.name != _TECHNIQUES]
        if not inside:
            name = inert(str(file), lines=False)
            raise FinishingError(f"{name}: this folder has no recipe in it (a file that ends in .toml)")
        yield from inside


CountAt = Callable[[Where], int | None]


def _lines(file: Path) -> CountAt:
    """Return what tells the line of a place in the file; only a recipe with findings is read a second time for it."""
    from finishing_tui.recipe.reader.lines import line_of, lines_of  # noqa: PLC0415  (a second parser, seldom needed)

    text = decoded(read_plain(file))
    lines = lines_of(text) if isinstance(text, str) else {}
    return lambda where: line_of(where, lines)


def _told(
    name: str, recipe: Recipe, found: Audit, line: CountAt, width: int, *, ledger: bool, every: bool
) -> Iterator[str]:
    yield f"{name}: {recipe.title}"
    yield from textwrap.wrap(_headline(recipe, found), width)
    for alike in _alike(found):
        finding, sizes = alike[0], list(dict.fromkeys(one.size for one in alike))
        where = line(finding.where)
        place = f"line {where}" if where else "the file"
        title = f"step {finding.step + 1}, {recipe.step[finding.step].title}" if finding.step is not None else ""
        about = title or spoken(_named(finding.where))
        all_of_them = len(sizes) == len(found.sizes) > 1
        whose = "" if not finding.size else ", in every size" if all_of_them else f", in {_sizes(sizes)}"
        yield ""
        yield from textwrap.wrap(f"{finding.level}, {place}: {about}{whose}", width, subsequent_indent="  ")
        for sentence, named in _sentences(alike):
            size = "" if named == sizes else f"{_sizes(named)}: "
            text = f"{size}{sentence}"
            yield from textwrap.wrap(sentence_of(text), width, initial_indent="  ", subsequent_indent="  ")
    wrong = [size for size in found.sizes if _told_of(size)]
    for audited in (found.sizes if every or not wrong else wrong) if ledger else ():
        yield ""
        yield from textwrap.wrap(f"Size {audited.size}: live stitches after every step", width)
        yield from table(recipe, audited, width)


def _headline(recipe: Recipe, found: Audit) -> str:
    """Say how many errors and warnings there are and in which sizes, and then what was audited."""
    levels = [finding.level for finding in found.findings]
    counted = [(levels.count("error"), "error"), (levels.count("warning"), "warning")]
    told = listing([plural(many, what) for many, what in counted if many])
    if not told:
        every = _sizes([size.size for size in found.sizes])
        return f"All counts agree in {every}, {plural(len(recipe.step), 'step')}."
    wrong = [size.size for size in found.sizes if _told_of(size)]
    whose = f"{capital(_sizes(wrong, most=8))}: " if wrong else ""
    return f"{whose}{told}. {plural(len(found.sizes), 'size')} and {plural(len(recipe.step), 'step')} checked."


def _told_of(size: SizeAudit) -> bool:
    """Return whether there is an error or a warning in a size."""
    return any(finding.level != "implied" for finding in size.findings)


def _alike(found: Audit) -> Iterator[list[Finding]]:
    """Yield the findings that are about the same thing together, whatever their size; the errors first."""
    groups: dict[tuple[str, str, Where], list[Finding]] = {}
    for finding in found.findings:
        groups.setdefault((finding.level, finding.kind, _named(finding.where)), []).append(finding)
    order = ("error", "warning", "implied")
    yield from sorted(groups.values(), key=lambda alike: order.index(alike[0].level))


def _sentences(alike: list[Finding]) -> list[tuple[str, list[str]]]:
    """Return the different sentences of findings about one thing, each with the sizes it is said of."""
    if alike[0].level == "implied":
        together = alike[0].message.removesuffix(f" {alike[0].expected}")
        return [(f"{together} {', '.join(str(one.expected) for one in alike)}", [one.size for one in alike])]
    found: dict[str, list[str]] = {}
    for one in alike:
        found.setdefault(one.sentence, []).append(one.size)
    return list(found.items())


def _named(where: Where) -> Where:
    """Return where something stands without its position in a list by size."""
    return where[:-1] if where and isinstance(where[-1], int) and len(where) > 2 else where


def _sizes(names: list[str], most: int = 4) -> str:
    if len(names) == 1:
        return f"size {names[0]}"
    return f"{len(names)} sizes" if len(names) > most else f"sizes {listing(names)}"


def _data(recipe: Recipe, found: Audit, line: CountAt) -> dict[str, Any]:
    sizes = {
        size.size: {
            "start": dict(size.start),
            "ledger": [
                {
                    "step": row.step + 1,
                    "do": row.do,
                    "title": row.title,
                    "live": dict(row.live),
                    "unsure": sorted(row.unsure),
                    "printed": dict(row.printed),
                    "tails": list(row.tails),
                    "markers": list(row.markers),
                    "holes": list(row.holes),
                }
                for row in size.rows
            ],
            "findings": [_finding(finding, line) for finding in size.findings],
            "implied": dict(size.implied),
        }
        for size in found.sizes
    }
    return {
        "ok": found.ok,
        "title": recipe.title,
        "sizes": sizes,
        "findings": [_finding(finding, line) for finding in found.general],
    }


def _finding(finding: Finding, line: CountAt) -> dict[str, Any]:
    return {
        "level": finding.level,
        "kind": finding.kind,
        "step": None if finding.step is None else finding.step + 1,
        "line": line(finding.where),
        "key": spoken(finding.where),
        "expected": finding.expected,
        "found": finding.found,
        "message": finding.message,
        "sum": finding.sum,
        "suggestion": finding.suggestion,
    }
