"""Steps: finishing one, looking at another, taking it up, and leaving one out."""

from finishing_tui.garment.commands import Finish, LeaveOut, TakeUp
from finishing_tui.plain import telling
from finishing_tui.plain.held import Held
from finishing_tui.plain.questions import Reply, whole


def finish(held: Held, _: str) -> Reply:
    """Finish the step under way, take the lot of its part, or take up the one that is looked at."""
    offer = held.offer("finish")
    if offer is not None and offer.command is not None:
        return held.do(offer.command, "enter"), None
    if held.looking is not None:
        return ["The step that is looked at cannot be taken up; step alone goes back to the work."], None
    return held.do(Finish(), "enter"), None


def turn(held: Held, by: int) -> Reply:
    """Look at the step before or after the one that is looked at."""
    here, steps = held.shown_step, len(held.state.steps)
    at = (steps if here is None else here) + by
    if not 0 <= at < steps:
        return [f"That is the {'last' if by > 0 else 'first'} step."], None
    return _look_at(held, at), None


def _look_at(held: Held, step: int) -> list[str]:
    held.looking = None if step == held.state.current else step
    if held.looking is None:
        return telling.heading(held.seen())
    seen = held.shown()
    return [*telling.beginning(seen), f"it stands: {telling.upcoming(seen.face)}", *telling.standing(seen.face)]


def _numbered(held: Held, rest: str) -> int | None:
    step = whole(rest)
    return step - 1 if step is not None and 1 <= step <= len(held.state.steps) else None


def _which(held: Held) -> Reply:
    return [f"The steps are 1 to {len(held.state.steps)}. Nothing was done."], None


def step(held: Held, rest: str) -> Reply:
    """Look at a step by its number; without one, go back to the work."""
    if not rest:
        held.looking = None
        return telling.heading(held.seen()), None
    step = _numbered(held, rest)
    return _which(held) if step is None else (_look_at(held, step), None)


def take_up(held: Held, rest: str) -> Reply:
    """Take up a step by its number, or the one that is looked at."""
    if not rest and held.looking is not None:
        return finish(held, "")
    step = _numbered(held, rest)
    return _which(held) if step is None else (held.do(TakeUp(step), f"take up {step + 1}"), None)


def leave_out(held: Held, rest: str) -> Reply:
    """Leave out a step by its number, or the one that is looked at."""
    step = _numbered(held, rest) if rest else held.shown_step
    if step is None:
        return _which(held) if rest else (["Every step is done; nothing is left to leave out."], None)
    return held.do(LeaveOut(step), f"leave out {step + 1}", f"step {step + 1} is left out."), None
