"""What would be spoken: short, of what the hands do next, from the same values that are drawn. Nothing speaks here."""

from collections.abc import Sequence
from typing import Literal

from finishing_tui.craft.words import sentence
from finishing_tui.glance.answers import Answers
from finishing_tui.glance.cautions import CARE
from finishing_tui.glance.rings import Ring
from finishing_tui.glance.values import (
    Face,
    Glance,
    ItemFace,
    MessageFace,
    PairFace,
    RoundFace,
    SpotFace,
    StitchFace,
    ValueFace,
)

Speech = Literal["off", "next", "counts", "all"]
"""How much is spoken: nothing, the next word when it changes, also the count after each press, or also what is said."""

RINGS: dict[Ring, str] = {
    "run": "end of the repeat",
    "recount": "count the stitches",
    "target": "that part is complete",
}
"""What the bell rings for, in words."""


def spoken(
    was: Glance | None,
    now: Glance,
    how: Speech,
    *,
    ring: Ring | Literal["refused"] | None = None,
    said: str = "",
    refused: bool = False,
    aloud: bool = False,
    back: bool = False,
) -> str:
    """Return what is to be spoken after something was done; empty for nothing.

    ``was``: what there was to see before it, if anything was; ``ring``: what the bell rang for; ``said``: the sentence
    at the foot of the screen, whether it is why something was ``refused``, and whether it is spoken ``aloud`` even
    where little is, as what a count led to; ``back``: what was done is that something was taken back.
    """
    if how == "off":
        return ""
    if refused:
        return said
    parts = [RINGS[ring]] if ring is not None and ring != "refused" else []
    if said and (how == "all" or aloud):
        parts.append(said)
    if how == "all" and (was is None or was.step != now.step or was.looking != now.looking):
        parts += _beginning(now)
    if how != "next" and back and (done := _done(now.face)) is not None:
        parts.append(f"back to {done}")
    telling = _telling(now.face, how)
    other = was is None or (telling != _telling(was.face, how) if how == "next" else now.face != was.face)
    if telling and (parts or other):
        parts.append(telling)
    return ". ".join(part.rstrip(".") for part in parts)


def spoken_question(question: str, answers: Sequence[str]) -> str:
    """Return what is spoken of a question: it, and its answers by their numbers."""
    told = (f"{number}: {answer.removesuffix('.')}." for number, answer in enumerate(answers, 1))
    return " ".join((sentence(question), *told))


def spoken_difference(counted: int, expected: int, answers: Sequence[str], doubt: str = "") -> str:
    """Return what is spoken when a count is not what the presses say: both, what is doubtful, and the answers."""
    question = (
        f"You counted {counted}; the count here is {expected}. {f'{sentence(doubt)} ' if doubt else ''}What happened?"
    )
    return spoken_question(question, answers)


def spoken_answers(answers: Answers) -> str:
    """Return what is spoken of ways to go on: the difference, and each by its number with what speaks against it."""
    ways = [", ".join(filter(None, (one.text, answers.lies(one), one.note))) for one in answers.rows]
    return spoken_question(f"{answers.heading}: {answers.said}", ways)


def next_word(face: Face) -> str:
    """Return the next word, or the next two, in the small letters they are spoken in."""
    match face:
        case SpotFace():
            return "count" if face.waits else ", ".join(face.acts).lower()
        case RoundFace():
            return face.unit
        case _:
            return face.act.lower()


def _beginning(now: Glance) -> list[str]:
    """Return what a step is, how it is done, and a caution where it is shown."""
    begun = f"step {now.step}, {now.heading}" if now.step else now.heading
    care = [f"{CARE}: {line.text}" for line in now.lines if line.heading == CARE and not line.behind]
    return [begun, *(line.text for line in now.lines if not line.heading), *care]


def _done(face: Face) -> int | None:
    """Return how many are done of what is counted one by one."""
    match face:
        case SpotFace() | StitchFace() | PairFace() | RoundFace():
            return face.count
        case _:
            return None


def _telling(face: Face, how: Speech) -> str:
    word = next_word(face)
    if how == "next":
        return word
    match face:
        case PairFace() if how == "all" and face.moves:
            return f"{word}, {face.count} of {face.of}: {', then '.join((*face.moves, *filter(None, (face.said,))))}"
        case SpotFace():
            return f"{word}, {face.count}{f' of {face.wanted}' if face.wanted else ''}"
        case StitchFace(waits=True):
            return f"{word}, {face.count} of {face.of}"
        case StitchFace() | PairFace():
            return f"{word}, {face.count} of {face.of}" + (f". {face.said}" if face.said else "")
        case RoundFace():  # its words are those of the one that comes next, so that is the one to name
            return f"{word} {face.count + 1} of {face.of}" + (f": {face.said}" if face.said else "")
        case ItemFace():
            return ", ".join((word, *face.items[face.done : face.done + 1]))
        case ValueFace() | MessageFace():
            return face.words if face.words.casefold().startswith(f"{word} ") else f"{word}. {face.words}"
