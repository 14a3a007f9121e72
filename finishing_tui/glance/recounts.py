"""A recount, as a conversation: what was counted, what it may be put down to, and the ways to go on side by side."""

from dataclasses import dataclass, replace
from fractions import Fraction

from finishing_tui.craft.judging import Verdict, one_row_can
from finishing_tui.craft.words import plural, sentence
from finishing_tui.garment.commands import TakeCount
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.outcome import Outcome, outcome
from finishing_tui.garment.recounting import Outlook, Way, outlook, recounted
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import to_come
from finishing_tui.glance.answers import THE_REST, Answer, Answers, off_by, safest_first, wrong_with
from finishing_tui.glance.counting import why_again
from finishing_tui.glance.faces import edge_of, rhythm_words
from finishing_tui.glance.values import Edge
from finishing_tui.recipe.stage import Stage

ANSWERS: tuple[tuple[WhyOff, str], ...] = (
    ("presses", "I missed a press, or pressed twice"),
    ("loops", "The row is right; I picked up a different number"),
    ("rows-left", "I've lost my row: I'll count the rows left"),
    ("half-way", "I've lost my row: I'm at the halfway fold"),
)
"""What a count that differs from the presses may be put down to, in the order it is asked."""

EASILY_SAID = 12
"""A natural ratio in stitches of more spots than this is not said in figures in a label."""


@dataclass(frozen=True, slots=True)
class RecountView:
    """A count and what it leads to.

    ``total``: what is on the needle with it; ``matches``: it is what the presses say, and there is nothing to choose.
    ``answers``: the ways to go on, ``commands``: what asks for each of them. ``doubt``: why counting again comes before
    anything is made of it, empty where it does not, and ``cannot_be``: the rest won't fit with it.
    """

    title: str
    counted: int
    expected: int
    total: int
    unit: str
    spot: int
    matches: bool
    answers: Answers
    commands: tuple[TakeCount, ...]
    doubt: str = ""
    cannot_be: bool = False


def recount_view(state: State, counted: int, answer: WhyOff | None = None, left: int | None = None) -> RecountView:
    """Return what counting ``counted`` loops leads to.

    ``answer``: what a difference is put down to, and ``left`` the rows left where that is the answer. Raises
    ``FinishingError`` with a sentence when that cannot be. Without an answer it is looked at as if the loops differed.
    """
    seen = outlook(state, counted, answer, left)
    standing = state.standing
    if standing is None or standing.work is None:
        raise ValueError("an outlook needs a step under way")
    work, matches = standing.work, seen.put == "as-planned"
    why = None if matches else answer or "loops"
    ways: list[tuple[Answer, TakeCount]] = []
    for way in seen.ways:
        command = TakeCount(counted, answer=why, left=left, repair=way.repair)
        comes = outcome(state, command, seen.stage.place)
        if way.repair == "first-round" and not one_row_can(comes.made, comes.total - comes.made):
            continue
        text = _text(way, seen, comes)
        if any(text == row.text for row, _ in ways):
            continue  # nothing is left to be picked, and no round comes to put it right in: that is to leave it
        mark = way.progress.mark
        row = Answer(
            text=text,
            verb=_verb(way, comes),
            verdict=_lies(way, seen),
            total=comes.total,
            made=comes.made,
            ripped=max(counted - mark.loops, 0) if way.repair == "rip-back" else 0,
            note=wrong_with(comes.total, comes.planned, comes.repeat),
            edge=edge_of(state, work, seen.index, way.progress),
            more=_more(way, seen, comes),
        )
        ways.append((row, command))
    doubt = "" if matches else _doubt(seen)
    rows, commands = zip(*safest_first(ways), strict=True)
    return RecountView(
        title=seen.stage.title,
        counted=counted,
        expected=seen.expected,
        total=state.ledger.on(seen.stage.place) + counted - seen.expected,
        unit=seen.stage.spot,
        spot=seen.spot,
        matches=matches,
        answers=_answers(seen, rows, edge_of(state, work, seen.index)),
        commands=commands,
        doubt=doubt,
        cannot_be=seen.verdict is Verdict.CANNOT_BE,
    )


def _doubt(seen: Outlook) -> str:
    """Return why a count is to be counted again before anything is made of it; empty where it is likely enough."""
    walked, unit, target = seen.before.mark.units + (seen.before.mark.within > 0), seen.stage.spot, seen.stage.target
    if seen.counted > 2 * walked:
        return f"{plural(walked, unit)} can take up to {plural(2 * walked, 'stitch')}"
    if seen.counted > target > seen.expected:
        return f"the whole section has only {plural(target, 'stitch')}"
    return why_again(seen.counted, seen.expected, "your presses")


def _answers(seen: Outlook, rows: tuple[Answer, ...], planned: Edge) -> Answers:
    """Return the table: its heading is the difference to what the plan has at this spot, and no way's verdict."""
    by_plan, lying = seen.expected, THE_REST if seen.spot < seen.stage.units else ""
    if seen.spot != seen.before.mark.units:
        by_plan = seen.stage.target - to_come(seen.stage, seen.before, seen.spot)
    numbers = seen.counted, by_plan
    if seen.put == "presses":
        said = f"you counted {seen.counted}, the count here is {seen.expected}"
        return Answers("another row", said, rows, (seen.counted, seen.expected), planned, lying)
    said = f"you counted {seen.counted}, planned {by_plan}"
    return Answers(off_by(seen.counted - by_plan), said, rows, numbers, planned, lying)


def _lies(way: Way, seen: Outlook) -> Verdict:
    """Return how the rest lies if it is worked that way."""
    if seen.put in {"as-planned", "presses"} or way.repair == "space-the-rest":
        return seen.verdict
    mark, natural = way.progress.mark, seen.stage.natural or str(Fraction(seen.stage.target, seen.stage.units))
    return recounted(replace(way.stage, natural=natural), seen.before, mark.loops, mark.units).verdict


def _text(way: Way, seen: Outlook, comes: Outcome) -> str:
    """Say what to do first."""
    mark, unit = way.progress.mark, way.stage.spot
    to_pick = mark.units < way.stage.units
    match way.repair:
        case "rip-back" if mark.loops:
            return f"Rip back to {unit} {mark.units}"
        case "rip-back":
            return f"Rip it all out; start again {f'after {unit} {mark.units}' if mark.units else 'at the beginning'}"
        case "first-round" if to_pick:
            return f"Fix it in {comes.unit} 1" if comes.made else _natural(seen.stage)
        case "first-round":
            return _in_round_1(comes) if comes.made else _LEAVE
        case "space-the-rest" if seen.put == "presses":
            return f"Carry on: {plural(seen.counted, 'stitch')} means {unit} {seen.spot}"
        case "space-the-rest":
            return "Re-space the rest" if to_pick else _LEAVE
        case _:
            return "Carry on as planned" if to_pick else _LEAVE


_LEAVE = "Leave it"


def _in_round_1(comes: Outcome) -> str:
    return f"{'In' if comes.made > 0 else 'De'}crease {abs(comes.made)} evenly in {comes.unit} 1"


def _more(way: Way, seen: Outlook, comes: Outcome) -> str:
    """Return how a way goes, in sentences; nothing at the end of the edge."""
    mark = way.progress.mark
    if mark.units >= way.stage.units:
        return ""
    said = []
    if way.repair == "rip-back" and mark.loops:
        said.append(f"rip back until {plural(mark.loops, 'stitch')} {'is' if mark.loops == 1 else 'are'} left")
    if way.repair == "first-round" and comes.made:
        said += [_natural(seen.stage), _in_round_1(comes)]
    return " ".join(map(sentence, (*said, rhythm_words(way.stage, way.progress))))


def _verb(way: Way, comes: Outcome) -> str:
    if way.repair == "rip-back":
        return "RIP BACK"
    if way.progress.mark.units < way.stage.units:
        return "PICK"
    return "GO ON" if not comes.made else "INCREASE" if comes.made > 0 else "DECREASE"


def _natural(stage: Stage) -> str:
    """Say going on at the natural ratio: "Keep 3 of every 4" where that is easily said."""
    natural = Fraction(stage.natural) if stage.natural else Fraction(stage.target, stage.units)
    if natural < 1 and natural.denominator <= EASILY_SAID:
        return f"Keep {natural.numerator} of every {natural.denominator}"
    return f"Pick up every {stage.spot}" if natural == 1 else "Pick up at the rate your gauge gives"
