"""The sections of an edge that is picked up: spots along rows or stitches, held stitches, and gaps.

Each turns itself into one stage. The order in which hands walk them, and which mirrors which, is the business of
``pick_up_and_knit``.
"""

from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Literal

from finishing_tui.craft.edges import ROWS_PER, USUAL
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.ledger import EDGE, OFF, HoleEntry
from finishing_tui.craft.lengths import read_length
from finishing_tui.craft.open_edges import MOST_OF_A_RATE, by_rate, rate_words, read_rate
from finishing_tui.craft.slopes import count_along, read_slope, rows_of, stitches_along
from finishing_tui.craft.spacing import Rhythm, say, space
from finishing_tui.craft.words import plural, times
from finishing_tui.recipe.counts import count_of, in_range
from finishing_tui.recipe.keys import Count, HoleName, MarkerName, OneOf, PlaceName, Written
from finishing_tui.recipe.kinds.base import CannotBegin, Here
from finishing_tui.recipe.stage import Flow, Stage, loops_onto, none_of
from finishing_tui.recipe.sums import names_in

LONG = 12
"""A section of this many spots or more is recounted at its half."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Along(Written):
    """A section of rows, ridges, chains or stitches; some are picked, or all."""

    along: str
    """What it runs along: "left front neck"."""
    spots: Count | None = None
    """How many rows, ridges, chains or stitches it has; worked out where a slope or a length is given instead. With
    none of these nobody counted it: it is worked at its rate until it has its stitches, or until it ends."""
    unit: Literal["row", "ridge", "chain", "stitch"] = "row"
    """What one spot is. A ridge (garter) and a chain (slipped edge) are two rows each."""
    stitches: Count | None = None
    """Stitches to pick from it; by the natural ratio, or along its slope, where it is left out."""
    ratio: str = ""
    """Stitches to spots at which an edge nobody counted is worked: "2/3"; as the step says where it is left out."""
    length: str = ""
    """How long it is, with its unit: "24.5 cm"; the gauge turns that into spots where none are given."""
    slope: str = ""
    """How it was shaped: "1 stitch every 2 rows, 5 times, then 18 rows straight"."""
    mirrors: str = ""
    """The section (its ``along``) that this one is the mirror of."""
    style: Literal["easy", "even", ""] = ""
    """Runs a hand can remember, or the most even there is; as the step says where it is left out."""
    ends: Literal["open", "closed", ""] = ""
    """Whether its first and last spot must be picked; as the step says where it is left out."""
    marker: MarkerName = ""
    """A marker that goes in at its end."""

    def stage(
        self, here: Here, onto: str, style: str, ends: str, ratio: str = "", *, halt: bool, mirror: Stage | None
    ) -> Stage:
        """Return its stage; ``mirror``: the stage of the section it mirrors, once that has been walked.

        ``style``, ``ends`` and ``ratio``: what the step says of those that the section leaves out.
        """
        if self.uncounted(here):
            return self._at_its_rate(here, onto, self.ends or ends, self.ratio or ratio, halt=halt, mirror=mirror)
        spots = self.walked(here)
        stitches = self.wanted(here, spots)
        if not spots and not stitches:
            return none_of(self.along, "pick")
        even: Literal["easy", "even"] = "even" if (self.style or style) == "even" else "easy"
        closed: Literal["open", "closed"] = "closed" if (self.ends or ends) == "closed" else "open"
        rhythm: Rhythm = space(stitches, spots, style=even, ends=closed)
        if mirror is not None and mirror.rhythm is not None and (mirror.units, mirror.target) == (spots, stitches):
            rhythm = mirror.rhythm.mirrored()
        natural = self.natural(here, spots)
        return Stage(
            "spot",
            spots,
            self.along,
            "pick",
            say(rhythm, unit=self.unit),
            stitches,
            onto,
            self.unit,
            rhythm,
            closed,
            even,
            "" if natural is None else str(natural),
            here.per_10cm,
            flows=loops_onto(onto, 2 * spots),
            halts=(spots // 2,) if halt and spots >= LONG else (),
        )

    def uncounted(self, here: Here) -> bool:
        """Return whether nobody counted how long it is: nothing here says so, or the knitter did not count it."""
        if self.slope or self.length:
            return False
        named = names_in(self.spots) if isinstance(self.spots, str) else ()
        return self.spots is None or not here.uncounted.isdisjoint(named)

    def rate(self, here: Here, ratio: str = "") -> tuple[Fraction, str]:
        """Return the stitches a spot at which it is worked where nobody counted it, and whose rate that is.

        Raises ``Impossible`` for a ratio that cannot be read.
        """
        said = self.ratio or ratio
        if said:
            return read_rate(said), "as the pattern says"
        natural = here.natural.get(self.unit)
        return (natural, "as your gauge gives") if natural is not None else (USUAL[self.unit], "the usual rate")

    def _at_its_rate(self, here: Here, onto: str, ends: str, ratio: str, *, halt: bool, mirror: Stage | None) -> Stage:
        rate, whose = self.rate(here, ratio)
        rate = rate.limit_denominator(MOST_OF_A_RATE)
        stitches, guessed = self._stitches_at(rate, here)
        if not stitches:
            return none_of(self.along, "pick")
        rhythm: Rhythm = by_rate(stitches, rate)
        if mirror is not None and mirror.rhythm is not None and mirror.target == stitches:
            rhythm = mirror.rhythm.mirrored()
        until = "" if guessed else f", until you have {stitches}"
        half = rhythm.spot_of(-(-stitches // 2))
        return Stage(
            "spot",
            rhythm.spots,
            self.along,
            "pick",
            f"{rate_words(rate, self.unit)}, {whose}{until}",
            stitches,
            onto,
            self.unit,
            rhythm,
            "closed" if ends == "closed" else "open",
            natural=str(rate),
            per_10cm=here.per_10cm,
            flows=loops_onto(onto, 2 * max(rhythm.spots, stitches)),
            halts=(half,) if halt and not guessed and rhythm.spots >= LONG else (),
            uncounted="all" if guessed else "spots",
        )

    def _stitches_at(self, rate: Fraction, here: Here) -> tuple[int, bool]:
        """Return the stitches of an edge nobody counted, and whether they are no more than a guess."""
        if self.stitches is not None:
            return count_of(self.stitches, here.numbers, here.size), False
        return max(1, rounded(rate * here.guess)), True

    def walked(self, here: Here) -> int:
        """Return how many spots there are: as given, the rows of the slope, or what the gauge makes of the length.

        Raises ``CannotBegin`` where that cannot be told, ``Impossible`` for a slope or a length that cannot be read.
        """
        given = None if self.spots is None else count_of(self.spots, here.numbers, here.size)
        if self.slope:
            rows = rows_of(read_slope(self.slope))
            high = ROWS_PER.get(self.unit)
            if high is None or rows % high or given not in {None, rows // high}:
                counted = (
                    plural(rows, "row") if given is None else f"{plural(rows, 'row')}, not {plural(given, self.unit)}"
                )
                raise CannotBegin(
                    f"the slope of {self.along} has {counted}, walked {self.unit} by {self.unit}; make them agree",
                    kind="slope",
                )
            return rows // high
        if given is not None:
            return given
        if not self.length:
            raise CannotBegin(f"nobody counted the {self.unit}s of {self.along}")
        if here.body is None:
            raise CannotBegin(f"{self.along} is given by its length: give the gauge too, or count its rows")
        long, high = read_length(self.length), ROWS_PER.get(self.unit)
        exact = here.body.stitches_in(long) if high is None else here.body.rows_in(long) / high
        return in_range(rounded(exact), f"the spots of {self.along}")

    def wanted(self, here: Here, spots: int) -> int:
        """Return the stitches to pick over ``spots`` spots: the count given, or the nearest to the natural one."""
        if self.stitches is not None:
            return count_of(self.stitches, here.numbers, here.size)
        if self.slope and here.body is not None:
            return max(1, count_along(read_slope(self.slope), here.body, here.band))
        return min(spots, 1) and max(1, rounded(spots * here.natural.get(self.unit, USUAL[self.unit])))

    def natural(self, here: Here, spots: int) -> Fraction | None:
        """Return the natural ratio of stitches to its spots, None where no gauge is known.

        On a slope it is that of the stitches along it, to within a thousandth: roots have no exact one.
        """
        if self.slope and here.body is not None:
            return (stitches_along(read_slope(self.slope), here.body, here.band) / spots).limit_denominator(1000)
        return here.natural.get(self.unit)


@dataclass(frozen=True, slots=True, kw_only=True)
class Held(Written):
    """Held stitches that are knitted across on the way."""

    from_: PlaceName
    """The place they wait on."""
    along: str = ""
    """What this part of the edge is called."""
    take: Count | Literal["all"] = "all"
    """How many; all of them where it is left out."""
    stitches: Count | None = None
    """Into how many they are worked, where that is another number."""
    marker: MarkerName = ""
    """A marker that goes in at its end."""

    def stage(self, here: Here, onto: str) -> Stage:
        """Return its stage: one unit a stitch of the result, so ``enter`` may take the lot."""
        held = here.name(self.from_)
        take, title = here.taking(self.take, "knitted across", self.from_), self.along or held
        if not take:
            return none_of(title, "knit")
        into = take if self.stitches is None else count_of(self.stitches, here.numbers, here.size)
        if into < 1:
            raise CannotBegin(f"the stitches of the {held} cannot be worked into {into}")
        flows = [Flow(self.from_, onto, min(take, into), 1, into)]
        words = f"Knit {take} from the {held}."
        if into < take:
            flows.append(Flow(self.from_, OFF, take - into, 1, into))
            words = f"Knit {take} from the {held}, working two together {times(take - into)}, evenly."
        elif into > take:
            flows.append(Flow(EDGE, onto, into - take, 1, into))
            words = f"Knit {take} from the {held}, making {into - take} more, evenly."
        return Stage("stitch", into, title, "knit", words, into, onto, flows=tuple(flows), takes_all=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap(Written):
    """The joint of two sections, where a hole would be: it is in the ledger until it is closed."""

    gap: HoleName
    """The name of the hole."""
    extra: Count = 0
    """Extra loops picked up there."""

    def stage(self, here: Here, onto: str) -> Stage:
        """Return its stage: the extra loops, one a unit; with none of them it is done as it begins."""
        extra = count_of(self.extra, here.numbers, here.size)
        words = f"Pick up {plural(extra, 'loop')} in the corner, so that no gap is left."
        if not extra:
            words = "Nothing is picked up here; the hole at this joint is drawn shut later."
        hole = (HoleEntry(self.gap, "made"),)
        flows = loops_onto(onto, extra)
        return Stage("stitch", extra, self.gap, "pick", words, extra, onto, flows=flows, opening=hole)


Section = Along | Held | Gap
"""One part of an edge, with one nature."""

AnySection = Annotated[Section, OneOf({"gap": Gap, "from": Held, "along": Along})]
"""A section as a file gives it: what it is shows in the first of these keys that it has."""
