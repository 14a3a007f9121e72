"""The rooms of the program, each opened in a fresh process: none loads what belongs to a room above it."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.shelf import take_copy

SCREENS = ("textual", "rich")
FILES = ("pydantic", "pydantic_core", "tree_sitter", "tree_sitter_toml")

OPEN_ALL = """
import importlib, json, pkgutil, sys
before = set(sys.modules)
for room in {rooms}:
    package = importlib.import_module(room)
    for module in pkgutil.walk_packages(getattr(package, "__path__", []), room + "."):
        importlib.import_module(module.name)
print(json.dumps(sorted({{name.partition(".")[0] for name in set(sys.modules) - before}})))
"""


def loaded(*rooms: str) -> set[str]:
    """Return the top-level packages that opening every module of ``rooms`` loads in a fresh process."""
    script = OPEN_ALL.format(rooms=rooms)
    answer = subprocess.run([sys.executable, "-I", "-c", script], check=True, capture_output=True, text=True)
    return set(json.loads(answer.stdout))


def test_craft_stands_on_nothing() -> None:
    """The arithmetic loads the standard library and itself, and no other package at all."""
    others = loaded("finishing_tui.craft") - sys.stdlib_module_names
    assert others == {"finishing_tui"}


@pytest.mark.parametrize(
    "rooms",
    [
        ("finishing_tui.recipe",),
        ("finishing_tui.garment",),
        ("finishing_tui.glance",),
        ("finishing_tui.settings", "finishing_tui.speech"),
        ("finishing_tui.plain",),
        ("finishing_tui.record",),
        ("finishing_tui.codec", "finishing_tui.files", "finishing_tui.shipped"),
    ],
    ids=lambda rooms: rooms[0],
)
def test_below_the_screens_nothing_draws(rooms: tuple[str, ...]) -> None:
    """Every room but the screens, with everything in it, loads neither textual nor rich."""
    assert loaded(*rooms).isdisjoint(SCREENS)


@pytest.mark.parametrize(
    "room",
    [
        "finishing_tui.recipe.model",
        "finishing_tui.recipe.kinds",
        "finishing_tui.recipe.reader.reader",
        "finishing_tui.garment",
        "finishing_tui.glance",
        "finishing_tui.settings",
        "finishing_tui.speech",
        "finishing_tui.codec",
        "finishing_tui.shipped",
    ],
)
def test_a_garment_under_way_needs_no_reader_of_files(room: str) -> None:
    """The model, its kinds, garments, and even the front door of the reader load no validation and no second parser."""
    assert loaded(room).isdisjoint((*SCREENS, *FILES))


READ = """
import sys
from pathlib import Path
from finishing_tui.recipe.reader import read_text
sys.path.insert(0, {top!r})
from tests.recipe.reader.good import GOOD
read_text(GOOD, "good.toml")
print(any(name.startswith("tree_sitter") for name in sys.modules), "pydantic" in sys.modules)
"""


def test_a_good_recipe_needs_no_lines() -> None:
    """Reading a recipe without mistakes validates it, and leaves the second parser alone."""
    top = __file__.rpartition("tests")[0]
    script = READ.format(top=top)
    answer = subprocess.run([sys.executable, "-I", "-c", script], check=True, capture_output=True, text=True)
    assert answer.stdout.split() == ["False", "True"]


TAKE_UP = """
import json, pathlib, sys
from datetime import UTC, datetime
from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.glance import coming_back, glance
from finishing_tui.talk.offers import offers
hand = InHand.open(pathlib.Path(sys.argv[1]))
now = datetime.now(UTC)
coming_back(hand.state, now), glance(hand.state, now), offers(hand.state)
assert hand.changed_plan() is None
hand.pick_up()
assert hand.do(Press()) is None
hand.put_down()
print(json.dumps(sorted(sys.modules)))
"""


def test_a_garment_under_way_is_taken_up_without_the_reader(tmp_path: Path) -> None:
    """Its journal has all it needs: neither pydantic nor the reader, the audit, textual or rich are loaded."""
    folder = take_copy(shipped.demo("slate-crew"), tmp_path)
    hand = InHand.open(folder)
    hand.pick_up()
    hand.put_down()
    command = [sys.executable, "-I", "-c", TAKE_UP, str(folder)]
    answer = subprocess.run(command, check=True, capture_output=True, text=True)
    modules = set(json.loads(answer.stdout))
    assert modules.isdisjoint({*SCREENS, *FILES, "finishing_tui.recipe.reader", "finishing_tui.recipe.audit"})
