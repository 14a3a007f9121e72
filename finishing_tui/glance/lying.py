"""How the work lies as a small picture: looked down on from above, with the knitter below it.

A piece is drawn edge on, as a band of two lines: the side away from the knitter above, the side towards her below. The
two legs of knit stitches stand for its right side, bumps for its wrong side: no sign of a chart means something else
here. Two pieces that lie together are two bands.
"""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import Posture

_WRONG = "∪ ∪ ∪ ∪ ∪ ∪"
_FABRIC = {"right": "╲╱ ╲╱ ╲╱ ╲╱", "wrong": _WRONG}
"""Both sides of the fabric, as wide as one another; the drawings of the techniques have the same signs."""

_AWAY = "╭╮"
"""The ends of the side that is away from the knitter."""

_YARN = "~~"
"""The working yarn, below the end of the work that it hangs from."""

_OTHER: dict[str, Literal["right", "wrong"]] = {"right": "wrong", "wrong": "right"}


@dataclass(frozen=True, slots=True)
class Lying:
    """One line of the picture: what is ``drawn`` (as wide as every other line), and the ``words`` beside it."""

    drawn: str
    words: str


@dataclass(frozen=True, slots=True)
class Picture:
    """The picture, a few ``lines``, none where too little is known; ``words``: all of it in words.

    ``to_be``: it is how the work is to be laid; ``most``: lines of the largest one that the step comes to. ``large``:
    to lay it is all there is to do, so it is drawn as wide as there is room. ``layers``: what lies further away, and
    nearer, in a word each, where two pieces lie together.
    """

    lines: tuple[Lying, ...] = ()
    words: str = ""
    to_be: bool = False
    most: int = 0
    large: bool = False
    layers: tuple[str, ...] = ()

    @property
    def heading(self) -> str:
        """What the picture is of."""
        return "how to lay it" if self.to_be else "how it lies"


def lying(posture: Posture, starts: str = "", hand: str = "right") -> tuple[Lying, ...]:
    """Return the lines of the picture; none where it is not known which side is where.

    ``starts``: the end of the shoulder where a join starts, where it is known: both ends are named in the picture, and
    the yarn hangs at the one that is at the ``hand``. All text of a recipe stands in the words; what is drawn is made
    of our own signs.
    """
    together, facing = posture.together, posture.facing
    if not facing and together:
        facing = _OTHER.get(together, "")
    if facing not in _OTHER or together == facing:
        return ()  # what touches cannot face: the audit tells of it, and there is nothing to draw
    if together:
        pieces = [*_piece(facing, together), *_piece(together, facing)]
        words = [f"{facing} side away from you", f"{together} sides together", "", f"{facing} side to you"]
    else:
        pieces = [*_piece(_OTHER[facing], facing)]
        words = [f"{_OTHER[facing]} side away from you", f"{facing} side to you"]
    if posture.near:
        words[-1] = f"{posture.near}, {words[-1]}"
    if posture.on_top:
        words[0] += f", {posture.on_top} on top"
    drawn = [f"   {line}   " for line in pieces]
    ends = ["armhole", "neck"][:: 1 if (starts == "armhole") == (hand == "left") else -1] if starts else ["", ""]
    spare = len(drawn[0]) - 2 * len(_YARN) - len("you") - sum(map(len, ends))
    you = f"{ends[0]}{' ' * (spare // 2)}you{' ' * (spare - spare // 2)}{ends[1]}".center(len(drawn[0]))
    match hand if starts and starts in posture.yarn_at.split() else _end(posture.yarn_at):
        case "left":  # it hangs below its end of the work, on the line of its words
            you = f"{_YARN}{you[len(_YARN) :]}"
        case "right":
            you = f"{you[: -len(_YARN)]}{_YARN}"
    yarn = yarn_words(posture) if posture.yarn_at else ""
    return (*(Lying(one, said) for one, said in zip(drawn, words, strict=True)), Lying(you, yarn))


def _piece(away: str, towards: str) -> tuple[str, str]:
    """Return a piece seen edge on: the side away from the knitter over the side towards her."""
    return f"{_AWAY[0]} {_FABRIC[away]} {_AWAY[1]}", f"╰ {_FABRIC[towards]} ╯"


def enlarged(picture: Picture, width: int, height: int) -> list[str]:
    """Return what is drawn as wide as it fits, with what each layer is beside it, and room over the line below."""
    *bands, below = [line.drawn.strip() for line in picture.lines]
    names = [text for layer in picture.layers for text in (layer, "")]
    beside = max(map(len, names), default=-2) + 2
    wider = max((width - beside - len(bands[0]) + len(_WRONG)) // (len(_WRONG) + 1), 1)
    if not names or len(bands[0]) + beside > width:
        names = [""] * len(bands)
    rows = [f"{band[0]} {' '.join([band[2:-2]] * wider)} {band[-1]}" for band in bands]
    left, you, right = (part.strip() for part in below.partition("you"))
    side = (len(rows[0]) - len(you)) // 2
    labels = f"{left.ljust(side)}{you}{right.rjust(len(rows[0]) - side - len(you))}"
    apart = [""] if len(rows) + 1 < height else []
    wide = max(len(row) + len(name) + 2 for row, name in zip(rows, names, strict=True))
    drawn = [*(f"{row}  {name}" for row, name in zip(rows, names, strict=True)), *apart, labels]
    return [line.ljust(wide) for line in drawn]


def yarn_words(posture: Posture) -> str:
    """Return where the yarn hangs, in words; empty where that is not known. A hand alone names its end of the work."""
    ends = posture.yarn_at.split()[-1:] in (["right"], ["left"])
    at = f"{posture.yarn_at}-hand end" if ends else posture.yarn_at
    return f"yarn at {at}" if at else ""


def _end(yarn_at: str) -> Literal["left", "right", ""]:
    """Return at which end of the picture the yarn hangs, where its words name one of the two and nothing else."""
    words = set(yarn_at.replace("-", " ").split()) - {"the", "hand", "end", "your", "side"}
    if words == {"left"}:
        return "left"
    return "right" if words == {"right"} else ""
