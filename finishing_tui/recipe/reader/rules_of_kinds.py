"""What must hold between the keys of single kinds of step, said while a recipe is written.

Each of these a kind would refuse at the needles too; ``rules`` puts them among its own.
"""

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import read_length
from finishing_tui.craft.methods import method
from finishing_tui.craft.open_edges import read_rate
from finishing_tui.craft.slopes import read_slope
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.measure import Measure
from finishing_tui.recipe.kinds.move import Move
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.links import Links, Mistakes, in_range

Table = Mapping[str, Any]


def _along(path: Path, table: Table, _links: Links) -> Mistakes:
    yield from readable(path, table, "length", read_length)
    yield from readable(path, table, "slope", read_slope)
    yield from readable(path, table, "ratio", read_rate)


def _needles(path: Path, table: Table, _links: Links) -> Mistakes:
    old = [key for key in ("front", "back") if key in table]
    new = [key for key in ("near", "far") if key in table]
    if old and new:
        yield (*path, old[0]), f"{old[0]!r} and {new[0]!r} are both here; use 'near' and 'far' alone"
    elif len(old or new) != 2:
        missing = next(key for key in (("front", "back") if old else ("near", "far")) if key not in table)
        yield path, f"this step does not say which needle is {missing!r}; it needs two needles, 'near' and 'far'"
    yield from _two(path, table, "front", "back")
    yield from _two(path, table, "near", "far")


def _join(path: Path, table: Table, links: Links) -> Mistakes:
    yield from _needles(path, table, links)
    yield from _tails(path, table, links)
    if table.get("with_tail"):
        for key in ("yarn", "tail", "start_tail", "length", "start_length"):
            if key in table:
                yield (*path, key), f"'with_tail' works with a tail that hangs there; take out {key!r}"


def _tails(path: Path, table: Table, _links: Links) -> Mistakes:
    yield from readable(path, table, "length", read_length)
    yield from started(path, table, "start_length", "same")
    if table.get("length") and table.get("keep"):
        yield (*path, "length"), "with 'keep' no yarn is cut, so no tail is left; take one of them out"


def started(path: Path, table: Table, key: str, yarn: str) -> Mistakes:
    """Yield what is wrong with the length of a tail that new yarn leaves; ``yarn``: what is taken if nothing says."""
    yield from readable(path, table, key, read_length)
    if table.get(key) and table.get("yarn", yarn) != "new":
        yield (*path, key), "only new yarn leaves a tail at its start; say yarn = 'new', or take this out"


def _move(path: Path, table: Table, _links: Links) -> Mistakes:
    yield from _two(path, table, "to", "from")


def _two(path: Path, table: Table, one: str, other: str) -> Mistakes:
    if isinstance(table.get(one), str) and table.get(one) == table.get(other):
        yield (*path, one), f"'{one}' and '{other}' are the same place; two different ones are wanted"


def _seam(path: Path, table: Table, _links: Links) -> Mistakes:
    sides = table.get("sides")
    if isinstance(sides, list) and len(sides) != 2:
        yield (*path, "sides"), f"a seam has two sides, and here {'is 1' if len(sides) == 1 else f'are {len(sides)}'}"


def _shape(path: Path, table: Table, _links: Links) -> Mistakes:
    yield from readable(path, table, "method", method)


def _buttonholes(path: Path, table: Table, _links: Links) -> Mistakes:
    if "over" in table and "between" in table:
        yield path, "this step says both 'over' and 'between'; it needs one of them, or neither"
    if table.get("method") == "yarn over" and isinstance(table.get("width"), int) and table["width"] != 1:
        yield (*path, "width"), f"a yarn over makes a hole of 1 stitch, not {table['width']}; leave the width out"


def _short_rows(path: Path, table: Table, _links: Links) -> Mistakes:
    for key in ("first", "times"):
        yield from in_range((*path, key), table.get(key), 1)


def _measure(path: Path, table: Table, _links: Links) -> Mistakes:
    yield from readable(path, table, "value", read_length)
    yield from readable(path, table, "tolerance", read_length)
    if table.get("tolerance") and not table.get("value"):
        yield (*path, "tolerance"), "a tolerance belongs to a 'value', and none is given"


def readable(path: Path, table: Table, key: str, read: Callable[[str], object]) -> Iterator[tuple[Path, str]]:
    """Yield why the text at ``key`` cannot be read, if it is a text and not empty."""
    text = table.get(key)
    if isinstance(text, str) and text.strip():
        try:
            read(text)
        except Impossible as error:
            yield (*path, key), str(error)


OF_KINDS: Mapping[type, Callable[[Path, Table, Links], Mistakes]] = {
    Along: _along,
    BindOff: _tails,
    Graft: _needles,
    Join: _join,
    Move: _move,
    Seam: _seam,
    Shape: _shape,
    Buttonholes: _buttonholes,
    ShortRows: _short_rows,
    Measure: _measure,
}
"""The rule of each class that has one."""
