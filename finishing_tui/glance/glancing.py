"""``glance``: everything there is to see of a garment, and ``look_at``: the same with another step in the middle."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from types import MappingProxyType

from finishing_tui.craft.ledger import OUTSIDE, Posture, PostureEntry
from finishing_tui.craft.pace import pace_between, said
from finishing_tui.craft.words import listing, sentence
from finishing_tui.garment.commands import Refusal
from finishing_tui.garment.decide.steps import begin
from finishing_tui.garment.left_open import left_open
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import counted_at_end
from finishing_tui.garment.work import Standing, StepWork
from finishing_tui.glance.cautions import CARE, is_behind, is_childs
from finishing_tui.glance.faces import face_of, part_of
from finishing_tui.glance.label_words import top_words
from finishing_tui.glance.lying import Picture, lying
from finishing_tui.glance.posture import as_worked, laid_last, layers, lie, posture_words, start_end, worked_so
from finishing_tui.glance.values import Face, Glance, Holding, ItemFace, MessageFace, StepLine, WordLine
from finishing_tui.glance.wishes import NONE, Wishes
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.stage import HAND, Item

ENDS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "right": MappingProxyType({"{start end}": "right-hand end", "{far end}": "left-hand end"}),
        "left": MappingProxyType({"{start end}": "left-hand end", "{far end}": "right-hand end"}),
    }
)
"""What the words that turn round with the hand stand for."""

LONGEST_SITTING = 24 * 60
"""Minutes that no sitting lasts, where only the times of day are known."""


def glance(state: State, now: datetime) -> Glance:
    """Return all there is to see, with the step under the needles in the middle; ``now`` is UTC."""
    return look_at(state, state.current, now)


def look_at(
    state: State, step: int | None, now: datetime, wishes: Wishes = NONE, *, lasted: int | None = None
) -> Glance:
    """Return all there is to see, with ``step`` in the middle; None is the end, when every step is done.

    ``wishes``: the names of keys, and the units, that it is to be told in; ``lasted``: milliseconds of the sitting
    under way, by a clock that never jumps, where that is known (``InHand.lasted``).
    """
    plan = state.plan
    recipe_step = plan.step(step) if step is not None else None
    in_middle = state.steps[step] if step is not None else None
    work = in_middle.work if in_middle else None
    posture = lie(state)
    posture = replace(posture, yarn_at=turned(posture.yarn_at, plan.hand))
    picture, face = _picture(state, step, posture), _face(state, step, in_middle, wishes)
    part, fastens, at = "", False, 0
    if work is not None:
        ended = counted_at_end(work)
        at, parts = work.at if ended is None else ended, len(work.stages)
        if at < parts:
            stage = work.stages[at]
            called = "section" if isinstance(recipe_step, PickUpAndKnit) else "part"  # never a bare "1 of 4": no count
            place = f"{called} {at + 1} of {parts}" if parts > 1 else ""
            of = part_of(stage, work.progress[at]) if stage.pinned else place
            part = f"{stage.title}, {of}" if of else stage.title
            fastens = stage.act == "fasten-off"
    if fastens:
        picture = Picture(words=picture.words)  # one stitch is left of what it would show
    if picture.large and isinstance(face, ItemFace):
        face = replace(face, lay=picture)
    return Glance(
        title=plan.title,
        size=plan.size,
        step=0 if step is None else step + 1,
        steps=len(state.steps),
        heading=recipe_step.title if recipe_step else "Finished",
        part=part,
        posture=posture_words(posture),
        lying=picture,
        needles="" if fastens else plan.needles,
        minutes=_minutes(state, now, lasted),
        time_left=_time_left(state),
        face=face,
        holdings=_holdings(state, step, at),
        tails=tuple(state.ledger.tails),
        markers=state.ledger.markers,
        holes=state.ledger.holes,
        lines=(
            *(_on_fastening(state, step) if fastens else _looked_over(_words_of(state, step), in_middle)),
            *_waiting(state),
        ),
        list=tuple(
            [
                StepLine(index + 1, one.title, standing.status, index == state.current)
                for index, (one, standing) in enumerate(zip(plan.recipe.step, state.steps, strict=True))
            ]
        ),
        pace=state.pace,
        take_back=top_words(state),
        looking=step != state.current,
        hand=plan.hand,
        digits=len(str(max(plan.numbers().values(), default=0))),
    )


def _picture(state: State, step: int | None, now: Posture) -> Picture:
    """Return how the work lies as a picture; where the step in the middle lays it, how it is to lie then."""
    work, hand = state.steps[step].work if step is not None else None, state.plan.hand
    most = 0
    if step is not None and work is not None and not work.complete and work.stages[work.at].items:
        items = work.stages[work.at].items
        laid = [_laid(state, step, item) for item in items]
        pictures = [Picture() if one is None else one for one in laid]
        most = max(len(one.lines) for one in pictures)
        if (to_be := laid[work.progress[work.at].mark.units]) is not None:
            return replace(to_be, most=most, large=bool(to_be.lines) and len(items) == 1)
    return Picture(lying(now, _starts(state) if now.together else "", hand), posture_words(now), most=most)


def _laid(state: State, step: int, item: Item) -> Picture | None:
    """Return how an item of a list lays the work, as a picture; None where it does not."""
    laid = next((entry.after for entry in item.entries if isinstance(entry, PostureEntry)), None)
    if laid is None:
        return None
    joined, hand = worked_so(state, step) if laid.together else None, state.plan.hand
    if joined is not None:
        laid = as_worked(state, joined, laid)
    laid = replace(laid, yarn_at=turned(laid.yarn_at, hand))
    lines = lying(laid, start_end(state, joined) or "", hand)
    return Picture(lines, posture_words(laid), to_be=True, layers=layers(state, joined))


def _starts(state: State) -> str:
    """Return the end where the join that the work is laid for starts, while it lies so; empty where there is none."""
    laid = laid_last(state)
    return "" if laid is None else start_end(state, worked_so(state, laid)) or ""


def _face(state: State, step: int | None, standing: Standing | None, wishes: Wishes) -> Face:
    if step is None or standing is None:
        if state.ledger.empty:
            words = "All done. No live stitches, tails, markers or holes left."
            return MessageFace("FINISHED", words, mood="done")
        return MessageFace("LOOK", "All steps are done, but what you see below is still open.", mood="in the way")
    if standing.work is not None and standing.status == "under-way":
        return face_of(state, standing.work, wishes)
    if standing.status == "done":
        return MessageFace("DONE", "You finished this step.", mood="done")
    if standing.status == "left-out":
        return MessageFace("SKIPPED", f"You skipped this step. Press {wishes.finish} to start it.", mood="in the way")
    if not state.plan.is_for(step):
        return MessageFace("GO ON", sentence(f"this step is not for size {state.plan.size}"), mood="to do")
    if step != state.current:
        return MessageFace("LATER", f"Press {wishes.finish} to start this step.", mood="to do", then="not started")
    begun = begin(state, step)
    if isinstance(begun, Refusal):
        return MessageFace("WAIT", sentence(begun.sentence), mood="in the way")
    return MessageFace("BEGIN", f"Press {wishes.press} to begin.", mood="to do")


def half_done(state: State) -> str:
    """Return which other steps were left in their middle, in words; nothing else leads back to them before the end."""
    waiting = (step for step in sorted(state.order) if state.steps[step].status == "under-way")
    left = left_open(state)
    return steps_words(state, [step for step in waiting if step != state.current and step not in left])


def steps_words(state: State, steps: Iterable[int]) -> str:
    """Return the numbers and titles of ``steps``, counted from 0."""
    return listing([f"step {step + 1}, {state.plan.step(step).title.removesuffix('.')}" for step in steps])


def _holdings(state: State, step: int | None, at: int) -> tuple[Holding, ...]:
    standing = state.steps[step] if step is not None else None
    work = standing.work if standing is not None and standing.status == "under-way" else None
    here = set() if work is None else _places_here(work, at)
    begun = here if work is not None and at == work.at and not work.complete else set()
    holdings = [
        Holding(place.text, place.kind, state.ledger.on(name), name in here)
        for name, place in state.plan.recipe.place.items()
        if state.ledger.on(name) or name in begun
    ]
    if state.ledger.on(HAND):
        holdings.append(Holding(HAND, "needle", state.ledger.on(HAND), here=True))
    return tuple(holdings)


def _places_here(work: StepWork, at: int) -> set[str]:
    """Return the places that are worked on with the stage ``at``; where it has none, those of the last that had some.

    Until the step ends, what was worked last is still in hand: while its stitches are counted, or a marker is placed.
    """
    for stage in reversed(work.stages[: at + 1]):
        places = {stage.place, stage.front, stage.back}
        for flow in stage.flows:
            places.add(flow.source)
        places -= OUTSIDE | {""}
        if places:
            return places
    return set()


def step_lines(step: Step, hand: str) -> tuple[WordLine, ...]:
    """Return the words of a step under their headings, for a right-handed or a left-handed knitter."""
    texts = (
        ("", step.say),
        ("count", step.how),
        ("right when", step.look),
        ("if not", step.mend),
        (CARE, step.mind),
        ("see", step.see),
    )
    return tuple([WordLine(heading, turned(text, hand)) for heading, text in texts if text])


def _words_of(state: State, step: int | None) -> tuple[WordLine, ...]:
    """Return the words of a step of the garment; its caution says whether it was shown before."""
    if step is None:
        return ()
    recipe_step = state.plan.step(step)
    lines = step_lines(recipe_step, state.plan.hand)
    if not recipe_step.mind:
        return lines
    behind, always = is_behind(state, step), is_childs(recipe_step)
    return tuple([replace(line, behind=behind, always=always) if line.heading == CARE else line for line in lines])


def _on_fastening(state: State, step: int | None) -> tuple[WordLine, ...]:
    """Return what a step says of fastening off, which is all that is left of it: the rest is on what was done."""
    said = "" if step is None else turned(state.plan.step(step).say, state.plan.hand)
    about = [one for one in re.split(r"(?<=[.]) ", said) if "fasten" in one.casefold()]
    return (WordLine("", " ".join(about)),) if about else ()


def _waiting(state: State) -> tuple[WordLine, ...]:
    waiting = (("half done", half_done(state)), ("left open", steps_words(state, left_open(state))))
    return tuple([WordLine(heading, sentence(text)) for heading, text in waiting if text])


def _looked_over(lines: tuple[WordLine, ...], standing: Standing | None) -> tuple[WordLine, ...]:
    """Return the words of a step; at its end those come first that tell whether it is right, for it is looked over."""
    work = standing.work if standing is not None and standing.status == "under-way" else None
    if work is None or not work.complete:
        return lines
    return tuple(sorted(lines, key=lambda line: line.heading not in {"right when", "if not"}))


def turned(text: str, hand: str) -> str:
    """Return a text with the words that turn round for a left-handed knitter put in."""
    for words, meaning in ENDS[hand].items():
        text = text.replace(words, meaning)
    return text


def _minutes(state: State, now: datetime, lasted: int | None) -> int | None:
    """Return how many minutes the sitting lasts; one that was ended lasted until then.

    Of another window's sitting, or one that is over, only the times of day are known. A clock that was set meanwhile
    makes nonsense of them: None where no sitting lasts so long, or it ends before it began.
    """
    if not state.sittings:
        return 0
    last = state.sittings[-1]
    if lasted is not None and not last.ended:
        return lasted // 60_000
    until = datetime.fromisoformat(last.ended) if last.ended else now
    minutes = (until - datetime.fromisoformat(last.began)) // timedelta(minutes=1)
    return max(minutes, 0) if -1 <= minutes < LONGEST_SITTING else None


def _time_left(state: State) -> str:
    work = state.work
    if work is None or work.complete:
        return ""
    stage, mark = work.stages[work.at], work.progress[work.at].mark
    counts_loops = stage.unit == "spot" and state.pace == "loop"
    left = max(stage.target - mark.loops, 0) if counts_loops else stage.units - mark.units
    # Only presses of this part count: held stitches go faster than loops are picked up.
    pace = pace_between(state.presses[-1 - (mark.loops if counts_loops else mark.units) :])
    # A run is many units at one press, so its presses say nothing of a unit.
    if pace is None or (stage.unit == "spot" and state.pace == "run"):
        return ""
    return f"{said(pace.time_left(left))} left here"
