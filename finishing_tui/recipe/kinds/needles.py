"""What a join and a graft have in common: two needles of live stitches, one nearer to the knitter than the other.

Which piece is on which needle, and which shoulder it is, a recipe says only in words: in the title of the step, and in
what its places are called. Where these words leave a doubt, nothing is concluded from them.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, TypeVar

from finishing_tui.craft.lies import End, Fabric, Piece, start_of_join
from finishing_tui.recipe.keys import PlaceName
from finishing_tui.recipe.kinds.base import Here, Step

_Word = TypeVar("_Word", bound=str)
_SIDES: tuple[Literal["left"], Literal["right"]] = ("left", "right")
_PIECES: tuple[Literal["front"], Literal["back"]] = ("front", "back")


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoNeedles(Step):
    """Work the stitches of two needles together."""

    front: PlaceName = ""
    """The needle nearer to you, for either hand; or say `near` and `far`."""
    back: PlaceName = ""
    """The needle further from you, for either hand."""
    near: PlaceName = ""
    """The needle nearer to you. At a shoulder it changes places with `far` for a left-handed knitter."""
    far: PlaceName = ""
    """The needle behind it."""

    @property
    def touching(self) -> Fabric:
        """The sides that touch when it is laid as it must be."""
        raise NotImplementedError

    def needles(self, here: Here) -> tuple[str, str]:
        """Return the places that are nearer to the knitter and further from her."""
        if not self.near:
            return self.front, self.back
        if here.hand == "left" and self.shoulder(here) is not None:
            return self.far, self.near
        return self.near, self.far

    def starts_at(self, here: Here) -> End | None:
        """Return the end of the shoulder where the tips and the yarn are; None where that cannot be known."""
        shoulder = self.shoulder(here)
        near = piece_on(self.needles(here)[0], here)
        if shoulder is None or near is None:
            return None
        return start_of_join(shoulder, near, self.touching, here.hand)

    def shoulder(self, here: Here) -> Literal["left", "right"] | None:
        """Return the shoulder that is joined, where it is one, and a front on one needle meets a back on the other."""
        if not {"shoulder", "shoulders"} & words(self.title):
            return None
        places = (self.near, self.far) if self.near else (self.front, self.back)
        if {piece_on(place, here) for place in places} != set(_PIECES):
            return None
        return only(_SIDES, words(self.title)) or only(_SIDES, words(*places, *(here.name(place) for place in places)))


def piece_on(place: str, here: Here) -> Piece | None:
    """Return the piece whose stitches are on ``place``, by what it is called; None where that leaves a doubt."""
    return only(_PIECES, words(place, here.name(place)))


def only(choices: Iterable[_Word], found: set[str]) -> _Word | None:
    """Return the one of ``choices`` that is among the words ``found``; None where it is none, or several."""
    among = [word for word in choices if word in found]
    return among[0] if len(among) == 1 else None


def words(*texts: str) -> set[str]:
    """Return the words of ``texts``, in small letters."""
    return set(re.findall(r"[^\W\d_]+", " ".join(texts).lower()))
