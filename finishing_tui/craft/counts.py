"""Reading counts: every sum of the craft refuses a number it cannot mean, in one sentence, before it begins.

The bound keeps every sum short: nothing that a person can hold on needles comes near it.
"""

from finishing_tui.craft.errors import Impossible

MOST = 100_000
"""The largest count any sum takes: stitches, rows, rounds."""


def span(least: int, most: int = MOST, value: int = 0) -> str:
    """Say what a count may be: ``4 to 1,200``; ``4 or more`` where only what nobody holds is too many.

    ``value``: what was given and is out of it; above ``MOST`` it is said what there may be up to.
    """
    return f"{least:,} or more" if most >= MOST >= value else f"{least:,} to {most:,}"


def counted(what: str, number: int, least: int = 1, most: int = MOST) -> int:
    """Return ``number`` if it lies from ``least`` to ``most``; raise Impossible naming ``what`` otherwise."""
    if not least <= number <= most:
        raise Impossible(f"{what} cannot be {number:,}: use {span(least, most, number)}")
    return number
