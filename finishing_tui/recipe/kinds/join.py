"""``join``: the three-needle bind-off. Two needles side by side are worked off together, pair by pair.

The first pair makes one loop on the working needle; from the second on, the loop before is passed over, so one is
bound off. At the end the last loop is fastened off, or kept.
"""

from dataclasses import dataclass, replace
from typing import Literal

from finishing_tui.craft.ledger import OFF, Entry, Posting, PostureEntry, TailEntry, YarnEntry
from finishing_tui.craft.lies import Fabric
from finishing_tui.craft.words import times
from finishing_tui.recipe.keys import Count, PlaceName, TailName
from finishing_tui.recipe.kinds.base import CannotBegin, Here
from finishing_tui.recipe.kinds.needles import TwoNeedles
from finishing_tui.recipe.stage import HAND, Flow, Stage, none_of, ticked


@dataclass(frozen=True, slots=True, kw_only=True)
class Join(TwoNeedles):
    """Work the stitches of two needles off together."""

    do: Literal["join"] = "join"
    count: Count | Literal["all"] = "all"
    """How many pairs; all of them where it is left out."""
    ridge: Literal["inside", "outside"] = "inside"
    """Where the ridge of the join lies: inside needs right sides together, outside wrong sides together."""
    keep: PlaceName | Literal[""] = ""
    """The place that keeps the last loop, where it is not fastened off."""
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
    with_tail: TailName = ""
    """The tail that hangs there already and works the join, in place of yarn from a ball."""

    @property
    def touching(self) -> Fabric:
        """The sides that the ridge wants together."""
        return "right" if self.ridge == "inside" else "wrong"

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return the pairs, and then fastening off unless the last loop is kept.

        With unequal needles the pairs are as many as the shorter holds; two together on the longer make them equal.
        """
        near, far = self.needles(here)
        front, back = here.ledger.on(near), here.ledger.on(far)
        pairs = here.taking(self.count, "joined", near, far)
        if not pairs:
            return (none_of("pairs", "pair"),)
        together = here.ledger.posture.together
        wanted = self.touching
        if together and together != wanted:
            lie = here.ledger.posture
            raise CannotBegin(
                f"the {together} sides touch; a ridge on the {self.ridge} needs the {wanted} sides together",
                kind="ridge",
                mend=(PostureEntry(lie, replace(lie, together=wanted)),),
            )
        if self.with_tail:
            here.tail(self.with_tail, "join with")
        words = f"With the tail {self.with_tail}, knit" if self.with_tail else "Knit"
        words += " one from each needle together; from the second pair on, pass the first stitch over the second."
        if self.count == "all" and front != back:
            long = near if front > back else far
            words += (
                f" The {here.name(near)} has {front}, the {here.name(far)} {back}:"
                f" work two together on the {here.name(long)} {times(abs(front - back))}."
            )
        rest = (Flow(near, OFF, pairs - 1, 2, pairs), Flow(far, OFF, pairs - 1, 2, pairs))
        sewn = (TailEntry(self.with_tail, "shortened"),) if self.with_tail else ()
        joined = here.joins(near) if self.yarn == "new" else ()
        started = here.new_tail(self.start_tail or f"start of {self.own_tail}") if self.yarn == "new" else ()
        kept = (Posting(HAND, self.keep, 1), *here.after(*joined).carry(self.keep, near, far)) if self.keep else ()
        stage = Stage(
            "pair",
            pairs,
            "pairs",
            "pair",
            words,
            pairs,
            near,
            flows=(Flow(near, HAND, 1, 1, 1), Flow(far, OFF, 1, 1, 1), *(rest if pairs > 1 else ())),
            opening=(*joined, *started),
            closing=(*sewn, *kept),
            front=near,
            back=far,
            empties=self.count == "all",
        )
        if self.keep:
            return (stage,)
        entries: tuple[Entry, ...] = ()
        if sewn:
            text = "Draw the tail through the last loop."
        else:
            text = "Cut the yarn and draw it through the last loop."
            cut = (YarnEntry(near, "cut"),) if joined else here.cut_at(near, far)
            entries = (*cut, *here.new_tail(self.tail or self.own_tail, started))
        return (stage, ticked("fasten off", "fasten-off", text, Posting(HAND, OFF, 1), *entries))
