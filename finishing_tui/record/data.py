"""A record as one JSON object, for programs. Programs may rely on its keys; new ones may be added.

``finishing record --json`` writes it, and its help says so.
"""

from dataclasses import asdict
from typing import Any

from finishing_tui.garment.left_open import left_open
from finishing_tui.garment.work import StepWork
from finishing_tui.record.values import CountTaken, Record


def as_data(record: Record) -> dict[str, Any]:
    """Return the record as plain JSON values.

    ``step`` counts from 1 and is the last one when all are done; ``count`` of ``target`` is that of the part under way
    (of the last part, when the step is complete), in loops along an edge and else in what one press stands for, and
    null where no step is begun; ``places`` are those that hold stitches.
    """
    state = record.state
    plan, ledger = state.plan, state.ledger
    part = _part(state.work)
    return {
        "title": plan.title,
        "recipe": plan.recipe.title,
        "size": plan.size,
        "hand": plan.hand,
        "yarn": plan.yarn,
        "needles": plan.needles,
        "begun": record.events > 0,
        "finished": state.current is None,
        "step": len(state.steps) if state.current is None else state.current + 1,
        "steps": len(state.steps),
        "heading": "" if state.current is None else plan.step(state.current).title,
        **part,
        "pace": state.pace,
        "places": ledger.live,
        "tails": list(ledger.tails),
        "markers": list(ledger.markers),
        "holes": list(ledger.holes),
        "yarns": list(ledger.yarns),
        "posture": asdict(ledger.posture),
        "counts": [_count(count) for count in record.counts],
        "deviations": [asdict(one) for one in record.deviations],
        "ripped_back": [asdict(one) | {"fell": list(one.fell)} for one in record.ripped],
        "changes": [{"at": one.at, "why": one.text} for one in record.changes],
        "notes": [{"step": plan.number_of(note.step), "at": note.at, "text": note.text} for note in state.notes],
        "sittings": [asdict(one) | {"ended": one.ended or None} for one in record.sittings],
        "status": [_said(one.status) for one in state.steps],
        "left_open": [step + 1 for step in left_open(state)],
    }


def _count(count: CountTaken) -> dict[str, Any]:
    act = count.act
    return {
        "step": count.step,
        "at": count.at,
        "place": act.place,
        "counted": act.counted,
        "expected": act.expected,
        "answer": _said(act.answer),
        "verdict": _said(act.verdict.value) if act.verdict else "",
        "repair": _said(act.repair or ""),
        "text": act.what,
    }


def _said(stored: str) -> str:
    """Return an id as programs know it; it never changes, whatever people are told."""
    return stored.replace("-", " ")


def _part(work: StepWork | None) -> dict[str, Any]:
    """Return what is under way of a step: its part, count and target, and along an edge the spot."""
    nothing = {"part": None, "unit": None, "count": None, "target": None, "spot": None, "spots": None}
    if work is None or not work.stages:
        return nothing
    index = work.at
    if work.complete:  # a marker that was put in last is no part to tell of
        index = max((at for at, stage in enumerate(work.stages) if stage.unit != "item"), default=len(work.stages) - 1)
    stage, mark = work.stages[index], work.progress[index].mark
    if stage.unit == "spot":
        return {
            "part": stage.title,
            "unit": stage.spot,
            "count": mark.loops,
            "target": None if stage.uncounted == "all" else stage.target,
            "spot": mark.units,
            "spots": None if stage.uncounted else stage.units,
        }
    count = mark.loops if stage.counts else mark.units  # a count may be another number than what should be there
    return nothing | {"part": stage.title, "unit": stage.unit, "count": count, "target": stage.units}
