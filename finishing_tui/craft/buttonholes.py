"""Buttonholes along a band: margins + holes + gaps make up the band exactly, whichever of them is asked for.

The gaps differ by at most one stitch. Whether the stitch left on the needle after a bind-off is counted in the next
number differs between patterns and is the usual cause of a band one short a hole, so the row always says it.

To bind off x stitches, x + 1 are worked: the last is left on the right needle, and it is the first of the group that
follows (KnittingHelp 134698). Patterns count it in either way.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.counts import MOST, counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.even_parts import spread
from finishing_tui.craft.rows import told
from finishing_tui.craft.words import capital, listing, plural

MOST_HOLES = 1_000
"""No band has more holes than this."""


CONVENTION = (
    "Each bind-off works one stitch more than it takes off; that stitch stays on the right needle as the first of the "
    "next group and is not counted in the number to work next."
)
"""How the rows of this program are to be read."""


def bind_off_row(groups: Sequence[int], work: str = "work") -> str:
    """Return the row that keeps and binds off by turns: ``groups`` are kept, bound off, kept ... in stitches.

    20, 6, 36, 6, 20 is "work 20, bind off 6, work 35, bind off 6, work 19": the numbers after a bind-off are one less
    than the group, as CONVENTION says. ``work`` is the word for the kept ones. Raises Impossible unless the
    groups are odd in number, at least three, each at least one stitch.
    """
    if len(groups) < 3 or len(groups) % 2 == 0 or len(groups) > MOST:
        raise Impossible("a row bound off in the middle begins and ends with kept stitches: give kept, bound off, kept")
    for count in groups:
        counted("a group of the row", count)
    phrases, first = [], True
    for kept, off in zip(groups[::2], groups[1::2], strict=False):
        todo = kept if first else kept - 1
        phrases.append(", ".join(([f"{work} {todo}"] if todo else []) + [f"bind off {off}"]))
        first = False
    last = groups[-1] - 1
    return told(phrases + ([f"{work} {last}"] if last else []))


@dataclass(frozen=True, slots=True)
class ButtonholeRow:
    """``holes`` buttonholes of ``width`` bound-off stitches on a band."""

    stitches: int
    holes: int
    width: int
    first: int
    """Stitches before the first hole."""
    last: int
    """Stitches after the last hole."""
    gaps: tuple[int, ...]
    """Stitches between neighbouring holes."""
    starts: tuple[int, ...]
    """The first stitch of each hole, counted from 1 at the start of the row."""
    row: str
    """The row that binds off, in words."""
    text: str


def buttonholes(stitches: int, holes: int, width: int, first: int, last: int) -> ButtonholeRow:
    """Return where ``holes`` holes lie on ``stitches`` stitches with margins ``first`` and ``last``.

    Raises Impossible when a number is out of range, or margins, holes and a gap of one stitch at least do not fit.
    """
    counted("the stitches of the band", stitches)
    counted("the buttonholes", holes, 1, MOST_HOLES)
    for what, count in (("width of a hole", width), ("stitches before the first hole", first)):
        counted(f"the {what}", count)
    counted("the stitches after the last hole", last)
    spare = stitches - first - last - holes * width
    if spare < holes - 1:
        raise Impossible(
            f"{plural(stitches, 'stitch')} cannot hold {plural(holes, 'hole')} of {width} with margins of {first} and "
            f"{last}: that takes {band_for(holes, width, 1, first, last)} at least, with 1 stitch between holes"
        )
    if holes == 1 and spare:
        raise Impossible(
            f"with one hole of {width} the margins take the rest of {stitches}: after {first} before it come "
            f"{stitches - width - first}, not {last}"
        )
    gaps = spread(spare, holes - 1) if holes > 1 else ()
    starts, groups, at = [], [first], first + 1
    for gap in (*gaps, last):
        starts.append(at)
        groups += [width, gap]
        at += width + gap
    row = bind_off_row(groups)
    text = (
        f"{capital(row)}. {_between(gaps)} {CONVENTION} Next row: work across and cast on {width} "
        f"above each hole: {plural(stitches, 'stitch')} again."
    )
    return ButtonholeRow(stitches, holes, width, first, last, gaps, tuple(starts), row, text)


def _between(gaps: tuple[int, ...]) -> str:
    if not gaps:
        return "There is one hole."
    sizes = [f"{gaps.count(size)} of {plural(size, 'stitch')}" for size in sorted(set(gaps))]
    middle = f", the last and {len(gaps) - 1} between" if len(gaps) > 1 else " and the last"
    said = f" of {plural(gaps[0], 'stitch')}" if len(sizes) == 1 else f": {listing(sizes)}"
    return f"{plural(len(gaps) + 1, 'hole')} (the first{middle}); {plural(len(gaps), 'gap')}{said}."


def band_for(holes: int, width: int, gap: int, first: int, last: int) -> int:
    """Return the stitches a band needs: margins + holes x width + (holes - 1) x gap.

    Raises Impossible for numbers out of range.
    """
    counted("the buttonholes", holes, 1, MOST_HOLES)
    for what, count in (("width of a hole", width), ("gap", gap), ("first margin", first), ("last margin", last)):
        counted(f"the {what}", count)
    return first + last + holes * width + (holes - 1) * gap
