"""How stored values of older versions become the next version: one small function each.

Each takes the fields as one version stored them, values in them as old as they are, and returns those of the next.
None may ever change, for there are journals that rest on it; and none works out anything but names.
"""

from collections.abc import Mapping
from typing import Any

from finishing_tui.codec import Upcast


def ids_of(*fields: str) -> Upcast:
    """Return what turns the words that ``fields`` held, as people read them, into ids: "BIND OFF" into "bind-off"."""

    def upcast(plain: Mapping[str, Any]) -> Mapping[str, Any]:
        return {**plain, **{field: plain[field].lower().replace(" ", "-") for field in fields if field in plain}}

    return upcast


def labels_of(*fields: str) -> Upcast:
    """Return what turns texts that ``fields`` held into labels that say just them, an empty one into none."""

    def upcast(plain: Mapping[str, Any]) -> Mapping[str, Any]:
        return {**plain, **{field: _as_said(plain[field]) for field in fields if field in plain}}

    return upcast


def finished_3(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return the end of a step with a label, and a list of them for what it was accepted in spite of."""
    found = labels_of("label", "although")(plain)
    return {**found, "although": [one for one in (found.get("although"),) if one is not None]}


def _as_said(text: Any) -> Any:
    return None if text == "" else {"is": "Label", "what": "as-said", "names": [text]}


def recounted_2(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return a count with ids for its answer, verdict and repair; the last two were empty where there was none."""
    found = ids_of("answer", "verdict", "repair")(plain)
    return {**found, "verdict": found.get("verdict") or None, "repair": found.get("repair") or None}


def steps_named(*fields: str) -> Upcast:
    """Return what turns the positions that ``fields`` held, from 0, into the ids of those steps of the recipe.

    No step was ever inserted while positions were stored, so each had its number in the recipe all along.
    """

    def upcast(plain: Mapping[str, Any]) -> Mapping[str, Any]:
        return {**plain, **{field: _named(plain[field]) for field in fields if field in plain}}

    return upcast


def _named(position: Any) -> Any:
    if isinstance(position, list):
        return [_named(one) for one in position]
    return None if position is None else str(position + 1)
