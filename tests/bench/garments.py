"""Garments to measure with: a long edge, with few or very many events behind it."""

from pathlib import Path

from finishing_tui.garment.commands import ChoosePace, Press
from finishing_tui.garment.hand import InHand
from tests.recipe_texts import along, place, recipe, step

LONG_EDGE = recipe(
    "Long edge",
    place("needle", text="long circular"),
    step(
        "pick up and knit",
        "Pick up the long edge",
        along("long edge", 2000, 1500, unit="row"),
        onto="needle",
        recount="none",
    ),
)

GARMENT = """
format = 1
id = "bench"
title = "bench"
recipe = "long-edge.toml"
size = "one"
"""


def long_edge(folder: Path, events: int) -> Path:
    """Make a garment with an edge of 2,000 spots and at least ``events`` events in its journal; return its folder.

    The presses are taken back again and again, so that the garment stands near the start of its edge.
    """
    folder.mkdir(parents=True)
    (folder / "long-edge.toml").write_text(LONG_EDGE, encoding="utf-8")
    (folder / "garment.toml").write_text(GARMENT, encoding="utf-8")
    hand = InHand.open(folder)
    hand.pick_up()
    hand.do(ChoosePace("loop"))
    for number in range(events // 2):
        hand.do(Press())
        hand.take_back()
        if number % 200 == 0:
            hand.flush(60)
    for _ in range(30):
        hand.do(Press())
    hand.put_down()
    return folder
