"""A world in which nothing can be worked out: replaying must need none of it."""

import sys
from typing import Any, NoReturn

import pytest

from finishing_tui.craft import easy, spacing
from finishing_tui.garment import ways
from finishing_tui.garment.decide import steps
from finishing_tui.recipe import numbers
from finishing_tui.recipe.kinds import KINDS


def no_planning(patch: pytest.MonkeyPatch) -> None:
    """Make spacing, recounts, sums and the stages of every kind raise, wherever they are known by name."""

    def never(*_args: Any, **_names: Any) -> NoReturn:
        raise AssertionError("replaying an event must not work anything out")

    space = spacing.space
    for name, module in tuple(sys.modules.items()):
        if name.startswith("finishing_tui.") and getattr(module, "space", None) is space:
            patch.setattr(module, "space", never)
    patch.setattr(easy, "easy_open", never)
    patch.setattr(ways, "recount", never)
    patch.setattr(numbers, "work_out", never)
    patch.setattr(steps, "begin", never)
    for kind in KINDS.values():
        patch.setattr(kind, "stages", never)
