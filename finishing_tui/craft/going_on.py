"""How what is left of an edge goes on from what lies behind it: an owed skip first, and its runs as they were."""

from collections.abc import Callable
from fractions import Fraction

from finishing_tui.craft.open_edges import by_rate
from finishing_tui.craft.rhythm import Rhythm
from finishing_tui.craft.runs import Run, Runs
from finishing_tui.craft.spacing import Ends, Style, space

Behind = Callable[[int], int]
"""How many spots in a row were picked up to a spot."""


def nothing_behind(_: int) -> int:
    """Return that nothing was picked before, or that nobody knows."""
    return 0


def go_on(
    stitches: int, spots: int, *, style: Style = "easy", ends: Ends = "open", behind: int = 0, skips_first: bool = False
) -> Rhythm:
    """Space what is left of an edge; with no stitches it is all skips, and with no spots it is empty.

    ``behind``: how many spots in a row were picked just before: picks stand in no longer row than the rest's own, and
    one more, so that a skip that is owed comes first: the runs then begin with their skips. ``skips_first``: they have
    done so until here, as those of a mirrored side do, and go on like that.
    """
    if not stitches:
        return Runs((Run(0, spots, 1),) if spots else ())
    rest = _spaced(stitches, spots, style, ends, skips_first=skips_first)
    if not _owed(rest, behind, rest):
        return rest
    turned = _spaced(stitches, spots, "easy", ends, skips_first=True)
    if not turned.at(1):
        return turned
    after = _spaced(stitches, spots - 1, style, ends, skips_first=skips_first)
    return Runs((Run(0, 1, 1), *after.as_runs()), after.skips_first)


def _spaced(stitches: int, spots: int, style: Style, ends: Ends, *, skips_first: bool) -> Rhythm:
    if not skips_first or style == "even" or stitches == spots:
        return space(stitches, spots, style=style, ends=ends)
    # The first spot of an easy rhythm is picked, so the last of its mirror is.
    return space(stitches, spots, style=style, ends="closed" if ends == "closed" else "open").mirrored()


def go_on_at(rate: Fraction, stitches: int, behind: int = 0) -> Runs:
    """Return the rhythm that makes so many stitches at a rate, with the skip first that is owed to what lies behind."""
    rest = by_rate(stitches, rate)
    own = rest if rest.stitches < rest.spots else by_rate(2 * rate.numerator, rate)  # too short to have a skip itself
    return Runs((Run(0, 1, 1), *rest.runs)) if _owed(rest, behind, own) else rest


def _owed(rest: Rhythm, behind: int, own: Rhythm) -> bool:
    """Return whether a skip must come before ``rest``, for else picks would stand in a longer row than ``own`` ones."""
    if not behind or not rest.spots or own.stitches >= own.spots or not rest.at(1):
        return False
    return behind + picks_in_a_row(rest)[0] > picks_in_a_row(own)[1] + 1


def picks_in_a_row(rhythm: Rhythm) -> tuple[int, int]:
    """Return how many spots are picked before the first skip, and in the longest row without one."""
    rows = [0]
    for loops in rhythm.between(0, rhythm.spots):
        if loops:
            rows[-1] += 1
        else:
            rows.append(0)
    return rows[0], max(rows)
