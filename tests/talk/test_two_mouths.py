"""One conversation, two mouths: what is asked and answered at the screens and line by line ends in the same journal."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

import pytest
from textual.pilot import Pilot

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import WhatIf
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.numbers import MOST_DIGITS
from finishing_tui.talk.acts import ACTS, BY_ID
from finishing_tui.talk.asks import (
    Ask,
    Choose,
    HowMany,
    Read,
    SetNumber,
    Weigh,
    WeighPlans,
    WorkOut,
    WriteLine,
)
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for, begin
from finishing_tui.talk.keys import USUAL
from tests.plain.making import events, talked
from tests.screens.hands import (
    BIND_OFF,
    JOIN,
    PICK_UP,
    RIB,
    Hours,
    app_for,
    front,
    needles,
    settled,
    shelf,
    work_to,
)

FEW, MANY = 40, 200
"""So many moves a conversation has."""

PRESSES = 12
"""So many times as likely as any other action a press is."""


@dataclass(frozen=True)
class Move:
    """Something the knitter does: how it is typed in lines, and the keys that do it at the screens.

    ``then``: keys that follow while the same is asked still; ``until``: keys that are repeated until it is not.
    """

    lines: tuple[str, ...]
    keys: tuple[str, ...]
    then: tuple[str, ...] = ()
    until: tuple[str, ...] = ()


LEAVES = Move(("escape",), (), until=("escape",))


class Knitter:
    """Talks with no mouth at all, at random, and writes down what she does."""

    def __init__(self, folder: Path, seed: int) -> None:
        self.moves: list[Move] = []
        self.asked = set[type[Ask]]()
        self._random = Random(seed)  # noqa: S311  (no secret)
        hand = InHand.open(folder, clock=Hours().clock())
        self._talk = Talk(hand, "", USUAL)
        hand.pick_up()
        begin(self._talk)
        self._talk.asks(None)

    def talks(self, moves: int) -> None:
        """Do so many moves, more until two kinds of question were asked, and put it down."""
        while len(self.moves) < moves or self._talk.asked is not None or len(self.asked) < 2:
            ask = self._talk.asked
            if ask is None:
                self._does_something()
            elif isinstance(ask, WorkOut):
                self._talk.answer(_found(ask.find))
            elif isinstance(ask, Read):
                self._talk.leave()
                self.moves.append(Move((), (), until=("escape",)))
            else:
                self.asked.add(type(ask))
                self._answers(ask)
            if self._talk.asked is None and self._talk.typed:  # a count that was left at its question
                self._talk.clear()
                self.moves.append(Move((), ("escape",)))
        assert self._talk.hand.put_down()
        self.moves.append(Move(("q", ""), ("q", "enter")))

    def _does_something(self) -> None:
        if not self._random.randrange(6):
            number = str(self._random.randrange(30))
            for sign in number:
                self._talk.digit(sign)
            ask_for(self._talk, "finish")
            self.moves.append(Move((number,), (*number, "enter")))
            return
        every = [act.id for act in ACTS if act.id != "put_down"] + ["press"] * PRESSES
        act = BY_ID[self._random.choice(every)]
        ask_for(self._talk, act.id)
        self.moves.append(Move((act.letter or act.shown,), (act.key,)))

    def _answers(self, ask: Ask) -> None:
        if not self._random.randrange(5):
            self._leaves()
            return
        match ask:
            case Choose() | Weigh():
                many = len(ask.answers.rows if isinstance(ask, Weigh) else ask.options)
                at = self._random.randrange(min(many, 9))
                number = str(at + 1)
                self._talk.answer(at)
                self.moves.append(Move((number,), (number,), then=("enter",)))
            case HowMany():
                number = str(self._random.randrange(30 if ask.most is None else ask.most + 1))
                self._talk.answer(int(number))
                self.moves.append(Move((number,), (*number, "enter")))
                if self._talk.asked is ask:  # refused, and still typed
                    self._leaves()
            case WriteLine():
                self._talk.answer("ab")
                self.moves.append(Move(("ab",), ("a", "b", "enter")))
            case WeighPlans():
                self._weighs(ask)
            case SetNumber():
                self._sets(ask)
            case _:
                raise AssertionError(ask)

    def _weighs(self, ask: WeighPlans) -> None:
        number = ask.asked.figure + self._random.randint(-3, 3)
        command = WhatIf(target=number) if ask.asked.section else WhatIf(rounds=number)
        view = _found(lambda: ask.view(command)) if number > 0 else None
        if view is None or isinstance(view, FinishingError) or not view.changes:
            self._leaves()
            return
        self._talk.answer(view)
        self.moves.append(Move((str(number), "2"), (*str(number), "enter")))
        if self._talk.asked is ask:
            self._leaves()

    def _sets(self, ask: SetNumber) -> None:
        line = next(one for one in ask.lines if one.name == ask.at) if ask.at else ask.lines[0]
        value = self._random.randint(line.least, min(line.most, line.least + 40))
        self._talk.answer(line, value)
        typed = (*["backspace"] * MOST_DIGITS, *str(value))  # what was left as it was is still typed there
        self.moves.append(Move((f"{line.name} {value}",), (*typed, "enter")))
        self._talk.answer(_found(self._talk.asked.find))  # type: ignore[union-attr]  # it is worked out first
        if isinstance(self._talk.asked, SetNumber):  # refused, and still typed
            self._leaves()

    def _leaves(self) -> None:
        self._talk.leave()
        self.moves.append(LEAVES)


def _found(find: Callable[[], Any]) -> Any:
    try:
        return find()
    except FinishingError as error:
        return error


async def by_keys(folder: Path, moves: list[Move]) -> None:
    """Do the same at the screens."""
    app = app_for(folder)
    async with app.run_test(size=(100, 30)) as pilot:
        await settled(pilot)
        while front(app) is not needles(app):
            await pilot.press("escape")
        talk = needles(app).talk
        for move in moves:
            ask = talk.asked
            await _press(pilot, *move.keys)
            if move.then and talk.asked is ask:
                await _press(pilot, *move.then)
            while move.until and talk.asked is ask and ask is not None:
                await _press(pilot, *move.until)


async def _press(pilot: Pilot[None], *keys: str) -> None:
    if keys:
        await pilot.press(*keys)
        await settled(pilot)


@pytest.mark.turns(of=6)
@pytest.mark.parametrize(("seed", "step"), enumerate([0, JOIN, PICK_UP, PICK_UP, RIB, BIND_OFF]))
@pytest.mark.parametrize("moves", [FEW, pytest.param(MANY, marks=pytest.mark.long)])
async def test_both_mouths_lead_to_the_same_journal(moves: int, seed: int, step: int, tmp_path: Path) -> None:
    """A random conversation, with questions in it, held with no mouth, at the screens and line by line."""
    folders = {}
    for name in ("none", "screens", "lines"):
        (tmp_path / name).mkdir()
        folders[name] = shelf(tmp_path / name)
        work_to(folders[name], step)
    knitter = Knitter(folders["none"], seed)
    knitter.talks(moves)
    await by_keys(folders["screens"], knitter.moves)
    talked(folders["lines"], *(line for move in knitter.moves for line in move.lines))
    wanted = events(folders["none"])
    for name in ("screens", "lines"):
        assert events(folders[name]) == wanted, name
