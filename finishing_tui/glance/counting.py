"""What a typed number would mean right now, and what could be counted: asked before anything is decided."""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.words import sentence
from finishing_tui.garment.state import State
from finishing_tui.garment.ways import counted_stage

MOST_DIGITS = 6
"""More digits than any count has."""


@dataclass(frozen=True, slots=True)
class Countable:
    """Something that can be counted now.

    ``place``: the key to ask for, empty for what is under way; ``text``: what is counted, in words; ``expected``: what
    should be there; ``short``: what the number would be, in two or three words; ``section``: it is a section of an
    edge, which a recount looks at. ``needle``: what is on the whole needle, where that could be counted instead;
    ``live``: it is what lies on a needle or holder.
    """

    place: str
    text: str
    expected: int
    short: str
    section: bool = False
    needle: int | None = None
    live: bool = True

    @property
    def right(self) -> str:
        """Both counts that would be right, in words."""
        if self.needle is None:
            return str(self.expected)
        return f"{self.expected}, or {self.needle} in all"

    def meant(self, counted: int) -> int:
        """Return the count of this that ``counted`` stands for: that of the whole needle where it is that, or near."""
        if self.needle is None or counted == self.expected:
            return counted
        off = abs(counted - self.needle)
        near = off <= FEW and off < abs(counted - self.expected) and counted >= self.needle - self.expected
        return counted - self.needle + self.expected if near or not off else counted

    def near(self, counted: int) -> bool:
        """Return whether ``counted`` is likely to be a count of this, and of no other needle."""
        return abs(self.meant(counted) - self.expected) <= FEW


SLIP, FAR = 3, Fraction(1, 5)
"""A count that is off by more than both, stitches and a share of what was expected, is more likely a slip of the count.
"""

FEW = 3
"""A count that is off the whole needle's by no more than this is a count of the whole needle."""


def far_off(counted: int, expected: int) -> bool:
    """Return whether a count is so far off that it is more likely a slip, so that counting again comes first."""
    return abs(counted - expected) > SLIP and abs(counted - expected) > FAR * expected


def why_again(counted: int, expected: int, than: str = "there should be") -> str:
    """Return why a count that is far off is to be counted again; nothing where it is not that."""
    if not far_off(counted, expected):
        return ""
    return f"that is {abs(counted - expected)} {'fewer' if counted < expected else 'more'} than {than}"


def found_words(expected: int) -> str:
    """Return the answer that what was missing, or too many, is found and put right."""
    return f"Found it: {expected}"


def look_for(counted: int, expected: int) -> str:
    """Return what to look for where a count of live stitches differs, counted twice, before anything is mended."""
    if counted < expected:
        return "Look for a dropped stitch. Catch it with a pin at once"
    return OVER


OVER = "Look for a yarn over, a split stitch, or a marker that was counted"
"""What makes a count too high, before anything is mended."""


def countables(state: State) -> tuple[Countable, ...]:
    """Return what can be counted now: one thing, two needles of a join to choose between, or nothing."""
    work = state.work
    if work is None:
        return ()
    index = counted_stage(work)
    if index is not None:
        stage = work.stages[index]
        expected, held = work.progress[index].mark.loops, state.ledger.on(stage.place)
        text = f"the {stage.title}{'' if held == expected else ' since the marker'}"
        needle = held if held != expected else None
        return (Countable("", text, expected, "stitches counted", section=True, needle=needle),)
    if work.complete:
        return ()
    stage, mark = work.stages[work.at], work.progress[work.at].mark
    name = state.plan.here(state.ledger).name
    if stage.bars:
        return ()  # the bars of a seam are on no needle
    if stage.unit == "pair":
        return tuple(
            Countable(place, name(place), state.ledger.on(place), "counted") for place in (stage.front, stage.back)
        )
    if stage.counts:
        return (Countable("", f"the {name(stage.place)}", state.ledger.on(stage.place), "stitches counted"),)
    if stage.takes_all:
        return (Countable("", f"the {stage.title} you have done", mark.units, "that many done", live=False),)
    if stage.place and stage.unit != "value":
        return (Countable("", f"the {name(stage.place)}", state.ledger.on(stage.place), "stitches counted"),)
    return ()


def elsewhere(state: State) -> tuple[Countable, ...]:
    """Return every other needle and holder with stitches on it: while a step is under way they can be counted too."""
    work = state.standing.work if state.standing else None
    if work is None:
        return ()
    under_hands = {one.place for one in countables(state)}
    if not work.complete:
        under_hands.add(work.stages[work.at].place)
    if (index := counted_stage(work)) is not None:
        under_hands.add(work.stages[index].place)
    name = state.plan.here(state.ledger).name
    return tuple(
        Countable(place, f"the {name(place)}", held, "stitches counted")
        for place in state.plan.recipe.place
        if place not in under_hands and (held := state.ledger.on(place))
    )


def coming_back_asks(state: State) -> str:
    """Return the question whether anything was dropped while the work lay, with every count that would be right.

    Nothing is asked where nothing is there that could be gone.
    """
    found, others = [one for one in countables(state) if one.expected], elsewhere(state)
    if not found:
        return "Any dropped stitches? Count any needle or holder." if others else ""
    other = " Or count any other needle or holder." if others else ""
    if len(found) == 1:
        return sentence(f"any dropped stitches? Count {found[0].text}: it should be {found[0].right}") + other
    each = " or ".join(f"{one.text} ({one.right})" for one in found)
    return sentence(f"any dropped stitches? Count {each}") + other


def asks_for_value(state: State) -> bool:
    """Return whether a measure is asked for now, so that what is typed is that."""
    work = state.work
    return work is not None and not work.complete and work.stages[work.at].unit == "value"
