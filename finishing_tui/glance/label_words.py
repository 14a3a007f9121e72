"""The words of labels: what was done, where work was ripped back to, why a plan changed, and what spoke against it.

What is stored is an id and what fills its words (``garment.labels``), so that these words can change.
"""

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from finishing_tui.craft.spacing import say
from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.commands import Replan
from finishing_tui.garment.decide.respacing import Respaced, sections_words
from finishing_tui.garment.events import Replanned
from finishing_tui.garment.labels import Label, Said
from finishing_tui.garment.plan import Plan, StepId
from finishing_tui.garment.state import State
from finishing_tui.glance.stored_words import AGAINST_PLAN

WORDS: Mapping[Said, str] = MappingProxyType(
    {
        "as-said": "{names[0]}",
        "nothing-typed": "nothing was typed yet",
        "unfinished": "{names[0]}: {numbers[0]} of {numbers[1]} so far",
        "unexpected-count": "the recipe expects {numbers[0]} on the {names[0]}, and there are {numbers[1]}",
        "no-whole-repeat": "{numbers[0]} on the {names[0]} is not a multiple of {numbers[1]}",
        "no-whole-repeat-and": "{numbers[0]} on the {names[0]} is not a multiple of {numbers[1]} and {numbers[2]}",
        **{what: f"{{names[0]}} {{numbers[0]}}, {words} against the plan" for what, words in AGAINST_PLAN.items()},
        "step-begun": "the beginning of {steps[0]}",
        "step-ended": "the end of {steps[0]}",
        "step-taken-up": "taking up {steps[0]}",
        "step-left-out": "leaving out {steps[0]}",
        "step-inserted": "a new {new}",
        "done-elsewhere": "{all_steps}, done elsewhere",
        "whole-lot": "the lot: {stitches} of {names[0]}",
        "many-of-lot": "{stitches} of {names[0]}",
        "measured": "the measure",
        "recounted": "the recount of {names[0]}",
        "place-counted": "the count of {names[0]}",
        "two-together": "two together at pair {numbers[0]}",
        "two-at-once": "two at once from the {names[0]} at pair {numbers[0]}",
        "other-tail": "{names[0]}, closed with the tail {names[1]}",
        "stitches-made": "making {stitches} on the {names[0]}",
        "stitches-worked-off": "working off {stitches} on the {names[0]}",
        "kept-as-it-is": "carrying on as it is",
        "re-spaced": "re-spacing {steps[0]}",
        "first-round-changed": "putting it right in the first round",
        "mirrored-as-worked": "{names[0]} as worked",
        "mirrored-as-planned": "{names[0]} as planned",
        "edge-pinned": "{names[0]} pinned in {numbers[0]} parts",
        "plan-altered": "another plan for {names[0]}",
        "plan-taken": "a changed plan",
        "ripped-to-start": "ripping back to the start of {names[0]}",
        "ripped-to-spot": "ripping back to {names[0]} {numbers[0]}",
        "ripped-to-unit": "ripping back to {numbers[0]} of {names[0]}",
        "start": "the start of {names[0]}",
        "spot": "{names[0]} {numbers[0]}",
        "unit": "{numbers[0]} of {names[0]}",
        "recount-to-first-round": "recount of {steps[0]}: {numbers[0]:+d} in the first round of {steps[1]}",
        "to-first-round": "{numbers[0]:+d} in the first round of {steps[0]}",
        "sections-re-spaced": "{steps[0]}: {sections}",
        "section-altered": "{steps[0]}, {names[0]}: {now}; before: {was}",
        "rounds-altered": "{steps[0]}, {names[0]}: {now}; before: {was}",
        "number-first-given": "{names[0]}: {numbers[0]}, was empty",
        "number-not-counted": "{names[0]}: not counted",
        "number-changed": "{names[0]}: {numbers[0]}, was {numbers[1]}",
        "files-changed": "the files were changed",
    }
)
"""What is said of each id, filled by what is stored with it."""

GONE = "a step that is gone"
"""What a step is called that was inserted and taken back again."""


def label_words(plan: Plan, label: Label | None) -> str:
    """Return what a label says, each step by where it is in ``plan``; nothing for no label, a plain press.

    Whoever wrote it: what is missing to fill the words is left empty.
    """
    if label is None:
        return ""
    now, was = altered_words(label)
    names, numbers = (*label.names, "", ""), (*label.numbers, 0, 0, 0)
    inserted = plan.number_of(label.steps[0]) if label.steps else None
    return WORDS[label.what].format(
        steps=(*(_step(plan, one) for one in label.steps[:2]), GONE, GONE),
        names=names,
        numbers=numbers,
        new=f"step {inserted or numbers[0]}",
        all_steps=_all_steps(plan, label.steps),
        stitches=plural(numbers[0], "stitch"),
        sections=sections_words(map(Respaced, label.names, label.numbers[::2], label.numbers[1::2])),
        now=now,
        was=was,
    )


def labels_words(plan: Plan, labels: Iterable[Label]) -> str:
    """Return what several labels say."""
    return "; ".join(label_words(plan, label) for label in labels)


def reason_words(plan: Plan, change: Replanned | Replan) -> str:
    """Return why a plan is another one, and what the knitter wrote about it."""
    return "; ".join(one for one in (label_words(plan, change.why), change.note) if one)


def top_words(state: State) -> str:
    """Return what would be taken back now; nothing where that is a plain press, or where there is nothing."""
    return label_words(state.plan, state.top_label) if state.top else ""


def altered_words(why: Label) -> tuple[str, str]:
    """Return the new plan and the old one of a section or of rounds that are to go another way."""
    unit = why.names[1] if len(why.names) > 1 else ""
    if why.what == "rounds-altered":
        now, was, *_ = (*why.numbers, 0, 0)
        return plural(now, unit), plural(was, unit)
    many = zip(why.numbers[::2], why.numbers[1::2], why.rhythms, strict=False)
    words = [f"{target} from {plural(units, unit)}, {say(rhythm, unit=unit)}" for target, units, rhythm in many]
    now_words, was_words, *_ = (*words, "", "")
    return now_words, was_words


def _step(plan: Plan, step: StepId) -> str:
    number = plan.number_of(step)
    return GONE if number is None else f"step {number}"


def _all_steps(plan: Plan, steps: Sequence[StepId]) -> str:
    ends = steps if len(steps) < 4 else (steps[0], steps[-1])
    numbers = [str(number) for number in map(plan.number_of, ends) if number is not None]
    said = listing(numbers) if len(steps) < 4 else " to ".join(numbers)
    return f"step{'s' if len(steps) > 1 else ''} {said}" if numbers else GONE
