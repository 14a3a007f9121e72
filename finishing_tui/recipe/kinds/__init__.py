"""The kinds of step, one file each. This list is the only place that names them all.

To add a kind: write its file, add its class to ``AnyStep``, and write its test (DEVELOPERS.md shows how).
"""

from typing import get_args

from finishing_tui.recipe.kinds.arrange import Arrange
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.block import Block
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.cast_on import CastOn
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.close_hole import CloseHole
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.recipe.kinds.cut import Cut
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.mark import Mark, Unmark
from finishing_tui.recipe.kinds.measure import Measure
from finishing_tui.recipe.kinds.move import Move
from finishing_tui.recipe.kinds.pick_up import PickUp
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.kinds.sew_on import SewOn
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.weave_in import WeaveIn
from finishing_tui.recipe.kinds.work import Work

AnyStep = (
    Arrange
    | CountStitches
    | Move
    | PickUp
    | PickUpAndKnit
    | CastOn
    | Join
    | Graft
    | Seam
    | Work
    | Shape
    | Buttonholes
    | BindOff
    | Mark
    | Unmark
    | Cut
    | CloseHole
    | WeaveIn
    | Measure
    | Block
    | SewOn
    | Check
)
"""Any step of a recipe; ``do`` tells which."""

KINDS: dict[str, type[Step]] = {kind.__dataclass_fields__["do"].default: kind for kind in get_args(AnyStep)}
"""The kinds by the word that stands after ``do``."""

BRITISH = {"cast off": "bind off", "knit up": "pick up and knit"}
"""Other words for a kind that a recipe may use."""
