"""What may be done next: the one place that footer, help, palette, prompt and speech read.

What would be refused for good is not offered: a key for it still says why.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from finishing_tui.garment.commands import (
    ChooseMirror,
    ChoosePace,
    Command,
    Finish,
    LeaveOut,
    Other,
    Press,
    TakeUp,
)
from finishing_tui.garment.decide.may import may
from finishing_tui.garment.decide.mirror import choice
from finishing_tui.garment.events import Pace
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import called, other_at, planned
from finishing_tui.garment.work import Work
from finishing_tui.glance.actions import ActionId
from finishing_tui.glance.counting import countables
from finishing_tui.glance.what_if import can_ask


@dataclass(frozen=True, slots=True)
class Offer:
    """One thing that may be done now.

    ``label``: in a word or two, for the footer; ``what``: what it would do here, in a sentence; ``command``: what to
    ask for. Actions that first open something (a recount, a note, help) carry no command. ``sides``: needles to choose
    between, as (key of the place, its words).
    """

    action: ActionId
    label: str
    what: str
    command: Command | None = None
    sides: tuple[tuple[str, str], ...] = ()


_NEXT_PACE: dict[Pace, Pace] = {"loop": "spot", "spot": "run", "run": "loop"}


def offers(state: State, looking_at: int | None = None) -> tuple[Offer, ...]:
    """Return what may be done now; ``looking_at``: another step that is looked at, counted from 0."""
    work = state.standing.work if state.standing else None
    found = [*_working(state, work), *_finishing(state, work, looking_at)]
    if state.top:
        found.append(Offer("take_back", "tink", f"take back {state.top_label or 'the last press'}"))
    if state.undone:
        found.append(Offer("put_back", "put back", "let what was taken back stand again"))
    if countables(state):
        found.append(Offer("recount", "recount", "count what is there, and space the rest anew if need be"))
    if can_ask(state):
        found.append(Offer("what_if", "what if", "look at another plan for this part, before it is taken"))
    if state.order:
        found.append(Offer("rip_back", "took it out", "say to where the work was taken out"))
    two_ways = choice(state)
    if two_ways is not None:
        worked = two_ways[1].as_worked
        what = f"work {two_ways[1].title} {'as planned' if worked else 'as the first side was worked'}"
        found.append(Offer("mirror", "as planned" if worked else "as worked", what, ChooseMirror(not worked)))
    if state.plan.recipe.number:
        found.append(Offer("numbers", "numbers", "look at the numbers of this garment, and change one"))
    found.append(Offer("note", "note", "write a note at this step"))
    spots = work is not None and any(stage.unit == "spot" for stage in work.stages)
    if spots:
        pace = _NEXT_PACE[state.pace]
        what = f"a press stands for a {state.pace}; change that to a {pace}"
        found.append(Offer("pace", f"pace: {state.pace}", what, ChoosePace(pace)))
    here = state.current if looking_at is None else looking_at
    found += _looking(state, here)
    if here is not None and state.plan.is_for(here):
        what = f"leave out step {here + 1}"
        found.append(Offer("leave_out", "leave out", what, LeaveOut(here)))
    if here is not None:
        found.append(Offer("technique", "technique", f"how the hands do step {here + 1}, with drawings"))
    found.append(Offer("ledger", "ledger", "where everything is, and what was entered last"))
    found.append(Offer("help", "help", "all keys, and how this step is done"))
    found.append(Offer("put_down", "put down", "put the garment down; it warns if something is not saved"))
    return _possible(state, found)


def _possible(state: State, found: Iterable[Offer]) -> tuple[Offer, ...]:
    """Return what is accepted, or asked again; of the needles to choose between only those."""
    possible = []
    for offer in found:
        if offer.sides:
            sides = tuple(side for side in offer.sides if may(state, Other(side[0])))
            if sides:
                possible.append(replace(offer, command=Other(sides[0][0]), sides=sides))
        elif offer.command is None or may(state, offer.command):
            possible.append(offer)
    return tuple(possible)


def _working(state: State, work: Work | None) -> list[Offer]:
    if state.current is None:
        return []
    if work is None:
        return [Offer("press", "begin", "begin this step", Press())]
    if work.complete:
        return []
    stage, progress = work.stages[work.at], work.progress[work.at]
    done = [Offer("press", "done", "the next thing is done", Press())]
    if stage.unit == "spot":
        spot = progress.mark.units + 1
        did = called(other_at(progress), planned(progress, spot))
        done.append(Offer("other", f"{stage.spot} {spot} {did}", f"{stage.spot} {spot} was {did} instead", Other()))
    if stage.unit == "pair":
        here = state.plan.here(state.ledger)
        sides = tuple((place, here.name(place)) for place in (stage.front, stage.back))
        label, what = "two together", "two were worked together on one needle"
        if stage.bars:
            label, what = "two at once", "two bars of one side were taken at once"
        done.append(Offer("other", label, what, Other(sides[0][0]), sides))
    return done


def _finishing(state: State, work: Work | None, looking_at: int | None) -> list[Offer]:
    if looking_at is not None and looking_at != state.current:
        return [Offer("finish", "take it up", f"go on with step {looking_at + 1}", TakeUp(looking_at))]
    if state.current is None:
        return []
    if work is None:
        return [Offer("finish", "begin", "begin this step", Finish())]
    if not work.complete and work.stages[work.at].takes_all:
        stage = work.stages[work.at]
        return [Offer("finish", "the lot", f"all of {stage.title} is done", Finish())]
    return [Offer("finish", "step done", "this step is done", Finish())]


def _looking(state: State, here: int | None) -> list[Offer]:
    steps = len(state.steps)
    at = steps if here is None else here
    found = []
    if at > 0:
        found.append(Offer("look_back", "look back", f"look at step {at}"))
    if at + 1 < steps:
        found.append(Offer("look_on", "look on", f"look at step {at + 2}"))
    return found
