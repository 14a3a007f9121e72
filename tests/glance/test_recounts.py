"""The labels of the ways to go on after a recount, which must be read at a glance."""

import pytest

from finishing_tui.glance import recount_view
from tests.garment.edges import along


@pytest.mark.parametrize(
    ("spots", "target", "presses", "counted", "label"),
    [
        (40, 30, 15, 15 - 3, "3 of 4 to the end, then 2 more in the first round"),
        (40, 30, 15, 15 + 2, "3 of 4 to the end, then 3 fewer in the first round"),
        (12, 12, 6, 6 - 2, "every row to the end, then 2 more in the first round"),
        (40, 39, 13, 13 - 2, "natural ratio to the end, then 2 more in the first round"),
        (8, 6, 6, 4, "2 more in the first round"),
    ],
)
def test_the_first_round_is_said_in_plain_numbers(
    spots: int, target: int, presses: int, counted: int, label: str
) -> None:
    """The ratio is said in figures where it is easy, more and fewer in words; at the end of the edge no ratio."""
    view = recount_view(along(spots, target).press(presses).state, counted, "loops")
    way = next(way for way in view.ways if way.command.repair == "first-round")
    assert way.label == label


def test_taking_it_all_out_is_said_kindly() -> None:
    """Where nothing before the first loop can stay, it is begun anew; no row 0 is spoken of."""
    view = recount_view(along(40, 30).press(15).state, 2, "loops")
    way = next(way for way in view.ways if way.command.repair == "rip-back")
    assert way.label == "take it all out, begin after row 1"
    assert way.text.startswith("Take it all out and begin this section anew after row 1; then it lies flat: ")
    view = recount_view(along(5, 3).press(1).state, 3, "loops")
    way = next(way for way in view.ways if way.command.repair == "rip-back")
    assert way.label == "take it all out, begin this section anew"
    assert way.text.startswith("Take it all out and begin this section anew; then it lies flat: ")
    assert "row 0" not in view.text
