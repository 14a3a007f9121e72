"""Garments in real folders, with clocks that tests turn by hand."""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

from finishing_tui.garment.clock import Clock

NOON = datetime(2024, 5, 1, 12, tzinfo=UTC)
"""When every first sitting begins."""


@dataclass
class Watch:
    """A watch that goes on by one second whenever it is looked at."""

    seconds: int = field(default=0)

    def clock(self) -> Clock:
        """Return the clock that a garment in hand reads."""
        return Clock(self._now, self._ticks)

    def _now(self) -> datetime:
        self.seconds += 1
        return NOON + timedelta(seconds=self.seconds)

    def _ticks(self) -> int:
        self.seconds += 1
        return 1000 * self.seconds


def garment_in(folder: Path, recipe: str, size: str = "", *, more: str = "") -> Path:
    """Write a garment with its recipe into ``folder`` and return the folder; ``more``: further lines of its file."""
    folder.mkdir(parents=True, exist_ok=True)
    first = recipe.split("sizes")[1].split('"')[1]
    (folder / "recipe.toml").write_text(recipe, encoding="utf-8")
    (folder / "garment.toml").write_text(
        f"""format = 1
id = "a-garment-of-the-tests"
title = "grey pullover"
recipe = "recipe.toml"
size = "{size or first}"
{more}
""",
        encoding="utf-8",
    )
    return folder
