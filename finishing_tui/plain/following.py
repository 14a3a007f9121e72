"""What a count, or a step that was given up, changes further on, said after it, and the choice what to do about it.

Nothing is put right unasked: leaving the question leaves every number as it was counted.
"""

from finishing_tui.craft.words import sentence
from finishing_tui.garment.state import State
from finishing_tui.plain.questions import Choose, Hands, Reply


def followed(before: State, after: State) -> Reply:
    """Return what a count between two states changes, and the question what to do about it; nothing for no change."""
    from finishing_tui.glance.following import following  # noqa: PLC0415  (the audit: few commands need it)

    follows = following(before, after)
    if follows is None:
        return [], None
    ways, first = follows.ways, [follows.undo] if follows.undo else []

    def chosen(hands: Hands, at: int) -> Reply:
        if at < len(first):
            return hands.take_back_last(), None
        refusal = hands.attempt(ways[at - len(first)].command)
        return [sentence(refusal.sentence) if refusal else f"{hands.state.top_label}: noted."], None

    told = ["this changes what comes later.", *map(sentence, follows.lines)]
    return told, Choose([], "What is to be done?", [*first, *(f"{way.text}: {way.look}" for way in ways)], chosen)
