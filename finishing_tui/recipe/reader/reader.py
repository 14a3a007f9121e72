"""The front door of the reader: a file or a text goes in; a recipe, or everything that is wrong with it, comes out."""

from collections.abc import Iterable, Mapping
from itertools import chain, islice
from pathlib import Path as File
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.annotations import Seen
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.formats import FORMAT
from finishing_tui.recipe.kinds import BRITISH
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import numbers_for, unprinted_in
from finishing_tui.recipe.reader import caps, rules, values
from finishing_tui.recipe.reader.errors import BadRecipe, Path, Problem
from finishing_tui.recipe.reader.guards import MOST_BYTES, text_in
from finishing_tui.recipe.reader.links import Links
from finishing_tui.recipe.reader.placing import MOST_TOLD, placed
from finishing_tui.recipe.reader.syntax import table_in
from finishing_tui.recipe.reader.text import tidy
from finishing_tui.recipe.reader.validating import FoundProblems, validated
from finishing_tui.recipe.sums import names_in

_SAID: Mapping[type[OSError], str] = {
    IsADirectoryError: "this is a folder; name a recipe file in it, such as recipe.toml",
    FileNotFoundError: "there is no such file; check its name and folder",
}


def read_recipe(path: File) -> Recipe:
    """Return the recipe in the file ``path``.

    Raises ``BadRecipe`` with everything that is wrong, also when the file cannot be read.
    """
    return read_with_text(path)[0]


def read_with_text(path: File) -> tuple[Recipe, str]:
    """Return the recipe in the file ``path`` and the very text it was read from, line ends made plain.

    The file is read once: whatever is saved to it meanwhile, the two belong together. Raises as ``read_recipe``.
    """
    text = text_in(path, BadRecipe, _SAID)
    return read_text(text, str(path)), text


def read_text(text: str, name: str) -> Recipe:
    """Return the recipe in ``text``; ``name`` is what its file is called in a sentence. Raises ``BadRecipe``."""
    text = tidy(text.replace("\r\n", "\n"))
    if len(text.encode(errors="surrogatepass")) > MOST_BYTES:
        raise BadRecipe(name, [Problem(None, "", f"the recipe is larger than {MOST_BYTES // 1024} kB")])
    data = table_in(text, name, BadRecipe)
    if _newer(data):
        said = f"this recipe is of format {data['format']}, and this program reads up to {FORMAT}; use a newer program"
        raise BadRecipe(name, placed([(("format",), said)], text))
    data = _in_our_words(data)
    long = tuple(islice(caps.too_many(data), MOST_TOLD + 1))
    if long:  # before anything is done again for each of them
        raise BadRecipe(name, placed(long, text))
    recipe, wrong = validated(Recipe, data)
    links = Links(data)
    found = tuple(islice(chain(wrong, links.problems(), rules.problems(links)), MOST_TOLD + 1))
    told = {path for path, _ in found}
    found += tuple(islice((one for one in values.problems(data) if one[0] not in told), MOST_TOLD + 1))
    if recipe is not None and not found:
        found = tuple(islice(_worked_out(recipe, links.met), MOST_TOLD + 1))
    if recipe is None or found:
        raise BadRecipe(name, placed(found, text))
    return recipe


def _newer(data: Mapping[str, Any]) -> bool:
    given = data.get("format")
    return isinstance(given, int) and not isinstance(given, bool) and given > FORMAT


def _in_our_words(data: dict[str, Any]) -> dict[str, Any]:
    """Put this program's words in place of the British ones that it takes too."""
    steps = data.get("step")
    for step in steps if isinstance(steps, list) else ():
        if isinstance(step, dict) and isinstance(step.get("do"), str):
            step["do"] = BRITISH.get(step["do"], step["do"])
    return data


def _worked_out(recipe: Recipe, met: Iterable[Seen]) -> FoundProblems:
    """Yield (path, sentence) for counts that cannot be worked out in some size."""
    unknown = _unknown(recipe)
    counts = [seen for seen in met if seen.mark == "count" and not _names(seen.value, unknown)]
    told: set[Path] = set()
    for size, name in enumerate(recipe.sizes):
        try:
            numbers = numbers_for(recipe, size, dict.fromkeys(unknown, 0))
        except FinishingError as error:
            yield ("number",), f"in size {name}, {error}"
            return
        for seen in counts:
            if seen.path in told or not _is_for(recipe, seen.path, name):
                continue
            value = tuple(seen.value) if isinstance(seen.value, list) else seen.value
            try:
                count_of(value, numbers, size)
            except FinishingError as error:
                told.add(seen.path)
                yield seen.path, f"in size {name}, {error}"


def _unknown(recipe: Recipe) -> set[str]:
    """Return the numbers that are not printed, and those that are worked out from them alone."""
    unknown = set(unprinted_in(recipe))
    before = -1
    while before != len(unknown):
        before = len(unknown)
        unknown |= {
            name
            for name, number in recipe.number.items()
            if number.by_size is None and number.is_ and _names(number.is_, unknown)
        }
    return unknown


def _names(count: Any, unknown: set[str]) -> bool:
    return isinstance(count, str) and not unknown.isdisjoint(names_in(count))


def _is_for(recipe: Recipe, path: Path, size: str) -> bool:
    if path[0] != "step" or not isinstance(path[1], int):
        return True
    sizes = recipe.step[path[1]].for_
    return not sizes or size in sizes
