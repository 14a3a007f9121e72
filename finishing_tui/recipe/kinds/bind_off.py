"""``bind off``: work stitches off a needle one by one.

Binding off some of the stitches leaves one on the needle beyond them: it belongs to what comes next, and is never
counted among those bound off (trade.md, section 5).
"""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import OFF, Entry, Posting, YarnEntry
from finishing_tui.recipe.keys import Count, PlaceName, TailName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Flow, Stage, none_of


@dataclass(frozen=True, slots=True, kw_only=True)
class BindOff(Step):
    """Bind stitches off."""

    main = "from_"
    do: Literal["bind off"] = "bind off"
    from_: PlaceName
    """The place they are on."""
    count: Count | Literal["all"] = "all"
    """How many; all of them where it is left out."""
    method: str = ""
    """How, in words: "in rib, loosely", "sewn" ..."""
    keep: PlaceName | Literal[""] = ""
    """The place that keeps the last loop, where it is not fastened off; after ``count`` stitches, the one beyond."""
    yarn: Literal["same", "new"] = "same"
    """Whether the yarn that hangs there is used, or new yarn joined."""
    tail: TailName = ""
    """The tail that is left where the yarn is cut."""
    length: str = ""
    """How long that tail is left, with its unit: "30 cm"."""
    start_tail: TailName = ""
    """The tail that new yarn leaves at its start."""
    start_length: str = ""
    """How long that one is left, with its unit: "15 cm"."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of single stitches; the last press of all fastens off, unless the loop is kept."""
        held = here.ledger.on(self.from_)
        many = here.taking(self.count, "bound off", self.from_)
        if not many:
            return (none_of(here.name(self.from_), "bind-off"),)
        joined = here.joins(self.from_) if self.yarn == "new" else ()
        started = here.new_tail(self.start_tail or f"start of {self.own_tail}") if self.yarn == "new" else ()
        closing: tuple[Entry, ...]
        said: tuple[tuple[int, str], ...] = ()
        if self.keep and many == held:
            many -= 1  # the last loop stays alive
            moved = (Posting(self.from_, self.keep, 1),) if self.keep != self.from_ else ()
            closing = (*moved, *here.after(*joined).carry(self.keep, self.from_))
        elif many == held:
            cut = (YarnEntry(self.from_, "cut"),) if joined else here.cut_at(self.from_)
            closing = (*cut, *here.new_tail(self.tail or self.own_tail, started))
            said = ((many, "Cut the yarn and draw it through the last loop."),)
        elif self.keep and self.keep != self.from_:
            # Working one stitch more is what binds the last of them off, so there is one to keep.
            closing = (Posting(self.from_, self.keep, 1), *here.after(*joined).carry(self.keep, self.from_))
            kept = f"The loop left on the needle is not one of these: put it on the {here.name(self.keep)}."
            said = ((many, kept),)
        else:
            closing = ()
            said = ((many, "The loop left on the needle is not one of these: it belongs to the next stitches."),)
        words = f"Bind off {many}{', ' + self.method if self.method else ''}."
        return (
            Stage(
                "stitch",
                many,
                here.name(self.from_),
                "bind-off",
                words,
                many,
                self.from_,
                flows=(Flow(self.from_, OFF, many, 1, many),) if many else (),
                opening=(*joined, *started),
                closing=closing,
                said=said,
            ),
        )
