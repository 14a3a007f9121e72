"""A recount, as a conversation: what was counted, what it may be put down to, and the ways to go on side by side."""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.words import plural
from finishing_tui.garment.commands import TakeCount
from finishing_tui.garment.decide.mirror import sides_to_come
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.recounting import Outlook, Way, outlook
from finishing_tui.garment.state import State
from finishing_tui.glance.faces import edge_of, rhythm_words
from finishing_tui.glance.stored_words import REPAIRS
from finishing_tui.glance.values import Edge
from finishing_tui.recipe.stage import Stage

ANSWERS: tuple[tuple[WhyOff, str], ...] = (
    ("presses", "I missed or doubled presses"),
    ("loops", "I am at this spot, and the loops differ"),
    ("rows-left", "I don't know the row: I count what is left"),
    ("half-way", "I don't know the row: I am at the fold mark"),
)
"""What a count that differs from the presses may be put down to, in the order it is asked."""

EASILY_SAID = 12
"""A natural ratio in stitches of more spots than this is not said in figures in a label."""


@dataclass(frozen=True, slots=True)
class WayView:
    """One way to go on: in a few words, in a sentence, as the edge and the rhythm would be, and how to ask for it."""

    label: str
    text: str
    edge: Edge
    rhythm: str
    command: TakeCount


@dataclass(frozen=True, slots=True)
class RecountView:
    """A count and what it leads to.

    ``matches``: it is what the presses say, and there is nothing to choose. ``verdict``: how the rest lies, ``text``:
    all of it in sentences. ``before``: the edge as planned, ``rhythm``: its rhythm; ``ways``: in order of sense.
    """

    title: str
    counted: int
    expected: int
    total: int
    unit: str
    spot: int
    matches: bool
    verdict: Verdict
    text: str
    before: Edge
    rhythm: str
    ways: tuple[WayView, ...]


def recount_view(state: State, counted: int, answer: WhyOff | None = None, left: int | None = None) -> RecountView:
    """Return what counting ``counted`` loops leads to.

    ``answer``: what a difference is put down to, and ``left`` the rows left where that is the answer. Raises
    ``FinishingError`` with a sentence when that cannot be.
    """
    seen = outlook(state, counted, answer, left)
    standing = state.standing
    if standing is None or standing.work is None:
        raise ValueError("an outlook needs a step under way")
    work = standing.work
    total = state.ledger.on(seen.stage.place) + counted - seen.expected
    ways = []
    for way in seen.ways:
        edge = edge_of(state, work, seen.index, way.progress)
        command = TakeCount(counted, answer=answer, left=left, repair=way.repair)
        sides = sides_to_come(work, seen.index)
        text = f"{way.text} {_FOLLOWED}" if way.difference and sides > 1 else way.text
        ways.append(WayView(_label(way, seen, sides), text, edge, rhythm_words(way.stage, way.progress), command))
    return RecountView(
        title=seen.stage.title,
        counted=counted,
        expected=seen.expected,
        total=total,
        unit=seen.stage.spot,
        spot=seen.spot,
        matches=seen.put == "as-planned",
        verdict=seen.verdict,
        text=seen.text,
        before=edge_of(state, work, seen.index),
        rhythm=rhythm_words(seen.stage, seen.before),
        ways=tuple(ways),
    )


_FOLLOWED = "The second side follows this one, so the first round puts both right."


def _label(way: Way, seen: Outlook, sides: int) -> str:
    if way.repair == "rip-back":
        mark = way.progress.mark
        if not mark.loops:
            where = f"after {way.stage.spot} {mark.units}" if mark.units else "this section anew"
            return f"take it all out, begin {where}"
        return f"rip back to {way.stage.spot} {mark.units}, {plural(mark.loops, 'loop')}"
    if way.repair == "first-round":
        more = "more" if way.difference > 0 else "fewer"
        many = f"{abs(way.difference) * sides} {more} in the first round{' for both sides' if sides > 1 else ''}"
        ratio = _natural(seen.stage) if way.progress.mark.units < way.stage.units else ""
        parts = (ratio, many if way.difference else "")
        return ", then ".join(part for part in parts if part) or "as it is"
    if way.repair == "space-the-rest" and seen.put == "presses":
        return "go on by the plan"
    return REPAIRS[way.repair]


def _natural(stage: Stage) -> str:
    """Say going on at the natural ratio: "3 of 4 to the end" where that is easily said."""
    natural = Fraction(stage.natural) if stage.natural else Fraction(stage.target, stage.units)
    if natural < 1 and natural.denominator <= EASILY_SAID:
        return f"{natural.numerator} of {natural.denominator} to the end"
    return f"every {stage.spot} to the end" if natural == 1 else "natural ratio to the end"
