"""Two needles worked off together that do not hold the same number, and edges of unequal length sewn together.

The sources disagree about unequal needles: some work two together on the fuller needle, some make one on the other. So
both are answered and the knitter chooses; nothing here decides for her. A pair never takes more than two loops from one
needle: beyond that something was miscounted, and that is what is said.
"""

from dataclasses import dataclass
from itertools import accumulate, groupby, pairwise
from typing import Literal

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.even_parts import across
from finishing_tui.craft.rows import told
from finishing_tui.craft.words import listing, many, plural

Needle = Literal["front", "back"]
_LISTED = 12
"""Up to so many places are named by number; more are said as a rhythm."""


@dataclass(frozen=True, slots=True)
class Pairing:
    """How the loops of two needles pair off in a three-needle bind-off or a graft."""

    front: int
    back: int
    pairs: int
    """Pairs worked when the fuller needle gives two loops to some of them."""
    extra_on: Needle | None
    """The needle that holds more, or None when they match."""
    double_at: tuple[int, ...]
    """The pairs (1-based, in the order worked) that take two loops from the fuller needle."""
    make_after: tuple[int, ...]
    """The other way: the stitches of the emptier needle (1-based) after which one is made beforehand."""
    text: str


@dataclass(frozen=True, slots=True)
class Bars:
    """Two edges of rows in a mattress seam: where two bars are taken at once on the longer side."""

    short: int
    long: int
    double_at: tuple[int, ...]
    """The stitches of the seam (1-based) that take two bars from the longer side."""
    text: str


def _doubles(pairs: int, extra: int) -> tuple[int, ...]:
    """Return which of ``pairs`` are doubled, ``extra`` of them, evenly, and off both ends wherever there is room."""
    if not extra:
        return ()
    single = pairs - extra
    gaps = across(single, extra, 1 if single >= 2 else 0)
    return tuple(accumulate(gap + 1 for gap in gaps[:-1]))


def _rhythm(count: int, places: tuple[int, ...], one: str) -> str:
    """Say which of ``count`` are doubled: by number when they are few, else as a rhythm of single and double ones."""
    if len(places) <= _LISTED:
        return f"at {one if len(places) == 1 else many(one)} {listing([str(place) for place in places])} of {count}"
    doubled = set(places)
    runs = [(kind, len(list(run))) for kind, run in groupby(range(1, count + 1), doubled.__contains__)]
    phrases = [f"{length} double" if kind else f"{length} single" for kind, length in runs]
    first = [] if runs[0][0] else phrases[:1]
    pairs = [", ".join(phrases[at : at + 2]) for at in range(len(first), len(phrases), 2)]
    return f"in this order of {many(one)}: {told(first + pairs)}"


def pair(front: int, back: int) -> Pairing:
    """Return how ``front`` loops on the nearer needle and ``back`` on the further one are worked off in pairs.

    Raises Impossible when a needle is empty, or one holds more than twice the other.
    """
    counted("the front needle", front)
    counted("the back needle", back)
    few, more = sorted((front, back))
    if front == back:
        text = f"Both needles hold {front}: work {plural(front, 'pair')}, one loop from each needle."
        return Pairing(front, back, front, None, (), (), text)
    if more > 2 * few:
        raise Impossible(
            f"{front} on the front needle and {back} on the back needle cannot be worked off together: a pair "
            f"takes two loops from one needle at most, so {few} pair with {2 * few} at most; count both needles again"
        )
    extra = more - few
    full: Needle = "front" if front > back else "back"
    bare: Needle = "back" if front > back else "front"
    double_at = _doubles(few, extra)
    make_after = _made_after(few, extra)
    way = f"ork {plural(few, 'pair')} and take two together from it {_rhythm(few, double_at, 'pair')}"
    if make_after:
        other = f"or first make {extra} on the {bare} needle, {_made(make_after)}, and work {plural(more, 'pair')}"
        choice = f"Either w{way}; {other}. Choose one."
    else:
        choice = f"W{way}; there is no room to make {extra} on the {bare} needle in one row."
    return Pairing(front, back, few, full, double_at, make_after, f"The {full} needle holds {extra} more. {choice}")


def _made_after(few: int, extra: int) -> tuple[int, ...]:
    """Return the stitches after which one is made so that ``few`` become ``few + extra``; () where bars are too few."""
    if extra > few - 1:
        return ()
    return tuple(accumulate(across(few, extra, 1)[:-1]))


def _made(places: tuple[int, ...]) -> str:
    if len(places) <= _LISTED:
        return f"after {'stitch' if len(places) == 1 else 'stitches'} {listing([str(place) for place in places])}"
    return f"in this order: {told([f'work {right - left}, make 1' for left, right in pairwise((0, *places))])}"


def rows_to_rows(one: int, other: int) -> Bars:
    """Return where a mattress seam between edges of ``one`` and ``other`` bars takes two bars on the longer side.

    One stitch of the seam takes a bar from each side. A difference of one row is simply eased in the same way.
    Raises Impossible when an edge has no bars, or one more than twice the other's.
    """
    counted("the bars of one edge", one)
    counted("the bars of the other edge", other)
    few, more = sorted((one, other))
    if more > 2 * few:
        raise Impossible(
            f"edges of {one} and {other} bars cannot be sewn bar to bar: two bars at a time is the most, so {few} meet "
            f"{2 * few} at most; measure both edges"
        )
    places = _doubles(few, more - few)
    if not places:
        return Bars(few, more, (), f"Take one bar from each side, {plural(few, 'time')}.")
    where = _rhythm(few, places, "stitch")
    text = f"Sew {plural(few, 'stitch')}, one bar from each side, but take two bars from the longer side {where}."
    return Bars(few, more, places, text)
