"""Thousands of commands drawn from what is on offer, over every shipped recipe, size and hand."""

import json
from datetime import datetime, timedelta
from math import ceil
from random import Random
from typing import Literal

import pytest

from finishing_tui.craft.ledger import OUTSIDE
from finishing_tui.garment.commands import Refusal
from finishing_tui.garment.decide import decide
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import snapshot_of, state_of
from finishing_tui.glance import look_at
from finishing_tui.talk.offers import offers
from tests.garment.no_planning import no_planning
from tests.garment.paper import NOON, Paper, plan_for
from tests.garment.test_recipes_by_commands import EVERY_SIZE, TEXTS
from tests.safety.hand_at_random import HandAtRandom

Hand = Literal["right", "left"]
HANDS: tuple[Hand, ...] = ("right", "left")

GARMENTS = [(name, size, hand) for name, size in EVERY_SIZE for hand in HANDS]
"""Every shipped recipe in every size for either hand."""

SEEDS = (3, 14, 15, 92, 65, 35, 89, 79, 32, 38, 46, 26, 43, 383, 279, 50)
"""The seeds; each works its share of the garments. A failure names its seed and the garment."""

FEW, ALL = (ceil(commands / len(GARMENTS)) for commands in (3_000, 10_000))
"""So many commands on each garment are three and ten thousand in all."""

NOW = datetime.fromisoformat(NOON) + timedelta(hours=1)


def balances(state: State) -> None:
    """Check that all accounts add up to nothing, and that no place holds less than nothing."""
    stitches = state.ledger.stitches
    assert sum(stitches.values()) == 0
    assert all(count >= 0 for account, count in stitches.items() if account not in OUTSIDE)


def truly_offered(state: State, looking: int | None) -> None:
    """Check that what is offered would not be refused for good, where no dry run was asked as well."""
    for offer in offers(state, looking):
        if offer.command is not None:
            answer = decide(state, offer.command)
            assert not isinstance(answer, Refusal) or answer.again is not None, (offer, answer)


@pytest.mark.turns(of=8)
@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("commands", [FEW, pytest.param(ALL, marks=pytest.mark.long)])
def test_whatever_is_on_offer_can_be_done(commands: int, seed: int) -> None:
    """Nothing raises, what is on offer is accepted or asked again, the ledger balances, and it can always be seen.

    Replaying what was stored, from its start and from a snapshot taken on the way, gives the same state, with nothing
    being worked out anew.
    """
    share = GARMENTS[SEEDS.index(seed) :: len(SEEDS)]
    for name, size, hand in share:
        dice = Random(f"{seed} {name} {size} {hand}")  # noqa: S311  (a hand, not a secret)
        paper = Paper(plan_for(TEXTS[name], size, hand=hand))
        knitter = HandAtRandom(paper, dice)
        kept_at = dice.randrange(commands)
        kept = (1, "")
        try:
            knitter.starts()
            while knitter.done < commands:
                truly_offered(paper.state, knitter.looking)
                knitter.does_something()
                balances(paper.state)
                assert look_at(paper.state, knitter.looking, NOW).heading
                if knitter.done >= kept_at and not kept[1]:
                    kept = len(paper.rows), json.dumps(snapshot_of(paper.state))
        except Exception as error:
            error.add_note(f"{name}, size {size}, {hand} hand, after {knitter.done} commands with the seed {seed}")
            raise
        with pytest.MonkeyPatch.context() as patch:
            no_planning(patch)
            assert paper.replayed() == paper.state, (name, size, hand)
            assert paper.replayed(after=kept[0], state=state_of(json.loads(kept[1]))) == paper.state
        assert offers(paper.state)
