"""What every part of the recipe model shares: how its fields are read from a file, and what its names refer to.

It exists so that the kinds of step and the recipe that holds them can both build on it without a circle. The marks on
``Count``, ``PlaceName`` and ``TailName`` let ``recipe.links`` check every reference without knowing the kinds.
"""

from collections.abc import Mapping
from typing import Annotated, Any

Count = Annotated[int | str | tuple[int, ...], "count"]
"""Wherever a count stands: a whole number, a number's name or a sum in quotes, or a list by size."""

PlaceName = Annotated[str, "place"]
"""The name of one of the recipe's places."""

TailName = Annotated[str, "tail"]
"""The name of a tail: made by one step and used by others."""


def _key(name: str) -> str:
    return name.rstrip("_")


READ: Mapping[str, Any] = {"extra": "forbid", "alias_generator": _key}
"""For ``__pydantic_config__``: unknown keys are refused; ``from_`` is written ``from`` in a file."""
