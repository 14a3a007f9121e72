"""What a change has led to, in lines: what rang, the step or the part that is come to, and other steps that changed."""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.glance.rings import Ring
from finishing_tui.glance.values import Glance
from finishing_tui.plain import telling

_RINGS: Mapping[Ring, str] = MappingProxyType(
    {"run": "end of a run.", "recount": "halfway.", "target": "this part is complete."}
)


def changes(was: Glance, seen: Glance, rang: Ring | None) -> list[str]:
    """Return what is to be said after ``was`` has become ``seen``, where the bell would ring for ``rang``."""
    lines = [_RINGS[rang]] if rang else []
    here = {was.step, seen.step}
    for before, line in zip(was.list, seen.list, strict=True):
        if before.status != line.status and line.number not in here:
            lines += telling.steps((line,))
    if seen.step != was.step:
        return [*lines, *telling.beginning(seen), *telling.standing(seen.face)]
    if seen.part != was.part:
        lines += telling.part(seen)
    return [*lines, *telling.standing(seen.face)]
