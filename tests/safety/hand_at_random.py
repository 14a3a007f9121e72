"""A hand that does at random whatever is on offer: it draws from ``offers`` and from nothing else.

Where an offer opens something first (a count, a place to rip back to, a note), what is chosen there is drawn too.
"""

from contextlib import suppress
from dataclasses import dataclass, replace
from random import Random
from typing import cast

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import (
    AlreadyAt,
    Command,
    Other,
    PickUpGarment,
    PinEdge,
    PutGarmentDown,
    Refusal,
    TakeCount,
    TakeMeasure,
    TakeOut,
    WhatIf,
    WriteNote,
)
from finishing_tui.garment.state import State
from finishing_tui.glance import recount_view, rip_points
from finishing_tui.glance.counting import asks_for_value, countables
from finishing_tui.glance.following import following
from finishing_tui.glance.numbers import number_lines, renumbering
from finishing_tui.glance.recounts import ANSWERS
from finishing_tui.glance.what_if import asked_here, what_if_view
from finishing_tui.talk.action import Offer
from finishing_tui.talk.offers import offers
from tests.garment.paper import Paper

WEIGHTS = {"press": 40, "finish": 8, "other": 6, "recount": 5, "take_back": 3, "put_back": 4, "rip_back": 0.7}
"""How often an action is drawn, where another one is drawn once: a hand that mostly works gets somewhere."""


@dataclass
class HandAtRandom:
    """Works the garment ``paper`` by the dice ``dice``; ``done``: how many commands it asked for."""

    paper: Paper
    dice: Random
    looking: int | None = None
    done: int = 0

    @property
    def state(self) -> State:
        """The garment right now."""
        return self.paper.state

    def starts(self) -> None:
        """Begin a sitting, mostly somewhere in the middle of the recipe."""
        assert self.paper.do(PickUpGarment()) is None
        if self.dice.random() < 0.7:
            self.paper.do(AlreadyAt(self.dice.randrange(len(self.state.steps))))

    def does_something(self) -> None:
        """Draw one offer and take it: it is accepted, or asked again, and then accepted."""
        found = offers(self.state, self.looking)
        offer = self.dice.choices(found, [WEIGHTS.get(one.action, 1) for one in found])[0]
        self._takes(offer)
        if self.dice.random() < 0.7:
            self.looking = None

    def _takes(self, offer: Offer) -> None:
        match offer.action:
            case "look_back" | "look_on":
                here = self.state.current if self.looking is None else self.looking
                here = len(self.state.steps) if here is None else here
                self.looking = here + (1 if offer.action == "look_on" else -1)
                assert 0 <= self.looking < len(self.state.steps)
            case "take_back":
                self._went(self.paper.take_back(), offer)
            case "put_back":
                self._went(self.paper.put_back(), offer)
            case "recount":
                self._counts()
            case "rip_back":
                self._rips_back()
            case "note":
                self.asks(WriteNote(self.dice.choice(("a note", "[bold]", "e\u0301 漢字"))))
            case "put_down":
                self.asks(PutGarmentDown(self.dice.choice(("", "on the chair"))))
                self.asks(PickUpGarment())
            case "what_if":
                self._asks_what_if()
            case "numbers":
                self._renumbers()
            case "edge_ends":
                self._ends()
            case "pins":
                self.asks(PinEdge(2))
            case "help" | "technique" | "ledger" | "palette":
                assert offer.command is None
            case _:
                assert offer.command is not None
                self.asks(Other(self.dice.choice(offer.sides)[0]) if offer.sides else offer.command)
        if asks_for_value(self.state) and self.dice.random() < 0.8:
            self.asks(TakeMeasure(self.dice.choice(("26", "26.5", "100000"))))

    def asks(self, command: Command) -> None:
        """Ask for ``command``; where it is asked again, mostly mean it."""
        refusal = self.paper.do(command)
        self._went(refusal, command)
        if refusal is not None and refusal.again is not None and self.dice.random() < 0.6:
            again = self.paper.do(refusal.again)
            # What was done elsewhere can still turn out not to be possible: only then is asking twice not enough.
            assert again is None or isinstance(refusal.again, AlreadyAt), (refusal.again, again)

    def _went(self, refusal: Refusal | None, asked: Command | Offer) -> None:
        self.done += 1
        if refusal is not None:
            assert refusal.sentence.isprintable()
            assert refusal.again is not None, f"{asked} was on offer, and is refused: {refusal.sentence}"

    def _counts(self) -> None:
        """Count what is there, or one or two more or fewer, and go on in one of the ways that there are."""
        found = self.dice.choice(countables(self.state))
        number = max(found.expected + self.dice.choice((0, 0, 0, 1, -1, 2, -5)), 0)
        before = self.state
        if not found.section:
            refusal = self.paper.do(TakeCount(number, found.place))
            self.done += 1
            assert refusal is None or "too many" in refusal.sentence, refusal
        else:
            answer = self.dice.choice((None, *(one for one, _ in ANSWERS)))
            left = self.dice.randrange(12) if answer == "rows-left" else None
            try:
                seen = recount_view(before, number, answer, left)
            except FinishingError:  # such a count cannot be, which is said in a sentence
                return
            assert seen.commands
            if seen.matches or answer is not None:
                self.asks(self.dice.choice(seen.commands))
        if self.state != before and self.dice.random() < 0.3 and (follows := following(before, self.state)):
            ways = [one.command for one in follows.does if one.command is not None]
            self.asks(self.dice.choice(ways))

    def _ends(self) -> None:
        """Say that the edge ends here, perhaps behind a row or two, and go on in one of the ways that there are."""
        with suppress(FinishingError):  # where stitches are missing, only skipped rows can lie behind the last
            found = countables(self.state)[0]
            seen = recount_view(self.state, found.expected, "edge-ends", self.dice.choice((0, 0, 1, 2)))
            self.asks(self.dice.choice(seen.commands))

    def _asks_what_if(self) -> None:
        """Ask for another target, spots, rhythm or rounds, mostly near what there is; what cannot be says why."""
        seen = asked_here(self.state)
        command = WhatIf(rounds=max(seen.figure + self.dice.randint(-2, 3), 0))
        if seen.section:
            command = WhatIf(
                target=self.dice.choice((None, max(seen.figure + self.dice.randint(-4, 4), 0))),
                spots=self.dice.choice((None, max(seen.spots + self.dice.randint(-4, 4), 0))),
                style=self.dice.choice((None, "easy", "even")),
                rhythm=self.dice.choice((None, None, (self.dice.randint(1, 5), self.dice.randint(1, 5)))),
            )
        with suppress(FinishingError):
            assert what_if_view(self.state, command).command == command
        refusal = self.paper.do(command)
        self.done += 1
        assert refusal is None or refusal.sentence.isprintable()

    def _renumbers(self) -> None:
        """Count a number of the recipe otherwise, by a few; what the recipe cannot be worked with is refused."""
        plan = self.state.plan
        line = self.dice.choice(number_lines(plan.recipe, plan.size, plan.own))
        value = self.dice.choice((None, max((line.value or 0) + self.dice.randint(-3, 3), 0)))
        with suppress(FinishingError):  # out of range, or no change, which is said in a sentence
            self.asks(renumbering(self.state, line, value).command)

    def _rips_back(self) -> None:
        point = self.dice.choice(rip_points(self.state))
        command = point.command
        with suppress(FinishingError):  # no row has just so many stitches left, which is said in a sentence
            command = point.to(self.dice.randint(0, point.most)) if point.most else point.command
        refusal = self.paper.do(command)
        self.done += 1
        if refusal is not None and refusal.again is not None:
            self.asks(replace(cast("TakeOut", refusal.again), sure=True))
        else:
            assert refusal is None or "already there" in refusal.sentence, (command, refusal)
