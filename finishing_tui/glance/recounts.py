"""A recount, as a conversation: what was counted, what it may be put down to, and the ways to go on side by side."""

from dataclasses import dataclass, replace

from finishing_tui.craft.judging import Verdict, judge, one_row_can
from finishing_tui.craft.open_edges import rate_words
from finishing_tui.craft.words import plural, sentence
from finishing_tui.garment.commands import TakeCount
from finishing_tui.garment.decide.pair_altered import twins
from finishing_tui.garment.decide.stages import with_stage
from finishing_tui.garment.edge_end import carried_on, next_section
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.outcome import Outcome, outcome
from finishing_tui.garment.recounting import AT_NO_NUMBER, outlook
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import next_pin, to_come
from finishing_tui.garment.ways import Outlook, Way, counted_stage, recounted
from finishing_tui.garment.work import StepWork
from finishing_tui.glance.answers import THE_REST, Answer, Answers, off_by, safest_first, wrong_with
from finishing_tui.glance.counting import SLIP, found_words, why_again
from finishing_tui.glance.faces import edge_of, rhythm_words
from finishing_tui.glance.values import Edge
from finishing_tui.recipe.stage import Stage

ANSWERS: tuple[tuple[WhyOff, str], ...] = (
    ("presses", "I missed a press, or pressed twice"),
    ("rows-left", "I've lost my row: I'll count the rows left"),
    ("half-way", "I've lost my row: I'm at the halfway fold"),
)
"""What a count that differs from the presses may also be put down to, in the order it is asked."""

WHERE: tuple[tuple[WhyOff, str, str, str], ...] = (
    (
        "rows-to-spare",
        "I counted ahead: I get to {target} with {unit}s to spare",
        "How many {unit}s are left over once you have {target}?",
        "Keep counting {rate}, without picking up, until you'd have {target}. Then count the {unit}s that are left.",
    ),
    (
        "ends-at",
        "I counted ahead: the edge ends before I have {target}",
        "How many stitches do you get to where the edge ends?",
        "Keep counting {rate}, without picking up, to the last {unit} of the edge.",
    ),
    (
        "rows-left",
        "I counted the {unit}s that are left",
        "How many {unit}s are left?",
        "Count from the {unit} after your last stitch to the last {unit} of the edge.",
    ),
    ("half-way", "At the fold: halfway", "", ""),
    ("past-half", "A bit past halfway", "", ""),
    ("before-half", "A bit before halfway", "", ""),
    ("not-known", "I can't tell", "", ""),
)
"""Where on an edge a count was taken: the answer, what it asks in turn, and how to find that; in the order of what
hands know."""

EASILY_SAID = 12
"""A natural ratio in stitches of more spots than this is not said in figures in a label."""


@dataclass(frozen=True, slots=True)
class RecountView:
    """A count and what it leads to.

    ``total``: what is on the needle with it; ``matches``: it is what the presses say, and there is nothing to choose.
    ``answers``: the ways to go on, ``commands``: what asks for each of them. ``doubt``: why counting again comes before
    anything is made of it, empty where it does not; ``cannot``: the rows behind have no room for so many, so even a
    second count is doubted. ``about``: what can be said of a place on an edge nobody counted that gives no number, or
    of an end beside that of the first side. ``learned``: how long the edge is, where it was planned to be another
    length, and what follows it in that. ``pinned``: no row of the edge is known; ``at_once``: what the next part takes,
    so that nothing is asked.
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
    about: str = ""
    learned: str = ""
    pinned: bool = False
    at_once: bool = False
    cannot: bool = False

    @property
    def short(self) -> int:
        """How many are missing at the end of the edge; 0 where none are, or nobody knew how many it was to have."""
        have, planned = self.answers.numbers or (0, 0)
        return max(planned - have, 0)

    @property
    def not_yet(self) -> Answers:
        """The same ways with going on before them: the edge was said to end too soon."""
        on = Answer("It isn't the end: keep picking up", "PICK", None, None)
        return replace(self.answers, rows=(on, *self.answers.rows))

    @property
    def count_first(self) -> Answers:
        """The same ways with counting again before them."""
        again = Answer("Count again", "COUNT", None, None, more=sentence(self.doubt))
        return replace(self.answers, rows=(again, *self.answers.rows))


def recount_view(state: State, counted: int, answer: WhyOff | None = None, left: int | None = None) -> RecountView:
    """Return what counting ``counted`` loops leads to.

    ``answer``: what a difference is put down to, and ``left`` the rows left where that is the answer. Raises
    ``FinishingError`` with a sentence when that cannot be. Without an answer it is looked at as if the loops differed.
    """
    seen = outlook(state, counted, answer, left)
    standing = state.standing
    if standing is None or standing.work is None:
        raise ValueError("an outlook needs a step under way")
    work, matches = standing.work, counted == seen.expected and seen.put in AT_NO_NUMBER
    why = answer if matches else answer or "loops"
    pinned = seen.stage.pinned
    ways: list[tuple[Answer, TakeCount]] = []
    anew = [way.progress for way in seen.ways if way.repair == "space-the-rest"]
    cannot = not matches and seen.put == "loops" and _no_room(seen)
    followed = any(stage.mirrors == seen.stage.title for stage in work.stages[seen.index + 1 :])
    for way in seen.ways:
        command = TakeCount(counted, answer=why, left=left, repair=way.repair)
        comes = outcome(state, command, seen.stage.place)
        if way.repair == "first-round" and (cannot or not _can_be_fixed(way, comes)):
            continue
        text = _text(way, seen, comes)
        if any(text == row.text for row, _ in ways):
            continue  # nothing is left to be picked, and no round comes to put it right in: that is to leave it
        if way.repair == "first-round" and not comes.made and way.progress in anew:
            continue  # at its own rate the rest has what it should have: that is to re-space it
        mark = way.progress.mark
        # The other side follows this one, so that what is missing or made here is so twice.
        off = comes.total - comes.planned
        both = followed and off != 0 and off == 2 * (mark.loops - seen.stage.target)
        each = way.difference if followed and comes.made == 2 * way.difference else 0
        row = Answer(
            text=text,
            verb=_verb(way, seen, comes),
            verdict=None if cannot else _lies(way, seen, work),
            total=comes.total,
            made=comes.made,
            ripped=max(counted - mark.loops, 0) if way.repair == "rip-back" else 0,
            note=wrong_with(comes.total, comes.planned, comes.repeat) + (", both sides" if both else ""),
            edge=None if pinned else edge_of(state, with_stage(work, seen.index, way.stage), seen.index, way.progress),
            more=_more(way, comes, each),
            to_do=_brings(way, counted),
        )
        if way.carried and row.verdict is None:
            other = work.stages[next_section(work, seen.index)].title
            row = replace(row, more=f"Nobody has counted the {other}, so how it will lie isn't known.")
        ways.append((row, command))
    doubt = "" if matches else _doubt(seen)
    # Where an edge ends short the order is that of hands: what shows least there, and on purpose last.
    short = (seen.put == "edge-ends" or _at_pinned_end(seen)) and seen.stage.target > counted
    in_order = ways if short and len(ways) > 1 else safest_first(ways)
    rows, commands = zip(*in_order, strict=True)
    return RecountView(
        title=seen.stage.title,
        counted=counted,
        expected=seen.expected,
        total=state.ledger.on(seen.stage.place) + counted - seen.expected,
        unit="stitch" if pinned else seen.stage.spot,
        spot=seen.spot,
        matches=matches,
        answers=_at_pins(seen, rows) if pinned else _answers(seen, rows, edge_of(state, work, seen.index)),
        commands=commands,
        doubt=doubt,
        about=_beside_the_first(work, seen) or _about(seen),
        learned=_learned(work, seen),
        pinned=pinned,
        at_once=seen.put == "counted" and len(rows) == 1,
        cannot=cannot,
    )


def put_down_to(view: RecountView, *, lost: bool) -> tuple[tuple[WhyOff | None, str], ...]:
    """Return what a count that differs may be put down to; None is that it was put right, and nothing else changes.

    ``lost``: whether she may have lost her row, on an edge that was counted; on a pinned one no row is known.
    """
    short = view.expected - view.counted
    many, were = ("One", "was") if abs(short) == 1 else (str(abs(short)), "were")
    rest = f": {RE_SPACE.lower()}" if RE_SPACE in [row.text for row in view.answers.rows] else ""
    if short > 0:
        slipped = "A stitch" if short == 1 else plural(short, "stitch")
        them, they = ("it", "it") if short == 1 else ("them", "they")
        found = f"{slipped} slipped off the tip: pick {them} up where {they} {were}"
        missed = f"I missed {many.lower()}{rest}"
    else:
        found, missed = found_words(view.expected), f"I picked up {many.lower()} too many{rest}"
    others = ANSWERS if lost and not view.pinned else ANSWERS[:1]
    return ((None, found), ("loops", missed), *others)


def _can_be_fixed(way: Way, comes: Outcome) -> bool:
    """Return whether a first round follows, and can put right what it is left."""
    return bool(comes.made) == bool(way.difference) and one_row_can(comes.made, comes.total - comes.made)


def where_asked(state: State) -> bool:
    """Return whether every count is asked where it was taken: nobody counted the edge, and it goes on."""
    stage = _walked(state)
    return stage is not None and bool(stage.uncounted)


def may_say_where(state: State) -> bool:
    """Return whether the count was just taken, so that the next thing to say of it is where that was."""
    work = state.work
    if work is None or _walked(state) is None:
        return False
    mark, confirmed = work.progress[work.at].mark, work.progress[work.at].confirmed
    return bool(mark.units) and confirmed == (mark.loops - mark.within, mark.units)


def where_said(state: State) -> tuple[tuple[WhyOff, str, str, str], ...]:
    """Return what may be said of where a count was taken: as ``WHERE``, in words."""
    stage = _walked(state)
    if stage is None:
        return ()
    # Without a count there is no number to get to, and no half of one; where rows are known, a guess tells nothing.
    may = {"": _OF_ROWS_KNOWN, "all": _OF_NO_COUNT}.get(stage.uncounted)
    easy = stage.rate.denominator <= EASILY_SAID
    rate = rate_words(stage.rate, stage.spot) if easy else f"{stage.spot}s as you do now"
    words = {"target": str(stage.target), "unit": stage.spot, "rate": rate}
    return tuple(
        (answer, text.format_map(words), asks.format_map(words), how.format_map(words))
        for answer, text, asks, how in WHERE
        if may is None or answer in may
    )


_OF_ROWS_KNOWN = frozenset({"rows-to-spare", "ends-at", "rows-left", "half-way"})
_OF_NO_COUNT = frozenset({"rows-left", "half-way", "not-known"})


def _walked(state: State) -> Stage | None:
    """Return the section under way; at its end she is where it ends."""
    work = state.work
    if work is None or work.complete or work.stages[work.at].unit != "spot":
        return None
    return work.stages[work.at] if counted_stage(work) == work.at else None


def _beside_the_first(work: StepWork, seen: Outlook) -> str:
    """Say by how many rows the second side ends before or after the first; nothing where they are the same."""
    first = next((stage for stage in work.stages if stage.title == seen.stage.mirrors), None)
    if first is None or seen.put != "edge-ends" or first.units == seen.stage.units:
        return ""
    by = seen.stage.units - first.units
    return f"{plural(abs(by), seen.stage.spot)} {'longer' if by > 0 else 'shorter'} than the {first.title}"


def _learned(work: StepWork, seen: Outlook) -> str:
    """Say that an edge has another number of rows than planned, and that the section which mirrors it has them too."""
    was, unit = work.stages[seen.index], seen.stage.spot
    if was.uncounted or was.units == seen.stage.units:
        return ""
    said = f"{plural(seen.stage.units, unit)}, not the {was.units} planned"
    twin = next((work.stages[at] for at in twins(work, was, seen.stage)), None)
    if twin is None:
        return said
    return f"{said}; the {twin.title} gets {seen.stage.units} too, still for {plural(twin.target, 'stitch')}"


def _about(seen: Outlook) -> str:
    """Say what a place that gives no number tells: ahead or behind at best, and what the rest takes at the rate."""
    if seen.to_go is None or not (left := seen.stage.target - seen.counted):
        return ""
    said = f"{left} to go: {plural(seen.to_go, f'more {seen.stage.spot}')} at this rate"
    if seen.put == "past-half" and left > seen.counted:
        return f"{said}, and that is more than half. Count the {seen.stage.spot}s that are left"
    if seen.put == "before-half" and left < seen.counted:
        return f"{said}, and that is less than half. Count ahead how many {seen.stage.spot}s are to spare"
    return said


def _no_room(seen: Outlook) -> bool:
    """Return whether the rows behind have no room for what was counted, even with a slip of the hand or two."""
    walked = seen.before.mark.units + (seen.before.mark.within > 0)
    return seen.counted > min(max(walked, seen.expected), seen.stage.target) + SLIP


def _doubt(seen: Outlook) -> str:
    """Return why a count is to be counted again before anything is made of it; empty where it is likely enough."""
    if seen.stage.pinned:
        return why_again(seen.counted, seen.expected, "your presses")
    walked, unit, target = seen.before.mark.units + (seen.before.mark.within > 0), seen.stage.spot, seen.stage.target
    if seen.counted > 2 * walked:
        return f"{plural(walked, unit)} can hold up to {plural(2 * walked, 'stitch')}"
    if seen.counted > target > seen.expected:
        return f"the whole section has only {plural(target, 'stitch')}"
    return why_again(seen.counted, seen.expected, "your presses")


def _answers(seen: Outlook, rows: tuple[Answer, ...], planned: Edge) -> Answers:
    """Return the table: its heading is the difference to what the plan has at this spot, and no way's verdict."""
    by_plan, lying = seen.expected, THE_REST if seen.spot < seen.stage.units else ""
    if seen.spot != seen.before.mark.units:
        by_plan = seen.stage.target - to_come(seen.stage, seen.before, seen.spot)
    numbers = seen.counted, by_plan
    if seen.put == "edge-ends":
        if seen.open_count:
            return Answers("the edge ends here", f"you have {seen.counted}", rows, None, planned, lying)
        wanted, over = seen.stage.target, seen.stage.units - seen.spot
        if seen.counted == wanted and over:
            said = f"you have all {wanted}"
            return Answers(f"{plural(over, seen.stage.spot)} left over", said, rows, (wanted, wanted), planned, lying)
        said = f"you have {seen.counted}, planned {wanted}"
        return Answers(off_by(seen.counted - wanted), said, rows, (seen.counted, wanted), planned, lying)
    if seen.put == "presses":
        said = f"you counted {seen.counted}, the count here is {seen.expected}"
        return Answers("a different row", said, rows, (seen.counted, seen.expected), planned, lying)
    if not seen.stage.uncounted and (planned.uncounted or planned.spots != seen.stage.units):
        left = plural(seen.stage.units - seen.spot, seen.stage.spot)
        said = f"you have {seen.counted}; pick up {seen.stage.target - seen.counted} over the last {left}"
        return Answers(f"{plural(seen.stage.units, seen.stage.spot)} in all", said, rows, numbers, planned, lying)
    to_pick = seen.stage.target - seen.counted
    if seen.put == "half-way" and planned.uncounted and seen.counted == by_plan and to_pick > 0:
        said = f"you have {seen.counted}; pick up {to_pick} in the second half"
        return Answers("halfway", said, rows, numbers, planned, lying)
    said = f"you counted {seen.counted}, planned {by_plan}"
    return Answers(off_by(seen.counted - by_plan), said, rows, numbers, planned, lying)


def _at_pins(seen: Outlook, rows: tuple[Answer, ...]) -> Answers:
    """Return the table of a pinned edge: nothing of it lies any way, for nobody knows its rows."""
    wanted = seen.stage.target if _at_pinned_end(seen) or seen.put == "edge-ends" else seen.expected
    said = f"you {'have' if seen.put == 'edge-ends' else 'counted'} {seen.counted}, planned {wanted}"
    return Answers(off_by(seen.counted - wanted), said, rows, (seen.counted, wanted))


def _at_pinned_end(seen: Outlook) -> bool:
    """Return whether a pinned edge is walked to its end."""
    return seen.stage.pinned and seen.before.mark.units >= seen.stage.units


def _lies(way: Way, seen: Outlook, work: StepWork) -> Verdict | None:
    """Return how the rest lies if it is worked that way; None where nobody knows its rows."""
    if seen.stage.pinned:
        return None
    if way.carried:
        after = carried_on(work, seen.index, way.carried)
        other = after.stages[next_section(work, seen.index)] if after else None
        if other is None or other.uncounted:
            return None
        on_the_other = judge(other.target, other.units, other.rate, target=other.target).verdict
        if on_the_other is not Verdict.LIES_FLAT:
            return on_the_other
    if seen.put in {"as-planned", "presses"} or way.repair == "space-the-rest":
        return seen.verdict
    if seen.put == "edge-ends" and way.progress.mark.units >= way.stage.units:
        stage = way.stage
        return judge(way.progress.mark.loops, stage.units, stage.rate, target=stage.target).verdict
    mark = way.progress.mark
    return recounted(replace(way.stage, natural=str(seen.stage.rate)), seen.before, mark.loops, mark.units).verdict


def _brings(way: Way, counted: int) -> str:
    """Say what is lifted or picked up at once to have what is missing: that is work too."""
    match way.repair:
        case "strand":
            return f"{way.progress.mark.loops - counted} to lift"
        case "double-last":
            return f"{way.progress.mark.loops - counted} to pick up"
        case "next-section":
            return f"{way.carried} to pick up"
        case "space-the-rest" if way.progress.mark.units + 1 == way.stage.units and way.stage.target > counted + 1:
            return f"{way.stage.target - counted} to pick up"
        case _:
            return ""


def _text(way: Way, seen: Outlook, comes: Outcome) -> str:
    """Say what to do first."""
    mark, unit = way.progress.mark, way.stage.spot
    to_pick = mark.units < way.stage.units
    if seen.stage.pinned and way.text:
        return way.text.removesuffix(".")
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
        case "space-the-rest" if way.stage.uncounted and seen.put != "half-way":
            return f"Keep picking up {rate_words(way.stage.rate, unit)} until you have {way.stage.target}"
        case "space-the-rest" if to_pick and mark.units + 1 == way.stage.units:
            return _from_the_last(way)
        case "space-the-rest":
            return RE_SPACE if to_pick else _LEAVE
        case "double-last" | "strand" | "next-section":
            return way.text.removesuffix(".")
        case "as-it-is" if seen.put == "edge-ends" and not to_pick:
            short = 0 if seen.open_count else seen.stage.target - seen.counted
            return "Leave it with fewer stitches" if short > 0 else "The edge ends here" if not short else _LEAVE
        case _ if seen.put == "edge-ends":
            return f"Skip the {plural(way.stage.units - mark.units, unit)} left over"
        case _:
            return "Carry on as planned" if to_pick else _LEAVE


def _from_the_last(way: Way) -> str:
    """Say what the one spot that is left takes."""
    loops = way.stage.target - way.progress.mark.loops
    takes = f"Pick up {loops}" if loops > 1 else "Pick up one" if loops else "Pick up none"
    return f"{takes} in the last {way.stage.spot}"


RE_SPACE = "Re-space the rest"
_LEAVE = "Leave it"


def _in_round_1(comes: Outcome) -> str:
    made = abs(comes.made)
    return f"{'In' if comes.made > 0 else 'De'}crease {made}{' evenly' if made > 1 else ''} in {comes.unit} 1"


def _more(way: Way, comes: Outcome, each: int) -> str:
    """Return how a way goes, in sentences; nothing at the end of the edge, or where the label says it all.

    ``each``: what of the made or taken stitches is for each of two sides that are alike.
    """
    mark = way.progress.mark
    if way.stage.pinned:
        return _more_at_pins(way)
    if way.stage.units - mark.units <= (way.repair == "space-the-rest"):
        return ""
    said = []
    if way.repair == "rip-back" and mark.loops:
        said.append(f"rip back until {plural(mark.loops, 'stitch')} {'is' if mark.loops == 1 else 'are'} left")
    said += rhythm_words(way.stage, way.progress).split("; ")
    if way.repair == "first-round" and comes.made:
        said.append(f"then {_in_round_1(comes).lower()}{f', {abs(each)} for each side' if each else ''}")
    return " ".join(map(sentence, said))


def _more_at_pins(way: Way) -> str:
    """Return how a way along a pinned edge goes, in sentences."""
    if way.repair == "double-last":
        return "Not in the corner row."
    if way.repair != "rip-back":
        return ""
    left = next_pin(way.stage, way.progress.mark.units)
    end = "the next pin" if left < way.stage.units else "the end"
    return f"Then pick up {left - way.progress.mark.units}, spread evenly, to {end}."


def _verb(way: Way, seen: Outlook, comes: Outcome) -> str:
    if way.repair == "rip-back":
        return "RIP BACK"
    if way.repair == "strand":
        return "LIFT"
    if way.progress.mark.units < way.stage.units:
        return "SKIP" if way.repair == "as-it-is" and seen.put == "edge-ends" else "PICK"
    if way.repair in {"double-last", "next-section"}:
        return "PICK"
    return "GO ON" if not comes.made else "INCREASE" if comes.made > 0 else "DECREASE"


def _natural(stage: Stage) -> str:
    """Say going on at the natural ratio: "Keep picking up 3 of every 4" where that is easily said."""
    natural = stage.rate
    if natural < 1 and natural.denominator <= EASILY_SAID:
        return f"Keep picking up {natural.numerator} of every {natural.denominator}"
    return f"Pick up in every {stage.spot}" if natural == 1 else "Pick up at the rate your gauge gives"
