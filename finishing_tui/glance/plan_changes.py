"""What another plan changes, named field by field: the knitter's file, the numbers, the places, and every step.

It compares values and puts nothing right; long texts are only said to be other ones.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass

from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.commands import Refusal, Replan
from finishing_tui.garment.consequences import consequences
from finishing_tui.garment.decide import decide
from finishing_tui.garment.events import Act
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.starting import UNCOUNTED
from finishing_tui.garment.state import State
from finishing_tui.glance.later import AFFECTS_LATER, later_lines
from finishing_tui.recipe.numbers import NOT_COUNTED

LONGEST = 40
"""A text that is longer than this is not shown, only said to be another one."""

OF_GARMENT = ("title", "size", "hand", "yarn", "needles", "notes")
"""What a garment's own file says of it, besides numbers and gauge."""

Value = object
"""A value of a plan: text, a number, or values made of these."""


@dataclass(frozen=True, slots=True)
class PlanChange:
    """A changed plan that is offered.

    ``lines``: what is another way, then which later numbers that changes; no full stops. ``refusal``: why it cannot
    be taken, empty where it can; ``command``: what takes it.
    """

    lines: tuple[str, ...]
    refusal: str
    command: Replan


def plan_change(state: State, plan: Plan) -> PlanChange:
    """Return what taking ``plan`` changes, and whether it can be taken."""
    command = Replan(plan, why=Label("files-changed"))
    decided = decide(state, command)
    if isinstance(decided, Refusal):
        return PlanChange(tuple(_changed(state, plan)), decided.sentence, command)
    after = applied(state, (event for event in decided if isinstance(event, Act)))
    lines = [*_changed(state, after.plan)]
    found = later_lines(consequences(state, after), after)
    if found:
        lines += [AFFECTS_LATER, *found]
    elif not lines:
        lines.append("only layout or comments changed")
    return PlanChange(tuple(lines), "", command)


def _own(plan: Plan, name: str) -> int | str | None:
    value = plan.own.get(name)
    return UNCOUNTED if value == NOT_COUNTED else value


def _changed(state: State, new: Plan) -> Iterator[str]:
    old = state.plan
    for name in OF_GARMENT:
        yield from _other(name, getattr(old, name), getattr(new, name), 0)
    for name in dict.fromkeys((*old.own, *new.own)):
        if old.own.get(name) != new.own.get(name):
            was, now = _own(old, name), _own(new, name)
            said = "is not given any more" if now is None else f"{now}, which was not given" if was is None else ""
            yield f"your {_named(new, name)}: {said or f'{now}, not {was}'}"
    yield from _other("your gauge", old.gauge, new.gauge, 0)
    size = new.size_index
    yield from _other("the recipe's title", old.recipe.title, new.recipe.title, size)
    yield from _other("what it is for", old.recipe.about, new.recipe.about, size)
    yield from _other("its gauge", old.recipe.gauge, new.recipe.gauge, size)
    yield from _other("its sizes", ", ".join(old.recipe.sizes), ", ".join(new.recipe.sizes), size)
    yield from _mappings("number", old.recipe.number, new.recipe.number, size)
    yield from _mappings("place", old.recipe.place, new.recipe.place, size)
    yield from _other("its tails", ", ".join(old.recipe.tails), ", ".join(new.recipe.tails), size)
    many = len(old.recipe.step), len(new.recipe.step)
    if many[0] != many[1]:
        yield f"steps: {many[1]}, not {many[0]}"
        return
    for index, (before, after) in enumerate(zip(old.recipe.step, new.recipe.step, strict=True)):
        begun = " (started: it stays as it was)" if state.steps[index].work is not None else ""
        for line in _other("", before, after, size):
            yield f"step {index + 1}, {after.title}: {line}{begun}"


def _named(plan: Plan, name: str) -> str:
    number = plan.recipe.number.get(name)
    return number.text if number is not None else name


def _mappings(what: str, old: Mapping[str, Value], new: Mapping[str, Value], size: int) -> Iterator[str]:
    for name in dict.fromkeys((*old, *new)):
        if name not in new:
            yield f"{what} {name}: removed"
        elif name not in old:
            yield f"{what} {name}: added"
        else:
            yield from _other(f"{what} {name}", old[name], new[name], size)


def _other(name: str, old: Value, new: Value, size: int) -> Iterator[str]:
    """Yield a line for every value that is another one, under ``name``; of a list by size that of ``size``."""
    if old == new:
        return
    if is_dataclass(old) and is_dataclass(new) and type(old) is type(new):
        for field in fields(old):
            inner = f"{name}, {_key(field.name)}" if name else _key(field.name)
            yield from _other(inner, getattr(old, field.name), getattr(new, field.name), size)
    elif isinstance(old, Mapping) and isinstance(new, Mapping):
        yield from _mappings(name, old, new, size)
    elif _by_size(old, size) and _by_size(new, size):
        yield from _by_sizes(name, old, new, size)
    elif isinstance(old, tuple) and isinstance(new, tuple) and len(old) == len(new):
        for at, (one, other) in enumerate(zip(old, new, strict=True), 1):
            yield from _other(f"{name} {_called(other) or at}", one, other, size)
    elif isinstance(old, tuple) and isinstance(new, tuple):
        yield f"{name}: {plural(len(new), 'part')}, not {len(old)}"
    else:
        yield f"{name}: {_was(old, new)}"


def _by_size(value: Value, size: int) -> bool:
    return isinstance(value, tuple) and size < len(value) and all(isinstance(one, int) for one in value)


def _by_sizes(name: str, old: Value, new: Value, size: int) -> Iterator[str]:
    assert isinstance(old, tuple)
    assert isinstance(new, tuple)
    if old[size] != new[size]:
        yield f"{name}: {_was(old[size], new[size])}"
    else:
        yield f"{name}: differs in other sizes"


def _called(value: Value) -> str:
    """Return what a part of a step is called, where it has a name."""
    return next((text for key in ("along", "gap", "from_") if isinstance(text := getattr(value, key, None), str)), "")


def _key(name: str) -> str:
    return name.rstrip("_").replace("_", " ")


def _was(old: Value, new: Value) -> str:
    """Say the new value and the old one, as far as they are short enough."""
    was, now = _said(old), _said(new)
    if len(was) > LONGEST or len(now) > LONGEST:
        return "other words"
    return f"{now}, not {was}"


def _said(value: Value) -> str:
    if value is None or value == "":
        return "nothing"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return listing([_said(one) for one in value])
    if is_dataclass(value) and not isinstance(value, type):
        return ", ".join(
            f"{_key(field.name)} {_said(getattr(value, field.name))}"
            for field in fields(value)
            if getattr(value, field.name) is not None
        )
    return str(value)
