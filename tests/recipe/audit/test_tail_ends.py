"""Where the tails of pick-ups, bind-offs and seams hang, and that a seam is sewn with one that hangs on its side."""

from typing import Any, Literal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.looks.tail_ends import side_in
from tests.examples import share
from tests.recipe.audit.test_lies import found
from tests.recipe_texts import along, place, recipe, section, step

Hand = Literal["right", "left"]
SIDES = ("left", "right")


def sewn(side: str, tail: str, title: str = "") -> str:
    """Return a step that sews a side seam with a tail."""
    edges = [{"spots": 20, "along": f"{side} {piece} edge"} for piece in ("front", "back")]
    return step("seam", title or "Sew it", sides=edges, tail=tail)


def border(*after: str, **keys: Any) -> str:
    """Return a recipe whose border runs from the left front edge to the right front edge; ``after`` come more steps."""
    edges = along("left front edge", 20, 15), along("back neck", 20, 15), along("right front edge", 20, 15)
    picked = step("pick up and knit", "Pick up", *edges, onto="band", tail="start", length="60 in")
    ends = step("weave in", "Weave in", tails="all")
    return recipe("A border", place("band"), place("other"), picked, *after, ends, format=2, **keys)


def off(**keys: Any) -> str:
    """Return a step that binds the border off."""
    return step("bind off", "Bind off", from_="band", tail="end", length="60 in", **keys)


def told(text: str, hand: Hand = "right") -> list[Finding]:
    """Return what the audit finds wrong of a tail."""
    return [one for one in found(text, hand) if one.kind == "tail"]


@pytest.mark.parametrize("hand", SIDES)
@pytest.mark.parametrize("side", SIDES)
def test_a_pick_up_begins_at_its_first_spot(side: str, hand: Hand) -> None:
    """That is the first section for the right hand, and the last one for the left."""
    starts = "left" if hand == "right" else "right"
    wrong = told(border(off(), sewn(side, "start")), hand)
    assert [one.level for one in wrong] == ["error"] * (side != starts)
    for one in wrong:
        assert one.message == (
            f"the tail 'start' hangs at the start of the {starts} front edge, and this is on the {side}"
        )
        assert one.suggestion == "use a tail of that side, or new yarn"


@settings(max_examples=share(40))
@given(st.integers(1, 12), st.sampled_from(SIDES), st.sampled_from(SIDES), st.booleans())
def test_a_bind_off_ends_at_its_last_stitch(rows: int, side: str, hand: Hand, moved: bool) -> None:  # noqa: FBT001
    """After the pick-up the yarn is at its end; every row takes it to the other, and so does the bind-off."""
    last = "left" if hand == "right" else "right"
    ends = last if rows % 2 == 0 else next(one for one in SIDES if one != last)
    worked = step("work", "Work", on="band", rows=rows)
    over = [step("move", "Over", from_="band", to="other"), off().replace('"band"', '"other"')] if moved else [off()]
    assert len(told(border(worked, *over, sewn(side, "end")), hand)) == (side != ends)


@pytest.mark.parametrize("side", SIDES)
def test_a_round_ends_where_it_began(side: str) -> None:
    """However many there were."""
    for rounds in (1, 2, 5):
        worked = step("work", "Work", on="band", rounds=rounds)
        assert len(told(border(worked, off(), sewn(side, "end")))) == (side != "left")


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize(
    "between",
    [
        step("buttonholes", "Holes", on="band", holes=2, width=2, first=4, last=4),
        step("work", "Work", on="band", rows=6, short_rows={"first": 10, "step": 2, "times": 2}),
        step("work", "Cannot be", on="band", rows=2, short_rows={"first": 10, "step": 2, "times": 2}),
        step("cut", "Cut", tail="cut") + step("work", "Work", on="band", rows=2),
    ],
)
def test_where_nothing_tells_at_which_end_nothing_is_said(between: str, side: str) -> None:
    """Turned in the middle of a row, a row of holes, new yarn, a step that cannot be worked."""
    assert told(border(between, off(), sewn(side, "end"))) == []


def test_a_seam_leaves_its_tail_on_its_side() -> None:
    """A tail of which nobody knows where it hangs is on the left once a left seam is sewn with it."""
    first = step("seam", "Sew the left sleeve", sides=[{"spots": 20}, {"spots": 20}], tail="long")
    for side in SIDES:
        again = told(recipe("Seams", first, sewn(side, "long"), step("weave in", "In", tails="all"), tails=["long"]))
        assert [one.message for one in again] == ["the tail 'long' hangs on the left, and this is on the right"] * (
            side == "right"
        )


@pytest.mark.parametrize("end", ["armhole", "neck"])
def test_a_shoulder_seam_takes_its_tail_to_the_other_end(end: str) -> None:
    """What joined the outer layer's shoulder sews the next one from the neck, and then works a third from there."""
    places = "".join(
        place(f"{piece}_{layer}", text=f"{layer} needle with the {piece}", live=4)
        for layer in ("outer", "inner")
        for piece in ("front", "back")
    )
    join = {"ridge": "inside"}
    first = step(
        "join",
        "Join the left shoulder",
        near="back_outer",
        far="front_outer",
        yarn="new",
        start_tail="one",
        tail="two",
        **join,
    )
    seam = step(
        "seam", "Sew the left shoulder", sides=[{"spots": 9}, {"spots": 9}], tail="one" if end == "neck" else "two"
    )
    last = step(
        "join",
        "Join the left shoulder",
        near="back_inner",
        far="front_inner",
        with_tail="one" if end == "neck" else "two",
        **join,
    )
    lay = step("arrange", "Lay it", together="right")
    text = recipe("Layers", places, lay, first, seam, lay, last, step("weave in", "In", tails="all"), format=2)
    assert [one.found for one in told(text)] == ["neck"] * (end == "neck")


@pytest.mark.parametrize(
    ("text", "side"),
    [
        ("left side", "left"),
        ("Sew the right sleeve", "right"),
        ("Sew from the right side", None),
        ("right side of the left front", "left"),
        ("left and right fronts", None),
        ("sew what is left", None),
        ("start of neckband", None),
    ],
)
def test_the_right_side_of_a_fabric_is_no_side_of_hers(text: str, side: str | None) -> None:
    """Nor is what is left."""
    assert side_in(text) == side


def test_a_tail_that_is_too_short_for_a_seam_is_told_where_the_bind_off_says_how_long() -> None:
    """20 rows at 30 in 10 cm are 6.7 cm: 20 cm of yarn, and 15 to weave in."""
    gauge = {"stitches": 20, "rows": 30, "over": "10 cm"}
    for length, wrong in (("20 cm", 1), ("36 cm", 0)):
        text = border(off().replace("60 in", length), sewn("left", "end"), gauge=gauge)
        assert len([one for one in told(text) if "long, and this takes" in one.message]) == wrong


def test_held_stitches_tell_by_the_name_of_their_holder() -> None:
    """A pick-up that begins with them begins at their side."""
    held = section(from_="held", along="left front neck")
    picked = step("pick up and knit", "Pick up", held, along("back neck", 20, 15), onto="band", tail="start")
    text = recipe(
        "Held",
        place("band"),
        place("held", "holder", live=6),
        picked,
        sewn("right", "start"),
        step("bind off", "Off", from_="band"),
        step("weave in", "In", tails="all"),
    )
    assert [one.message for one in told(text)] == [
        "the tail 'start' hangs at the start of the left front neck, and this is on the right"
    ]
