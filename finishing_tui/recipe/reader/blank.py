"""Finds texts that must be there and are blank: of the right type, and yet they say nothing."""

from collections.abc import Iterable, Iterator

from finishing_tui.recipe.annotations import Seen, fields_of
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.sentences import meaning


def blank(met: Iterable[Seen]) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for every blank text that may not be so in the tables that a walk ``met``."""
    for seen in met:
        if not isinstance(seen.mark, type):
            continue
        for key, field in fields_of(seen.mark).items():
            value = seen.value.get(key)
            may_not = field.type is str and (not field.optional or field.default)
            if may_not and isinstance(value, str) and not value.strip():
                means = meaning(seen.mark, key)
                yield (*seen.path, key), f"{key!r} is blank{f'; say {means}' if means else ''}"
