"""At the needles: what a real difference changes further on, found with the same engine.

The recipe is run twice from here: from the ledger it would have, and from the one there is. The knitter's ledger is
what is there, so nothing is put right on the way: every later number that differs is named.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from finishing_tui.craft.ledger import Entry, Ledger
from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.footing import Inputs, footing
from finishing_tui.recipe.audit.running import AuditRun, run


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
    """Return what the real run finds that the planned one does not."""
    known = {(finding.kind, finding.where, finding.message) for finding in planned.findings}
    return tuple(finding for finding in real.findings if (finding.kind, finding.where, finding.message) not in known)
