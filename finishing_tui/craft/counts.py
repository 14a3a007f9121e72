"""Reading counts: every sum of the craft refuses a number it cannot mean, in one sentence, before it begins.

The bound keeps every sum short: nothing that a person can hold on needles comes near it.
"""

from finishing_tui.craft.errors import Impossible

MOST = 100_000
"""The largest count any sum takes: stitches, rows, rounds."""


def counted(what: str, number: int, least: int = 1, most: int = MOST) -> int:
    """Return ``number`` if it lies from ``least`` to ``most``; raise Impossible naming ``what`` otherwise."""
    if not least <= number <= most:
        raise Impossible(f"{what} cannot be {number}: give a whole number from {least} to {most}")
    return number
