"""``cast on``."""

from finishing_tui.recipe.kinds.cast_on import CastOn
from tests.recipe.kinds.beginning import after, here, refused


def test_new_stitches_come_onto_the_needle_beside_those_there() -> None:
    """Published: 5 + 5 stitches cast on under an arm are 10 more on the body's needle (arithmetic)."""
    step = CastOn(title="Cast on under the arm", onto="body", count=10, method="backward loops")
    start = here({"body": 88})
    assert after(step, start).on("body") == 98
    (stage,) = step.stages(start)
    assert (stage.units, stage.act, stage.takes_all) == (10, "cast-on", True)
    assert "10 stitches" in stage.words
    assert "backward loops" in stage.words
    assert step.main_place == "body"


def test_none_in_this_size_is_done_as_it_begins() -> None:
    """A count of 0 is a stage without units that enters nothing."""
    step = CastOn(title="Cast on", onto="body", count=0)
    start = here({"body": 5})
    assert [stage.units for stage in step.stages(start)] == [0]
    assert after(step, start) == start.ledger


def test_an_absurd_count_is_refused() -> None:
    """Nothing above 100,000 is a count."""
    assert "100001" in refused(CastOn(title="Cast on", onto="body", count=100_001), here({}))
