"""The formats of recipe files: which there are, and which key came with which.

A file says the lowest format that has all its keys, so that a program of before can read it if it can at all, and says
that it is too old if it cannot. A new key is one line here.
"""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.needles import TwoNeedles
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along

FORMAT = 2
"""The newest format that this program reads; it reads those before it too."""

CAME: Mapping[tuple[type, str], int] = MappingProxyType(
    {
        (TwoNeedles, "near"): 2,
        (TwoNeedles, "far"): 2,
        (Join, "with_tail"): 2,
        (Join, "length"): 2,
        (Join, "start_length"): 2,
        (BindOff, "length"): 2,
        (BindOff, "start_length"): 2,
        (PickUpAndKnit, "length"): 2,
        (Along, "ratio"): 2,
        (PickUpAndKnit, "ratio"): 2,
    }
)
"""The keys that are newer than the first format: (the class of the model, the key), and the format they came with."""


def came_with(model: type, key: str) -> int:
    """Return the format that brought ``key`` to tables of the class ``model``."""
    return next((CAME[cls, key] for cls in model.__mro__ if (cls, key) in CAME), 1)
