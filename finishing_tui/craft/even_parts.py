"""Sharing whole stitches over gaps as evenly as a straight line runs over squares.

Every sum that spreads something along a row stands on these three; none of them refuses anything, so whoever calls
must have made sure that there is room.
"""

from itertools import pairwise


def spread(total: int, parts: int) -> tuple[int, ...]:
    """Return ``total`` shared over ``parts`` gaps, each the floor or the ceiling of ``total / parts``.

    Every boundary is the whole number nearest the straight line (within 1/2, the least there is); the answer reads
    the same from both ends whenever that is possible, that is unless ``parts`` is even and ``total`` odd.
    """
    marks = [0]
    for i in range(1, parts):
        twice = 2 * i * total  # compare with 2 * parts: halves go down before the middle and up after it
        marks.append((twice + parts - (2 * i <= parts)) // (2 * parts))
    marks.append(total)
    return tuple(right - left for left, right in pairwise(marks))


def around(total: int, parts: int) -> tuple[int, ...]:
    """Return the gaps of a round: each boundary is the line's ceiling, so the larger gaps come early."""
    marks = [-(-i * total // parts) for i in range(parts + 1)]
    return tuple(right - left for left, right in pairwise(marks))


def across(total: int, shapings: int, margin: int) -> tuple[int, ...]:
    """Return the plain stitches of a flat row with ``shapings``: first margin, gaps between, last margin.

    ``total`` plain stitches; each margin holds ``margin`` at least and half a gap otherwise; the margins differ by at
    most one stitch, and by none where the sizes of the gaps leave the choice.
    """
    gap, larger = divmod(total, shapings)
    cut = gap + 1 if larger and gap % 2 else gap
    cut = max(cut, 2 * margin)
    return (cut // 2, *spread(total - cut, shapings - 1), cut - cut // 2) if shapings > 1 else _halves(total)


def _halves(total: int) -> tuple[int, int]:
    return total // 2, total - total // 2
