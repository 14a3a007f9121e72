"""The demo garments, worked to their end in a real terminal by keys alone."""

import re
import time
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path
from typing import Self

import pytest

from finishing_tui import shipped
from finishing_tui.commands.record import read_record
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.labels import Label
from finishing_tui.garment.shelf import take_copy
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due
from finishing_tui.garment.walk import strays
from finishing_tui.garment.work import Progress, Reached, StepWork
from finishing_tui.recipe.stage import Stage
from finishing_tui.record import as_data
from tests.plain.making import garment
from tests.terminal.terminal import DEADLINE, Terminal

LONG = 20
"""A section of at least so many spots is long enough for everything that can happen on the way."""
BATCH = 60
"""So many presses are sent at one go."""


class Hands:
    """A knitter at a terminal who looks at the journal from outside, as a second window would."""

    def __init__(self, terminal: Terminal, folder: Path) -> None:
        self.terminal = terminal
        self.index = 0
        self.missing = ""
        self._looking = InHand.open(folder, look=True)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._looking.close()

    @property
    def state(self) -> State:
        """The garment as its journal has it."""
        self._looking.hear(self._looking.news(), self._looking.known)
        return self._looking.state

    @property
    def work(self) -> StepWork:
        """The step under the needles."""
        standing = self.state.standing
        assert standing is not None
        assert standing.work is not None
        return standing.work

    @property
    def section(self) -> tuple[Stage, Progress]:
        """The stage under way and its progress."""
        work = self.work
        return work.stages[work.at], work.progress[work.at]

    def keys(self, *keys: str, until: Callable[[State], bool]) -> None:
        """Type ``keys``, and wait until the journal says that they were carried out."""
        self.terminal.press(*keys)
        end = time.monotonic() + DEADLINE
        while not until(self.state):
            self.terminal.read(0.05)
            if time.monotonic() > end:
                raise AssertionError(f"{keys} did not lead there; there is:\n{self.terminal.text}")

    def mark(self, state: State) -> Reached:
        """Return the mark of the stage that is under way here, in another state of the same step."""
        standing = state.standing
        assert standing is not None
        assert standing.work is not None
        return standing.work.progress[self.index].mark

    def to_the_end(self) -> set[str]:
        """Work the garment to its end; on the first long edge do everything that can be done there."""
        did: set[str] = set()
        while (state := self.state).current is not None:
            standing = state.standing
            assert standing is not None
            if standing.work is None:
                self.keys("space", until=lambda now: now.standing is not None and now.standing.work is not None)
            elif standing.work.complete:
                self.finish(state)
            else:
                self.index = standing.work.at
                stage = standing.work.stages[self.index]
                if stage.unit == "spot" and stage.units >= LONG and not did:
                    self.everything_on_the_way(stage)
                    did = {"stray", "undo", "recounts", "rip back"}
                self.to_the_end_of(stage)
        return did

    def finish(self, state: State) -> None:
        """Say that the step is done; a count that is due is right, and what is asked again is meant."""
        if due(state) is not None:
            self.keys("enter", until=lambda now: due(now) is None)
        self.terminal.press("enter")
        end = time.monotonic() + DEADLINE
        while self.state.current == state.current:
            self.terminal.read(0.2)
            if "enter again" in self.terminal.text.lower() and self.state.current == state.current:
                self.terminal.press("enter")
                self.terminal.read(0.5)
            assert time.monotonic() < end, self.terminal.text

    def to_the_end_of(self, stage: Stage) -> None:
        """Press through what is left of a stage, or type what is asked for."""
        if stage.act == "count":
            self.count(stage)
            return
        if stage.unit == "value":
            self.keys("4", "8", "enter", until=lambda now: self.mark(now).units == 1)
            return
        while (mark := self.mark(self.state)).units < stage.units:
            left = (
                self.work.stages[self.index].target - mark.loops if stage.unit == "spot" else stage.units - mark.units
            )
            many = min(max(left, 1), BATCH)
            self.keys(
                *["space"] * many,
                until=lambda now, mark=mark, many=many: _went_on(self.mark(now), mark, many, stage),  # type: ignore[misc]
            )

    def count(self, stage: Stage) -> None:
        """Type what the ledger says is there; but of the first ``missing`` place say that it holds one fewer.

        What that changes later is then named, and it is to be put right in the first round of the band.
        """
        held = self.state.ledger.on(stage.place)
        if stage.place != self.missing:
            self.keys(*str(held), "enter", until=lambda now: self.mark(now).units >= stage.units)
            return
        self.missing = ""
        self.terminal.press(*str(held - 1), "enter")
        self.terminal.wait_for("again")
        self.terminal.press(*str(held - 1), "enter")
        self.terminal.wait_for("Nothing found")
        self.terminal.press("2")
        self.terminal.wait_for("See every way")
        self.terminal.press("2")
        # A screen may be read while it is still being drawn, so it is waited for what is to be read off it.
        repair = re.compile(r"(\d)  Increase 1 in round 1")
        text = self.terminal.wait_for(lambda text: repair.search(text) is not None)
        way = repair.search(text)
        assert way is not None, text
        self.keys(way[1], until=lambda now: now.top_label == Label("first-round-changed"))

    def everything_on_the_way(self, stage: Stage) -> None:
        """Stray, take back and put back, recount in each of three ways, and rip back."""
        self.keys(*["space"] * 6, until=lambda now: self.mark(now).loops == 6)
        self.keys("x", until=lambda _: len(strays(self.section[1])) == 1)
        after = self.state
        self.keys("backspace", "backspace", until=lambda _: not strays(self.section[1]))
        self.keys("backspace", "backspace", until=lambda now: self.mark(now).loops == 4)
        self.keys("u", "u", "u", until=lambda now: (now.ledger, now.steps) == (after.ledger, after.steps))
        self.recount(self.half(stage) - 1, "3")
        self.recount(self.mark(self.state).loops + 1, "2")
        spot = self.mark(self.state).units
        self.recount(self.mark(self.state).loops - 1, "4", *str(stage.units - spot), "enter")
        spot = self.mark(self.state).units - 3
        self.keys("t", "enter", *str(spot), "enter", until=lambda now: self.mark(now).units == spot)

    def half(self, stage: Stage) -> int:
        """Press to the half mark, and return the loops there."""
        while (mark := self.mark(self.state)).units < stage.halts[0]:
            self.keys("space", until=lambda now, mark=mark: self.mark(now).loops > mark.loops)  # type: ignore[misc]
        return mark.loops

    def recount(self, counted: int, *answer: str) -> None:
        """Type a count that differs from the presses, twice; say what it is put down to, and take the first way."""
        before = self.section[1].confirmed
        self.terminal.press(*str(counted), "enter")
        self.terminal.wait_for("again")
        self.terminal.press(*str(counted), "enter")
        self.terminal.wait_for("missed a press")
        self.terminal.press(*answer)
        self.terminal.wait_for(lambda text: "missed a press" not in text)
        self.keys("enter", until=lambda _: self.section[1].confirmed != before)


def _went_on(now: Reached, before: Reached, presses: int, stage: Stage) -> bool:
    if stage.unit == "spot":
        return now.loops >= before.loops + presses or now.units >= stage.units
    return now.units >= before.units + presses


@pytest.mark.turns(of=2)
@pytest.mark.parametrize(("name", "missing"), [("slate-crew", "front_held"), ("slipover-armholes", "")])
def test_worked_to_its_end_by_keys_alone(name: str, missing: str, tmp_path: Path) -> None:
    """With a deviation, things taken back and put back, three recounts and a rip-back: the ledger ends holding nothing.

    The crew neck's front holder has one stitch fewer than the recipe says. The record tells of all of it, and of what
    was changed and why.
    """
    shelf = tmp_path / "shelf"
    if name in shipped.demos():
        folder = take_copy(shipped.demo(name), shelf)
    else:
        shelf.mkdir()
        folder = garment(shelf / name, name, "M")
    with Terminal("work", str(folder), shelf=folder.parent) as terminal, ExitStack() as stack:
        terminal.wait_for("step 1 of")
        hands = stack.enter_context(Hands(terminal, folder))
        hands.missing = missing
        assert hands.to_the_end() == {"stray", "undo", "recounts", "rip back"}
        terminal.wait_for("Finished")
        assert hands.state.ledger.empty
        terminal.press("q")
        terminal.wait_for("Where did you leave it?")
        terminal.press("enter")
        terminal.wait_for("The shelf")
        terminal.press("q")
        assert terminal.wait_for_end() == 0
    record = as_data(read_record(folder))
    assert record["finished"]
    assert {count["answer"] for count in record["counts"]} >= {"presses", "loops", "rows left"}
    assert record["deviations"]
    assert record["ripped_back"]
    assert record["changes"] or not missing
