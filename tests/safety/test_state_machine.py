"""Whatever a knitter does, in whatever order: nothing raises, nothing is lost, and everything can be taken back."""

import json
from contextlib import suppress
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import OUTSIDE, Posting
from finishing_tui.garment.commands import (
    AlreadyAt,
    ChooseMirror,
    ChoosePace,
    Command,
    Finish,
    LeaveOut,
    Other,
    PickUpGarment,
    Press,
    PutGarmentDown,
    PutRight,
    Refusal,
    Replan,
    TakeCount,
    TakeMeasure,
    TakeOut,
    TakeUp,
    WriteNote,
)
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.events import Act
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import snapshot_of, state_of
from finishing_tui.garment.ways import counted_stage
from finishing_tui.garment.work import Reached
from finishing_tui.glance import coming_back, glance, look_at, recount_view, rip_points
from finishing_tui.glance.recounts import ANSWERS
from finishing_tui.talk.offers import offers
from tests.examples import share
from tests.garment.no_planning import no_planning
from tests.garment.paper import NOON, Paper, plan_for
from tests.garment.recipes import EDGE, NECKBAND, UNEQUAL

NOW = datetime.fromisoformat(NOON) + timedelta(hours=1)
absurd = st.sampled_from((-1, 0, 1, 7, 10**5, 10**9, -(10**12)))
answers = st.sampled_from([None, *(answer for answer, _ in ANSWERS)])
repairs = st.sampled_from(("space-the-rest", "first-round", "rip-back", "as-it-is"))


def essence(state: State) -> tuple[object, ...]:
    """Return all that taking back must restore: the plan, the ledger, how every step stands, and which is current."""
    return state.plan, state.ledger, state.steps, state.current, state.order


class AtTheNeedles(RuleBasedStateMachine):
    """A garment on paper under random commands, with a stack of what it was before each of them."""

    paper: Paper

    @initialize(
        where=st.sampled_from(((EDGE, 0), (EDGE, 0), (NECKBAND, 6), (NECKBAND, 8), (NECKBAND, 0), (UNEQUAL, 0))),
        hand=st.sampled_from(("right", "left")),
    )
    def begin(self, where: tuple[str, int], hand: Any) -> None:
        """Begin a garment, sometimes well into the recipe; what a step under way can do is soon left behind."""
        recipe, skip = where
        self.paper = Paper(plan_for(recipe, hand=hand))
        self.before: list[tuple[object, ...]] = []
        self.undone: list[tuple[object, ...]] = []
        self.kept: tuple[int, str] | None = None
        for _ in range(skip):
            self.finish_whole()

    def do(self, command: Command) -> Refusal | None:
        """Carry a command out; a refusal must be a sentence and change nothing."""
        before, rows = self.paper.state, len(self.paper.rows)
        refusal = self.paper.do(command)
        if refusal is not None:
            assert refusal.sentence
            assert refusal.sentence.isprintable()
            assert self.paper.state is before
        elif len(self.paper.rows) > rows and any(isinstance(event, Act) for event in self.paper.latest):
            self.before.append(essence(before))
            self.undone.clear()
        return refusal

    @property
    def along_an_edge(self) -> bool:
        """Whether a section of an edge can be counted."""
        work = self.paper.state.standing.work if self.paper.state.standing else None
        return work is not None and counted_stage(work) is not None

    def finish_whole(self) -> None:
        """Work the step under the needles to its end, with as few commands as it takes."""
        for _ in range(200):
            work = self.paper.state.standing.work if self.paper.state.standing else None
            if work is None or work.complete or self.do(Press()) is not None:
                break
        self.sure(Finish())

    def sure(self, command: Command) -> None:
        """Carry a command out, and when it is asked again, say so."""
        refusal = self.do(command)
        if refusal is not None and refusal.again is not None:
            self.do(refusal.again)

    @rule(times=st.integers(1, 25))
    def press(self, times: int) -> None:
        """Press some times."""
        for _ in range(times):
            self.do(Press())

    @precondition(lambda self: not self.along_an_edge)
    @rule()
    def whole_step(self) -> None:
        """Work a step to its end."""
        self.finish_whole()

    @rule(data=st.data())
    def offered(self, data: st.DataObject) -> None:
        """Do one of the things on offer; those that only need to be asked again are."""
        looking = data.draw(st.none() | st.integers(0, len(self.paper.state.steps) - 1))
        found = [offer for offer in offers(self.paper.state, looking) if offer.command is not None]
        if found:
            offer = data.draw(st.sampled_from(found))
            if offer.sides:
                self.do(Other(data.draw(st.sampled_from(offer.sides))[0]))
            elif offer.command is not None:
                self.sure(offer.command)

    @rule(side=st.sampled_from(("", "front", "back", "nowhere")))
    def other(self, side: str) -> None:
        """Do the other thing."""
        self.do(Other(side))

    @rule(
        off=st.integers(-4, 4) | absurd,
        answer=answers,
        left=st.none() | st.integers(0, 20) | absurd,
        repair=repairs,
        place=st.sampled_from(("", "", "", "front", "neck", "centre", "band", "edge", "nowhere")),
    )
    def count(self, off: int, answer: Any, left: int | None, repair: Any, place: str) -> None:
        """Count what is there, or anything at all."""
        state = self.paper.state
        work = state.standing.work if state.standing else None
        loops = work.progress[min(work.at, len(work.stages) - 1)].mark.loops if work else 0
        known = state.ledger.on(place) if place else loops
        self.do(TakeCount(known + off, place, answer, left, repair))

    @precondition(lambda self: self.along_an_edge)
    @rule(off=st.integers(-3, 3), answer=answers, left=st.none() | st.integers(0, 9), data=st.data())
    def recount(self, off: int, answer: Any, left: int | None, data: st.DataObject) -> None:
        """Lay the ways of a recount side by side and take one; what was shown is what happens."""
        state = self.paper.state
        work = state.standing.work if state.standing else None
        loops = work.progress[min(work.at, len(work.stages) - 1)].mark.loops if work else 0
        try:
            seen = recount_view(state, max(loops + off, 0), answer, left)
        except FinishingError:
            return
        assert seen.commands
        command, row = data.draw(st.sampled_from([*zip(seen.commands, seen.answers.rows, strict=True)]))
        if seen.matches or answer is not None:
            refusal = self.do(command)
            if refusal is None and self.paper.state.standing and self.paper.state.standing.work:
                assert any(
                    row.edge is not None and one.mark.units == row.edge.at
                    for one in self.paper.state.standing.work.progress
                )

    @rule(step=st.integers(0, 19) | absurd, stage=st.integers(0, 5) | absurd, units=st.integers(0, 30) | absurd)
    def rip(self, step: int, stage: int, units: int) -> None:
        """Take work out to anywhere."""
        self.sure(TakeOut(step, stage, units))

    @precondition(lambda self: self.paper.state.order)
    @rule(data=st.data())
    def rip_to_a_point(self, data: st.DataObject) -> None:
        """Take work out to one of the places on offer, all later ones falling with it."""
        point = data.draw(st.sampled_from(rip_points(self.paper.state)))
        with suppress(FinishingError):  # no row has just so many stitches left, which is said in a sentence
            self.sure(point.to(data.draw(st.integers(0, point.most))) if point.most else point.command)

    @rule(step=st.integers(0, 19) | absurd, leave=st.booleans())
    def another_step(self, step: int, *, leave: bool) -> None:
        """Take another step up, or leave one out."""
        self.sure(LeaveOut(step) if leave else TakeUp(step))

    @rule(step=st.integers(0, 19) | absurd)
    def done_elsewhere(self, step: int) -> None:
        """Be at a step already, those before it done elsewhere."""
        self.do(AlreadyAt(step))

    @rule(ahead=st.integers(1, 4), data=st.data())
    def done_elsewhere_and_taken_out_again(self, ahead: int, data: st.DataObject) -> None:
        """Be at a step a little further on, and rip back to any begun before: nothing is done whose stitches are gone.

        All that stands was begun before that step, and what was begun after it is to come.
        """
        state = self.paper.state
        if state.current is None or self.do(AlreadyAt(state.current + ahead)) is not None:
            return
        order = self.paper.state.order
        step = data.draw(st.sampled_from(order))
        begun = order[: order.index(step)]
        self.sure(TakeOut(step))
        state = self.paper.state
        if state.current == step:
            assert state.order == (*begun, step)
            assert {at for at, one in enumerate(state.steps) if one.status == "done"} <= {*begun}

    @rule(data=st.data(), times=st.integers(1, 4))
    def by_turns(self, data: st.DataObject, times: int) -> None:
        """Work another step that is open for a while, and then the one before again."""
        first = self.paper.state.current
        open_steps = [
            at
            for at, one in enumerate(self.paper.state.steps)
            if one.status in {"to-come", "under-way"} and at != first
        ]
        if first is None or not open_steps:
            return
        for step in (data.draw(st.sampled_from(open_steps)), first):
            self.do(TakeUp(step))
            for _ in range(times):
                self.do(Press())

    @precondition(lambda self: len(self.paper.state.order) > 1)
    @rule()
    def rip_the_latest(self) -> None:
        """Take the step begun last out to its start: on a place it did not work on, nothing changes.

        Neither do the progress of any other step, nor what it made.
        """
        before = self.paper.state
        step = before.order[-1]
        work = before.steps[step].work
        assert work is not None
        worked_on = {account for one in entered(work) if isinstance(one, Posting) for account in (one.source, one.to)}
        self.do(TakeOut(step))
        after = self.paper.state
        for place in {*before.ledger.live, *after.ledger.live} - worked_on:
            assert after.ledger.on(place) == before.ledger.on(place)
        for at, one in enumerate(before.steps):
            assert at == step or after.steps[at] == one

    @precondition(lambda self: self.paper.state.ledger.live)
    @rule(data=st.data(), difference=st.integers(-12, 3))
    def put_right_here(self, data: st.DataObject, difference: int) -> None:
        """Make stitches on a place that holds some, or work some off."""
        self.do(PutRight("here", data.draw(st.sampled_from(sorted(self.paper.state.ledger.live))), difference))

    @rule(command=st.sampled_from((Finish(), Finish(sure=True))))
    def finish(self, command: Finish) -> None:
        """Say that the step is done."""
        self.do(command)

    @rule(
        command=st.sampled_from(
            (
                ChoosePace("loop"),
                ChoosePace("spot"),
                ChoosePace("run"),
                ChooseMirror(as_worked=True),
                ChooseMirror(as_worked=False),
                WriteNote("a note"),
                WriteNote(""),
                WriteNote("x" * 501),
                WriteNote("two\nlines"),
                PickUpGarment(),
                PutGarmentDown("on the chair"),
                TakeMeasure("61"),
                TakeMeasure(""),
                TakeMeasure("\x1b[2J"),
            )
        )
    )
    def aside(self, command: Command) -> None:
        """Do what is not work."""
        self.do(command)

    @rule(rows=st.integers(11, 30))
    def replan(self, rows: int) -> None:
        """Change the knitter's own numbers for the steps that are to come."""
        plan = self.paper.state.plan
        if "rows" in plan.recipe.number:
            self.do(Replan(replace(plan, own={"rows": rows}), "counted again"))

    @rule(
        how=st.sampled_from(("here", "re-space", "first-round", "as-it-is")),
        place=st.sampled_from(("neck", "band", "centre", "edge", "nowhere")),
        difference=st.integers(-3, 3) | absurd,
        step=st.none() | st.integers(0, 19) | absurd,
    )
    def put_right(self, how: Any, place: str, difference: int, step: int | None) -> None:
        """Put a difference right that may not be there."""
        self.do(PutRight(how, place, difference, step))

    @rule(times=st.integers(1, 4))
    def take_back(self, times: int) -> None:
        """Take groups back: everything is exactly as it was before each."""
        for _ in range(times):
            after = essence(self.paper.state)
            refusal = self.paper.take_back()
            assert (refusal is not None) == (not self.before)
            if refusal is None:
                assert essence(self.paper.state) == self.before.pop()
                self.undone.append(after)

    @rule(times=st.integers(1, 4))
    def put_back(self, times: int) -> None:
        """Put groups back: everything is exactly as it was after each."""
        for _ in range(times):
            before = essence(self.paper.state)
            refusal = self.paper.put_back()
            assert (refusal is not None) == (not self.undone)
            if refusal is None:
                assert essence(self.paper.state) == self.undone.pop()
                self.before.append(before)

    @rule()
    def keep_a_snapshot(self) -> None:
        """Keep what has come so far as a snapshot, in the text it would have on disk."""
        self.kept = len(self.paper.rows), json.dumps(snapshot_of(self.paper.state))

    @rule()
    def every_offer_is_accepted_or_asked_again(self) -> None:
        """Whatever is on offer, here or looking at any step, is carried out, or asked again in a sentence."""
        state = self.paper.state
        for looking in (None, *range(len(state.steps))):
            for offer in offers(state, looking):
                commands: list[Command] = [Other(side) for side, _ in offer.sides]
                if offer.command is not None and not commands:
                    commands = [offer.command]
                for command in commands:
                    answer = decide(state, command)
                    assert not isinstance(answer, Refusal) or (answer.sentence and answer.again is not None)

    @invariant()
    def the_ledger_balances(self) -> None:
        """Add all accounts up: the sum is zero, and no place is negative."""
        stitches = self.paper.state.ledger.stitches
        assert sum(stitches.values()) == 0
        assert all(count >= 0 for account, count in stitches.items() if account not in OUTSIDE)

    @invariant()
    def stages_follow_one_another(self) -> None:
        """Nothing is begun beyond the stage under way."""
        for standing in self.paper.state.steps:
            if standing.work is not None:
                later = standing.work.progress[standing.work.at + 1 :]
                assert all(one.mark == Reached() for one in later)

    @invariant()
    def what_is_done_can_be_taken_out(self) -> None:
        """Every step that is done has its work, and is among those that can be ripped back to."""
        state = self.paper.state
        done = {at for at, one in enumerate(state.steps) if one.status == "done"}
        assert done <= {*state.order}
        assert {*state.by_turns} <= {*state.order[1:]}

    @invariant()
    def the_first_step_can_always_be_taken_out(self) -> None:
        """Whatever was counted, put right or done by turns, there is a way back."""
        state = self.paper.state
        first = state.order[0] if state.order else None
        if first is not None:
            answer = decide(state, TakeOut(first, sure=True))
            assert not isinstance(answer, Refusal) or "already there" in answer.sentence

    @invariant()
    def it_can_be_seen(self) -> None:
        """There is always something to see."""
        state = self.paper.state
        seen = glance(state, NOW)
        assert seen.heading
        assert offers(state)
        coming_back(state, NOW)
        rip_points(state)
        looked = look_at(state, len(self.paper.rows) % len(state.steps), NOW)
        assert looked.heading

    def teardown(self) -> None:
        """Replay what was stored, from its start and from a snapshot, with no spacing or planning: the same state."""
        if not hasattr(self, "paper"):
            return
        with pytest.MonkeyPatch.context() as patch:
            no_planning(patch)
            assert self.paper.replayed() == self.paper.state
            if self.kept is not None:
                seq, text = self.kept
                assert self.paper.replayed(after=seq, state=state_of(json.loads(text))) == self.paper.state


TestAtTheNeedles = AtTheNeedles.TestCase
TestAtTheNeedles.settings = settings(max_examples=share(40), stateful_step_count=40)
