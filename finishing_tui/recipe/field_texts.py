"""The text under each field of a class, as it stands in the source, so that no other text can go stale."""

import ast
import inspect
import textwrap
from collections.abc import Mapping
from functools import cache
from itertools import pairwise
from types import MappingProxyType


@cache
def field_texts(cls: type) -> Mapping[str, str]:
    """Return the text under each field of a class and of those it extends, by the key that a file has for it, in order.

    Each is on one line. A field without a text has an empty one; where the source is not at hand there are none.
    """
    found: dict[str, str] = {}
    for base in reversed(cls.__mro__[:-1]):
        try:
            tree = ast.parse(textwrap.dedent(inspect.getsource(base)))
        except (OSError, TypeError):
            continue
        body = tree.body[0].body if isinstance(tree.body[0], ast.ClassDef) else []
        for field, text in pairwise(body):
            if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
                said = text.value.value if isinstance(text, ast.Expr) and isinstance(text.value, ast.Constant) else ""
                found[field.target.id.rstrip("_")] = " ".join(str(said).split())
    return MappingProxyType(found)
