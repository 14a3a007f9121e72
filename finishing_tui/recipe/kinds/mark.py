"""``mark`` and ``unmark``: a marker goes in, or comes out, so that none is left in the fabric."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import MarkerEntry
from finishing_tui.recipe.keys import MarkerName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Stage, ticked


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark(Step):
    """Put a marker in."""

    do: Literal["mark"] = "mark"
    marker: MarkerName
    """The marker's name."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one item; refused when a marker of that name is in the work."""
        return (put_in(here, self.marker),)


def put_in(here: Here, marker: str) -> Stage:
    """Return the stage in which a marker goes in: one press. Raises ``CannotBegin`` where it is in the work."""
    if marker in here.ledger.markers:
        mend = (MarkerEntry(marker, "out"),)
        raise CannotBegin(f"the marker {marker!r} is in the work already", kind="marker", mend=mend)
    return ticked(marker, "mark", f"Place a marker at the {marker.removeprefix('the ')}.", MarkerEntry(marker, "in"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Unmark(Step):
    """Take a marker out."""

    do: Literal["unmark"] = "unmark"
    marker: MarkerName
    """The marker's name."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one item; refused when no marker of that name is in the work."""
        if self.marker not in here.ledger.markers:
            mend = (MarkerEntry(self.marker, "in"),)
            raise CannotBegin(f"no marker named {self.marker!r} is in the work", kind="marker", mend=mend)
        text = f"Take the marker out: {self.marker}."
        return (ticked(self.marker, "unmark", text, MarkerEntry(self.marker, "out")),)
