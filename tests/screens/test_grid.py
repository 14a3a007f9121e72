"""Count, target and word stand still: whatever is pressed, only what stands in their cells changes."""

from pathlib import Path
from random import Random

import pytest

from finishing_tui.glance import look_at
from finishing_tui.glance.values import ItemFace
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.widgets.corner import DIGITS as CORNER
from finishing_tui.widgets.faces import VIEWS
from finishing_tui.widgets.figure_pair import DIGITS, FigurePair, Shown, in_cells
from finishing_tui.widgets.figures import big, width_of
from finishing_tui.widgets.grid import cells_for, count_wide, letters_for, of_at, word_at
from finishing_tui.widgets.step_words import StepWords
from tests.garment.test_recipes_by_commands import SIZES as SIZES_OF
from tests.garment.test_recipes_by_commands import done_or_taken_back, taken
from tests.safety.test_random_offers import NOW
from tests.screens.hands import front, needles, pressing, settled, shown, still
from tests.screens.scenes import SCENES, SIZES

WALKED = 2_000
"""So many things are done on paper, with every row drawn at every size."""

PRESSED = 200
"""So many keys are pressed in the program."""

KEYS = [*["space"] * 12, "x", "backspace", "backspace", "enter", "1", "left", "right", "p"]

OFFSETS = {"40x20": (1, 3), "80x24": (1, 5), "100x30": (2, 5), "160x50": (2, 6)}
"""The first cell of the figures, column and row, in a terminal of each size."""


def placed(shown: Shown, rows: list[str], size: tuple[int, int]) -> None:
    """Check that each digit of the count, the target and the first letter of the word are where they always are."""
    cells = cells_for(*size)
    wide, high = count_wide(cells, DIGITS), cells.count.lines
    step = cells.count.wide + cells.count.gap
    for back, digit in enumerate(reversed(shown.count)):
        left = wide - step * back - cells.count.wide
        assert [row.ljust(wide)[left : left + cells.count.wide] for row in rows[:high]] == list(big(digit, cells.count))
    if shown.of:
        left = of_at(cells, DIGITS)
        drawn = [row.ljust(200)[left : left + cells.of.wide] for row in rows[high - cells.of.lines : high]]
        assert drawn == list(big(shown.of[0], cells.of))
    if shown.verb:
        left = word_at(cells, DIGITS)
        last = high if cells.beside else high + 1 + cells.high
        letters = letters_for(shown.verb, cells, size[0] - 2 * OFFSETS[f"{size[0]}x{size[1]}"][0] - left)
        drawn = [
            row.ljust(200)[left : left + letters.wide_of(shown.verb[0])] for row in rows[last - letters.lines : last]
        ]
        assert drawn == list(big(shown.verb[0], letters))


@pytest.mark.parametrize("name", ["crew-neck", "cardigan-bands", "hood", "shawl-collar"])
def test_nothing_moves_on_a_random_walk(name: str) -> None:
    """Two thousand things done or taken back: each digit, baseline and first letter in the very same cells."""
    dice = Random(name)  # noqa: S311  (a hand, not a secret)
    paper = taken(name, SIZES_OF[name][-1], pace="loop")
    seen = set[Shown]()
    for _ in range(WALKED // 4):
        done_or_taken_back(paper, dice)
        face = look_at(paper.state, paper.state.current, NOW).face
        seen.add(VIEWS[type(face)]().figures(face))
    for figures in seen:
        for size in SIZES.values():
            width = size[0] - 2 * OFFSETS[f"{size[0]}x{size[1]}"][0]
            rows = in_cells(figures, DIGITS, cells_for(*size), width)
            assert max(row.cell_length for row in rows) <= width
            placed(figures, [row.plain for row in rows], size)
    assert len({one.count for one in seen}) > 30


@pytest.mark.parametrize("size", ["100x30", "160x50"])
async def test_no_word_moves_when_a_tick_changes_how_the_work_lies(size: str, tmp_path: Path) -> None:
    """Where the drawing of it goes as the ends are woven in, the prose beside it stands as it stood."""
    app = SCENES["weave-in-lies"].app(tmp_path, "")
    async with app.run_test(size=SIZES[size]) as pilot:
        await settled(pilot)
        words = needles(app).query_one(StepWords)
        assert "╲╱" in shown(app)
        stood = words.region, [row.plain[:40].rstrip() for row in words._drawn]  # noqa: SLF001
        await pilot.press("space")
        await settled(pilot)
        assert "╲╱" not in shown(app)
        assert stood == (words.region, [row.plain[:40].rstrip() for row in words._drawn])  # noqa: SLF001


@pytest.mark.parametrize("name", ["recount-will-flare", "count-far-off", "what-if-other"])
async def test_the_number_that_an_answer_is_about_is_read_from_two_meters(name: str, tmp_path: Path) -> None:
    """At 80x24, where the figures have no room beside the answers, what was typed stands large in the corner."""
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await pressing(*scene.keys)(pilot)
        await still(pilot)
        number = {"recount-will-flare": "26", "count-far-off": "3", "what-if-other": "11"}[name]
        drawn = [line[-2 - width_of(number, CORNER) : -2] for line in (f"{row:78}  " for row in shown(app).split("\n"))]
        assert drawn[1 : 1 + CORNER.lines] == list(big(number, CORNER))


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("name", ["recount-left", "rip-back-to"])
@pytest.mark.parametrize("size", SIZES)
async def test_a_number_is_typed_where_the_count_stands(name: str, size: str, tmp_path: Path) -> None:
    """In its cell, in digits of its size, and not beside an empty one."""
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES[size]) as pilot:
        await pressing(*scene.keys)(pilot)
        await still(pilot)
        figures, (x, _) = app.screen.query_one(FigurePair), OFFSETS[size]
        left, top, *_ = figures.content_region
        assert left == x
        placed(figures._shown, [line[x:] for line in shown(app).split("\n")[top:]], SIZES[size])  # noqa: SLF001
        assert figures._shown.count  # noqa: SLF001


@pytest.mark.parametrize("size", SIZES)
def test_what_is_said_of_the_count_stands_apart_from_what_comes_next(size: str) -> None:
    """They may share a line, and are then never read as one sentence."""
    cells, width = cells_for(*SIZES[size]), SIZES[size][0] - 2 * OFFSETS[size][0]
    one = Shown("0", "6", ("126 on the needle",), "WORK", then="round 1")
    for row in in_cells(one, DIGITS, cells, width):
        assert "needle →" not in row.plain
        assert "needle  →" not in row.plain


@pytest.mark.parametrize("name", ["weave-in", "weave-in-lies", "weave-in-lies-no-more"])
async def test_no_list_is_cut_for_lines_that_are_empty(name: str, tmp_path: Path) -> None:
    """At 100x30 every tail that is woven in stands on the screen."""
    app = SCENES[name].app(tmp_path)
    async with app.run_test(size=SIZES["100x30"]) as pilot:
        await settled(pilot)
        face = needles(app).seen().face
        assert isinstance(face, ItemFace)
        assert all(item in shown(app) for item in face.items)


@pytest.mark.parametrize("size", ["80x24", "100x30", "160x50"])
async def test_the_needles_of_a_graft_stand_apart_from_its_moves(size: str, tmp_path: Path) -> None:
    """The numbers of the moves are those of an order, and those of the needles are stitches."""
    app = SCENES["graft"].app(tmp_path)
    async with app.run_test(size=SIZES[size]) as pilot:
        await settled(pilot)
        lines = shown(app).split("\n")
        last = next(at for at, line in enumerate(lines) if line.strip().startswith("4  "))
        assert not lines[last + 1].strip()


@pytest.mark.parametrize("size", SIZES)
async def test_a_large_screen_says_which_steps_come_next(size: str, tmp_path: Path) -> None:
    """Those after the one in hand, each whole; where there is less room the step has it all."""
    app = SCENES["spot-loop"].app(tmp_path)
    async with app.run_test(size=SIZES[size]) as pilot:
        await settled(pilot)
        coming = next((line for line in shown(app).split("\n") if "next:" in line), "")
        assert bool(coming) is (size == "160x50")
        steps = needles(app).seen().list
        assert all(f"{step.number} {step.title}" in coming for step in steps[4:7] if coming)


async def test_a_notice_hides_nothing_that_is_held(tmp_path: Path) -> None:
    """At 80x24 a step without words keeps a line for it, and what is on the needles stays in sight."""
    scene = SCENES["take-back-named"]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await pressing(*scene.keys)(pilot)
        await still(pilot)
        assert "Backspace again takes back" in shown(app)
        assert "neck needle 26" in shown(app)


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("size", SIZES)
async def test_nothing_moves_in_the_program(size: str, tmp_path: Path) -> None:
    """Fifty keys at each size: on the screen as it is drawn, nothing has moved by a cell."""
    dice = Random(size)  # noqa: S311  (no secret)
    app = SCENES["spot-run"].app(tmp_path, "")
    counts = set[str]()
    async with app.run_test(size=SIZES[size]) as pilot:
        await settled(pilot)
        for _ in range(PRESSED // 4):
            await pilot.press(dice.choice(KEYS))
            await settled(pilot)
            if not isinstance(front(app), AtTheNeedles):
                await pilot.press("escape")
                await settled(pilot)
                continue
            figures = needles(app).query_one(FigurePair)
            x, y = OFFSETS[size]
            assert figures.region.offset == (x, y)
            rows = [line[x:] for line in shown(app).split("\n")[y:]]
            placed(figures._shown, rows, SIZES[size])  # noqa: SLF001
            counts.add(figures._shown.count)  # noqa: SLF001
    assert len(counts) > 4
