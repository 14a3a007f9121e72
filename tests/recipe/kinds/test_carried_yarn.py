"""The working yarn that goes along to another place: two of them never hang from one place."""

from dataclasses import replace

import pytest

from finishing_tui.craft.ledger import YarnEntry
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.move import Move
from tests.recipe.kinds.beginning import after, here, refused

BRINGS = {
    "move": Move(title="x", from_="left", to="right"),
    "bind off": BindOff(title="x", from_="left", keep="right"),
    "bind off some": BindOff(title="x", from_="left", count=3, keep="right"),
    "bind off with new yarn": BindOff(title="x", from_="left", yarn="new", keep="right"),
    "join": Join(title="x", front="left", back="back", keep="right"),
}
"""Steps that take the yarn of the left needle, or the new one joined there, along to the right one."""


def _begun(step: Step, *yarns: str) -> Here:
    start = here({"left": 8, "back": 8, "right": 5})
    new = isinstance(step, BindOff) and step.yarn == "new"
    hang = [place for place in yarns if not (new and place == "left")]
    return replace(start, ledger=start.ledger.enter(*(YarnEntry(place, "joined") for place in hang)))


@pytest.mark.parametrize("name", BRINGS)
def test_it_goes_along(name: str) -> None:
    """Where none hangs at the other place, it hangs there afterwards."""
    step = BRINGS[name]
    assert after(step, _begun(step, "left")).yarns == ("right",)


@pytest.mark.parametrize("name", BRINGS)
def test_to_where_another_hangs_it_is_refused_before_it_begins(name: str) -> None:
    """Not at its last press, where the stitches are worked and nothing can be done about it."""
    step = BRINGS[name]
    assert "working yarn hangs from the right already" in refused(step, _begun(step, "left", "right"))
