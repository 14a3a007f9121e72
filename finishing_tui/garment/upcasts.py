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


def recounted_2(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return a count with ids for its answer, verdict and repair; the last two were empty where there was none."""
    found = ids_of("answer", "verdict", "repair")(plain)
    return {**found, "verdict": found.get("verdict") or None, "repair": found.get("repair") or None}
