"""How much a recipe may have of anything that the audit does again for each: refused when it is read, by counts.

A pattern prints some ten sizes and never more than about thirty; a recipe of all of its finishing has some forty steps.
These are several times that. What only shows when numbers are worked out, the audit itself counts (``audit.tally``).
"""

from collections.abc import Iterator, Mapping
from typing import Any

from finishing_tui.recipe.reader.errors import Path

MOST_STEPS = 500
"""Steps in a recipe; patterns have up to forty."""
MOST_SIZES = 100
"""Sizes in a recipe; patterns print up to thirty, and most some ten."""
MOST_IN_LIST = 100
"""Entries of any other list: sections of an edge, shapings, tails, things to check."""
MOST_NUMBERS = 200
"""Numbers of a recipe; patterns print up to some twenty for a finish."""
MOST_PLACES = 100
"""Places for live stitches; nobody has as many needles and holders."""
MOST_UNPRINTED = 10
"""Numbers that are not printed: for each the whole recipe is done again, several times over."""
MOST_IN_SUM = 200
"""Characters in a sum."""

_WORDS: Mapping[tuple[str, ...], tuple[int, str, str]] = {
    ("step",): (MOST_STEPS, "steps", "write the rest as a recipe of its own"),
    ("sizes",): (MOST_SIZES, "sizes", "write the rest as a recipe of its own"),
    ("number",): (MOST_NUMBERS, "numbers", "write counts that nobody is asked for where they are used"),
    ("place",): (MOST_PLACES, "places", "use a place again once it is empty"),
}


def too_many(value: Any, path: Path = ()) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for every list and table that is too long, at its first entry too many."""
    if not isinstance(value, list | dict):
        return
    most, what, mend = _WORDS.get(tuple(map(str, path)), (MOST_IN_LIST, "entries in this list", "make it shorter"))
    if len(value) > most and (isinstance(value, list) or len(path) == 1):
        first = most if isinstance(value, list) else list(value)[most]
        yield (*path, first), f"there are {len(value)} {what}; up to {most} can be audited: {mend}"
        return
    for key, item in value.items() if isinstance(value, dict) else enumerate(value):
        yield from too_many(item, (*path, key))


def unprinted(data: Mapping[str, Any]) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for the first number too many of those that are neither printed nor a sum."""
    numbers = data.get("number")
    tables = numbers.items() if isinstance(numbers, dict) else ()
    open_ = [
        name for name, table in tables if isinstance(table, dict) and "by_size" not in table and not table.get("is")
    ]
    if len(open_) > MOST_UNPRINTED:
        said = f"{len(open_)} numbers have neither 'by_size' nor 'is'; up to {MOST_UNPRINTED} can be found: print more"
        yield ("number", open_[MOST_UNPRINTED]), said
