"""Messages between widgets come in no promised order, on a busy machine late: what is seen must not depend on it."""

import asyncio
from pathlib import Path
from random import Random

import pytest
from textual.message import Message
from textual.message_pump import MessagePump

from tests.screens.hands import pressing, shown, still
from tests.screens.scenes import SCENES, SIZES

LATE = 0.3, 0.05
"""How often a message comes a few turns late, and how often some milliseconds."""

MEANT = [
    *("item", "join", "seam", "graft", "check", "round", "value", "bind-off-long", "spot-long"),
    *("recount-lies-flat", "coming-back", "cut-off", "help", "what-if-rhythm", "ledger-below", "numbers-asked"),
    *("rip-back-to", "changed-plan", "shelf-full", "start-number", "start-which-size", "start-audit-clean"),
]
"""One scene of each screen and face; each with a seed of its own."""


async def _seen(name: str, at: Path) -> str:
    scene = SCENES[name]
    at.mkdir()
    app = scene.app(at)
    async with app.run_test(size=SIZES["40x20"]) as pilot:
        await pressing(*scene.keys)(pilot)
        await still(pilot)
        return shown(app)


@pytest.mark.turns(of=6)
@pytest.mark.parametrize("name", MEANT)
async def test_the_picture_is_the_same_however_late_a_message_comes(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """On the smallest screen, where classes, padding and heights come in turns, it ends as in a calm program."""
    calm = await _seen(name, tmp_path / "calm")
    random = Random(MEANT.index(name))  # noqa: S311  (a busy machine, not a secret)
    dispatch = MessagePump._dispatch_message  # noqa: SLF001
    turns, pauses = LATE

    async def late(self: MessagePump, message: Message) -> None:
        if random.random() < turns:
            for _ in range(random.randrange(1, 6)):
                await asyncio.sleep(0)
        if random.random() < pauses:
            await asyncio.sleep(random.choice([0.001, 0.005, 0.02]))
        await dispatch(self, message)

    monkeypatch.setattr(MessagePump, "_dispatch_message", late)
    assert await _seen(name, tmp_path / "late") == calm
