"""Answers side by side: nothing moves as the caret does, and the lines say what the table says."""

from pathlib import Path

import pytest

from finishing_tui.craft.words import sentence
from finishing_tui.plain.choices import answered
from finishing_tui.widgets.answer_table import AnswerTable
from tests.screens.hands import settled, shown
from tests.screens.scenes import SCENES, SIZES

TABLES = (
    "recount-lies-flat",
    "recount-just-shows",
    "recount-will-flare",
    "recount-will-pucker",
    "recount-cannot-be",
    "recount-both-sides",
    "count-one-short",
    "count-far-off",
)
"""Scenes that end at a table of several ways."""


def _steady(lines: list[str], ways: int, texts: tuple[str, ...]) -> list[tuple[int, str]]:
    """Return the rows that must stand still, each with its place: of the table, the drawing's labels, the foot."""
    kept = []
    for at, line in enumerate(lines):
        still = line.replace("▸", " ").rstrip()
        label = next((one for one in ("planned", "way", "changed") if still.strip().startswith(one)), "")
        if label or any(text in still for text in texts) or " choose " in still or "total" in still:
            kept.append((at, label or still))
    assert len(kept) > ways
    return kept


@pytest.mark.turns(of=8)
@pytest.mark.parametrize("name", TABLES)
@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
async def test_moving_the_caret_moves_no_row(name: str, size: tuple[int, int], tmp_path: Path) -> None:
    """Over all the ways, each row of the table, of the drawing and of the foot stays where it is, with what it says."""
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        await pilot.press(*scene.keys)
        await settled(pilot)
        table = app.screen.query_one(AnswerTable)
        assert table.answers is not None
        rows = table.answers.rows
        texts = tuple(one.text for one in rows)
        texts = tuple(text[:24] for text in texts)
        first = shown(app).split("\n")
        for at in range(len(rows)):
            assert table.at == at
            now = shown(app).split("\n")
            assert _steady(now, len(rows), texts) == _steady(first, len(rows), texts)
            await pilot.press("down")
            await settled(pilot)


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("name", [*TABLES, "what-if-pucker", "what-if-rounds", "recount-presses", "count-one-over"])
async def test_the_lines_say_what_the_table_says(name: str, tmp_path: Path) -> None:
    """Of each way the text, the total, how it lies and the work stand in both; the verdict has a shape besides."""
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=(160, 50)) as pilot:
        await settled(pilot)
        await pilot.press(*scene.keys)
        await settled(pilot)
        table = app.screen.query_one(AnswerTable)
        assert table.answers is not None
        drawn = shown(app).split("\n")
        for at, row in enumerate(table.answers.rows):
            line = next(line for line in drawn if row.text in line and row.work in line)
            said = " ".join(answered(table.answers, at))
            assert sentence(row.text) in said
            for fact in (row.comes_to, row.lies, row.work):
                assert fact in line
                assert fact in said
            assert f"{row.shape} {row.lies}".strip() in line
            assert not row.lies or table.answers.lies(row) in said
            label = "changed" if name.startswith("what-if") else f"changed {at + 1}"
            marks = [one for one in drawn if one.strip().startswith(label)]
            if marks and (label != "changed" or at == table.at):
                assert marks[0].count("^") == len(table.answers.changed(at))


async def test_what_is_lifted_or_picked_up_at_an_end_is_work(tmp_path: Path) -> None:
    """Only to leave it with fewer costs none; and each row of the edge that a way has otherwise is marked."""
    scene = SCENES["edge-ends-one-short"]
    app = scene.app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press(*scene.keys)
        await settled(pilot)
        answers = app.screen.query_one(AnswerTable).answers
        assert answers is not None
        assert [one.work for one in answers.rows] == ["1 to pick up", "1 to lift", "1 to rip", "none", "1 to pick up"]
        assert [bool(answers.changed(at)) for at in range(len(answers.rows))] == [True, True, True, False, False]
        labels = [line.split("  ")[1].strip() for line in shown(app).split("\n") if line.startswith("  changed")]
        assert labels == ["changed 1", "changed 2", "changed 3"]
