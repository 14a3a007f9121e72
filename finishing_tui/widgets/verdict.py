"""The look of a verdict; the verdict itself is in words."""

_LOOKS = {"lies flat": "$good", "just shows": "$mark"}


def look_of(verdict: str) -> str:
    """Return the color of a verdict: all but the good ones are alarms."""
    return _LOOKS.get(verdict, "$alarm")
