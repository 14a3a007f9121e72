"""``garment.toml``: what a knitter says of one garment. It is read when it is started; after that the journal rules.

Like a recipe it comes from outside: nothing in it is trusted, and what is wrong with it is said by file, line and key.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path as File
from types import MappingProxyType
from typing import Any, Literal

from finishing_tui import shipped
from finishing_tui.craft.counts import span
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.wearers import UNKNOWN_WEARER, wearer_of
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.sources import FILE, recipe_path
from finishing_tui.garment.starting import UNCOUNTED
from finishing_tui.recipe.annotations import walk
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Written
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.natural import gauges
from finishing_tui.recipe.numbers import NOT_COUNTED, numbers_for, size_index, unprinted_in
from finishing_tui.recipe.reader import BadRecipe, Problem, read_with_text
from finishing_tui.recipe.reader.blank import blank
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.guards import text_in
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.placing import placed
from finishing_tui.recipe.reader.syntax import parsed, table_in
from finishing_tui.recipe.reader.text import tidy
from finishing_tui.recipe.reader.validating import validated
from finishing_tui.recipe.reader.values import problems

FORMAT = 2
"""The newest format of a garment's file that this program reads."""


class BadGarment(BadRecipe):
    """A garment file that cannot be used; ``problems`` are all that is wrong with it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentFile(Written):
    """What stands in a ``garment.toml``."""

    format: Literal[1, 2]
    """The format of the file: 1, or 2 where it says who will wear it."""
    id: str
    """A name that stays the same when the folder moves."""
    title: str
    """What the knitter calls it."""
    about: str = ""
    """A line about it."""
    recipe: str
    """The recipe: the name of a shipped one, or the path of a file, from this folder."""
    size: str
    """The size's name."""
    wearer: str = ""
    """Who will wear it, where the size does not say so: "child", "4 years", "woman"."""
    hand: Literal["right", "left"] = "right"
    """The hand that knits."""
    yarn: str = ""
    """The yarn, in words."""
    needles: str = ""
    """What is worked with, in words."""
    notes: str = ""
    """Anything else."""
    number: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    """The knitter's own numbers, by the recipe's names; "not counted" for rows that nobody counted."""
    gauge: RecipeGauge | None = None
    """The knitter's own gauge."""


def file_text(folder: File) -> str:
    """Return the text of a garment's file. Raises ``BadGarment`` when there is none or it cannot be read."""
    path = folder / FILE
    return tidy(text_in(path, BadGarment, {FileNotFoundError: "there is no garment here; name the folder of one"}))


def read_garment(folder: File) -> tuple[GarmentFile, str]:
    """Return what stands in a garment's file, and its text. Raises ``BadGarment`` with everything that is wrong."""
    path, text = folder / FILE, file_text(folder)
    written = table_in(text, str(path), BadGarment)
    data = _with_uncounted(written)
    garment, wrong = validated(GarmentFile, data)
    form = data.get("format")
    if isinstance(form, int) and form > FORMAT:
        wrong = [(("format",), f"this garment is of format {form}, and this program reads up to {FORMAT}")]
    elif form == 1 and "wearer" in data:
        wrong = [*wrong, (("wearer",), "'wearer' needs format = 2, and this garment has format = 1")]
    elif garment is not None and garment.wearer and wearer_of(garment.wearer) is None:
        wrong = [(("wearer",), UNKNOWN_WEARER)]
    found = [*problems(written), *wrong, *blank(walk(GarmentFile, data))]
    if garment is None or found:
        raise BadGarment(str(path), placed(found, text))
    return garment, text


def _with_uncounted(data: dict[str, Any]) -> dict[str, Any]:
    """Return what stands in the file with ``NOT_COUNTED`` for every number that nobody counted."""
    numbers = data.get("number")
    if not isinstance(numbers, dict):
        return data
    return data | {"number": {name: NOT_COUNTED if one == UNCOUNTED else one for name, one in numbers.items()}}


def plan_of(folder: File) -> Plan:
    """Return the plan of the garment in ``folder``, from its file and the recipe that names.

    Raises ``BadGarment`` or ``BadRecipe`` with everything that is wrong with either.
    """
    garment, text = read_garment(folder)
    recipe, recipe_text = read_with_text(_recipe(folder, garment, text))
    own = _with_implied(folder / FILE, garment, recipe)
    _fits(folder / FILE, text, garment, own, recipe)
    return Plan(
        name=garment.id,
        title=garment.title,
        recipe=recipe,
        source=garment.recipe,
        text=recipe_text,
        file_text=text,
        size=garment.size,
        own=own,
        gauge=garment.gauge,
        hand=garment.hand,
        yarn=garment.yarn,
        needles=garment.needles,
        notes=garment.notes,
        wearer=garment.wearer,
    )


def with_own_kept(changed: Plan, taken: Plan) -> Plan:
    """Return the plan ``changed`` in its files, with what was changed at the needles since it was taken.

    Of a number that stands in the file as it did, what was said of it at the needles goes on; what the file says
    otherwise now counts. Steps that were inserted stay.
    """
    before, after = _numbers_in(taken.file_text), _numbers_in(changed.file_text)
    unprinted = unprinted_in(changed.recipe)
    same = [name for name in changed.recipe.number if before.get(name) == after.get(name) and name not in unprinted]
    own = {name: value for name, value in changed.own.items() if name not in same}
    own |= {name: taken.own[name] for name in same if name in taken.own}
    return replace(changed, own=MappingProxyType(own)).with_those_inserted_in(taken)


def _numbers_in(text: str) -> Mapping[str, int]:
    data = parsed(text)
    numbers = {} if isinstance(data, Problem) else data.get("number", {})
    return numbers if isinstance(numbers, dict) else {}


def _recipe(folder: File, garment: GarmentFile, text: str) -> File:
    """Return the file of the garment's recipe. Raises ``BadGarment`` with the line, and what was perhaps meant."""
    try:
        return recipe_path(folder, garment.recipe)
    except shipped.NotShipped:
        known = near(garment.recipe, shipped.recipes(), "there are")
        said = f"no recipe of this name comes with the program; {known} (the name of a file ends in .toml)"
        raise BadGarment(str(folder / FILE), placed([(("recipe",), said)], text)) from None


def _with_implied(path: File, garment: GarmentFile, recipe: Recipe) -> Mapping[str, int]:
    """Return the knitter's numbers, and what the recipe does not print but only one value makes come out.

    Raises ``BadGarment`` naming a number that nothing tells, so that the knitter gives hers.
    """
    missing = [name for name in unprinted_in(recipe) if name not in garment.number]
    if not missing or garment.size not in recipe.sizes or garment.number.keys() - recipe.number.keys():
        return MappingProxyType(dict(garment.number))
    from finishing_tui.recipe.audit import Inputs, implied  # noqa: PLC0415  (only where a number is not printed)

    size = size_index(recipe, garment.size)
    solved = implied(Inputs(recipe=recipe, size=size, own=garment.number, gauge=garment.gauge, hand=garment.hand))
    told = {finding.where[-1] for finding in solved.findings if finding.level == "implied"}
    found = [
        Problem(
            None, f"number.{name}", f"the recipe does not print {recipe.number[name].text}; count it and give it here"
        )
        for name in missing
        if name not in told
    ]
    if found:
        raise BadGarment(str(path), found)
    return MappingProxyType({**solved.values, **garment.number})


def _fits(path: File, text: str, garment: GarmentFile, own: Mapping[str, int], recipe: Recipe) -> None:
    """Raise ``BadGarment`` unless the size and the numbers are the recipe's, and every place can begin with them."""
    found: list[tuple[Path, str]] = []
    try:
        size = size_index(recipe, garment.size)
    except FinishingError as error:
        found.append((("size",), str(error)))
        size = None
    try:
        gauges(garment.gauge)
    except FinishingError as error:
        found.append((("gauge",), str(error)))
    for name, value in own.items():
        number = recipe.number.get(name)
        if number is None:
            found.append((("number", name), f"the recipe has no such number; {near(name, recipe.number, 'it has')}"))
        elif value == NOT_COUNTED:
            found += _needed(name, recipe)
        elif not number.least <= value <= number.most:
            few = "few" if value < number.least else "many"
            said = f"{number.text}: {value:,} is too {few}; use {span(number.least, number.most, value)}"
            found.append((("number", name), said))
    if not found and size is not None:
        try:
            numbers = numbers_for(recipe, size, own)
            for place in recipe.place.values():
                count_of(place.live, numbers, size)
        except FinishingError as error:
            found.append((("number",), str(error)))
    if found:
        raise BadGarment(str(path), placed(found, text))


def _needed(name: str, recipe: Recipe) -> list[tuple[Path, str]]:
    """Return why a number must be counted, where more than the length of an edge rests on it."""
    from finishing_tui.recipe.only_spots import only_spots  # noqa: PLC0415  (few garments have such a number)

    if name in only_spots(recipe):
        return []
    return [(("number", name), f"{recipe.number[name].text}: counts rest on this number, so count it")]
