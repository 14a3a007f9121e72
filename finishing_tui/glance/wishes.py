"""What whoever looks at a garment wants it told in: the names of her keys, and her units; nothing of the garment."""

from dataclasses import dataclass
from typing import Literal

Units = Literal["as given", "cm", "in"]
"""In what lengths are said: as the garment's gauge has it, or always in one of the two."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """``finish`` and ``press``: what the keys for these are called; ``units``: in what lengths are said."""

    finish: str = "enter"
    press: str = "space"
    units: Units = "as given"


def begins(key: str) -> str:
    """Return the name of a key to begin a sentence with; a sign is introduced, for it must not become a capital."""
    return key.capitalize() if len(key) > 1 else f"The key {key}"


NONE = Wishes()
"""Everything as usual."""
