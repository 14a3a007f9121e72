"""What every part of the recipe model shares: how its fields are read from a file, and what its names refer to.

It exists so that the kinds of step and the recipe that holds them can both build on it without a circle. The marks on
``Count``, ``PlaceName`` and the other names let ``recipe.reader`` check every reference without knowing the kinds.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, ClassVar

Count = Annotated[int | str | tuple[int, ...], "count"]
"""Wherever a count stands: a whole number, a number's name or a sum in quotes, or a list by size."""

PlaceName = Annotated[str, "place"]
"""The name of one of the recipe's places."""

TailName = Annotated[str, "tail"]
"""The name of a tail: made by one step and used by others."""

MarkerName = Annotated[str, "marker"]
"""The name of a marker: it goes in at one step and comes out at another."""

HoleName = Annotated[str, "hole"]
"""The name of a hole: made by a gap, closed by another step."""


def _key(name: str) -> str:
    return name.rstrip("_")


class Written:
    """What a person writes in a file: unknown keys are refused, and ``from_`` is written ``from``."""

    __slots__ = ()
    __pydantic_config__: ClassVar = {"extra": "forbid", "alias_generator": _key}


@dataclass(frozen=True, slots=True, eq=False)
class OneOf:
    """Beside a union of dataclasses: how to tell from a table which of them is meant.

    ``key``: the key whose value is the name of one of the ``choices`` ("do"). Where it is empty, the choice is the
    first whose name is itself a key of the table. Only the errors of the choice that was meant are worth telling.
    """

    choices: Mapping[str, type]
    key: str = ""

    def told(self, table: Any) -> str | None:
        """Return the name of the choice that ``table`` is, or ``None`` when it cannot be told or is no table."""
        if not isinstance(table, Mapping):
            return None
        if self.key:
            name = table.get(self.key)
            return name if isinstance(name, str) and name in self.choices else None
        return next((name for name in self.choices if name in table), None)

    def meant(self, table: Any) -> type | None:
        """Return the class of the choice that ``table`` is, or ``None``; it may be a value of the model itself."""
        if type(table) in self.choices.values():
            return type(table)
        name = self.told(table)
        return None if name is None else self.choices[name]

    def __get_pydantic_core_schema__(self, _source: Any, handler: Any) -> Any:
        """Answer pydantic, which asks this of what stands in ``Annotated``; nobody else calls it."""
        from pydantic_core import core_schema  # noqa: PLC0415  (only when a file is read: the model itself needs none)

        choices = {name: handler.generate_schema(choice) for name, choice in self.choices.items()}
        return core_schema.tagged_union_schema(choices, discriminator=self.key or self.told)
