"""``finishing recipes``: the recipes that come with the program, or the outline of a recipe file for one size."""

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from finishing_tui import shipped
from finishing_tui.commands.answer import Answer
from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import numbers_for, size_index
from finishing_tui.recipe.reader import BadRecipe, read_recipe

EXAMPLE = """\
Without a FILE the recipes that come with the program are listed. A FILE is read, and told in outline for one size;
when there is anything wrong with it, all of it is told, with its lines, and the exit status is 2.

  finishing recipes my_neckband.toml --size 2
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("files", nargs="*", type=Path, metavar="FILE", help="a recipe file of your own to read")
    parser.add_argument("--size", help="the size to tell the outline for (the first, when it is not given)")


def answer(args: argparse.Namespace) -> Answer:
    """Return the shipped recipes, or outlines; raises ``FinishingError`` with every mistake of every file."""
    if not args.files:
        return _shipped()
    texts, data, wrong = [], {}, []
    for file in args.files:
        try:
            recipe = read_recipe(file)
            size = recipe.sizes[0] if args.size is None else args.size
            index = size_index(recipe, size)
        except FinishingError as error:
            wrong.append(str(error) if isinstance(error, BadRecipe) else f"{file}: {error}")
        else:
            texts.append("\n".join(_outline(recipe, index)))
            data[str(file)] = {**_summary(recipe), "size": size, "numbers": numbers_for(recipe, index)}
    if wrong:
        raise FinishingError("\n".join(wrong))
    return Answer("\n\n".join(texts), data)


def _shipped() -> Answer:
    found = {name: read_recipe(path) for name, path in shipped.recipes().items()}
    texts = []
    for name, recipe in found.items():
        size = f"{_many(len(recipe.step), 'step')}; sizes {', '.join(recipe.sizes)}"
        texts.append("\n  ".join(line for line in (name, recipe.title, size, recipe.about) if line))
    return Answer(
        "\n\n".join(texts) or "No recipes come with this program.",
        {"recipes": [{"name": name, **_summary(recipe)} for name, recipe in found.items()]},
    )


def _summary(recipe: Recipe) -> dict[str, Any]:
    return {
        "title": recipe.title,
        "about": recipe.about,
        "sizes": list(recipe.sizes),
        "steps": [{"do": step.do, "title": step.title} for step in recipe.step],
    }


def _outline(recipe: Recipe, size: int) -> Iterator[str]:
    """Yield the lines of the outline: the numbers of this size, what the places hold at the start, and the steps."""
    numbers = numbers_for(recipe, size)
    yield f"{recipe.title}, size {recipe.sizes[size]} of {', '.join(recipe.sizes)}"
    if recipe.about:
        yield recipe.about
    if numbers:
        yield "\nNumbers"
        yield from (f"  {numbers[name]:>6}  {number.text} ({name})" for name, number in recipe.number.items())
    if recipe.place:
        yield "\nPlaces, with the stitches they hold at the start"
        for name, place in recipe.place.items():
            yield f"  {count_of(place.live, numbers, size):>6}  {place.text}: {place.kind} ({name})"
    yield "\nSteps"
    for number, step in enumerate(recipe.step, 1):
        if step.for_ and recipe.sizes[size] not in step.for_:
            continue
        yield f"  {number:>6}  {step.title} ({step.do})"
        for name, count in step.expect.items():
            yield f"          then {count_of(count, numbers, size)} on the {recipe.place[name].text}"


def _many(many: int, what: str) -> str:
    return f"{many} {what}" if many == 1 else f"{many} {what}s"
