"""The job with an edge nobody counted, by keys alone in a real terminal, whatever rows the edge really has."""

import re
from contextlib import ExitStack
from pathlib import Path

import pytest

from finishing_tui.commands.record import read_record
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due
from finishing_tui.garment.walk import done_on
from finishing_tui.recipe.stage import Stage
from finishing_tui.record import as_data
from tests.plain.making import garment
from tests.terminal.terminal import Terminal
from tests.terminal.test_whole_garments import Hands

PANEL, COUNTED, AGAIN = 24, 15, 23
"""The stitches of a panel, and at how many of them she counts."""
LEFT, MARK, RIGHT = 1, 2, 3
"""The parts of the step that picks up both panels: after the first corner, and before the second."""

_RE_SPACE = re.compile(r"(\d)  Re-space the rest")


class Knitter(Hands):
    """A knitter whose panel edges have ``rows`` rows, which she counts neither before nor after."""

    rows = 0

    def everything_on_the_way(self, _: Stage) -> None:
        """Pick up 15, count ahead from there, re-space, count at 23, and go on past the marker."""
        self.picks(COUNTED)
        self.terminal.press(*str(COUNTED), "enter")
        self.terminal.wait_for("Where are you on this edge?")
        needed = 13  # what she finds by counting ahead: nine more take thirteen rows at 2 of every 3
        self.terminal.press("1")
        self.terminal.wait_for("left over once you have 24")
        self.terminal.press(*str(self.rows - self.mark(self.state).units - needed), "enter")
        text = self.terminal.wait_for(lambda text: _RE_SPACE.search(text) is not None)
        way = _RE_SPACE.search(text)
        assert way is not None
        assert "will pucker" not in text
        self.keys(way[1], until=lambda now: self.known(now) == self.rows)
        self.picks(AGAIN)
        self.keys(*str(AGAIN), "enter", until=lambda _: self.section[1].confirmed[0] == AGAIN)
        self.keys("space", until=lambda now: self.mark(now).loops == PANEL)
        if due(self.state) is not None:
            self.keys("enter", until=lambda now: due(now) is None)
        self.terminal.wait_for("center join")
        self.keys("space", until=lambda now: bool(now.ledger.markers))
        assert "will pucker" not in self.terminal.wait_for("as left panel edge was worked")

    def picks(self, loops: int) -> None:
        """Press until so many are picked up."""
        many = loops - self.mark(self.state).loops
        self.keys(*["space"] * many, until=lambda now: self.mark(now).loops == loops)

    def known(self, state: State) -> int:
        """Return how many rows the section has, 0 while nobody knows."""
        assert state.standing is not None
        assert state.standing.work is not None
        stage = state.standing.work.stages[self.index]
        return 0 if stage.uncounted else stage.units


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("rows", [36, 37, 38])
def test_the_whole_job_by_keys_alone(rows: int, tmp_path: Path) -> None:
    """48 stitches and an empty ledger, nothing puckers, and the second panel mirrors the first, row by row."""
    folder = garment(tmp_path / "vest", "long-front-vest", "XL")
    with Terminal("work", str(folder), shelf=folder.parent, columns=80, lines=24) as terminal, ExitStack() as stack:
        terminal.wait_for("step 1 of")
        hands = stack.enter_context(Knitter(terminal, folder))
        hands.rows = rows
        hands.to_the_end()
        assert "will pucker" not in terminal.wait_for("Finished")
        assert hands.state.ledger.empty
        work = next(one.work for one in hands.state.steps if one.work and len(one.work.stages) > RIGHT)
        left, right = (done_on(work.progress[part], 0, work.stages[part].units) for part in (LEFT, RIGHT))
        assert (len(left), sum(left), left) == (rows, PANEL, right[::-1])
        assert left[0] == left[-1] == 1, "the corners are picked"
    record = as_data(read_record(folder))
    assert record["finished"]
    assert [one["counted"] for one in record["counts"] if one["counted"] in {COUNTED, AGAIN, 2 * PANEL}]
