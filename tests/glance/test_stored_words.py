"""Whatever is stored by an id has words, no two ids the same ones; old words lead to the ids that have them."""

from typing import get_args

import pytest

from finishing_tui.craft.judging import Verdict
from finishing_tui.garment.events import Put, RepairChoice
from finishing_tui.garment.stored import decode
from finishing_tui.garment.work import Standing, Status
from finishing_tui.glance.stored_words import ACTS, PUT_DOWN_TO, REPAIRS, STATUSES, verdict_words
from finishing_tui.recipe.stage import Doing, Stage


def test_every_id_has_words_of_its_own() -> None:
    """Of acts, statuses, answers, repairs and verdicts; of acts only rounds and rows are the same verb."""
    puts = {one for arm in get_args(Put) for one in (get_args(arm) or (arm,))}
    for words, ids in ((ACTS, get_args(Doing)), (STATUSES, get_args(Status)), (REPAIRS, get_args(RepairChoice))):
        assert set(words) == set(ids)
        assert len(set(words.values())) == len(words) - ("round" in words)
    assert set(PUT_DOWN_TO) == puts
    assert all(verdict_words(verdict) for verdict in Verdict)
    assert not verdict_words(None)


@pytest.mark.parametrize("act", ACTS)
def test_an_act_of_the_first_version_is_the_one_that_has_its_word(act: Doing) -> None:
    """What stood on the screen was stored: as it was at that time, whatever the words are now."""
    plain = {"is": "Stage", "unit": "item", "units": 1, "title": "a", "act": act.replace("-", " ").upper()}
    assert decode(Stage, plain).act == act


@pytest.mark.parametrize("status", STATUSES)
def test_a_status_of_the_first_version_is_the_one_that_has_its_word(status: Status) -> None:
    """The same of how a step stands."""
    assert decode(Standing, {"is": "Standing", "status": status.replace("-", " "), "work": None}).status == status
