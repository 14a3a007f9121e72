"""The look of a verdict; the verdict itself is in words."""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.craft.judging import Verdict

_LOOKS: Mapping[Verdict, str] = MappingProxyType({Verdict.LIES_FLAT: "$good", Verdict.JUST_SHOWS: "$mark"})


def look_of(verdict: Verdict) -> str:
    """Return the color of a verdict: all but the good ones are alarms."""
    return _LOOKS.get(verdict, "$alarm")
