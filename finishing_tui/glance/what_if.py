"""What if, side by side: the plan there is and the one that is asked for, how it lies, and what changes later."""

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.words import decimal, many, sentence
from finishing_tui.garment.alteration import Alteration, CannotAsk
from finishing_tui.garment.commands import ChoosePace, Refusal, WhatIf
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.altering import altered, asks
from finishing_tui.garment.events import Act
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.outcome import outcome
from finishing_tui.garment.state import State
from finishing_tui.garment.ways import recounted
from finishing_tui.garment.work import StepWork
from finishing_tui.glance.answers import THE_REST, Answer, Answers, off_by, wrong_with
from finishing_tui.glance.faces import edge_of
from finishing_tui.glance.label_words import altered_words
from finishing_tui.glance.later import cut, later_lines
from finishing_tui.glance.stored_words import ACTS


@dataclass(frozen=True, slots=True)
class Asked:
    """What can be asked here. ``unit``: of a spot, or what is worked (round, row); ``section``: it walks an edge.

    ``title``: of the part; ``figure``: its loops or rounds as planned, ``spots``: those of the section, 0
    where nobody counted them, ``style``: how it is spread.
    """

    title: str
    unit: str
    section: bool
    figure: int
    spots: int
    style: Literal["easy", "even"]


@dataclass(frozen=True, slots=True)
class WhatIfView:
    """Both plans side by side.

    ``figure``: the stitches or rounds there would be, ``now``: all of it in words; ``answers``: to keep the plan, or to
    change it to that; ``later``: the later numbers that change, a line each; ``changes``: it is not what the plan has
    already.
    """

    figure: int
    now: str
    answers: Answers
    later: tuple[str, ...]
    changes: bool
    command: WhatIf


def asked_here(state: State) -> Asked:
    """Return what can be asked here. Raises ``FinishingError`` with a sentence where nothing can."""
    stage = asks(state)
    if stage.uncounted == "all":
        raise CannotAsk(
            f"nobody knows how many stitches {stage.title} takes: pick up at its rate, and say where the edge ends"
        )
    section = stage.unit == "spot"
    spots = 0 if stage.uncounted else stage.units
    return Asked(stage.title, stage.spot, section, stage.target if section else stage.units, spots, stage.style)


def can_ask(state: State) -> bool:
    """Return whether anything can be asked here."""
    try:
        asked_here(state)
    except FinishingError:
        return False
    return True


def what_if_view(state: State, command: WhatIf, most: int = 5) -> WhatIfView:
    """Return both plans side by side; ``most``: so many later numbers are named one by one.

    Raises ``FinishingError`` with a sentence for what cannot be.
    """
    from finishing_tui.garment.consequences import consequences  # noqa: PLC0415  (the audit: not for every garment)

    found = altered(state, command)
    work = found.work
    stage, old = work.stages[found.index], state.work
    if old is None:
        raise ValueError("nothing is asked of a step that is not begun")
    events = decide(state, command)
    acts = () if isinstance(events, Refusal) else tuple(event for event in events if isinstance(event, Act))
    after = applied(state, acts)
    section = stage.unit == "spot"
    figure, planned = (stage.target, found.stage.target) if section else (stage.units, found.stage.units)
    keep, change = _rows(state, old, found, command, refused=isinstance(events, Refusal))
    before = edge_of(state, old, found.index) if section else None
    what = "stitches" if section else many(stage.spot)
    heading = off_by(figure - planned) if figure != planned else "as many as planned"
    return WhatIfView(
        figure=figure,
        now=altered_words(found.why)[0],
        answers=Answers(
            heading,
            f"{figure} {what}, planned {planned}",
            (replace(keep, edge=before), change) if acts else (replace(keep, edge=before),),
            planned=before,
            lying=THE_REST if section and old.progress[found.index].mark.units else "",
        ),
        later=cut(later_lines(consequences(state, after), after), most) if acts else (),
        changes=bool(acts),
        command=command,
    )


def _rows(state: State, old: StepWork, found: Alteration, command: WhatIf, *, refused: bool) -> tuple[Answer, Answer]:
    """Return to keep the plan, and to change it; a section is told by what the whole needle comes to."""
    stage = found.work.stages[found.index]
    verb = ACTS[stage.act]  # what the hands do next, whichever plan it is
    now, was = altered_words(found.why)
    if stage.unit != "spot":
        keep = Answer("Keep the plan", verb, None, found.stage.units, unit=stage.spot, more=_in_turn(was))
        by = stage.units - found.stage.units
        to_do = (
            f"{abs(by)} {'more' if by > 0 else 'fewer'} {stage.spot if abs(by) == 1 else many(stage.spot)}"
            if by
            else ""
        )
        change = Answer("Change it", verb, None, stage.units, unit=stage.spot, more=_in_turn(now), to_do=to_do)
        return keep, change
    progress = old.progress[found.index]
    mark = progress.mark
    lies = recounted(found.stage, progress, mark.loops, mark.units).verdict if mark.units else Verdict.LIES_FLAT
    old_stage = old.stages[found.index]
    stays = outcome(state, ChoosePace(state.pace), stage.place)
    comes = stays if refused else outcome(state, command, stage.place)
    note = wrong_with(stays.total, stays.total, stays.repeat)
    more = sentence(old_stage.words) if old_stage.uncounted else _in_turn(was)
    keep = Answer("Keep the plan", verb, None if old_stage.uncounted else lies, stays.total, note=note, more=more)
    edge = edge_of(state, found.work, found.index, found.work.progress[found.index])
    passed = mark.units + bool(mark.within)
    since = f"from {stage.spot} {passed + 1}: " if passed else ""  # the rest alone is spaced anew
    more = f"{_in_turn(now, since)} {sentence(_drifts(*found.drift)) if found.drift else ''}".strip()
    note = wrong_with(comes.total, comes.total, comes.repeat)
    verdict = None if stage.uncounted else found.verdict  # how long it is nobody knows, so neither how it lies
    return keep, Answer("Change it", verb, verdict, comes.total, note=note, edge=edge, more=more)


def rhythm_typed(typed: str) -> tuple[int, int] | None:
    """Return (a, b) where ``typed`` says "a of every b", as "3/4"; None where it does not yet."""
    pick, _, of = typed.partition("/")
    return (int(pick), int(of)) if pick.isdecimal() and of.isdecimal() and int(of) else None


def unit_words(asked: Asked) -> str:
    """Return what the spots or rounds are called, when there are several."""
    return many(asked.unit)


def _in_turn(words: str, since: str = "") -> str:
    """Return a plan in words with a sentence for how many, and one for each pace of the rhythm from ``since`` on."""
    many_of, _, rhythm = words.partition(", ")
    rhythm = since + rhythm if rhythm else ""
    first, *then = rhythm.split(", then ")
    return " ".join(sentence(part) for part in (many_of, first, *(f"then {pace}" for pace in then)) if part)


def _drifts(was: Fraction, now: Fraction) -> str:
    return f"up to {decimal(now)} stitch from even (planned: {decimal(was)})"
