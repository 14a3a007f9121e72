"""What if, in lines: another number is typed, both plans are said, and only then is asked which to take."""

import re
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import WhatIf
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.later import AFFECTS_LATER
from finishing_tui.glance.what_if import Asked, unit_words
from finishing_tui.talk.asks import WeighPlans, weigh
from finishing_tui.talk.conversation import Talk

_NUMBER = rf"([0-9]{{1,{MOST_DIGITS}}})"
_RHYTHM = re.compile(rf"{_NUMBER} ?(?:/|of every|of) ?{_NUMBER}")
_MANY = re.compile(rf"{_NUMBER}(?: (\w+))?")


def answers(ask: WeighPlans) -> list[str]:
    """Return what may be typed."""
    asked, units = ask.asked, unit_words(ask.asked)
    if not asked.section:
        return [f"The plan has {asked.figure} {units}. Type another number, or escape."]
    spots = f'"{asked.spots} {units}"' if asked.spots else f"how many {units} there are"
    return [
        f"Type another number of stitches (planned: {asked.figure}), {spots}, "
        '"3 of every 4", "easy" or "even", or several with commas; or escape.'
    ]


def hears(talk: Talk, ask: WeighPlans, line: str) -> list[str]:
    """Look at the plan that a line asks for, and ask which to take."""
    command = _understood(line, ask.asked)
    if command is None:
        return ["That isn't a number of stitches or rows, a rhythm or a spread. Nothing was done."]
    try:
        view = ask.view(command)
    except FinishingError as error:
        return [sentence(str(error))]
    if not view.changes:
        return ["The plan already has that. Nothing was done."]
    later = (AFFECTS_LATER, *view.later) if view.later else ()
    talk.asks(weigh(ask.question, view.answers, lambda at: ask.then(view) if at else None, told=later))
    return []


def _understood(line: str, asked: Asked) -> WhatIf | None:
    """Return what a line asks for; None where any part of it is not understood."""
    command, units, loops = WhatIf(), {asked.unit, unit_words(asked)}, {None, "stitch", "stitches", "loop", "loops"}
    for part in (" ".join(one.split()) for one in line.casefold().split(",")):
        if rhythm := _RHYTHM.fullmatch(part):
            command = replace(command, rhythm=(int(rhythm[1]), int(rhythm[2])))
        elif part in {"easy", "even"}:
            command = replace(command, style="even" if part == "even" else "easy")
        elif (many := _MANY.fullmatch(part)) is None:
            return None
        elif not asked.section and many[2] in {None, *units}:
            command = replace(command, rounds=int(many[1]))
        elif asked.section and many[2] in units:
            command = replace(command, spots=int(many[1]))
        elif asked.section and many[2] in loops:
            command = replace(command, target=int(many[1]))
        else:
            return None
    return command
