"""The looks at each kind of step, one file a kind or a family. These tables are the only place that names them all.

To let the audit look at a new kind: write its file here and list it. A kind without one is still audited: its stages
are entered, its refusals are told, and what is printed after it is compared.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from finishing_tui.recipe.audit.look import Instead, Look, Looker, Trail
from finishing_tui.recipe.audit.looks import agreeing, head, lies, picked, ribs, rows, seams, tail_ends, tails, yarn
from finishing_tui.recipe.kinds.arrange import Arrange
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.recipe.kinds.mark import Mark, Unmark
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.kinds.sew_on import SewOn
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.work import Work

EVERY: tuple[Looker, ...] = (agreeing.pairs, yarn.look, lies.look, tail_ends.look, tails.look)
"""Looks at steps of every kind."""

LOOKS: Mapping[type[Step], tuple[Looker, ...]] = MappingProxyType(
    {
        PickUpAndKnit: (picked.look,),
        CountStitches: (agreeing.counted,),
        Check: (agreeing.same, head.look),
        Work: (ribs.look, rows.look),
        Seam: (seams.look,),
        SewOn: (agreeing.buttons,),
    }
)
"""Looks at steps of one kind."""

LOOKED_OVER = (Check, CountStitches, Mark, Unmark)
"""Kinds of step that leave the work lying as it lay."""

INSTEAD: Mapping[type[Step], Callable[[Look], Instead]] = MappingProxyType(
    {PickUpAndKnit: picked.instead, Shape: rows.instead}
)
"""For a step that cannot be done as it is written: one that can, with the same count, and what was wrong."""


def remembered(look: Look) -> Trail:
    """Return what is to be remembered after a step."""
    lies = isinstance(look.step, Arrange) or (look.trail.arranged and isinstance(look.step, LOOKED_OVER))
    trail = replace(
        look.trail,
        arranged=lies,
        tails=tails.left_of(look),
        ends=tail_ends.hanging_at(look),
        edges=tail_ends.edges_of(look),
    )
    match look.step:
        case BindOff(from_=place) if look.before.on(place) and not look.ledger.on(place):
            return replace(trail, band=look.off + look.before.on(place))
        case Buttonholes(holes=holes):
            return replace(trail, buttonholes=trail.buttonholes + look.count(holes))
        case _:
            return trail
