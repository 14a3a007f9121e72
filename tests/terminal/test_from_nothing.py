"""From an empty shelf to a finished garment in a real terminal, by keys alone, with another one under way beside it."""

from contextlib import ExitStack
from pathlib import Path

from finishing_tui.commands.record import read_record
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.shelf import folders_on
from finishing_tui.garment.state import State
from finishing_tui.record import as_data
from tests.terminal.terminal import Terminal
from tests.terminal.test_whole_garments import Hands

RECIPES_BY_NUMBER = {"Baby jacket with a buttoned shoulder": "3", "Blanket border with mitered corners": "4"}
"""Two of the shipped recipes, by the key that chooses them: they stand by their titles."""


def start(terminal: Terminal, recipe: str, name: str) -> None:
    """Start a garment from the shelf: its first size, the recipe's numbers and gauge, ``name``, and all else left."""
    terminal.press("s")
    terminal.wait_for(lambda text: any(recipe in line and "sizes" in line for line in text.split("\n")))  # it was read
    terminal.press(RECIPES_BY_NUMBER[recipe])
    terminal.wait_for("Which size?")
    at = 1
    while "Its name?" not in terminal.text:
        at += 1
        terminal.press("enter")
        terminal.wait_for(f"question {at} of")
        quiet(terminal)
    terminal.press(*name, "enter")  # what stands there is marked, so that the first key takes its place
    terminal.wait_for("The yarn?")
    terminal.press("enter")
    terminal.wait_for("The needles?")
    terminal.press("enter")
    terminal.wait_for("enter start it")
    terminal.press("enter")
    terminal.wait_for(lambda text: text.lstrip().startswith(f"{name} ·") and "step 1 of" in text)


def quiet(terminal: Terminal) -> None:
    """Wait until all of a question is drawn, and not only its first line."""
    while terminal.read(0.5):
        pass


def put_down(terminal: Terminal, where: str) -> None:
    """Put the garment down with a line about where it is."""
    terminal.press("q")
    terminal.press(*where, "enter")  # at once: they wait until the line is there
    terminal.wait_for("The shelf")


def come_back(terminal: Terminal, where: str) -> None:
    """Pick up the garment at the caret, which says where it was left, and go on."""
    terminal.press("enter")
    terminal.wait_for(lambda text: f"You wrote: {where}" in text and "You were at" in text)  # the shelf says it too
    terminal.press("escape")
    terminal.wait_for(lambda text: "? help" in text and "You were at" not in text)


def state_of(folder: Path) -> State:
    """Return a garment as its journal has it."""
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state


def test_from_an_empty_shelf_to_the_end_put_down_twice_with_another_one_beside_it(tmp_path: Path) -> None:
    """Started, put down, another one started and put down, come back to twice, finished: each keeps to its own."""
    shelf = tmp_path / "shelf"
    with Terminal(shelf=shelf) as terminal, ExitStack() as stack:
        terminal.wait_for("Practice on a demo garment")
        start(terminal, "Baby jacket with a buttoned shoulder", "plum jacket")
        (jacket,) = folders_on(shelf)
        hands = stack.enter_context(Hands(terminal, jacket))
        hands.keys("space", "space", until=lambda now: now.top > 0 and hands.mark(now).units == 2)
        put_down(terminal, "in the green bag")

        start(terminal, "Blanket border with mitered corners", "grey blanket")
        (blanket,) = set(folders_on(shelf)) - {jacket}
        others = stack.enter_context(Hands(terminal, blanket))
        others.keys("space", until=lambda now: others.mark(now).units == 1)
        put_down(terminal, "on the chair")
        beside = state_of(blanket)
        assert state_of(jacket).sittings[0].where == "in the green bag"

        terminal.press("down")
        come_back(terminal, "in the green bag")
        assert hands.mark(hands.state).units == 2
        hands.keys("space", until=lambda now: hands.mark(now).units == 3)
        put_down(terminal, "after the third")
        come_back(terminal, "after the third")

        hands.to_the_end()
        terminal.wait_for("Finished")
        put_down(terminal, "")
        text = terminal.wait_for(lambda text: "finished" in text and "opening" not in text)
        assert "2 garments in progress" in text
        terminal.press("q")
        assert terminal.wait_for_end() == 0
    assert state_of(blanket) == beside
    done = state_of(jacket)
    assert done.ledger.empty
    assert [sitting.where for sitting in done.sittings] == ["in the green bag", "after the third", ""]
    assert all(sitting.ended for sitting in done.sittings)
    record = as_data(read_record(jacket))
    assert record["finished"]
    assert record["title"] == "plum jacket"
