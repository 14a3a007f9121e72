"""Binding off in the middle of a row, in words that leave no doubt about the stitch left on the needle.

To bind off x stitches, x + 1 are worked: the last is left on the right needle, and it is the first of the group that
follows (KnittingHelp 134698). Patterns count it in either way, so it is always stated here which.
"""

from collections.abc import Sequence

from finishing_tui.craft.counts import MOST, counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.rows import told

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
