"""The ledger of one size as a table to pin to the wall: a row a step, a column a place, as wide as it may be.

Plain text in columns; where the places do not fit side by side the table is continued below with the rest of them.
"""

import textwrap
from collections.abc import Iterator, Sequence

from finishing_tui.recipe.audit import SizeAudit
from finishing_tui.recipe.audit.finding import LedgerRow
from finishing_tui.recipe.model import Recipe

NONE = "·"
"""Stands where a place holds nothing."""

_TITLE, _NARROW_TITLE = 24, 16
"""The least width of a step's title, and that in a narrow window."""

_WORD = 11
"""The longest word a column's heading has in one line."""


def table(recipe: Recipe, audit: SizeAudit, width: int) -> Iterator[str]:
    """Yield the lines of the table, none longer than ``width`` (at least 40)."""
    heads, cells = _columns(recipe, audit)
    sizes = [max([len(word) for word in head] + [len(row[at]) for row in cells]) for at, head in enumerate(heads)]
    title = _TITLE if width >= 60 else _NARROW_TITLE
    at = 0
    while at < len(heads) or at == 0:
        room, upto = width - 4 - title, at
        while upto < len(heads) and (upto == at or room >= sizes[upto] + 2):
            room -= sizes[upto] + 2
            upto += 1
        if at:
            yield ""
        yield from _block(audit, heads[at:upto], [row[at:upto] for row in cells], sizes[at:upto], title + max(room, 0))
        at = upto or 1
    yield from _legend(audit, width)


def _legend(audit: SizeAudit, width: int) -> Iterator[str]:
    """Yield what two counts in one cell are, with the first of them, where there are any."""
    for row in audit.rows:
        for place, printed in row.printed.items():
            there = row.live.get(place, 0)
            told = f"{_held(row, place)}: {there} there, {printed} printed; the steps below go on from {printed}."
            yield from textwrap.wrap(told, width, initial_indent="    ", subsequent_indent="    ")
            return


def _columns(recipe: Recipe, audit: SizeAudit) -> tuple[list[list[str]], list[list[str]]]:
    """Return the headings, as words to be stacked, and a list of cells for the start and every step."""
    held_once = {place for row in audit.rows for place in (*row.live, *row.unsure)}
    places = [name for name in recipe.place if audit.start.get(name) or name in held_once]
    before = {"tails": len(recipe.tails), "markers": 0, "holes": 0}
    others = [what for what, many in before.items() if many or any(getattr(row, what) for row in audit.rows)]
    heads = [_stacked(recipe.place[name].text) for name in places] + [[what] for what in others]
    start = [_cell(audit.start.get(name, 0)) for name in places]
    start += [_cell(before[what]) for what in others]
    cells = [start]
    for row in audit.rows:
        held = [_held(row, name) for name in places]
        cells.append(held + [_cell(len(getattr(row, what))) for what in others])
    return heads, cells


def _block(
    audit: SizeAudit, heads: Sequence[list[str]], cells: Sequence[list[str]], sizes: Sequence[int], wide: int
) -> Iterator[str]:
    tall = max((len(head) for head in heads), default=1)
    for line in range(tall):
        words = [head[line - tall + len(head)] if line >= tall - len(head) else "" for head in heads]
        step = "step" if line == tall - 1 else ""
        yield _line(step, words, sizes, wide, "")
    titles = [("", "the pieces as they come"), *((f"{_flag(row)}{row.step + 1}", row.title) for row in audit.rows)]
    for (number, title), held in zip(titles, cells, strict=True):
        first, *more = textwrap.wrap(title, wide - 1) or [""]
        yield _line(first, held, sizes, wide, number)
        yield from (f"    {rest}" for rest in more)


def _line(text: str, words: Sequence[str], sizes: Sequence[int], wide: int, number: str) -> str:
    columns = "".join(f"  {word:>{size}}" for word, size in zip(words, sizes, strict=True))
    return f"{number:>3} {text:<{wide}}{columns}".rstrip()


def _flag(row: LedgerRow) -> str:
    levels = {finding.level for finding in row.findings}
    return "!" if "error" in levels else "?" if "warning" in levels else ""


def _held(row: LedgerRow, place: str) -> str:
    """Return the cell of a place after a step: what it holds, and the print where that differs and is gone on from."""
    if place in row.unsure:
        return "?"
    there = _cell(row.live.get(place, 0))
    return f"{there}/{row.printed[place]}" if place in row.printed else there


def _cell(count: int) -> str:
    return str(count) if count else NONE


def _stacked(text: str) -> list[str]:
    return [part for word in text.split() for part in textwrap.wrap(word, _WORD)]
