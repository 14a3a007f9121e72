"""Numbers: a count of what is under way, of a section, of one needle of two, or a measure."""

import re

from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Count, Measure
from finishing_tui.glance.counting import MOST_DIGITS, Countable, asks_for_value, countables
from finishing_tui.glance.measured import beside_wanted
from finishing_tui.plain import recounting
from finishing_tui.plain.held import Held
from finishing_tui.plain.questions import Choose, Hands, Reply, whole

_VALUE = re.compile(r"[0-9]+(\.[0-9]*)?|\.[0-9]+")


def number(held: Held, typed: str) -> Reply:
    """Take a number: the measure where one is asked for, else a count."""
    held.forget()
    held.looking = None
    if not asks_for_value(held.state):
        return _count(held, typed)
    if not _VALUE.fullmatch(typed) or len(typed) > MOST_DIGITS:
        return [f"A measure is a number like 42 or 42.5, of at most {MOST_DIGITS} signs. Nothing was done."], None
    off = beside_wanted(held.state, typed)
    told = f"{typed} written down: {off}." if off else f"{typed} written down."
    return held.do(Measure(typed), typed, told), None


def _count(held: Held, typed: str) -> Reply:
    counted, found = whole(typed), countables(held.state)
    if counted is None:
        return [f"A count is a whole number of at most {MOST_DIGITS} digits. Nothing was done."], None
    if not found:
        return ["There is nothing to count here."], None
    if found[0].section:
        return recounting.counted(held, counted)
    if len(found) == 1:
        return _counted_on(held, counted, found[0]), None
    choices = [f"{one.text}, which should hold {one.expected}" for one in found]

    def chosen(hands: Hands, at: int) -> Reply:
        return _counted_on(hands, counted, found[at]), None

    return [], Choose([], f"{counted} counted on which needle?", choices, chosen)


def _counted_on(hands: Hands, counted: int, what: Countable) -> list[str]:
    refusal = hands.attempt(Count(counted, what.place))
    if refusal is not None:
        return [sentence(refusal.sentence)]
    differs = what.place and counted != what.expected
    return [f"{counted} counted: {what.text}{f', and {what.expected} were expected' if differs else ''}."]


def counted(held: Held, rest: str) -> Reply:
    """Take what stood behind the word "count"; it is never a measure."""
    if whole(rest) is None or asks_for_value(held.state):
        return ['A count is typed like this: "count 24". Nothing was done.'], None
    return number(held, rest)
