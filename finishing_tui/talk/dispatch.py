"""What both mouths call: to begin, and for an action, the one way from a key or a word to what an act does."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.held import hold


def begin(talk: Talk) -> None:
    """Let the first question be about files that were changed since they were taken, if they were.

    It waits until ``talk.asks(None)`` has it asked; nothing is asked where the garment is only looked at.
    """
    plan = None if talk.read_only else talk.hand.changed_plan()
    if plan is not None:
        from finishing_tui.talk.changed import changed  # noqa: PLC0415  (the audit: only after a change)

        talk.waits(changed(talk, plan))


def ask_for(talk: Talk, action: str, held: tuple[int, int] | None = None) -> None:
    """Do what the action asks for, or ask what must be known first.

    ``held``: how many events were known when its key came first, and again, where that is held down since.
    """
    act = BY_ID[action]
    talk.quiet()
    again, talk.again = talk.again, None
    if again is not None and again[0] == action and again[1] is talk.state and not talk.typed:
        if again[2] is None:
            talk.take_back()
        else:
            talk.do(again[2], action)
        talk.asks(None)
    elif talk.read_only and not act.changes_nothing:
        talk.refuse(talk.read_only)
    elif held is not None and act.held != "each" and not talk.typed:
        hold(talk, act, held)
    elif not talk.typed or act.digits or _forgets(talk, action):
        try:
            talk.asks(act.does(talk))
        except FinishingError as error:  # sums of a recipe that came with a stranger's journal, which nothing read
            talk.refuse(str(error))
    talk.returned = False


def _forgets(talk: Talk, action: str) -> bool:
    """Return whether typed digits are to be forgotten for ``action``: only when it is asked for once more.

    They are a count that was not taken yet, or were typed by accident; which of the two, nobody can guess.
    """
    if talk.warned == (action, talk.typed):
        talk.typed, talk.warned = "", None
        return True
    talk.warned = (action, talk.typed)
    key, take = talk.keys.shown(f"needles.{action}"), talk.keys.begins("needles.finish")
    talk.refuse(f"{take} uses {talk.typed}; {key} again clears it and goes on")
    return False
