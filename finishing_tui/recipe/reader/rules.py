"""Checks each table for what must hold between its own keys: one function for each class that has such rules.

They say while a recipe is written what its kinds of step would refuse at the needles, where it would come too late.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

from finishing_tui.craft.counts import span
from finishing_tui.craft.lengths import read_length
from finishing_tui.craft.open_edges import read_rate
from finishing_tui.recipe.annotations import Seen
from finishing_tui.recipe.formats import came_with
from finishing_tui.recipe.kinds.base import RepeatOf, Step
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.work import Shaping, Work
from finishing_tui.recipe.model import BandGauge, Number, Recipe, RecipeGauge
from finishing_tui.recipe.reader import caps
from finishing_tui.recipe.reader.blank import blank
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.links import Links, Mistakes, in_range
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.rules_of_kinds import OF_KINDS, Table, readable, started
from finishing_tui.recipe.reader.sentences import given
from finishing_tui.recipe.sums import MOST

Rule = Callable[[Path, Table, Links], Mistakes]

_BRACED = re.compile(r"\{([^{}\n]{0,60})\}")
_TURNED = ("start end", "far end")
"""The words in braces that turn round for a left-handed knitter."""


def problems(links: Links) -> Mistakes:
    """Yield (path, sentence) for every rule that is broken."""
    yield from caps.unprinted(links.data)
    yield from blank(links.met)
    for seen in links.met:
        yield from _newer_than(links.data.get("format"), seen)
        if isinstance(seen.mark, type):
            for cls in seen.mark.__mro__:
                if cls in _RULES:
                    yield from _RULES[cls](seen.path, seen.value, links)


def _newer_than(form: Any, seen: Seen) -> Mistakes:
    """Yield the keys of a table that came with a later format than ``form``, which the file says it has."""
    if isinstance(seen.mark, type) and isinstance(form, int) and isinstance(seen.value, dict):
        for key in seen.value:
            if (needs := came_with(seen.mark, key)) > form:
                yield (*seen.path, key), f"'{key}' needs format = {needs}, and this recipe has format = {form}"


def _recipe(_path: Path, table: Table, _links: Links) -> Mistakes:
    if table.get("sizes") == []:
        yield ("sizes",), 'there are no sizes; a recipe has at least one, such as sizes = ["one size"]'
    if table.get("step") == []:
        yield ("step",), "there are no steps; a recipe has at least one"
    if isinstance(table.get("sizes"), list):
        before: dict[str, int] = {}
        for place, size in enumerate(table["sizes"]):
            if not isinstance(size, str):
                continue
            if not size.strip() or size != size.strip():
                yield (
                    ("sizes", place),
                    f"{given(size)} cannot name a size; it must not be blank, nor begin or end with a space",
                )
            elif size in before:
                yield ("sizes", place), f"the size {given(size)} is there twice; give every size a name of its own"
            before[size] = place


def _gauge(path: Path, table: Table, _links: Links) -> Mistakes:
    for key in ("stitches", "rows"):
        yield from in_range((*path, key), table.get(key), 1, 1000)
    yield from readable(path, table, "over", read_length)


def _number(path: Path, table: Table, links: Links) -> Mistakes:
    by_size, text = table.get("by_size"), table.get("is")
    if isinstance(by_size, list):
        yield from links.by_size((*path, "by_size"), by_size)
    else:
        yield from in_range((*path, "by_size"), by_size)
    if isinstance(text, str) and text:
        yield from links.sum((*path, "is"), text)
    least, most = table.get("least", 0), table.get("most", MOST)
    if not (_whole(least) and _whole(most)):
        return
    yield from in_range((*path, "least"), least)
    yield from in_range((*path, "most"), most)
    if least > most:
        yield (*path, "least"), f"'least' is {least} and 'most' is {most}; the least cannot be more than the most"
        return
    values = by_size if isinstance(by_size, list) else [by_size]
    for place, value in enumerate(values):
        if _whole(value) and 0 <= value <= MOST and not least <= value <= most:
            where = (*path, "by_size", place) if isinstance(by_size, list) else (*path, "by_size")
            yield (
                where,
                f"{value} is outside of this number's own 'least' and 'most', {span(least, most)}; change one of them",
            )


def _step(path: Path, table: Table, links: Links) -> Mistakes:
    if isinstance(table.get("for"), list) and links.sizes:
        for place, size in enumerate(table["for"]):
            if isinstance(size, str) and size not in links.sizes:
                yield (
                    (*path, "for", place),
                    f"there is no size {given(size)}; {near(size, links.sizes, 'the sizes are')}",
                )
    if isinstance(table.get("say"), str):
        for word in _BRACED.findall(table["say"]):
            if word not in _TURNED:
                right = "only {start end} and {far end} are turned round"
                yield (
                    (*path, "say"),
                    f"'{{{word}}}' is no word that the program knows; {right}, write others without braces",
                )


def _repeat(path: Path, table: Table, _links: Links) -> Mistakes:
    yield from in_range((*path, "of"), table.get("of"), 1)
    yield from in_range((*path, "plus"), table.get("plus"))


def _pick_up_and_knit(path: Path, table: Table, links: Links) -> Mistakes:
    sections = table.get("section")
    if not isinstance(sections, list):
        return
    if not sections:
        yield (*path, "section"), "there are no sections to pick up along; it needs at least one"
    yield from readable(path, table, "ratio", read_rate)
    yield from started(path, table, "length", "new")
    walked = [one for one in sections if isinstance(one, dict) and not {"gap", "from"} & one.keys()]
    for place, section in enumerate(sections):
        long = "spots" in section or section.get("length") or section.get("slope") if section in walked else True
        unsaid = "this section does not say how long it is; give 'spots', 'slope' or 'length'"
        if not long and "stitches" not in section and not (section.get("ratio") or table.get("ratio")):
            yield (*path, "section", place), f"{unsaid}, or for an edge nobody counted its 'stitches' or its 'ratio'"
        elif not long and links.data.get("format") == 1:
            yield (*path, "section", place), f"{unsaid}; an edge nobody counted needs format = 2"
    names = [section.get("along") for section in walked]
    along = [name for name in names if isinstance(name, str)]
    for place, section in enumerate(sections):
        mirrors = section.get("mirrors") if isinstance(section, dict) else None
        if not isinstance(mirrors, str) or not mirrors:
            continue
        where = (*path, "section", place, "mirrors")
        if mirrors == section.get("along"):
            yield where, "a section cannot mirror itself; name the one on the other side"
        elif mirrors not in along:
            yield (
                where,
                f"no section of this step runs along {given(mirrors)}; {near(mirrors, along, 'they run along')}",
            )
        elif along.count(mirrors) > 1:
            yield where, f"two sections of this step run along {given(mirrors)}; give each a name of its own"


def _work(path: Path, table: Table, _links: Links) -> Mistakes:
    if ("rounds" in table) == ("rows" in table):
        both = "both rounds and rows" if "rounds" in table else "neither rounds nor rows"
        yield path, f"this step says {both}; it needs 'rounds' (worked in the round) or 'rows' (worked flat)"


def _shaping(path: Path, table: Table, _links: Links) -> Mistakes:
    if ("round" in table) == ("every" in table):
        yield path, "a shaping needs either 'round' (the one round), or 'every' (with 'from' and 'times')"
    for key in ("round", "every", "from", "times"):
        yield from in_range((*path, key), table.get(key), 1)
    yield from in_range((*path, "change"), table.get("change"), -MOST)
    if table.get("change") == 0 and _whole(table["change"]):
        yield (*path, "change"), "a change of 0 is no shaping; say how many stitches more, or with - fewer, there are"


def _check(path: Path, table: Table, _links: Links) -> Mistakes:
    if not (table.get("items") or table.get("same") or table.get("over_the_head")):
        yield path, "there is nothing to check; give 'items', 'same' or 'over_the_head'"


def _whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


_RULES: Mapping[type, Rule] = {
    Recipe: _recipe,
    RecipeGauge: _gauge,
    BandGauge: _gauge,
    Number: _number,
    Step: _step,
    RepeatOf: _repeat,
    PickUpAndKnit: _pick_up_and_knit,
    Work: _work,
    Shaping: _shaping,
    Check: _check,
    **OF_KINDS,
}
