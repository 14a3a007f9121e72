"""What there is to see: one frozen value for a whole screen, with a face for each unit a press can stand for.

Text is ready to show and inert; a screen lays it out and draws it, but never makes up words of its own about a
garment.
"""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.garment.walk import done_on, planned_on, strays
from finishing_tui.garment.work import Progress, Status
from finishing_tui.glance.lying import Picture

SpotSort = Literal["picked", "skipped", "doubled", "to pick", "to skip", "to double"]
"""What a spot is: passed (picked, skipped, doubled: two loops) or to come."""

_PASSED: tuple[SpotSort, ...] = ("skipped", "picked", "doubled")
_TO_COME: tuple[SpotSort, ...] = ("to skip", "to pick", "to double")
"""By the loops at a spot."""


@dataclass(frozen=True, slots=True)
class Edge:
    """A section of an edge as it is walked, asked spot by spot; spots count from 1 in walking order.

    ``spots`` in all, ``at``: how many are passed, ``half``: the spot of the half mark, if it is recounted there;
    ``before`` and ``after``: what the section begins and ends at, in words; ``hand``: a right-handed knitter walks
    from right to left. ``uncounted``: nobody knows where it ends. ``pins``: the spots before the pins of a pinned edge,
    of which a spot is a stitch, and nobody knows the rows.
    """

    spots: int
    at: int
    half: int | None
    before: str
    after: str
    hand: Literal["right", "left"]
    progress: Progress
    uncounted: bool = False
    pins: tuple[int, ...] = ()

    def sort(self, spot: int) -> SpotSort:
        """Return what the spot is."""
        return self.sorts(spot, spot)[0]

    def sorts(self, first: int, last: int) -> list[SpotSort]:
        """Return what the spots from ``first`` to ``last`` are."""
        here = min(max(self.at, first - 1), last)
        passed, left = done_on(self.progress, first - 1, here), planned_on(self.progress, here, last)
        return [*map(_PASSED.__getitem__, passed), *map(_TO_COME.__getitem__, left)]

    def loops(self, after: int, last: int) -> list[int]:
        """Return how many loops each spot after ``after`` up to ``last`` has, or is to have."""
        here = min(max(self.at, after), last)
        return [*done_on(self.progress, after, here), *planned_on(self.progress, here, last)]

    @property
    def strayed(self) -> frozenset[int]:
        """The spots at which something else was done than planned."""
        return frozenset(spot for spot, _ in strays(self.progress))


@dataclass(frozen=True, slots=True)
class SpotFace:
    """Picking up along an edge.

    ``count`` of ``target`` loops; ``spot`` of ``spots`` passed, each a ``unit`` (row, ridge, chain, stitch).
    ``act``: what the next press stands for, in a word of two meters; ``first``, ``after``: what it stands for before
    and after that ("skip 1"); ``then``: what follows, in words. ``rhythm``: the rhythm in words; ``halfway``: about the
    count at halfway; ``due``: it was not counted there; ``waits``: to count is what to do next. ``uncounted``: what
    nobody counted of the edge, its spots or all of it; ``to_go``: what it then still takes, in words.
    """

    count: int
    target: int
    spot: int
    spots: int
    unit: str
    act: str
    first: str
    after: str
    then: str
    rhythm: str
    halfway: str
    due: bool
    waits: bool
    edge: Edge
    uncounted: Literal["", "spots", "all"] = ""
    to_go: str = ""

    @property
    def where(self) -> str:
        """Where on the edge it is, in words."""
        if not self.spot:
            return f"before {self.unit} 1"
        return f"{self.unit} {self.spot}" if self.uncounted else f"{self.unit} {self.spot} of {self.spots}"

    @property
    def wanted(self) -> str:
        """The target as a figure; empty where nobody knows it."""
        return "" if self.uncounted == "all" else str(self.target)

    @property
    def flags(self) -> tuple[str, str]:
        """What is to be done before the act, and what comes after it, in small words."""
        return f"{self.first} first" if self.first else "", f"then {self.after}" if self.after else self.then

    @property
    def ahead(self) -> int:
        """How many spots the next press skips before it picks one up."""
        if not self.first:
            return 0
        to_come = self.edge.sorts(self.edge.at + 1, self.edge.spots)
        return next((at for at, sort in enumerate(to_come) if sort != "to skip"), 0)

    @property
    def acts(self) -> tuple[str, ...]:
        """All that the next press stands for, in turn."""
        return tuple(one.upper() for one in (self.first, self.act, self.after) if one)


@dataclass(frozen=True, slots=True)
class StitchFace:
    """Single stitches: ``count`` of ``of`` are done; ``act``: the word; ``said``: words for just the next one.

    ``yarn``: what these still take, in words. ``edge``: the pinned edge that they are picked up along, and ``waits``:
    to count them, at a pin or its end, is what to do next.
    """

    count: int
    of: int
    act: str
    words: str
    said: str
    yarn: str = ""
    edge: Edge | None = None
    waits: bool = False


@dataclass(frozen=True, slots=True)
class PairFace:
    """Pairs of a join, a graft or a seam: ``count`` of ``of``.

    ``front`` and ``back``: the needles (of a seam: the edges), with what is left on each; ``said``: words for just the
    next pair; ``moves``: the moves it is made of, in turn, where it is several; ``yarn``: what is left to do still
    takes, in words; ``sewn``: the pairs are bars of a seam, of which one edge may well have more than the other.
    """

    count: int
    of: int
    act: str
    front: str
    front_left: int
    back: str
    back_left: int
    words: str
    said: str = ""
    moves: tuple[str, ...] = ()
    yarn: str = ""
    sewn: bool = False


@dataclass(frozen=True, slots=True)
class RoundFace:
    """Rounds or rows: ``count`` of ``of`` are done, with ``stitches`` on the needle; ``unit``: round or row.

    ``act``: what is done in each, in a word; ``said``: what the next one asks for; ``coming``: the next shaped one, in
    words, if it is not the next.
    """

    count: int
    of: int
    act: str
    unit: str
    stitches: int
    words: str
    said: str
    coming: str


@dataclass(frozen=True, slots=True)
class ItemFace:
    """A checklist: its items in order, and how many are ticked off; ``lay``: how the only one lays the work."""

    act: str
    words: str
    items: tuple[str, ...]
    done: int
    lay: Picture | None = None


@dataclass(frozen=True, slots=True)
class ValueFace:
    """A value to type, in ``unit``; ``value``: what was typed, if it was."""

    act: str
    words: str
    unit: str
    value: str


@dataclass(frozen=True, slots=True)
class MessageFace:
    """Nothing to count right now: a word of two meters and a sentence, and what comes after the word, if anything.

    ``mood``: something is done, is to be done, or stands in the way.
    """

    act: str
    words: str
    mood: Literal["done", "to do", "in the way"]
    then: str = ""


Face = SpotFace | StitchFace | PairFace | RoundFace | ItemFace | ValueFace | MessageFace
"""What the middle of the screen shows; one for each unit, and one for when there is nothing to count."""


@dataclass(frozen=True, slots=True)
class Holding:
    """A place with its live stitches; ``here``: it is the one being worked on."""

    name: str
    kind: str
    stitches: int
    here: bool


@dataclass(frozen=True, slots=True)
class StepLine:
    """A step in the list of steps. ``number`` from 1; ``status``: how it stands."""

    number: int
    title: str
    status: Status
    here: bool


@dataclass(frozen=True, slots=True)
class WordLine:
    """Words of a step under their heading: how to do it, how to count, how it should look, what goes wrong, mind.

    ``behind``: a caution that was shown before, and that only the help shows now; ``always``: a child's, which is
    shown whole.
    """

    heading: str
    text: str
    behind: bool = False
    always: bool = False


@dataclass(frozen=True, slots=True)
class Glance:
    """A whole screen of a garment in hand.

    ``step`` of ``steps``, counted from 1 (``step`` is 0 when all are done); ``part``: the section or part of the step;
    ``posture``: how the work lies, in words, ``lying``: the same as a small picture; ``needles``: what is worked with;
    ``digits``: of the largest number its counts come to; ``minutes`` of this sitting so far, None when that cannot be
    known; ``time_left``: in words, empty when it cannot be known; ``lines``: the step's words; ``take_back``: what
    backspace would take back when that is not a press; ``looking``: whether this is not the step under way.
    """

    title: str
    size: str
    step: int
    steps: int
    heading: str
    part: str
    posture: str
    lying: Picture
    needles: str
    minutes: int | None
    time_left: str
    face: Face
    holdings: tuple[Holding, ...]
    tails: tuple[str, ...]
    markers: tuple[str, ...]
    holes: tuple[str, ...]
    lines: tuple[WordLine, ...]
    list: tuple[StepLine, ...]
    pace: Literal["loop", "spot", "run"]
    take_back: str
    looking: bool
    hand: Literal["right", "left"]
    digits: int
