"""What a box leaves to be seen, what is drawn of a long edge, and where words are cut that have no room."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.screens.box import Box
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.plain import cut_short, plain, wrapped
from finishing_tui.widgets.rows import Rows
from finishing_tui.widgets.top import Top
from finishing_tui.widgets.two_edges import BEHIND, seen
from tests.screens.hands import pressing, shown, still
from tests.screens.scenes import SCENES, SIZES

SENTENCES = st.lists(st.text("abc ", min_size=1, max_size=60).map(lambda text: f"A{text.strip()}."), min_size=1)


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["all-of-a-join", "coming-back-other", "put-down", "note"])
async def test_a_box_leaves_no_scraps_beside_it(name: str, size: str, tmp_path: Path) -> None:
    """Behind a box stands the head, or nothing; whatever was there is seen again when it is left."""
    app = SCENES[name].app(tmp_path)
    async with app.run_test(size=SIZES[size]) as pilot:
        await pressing(*SCENES[name].keys)(pilot)
        await still(pilot)
        assert [screen for screen in app.screen_stack if isinstance(screen, Box)]
        behind = [one for screen in app.screen_stack[:-1] for one in screen.query(Rows)]
        seen_behind = [one for one in behind if one.visible and one.size.height and not isinstance(one, Top)]
        assert all(_in_head(one) for one in seen_behind), seen_behind
        await pilot.press("escape")
        await still(pilot)
        assert not [screen for screen in app.screen_stack if isinstance(screen, Box)]
        assert all(one.visible for one in app.screen.query(Rows))
        assert shown(app).split("\n")[-1].strip()


def _in_head(widget: Rows) -> bool:
    return any(parent.has_class("head") for parent in widget.ancestors)


@given(st.integers(1, 400), st.integers(0, 400), st.integers(4, 140))
def test_of_a_long_edge_what_is_still_to_be_worked_is_seen(spots: int, at: int, room: int) -> None:
    """While any of the rest lies out of sight, a few rows behind are drawn and no more; all that is drawn has room."""
    at = min(at, spots)
    first, last, step = seen(spots, at, room)
    assert 1 <= first <= last <= spots
    assert (last - first + 1) * step <= max(room, spots * (spots <= room))
    if last < spots:
        assert at - first + 1 <= min(room // 6, BEHIND)


@given(SENTENCES, st.integers(24, 90), st.integers(1, 5))
def test_what_has_no_room_is_cut_after_a_sentence_if_it_can_be(texts: list[str], width: int, most: int) -> None:
    """No more rows than there are, none too wide; the first sentence stands whole wherever it has the room."""
    lines = wrapped(plain(" ".join(texts)), width)
    cut = cut_short(lines, width, most, "?")
    assert len(cut) <= most
    assert all(line.cell_length <= width for line in cut)
    if len(lines) > most:
        assert cut[-1].plain.endswith("… ? shows all")
        if len(wrapped(plain(f"{texts[0]} … ? shows all"), width)) <= most:
            said = " ".join(line.plain.strip() for line in cut).removesuffix("… ? shows all").strip()
            assert said.endswith(".")


@pytest.mark.parametrize(
    ("text", "width", "cut"),
    [
        ("With the right side facing, begin at the right-hand end and draw a loop through each spot.", 78, "and draw"),
        ("Yarn still needed: 30 cm (up to 35 cm), plus its 30 cm tail.", 38, "Yarn still needed: 30 cm"),
        ("Knit one from each needle together; from the second pair on, pass one over.", 70, "each needle together"),
    ],
)
def test_a_line_is_cut_at_a_pause_only_where_most_of_it_stays(text: str, width: int, cut: str) -> None:
    """Else near its end, between words; a clause stands by itself, and no parenthesis is left open."""
    (line,) = cut_short(wrapped(plain(text), width), width, 1, "?" if width > 60 else "")
    assert line.plain.split(" …")[0].endswith(cut)


@given(st.lists(st.text("ab ", min_size=1, max_size=70), min_size=1, max_size=9), st.integers(0, 8), st.integers(4, 9))
def test_every_choice_in_a_list_is_whole_or_not_there(texts: list[str], at: int, height: int) -> None:
    """But for the one at the caret, where it has no room; and no more rows are drawn than there are."""
    choices = Choices(spaced=False)
    choices.redraw = lambda: None  # type: ignore[method-assign]
    choices.show([Choice(f"x{number} {text}") for number, text in enumerate(texts)], at)
    whole = [[row.plain for row in choices._choice(number, one, 30)] for number, one in enumerate(choices.choices)]  # noqa: SLF001
    shown_rows = [row.plain for row in choices.rows(30, height)]
    assert len(shown_rows) <= height
    seen_rows = [row for row in shown_rows if row.strip() and not row.endswith((" more above", " more below"))]
    for number, rows in enumerate(whole):
        there = [row for row in rows if row in seen_rows]
        assert rows == there or number == choices.at or rows[0] not in seen_rows


async def test_fastening_off_speaks_of_itself(tmp_path: Path) -> None:
    """After the pairs neither the join, nor its caution, nor its needles stand there; and one key ticks it off."""
    scene = SCENES["all-of-a-join-done"]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES["160x50"]) as pilot:
        await pressing(*scene.keys)(pilot)
        await still(pilot)
        text = shown(app)
        assert "draw it through the last loop" in text
        for past in ("from each needle", "take care", "short circular", "tick off", "Count the loops"):
            assert past not in text, past
        assert text.count("tick it") == 1
