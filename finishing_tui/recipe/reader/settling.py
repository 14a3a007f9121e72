"""Turns a place in the types, as the validation names it, into one of the file."""

from typing import Any

from finishing_tui.recipe.annotations import Annotation, annotation, fields_of
from finishing_tui.recipe.reader.errors import Path


def settle(model: type, value: Any, loc: Path) -> tuple[Path, Annotation | None, Any, type | None] | None:
    """Turn a place as the validation gives it (with the names of union arms in it) into one of the file.

    Returns the path, the type wanted there (``None`` where nothing is), the value that stands there (``None`` if
    nothing does), and the model class whose key is the last part of the path (``None`` where it is not a key of one).
    Returns ``None`` for the complaint of an arm that was not meant: where a list stands and may stand, only its
    entries can be wrong.
    """
    path: Path = ()
    owner: type | None = None
    wanted: Annotation | None = annotation(model)
    rest = list(loc)
    while rest and wanted is not None:
        if wanted.choice is not None:
            wanted = annotation(wanted.choice.choices[str(rest.pop(0))])
        elif len(wanted.arms) > 1:
            listed = next((arm for arm in wanted.arms if arm.item is not None), None)
            nested = next((arm for arm in wanted.arms if len(arm.arms) > 1), None)
            if not isinstance(value, list) or (listed or nested) is None:
                break
            if isinstance(rest[-1], str):
                return None
            rest.pop(0)
            wanted = listed or nested
        elif wanted.arms:
            wanted = wanted.arms[0]
        else:
            part = rest.pop(0)
            path = (*path, part)
            owner = wanted.table
            wanted, value = _within(wanted, part), _at(value, part)
    return path, wanted, value, owner


def _within(wanted: Annotation, part: str | int) -> Annotation | None:
    """Return the type of what stands at ``part`` of the type ``wanted``."""
    if wanted.table is not None:
        field = fields_of(wanted.table).get(str(part))
        return field.annotation if field else None
    return wanted.named or wanted.item


def _at(value: Any, part: str | int) -> Any:
    if isinstance(value, dict):
        return value.get(part)
    if isinstance(value, list) and isinstance(part, int) and part < len(value):
        return value[part]
    return None
