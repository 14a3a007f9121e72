"""Every screen in every state that matters: how a garment gets there, and the last keys before the picture."""

import re
import shutil
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from textual.screen import Screen

from finishing_tui.garment.commands import ChoosePace, Command, Other, PinEdge, Press, TakeCount
from finishing_tui.garment.decide.mirror import choice
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from finishing_tui.garment.journal.lock import Lock
from finishing_tui.garment.journal.rescue_places import rescue_files
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.starting.audit import AuditScreen
from finishing_tui.screens.starting.questions import StartScreen
from finishing_tui.screens.starting.reading import ReadingScreen
from finishing_tui.screens.starting.which_size import WhichSizeScreen
from tests.full_disk import FullDisk, file_of
from tests.plain.making import crew, garment
from tests.plain.test_whole_garments import NECKBAND
from tests.recipe_texts import place, recipe, section, step
from tests.screens.hands import (
    BIND_OFF,
    BLOCK,
    CHECK,
    COUNT,
    JOIN,
    PICK_UP,
    RIB,
    WAIT,
    WEAVE,
    Hours,
    app_for,
    sewn,
    shelf,
    work_to,
)
from tests.screens.opened import Opened, draft, shipped_recipe


@dataclass(frozen=True)
class Scene:
    """A garment worked to ``step``, then ``commands``; the ``keys`` pressed; the garment's file with ``changes``.

    ``sewn``: the garment with a graft and a seam, not the one with every face; ``opened``: what is open over the shelf;
    ``said``: what the shelf says first.
    Among the keys, ``WAIT`` waits for what is read or worked out beside them.
    """

    step: int = 0
    commands: tuple[Command, ...] = ()
    keys: tuple[str, ...] = ()
    changes: Mapping[str, str] = field(default_factory=dict)
    before: Callable[[Path], None] | None = None
    on_shelf: bool = False
    sewn: bool = False
    opened: Callable[[Path], Screen[Any]] | None = None
    said: str = ""

    def app(self, at: Path, looks: str = "") -> FinishingApp:
        """Return the program, with everything prepared in the empty folder ``at``."""
        folder = sewn(at) if self.sewn else shelf(at, **self.changes)
        work_to(folder, self.step, *self.commands)
        if self.before is not None:
            self.before(folder)
        if self.opened is not None:
            return Opened(folder.parent, looks, self.opened)
        if self.on_shelf:
            return FinishingApp(folder.parent, looks=looks, clock=Hours().clock(), said=self.said)
        return app_for(folder, looks=looks)


def _twice(number: str) -> tuple[str, ...]:
    """Return the keys that count ``number``, and count it once more."""
    return (*number, "enter") * 2


def _picked(many: int) -> tuple[Command, ...]:
    return (Press(),) * many


def _sat_before(folder: Path) -> None:
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    assert hand.put_down("in the blue bag, marker at the shoulder")


def _cut_off(folder: Path) -> None:
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    hand.close()


def _damaged(folder: Path) -> None:
    raw = bytearray((folder / NAME).read_bytes())
    raw[len(raw) // 3 : len(raw) // 3 + 4000] = bytes(4000)
    (folder / NAME).write_bytes(raw)


def _taken_away(folder: Path) -> None:
    for path in folder.iterdir():
        path.unlink()


def _edited(folder: Path) -> None:
    path = folder / "garment.toml"
    path.write_text(path.read_text().replace("Slate crew", "Slate crew, second thoughts"))


def _edited_recipe(folder: Path) -> None:
    path = folder.parent / "every_face.toml"
    text = path.read_text()
    for old, new in (("rounds = 6", "rounds = 8"), ('title = "Work the rib"', 'title = "Work the ribbing"')):
        assert old in text
        text = text.replace(old, new)
    path.write_text(text)


_ELSEWHERE: list[Lock] = []
"""Locks that scenes hold, as another window would; they end with the process."""


def _in_use(folder: Path) -> None:
    _ELSEWHERE.append(Lock(folder))


def _rescued(folder: Path) -> None:
    for file in rescue_files():  # of the same scene, started before
        file.unlink()
    with pytest.MonkeyPatch.context() as patched:
        file = file_of(FullDisk(patched).left_full(folder, saved=1, clock=Hours().clock()).given_up)
    file.rename(file.with_name(re.sub("[0-9a-f]{8}(?=[.]jsonl)", "0" * 8, file.name)))  # the same in every picture


def _second_side(folder: Path) -> None:
    """Put a crew neck in its place, worked to where the second side of the neck may go as the first was worked."""
    shutil.rmtree(folder)
    crew(folder)
    work_to(folder, NECKBAND, *_picked(5), Other())
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    while choice(hand.state) is None:
        assert hand.do(Press()) is None
    assert hand.put_down()


_HALF_A_FRONT = (*_picked(12), TakeCount(12))
_ROWS_LEFT = TakeCount(15, answer="rows-left", left=14, repair="space-the-rest")


def _anew(folder: Path, name: str, size: str, to: int, *then: Command) -> None:
    """Put another garment in its place, worked to ``step``, begin that, and do what comes ``then``."""
    shutil.rmtree(folder)
    garment(folder, name, size)
    work_to(folder, to, *then)


def _pinned(folder: Path) -> None:
    _anew(folder, "long-front-vest", "XL", EDGES, PinEdge(4), *_picked(6))


def _pinned_to_its_end(folder: Path) -> None:
    counted = (command for pin in (6, 12, 18) for command in (*_picked(6), TakeCount(pin)))
    _anew(folder, "long-front-vest", "XL", EDGES, PinEdge(4), *counted, *_picked(6))


def _pinned_left(folder: Path) -> None:
    shutil.rmtree(folder)
    garment(folder, "long-front-vest", "XL", 'hand = "left"')
    work_to(folder, EDGES, PinEdge(4), *_picked(9))


def _by_rate(folder: Path) -> None:
    pick_up = step("pick up and knit", "Pick up the front", section(along="front edge", ratio="2/3"), onto="band")
    off = step("bind off", "Bind off", from_="band")
    path = folder.parent / "by_rate.toml"
    path.write_text(recipe("Edge by rate", place("band"), pick_up, off, format=2))
    _anew(folder, str(path), "one", 0, *_picked(9))


LARGE = {"size": "large"}
"""The size in which sections are long."""

CREW = {"recipe": "crew-neck", "size": "6 years"}
"""The crew neck that comes with the program, for a child."""

CREW_M = {"recipe": "crew-neck", "size": "M"}
"""The same for a grown-up: 24 stitches along each front neck, the second the mirror of the first."""

CLOSE = 22
"""The step of that crew neck that closes the first corner."""

JACKET = {"recipe": "baby-jacket", "size": "6 months"}
"""The jacket that comes with the program, for a baby."""

VEST = {"recipe": "long-front-vest", "size": "XL"}
"""The vest whose panel edges nobody counted."""

EDGES = 12
"""The step that picks these up, 24 stitches along each."""

SCENES: dict[str, Scene] = {
    "edge-before-the-first": Scene(EDGES, changes=VEST),
    "edge-early": Scene(EDGES, _picked(4), changes=VEST),
    "edge-past-half": Scene(EDGES, _picked(15), changes=VEST),
    "edge-near-its-end": Scene(EDGES, _picked(19), changes=VEST),
    "edge-counted-otherwise": Scene(NECKBAND, _HALF_A_FRONT, ("r", "3", "1", "4", "enter"), CREW_M),
    "edge-counted-otherwise-taken": Scene(NECKBAND, _HALF_A_FRONT, ("r", "3", "1", "4", "enter", "1"), CREW_M),
    "edge-where": Scene(EDGES, _picked(15), ("1", "5", "enter"), VEST),
    "edge-to-spare": Scene(EDGES, _picked(15), ("1", "5", "enter", "1"), VEST),
    "edge-ends-at": Scene(EDGES, _picked(15), ("1", "5", "enter", "2"), VEST),
    "edge-rows-left": Scene(EDGES, _picked(15), ("1", "5", "enter", "3", "1", "4"), VEST),
    "edge-ways": Scene(EDGES, _picked(15), ("1", "5", "enter", "3", "1", "4", "enter"), VEST),
    "edge-ways-few-rows": Scene(EDGES, _picked(15), ("1", "5", "enter", "3", "1", "0", "enter"), VEST),
    "edge-at-the-fold": Scene(EDGES, _picked(15), ("1", "5", "enter", "4"), VEST),
    "edge-known": Scene(EDGES, (*_picked(15), _ROWS_LEFT), changes=VEST),
    "edge-cannot-tell": Scene(EDGES, _picked(15), ("1", "5", "enter", "7"), VEST),
    "edge-ends-one-short": Scene(EDGES, _picked(23), ("z",), VEST),
    "edge-ends-three-short": Scene(EDGES, _picked(21), ("z",), VEST),
    "edge-ends-with-a-skip": Scene(EDGES, _picked(22), ("z",), VEST),
    "edge-ends-with-a-skip-walked": Scene(EDGES, _picked(22), ("z", "1", "enter"), VEST),
    "edge-counted": Scene(EDGES, (*_picked(15), _ROWS_LEFT, *_picked(10 + 12), TakeCount(12)), changes=VEST),
    "edge-counted-where": Scene(EDGES, (*_picked(15), _ROWS_LEFT, *_picked(10 + 12), TakeCount(12)), ("r",), VEST),
    "edge-ends-left-over": Scene(EDGES, _picked(24), ("z",), VEST),
    "edge-ends-two-left-over": Scene(EDGES, _picked(24), ("z", "2", "enter"), VEST),
    "edge-second-side-shorter": Scene(EDGES, (*_picked(15), _ROWS_LEFT, *_picked(10 + 22)), ("z",), VEST),
    "edge-pins": Scene(EDGES, (), ("i",), VEST),
    "edge-at-a-pin": Scene(before=_pinned),
    "edge-one-short-at-a-pin": Scene(before=_pinned, keys=("5", "enter")),
    "edge-two-short-at-a-pin": Scene(before=_pinned, keys=(*_twice("4"), "2")),
    "edge-past-a-pin": Scene(before=_pinned, keys=("space",)),
    "edge-ends-at-a-pin": Scene(before=_pinned, keys=("z",)),
    "edge-at-the-last-pin": Scene(before=_pinned_to_its_end),
    "edge-at-the-last-pin-differs": Scene(before=_pinned_to_its_end, keys=_twice("23")),
    "edge-at-the-last-pin-one-short": Scene(before=_pinned_to_its_end, keys=(*_twice("23"), "2")),
    "edge-at-the-last-pin-every-way": Scene(before=_pinned_to_its_end, keys=(*_twice("23"), "2", "2")),
    "edge-at-the-last-pin-two-over": Scene(before=_pinned_to_its_end, keys=(*_twice("26"), "2")),
    "edge-at-the-last-pin-counted": Scene(before=_pinned_to_its_end, keys=("enter",)),
    "edge-pinned-left": Scene(before=_pinned_left),
    "help-pinned": Scene(before=_pinned, keys=("?",)),
    "edge-what-if": Scene(EDGES, _picked(15), ("w",), VEST),
    "edge-by-rate": Scene(before=_by_rate),
    "edge-by-rate-where": Scene(before=_by_rate, keys=("r", "enter")),
    "item": Scene(),
    "just-begun": Scene(changes=CREW),
    "first-stitch": Scene(keys=("g",), changes=CREW),
    "left-open": Scene(keys=("g", "left"), changes=CREW),
    "caution-first": Scene(15, changes=CREW),
    "caution-child": Scene(20, changes=CREW),
    "caution-child-stitches": Scene(4, _picked(1), changes=JACKET),
    "item-second": Scene(keys=("space",), changes=CREW),
    "spot-before-the-first": Scene(PICK_UP),
    "join": Scene(JOIN, _picked(2)),
    "join-to-lay": Scene(5, changes=CREW),
    "join-laid": Scene(6, changes=CREW),
    "join-uneven": Scene(JOIN, (TakeCount(7, "left_front"),)),
    "join-which": Scene(JOIN, (), ("6", "enter")),
    "graft": Scene(0, _picked(4), sewn=True),
    "graft-last": Scene(0, _picked(13), sewn=True),
    "seam": Scene(1, _picked(4), sewn=True),
    "seam-two-bars": Scene(1, _picked(2), sewn=True),
    "spot-loop": Scene(PICK_UP, _picked(4)),
    "spot-skip-first": Scene(PICK_UP, _picked(2)),
    "spot-spot": Scene(PICK_UP, (ChoosePace("spot"), *_picked(5))),
    "spot-run": Scene(PICK_UP, (ChoosePace("run"), *_picked(3))),
    "spot-due": Scene(PICK_UP, _picked(9)),
    "spot-ended": Scene(PICK_UP, _picked(17)),
    "spot-ended-differs": Scene(PICK_UP, _picked(17), ("1", "6", "enter")),
    "spot-ended-counted": Scene(PICK_UP, _picked(17), ("enter",)),
    "spot-count-passed": Scene(PICK_UP, _picked(9), ("space",)),
    "spot-strayed": Scene(PICK_UP, (*_picked(3), Other(), *_picked(2))),
    "spot-long": Scene(PICK_UP, _picked(40), changes=LARGE),
    "spot-left": Scene(PICK_UP, _picked(13), changes={"hand": "left"}),
    "spot-typed": Scene(PICK_UP, _picked(4), ("1", "4")),
    "spot-typed-refused": Scene(PICK_UP, _picked(4), ("1", "4", "space")),
    "held": Scene(PICK_UP, _picked(20)),
    "count": Scene(COUNT),
    "round": Scene(RIB),
    "round-shaped": Scene(RIB, _picked(2)),
    "bind-off": Scene(BIND_OFF, _picked(5)),
    "bind-off-long": Scene(BIND_OFF, _picked(20), changes=LARGE),
    "check": Scene(CHECK, _picked(1)),
    "weave-in": Scene(WEAVE, _picked(2)),
    "weave-in-lies": Scene(26, changes=CREW),
    "weave-in-lies-no-more": Scene(26, _picked(1), changes=CREW),
    "value": Scene(BLOCK, _picked(1)),
    "value-typed": Scene(BLOCK, _picked(1), ("2", "8", ".", "5")),
    "at-its-end": Scene(COUNT, (TakeCount(26),)),
    "finished": Scene(BLOCK + 1),
    "looked-at": Scene(RIB, (), ("right",)),
    "refused": Scene(RIB, (), ("enter",)),
    "look-back": Scene(RIB, (), ("left",)),
    "two-together-refused": Scene(JOIN, _picked(2), ("x",)),
    "pace": Scene(PICK_UP, _picked(4), ("p",)),
    "put-back": Scene(PICK_UP, _picked(4), ("backspace", "u")),
    "take-back-named": Scene(RIB, (), ("backspace",)),
    "recount-asked": Scene(PICK_UP, _picked(9), ("r",)),
    "recount-again": Scene(PICK_UP, _picked(9), ("1", "1", "enter")),
    "recount-differs": Scene(PICK_UP, _picked(9), _twice("11")),
    "recount-slipped": Scene(PICK_UP, _picked(9), _twice("8")),
    "recount-one-off": Scene(PICK_UP, _picked(9), (*_twice("8"), "2")),
    "recount-left": Scene(PICK_UP, _picked(9), (*_twice("11"), "4", "1", "0")),
    "recount-presses": Scene(PICK_UP, _picked(9), (*_twice("11"), "3")),
    "recount-lies-flat": Scene(PICK_UP, _picked(34), (*_twice("33"), "2", "2"), LARGE),
    "recount-just-shows": Scene(PICK_UP, _picked(34), (*_twice("31"), "2"), LARGE),
    "recount-will-flare": Scene(PICK_UP, _picked(34), (*_twice("26"), "2"), LARGE),
    "recount-will-pucker": Scene(PICK_UP, _picked(34), (*_twice("42"), "2"), LARGE),
    "recount-far-off": Scene(PICK_UP, _picked(34), ("7", "0", "enter"), LARGE),
    "recount-cannot-be": Scene(PICK_UP, _picked(34), (*_twice("70"), "2"), LARGE),
    "recount-both-sides": Scene(NECKBAND, _picked(10), (*_twice("8"), "2"), CREW),
    "recount-either": Scene(before=_second_side, keys=("escape", "space", "space", "space", "r")),
    "count-make-two": Scene(2, (), (*_twice("14"), "2"), CREW_M),
    "count-again": Scene(COUNT, (), ("3", "enter")),
    "count-look-for": Scene(COUNT, (), _twice("25")),
    "count-look-for-over": Scene(COUNT, (), _twice("27")),
    "count-one-off": Scene(COUNT, (), (*_twice("27"), "2")),
    "count-one-short": Scene(COUNT, (), (*_twice("25"), "2", "2")),
    "count-one-over": Scene(COUNT, (), (*_twice("27"), "2", "2")),
    "count-far-off": Scene(COUNT, (), (*_twice("3"), "2")),
    "coming-back-other": Scene(JOIN, (), ("2", "0", "enter"), before=_sat_before),
    "coming-back-typed": Scene(PICK_UP, _picked(4), ("3",), before=_sat_before),
    "coming-back": Scene(PICK_UP, _picked(4), before=_sat_before),
    "coming-back-no-count": Scene(PICK_UP, before=_sat_before),
    "cut-off": Scene(JOIN, _picked(2), before=_cut_off),
    "help": Scene(PICK_UP, _picked(4), ("?",)),
    "help-count-due": Scene(PICK_UP, _picked(9), ("?",)),
    "help-join": Scene(JOIN, (TakeCount(7, "left_front"),), ("?",)),
    "help-typed": Scene(PICK_UP, _picked(4), ("1", "4", "?")),
    "help-looked-at": Scene(RIB, (), ("right", "?")),
    "help-measure": Scene(BLOCK, _picked(1), ("?",)),
    "help-looking-only": Scene(PICK_UP, _picked(4), ("1", WAIT, "?"), before=_in_use),
    "count-taken": Scene(PICK_UP, _picked(9), ("enter",)),
    "palette": Scene(PICK_UP, _picked(4), ("ctrl+p",)),
    "palette-narrowed": Scene(PICK_UP, _picked(4), ("ctrl+p", *"step", "down")),
    "palette-nothing": Scene(PICK_UP, _picked(4), ("ctrl+p", *"qqq")),
    "palette-on-the-shelf": Scene(PICK_UP, _picked(4), (WAIT, "ctrl+p"), on_shelf=True),
    "palette-on-a-page": Scene(PICK_UP, _picked(4), ("l", WAIT, "ctrl+p")),
    "mirror": Scene(before=_second_side, keys=("escape", "m")),
    "technique": Scene(PICK_UP, _picked(4), ("h",)),
    "what-if": Scene(PICK_UP, _picked(4), ("w",)),
    "what-if-other": Scene(PICK_UP, _picked(4), ("w", "1", "1")),
    "what-if-rhythm": Scene(PICK_UP, _picked(34), ("w", "down", "down", "2", "/", "3"), LARGE),
    "what-if-pucker": Scene(PICK_UP, _picked(34), ("w", "4", "2"), LARGE),
    "what-if-cannot-be": Scene(PICK_UP, _picked(4), ("w", "2")),
    "what-if-rounds": Scene(RIB, _picked(1), ("w", "9")),
    "ledger": Scene(PICK_UP, _picked(4), ("l",)),
    "ledger-below": Scene(JOIN, (TakeCount(7, "left_front"),), ("l", WAIT, "right", "right")),
    "finished-anyway": Scene(JOIN, (), ("enter", "2")),
    "all-of-a-join": Scene(JOIN, _picked(2), ("enter",)),
    "all-of-a-join-done": Scene(JOIN, _picked(2), ("enter", "enter")),
    "left-out-anyway": Scene(PICK_UP, (), ("o", "o")),
    "numbers": Scene(PICK_UP, _picked(4), ("e",)),
    "numbers-asked": Scene(JOIN, (), ("e", "2", "4", "enter", WAIT)),
    "numbers-begun": Scene(PICK_UP, _picked(4), ("e", "3", "0", "enter", WAIT)),
    "rip-back": Scene(PICK_UP, _picked(4), ("t",)),
    "rip-back-to": Scene(PICK_UP, _picked(4), ("t", "1", "3")),
    "rip-back-to-stitches": Scene(PICK_UP, _picked(4), ("t", "2", "3")),
    "close-hole": Scene(CLOSE, changes=CREW),
    "close-hole-other-tail": Scene(CLOSE, (), ("x",), CREW),
    "in-use": Scene(PICK_UP, _picked(4), before=_in_use),
    "rescued": Scene(JOIN, changes={"id": "slate-crew-rescued"}, before=_rescued),
    "rescued-thrown-away": Scene(JOIN, (), ("3",), changes={"id": "slate-crew-rescued"}, before=_rescued),
    "looking-only": Scene(PICK_UP, _picked(4), ("1", "space"), before=_in_use),
    "note": Scene(PICK_UP, _picked(4), ("n",)),
    "put-down": Scene(PICK_UP, _picked(4), ("q",)),
    "changed-recipe": Scene(PICK_UP, _picked(4), before=_edited_recipe),
    "changed-plan": Scene(PICK_UP, _picked(4), before=_edited),
    "damaged": Scene(PICK_UP, _picked(4), before=_damaged),
    "shelf-full": Scene(PICK_UP, _picked(4), on_shelf=True),
    "shelf-says-plain-letters": Scene(
        on_shelf=True, said="Plain letters only: TERM is linux. Set FINISHING_LOOKS=dark for every sign."
    ),
    "shelf-where": Scene(PICK_UP, _picked(4), before=_sat_before, on_shelf=True),
    "start-which-size-nothing": Scene(opened=lambda _: WhichSizeScreen(shipped_recipe("crew-neck"))),
    "shelf-trouble": Scene(PICK_UP, _picked(4), before=_damaged, on_shelf=True),
    "shelf-empty": Scene(before=_taken_away, on_shelf=True),
    "pedals": Scene(keys=("k",), on_shelf=True),
    "pedals-told": Scene(keys=("k", "f13"), on_shelf=True),
    "pedals-no-key": Scene(keys=("k", "ctrl+h", "7", "escape"), on_shelf=True),
    "start-recipes": Scene(keys=("s", WAIT, "down", "down", "down"), on_shelf=True),
    "start-recipes-find": Scene(keys=("s", WAIT, "/"), on_shelf=True),
    "start-recipes-found": Scene(keys=("s", WAIT, "/", *"vest"), on_shelf=True),
    "start-reading": Scene(opened=lambda _: ReadingScreen(shipped_recipe("crew-neck"))),
    "start-size": Scene(keys=("down",), opened=lambda shelf: StartScreen(draft(), shelf)),
    "start-number": Scene(keys=("enter", WAIT, "4", "enter"), opened=lambda shelf: StartScreen(draft(), shelf)),
    "start-line": Scene(keys=("enter", WAIT, "enter"), opened=lambda shelf: StartScreen(draft(), shelf)),
    "start-which-size": Scene(keys=("2", "1"), opened=lambda _: WhichSizeScreen(shipped_recipe("crew-neck"))),
    "start-audit": Scene(keys=(WAIT, "x"), opened=lambda shelf: AuditScreen(draft(front_rows=40, side=25), shelf)),
    "start-audit-clean": Scene(keys=(WAIT,), opened=lambda shelf: AuditScreen(draft(), shelf)),
}
"""Every scene by its name."""

SIZES: dict[str, tuple[int, int]] = {"80x24": (80, 24), "100x30": (100, 30), "40x20": (40, 20), "160x50": (160, 50)}
"""The sizes of terminal that must be a pleasure."""
