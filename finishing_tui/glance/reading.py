"""A recipe to read through before it is chosen: what it is for, gauge, places, numbers, and every step's words."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.starting import gauge_as_typed
from finishing_tui.glance.glancing import step_lines
from finishing_tui.glance.values import WordLine
from finishing_tui.recipe.counts import NoNumber, count_of
from finishing_tui.recipe.keys import Count
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.model import Number, Place, Recipe
from finishing_tui.recipe.numbers import numbers_for, unprinted_in
from finishing_tui.recipe.sums import BadSum


@dataclass(frozen=True, slots=True)
class Chapter:
    """A heading, and the words under it, each under a small heading of its own where it has one."""

    heading: str
    lines: tuple[WordLine, ...]


@dataclass(frozen=True, slots=True)
class SizeTable:
    """Numbers by size: ``sizes`` head the columns; each row is what a number is, and a figure a size."""

    sizes: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Reading:
    """A recipe to read: what stands before the table of its numbers, the table, and what stands after it."""

    title: str
    aside: str
    before: tuple[Chapter, ...]
    table: SizeTable
    steps: tuple[Chapter, ...]


def reading(recipe: Recipe, hand: Literal["right", "left"] = "right") -> Reading:
    """Return all of a recipe in the order in which it is read."""
    before = [Chapter("what it is for", (WordLine("", recipe.about),))] if recipe.about else []
    before.append(Chapter("gauge", tuple(WordLine("", text) for text in _gauge(recipe))))
    before.append(Chapter("pieces and places", tuple(WordLine("", _place(place)) for place in recipe.place.values())))
    if recipe.tails:
        before.append(Chapter("tails left on the pieces", (WordLine("", listing(recipe.tails)),)))
    asked = [number for number in recipe.number.values() if number.ask]
    if asked:
        before.append(Chapter("what you will be asked", tuple(_asked(number) for number in asked)))
    steps = tuple(_step(recipe, number, step, hand) for number, step in enumerate(recipe.step, 1))
    aside = f"{plural(len(recipe.sizes), 'size')}, {plural(len(recipe.step), 'step')}"
    return Reading(recipe.title, aside, tuple(before), _table(recipe), steps)


def _gauge(recipe: Recipe) -> list[str]:
    if recipe.gauge is None:
        return ["The recipe names none."]
    band = [f"band: {gauge_as_typed(recipe.gauge.band)}"] if recipe.gauge.band is not None else []
    return [f"{gauge_as_typed(recipe.gauge)} (stitches x rows)", *band]


def _place(place: Place) -> str:
    return f"{place.text} ({place.kind})" if place.kind not in place.text else place.text


def _asked(number: Number) -> WordLine:
    return WordLine(number.text, number.how or "Count it on your own garment.")


def _table(recipe: Recipe) -> SizeTable:
    unprinted = unprinted_in(recipe)
    columns: list[list[str]] = []
    for size in range(len(recipe.sizes)):
        known = None
        try:
            known = numbers_for(recipe, size, dict.fromkeys(unprinted, 0))
            held = [str(count_of(place.live, known, size)) for place in recipe.place.values() if place.live != 0]
        except (NoNumber, BadSum):
            held = ["?" for place in recipe.place.values() if place.live != 0]
        figures = [_figure(name, known, unprinted) for name in recipe.number]
        columns.append([*figures, *held])
    texts = [number.text for number in recipe.number.values()]
    texts += [f"on the {place.text} at the start" for place in recipe.place.values() if place.live != 0]
    rows = tuple((text, tuple(column[at] for column in columns)) for at, text in enumerate(texts))
    return SizeTable(recipe.sizes, rows)


def _figure(name: str, known: dict[str, int] | None, unprinted: tuple[str, ...]) -> str:
    return "?" if known is None or name in unprinted else str(known[name])


def _step(recipe: Recipe, number: int, step: AnyStep, hand: str) -> Chapter:
    lines = list(step_lines(step, hand))
    if isinstance(step, Check):
        lines += [WordLine("", f"□ {item}") for item in step.items]
    if step.for_:
        lines.insert(0, WordLine("", f"Only for {'size' if len(step.for_) == 1 else 'sizes'} {listing(step.for_)}."))
    for place, count in step.expect.items():
        lines.append(WordLine(f"then on the {recipe.place[place].text}", _count(recipe, count)))
    return Chapter(f"{number}  {step.title}", tuple(lines))


def _count(recipe: Recipe, count: Count) -> str:
    """Say a count of all sizes: a figure, one a size, the words of a number, or a sum of them as it stands."""
    if isinstance(count, str):
        return recipe.number[count].text if count in recipe.number else count
    return str(count) if isinstance(count, int) else ", ".join(str(one) for one in count)
