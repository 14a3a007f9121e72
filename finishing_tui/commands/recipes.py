"""``finishing recipes``: what comes with the program, recipes and techniques, or a recipe file told for one size."""

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from finishing_tui import shipped
from finishing_tui.commands.answer import Answer
from finishing_tui.commands.techniques import technique
from finishing_tui.commands.whole_recipe import whole_recipe
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import numbers_for, size_index
from finishing_tui.recipe.reader import BadRecipe, read_recipe
from finishing_tui.recipe.which_size import which_size

EXAMPLE = """\
Without a FILE, lists the recipes that come with the program. With one, prints an outline for its first size, or every
mistake with its line (exit status 2). With --size, prints the whole recipe in that size.

  finishing recipes my_neckband.toml
  finishing recipes my_neckband.toml --size 2 --hand left

How to work a technique, with a drawing where there is one. Without a NAME, lists the techniques:

  finishing recipes --technique grafting

If you never wrote the size down, find it from the stitches you hold:

  finishing recipes crew-neck --held left_front=20 --held front_held=16

  Size M fits exactly.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("files", nargs="*", type=Path, metavar="FILE", help="a recipe file, or a shipped recipe's name")
    parser.add_argument("--size", help="print it all for this size")
    parser.add_argument("--hand", choices=("right", "left"), default="right", help="the hand that knits, with --size")
    parser.add_argument(
        "--technique",
        nargs="?",
        const="",
        metavar="NAME",
        help="how to work a technique; without a NAME, lists them",
    )
    parser.add_argument(
        "--held",
        action="append",
        default=[],
        metavar="PLACE=COUNT",
        help="stitches a place holds, to find the size (may be repeated for other places)",
    )


def answer(args: argparse.Namespace) -> Answer:
    """Return the shipped recipes, or outlines; raises ``FinishingError`` with every mistake of every file."""
    if args.technique is not None:
        if args.files:
            raise FinishingError("--technique goes with no recipe; ask for the one or the other")
        return technique(args.technique)
    if not args.files:
        return _shipped()
    if args.held:
        return _sized(args.files, args.held)
    texts, data, wrong = [], {}, []
    for file in args.files:
        try:
            recipe = read_recipe(shipped.recipe_file(file))
            size = recipe.sizes[0] if args.size is None else args.size
            index = size_index(recipe, size)
            told = _outline(recipe, index) if args.size is None else whole_recipe(recipe, index, args.hand)
            text = "\n".join(told)
        except FinishingError as error:
            wrong.append(str(error) if isinstance(error, BadRecipe) else f"{file}: {error}")
        else:
            texts.append(text)
            data[str(file)] = {**_summary(recipe), "size": size, "numbers": numbers_for(recipe, index)}
    if wrong:
        raise FinishingError("\n".join(wrong))
    return Answer("\n\n".join(texts), data)


def _sized(files: list[Path], typed: list[str]) -> Answer:
    """Return which size a garment has whose places hold what was counted."""
    if len(files) != 1:
        raise FinishingError("--held goes with one recipe; name just one")
    recipe, held = read_recipe(shipped.recipe_file(files[0])), {}
    for one in typed:
        place, _, count = one.partition("=")
        if not (count.isascii() and count.isdecimal() and len(count) <= 6):
            raise FinishingError(f"{one!r} does not say what a place holds; write it as PLACE=COUNT, such as back=76")
        held[place.strip()] = int(count)
    fits = which_size(recipe, held)
    if not fits:
        raise FinishingError("the numbers of this recipe cannot be worked out in any size")
    first = fits[0]
    near = [fit.size for fit in fits if fit.far == first.far]
    if first.far:
        off = ", ".join(
            f"{place} holds {has}, size {first.size} has {wants}" for place, (has, wants) in first.off.items()
        )
        text = f"No size fits exactly. The nearest is {' or '.join(near)}: {off}."
    else:
        text = f"Size {' or '.join(near)} fits exactly." + (
            " Count another place to tell them apart." if near[1:] else ""
        )
    sizes = {fit.size: {place: list(pair) for place, pair in fit.off.items()} for fit in fits}
    return Answer(text, {"sizes": sizes, "nearest": near})


def _shipped() -> Answer:
    found = {name: read_recipe(path) for name, path in shipped.recipes().items()}
    texts = []
    for name, recipe in found.items():
        size = f"{plural(len(recipe.step), 'step')}; sizes {', '.join(recipe.sizes)}"
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
