"""What if, in lines: another number is typed, both plans are said, and only then is asked whether it is to be taken."""

import re
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import WhatIf
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.stored_words import verdict_words
from finishing_tui.glance.what_if import Asked, WhatIfView, unit_words
from finishing_tui.talk.asks import Choose, Option, WeighPlans
from finishing_tui.talk.conversation import Talk

_NUMBER = rf"([0-9]{{1,{MOST_DIGITS}}})"
_RHYTHM = re.compile(rf"{_NUMBER} ?(?:/|of every|of) ?{_NUMBER}")
_MANY = re.compile(rf"{_NUMBER}(?: (\w+))?")


def answers(ask: WeighPlans) -> list[str]:
    """Return what may be typed."""
    asked, units = ask.asked, unit_words(ask.asked)
    if not asked.section:
        return [f"Planned are {asked.figure} {units}. Type another number, or escape."]
    return [
        f'Type another number of loops ("{asked.figure}" is planned), "{asked.spots} {units}", '
        '"3 of every 4", "easy" or "even", or several with commas; or escape.'
    ]


def hears(talk: Talk, ask: WeighPlans, line: str) -> list[str]:
    """Look at the plan that a line asks for, and ask whether it is to be taken."""
    command = _understood(line, ask.asked)
    if command is None:
        return ["That is no number of loops or rows, rhythm or spread. Nothing was done."]
    try:
        view = ask.view(command)
    except FinishingError as error:
        return [sentence(str(error))]
    if not view.changes:
        return ["The plan has that already. Nothing was done."]
    options = Option("take it"), Option("leave it as it was")
    question, plans = "Take the new plan?", _told(view)
    talk.asks(
        Choose(question=question, told=plans, options=options, then=lambda at: ask.then(view) if not at else None)
    )
    return []


def _understood(line: str, asked: Asked) -> WhatIf | None:
    """Return what a line asks for; None where any part of it is not understood."""
    command, units, loops = WhatIf(), {asked.unit, unit_words(asked)}, {None, "loop", "loops"}
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


def _told(view: WhatIfView) -> tuple[str, ...]:
    """Return both plans, how the new one lies, and what changes later."""
    return (
        f"now: {view.was}",
        f"then: {view.now}",
        *([f"it {verdict_words(view.verdict)}"] if view.verdict else []),
        *([view.drift] if view.drift else []),
        *(["this changes what comes later", *view.later] if view.later else []),
    )
