"""Looking at the steps beside the one in the middle."""

from finishing_tui.talk.conversation import Talk


def turn(talk: Talk, by: int) -> None:
    """Look ``by`` so many steps on, or back; past the last one are the steps that are all done."""
    steps, here = len(talk.state.steps), talk.shown_step
    at = (steps if here is None else here) + by
    if not 0 <= at < steps:
        talk.refuse("that is the last step" if by > 0 else "that is the first step")
        return
    turn_to(talk, at)


def turn_to(talk: Talk, step: int) -> None:
    """Look at ``step``, counted from 0; at the one under the needles it is no looking."""
    talk.looking = None if step == talk.state.current else step
