"""Garments brought to a state for the screens' tests, a clock that stands still, and what a screen shows as text."""

import re
import shutil
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from textual.pilot import Pilot
from textual.screen import Screen

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import Command, Finish, Press, TakeMeasure
from finishing_tui.garment.hand import InHand
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles

RECIPES = Path(__file__).parent / "recipes"
SEWN = Path(__file__).parent / "sewn"

JOIN, TURN, PICK_UP, COUNT, RIB, BIND_OFF, CHECK, UNMARK, CLOSE, WEAVE, BLOCK = range(1, 12)
"""The steps of the recipe with every face, after the first, counted from 0."""

WAIT = "(wait)"
"""Among keys: wait for everything to settle."""


@dataclass
class Hours:
    """A clock that goes on only when it is told to."""

    minutes: int = 0

    def clock(self) -> Clock:
        """Return it as the program takes it."""
        return Clock(self.now, lambda: self.minutes * 60_000, lambda _: 0.0)

    def now(self) -> datetime:
        """Return the time of day."""
        return datetime(2026, 3, 1, 12 + self.minutes // 60, self.minutes % 60, tzinfo=UTC)


def shelf(at: Path, **changes: str) -> Path:
    """Put the garment with every face on a shelf in ``at``, with keys of its file changed; return its folder."""
    shutil.copytree(RECIPES, at / "shelf")
    folder = at / "shelf" / "every-face"
    text = (folder / "garment.toml").read_text()
    for key, value in changes.items():
        text = "\n".join(line for line in text.split("\n") if not line.startswith(f"{key} ")) + f'{key} = "{value}"\n'
    (folder / "garment.toml").write_text(text)
    return folder


def sewn(at: Path) -> Path:
    """Put the garment with a graft and a seam on a shelf in ``at``; return its folder."""
    shutil.copytree(SEWN, at / "shelf")
    return at / "shelf" / "sewn"


def work_to(folder: Path, step: int, *then: Command) -> None:
    """Work the garment up to ``step`` (counted from 0) without a screen, and do what comes ``then``."""
    hand = InHand.open(folder, clock=Hours().clock())
    while hand.state.current is not None and hand.state.current < step:
        _work_step(hand)
    for command in then:
        refusal = hand.do(command)
        assert refusal is None, refusal
    assert hand.put_down()


def _work_step(hand: InHand) -> None:
    standing = hand.state.standing
    assert standing is not None
    if standing.work is None:
        assert hand.do(Press()) is None
    while (now := hand.state.standing) is not None and now.work is not None and not now.work.complete:
        stage = now.work.stages[now.work.at]
        assert hand.do(TakeMeasure("28") if stage.unit == "value" else Press()) is None
    assert hand.do(Finish()) is None


def app_for(folder: Path, *, looks: str = "", hours: Hours | None = None) -> FinishingApp:
    """Return the program with the garment in ``folder`` open."""
    clock = (hours or Hours()).clock()
    return FinishingApp(folder.parent, garment=folder, looks=looks, clock=clock)


def shown(app: FinishingApp) -> str:
    """Return everything on the screen as text, line by line."""
    return "\n".join(strip.text.rstrip() for strip in app.screen._compositor.render_strips())  # noqa: SLF001


def pressed(key: str) -> list[str]:
    """Return the keys that the foot of a screen names in one: "enter 1-4" is enter, 1 and 4."""
    ends = {word: word.split("-") for word in key.split() if re.fullmatch("[1-9]-[1-9]", word)}
    return [one for word in key.split() for one in ends.get(word, [word])]


def front(app: FinishingApp) -> Screen[Any]:
    """Return the screen in front."""
    return app.screen


def needles(app: FinishingApp) -> AtTheNeedles:
    """Return the screen at the needles, which must be in front."""
    assert isinstance(app.screen, AtTheNeedles), app.screen
    return app.screen


async def settled(pilot: Pilot[None]) -> None:
    """Wait until everything is on the disk, what is read beside the keys is there, and all of it is drawn."""
    app = pilot.app
    assert isinstance(app, FinishingApp)
    while app.takes_keys and app.is_running:
        await pilot.pause(0.01)
    if app.in_hand is not None:
        assert app.in_hand.flush(60)
    await pilot.pause()
    while any(worker.group == "reading" and not worker.is_finished for worker in app.workers):
        await pilot.pause()


async def still(pilot: Pilot[None]) -> None:
    """Wait until the picture stands still: nothing waits to be heard, laid out or drawn, and what is drawn stays so."""
    app = pilot.app
    assert isinstance(app, FinishingApp)
    await settled(pilot)
    same, before = 0, ""
    for _ in range(4000):
        now = shown(app)
        same, before = (same + 1 if now == before and not _is_waiting(app) else 0), now
        if same == 3:
            return
        await pilot.pause(0.005)
    raise AssertionError(f"it never stands still; there is:\n{before}")


def _is_waiting(app: FinishingApp) -> bool:
    """Return whether a message is still to be heard, or anything to be laid out or drawn for this size."""
    nodes = [app, app.screen, *app.screen.query("*")]
    return (
        app.screen.size != app.size
        or any(node.message_queue_size for node in nodes)
        or any(node._layout_required or node._repaint_required for node in nodes[1:])  # noqa: SLF001
        or bool(app.screen._dirty_widgets)  # noqa: SLF001
    )


async def comes_to(pilot: Pilot[None], holds: Callable[[], bool]) -> None:
    """Wait until ``holds``: what a key leads to may come a moment after it, and on a busy machine later still."""
    app = pilot.app
    assert isinstance(app, FinishingApp)
    for _ in range(1000):
        if holds():
            return
        await pilot.pause(0.02)
    raise AssertionError(f"it never came to that; there is:\n{shown(app)}")


def pressing(*keys: str) -> Callable[[Pilot[None]], Awaitable[None]]:
    """Return what presses ``keys`` in order and waits for everything to settle."""

    async def press(pilot: Pilot[None]) -> None:
        for key in keys:
            await (settled(pilot) if key == WAIT else pilot.press(key))
        await settled(pilot)

    return press
