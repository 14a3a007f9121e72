"""Whole numbers as they are typed in a line."""

import re

from finishing_tui.glance.counting import MOST_DIGITS

_WHOLE = re.compile(rf"[0-9]{{1,{MOST_DIGITS}}}")


def whole(line: str) -> int | None:
    """Return the whole number a line is, of at most six plain digits; None when it is anything else."""
    return int(line) if _WHOLE.fullmatch(line) else None
