"""Ripping back as a conversation: to which place, to which row of it, and sure, where later steps fall with it."""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Command, RipBack
from finishing_tui.glance.ripping import RipPoint
from finishing_tui.plain.questions import Hands, Number, Reply, YesOrNo, whole

AT_A_TIME = 9
"""So many places are said at a time."""


@dataclass(frozen=True)
class ToWhere:
    """Asks to which place, the nearest first; "more" says further ones."""

    points: Sequence[RipPoint]
    first: int = 0
    free: bool = False

    def asks(self) -> list[str]:
        """Return some of the places by number, and the question."""
        shown = self.points[self.first : self.first + AT_A_TIME]
        lines = [f"{self.first + at}: {sentence(point.text)}" for at, point in enumerate(shown, 1)]
        more = "more, " if self.first + AT_A_TIME < len(self.points) else ""
        return [*lines, f"It was taken out to where? Type a number, {more}or escape."]

    def hear(self, hands: Hands, line: str) -> Reply:
        """Take the number of a place, or go on to further ones."""
        further = self.first + AT_A_TIME
        if line.casefold() == "more" and further < len(self.points):
            return [], ToWhere(self.points, further)
        number = whole(line)
        if number is None or not 1 <= number <= min(further, len(self.points)):
            return ["That is none of the places said. Nothing was done."], self
        point = self.points[number - 1]
        if not point.most:
            return taken_out(hands, point.command)
        question = f"To which {point.unit}, 0 to {point.most}?"
        return [sentence(point.text)], Number(question, lambda hands, units: taken_out(hands, point.to(units)))


def taken_out(hands: Hands, command: Command) -> Reply:
    """Take it out; what falls with it is named first."""
    refusal = hands.attempt(command)
    if refusal is None:
        return ["Taken out; it stays in the record."], None
    again = refusal.again
    if isinstance(again, RipBack):
        return [], YesOrNo([sentence(refusal.sentence)], lambda hands: taken_out(hands, again))
    return [sentence(refusal.sentence)], None
