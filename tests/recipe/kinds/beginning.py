"""Where a step begins, for tests of single kinds: a few needles with so many stitches, and tails that hang there."""

from collections.abc import Iterable, Mapping
from typing import Literal

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.gauge import read_gauge
from finishing_tui.craft.ledger import Ledger, PostureEntry, opened
from finishing_tui.craft.ledger import Posture as Lie
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Stage, whole


def here(
    live: Mapping[str, int],
    tails: Iterable[str] = (),
    *,
    hand: Literal["right", "left"] = "right",
    together: str = "",
    body: str = "",
    band: str = "",
) -> Here:
    """Return a beginning in the only size, with ``live`` stitches on places called as they are."""
    ledger = opened(live, tails)
    if together:
        ledger = ledger.enter(PostureEntry(ledger.posture, Lie(together=together)))
    return Here(
        size=0,
        numbers={},
        ledger=ledger,
        texts={},
        hand=hand,
        body=read_gauge(body) if body else None,
        band=read_gauge(band) if band else None,
    )


def after(step: Step, start: Here) -> Ledger:
    """Return the ledger once the whole of ``step`` is done."""
    ledger = start.ledger
    for stage in step.stages(start):
        ledger = ledger.enter(*whole(stage))
    return ledger


def refused(step: Step, start: Here) -> str:
    """Return the sentence with which ``step`` is refused; it is one sentence, on one line."""
    with pytest.raises(FinishingError) as raised:
        step.stages(start)
    sentence = str(raised.value)
    assert sentence
    assert "\n" not in sentence
    assert not sentence.endswith(".")
    return sentence


def stages_or_refusal(step: Step, start: Here) -> tuple[Stage, ...] | str:
    """Return the stages of ``step``, or the sentence with which it is refused."""
    try:
        return step.stages(start)
    except FinishingError as error:
        return str(error)
