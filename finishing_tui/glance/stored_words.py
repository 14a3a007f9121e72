"""The words for what is stored by an id, so that words can change and journals need not."""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.recount_words import VERDICTS
from finishing_tui.garment.events import Put, RepairChoice
from finishing_tui.garment.labels import AgainstPlan
from finishing_tui.garment.work import Status
from finishing_tui.recipe.stage import Doing

ACTS: Mapping[Doing, str] = MappingProxyType(
    {
        "arrange": "LAY",
        "bind-off": "BIND OFF",
        "block": "BLOCK",
        "cast-on": "CAST ON",
        "check": "CHECK",
        "close": "CLOSE",
        "count": "COUNT",
        "cut": "CUT",
        "decrease": "DECREASE",
        "fasten-off": "FASTEN",
        "graft": "GRAFT",
        "hole": "MAKE",
        "increase": "INCREASE",
        "knit": "KNIT",
        "lift": "LIFT",
        "mark": "MARK",
        "measure": "MEASURE",
        "pair": "PAIR",
        "pick": "PICK",
        "rest": "REST",
        "round": "WORK",
        "row": "WORK",
        "set-up": "SET UP",
        "sew": "SEW",
        "sew-on": "SEW ON",
        "shape": "SHAPE",
        "slip": "SLIP",
        "unmark": "UNMARK",
        "weave-in": "WEAVE IN",
    }
)
"""What the hands do, in one verb, as it is read from two meters."""

STATUSES: Mapping[Status, str] = MappingProxyType(
    {"to-come": "to come", "under-way": "under way", "done": "done", "left-out": "left out"}
)
"""How a step stands."""

AGAINST_PLAN: Mapping[AgainstPlan, str] = MappingProxyType(
    {"skipped": "skipped", "picked": "picked", "picked-once": "picked once", "doubled": "doubled"}
)
"""What was done at a spot otherwise than planned."""

PUT_DOWN_TO: Mapping[Put, str] = MappingProxyType(
    {
        "as-planned": "as planned",
        "presses": "presses were missed or doubled",
        "loops": "the loops differ",
        "rows-left": "rows left",
        "half-way": "halfway",
        "rows-to-spare": "counted ahead, with rows to spare",
        "ends-at": "counted ahead to the end",
        "past-half": "a bit past halfway",
        "before-half": "a bit before halfway",
        "not-known": "the place not known",
        "edge-ends": "the edge ends here",
        "counted": "",
    }
)
"""What a count was put down to, as the record says it; nothing where it was only counted."""

REPAIRS: Mapping[RepairChoice, str] = MappingProxyType(
    {
        "space-the-rest": "space the rest",
        "first-round": "first round",
        "rip-back": "rip back",
        "as-it-is": "carry on",
        "double-last": "a second stitch in the last rows",
        "strand": "a strand lifted at the end",
        "next-section": "more in the next section",
    }
)
"""What is done about a count that differs."""


def verdict_words(verdict: Verdict | None) -> str:
    """Return the words for how the rest lies; none where nothing lies any way."""
    return VERDICTS[verdict] if verdict is not None else ""
