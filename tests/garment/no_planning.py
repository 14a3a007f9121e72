"""A world in which nothing can be worked out: replaying must need none of it."""

from typing import Any, NoReturn

import pytest

from finishing_tui.craft import easy, recount, spacing
from finishing_tui.garment import ways
from finishing_tui.garment.decide import rip, steps
from finishing_tui.recipe import numbers
from finishing_tui.recipe.kinds import KINDS, sections


def no_planning(patch: pytest.MonkeyPatch) -> None:
    """Make spacing, recounts, sums and the stages of every kind raise, wherever they are known by name."""

    def never(*_args: Any, **_names: Any) -> NoReturn:
        raise AssertionError("replaying an event must not work anything out")

    for module in (spacing, recount, sections, rip):
        patch.setattr(module, "space", never)
    patch.setattr(easy, "easy_open", never)
    patch.setattr(ways, "recount", never)
    patch.setattr(numbers, "work_out", never)
    patch.setattr(steps, "begin", never)
    for kind in KINDS.values():
        patch.setattr(kind, "stages", never)
