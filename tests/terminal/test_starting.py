"""A garment started from nothing in a real terminal, by keys alone, put down and picked up again."""

from pathlib import Path

from finishing_tui import shipped
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.shelf import folders_on
from tests.terminal.terminal import Terminal

CHOSEN = ["down"] * list(shipped.recipe_titles()).index("crew-neck")

STARTED: tuple[tuple[list[str], str], ...] = (
    (["r"], "what it is for"),
    (["escape"], "1-9 choose"),
    (["enter"], "Which size?"),
    (["1"], "Rows along one side"),
    (["2", "6", "enter"], "Your gauge?"),
    ([*"21 x 29 over 4 in", "enter"], "The gauge of the band?"),
    (["enter"], "Right- or left-handed?"),
    (["enter"], "Its name?"),
    ([*"slate", "enter"], "The yarn?"),
    (["enter"], "The needles?"),
    (["enter"], "start it"),
    (["enter"], "step 1 of 29"),
    (["space", "space"], "▸ Two needles"),
    (["q"], "Where did you leave it?"),
    (["enter"], "slate · size 2 years"),
    ([], "step 1 of 29"),
    (["1"], "You were at"),
)
"""The keys from the recipe that was moved to until the garment is picked up again, and what each leads to."""


def test_from_an_empty_shelf_to_the_first_stitches_and_back(tmp_path: Path) -> None:
    """Choose, read, size, number, gauge, audit, first presses, put down, pick up: the journal has all of it."""
    shelf = tmp_path / "shelf"
    with Terminal(shelf=shelf) as terminal:
        terminal.wait_for("Start one of your own")
        terminal.press("s")
        terminal.wait_for("Crew neck on held shoulders")
        terminal.press(*CHOSEN)
        terminal.wait_for(
            lambda text: any(
                "▸" in line and "Crew neck on held" in line and "sizes" in line for line in text.split("\n")
            )
        )
        for keys, led_to in STARTED:
            terminal.press(*keys)
            terminal.wait_for(led_to)
        terminal.press("\x11")  # ctrl+q
        assert terminal.wait_for_end() == 0
    (folder,) = folders_on(shelf)
    hand = InHand.open(folder, look=True)
    standing = hand.state.standing
    assert standing is not None
    assert standing.work is not None
    assert standing.work.progress[0].mark.units == 2
    assert dict(hand.state.plan.own) == {"front_rows": 26}
    assert hand.state.plan.gauge is not None
    assert hand.state.plan.gauge.over == "4 in"
    assert len(hand.state.sittings) == 2
    hand.close()
