"""Shoulders in steps: short rows in place of stepped bind-offs.

Stepped bind-offs leave a staircase that no three-needle bind-off can take; short rows leave the same slope with every
stitch live. The counts are the same, only nothing is bound off.
"""

from dataclasses import dataclass

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.words import listing, plural


@dataclass(frozen=True, slots=True)
class Slope:
    """One shoulder worked in steps."""

    steps: tuple[int, ...]
    """Stitches of each step, in the order they are left."""
    turns: int
    """Short-row turns it takes: one fewer than the steps, since the last row runs to the end."""
    text: str


@dataclass(frozen=True, slots=True)
class Stepped:
    """A printed line "bind off E at the beginning of R rows", as short rows."""

    total: int
    left_unworked: tuple[int, ...]
    """Stitches left unworked at the end, each time further from it, on each side alike."""
    live: int
    """Live stitches of each shoulder afterwards."""
    middle: int
    """Stitches between the shoulders."""
    text: str


def steps(stitches: int, count: int) -> Slope:
    """Return ``stitches`` in ``count`` steps that differ by at most one, the larger ones last: 16 in three is 5, 5, 6.

    ``count`` steps need ``count`` - 1 turns (TECHknitter 2012). Raises Impossible with fewer stitches than steps.
    """
    counted("the stitches of the shoulder", stitches)
    counted("the steps", count)
    if count > stitches:
        raise Impossible(f"{plural(stitches, 'stitch')} cannot be worked in {count} steps: {stitches} steps at most")
    small, larger = divmod(stitches, count)
    sizes = (small,) * (count - larger) + (small + 1,) * larger
    shown = (
        [str(size) for size in sizes] if count <= 12 else [f"{count - larger} of {small}", f"{larger} of {small + 1}"]
    )
    text = f"{plural(stitches, 'stitch')} in {plural(count, 'step')}: {listing(shown)}; {plural(count - 1, 'turn')}."
    return Slope(sizes, count - 1, text)


def stepped(total: int, each: int, rows: int) -> Stepped:
    """Return "bind off ``each`` at the beginning of ``rows`` rows" of ``total`` stitches as short rows, all kept live.

    10 at the beginning of 6 rows of 103: leave 10, 20, 30 unworked on each side; 30 live a side and 43 between.
    ``rows`` must be even, half for each side. Raises Impossible when it is odd or takes more than there is.
    """
    counted("the stitches", total)
    counted("the stitches of one step", each)
    counted("the rows", rows, 2)
    if rows % 2:
        raise Impossible(
            f"{rows} rows cannot serve both shoulders alike: one row a step on each side makes an even number"
        )
    if each * rows > total:
        raise Impossible(
            f"{each} at the beginning of {rows} rows takes {each * rows}, and there are only {total} stitches"
        )
    side = rows // 2
    unworked = tuple(each * step for step in range(1, side + 1))
    middle = total - each * rows
    shown = [str(left) for left in unworked]
    shown = shown if side <= 12 else [*shown[:3], "so on", shown[-1]]
    text = (
        f"In place of binding off, leave {listing(shown)} stitches unworked at the end of the rows, in turn on each "
        f"side: {plural(each * side, 'stitch')} live for each shoulder and {middle} between them."
    )
    return Stepped(total, unworked, each * side, middle, text)
