"""A table read from a file as the value it stands for, or what the validation finds wrong with it, in our sentences."""

from collections.abc import Iterable, Mapping
from functools import cache
from typing import TYPE_CHECKING, Any, TypeVar, cast

from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.sentences import sentences
from finishing_tui.recipe.reader.values import as_json

if TYPE_CHECKING:
    from pydantic import TypeAdapter

FoundProblems = Iterable[tuple[Path, str]]
"""What is wrong and where: (path, sentence)."""

_Model = TypeVar("_Model")


@cache
def _adapter(model: Any) -> "TypeAdapter[Any]":
    from pydantic import TypeAdapter  # noqa: PLC0415  (a tenth of a second, and only reading a file needs it)

    return TypeAdapter(model)


def validated(model: type[_Model], data: Mapping[str, Any]) -> tuple[_Model | None, FoundProblems]:
    """Return ``data`` as a value of the class ``model``; or None, and what is wrong."""
    from pydantic import ValidationError  # noqa: PLC0415  (as above)

    try:
        return _adapter(cast("Any", model)).validate_json(as_json(data), strict=True), ()
    except ValidationError as error:
        errors = error.errors(include_url=False, include_context=False, include_input=False)
        return None, sentences(errors, data, model)
