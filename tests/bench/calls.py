"""How many calls of ours a press takes: a figure that no other program on the machine can change.

    python -m tests.bench.calls [GARMENT ...]      teal-cardigan and rust-crew when none is given

Only calls into the program's own files are counted, those of textual and the like are not.
"""

import asyncio
import os
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path
from types import FrameType

import finishing_tui
from finishing_tui.screens.app import FinishingApp
from tests.screens.hands import comes_to, front, settled

PACKAGE = Path(finishing_tui.__file__).parent
DEMOS = PACKAGE.parent / "demo_projects"

BEFORE = {"teal-cardigan": 2600, "rust-crew": 3855}
"""Calls of the second press before an edge was read a stretch at a time, counted by this on commit f18330d."""

CEILING = 1000
"""More calls than this no press may take."""


class Counting:
    """While it is on, every call into the program's own files in this thread is counted, by file."""

    def __init__(self) -> None:
        self.calls: Counter[str] = Counter()

    def __enter__(self) -> Counter[str]:
        sys.setprofile(self._heard)
        return self.calls

    def __exit__(self, *_: object) -> None:
        sys.setprofile(None)

    def _heard(self, frame: FrameType, event: str, _: object) -> None:
        path, caller = frame.f_code.co_filename, frame.f_back
        asked_by_us = caller is None or caller.f_code.co_filename.startswith(str(PACKAGE.parent / "tests"))
        if event == "call" and path.startswith(f"{PACKAGE}{os.sep}") and not asked_by_us:
            self.calls[Path(path).relative_to(PACKAGE).as_posix()] += 1


async def calls_of_second_press(garment: str, shelf: Path) -> Counter[str]:
    """Return the calls of the second press on a demo garment, opened at its needles on 80 x 24, by file."""
    shutil.copytree(DEMOS / garment, shelf / garment)
    app = FinishingApp(shelf, garment=shelf / garment)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        if type(front(app)).__name__ == "ComingBackScreen":
            await pilot.press("escape")
            await comes_to(pilot, lambda: type(front(app)).__name__ == "AtTheNeedles")
        await pilot.press("space")
        await settled(pilot)
        hand = app.in_hand
        assert hand is not None
        known = hand.known
        with Counting() as calls:
            await pilot.press("space")
            await settled(pilot)
        assert hand.known == known + 1, "the press was not taken"
    return calls


def main() -> None:
    """Count, and print."""
    for garment in sys.argv[1:] or BEFORE:
        with tempfile.TemporaryDirectory() as shelf:
            calls = asyncio.run(calls_of_second_press(garment, Path(shelf)))
        before = f", before {BEFORE[garment]:,}" if garment in BEFORE else ""
        print(f"{garment}: {calls.total():,} calls a press{before}, no more than {CEILING:,}")
        for path, many in calls.most_common(10):
            print(f"  {many:5}  {path}")


if __name__ == "__main__":
    main()
