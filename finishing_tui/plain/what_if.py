"""What if, in lines: another number is typed, both plans are said, and only then is asked whether it is to be taken."""

import re
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import WhatIf
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.stored_words import verdict_words
from finishing_tui.glance.what_if import Asked, WhatIfView, asked_here, unit_words, what_if_view
from finishing_tui.plain.held import Held
from finishing_tui.plain.questions import Hands, Reply, Text, YesOrNo

_NUMBER = rf"([0-9]{{1,{MOST_DIGITS}}})"
_RHYTHM = re.compile(rf"{_NUMBER} ?(?:/|of every|of) ?{_NUMBER}")
_MANY = re.compile(rf"{_NUMBER}(?: (\w+))?")


def what_if(held: Held, rest: str) -> Reply:
    """Say both plans and ask whether the new one is to be taken; with nothing typed behind it, ask what if."""
    held.looking = None
    try:
        asked = asked_here(held.state)
    except FinishingError as error:
        return [sentence(str(error))], None
    return _heard(held, rest, asked) if rest else ([], Text(_question(asked), lambda h, line: _heard(h, line, asked)))


def _question(asked: Asked) -> str:
    units = unit_words(asked)
    if not asked.section:
        return f"What if it were how many {units}? Planned are {asked.figure}. Type the number, or escape."
    return (
        f'What if? Type another number of loops ("{asked.figure}" is planned), "{asked.spots} {units}", '
        '"3 of every 4", "easy" or "even", or several with commas; or escape.'
    )


def _heard(hands: Hands, line: str, asked: Asked) -> Reply:
    command = _understood(line, asked)
    if command is None:
        return ["That is no number of loops or rows, rhythm or spread. Nothing was done."], None
    try:
        view = what_if_view(hands.state, command)
    except FinishingError as error:
        return [sentence(str(error))], None
    if not view.changes:
        return ["The plan has that already. Nothing was done."], None
    return [], YesOrNo(_told(view), lambda hands: _taken(hands, view))


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


def _told(view: WhatIfView) -> list[str]:
    """Return both plans, how the new one lies, and what changes later."""
    told = [f"now: {view.was}.", f"then: {view.now}."]
    told += [f"it {verdict_words(view.verdict)}."] if view.verdict else []
    told += [f"{view.drift}."] if view.drift else []
    told += ["this changes what comes later.", *map(sentence, view.later)] if view.later else []
    return [*told, "Is it to be taken?"]


def _taken(hands: Hands, view: WhatIfView) -> Reply:
    refusal = hands.attempt(view.command)
    return [sentence(refusal.sentence) if refusal else f"taken: {view.now}."], None
