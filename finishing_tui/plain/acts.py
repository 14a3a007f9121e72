"""What every word that does something does; each returns lines to say, and what is asked next."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import (
    ChoosePace,
    Other,
    Press,
    WriteNote,
)
from finishing_tui.garment.state import LONGEST_NOTE
from finishing_tui.glance.counting import countables
from finishing_tui.glance.ripping import rip_points
from finishing_tui.plain import counting, recounting, stepping
from finishing_tui.plain import help as helping
from finishing_tui.plain.held import Held
from finishing_tui.plain.ledger import ledger
from finishing_tui.plain.numbers import numbers
from finishing_tui.plain.questions import Choose, Hands, Reply, Text
from finishing_tui.plain.ripping import ToWhere
from finishing_tui.plain.techniques import technique
from finishing_tui.plain.what_if import what_if
from finishing_tui.plain.words import word_for

_PACES = MappingProxyType({"loop": ChoosePace("loop"), "spot": ChoosePace("spot"), "run": ChoosePace("run")})


def offered(held: Held, action: str) -> Reply:
    """Do what is offered for an action that needs nothing more than its command."""
    offer = held.offer(action)
    if offer is None or offer.command is None:
        return ["That is not offered just now; help says what is."], None
    return held.do(offer.command, word_for(offer), f"{offer.label}."), None


def _press(held: Held, _: str) -> Reply:
    held.looking = None
    return held.do(Press(), "done"), None


def _other(held: Held, _: str) -> Reply:
    held.looking = None
    offer = held.offer("other")
    sides = offer.sides if offer is not None else ()
    if len(sides) < 2:
        return held.do(Other(sides[0][0] if sides else ""), "x"), None

    def chosen(hands: Hands, at: int) -> Reply:
        refusal = hands.attempt(Other(sides[at][0]))
        return [sentence(refusal.sentence)] if refusal else [], None

    return [], Choose([], "Two were worked together on which needle?", [text for _, text in sides], chosen)


def _take_back(held: Held, _: str) -> Reply:
    held.looking = None
    return held.take_back("b"), None


def _put_back(held: Held, _: str) -> Reply:
    held.looking = None
    refusal = held.hand.put_back()
    return [sentence(refusal.sentence) if refusal else "it stands again."], None


def _recount(held: Held, rest: str) -> Reply:
    if rest:
        return counting.counted(held, rest)
    held.looking = None
    found = countables(held.state)
    if not found:
        return ["There is nothing to count here."], None
    if found[0].section:
        return [], recounting.how_many(found[0])
    return [f"count {' or '.join(one.text for one in found)}, and type the number."], None


def _rip_back(held: Held, _: str) -> Reply:
    points = rip_points(held.state)
    return ([], ToWhere(points)) if points else (["Nothing was worked yet that could be taken out."], None)


def _pace(held: Held, rest: str) -> Reply:
    offer = held.offer("pace")
    if offer is None or not isinstance(offer.command, ChoosePace):
        return ["A pace is chosen where loops are picked up along an edge."], None
    command = _PACES.get(rest.casefold()) if rest else offer.command
    if command is None:
        return ["The paces are loop, spot and run. Nothing was done."], None
    return held.do(command, "p", f"done now stands for one {command.pace}."), None


def _note(held: Held, rest: str) -> Reply:
    if rest:
        return held.do(WriteNote(rest), "n", "the note is kept."), None
    return [], Text("Which note? Type it in one line, or escape.", _noted)


def _noted(hands: Hands, text: str) -> Reply:
    if not text:
        return ["No note was written."], None
    refusal = hands.attempt(WriteNote(text))
    return [sentence(refusal.sentence) if refusal else "the note is kept."], None


def _help(held: Held, _: str) -> Reply:
    return helping.page(held.offers()), None


def _put_down(held: Held, _: str) -> Reply:
    def down(_: Hands, where: str) -> Reply:
        if len(where) > LONGEST_NOTE:
            return [f"That is more than {LONGEST_NOTE} characters. It is not put down yet."], asked
        held.left = where
        return [], None

    if held.look:
        held.left = ""
        return [], None
    asked = Text("Where did you leave it? One line for coming back, or an empty line; escape goes on.", down)
    return [], asked


def _full_hands(held: Held, _: str) -> Reply:
    held.full_hands = not held.full_hands
    return [
        "an empty line is now the next thing done." if held.full_hands else "an empty line now changes nothing."
    ], None


def _notes(held: Held, _: str) -> Reply:
    numbered = ((held.state.plan.number_of(one.step), one.text) for one in held.state.notes)
    notes = [f"note{'' if number is None else f' at step {number}'}: {text}" for number, text in numbered]
    return notes or ["no note was written."], None


def _saved(held: Held, _: str) -> Reply:
    unsaved = held.hand.unsaved
    return [f"not saved yet: {unsaved}. {held.hand.trouble}" if unsaved else "everything is on the disk."], None


ACTS: Mapping[str, Callable[[Held, str], Reply]] = MappingProxyType(
    {
        "press": _press,
        "other": _other,
        "take_back": _take_back,
        "finish": stepping.finish,
        "recount": _recount,
        "what_if": what_if,
        "rip_back": _rip_back,
        "put_back": _put_back,
        "pace": _pace,
        "numbers": numbers,
        "note": _note,
        "look_back": lambda held, _: stepping.turn(held, -1),
        "look_on": lambda held, _: stepping.turn(held, 1),
        "leave_out": stepping.leave_out,
        "technique": technique,
        "ledger": ledger,
        "help": _help,
        "put_down": _put_down,
        "step": stepping.step,
        "take up": stepping.take_up,
        "count": counting.counted,
        "hands": _full_hands,
        "escape": lambda held, _: stepping.step(held, ""),
        "notes": _notes,
        "saved": _saved,
    }
)
"""What each word that is not answered by ``telling`` alone does, with what stood behind it."""

KEEPS_ASKING = frozenset({"press", "other", "finish", "take_back", "take up", "leave_out"})
"""What may be asked again to be done all the same; anything else that comes between forgets it."""
