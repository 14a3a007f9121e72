"""What is shown says what is true and can be read whole: headings, large words, names told apart, keys beside words."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.glance import recount_view
from finishing_tui.widgets.plain import told_apart
from tests.garment.test_open_edges import edges
from tests.screens.hands import needles, pressing, shown, still
from tests.screens.scenes import SCENES, SIZES


async def _screen(name: str, size: str, at: Path, *keys: str) -> str:
    scene = SCENES[name]
    app = scene.app(at)
    async with app.run_test(size=SIZES[size]) as pilot:
        await pressing(*scene.keys, *keys)(pilot)
        await still(pilot)
        return shown(app)


@pytest.mark.parametrize(
    ("name", "heading"),
    [
        ("edge-at-the-fold", "Halfway: you have 15; pick up 9 in the second half"),
        ("edge-ends-two-left-over", "2 rows left over: you have all 24"),
    ],
)
async def test_a_number_is_never_held_against_itself(name: str, heading: str, tmp_path: Path) -> None:
    """Where there are as many as planned the heading says what is left, and nothing is "not" itself."""
    seen = await _screen(name, "100x30", tmp_path)
    assert heading in seen
    assert " not " not in seen.split("total")[0]


async def test_a_count_far_off_can_be_counted_again(tmp_path: Path) -> None:
    """Where nothing can put it right the count is taken back, and asked for again."""
    scene = SCENES["count-far-off"]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await still(pilot)
        before = needles(app).talk.state
        await pressing(*scene.keys)(pilot)
        assert "1  Count again" in shown(app)
        await pilot.press("1")
        await still(pilot)
        after = needles(app).talk.state
        assert (after.ledger, after.standing) == (before.ledger, before.standing)


async def test_three_needles_in_hand_are_told_apart(tmp_path: Path) -> None:
    """At 40x20 no name is cut, and what is in hand is never counted as elsewhere: one stitch is on the third needle."""
    assert "▸back 15 ▸right front 15  70 elsewhere" in await _screen("caution-child-stitches", "40x20", tmp_path)


@pytest.mark.parametrize(
    ("name", "held"),
    [
        ("edge-at-the-last-pin", ("▸ panel edge needle 24    48 elsewhere", "▸ panel edge needle 24 ")),
        ("edge-ends-left-over", ("▸ panel edge needle 24    48 elsewhere", "▸ panel edge needle 24 ")),
        ("spot-ended-differs", ("▸ neck needle 17 ", "▸ neck needle 17 ")),
    ],
)
async def test_the_needle_that_is_counted_is_in_hand_until_the_step_ends(
    name: str, held: tuple[str, str], tmp_path: Path
) -> None:
    """Its stitches are never among those elsewhere, whether its section just ended or a marker comes next."""
    for size, words in zip(("40x20", "80x24"), held, strict=True):
        (tmp_path / size).mkdir()
        assert words in await _screen(name, size, tmp_path / size)


async def test_what_is_refused_about_two_needles_says_how_many_they_hold(tmp_path: Path) -> None:
    """The notice lies over one of them on a low screen."""
    assert "! Both needles hold 4: there's nothing" in await _screen("two-together-refused", "40x20", tmp_path)


@pytest.mark.parametrize("name", ["edge-counted-otherwise", "recount-presses"])
async def test_what_differs_in_a_drawing_is_marked(name: str, tmp_path: Path) -> None:
    """Also where the edge has another length than planned, or only more of it is picked up."""
    lines = (await _screen(name, "80x24", tmp_path)).split("\n")
    assert "^" in next(line for line in lines if "changed 1" in line)


@pytest.mark.parametrize("size", SIZES)
async def test_work_that_is_laid_says_which_layer_is_which(size: str, tmp_path: Path) -> None:
    """Two rows a layer, its name at the first of them, and room over the line with the ends."""
    lines = (await _screen("item", size, tmp_path)).split("\n")
    first = next(at for at, line in enumerate(lines) if "╭ ∪" in line)
    assert "╮  back" in lines[first]
    assert "╮  front" in lines[first + 2]
    assert "╰ ∪" in lines[first + 3]
    if size != "40x20":  # there is no room
        assert "you" in lines[first + 5]


async def test_after_the_last_pair_no_two_needles_are_drawn(tmp_path: Path) -> None:
    """One stitch is left of what the drawing would show."""
    assert "╲╱" not in await _screen("all-of-a-join-done", "100x30", tmp_path)


async def test_where_a_box_asks_it_says_what_of(tmp_path: Path) -> None:
    """The screen behind is blank: a command is whole, a garment has its title, and what would be lost is named."""
    names = ("damaged", "in-use", "rescued-thrown-away")
    for name in names:
        (tmp_path / name).mkdir()
    damaged, in_use, thrown = [await _screen(name, "80x24", tmp_path / name) for name in names]
    assert "NAME" not in damaged
    assert damaged.count("back to the shelf") == 1
    assert "Slate crew is open in another window" in in_use
    assert "Slate crew:" in thrown


async def test_no_key_of_the_palette_stands_by_itself(tmp_path: Path) -> None:
    """At 40x20 the words go on to a second line, and the key stands beside the first."""
    lines = (await _screen("palette", "40x20", tmp_path)).split("\n")
    assert not [line for line in lines if len(line.strip()) == 1]


@given(st.lists(st.lists(st.sampled_from("abc"), min_size=1, max_size=4).map(" ".join), unique=True, max_size=5))
def test_names_keep_their_last_word_and_lose_only_what_others_begin_with(names: list[str]) -> None:
    """A name alone with its first word is whole; of those that begin alike every one loses as many words."""
    for name, told in zip(names, told_apart(names), strict=True):
        alike = [one for one in names if one.split()[0] == name.split()[0]]
        assert told
        assert name.endswith(told)
        assert len(alike) > 1 or told == name
        assert all(one.startswith(name.removesuffix(told)) for one in alike)


@pytest.mark.parametrize(
    ("picked", "over", "verbs"),
    [
        (21, None, ["PICK", "RIP BACK", "GO ON"]),
        (22, None, ["PICK", "LIFT", "RIP BACK", "GO ON"]),
        (24, 2, ["SKIP", "RIP BACK"]),
    ],
)
def test_the_large_word_is_what_the_hands_do_next(picked: int, over: int | None, verbs: list[str]) -> None:
    """At the end of an edge: a second stitch is picked, a strand lifted, rows left over skipped."""
    rows = recount_view(edges().press(picked).state, picked, "edge-ends", over).answers.rows
    assert [one.verb for one in rows] == verbs
