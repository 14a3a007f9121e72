"""Where a stitch that is made, or two worked together, show least: by what is done with them next."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui import shipped
from finishing_tui.garment.where_it_shows import SHOWS_LEAST, in_a_round, shows_least
from finishing_tui.recipe.kinds.work import Work
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import place, recipe, section, step

SLIP = step("move", "Over", from_="band", to="other")
JOIN = step("join", "Join the left shoulder", front="front_left", back="back_left", start_tail="start")
NEEDLES = place("back_left", text="left back", live=8) + place("front_left", text="left front", live=8)


def on_band(*steps: str) -> Paper:
    """Return a garment with 20 stitches on a band needle and those steps to come."""
    return Paper(plan_for(recipe("A band", place("band", live=20), place("other"), *steps)))


def work(pattern: str, **keys: object) -> str:
    """Return a step that works the band."""
    return step("work", "Work the band", on="band", pattern=pattern, **(keys or {"rounds": 4}))


@pytest.mark.parametrize(
    ("more", "steps", "said"),
    [
        (1, [work("k2, p2 rib")], "Lift the strand beside a purl column and purl it: it sinks between the ribs."),
        (-1, [work("k1, p1")], "Purl two together at a purl column: it sinks between the ribs."),
        (1, [work("garter stitch")], "Work into the front and back of one, away from the edge stitch: the bumps"),
        (-1, [work("stockinette stitch")], "Knit two together, one stitch in from an edge, a seam or the start of"),
        (1, [step("bind off", "Off", from_="band")], "Lift the strand as you bind off: the bound-off ridge covers it."),
        (
            -1,
            [step("bind off", "Off", from_="band", method="in rib")],
            "Work two together beside a purl column as you bind off: the bound-off ridge covers it.",
        ),
        (2, [work("k1, p1 rib")], "it sinks between the ribs. Keep them apart."),
        (1, [work("a pattern of hers")], SHOWS_LEAST),
        (1, [step("measure", "Measure", what="width")], SHOWS_LEAST),
        (
            1,
            [step("move", "Over", from_="band", to="other"), step("bind off", "Off", from_="other")],
            "as you bind off",
        ),
    ],
)
def test_it_is_said_by_what_is_done_with_them_next(more: int, steps: list[str], said: str) -> None:
    """In a rib, in garter stitch, in stockinette, in a bind-off; where nothing tells, what always holds."""
    assert said in shows_least(on_band(*steps).state, "band", more)


def test_flat_with_the_wrong_side_towards_her_it_is_purled() -> None:
    """So that it is a knit stitch on the right side."""
    laid = step("arrange", "Lay it", facing="wrong")
    paper = on_band(laid, work("stockinette stitch", rows=4))
    assert "Knit two together" in shows_least(paper.state, "band", -1)
    paper.press()
    assert "Purl two together" in shows_least(paper.state, "band", -1)


@pytest.mark.parametrize("needle", ["back_left", "front_left"])
def test_beside_a_join_it_is_at_its_edge(needle: str) -> None:
    """A shoulder has an armhole end; several are spread under the ridge."""
    state = Paper(plan_for(recipe("A shoulder", NEEDLES, JOIN))).state
    assert shows_least(state, needle, 1) == (
        "Lift the strand right after the edge stitch, at the armhole end: the ridge of the join covers it."
    )
    assert shows_least(state, needle, -2) == "Spread them along the join: its ridge covers them."


def test_in_the_middle_of_a_graft_it_would_show() -> None:
    """There is no ridge to cover it."""
    parts = step("graft", "Graft", front="front_left", back="back_left", tail="long")
    text = recipe("A graft", NEEDLES, parts, tails=["long"])
    state = Paper(plan_for(text)).state
    assert shows_least(state, "back_left", -1).endswith(": in the middle of a graft it would show.")


def test_held_stitches_of_a_band_hide_it_in_the_corner() -> None:
    """A holder that is knitted across as the band is picked up."""
    picked = step("pick up and knit", "Pick up", section(from_="back", along="back neck"), onto="band")
    text = recipe("Held", place("band") + place("back", "holder", live=10), picked)
    assert "beside the corner" in shows_least(Paper(plan_for(text)).state, "back", 1)


@given(st.text(max_size=20), st.integers(-3, 3).filter(bool))
def test_no_round_is_said_to_hide_it_where_its_pattern_does_not_tell(pattern: str, more: int) -> None:
    """Whatever the pattern is called, it is one of three sentences or none; evenly spread, no edge is named."""
    said = in_a_round(Work(title="Work", on="band", rounds=2, pattern=pattern), more)
    assert not said or "between the ribs" in said or "bumps" in said


@pytest.mark.parametrize("recipe_name", sorted(shipped.recipes()))
def test_every_needle_of_the_shipped_recipes_has_a_sentence(recipe_name: str) -> None:
    """Short enough for a line or two at 40 columns, ended by a full stop."""
    text = Path(shipped.recipe(recipe_name)).read_text(encoding="utf-8")
    state = Paper(plan_for(text)).state
    for name in state.plan.recipe.place:
        for more in (-2, -1, 1, 2):
            said = shows_least(state, name, more)
            assert said.endswith(".")
            assert len(said) <= 120
