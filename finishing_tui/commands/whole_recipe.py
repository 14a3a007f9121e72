"""A recipe for one size, from top to bottom: what a knitter would print out and lay beside the work.

It says what the steps themselves say: their texts, and the words of the stages that they come to on paper, with the
printed numbers. It computes nothing of its own and proves nothing: what cannot come out is the audit's to tell.
"""

import re
import textwrap
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Ledger, MarkerEntry
from finishing_tui.craft.words import listing, plural
from finishing_tui.glance.glancing import step_lines, turned
from finishing_tui.recipe.audit import Inputs
from finishing_tui.recipe.audit.footing import AuditFooting, footing
from finishing_tui.recipe.audit.implied import implied
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.model import BandGauge, Number, Recipe, RecipeGauge
from finishing_tui.recipe.stage import Stage, whole

WIDE = 78
"""Columns of a line, so that it can be printed."""
_MOST_SAID, _MOST_ALIKE = 12, 3
"""Up to so many single rows or pairs of a stage are told one by one, and so many where each is like the last."""

_AFTER = re.compile(r"(leaves|makes) [0-9]+$")

_TELL_THEMSELVES = {"arrange", "check", "mark", "unmark", "block"}
"""Stages whose words are the title of their step over again."""


def whole_recipe(recipe: Recipe, size: int, hand: Literal["right", "left"] = "right") -> Iterator[str]:
    """Yield the lines of ``recipe`` for the size at position ``size``, for a right- or a left-handed knitter.

    Raises ``FinishingError`` when a number cannot be worked out in this size.
    """
    asked = Inputs(recipe=recipe, size=size, hand=hand)
    stands = footing(replace(asked, own=implied(asked).values))
    yield from _wrapped(f"{recipe.title}, size {stands.size_name} of {', '.join(recipe.sizes)}")
    if recipe.about:
        yield from ("", *_wrapped(recipe.about))
    if recipe.gauge is not None:
        yield from ("", *_wrapped(f"Gauge: {_gauge(recipe.gauge)}."))
    if recipe.number:
        yield from ("", "NUMBERS")
        for name, number in recipe.number.items():
            yield from _number(number, name, stands.numbers[name])
    if recipe.place:
        yield from ("", "PLACES, with the stitches they hold at the start")
        for name, place in recipe.place.items():
            yield f"  {stands.live[name]:>5}  {place.text}: {place.kind} ({name})"
    if recipe.tails:
        yield from ("", *_wrapped(f"Tails left on the pieces: {listing(recipe.tails)}."))
    yield from ("", "STEPS")
    yield from _steps(stands, hand)


def _steps(stands: AuditFooting, hand: str) -> Iterator[str]:
    ledger: Ledger | None = stands.opening()
    for at in stands.steps():
        step = stands.recipe.step[at]
        yield from ("", f"{at + 1}  {step.title}")
        stages: tuple[Stage, ...] = ()
        if ledger is not None:
            try:
                stages = step.stages(stands.here(ledger))
                for stage in stages:
                    ledger = ledger.enter(*whole(stage))
            except FinishingError as error:
                ledger = None  # nothing after it can be told in figures
                yield from _wrapped(f"This cannot be done as it is written: {error}", "   ")
        yield from _step(stands, step, stages, hand)


def _step(stands: AuditFooting, step: AnyStep, stages: tuple[Stage, ...], hand: str) -> Iterator[str]:
    lines = step_lines(step, hand)
    for line in (line for line in lines if not line.heading):
        yield from _wrapped(line.text, "   ")
    told = ""
    for stage in stages:
        yield from _stage(stage, alone=len(stages) == 1, again=stage.words == told)
        told = stage.words
    if isinstance(step, Check):
        for item in step.items:
            yield from _wrapped(f"[ ] {turned(item, hand)}", "   ", "       ")
    for place, count in step.expect.items():
        held = count_of(count, stands.numbers, stands.size)
        yield f"   then {held} on the {stands.texts[place]}"
    if step.repeat is not None:
        plus = f" and {step.repeat.plus} more" if step.repeat.plus else ""
        yield f"   a multiple of {step.repeat.of}{plus}"
    for line in (line for line in lines if line.heading):
        yield from _wrapped(f"{line.heading}: {line.text}", "   ", "     ")


def _stage(stage: Stage, *, alone: bool, again: bool) -> Iterator[str]:
    """Yield what a stage comes to in this size; nothing for one that there is not, or that its step says already.

    ``alone``: it is all there is of its step; ``again``: its words are those of the stage before.
    """
    if stage.act in _TELL_THEMSELVES or not (stage.units or stage.words):
        return
    if stage.unit == "spot":
        text = f"{stage.title}: {stage.target} over {plural(stage.units, stage.spot)}, {stage.words}"
    elif stage.act == "count":
        text = f"There should be {stage.target}."
    elif alone or stage.unit in {"item", "value"}:
        text = stage.words
    else:
        text = f"{stage.title}: {stage.words}"
    if not again:
        yield from _wrapped(f"- {text}", "   ", "     ")
    for entry in (*stage.opening, *stage.closing):
        if isinstance(entry, MarkerEntry) and entry.did == "in":
            yield from _wrapped(f"here a marker goes in: {entry.marker}", "     ", "       ")
    unit = "row" if stage.spot == "row" else "round" if stage.unit == "round" else stage.unit
    most = _MOST_ALIKE if _regular(stage.said) else _MOST_SAID
    for number, said in stage.said[: most if len(stage.said) > most + 1 else None]:
        yield from _wrapped(f"{unit} {number}: {said}", "     ", "       ")
    if len(stage.said) > most + 1:
        number, said = stage.said[-1]
        yield from _wrapped(f"and so on, to {unit} {number}: {said}", "     ", "       ")
    if stage.unit == "item" and stage.units > 1 and stage.act not in {"set-up", "sew-on", "weave-in"}:
        for number, item in enumerate(stage.items[:_MOST_SAID], 1):
            yield from _wrapped(f"{number}: {item.text}", "     ", "       ")


def _regular(said: tuple[tuple[int, str], ...]) -> bool:
    """Return whether what is said of single rows is the same each time, but for the count after it, every so many."""
    words = {_AFTER.sub("", text) for _, text in said}
    steps = {later - earlier for (earlier, _), (later, _) in pairwise(said)}
    return len(words) == 1 and len(steps) <= 1


def _number(number: Number, name: str, value: int) -> Iterator[str]:
    yield from _wrapped(f"{value:>5}  {number.text} ({name}){', to be counted on your own' if number.ask else ''}",
                        "  ", "         ")  # fmt: skip
    if number.ask and number.how:
        yield from _wrapped(number.how, "           ")


def _gauge(gauge: RecipeGauge | BandGauge) -> str:
    band = f"; of the band {_gauge(gauge.band)}" if isinstance(gauge, RecipeGauge) and gauge.band else ""
    return f"{gauge.stitches} stitches and {gauge.rows} rows over {gauge.over}{band}"


def _wrapped(text: str, first: str = "", rest: str | None = None) -> list[str]:
    return textwrap.wrap(
        text,
        WIDE,
        initial_indent=first,
        subsequent_indent=first if rest is None else rest,
        break_long_words=False,
        break_on_hyphens=False,
    )
