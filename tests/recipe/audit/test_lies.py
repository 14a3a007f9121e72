"""How a join lies, and the tail it is worked with: what a recipe says of them against what follows from the rest."""

from typing import Literal

import pytest

from finishing_tui import shipped
from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.footing import Inputs, footing
from finishing_tui.recipe.audit.running import run
from finishing_tui.recipe.reader import read_recipe, read_text
from tests.craft.test_lies import SIXTEEN
from tests.recipe_texts import along, place, recipe, section, step

OTHER = {"armhole": "neck", "neck": "armhole", "front": "back", "back": "front"}


def found(text: str, hand: Literal["right", "left"] = "right") -> list[Finding]:
    """Return what the audit finds of the one join in a recipe, whatever is left at the end."""
    done = run(footing(Inputs(recipe=read_text(text, "x.toml"), size=0, hand=hand)))
    return [one for one in done.findings if one.step is not None and one.kind in {"lie", "tail", "yarn"}]


def shoulder(side: str, piece: str, together: str, end: str, **keys: str) -> str:
    """Return a recipe that lays the yarn of a shoulder at ``end``, looks at it, and joins it."""
    ridge = "inside" if together == "right" else "outside"
    needles = keys or {"front": piece, "back": OTHER[piece]}
    return recipe(
        "A shoulder",
        place("front", text="needle with the front", live=4),
        place("back", text="needle with the back", live=4),
        step("arrange", "Lay it", together=together, yarn_at=f"the {end} edge"),
        step("check", "Check it", items=["Not twisted."]),
        step("join", f"Join the {side} shoulder", ridge=ridge, yarn="new", **needles),
    ).replace("format = 1", "format = 2")


@pytest.mark.parametrize(("side", "near", "together", "hand", "end"), SIXTEEN)
def test_yarn_laid_at_the_other_end_is_an_error(
    side: str, near: str, together: str, hand: Literal["right", "left"], end: str
) -> None:
    """In each of the sixteen ways: nothing at the right end, one error at the other, which names both."""
    assert found(shoulder(side, near, together, end), hand) == []
    (one,) = found(shoulder(side, near, together, OTHER[end]), hand)
    assert (one.level, one.kind, one.expected, one.found) == ("error", "lie", end, OTHER[end])


@pytest.mark.parametrize(("side", "near", "together", "hand", "end"), [way for way in SIXTEEN if way[3] == "right"])
def test_near_and_far_start_at_the_same_end_for_either_hand(
    side: str, near: str, together: str, hand: str, end: str
) -> None:
    """They change places for a left-handed knitter."""
    del hand
    text = shoulder(side, near, together, end, near=near, far=OTHER[near])
    assert found(text, "right") == found(text, "left") == []


def test_another_piece_laid_near_is_an_error() -> None:
    """The laying and the join must have the same piece near."""
    text = shoulder("left", "back", "right", "armhole").replace('yarn_at = "the', 'near = "the front"\nyarn_at = "the')
    (one,) = found(text)
    assert (one.level, one.expected, one.found) == ("error", "back", "front")


def crown(length: str, tail: str = "top of hood") -> str:
    """Return a recipe that joins 40 pairs, 20 cm, with a tail cut to ``length``."""
    return recipe(
        "A hood",
        place("one", text="first needle", live=40),
        place("two", text="second needle", live=40),
        step("cut", "Cut", tail=tail, length=length),
        step("join", "Join the crown", near="one", far="two", with_tail=tail),
        step("weave in", "Weave in", tails="all"),
    ).replace("format = 1", 'format = 2\ngauge = { stitches = 20, rows = 28, over = "10 cm" }')


@pytest.mark.parametrize(("length", "level"), [("95 cm", []), ("94 cm", ["warning"]), ("70 cm", ["error"]), ("", [])])
def test_a_tail_must_be_long_enough(length: str, level: list[str]) -> None:
    """Four times the width and 15 cm is enough, less than three times and 15 cm is not; no length said, none judged."""
    assert [one.level for one in found(crown(length))] == level


def corners(length: str, *more: str) -> str:
    """Return a recipe with two holes, closed with a tail cut to ``length``; ``more``: steps before."""
    return recipe(
        "Two corners",
        place("band"),
        step(
            "pick up and knit",
            "Pick up",
            along("edge", 8, 6),
            section(gap="left corner", extra=1),
            section(gap="right corner", extra=1),
            onto="band",
        ),
        *more,
        step("cut", "Cut", tail="end", length=length),
        *(step("close hole", f"Close the {side}", hole=f"{side} corner", tail="end") for side in ("left", "right")),
        step("bind off", "Bind off", from_="band", yarn="new"),
        step("weave in", "Weave in", tails="all"),
    )


@pytest.mark.parametrize(
    ("length", "levels"),
    [
        ("40 cm", []),
        ("18 in", []),
        ("39 cm", ["warning"]),
        ("12 in", ["warning"]),
        ("29 cm", ["warning", "warning"]),
        ("25 cm", ["warning", "error"]),
        ("15 cm", ["error", "error"]),
        ("6 in", ["error", "error"]),
        ("10 cm", ["error"]),
        ("", []),
        ("an arm's length", []),
    ],
)
def test_a_tail_must_be_long_enough_for_every_hole(length: str, levels: list[str]) -> None:
    """30 cm is enough for one; each takes 10 cm of it; what only weaves in is too short; no length, none judged."""
    assert [one.level for one in found(corners(length))] == levels


def test_a_tail_too_short_for_a_hole_is_told_in_its_own_unit() -> None:
    """With how long it is, how long one is left, and what to do."""
    one, _ = found(corners("6 in"))
    assert one.message == "the tail 'end' is 6 in long, and this takes 12 to 18 in"
    assert "longer tail" in one.suggestion


def test_a_tail_made_anew_is_not_judged_by_the_one_before() -> None:
    """One of the same name was woven in; how long the new one is nobody says."""
    before = step("cut", "Cut short", tail="end", length="2 cm"), step("weave in", "Weave in one", tails=["end"])
    assert found(corners("", *before)) == []


def test_a_tail_at_the_other_end_is_an_error() -> None:
    """A tail that hangs at the neck does not work a join that starts at the armhole."""
    for end, wrong in (("armhole", 0), ("neck", 1)):
        text = shoulder("left", "back", "right", "armhole", near="back", far="front", with_tail=f"left {end}")
        text = text.replace('yarn = "new"\n', "").replace("sizes = ", f'tails = ["left {end}"]\nsizes = ')
        assert [one.kind for one in found(text)] == ["tail"] * wrong


def layers(first: str, second: str, piece: str, together: str, tail: str) -> str:
    """Return a recipe that joins shoulders of two layers, the second with a ``tail`` that the first left."""
    ridge = "inside" if together == "right" else "outside"
    back = OTHER[piece]
    return recipe(
        "Two layers",
        *(
            place(f"{one}_{layer}", text=f"{layer} needle with the {one}", live=4)
            for layer in ("outer", "inner", "third")
            for one in ("front", "back")
        ),
        step("arrange", "Lay it", together=together),
        step(
            "join",
            f"Join the {first} shoulder",
            front=f"{piece}_outer",
            back=f"{back}_outer",
            ridge=ridge,
            yarn="new",
            start_tail="one",
            tail="two",
        ),
        *(
            step(
                "join",
                f"Join the {second} shoulder",
                front=f"{piece}_{layer}",
                back=f"{back}_{layer}",
                ridge=ridge,
                with_tail=tail,
            )
            for layer in ("inner", "third")
        ),
        step("weave in", "Weave in", tails="all"),
    ).replace("format = 1", "format = 2")


@pytest.mark.parametrize(("side", "near", "together", "hand", "end"), SIXTEEN)
def test_where_a_join_left_a_tail_is_known(
    side: str, near: str, together: str, hand: Literal["right", "left"], end: str
) -> None:
    """Its start tail starts a second one there, once, for then it hangs at the other end; its last one never does."""
    (again,) = found(layers(side, side, near, together, "one"), hand)
    assert (again.level, again.kind, again.step, again.expected, again.found) == ("error", "tail", 3, end, OTHER[end])
    (other,) = found(layers(side, side, near, together, "two"), hand)
    assert (other.level, other.kind, other.step, other.expected, other.found) == ("error", "tail", 2, end, OTHER[end])


@pytest.mark.parametrize("tail", ["one", "two"])
def test_a_tail_of_the_other_shoulder_is_an_error(tail: str) -> None:
    """One sentence, which names both shoulders."""
    one, *_ = found(layers("left", "right", "back", "right", tail))
    assert one.message == f"the tail {tail!r} hangs at the left shoulder, and this is the right one"


def test_the_yarn_of_a_join_must_hang_there() -> None:
    """Yarn that is used again where none hangs is an error."""
    text = shoulder("left", "back", "right", "armhole").replace('yarn = "new"', 'yarn = "same"')
    assert [(one.level, one.kind) for one in found(text)] == [("error", "yarn")]


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("name", shipped.recipes())
def test_shipped_recipes_lie_right_for_either_hand(name: str, hand: Literal["right", "left"]) -> None:
    """In every size."""
    recipe = read_recipe(shipped.recipe(name))
    for size in range(len(recipe.sizes)):
        found = run(footing(Inputs(recipe=recipe, size=size, hand=hand))).findings
        assert [one for one in found if one.level != "implied"] == []
