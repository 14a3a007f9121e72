"""``pick up and knit``: walk an edge section by section and draw a loop through at the picked spots."""

from dataclasses import dataclass, replace
from typing import Literal

from finishing_tui.recipe.keys import PlaceName, TailName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.kinds.mark import put_in
from finishing_tui.recipe.kinds.sections import Along, AnySection, Gap
from finishing_tui.recipe.stage import Stage, whole

MOST_SPOTS = 5_000
"""Rows and stitches walked in one step; the whole border of a large blanket has some two thousand."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PickUpAndKnit(Step):
    """Pick up and knit along the sections of an edge."""

    main = "onto"
    do: Literal["pick up and knit"] = "pick up and knit"
    onto: PlaceName
    """The needle the stitches go onto."""
    section: tuple[AnySection, ...]
    """The sections, in the order a right-handed knitter walks them."""
    yarn: Literal["new", "same"] = "new"
    """Whether new yarn is joined, or the yarn that hangs there is used."""
    tail: TailName = ""
    """The tail that new yarn leaves at its start."""
    length: str = ""
    """How long that tail is left, with its unit: "15 cm"."""
    recount: Literal["half", "none"] = "half"
    """Whether each section of 12 spots or more is recounted at its half."""
    style: Literal["easy", "even"] = "easy"
    """Runs a hand can remember, or the most even there is."""
    ends: Literal["open", "closed"] = "open"
    """Whether the first and last spot of every section must be picked."""
    ratio: str = ""
    """Stitches to spots at which the sections that nobody counted are worked: "2/3"; by the gauge, or 3 of 4 rows,
    where it is left out."""
    facing: Literal["right", "wrong", ""] = ""
    """The side towards you as the loops are drawn through; the wrong one for a turned collar or a lining."""
    start: str = ""
    """Where the round begins, in words."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return a stage a section, in walking order: the other way round for a left-handed knitter.

        Each is planned from the ledger that the ones before it leave. Of two sections that mirror each other, the one
        walked second takes the rhythm of the first the other way round.
        """
        if not self.section:
            raise CannotBegin(f"the step {self.title!r} has no section to pick up along")
        walked: list[Stage] = []
        spots = 0
        along: dict[str, Stage] = {}
        for section in self.section if here.hand == "right" else reversed(self.section):
            if isinstance(section, Along):
                partner = along.get(section.mirrors) or along.get(self._mirror_of(section.along))
                halt = self.recount == "half"
                spots += 0 if section.uncounted(here) else section.walked(here)
                self._not_too_many(spots, section.along)
                stage = section.stage(here, self.onto, self.style, self.ends, self.ratio, halt=halt, mirror=partner)
                spots += stage.units if stage.uncounted else 0
                self._not_too_many(spots, section.along)
                if partner is not None:
                    stage = replace(stage, mirrors=partner.title)
                along[section.along] = stage
            else:
                stage = section.stage(here, self.onto)
            marked = [put_in(here, section.marker)] if not isinstance(section, Gap) and section.marker else []
            entries = (entry for one in (stage, *marked) for entry in whole(one))
            here = replace(here, ledger=here.ledger.enter(*entries))
            # Its end is where a left-handed knitter comes to it first, so what is put in there comes first.
            walked += [*marked, stage] if here.hand == "left" else [stage, *marked]
        if self.yarn == "new":
            tail = here.new_tail(self.tail or f"start of {self.own_tail}")
            walked[0] = replace(walked[0], opening=(*here.joins(self.onto), *tail, *walked[0].opening))
        return tuple(walked)

    @staticmethod
    def _not_too_many(spots: int, along: str) -> None:
        if spots > MOST_SPOTS:
            raise CannotBegin(
                f"{spots} rows or stitches by the end of {along} are more than an edge has: "
                f"up to {MOST_SPOTS} in one step"
            )

    def _mirror_of(self, name: str) -> str:
        """Return the section that says it mirrors the one called ``name``; empty when none does."""
        found = (other for other in self.section if isinstance(other, Along) and other.mirrors == name)
        return next((other.along for other in found), "")
