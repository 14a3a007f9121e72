"""What every setting means, as it stands in the source under each field, so that no other text can go stale."""

import ast
import inspect
import textwrap
from collections.abc import Mapping
from functools import cache
from itertools import pairwise
from types import MappingProxyType

from finishing_tui.settings.model import Settings


@cache
def meanings() -> Mapping[str, str]:
    """Return the text under each field of the settings, in their order; empty where the source is not at hand."""
    try:
        tree = ast.parse(textwrap.dedent(inspect.getsource(Settings)))
    except (OSError, TypeError):
        return MappingProxyType({})
    body = tree.body[0].body if isinstance(tree.body[0], ast.ClassDef) else []
    return MappingProxyType(
        {
            field.target.id: " ".join(str(text.value.value).split())
            for field, text in pairwise(body)
            if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name)
            if isinstance(text, ast.Expr) and isinstance(text.value, ast.Constant)
        }
    )
