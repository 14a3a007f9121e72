"""``buttonholes``: holes along a band, bound off in one row and cast on over in the next, or a yarn over each.

How many stitches to work between two holes is always said in the same way: the stitch that a hole leaves on the right
needle is the first of the next group and is not counted again (trade.md, section 5).
"""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.buttonholes import ButtonholeRow as Holes
from finishing_tui.craft.buttonholes import buttonholes
from finishing_tui.craft.ledger import EDGE, OFF, Posting
from finishing_tui.craft.words import capital, plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Item, Stage, none_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Buttonholes(Step):
    """Work buttonholes along a band."""

    main = "on"
    do: Literal["buttonholes"] = "buttonholes"
    on: PlaceName
    """The needle."""
    over: Count | Literal["all"] = "all"
    """How many stitches of the row the holes are spread over, from its start; all where it is left out."""
    between: Count | None = None
    """Stitches between two holes, where that is given in place of ``over``."""
    holes: Count
    """How many holes."""
    width: Count = 1
    """Stitches bound off for one hole; 1 for a yarn over."""
    first: Count
    """Stitches before the first hole."""
    last: Count | None = None
    """Stitches after the last hole; where it is left out, what one hole or ``between`` leaves, else as ``first``."""
    method: Literal["bind off", "yarn over"] = "bind off"
    """How a hole is made."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return the row that makes the holes and, where they are bound off, the next one; an item a hole.

        Raises ``Impossible`` when they do not fit.
        """
        title = here.name(self.on)
        if here.absent(self.on):
            return (none_of(title, "hole"),)
        holes = count_of(self.holes, here.numbers, here.size)
        if not holes:
            return (none_of(title, "hole"),)
        here.holding(self.on, 1, "worked")
        plan = self._planned(here, holes)
        rest = here.ledger.on(self.on) - plan.stitches
        if self.method == "yarn over":
            return (self._yarn_overs(here, plan, rest),)
        bound = Posting(self.on, OFF, plan.width)
        off = _groups(plan, rest, f"bind off {plan.width}", bound)
        over = tuple(
            Item(f"Work to gap {hole} of {holes}, cast on {plan.width} over it.", (Posting(EDGE, self.on, plan.width),))
            for hole in range(1, holes + 1)
        )
        words = plan.text if not rest else f"Over the first {plan.stitches} of the row: {plan.text}"
        again = f"Work across, and cast on {plan.width} over each gap: {plan.stitches + rest} stitches again."
        return (
            Stage("item", holes, "holes, first row", "bind-off", words, place=self.on, items=off),
            Stage("item", holes, "holes, next row", "cast-on", again, place=self.on, items=over),
        )

    def _planned(self, here: Here, holes: int) -> Holes:
        """Return where the holes lie; raises ``CannotBegin`` or ``Impossible`` when they do not fit."""
        held = here.ledger.on(self.on)
        width, first = (count_of(count, here.numbers, here.size) for count in (self.width, self.first))
        last = None if self.last is None else count_of(self.last, here.numbers, here.size)
        if self.method == "yarn over" and width != 1:
            raise CannotBegin(f"a yarn over makes a hole of 1 stitch, and the width is {width}; bind off wider holes")
        if self.between is None:
            over = held if self.over == "all" else count_of(self.over, here.numbers, here.size)
            here.holding(self.on, over, "taken for buttonholes")
            if last is None:
                last = first if holes > 1 else over - first - width
            return buttonholes(over, holes, width, first, last)
        if self.over != "all":
            raise CannotBegin(f"the step {self.title!r} says both over and between; it needs one of them")
        between = count_of(self.between, here.numbers, here.size)
        taken = first + holes * width + (holes - 1) * between
        after = held - taken if last is None else last
        total = f"{first} + {holes} × {width} + {holes - 1} × {between}"
        if after < 1:
            raise CannotBegin(
                f"{plural(holes, 'hole')} of {width} with {between} between and {first} before take {total} = {taken}"
                f" and 1 more at least, and the {here.name(self.on)} has {held}",
                kind="too few stitches",
                expected=taken + 1,
                found=held,
            )
        if taken + after != held:
            raise CannotBegin(
                f"{total} + {after} = {taken + after}, and the {here.name(self.on)} has {held}; change a margin",
                kind="buttonholes",
                expected=taken + after,
                found=held,
            )
        if between < 1:
            raise CannotBegin(f"there must be 1 stitch at least between two holes, not {between}")
        return buttonholes(held, holes, width, first, after)

    def _yarn_overs(self, here: Here, plan: Holes, rest: int) -> Stage:
        """Return the one row in which every hole is a yarn over with a decrease after it."""
        decrease = "k2tog" if here.hand == "right" else "ssk"
        made = (Posting(self.on, OFF, 1), Posting(EDGE, self.on, 1))
        items = _groups(plan, rest, f"yarn over, {decrease}", *made)
        words = (
            f"{plural(plan.holes, 'hole')} over {plan.stitches} stitches: a yarn over and {decrease} for each, which"
            f" leaves {plan.stitches + rest} on the needle. The stitch that {decrease} leaves is the first of the next"
            " group and is not counted in the number to work next."
        )
        return Stage("item", plan.holes, "holes", "hole", words, place=self.on, items=items)


def _groups(plan: Holes, rest: int, hole: str, *entries: Posting) -> tuple[Item, ...]:
    """Return an item a hole: what is worked before it and the hole; the last one runs on over ``rest`` to the end."""
    items = []
    for place, kept in enumerate((plan.first, *plan.gaps)):
        todo = kept if not place else kept - 1
        words = f"Work {todo}, {hole}" if todo else capital(hole)
        if place == plan.holes - 1 and (to_end := plan.last - 1 + rest):
            words += f", work {to_end} to the end"
        items.append(Item(f"{words}.", entries))
    return tuple(items)
