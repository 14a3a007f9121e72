"""At which end of a shoulder a join starts: it follows from how the two pieces lie.

Hold the two pieces before you, needles up. With right sides together you see the wrong side of the near piece, so you
look at it from inside the garment. A back seen from inside has the wearer's left shoulder at your right, and the end
of that shoulder at your right is the armhole. Right-handed, a row starts at the right-hand tips: the armhole.

Each of the four facts is one of two, and changing any one of them turns the end round. The other shoulder is the
mirror of this one. The front seen from inside is the mirror of the back. With wrong sides together you look from
outside, and left and right change places. Left-handed, the row starts at the left-hand tips. So the end is the parity
of the four. This is common practice that every pair of hands can check; no published source states it as a table.
"""

from typing import Literal

Side = Literal["left", "right"]
"""A shoulder of the wearer's, or a hand."""
Piece = Literal["front", "back"]
"""A piece of the garment, whose right and wrong sides are those of its fabric."""
Fabric = Literal["right", "wrong"]
"""The two sides of a fabric."""
End = Literal["armhole", "neck"]
"""The two ends of a shoulder."""
ENDS: tuple[End, End] = ("armhole", "neck")
"""Both of them."""


def start_of_join(shoulder: Side, near: Piece, together: Fabric, hand: Side) -> End:
    """Return the end where the tips of both needles and the yarn are when a shoulder is joined or grafted.

    ``shoulder``: the wearer's; ``near``: the piece nearer to the knitter; ``together``: the sides that touch, right or
    wrong; ``hand``: the hand that works. Left shoulder, back near, right sides together, right-handed: the armhole.
    """
    turned = (shoulder != "left", near != "back", together != "right", hand != "right")
    return "neck" if sum(turned) % 2 else "armhole"
