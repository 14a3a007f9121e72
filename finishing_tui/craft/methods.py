"""The ways to make or lose a stitch, each with what it eats from the left needle and leaves on the right one.

A table and nothing more: where the shapings go is ``shaping``'s business. What each name does is common practice; no
two books disagree on the counts below, only on the names.
"""

import difflib
from dataclasses import dataclass

from finishing_tui.craft.errors import Impossible


@dataclass(frozen=True, slots=True)
class Method:
    """One way of shaping: it takes ``eats`` stitches and ``leaves`` others in their place."""

    name: str
    """As it is written in a row: ``k2tog``."""
    eats: int
    """Stitches it takes from the left needle (0: it is made between two stitches)."""
    leaves: int
    """Stitches it leaves on the right needle."""
    words: str
    """How the hands do it."""
    ground: str = "k"
    """What the plain stitches around it are: ``k`` or ``p``."""
    doubled: str | None = None
    """The method of the same kind that does twice as much in one place."""
    mirror: str | None = None
    """The method that leans the other way, which a left-handed knitter works in its stead."""

    @property
    def change(self) -> int:
        """How many stitches the row gains by one of these (negative: loses)."""
        return self.leaves - self.eats


_ALL = (
    Method("k2tog", 2, 1, "knit two stitches together", doubled="k3tog", mirror="ssk"),
    Method(
        "ssk",
        2,
        1,
        "slip two stitches knitwise one by one, then knit them together through the back",
        doubled="sssk",
        mirror="k2tog",
    ),
    Method("p2tog", 2, 1, "purl two stitches together", ground="p", doubled="p3tog", mirror="ssp"),
    Method(
        "ssp",
        2,
        1,
        "slip two stitches knitwise one by one, put them back, then purl them together through the back",
        ground="p",
        doubled="sssp",
        mirror="p2tog",
    ),
    Method("k3tog", 3, 1, "knit three stitches together", mirror="sssk"),
    Method(
        "sssk",
        3,
        1,
        "slip three stitches knitwise one by one, then knit them together through the back",
        mirror="k3tog",
    ),
    Method("p3tog", 3, 1, "purl three stitches together", ground="p", mirror="sssp"),
    Method(
        "sssp",
        3,
        1,
        "slip three stitches knitwise one by one, put them back, then purl them together through the back",
        ground="p",
        mirror="p3tog",
    ),
    Method(
        "cdd",
        3,
        1,
        "centered double decrease: slip two stitches together knitwise, knit one, pass the two over it",
    ),
    Method("kfb", 1, 2, "knit into the front and then the back of one stitch", doubled="kfbf"),
    Method("pfb", 1, 2, "purl into the front and then the back of one stitch", ground="p", doubled="pfbf"),
    Method("kfbf", 1, 3, "knit into the front, the back and again the front of one stitch"),
    Method("pfbf", 1, 3, "purl into the front, the back and again the front of one stitch", ground="p"),
    Method("M1", 0, 1, "lift the bar between two stitches and knit it twisted", doubled="M2"),
    Method(
        "M1L",
        0,
        1,
        "lift the bar from front to back and knit it through the back",
        doubled="M2",
        mirror="M1R",
    ),
    Method(
        "M1R",
        0,
        1,
        "lift the bar from back to front and knit it through the front",
        doubled="M2",
        mirror="M1L",
    ),
    Method("M1P", 0, 1, "lift the bar between two stitches and purl it twisted", ground="p"),
    Method("M2", 0, 2, "lift the bar between two stitches and knit into its back and then its front"),
    Method("yo", 0, 1, "yarn over the needle (it leaves a small hole)", doubled="yo2"),
    Method("yo2", 0, 2, "yarn over the needle twice; next time knit one and purl one into it"),
)

METHODS: dict[str, Method] = {way.name: way for way in _ALL}
"""Every way of shaping there is, by name."""

_SPOKEN = {"".join(name.lower().split()): name for name in METHODS}
_SPOKEN |= {"yarnover": "yo", "yfwd": "yo", "s2kp": "cdd", "s2kpo": "cdd", "centreddoubledecrease": "cdd"}


def method(name: str) -> Method:
    """Return the way of shaping called ``name``, however it is spaced or capitalised.

    Raises Impossible, with the nearest names there are, when it is unknown.
    """
    plain = "".join(name.lower().split())
    if plain in _SPOKEN:
        return METHODS[_SPOKEN[plain]]
    near = [_SPOKEN[found] for found in difflib.get_close_matches(plain[:20], _SPOKEN, n=2)]
    choice = " or ".join(near) if near else "one of " + ", ".join(METHODS)
    raise Impossible(f"no way of shaping is called {name[:20]!r}: try {choice}")


def for_left_hand(way: Method) -> Method:
    """Return what a left-handed knitter works in place of ``way``: k2tog and ssk change places, and so on.

    Her rows run the other way, so a decrease leans to the other side; one that does not lean stays what it is.
    """
    return METHODS[way.mirror] if way.mirror else way
