"""What would be spoken: short, of what the hands do next, from the same values that are drawn. Nothing speaks here."""

from typing import Literal

from finishing_tui.craft.words import sentence
from finishing_tui.glance.recounts import RecountView
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

RINGS: dict[Ring, str] = {"run": "end of the run", "recount": "time to count", "target": "that part is complete"}
"""What the bell rings for, in words."""


def spoken(
    was: Glance | None,
    now: Glance,
    how: Speech,
    *,
    ring: Ring | Literal["refused"] | None = None,
    said: str = "",
    refused: bool = False,
) -> str:
    """Return what is to be spoken after something was done; empty for nothing.

    ``was``: what there was to see before it, if anything was; ``ring``: what the bell rang for; ``said``: the sentence
    at the foot of the screen, and whether it is why something was ``refused``.
    """
    if how == "off":
        return ""
    if refused:
        return said
    parts = [RINGS[ring]] if ring is not None and ring != "refused" else []
    if how == "all":
        moved = was is None or was.step != now.step or was.looking != now.looking
        parts += [text for text in (said, f"step {now.step}, {now.heading}" if moved else "") if text]
    telling = _telling(now.face, how)
    other = was is None or (telling != _telling(was.face, how) if how == "next" else now.face != was.face)
    if telling and (parts or other):
        parts.append(telling)
    return ". ".join(part.rstrip(".") for part in parts)


def spoken_verdict(view: RecountView) -> str:
    """Return what is spoken when a count differs: the verdict, and the first way to go on."""
    first = f" 1: {view.ways[0].label}." if view.ways else ""
    return f"{view.counted} counted. {sentence(view.verdict)}{first}"


def next_word(face: Face) -> str:
    """Return the next word, or the next two, in the small letters they are spoken in."""
    match face:
        case SpotFace():
            return ", ".join(face.acts).lower()
        case RoundFace():
            return face.unit.lower()
        case _:
            return face.act.lower().rstrip("?")


def _telling(face: Face, how: Speech) -> str:
    word = next_word(face)
    if how == "next":
        return word
    match face:
        case SpotFace():
            return f"{word}, {face.count} of {face.target}"
        case StitchFace() | PairFace() | RoundFace():
            own = f". {face.said}" if face.said else ""
            return f"{word}, {face.count} of {face.of}{own}"
        case ItemFace():
            return ", ".join((word, *face.items[face.done : face.done + 1]))
        case ValueFace() | MessageFace():
            return f"{word}. {face.words}"
