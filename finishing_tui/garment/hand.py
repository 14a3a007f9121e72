"""A garment in hand: the one object that holds its journal and its state, and the only one that changes anything.

A command goes to ``decide``, its events to the journal, and from there to ``evolve``. This is also where the journal is
asked for what undo needs, so that ``decide`` and ``evolve`` stay pure.
"""

import os
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from itertools import groupby
from operator import attrgetter
from pathlib import Path
from typing import Self, cast

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import Command, Hold, PickUpGarment, PutBackAgain, PutGarmentDown, Refusal, TakeBack
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.steps import begin, next_step
from finishing_tui.garment.events import Act, AnyAct, Begun, Event, SittingBegan, Strayed, Taken, Worked
from finishing_tui.garment.evolve import DoesNotFit, Happening, begun_with, evolve, first_state, sound
from finishing_tui.garment.given_up import GivenUp, give_up
from finishing_tui.garment.journal import NAME, Journal, NoJournal, NotSaved, Row, Unwritable, moment
from finishing_tui.garment.meaning import understood
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.sources import FILE, recipe_path, same_garment, same_text, with_id
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import SNAPSHOT, from_row, snapshot_of, state_of, to_store

SNAPSHOT_EVERY = 500
"""Events between two snapshots: few enough that what is left to replay takes no time."""


class InHand:
    """A garment in hand, or one that is only looked at (``look``)."""

    def __init__(self, folder: Path, journal: Journal, state: State, seq: int, clock: Clock) -> None:
        self.folder = folder
        self.state = state
        self._journal = journal
        self._clock = clock
        self._seq = seq
        self._group = 0  # the one written last in this sitting
        self._snapshot_at = seq
        self._began = clock.ticks()
        self._sits = False  # a sitting was begun here
        self._lies_at = folder.resolve()  # for when the folder is gone
        self._id = state.plan.name  # a changed plan may name another, and perhaps is not saved
        self.given_up: GivenUp | None = None
        """What could not be saved when it was put down; None as long as nothing was given up."""

    @classmethod
    def open(
        cls,
        folder: Path,
        *,
        look: bool = False,
        clock: Clock | None = None,
        on_change: Callable[[], None] | None = None,
    ) -> Self:
        """Open the garment in ``folder``; one that has no journal yet takes its recipe into a new one.

        ``on_change`` is called from another thread when something was saved, or could not be.

        Raises ``FinishingError`` with a sentence: a bad garment or recipe file, a journal in use, damaged or newer.
        """
        clock = clock or Clock()
        if not look and not os.path.lexists(folder / NAME):
            opening = _opening(_plan(folder))  # what is wrong with the files is said before a journal is begun
            return cls._begun(folder, opening, Journal.create(folder, on_change=on_change), clock)
        journal = Journal.open(folder, look=look, on_change=on_change)
        try:
            if not look and not journal.last_seq:  # its first sitting was cut off before anything was kept
                return cls._begun(folder, _opening(_plan(folder)), journal, clock)
            state, seq = _state(journal)
        except BaseException:
            journal.close()
            raise
        return cls(folder, journal, state, seq, clock)

    @classmethod
    def _begun(cls, folder: Path, opening: tuple[Taken | Begun, ...], journal: Journal, clock: Clock) -> Self:
        try:
            hand = cls(folder, journal, first_state(cast("Taken", opening[0])), 0, clock)
            hand._store(opening)
        except BaseException:
            journal.close()
            raise
        return hand

    def do(self, command: Command, *, joins: bool = False) -> Refusal | None:
        """Carry ``command`` out; return why not, if it was refused, and nothing has changed then.

        ``joins``: as one more of the group that was written last, where that stands: both are taken back together.
        """
        events = decide(self.state, command)
        if isinstance(events, Refusal):
            return events
        if events:
            try:
                self._store(events, joins=joins and self.state.top == self._group)
            except (DoesNotFit, NotSaved, Unwritable) as error:
                return Refusal(str(error))
        return None

    def take_back(self) -> Refusal | None:
        """Take the latest standing group back, whatever it was."""
        if not self.state.top:
            return Refusal("nothing is left to take back")
        try:
            acts = self._acts(self.state.top)
            under = (acts[0].under or 0) if acts else 0
            standing = self._acts(under) if under else ()
        except FinishingError as error:  # the disk, or what an event long ago is said to be
            return Refusal(str(error))
        if not acts or (under and not standing):
            return Refusal("what was done last is not in the journal as it was done; it cannot be taken back")
        return self.do(TakeBack(self.state.top, acts, under, standing[0].label if standing else None))

    def hold(self, since: int, until: int | None = None) -> int:
        """Make one group of what was done after event ``since``, by a key held down; return how many presses that is.

        What it did past a stop is taken back, or past event ``until``, where that is given. Nothing is changed where
        anything else was done meanwhile.
        """
        try:
            happened = tuple(from_row(row) for row in self._journal.rows(since))
            groups = tuple((group, _acts_of(some)) for group, some in groupby(happened, key=attrgetter("group")))
            under = (groups[0][1][0].under or 0) if groups and groups[0][1] else 0
            standing = self._acts(under) if under else ()
        except FinishingError:  # the disk: the presses stand as they are, one by one
            return 0
        most = None if until is None else sum(group <= until for group, _ in groups)
        if all(acts and acts[0].under is not None for _, acts in groups) and (len(groups) > 1 or most == 0):
            self.do(Hold(groups, most, under, standing[0].label if standing else None))
        return sum(isinstance(act, Worked | Strayed) for act in self._acts(self.state.top)) if groups else 0

    def put_back(self) -> Refusal | None:
        """Let the group that was taken back last stand again."""
        if not self.state.undone:
            return Refusal("nothing was taken back that could be put back")
        group = self.state.undone[-1]
        try:
            acts = self._acts(group)
        except FinishingError as error:  # the disk, or what an event long ago is said to be
            return Refusal(str(error))
        if not acts:
            return Refusal("what was taken back is not in the journal as it was done; it cannot be put back")
        return self.do(PutBackAgain(group, acts))

    def pick_up(self) -> Refusal | None:
        """Begin a sitting."""
        self._began = self._clock.ticks()
        refusal = self.do(PickUpGarment())
        self._sits = refusal is None
        return refusal

    def put_down(self, where: str = "") -> bool:
        """End the sitting if one is under way, leave one small file, and free the lock.

        Say if everything is saved: False too where the end of the sitting, or ``where``, could not be taken. What is
        not saved is put into a rescue file if there is any place for one; ``given_up`` then says what came of it.
        """
        refusal = None
        if self.state.sittings and not self.state.sittings[-1].ended:
            refusal = self.do(PutGarmentDown(where))
        self._journal.snapshot(self._seq, SNAPSHOT, snapshot_of(self.state))
        saved = self._journal.close() and refusal is None
        if not saved and self.given_up is None:
            self.given_up = give_up(self._lies_at, self._id, self._journal, ended=refusal is None, where=where.strip())
        return saved

    def close(self) -> bool:
        """Stop looking, or let go of a garment that no sitting was begun for; return whether everything is saved."""
        return self._journal.close()

    @property
    def unsaved(self) -> int:
        """How many commands are not on the disk yet."""
        return self._journal.unsaved

    @property
    def trouble(self) -> str:
        """What keeps them from being saved, as a sentence; empty if nothing does."""
        return self._journal.trouble or ""

    @property
    def lasted(self) -> int | None:
        """How long the sitting under way here has lasted, in milliseconds by a clock that never jumps; else None."""
        return self._clock.ticks() - self._began if self._sits else None

    def flush(self, timeout: float) -> bool:
        """Wait until everything is on the disk, at most ``timeout`` seconds; say whether it is."""
        return self._journal.flush(timeout)

    def changed_plan(self) -> Plan | None:
        """Return the plan as its files have it now, if they were edited since it was taken; None if they were not.

        Numbers and rounds that were changed at the needles are not in the files, so only the texts are compared.
        Files that cannot be read any more change nothing: the journal rules.
        """
        plan = self.state.plan
        try:
            recipe = recipe_path(self.folder, plan.source)
            if same_garment(self.folder / FILE, plan.file_text) and same_text(recipe, plan.text):
                return None
            changed = _plan(self.folder, plan)
        except FinishingError:
            return None
        # What only the bytes differ in (line ends, look-alike spaces) is no change, and neither is the id of a copy.
        same = with_id(changed.file_text, "") == with_id(plan.file_text, "") and changed.text == plan.text
        return None if same else changed

    def lately(self, most: int) -> tuple[Happening, ...]:
        """Return the last of what happened, about ``most`` events in whole groups, in order; no more of it is read.

        Raises ``FinishingError`` with a sentence where the journal cannot be read.
        """
        rows = tuple(self._journal.rows(max(self._seq - most, 0)))
        if rows and rows[0].group != rows[0].seq:  # in the middle of one, which may be all that a held key did
            rows = (*self._journal.rows(rows[0].group - 1),)
        return tuple(from_row(row) for row in rows)

    def news(self) -> tuple[Happening, ...]:
        """Return what another window has done since what is known here; it reads the disk, and may be asked anywhere.

        Raises ``FinishingError`` with a sentence where the journal cannot be read.
        """
        return tuple(from_row(row) for row in self._journal.rows(self._seq))

    def hear(self, news: Iterable[Happening], many: int) -> None:
        """Take ``news`` that were asked for with ``many`` events known here; nothing where they are known by now.

        Raises ``DoesNotFit``; then nothing is taken.
        """
        if many == self._seq:
            state, seq = self.state, self._seq
            for one in news:
                state, seq = evolve(state, one), seq + 1
            self.state, self._seq = understood(state), seq

    @property
    def known(self) -> int:
        """How many events are known here."""
        return self._seq

    def _acts(self, group: int) -> tuple[AnyAct, ...]:
        return _acts_of(from_row(row) for row in self._journal.group(group))

    def _store(self, events: Sequence[Event], *, joins: bool = False) -> None:
        if joins and isinstance(events[0], Act):
            events = (replace(events[0], under=None), *events[1:])
        began = isinstance(events[0], SittingBegan)  # the first event of its own sitting
        at, after_ms, state = self._clock.now(), self._clock.ticks() - self._began, self.state
        group = self._group if joins else self._seq + 1
        for event in events:  # before anything is written: what does not fit must not be in the journal
            state = evolve(state, Happening(group, moment(at), after_ms, event))
        sitting = len(self.state.sittings) + began
        rows = self._journal.append(to_store(events), at=at, sitting=sitting, after_ms=after_ms, joins=joins)
        self.state, self._seq, self._group = state, rows[-1].seq, group
        if self._seq - self._snapshot_at >= SNAPSHOT_EVERY:
            self._journal.snapshot(self._seq, SNAPSHOT, snapshot_of(self.state))
            self._snapshot_at = self._seq


def _plan(folder: Path, taken: Plan | None = None) -> Plan:
    from finishing_tui.garment.file import plan_of, with_own_kept  # noqa: PLC0415  (the reader: not while under way)

    plan = plan_of(folder)
    return plan if taken is None else with_own_kept(plan, taken)


def _acts_of(happened: Iterable[Happening]) -> tuple[AnyAct, ...]:
    return tuple(one.event for one in happened if isinstance(one.event, Act))


def _opening(plan: Plan) -> tuple[Taken | Begun, ...]:
    """Return what a journal begins with: the plan taken and, where a step can begin, the first one begun."""
    taken = Taken(plan, plan.opening(), len(plan.recipe.step))
    state = first_state(taken)
    first = next_step(state, -1)
    begun = None if first is None else begin(state, first)
    return (taken, begun) if isinstance(begun, Begun) else (taken,)


def _state(journal: Journal) -> tuple[State, int]:
    """Return the state of a journal, from the newest snapshot or, where there is none, from its first event."""
    snapshot = journal.newest_snapshot(SNAPSHOT)
    if snapshot is not None:
        seq, body = snapshot
        try:
            return _replayed(understood(sound(state_of(body))), seq, journal.rows(after=seq))
        except (ValueError, DoesNotFit):
            pass  # a snapshot is only a cache; what happened is in the events
    rows = journal.rows()
    first = next(rows, None)
    if first is None:
        raise NoJournal("This garment's journal is empty: its first sitting was cut off before anything was kept.")
    return _replayed(begun_with(from_row(first)), first.seq, rows)


def _replayed(state: State, seq: int, rows: Iterable[Row]) -> tuple[State, int]:
    for row in rows:
        state = evolve(state, from_row(row))
        seq = row.seq
    return understood(state), seq
