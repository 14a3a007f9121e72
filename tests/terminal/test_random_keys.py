"""A thousand keys at random in a real terminal: what the screen shows is what the journal says."""

from datetime import UTC, datetime
from pathlib import Path
from random import Random

import pytest

from finishing_tui import shipped
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.shelf import take_copy
from finishing_tui.garment.state import State
from finishing_tui.glance import glance
from tests.terminal.terminal import Terminal

KEYS = 250
"""So many keys for each seed: a thousand in all."""

SEEDS = {"slate-crew": 1, "moss-vest": 22, "rust-crew": 333, "teal-cardigan": 4444}
"""The demo garment that is worked, and the seed of what is done to it."""

WANTED = (
    *("space",) * 12,
    *("enter",) * 6,
    *("x", "x", "backspace", "backspace", "u", "r", "t", "p", "m", "n", "o", "h", "l", "w", "?", "left", "right"),
    *("up", "down", "escape", "escape", "q", "1", "2", "3", *"0123456789"),
)
"""Keys that do something somewhere, in the weights of hands that mostly work."""

OTHERS = (
    *"abcdefgijkvyzABCQXZ.,-+*/[]{}()<>|\\'\"%$&=~^äß漢",
    *("\t", "\x1b[Z", "\x1b[H", "\x1b[F", "\x1b[5~", "\x1b[6~", "\x1b[3~", "\x1b[2~", "\x1bOP", "\x1b[15~", "\x1b[24~"),
    *("\x00", "\x01", "\x04", "\x05", "\x0b", "\x0c", "\x0e", "\x10", "\x15", "\x16", "\x17", "\x18", "\x1a", "\x1c"),
    *("\x1bx", "\x1b\r", "\x1b[1;5C", "\x1b[1;2A", "\x1b[200~14\r15\n\n16\x1b[201~", "\x1b[200~q\x1b[201~"),
    *("\x1b[?1;2c", "\x1b[I", "\x1b[O", "\x1b[<0;10;10M", "\x1b[12;40R", "\x03", "\x11"),
)
"""Keys that mostly do nothing, a paste of several lines, and what terminals send by themselves."""

SIZES = ((80, 24), (40, 20), (39, 10), (160, 50))
"""Other sizes that the window is dragged to, one of them too small."""


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("name", SEEDS)
def test_random_keys(name: str, tmp_path: Path) -> None:
    """The program never ends but when it is left, and then well; killed and taken up, all is as the screen had it."""
    dice = Random(SEEDS[name])  # noqa: S311  (a hand, not a secret)
    shelf = tmp_path / "shelf"
    folder = take_copy(shipped.demo(name), shelf)
    pressed = 0
    while pressed < KEYS:
        with Terminal("work", str(folder), shelf=shelf) as terminal:
            ready(terminal)
            while pressed < KEYS and terminal.status is None:
                pressed += play(terminal, dice)
            if terminal.status is not None:
                assert terminal.status == 0, (terminal.status, terminal.text)
                continue
            terminal.resize(100, 30)
            if not leads_back(terminal):
                pressed -= 25  # it was put down last: a few more, until there is something to compare
                continue
            shown = settled(terminal)
            terminal.kill()
            terminal.wait_for_end()
            compare(shown, folder, shelf)
    assert sum(state_of(folder).ledger.stitches.values()) == 0


def play(terminal: Terminal, dice: Random) -> int:
    """Do something at random; return how many keys that were."""
    if dice.random() < 0.03:
        terminal.resize(*dice.choice(SIZES))
        return drained(terminal, 0)
    if dice.random() < 0.1:
        keys = [dice.choice(WANTED)] * dice.randint(2, 12)  # held down
    else:
        keys = [dice.choice(WANTED if dice.random() < 0.85 else OTHERS)]
    try:
        terminal.press(*keys)
    except OSError:  # it was left by a key before
        terminal.wait_for_end()
    return drained(terminal, len(keys))


def drained(terminal: Terminal, keys: int) -> int:
    """Read what the program wrote, so that it never waits for the terminal."""
    while terminal.read(0.005):
        pass
    return keys


COMING_BACK = "enter knit on"
"""Keys at the foot by which that screen is known."""


def at_the_needles(text: str) -> bool:
    """Say whether the garment is at the needles with nothing over it: behind a box no keys can be read."""
    return text.rstrip().endswith("? help") and "The shelf" not in text


def ready(terminal: Terminal) -> None:
    """Wait until the garment is at the needles, whether it is begun or come back to."""
    terminal.wait_for(lambda text: at_the_needles(text) or COMING_BACK in text)
    if COMING_BACK in terminal.text:
        terminal.press("escape")
        terminal.wait_for(at_the_needles)


def leads_back(terminal: Terminal) -> bool:
    """Leave whatever is open, and say whether the garment is at the needles, and not back on the shelf."""
    for _ in range(12):
        text = settled(terminal)
        if "The shelf" in text or terminal.status is not None:
            return False
        if at_the_needles(text):
            terminal.press("escape")  # what is typed or asked, or another step that is looked at
            return True
        terminal.press("escape")
    raise AssertionError(terminal.text)


def settled(terminal: Terminal) -> str:
    """Return the screen once nothing is written to it any more, and nothing on it is marked as not saved."""
    terminal.wait_for(lambda text: "not saved" not in text)
    while terminal.read(0.4):
        pass
    return terminal.text


def state_of(folder: Path) -> State:
    """Return the garment as its journal has it."""
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state


def compare(shown: str, folder: Path, shelf: Path) -> None:
    """Compare what was on the screen with the journal, and with the screen of a program that knows only the journal."""
    seen = glance(state_of(folder), datetime.now(UTC))
    assert f"step {seen.step} of {seen.steps}" in shown or not seen.step
    assert seen.heading in shown
    for holding in seen.holdings:
        assert f"{holding.name} {holding.stitches}" in " ".join(shown.split()), (holding, shown)
    with Terminal("work", str(folder), shelf=shelf) as again:
        ready(again)
        assert middle(settled(again)) == middle(shown)


def middle(text: str) -> list[str]:
    """Return the part of the screen with the figures, the next word and the edge."""
    return text.splitlines()[3:18]
