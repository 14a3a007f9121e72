"""At the needles: what a real difference changes further on, found with the same engine.

The recipe is run twice from here: from the ledger it would have, and from the one there is. The knitter's ledger is
what is there, so nothing is put right on the way: every later number that differs is named.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from finishing_tui.craft.ledger import Entry, Ledger
from finishing_tui.recipe.audit.finding import Finding, LedgerRow, Where
from finishing_tui.recipe.audit.footing import Inputs, footing
from finishing_tui.recipe.audit.printing import places_of
from finishing_tui.recipe.audit.running import AuditRun, run
from finishing_tui.recipe.model import Recipe


@dataclass(frozen=True, slots=True)
class LaterChange:
    """A later number that is another one than planned: stitches on ``place`` after the step at position ``step``."""

    step: int
    title: str
    place: str
    planned: int
    real: int


def onward(
    inputs: Inputs,
    ledger: Ledger,
    steps: Sequence[int],
    rest: Callable[[int], Mapping[int, tuple[Entry, ...]]] = lambda _: MappingProxyType({}),
    off: Mapping[int, int] = MappingProxyType({}),
    lost: Mapping[int, frozenset[str]] = MappingProxyType({}),
) -> AuditRun:
    """Do ``steps`` (positions from 0, in the order they will be done) from ``ledger``, and look at each.

    ``rest``: for each of them that is under way, the entries it still has to make, with a guess at the spots that
    nobody knows; ``off``: the stitches it worked off already; ``lost``: the places whose count is then not known.
    ``inputs.own`` must have the numbers that are not printed. Raises ``NoNumber`` or ``BadSum`` when a number cannot be
    worked out.
    """
    return run(footing(inputs), ledger, steps, rest=rest, off=off, lost=lost, trust="ledger")


def changes(planned: AuditRun, real: AuditRun) -> tuple[LaterChange, ...]:
    """Return every later number that differs between two runs of the same steps, in order."""
    found = []
    for one, other in zip(planned.rows, real.rows, strict=True):
        for place in dict.fromkeys((*one.live, *other.live)):
            was, now = one.live.get(place, 0), other.live.get(place, 0)
            if was != now and place not in one.unsure | other.unsure:
                found.append(LaterChange(one.step, one.title, place, was, now))
    return tuple(found)


def new_findings(planned: AuditRun, real: AuditRun) -> tuple[Finding, ...]:
    """Return what the real run finds that the planned one does not, not even of another number."""
    known = {(finding.kind, finding.where, finding.message) for finding in planned.findings}
    own = {_about(finding) for finding in planned.findings if _numbered(finding)}
    return tuple(
        finding
        for finding in real.findings
        if (finding.kind, finding.where, finding.message) not in known and _about(finding) not in own
    )


def own_findings(planned: AuditRun, real: AuditRun) -> tuple[Finding, ...]:
    """Return what the plan has wrong by itself where the real run finds the same of another number: as planned."""
    found = {_about(finding): finding.message for finding in real.findings if _numbered(finding)}
    return tuple(
        finding
        for finding in planned.findings
        if _numbered(finding) and found.get(_about(finding), finding.message) != finding.message
    )


def _about(finding: Finding) -> tuple[str, Where]:
    return finding.kind, finding.where


def _numbered(finding: Finding) -> bool:
    """Return whether a number is found to be wrong, and not that something is there or is not."""
    return isinstance(finding.found, int) and finding.kind not in _THERE_OR_NOT


_THERE_OR_NOT = frozenset({"marker left", "hole left", "tail left", "yarn left"})
"""Findings that count one of something, and stand at one place whichever of them they are about."""


@dataclass(frozen=True, slots=True)
class Stop:
    """The first step that cannot be done as planned, by its position.

    ``place``: where it needs another number of stitches, ``needs``, than ``there`` are; where it is not about that,
    that is empty and ``why`` says what it is. ``after``: how many steps after it cannot be worked as planned either.
    """

    step: int
    title: str
    place: str
    needs: int
    there: int
    why: str
    after: int


def first_stop(
    recipe: Recipe, planned: AuditRun, real: AuditRun, begun: Collection[int], *, counted: bool
) -> Stop | None:
    """Return the first of the same steps that cannot be done, or is left next to nothing to be done with.

    Sums after that one are about a number that nobody has. ``begun``: steps under way, whose rest is what is there.
    ``counted``: the plan is the same in both, so that what it has is what is needed.
    """
    rows = [*zip(planned.rows, real.rows, strict=True)]
    for at, (was, now) in enumerate(rows):
        places = _differ(recipe, was, now)
        stopped = now.stopped and not was.stopped
        lacks = [place for place in places if counted and was.step not in begun and _next_to_nothing(was, now, place)]
        if stopped or lacks:
            place = next(iter(lacks or places), "") if counted else ""
            after = sum(
                (later.stopped and not before.stopped) or bool(_differ(recipe, before, later))
                for before, later in rows[at + 1 :]
            )
            why = next((one.message for one in now.findings), "")
            needs, there = was.held.get(place, 0), now.held.get(place, 0)
            return Stop(was.step, was.title, place, needs, there, why, after)
    return None


NEXT_TO_NOTHING = Fraction(1, 4)
"""A step that has no more than this share of the stitches it was planned for is not the same step any more."""


def _differ(recipe: Recipe, was: LedgerRow, now: LedgerRow) -> list[str]:
    """Return the places with another number than planned that a step works on, and not only brings stitches to."""
    named = places_of(recipe.step[was.step])
    return [
        place
        for place in recipe.place
        if place in named
        and was.held.get(place, 0) >= max(was.live.get(place, 0), 1)
        and was.held.get(place) != now.held.get(place)
    ]


def _next_to_nothing(was: LedgerRow, now: LedgerRow, place: str) -> bool:
    return now.held.get(place, 0) <= was.held[place] * NEXT_TO_NOTHING
