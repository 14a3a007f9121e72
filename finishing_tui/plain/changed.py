"""A recipe or a garment's file that was changed since it was taken: what is another way, and whether to take it."""

from finishing_tui.craft.words import sentence
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.plain.questions import Choose, Hands, Question, Reply, YesOrNo

MOST_LINES = 12
"""So many changes are said; of more, only how many there are."""


def changed(state: State, plan: Plan) -> Question:
    """Return the question whether ``plan`` is to be taken, with what it changes."""
    from finishing_tui.glance.plan_changes import plan_change  # noqa: PLC0415  (the audit: only after a change)

    change = plan_change(state, plan)
    told = ["The recipe or the garment's file was changed since it was taken."]
    lines = change.lines[:MOST_LINES]
    more = len(change.lines) - len(lines)
    told += [sentence(line) for line in (*lines, *([f"and {more} more"] if more else []))]

    def taken(hands: Hands) -> Reply:
        refusal = hands.attempt(change.command)
        return [sentence(refusal.sentence) if refusal else "the change is taken."], None

    if change.refusal:
        stays = ["go on by the plan there is"]
        return Choose([*told, sentence(change.refusal)], "It cannot be taken.", stays, lambda *_: ([], None))
    return YesOrNo([*told, "Take the change for the steps that are not begun yet?"], taken)
