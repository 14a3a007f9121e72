"""What whoever looks at a garment wants it told in: the names of her keys, and her units; nothing of the garment."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.glance.keys import USUAL, Keys

Units = Literal["as given", "cm", "in"]
"""In what lengths are said: as the garment's gauge has it, or always in one of the two."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """``keys``: those in force, for texts that name one; ``units``: in what lengths are said."""

    keys: Keys = USUAL
    units: Units = "as given"


NONE = Wishes()
"""Everything as usual."""
