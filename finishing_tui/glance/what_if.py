"""What if, side by side: the plan there is and the one that is asked for, how it lies, and what changes later."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.words import decimal, many
from finishing_tui.garment.commands import Refusal, WhatIf
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.altering import altered, asks
from finishing_tui.garment.events import Act
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.state import State
from finishing_tui.glance.faces import edge_of
from finishing_tui.glance.label_words import altered_words
from finishing_tui.glance.later import cut, later_lines
from finishing_tui.glance.values import Edge


@dataclass(frozen=True, slots=True)
class Asked:
    """What can be asked here. ``unit``: of a spot, or what is worked (round, row); ``section``: it walks an edge.

    ``title``: of the part; ``figure``: its loops or rounds as planned, ``spots``: those of the section,
    ``style``: how it is spread.
    """

    title: str
    unit: str
    section: bool
    figure: int
    spots: int
    style: Literal["easy", "even"]


@dataclass(frozen=True, slots=True)
class WhatIfView:
    """Both plans: ``was`` and ``now`` in words, ``before`` and ``after`` as edges, where an edge is walked.

    ``figure``: the loops or rounds there would be; ``drift``: of both, in words; ``verdict``: how the rest lies;
    ``later``: the later numbers that change, a line each; ``changes``: it is not what the plan has already.
    """

    figure: int
    was: str
    now: str
    before: Edge | None
    after: Edge | None
    drift: str
    verdict: Verdict | None
    later: tuple[str, ...]
    changes: bool
    command: WhatIf


def asked_here(state: State) -> Asked:
    """Return what can be asked here. Raises ``FinishingError`` with a sentence where nothing can."""
    stage = asks(state)
    section = stage.unit == "spot"
    return Asked(stage.title, stage.spot, section, stage.target if section else stage.units, stage.units, stage.style)


def can_ask(state: State) -> bool:
    """Return whether anything can be asked here."""
    try:
        asks(state)
    except FinishingError:
        return False
    return True


def what_if_view(state: State, command: WhatIf, most: int = 5) -> WhatIfView:
    """Return both plans side by side; ``most``: so many later numbers are named one by one.

    Raises ``FinishingError`` with a sentence for what cannot be.
    """
    from finishing_tui.garment.consequences import consequences  # noqa: PLC0415  (the audit: not for every garment)

    found = altered(state, command)
    work = found.work
    stage, old = work.stages[found.index], state.standing.work if state.standing else None
    if old is None:
        raise ValueError("nothing is asked of a step that is not begun")
    events = decide(state, command)
    acts = () if isinstance(events, Refusal) else tuple(event for event in events if isinstance(event, Act))
    after = applied(state, acts)
    section = stage.unit == "spot"
    now, was = altered_words(found.why)
    return WhatIfView(
        figure=stage.target if section else stage.units,
        was=was,
        now=now,
        before=edge_of(state, old, found.index) if section else None,
        after=edge_of(state, work, found.index, work.progress[found.index]) if section else None,
        drift=_drifts(*found.drift) if found.drift else "",
        verdict=found.verdict,
        later=cut(later_lines(consequences(state, after), after), most) if acts else (),
        changes=bool(acts),
        command=command,
    )


def rhythm_typed(typed: str) -> tuple[int, int] | None:
    """Return (a, b) where ``typed`` says "a of every b", as "3/4"; None where it does not yet."""
    pick, _, of = typed.partition("/")
    return (int(pick), int(of)) if pick.isdecimal() and of.isdecimal() and int(of) else None


def unit_words(asked: Asked) -> str:
    """Return what the spots or rounds are called, when there are several."""
    return many(asked.unit)


def _drifts(was: Fraction, now: Fraction) -> str:
    return f"strays from the straight line by {decimal(now)} of a stitch at most, as planned by {decimal(was)}"
