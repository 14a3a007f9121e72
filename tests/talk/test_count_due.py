"""A count that is due at halfway is answered by enter, by a number, or later; by keys and by words alike."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.stops import due
from finishing_tui.talk.asks import Choose, Explain, HowMany, Weigh
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.one_off import EVERY_WAY
from tests.examples import share
from tests.plain.making import events, talked
from tests.screens.hands import PICK_UP, Hours, app_for, settled, shelf, shown, work_to

AT_HALF = 9
"""So many presses lead to halfway of the first section."""

TO_THE_END = 17
"""So many presses lead to the end of it."""


def at_half(at: Path, name: str) -> Path:
    """Return a garment whose section was picked up to halfway, and that waits for its count."""
    (at / name).mkdir()
    folder = shelf(at / name)
    work_to(folder, PICK_UP, *[Press()] * AT_HALF)
    return folder


@pytest.mark.turns(of=3)
@pytest.mark.parametrize(
    ("keys", "lines"),
    [
        (("enter",), ("f",)),
        (("r", "enter"), ("enter",)),
        (("space", "space"), ("d", "d")),
        (("9", "enter"), ("9",)),
        (("1", "1", "enter", "1", "1", "enter", "3", "1"), ("11", "11", "3", "1")),
    ],
)
async def test_both_mouths_answer_a_count_alike(keys: tuple[str, ...], lines: tuple[str, ...], tmp_path: Path) -> None:
    """Enter says that it is right, as r and enter do; digits say another number; a press carries on."""
    screens, plain = at_half(tmp_path, "screens"), at_half(tmp_path, "plain")
    app = app_for(screens)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert app.in_hand is not None
        await pilot.press(*keys, "q", "enter")
        await settled(pilot)
    talked(plain, *lines, "q", "")
    assert events(screens) == events(plain)


def at_the_end(at: Path, name: str) -> Path:
    """Return a garment whose first section, of 17 stitches, was picked up to its end without a count."""
    (at / name).mkdir()
    folder = shelf(at / name)
    work_to(folder, PICK_UP, *[Press()] * TO_THE_END)
    return folder


@pytest.mark.parametrize(
    ("keys", "lines"),
    [
        (("enter",), ("f",)),
        (("r", "enter"), ("enter",)),
        (("space", "space"), ("d", "d")),
        (("1", "7", "enter"), ("17",)),
    ],
)
async def test_both_mouths_answer_the_end_of_a_section_alike(
    keys: tuple[str, ...], lines: tuple[str, ...], tmp_path: Path
) -> None:
    """At the end of a section of more than 15: enter, r and digits take the count; a press goes on into the next."""
    screens, plain = at_the_end(tmp_path, "screens"), at_the_end(tmp_path, "plain")
    app = app_for(screens)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert "the end: count, it should be 17" in shown(app)
        await pilot.press(*keys, "q", "enter")
        await settled(pilot)
    talked(plain, *lines, "q", "")
    assert events(screens) == events(plain)


async def test_enter_counts_only_while_the_count_is_due(tmp_path: Path) -> None:
    """Counted once, enter means the end of the step again; after a press that carries on, too."""
    folder = at_half(tmp_path, "due")
    hand = InHand.open(folder, clock=Hours().clock())
    talk = Talk(hand, "", USUAL)
    assert due(talk.state) == AT_HALF
    ask_for(talk, "finish")
    assert (due(talk.state), talk.said) == (None, "9 counted, as planned.")
    ask_for(talk, "finish")
    assert talk.alarm
    talk.take_back()
    while due(talk.state) is not None:
        assert hand.do(Press()) is None
    ask_for(talk, "finish")
    assert talk.alarm
    hand.put_down()


async def test_the_count_taken_is_said(tmp_path: Path) -> None:
    """The sentence is on the screen, and the key at the foot is the end of the step again."""
    app = app_for(at_half(tmp_path, "said"))
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("enter")
        assert "9 counted, as planned" in shown(app)
        assert "enter end step" in shown(app)


def talk_at_half(at: Path) -> Talk:
    """Return the conversation over a garment that waits for its count at halfway."""
    return Talk(InHand.open(at_half(at, "half"), clock=Hours().clock()), "", USUAL)


def count(talk: Talk, counted: int) -> None:
    """Type a count at the needles and take it."""
    talk.typed = str(counted)
    ask_for(talk, "finish")


@settings(max_examples=share(30), suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(counts=st.lists(st.integers(0, 17), min_size=2, max_size=5))
def test_only_the_same_number_twice_is_asked_about(counts: list[int], tmp_path_factory: pytest.TempPathFactory) -> None:
    """Nothing changes before that; the number expected ends it as planned, any other one starts over."""
    talk = talk_at_half(tmp_path_factory.mktemp("twice"))
    before, last = talk.state, None
    for counted in counts:
        if isinstance(talk.asked, HowMany):
            talk.answer(counted)
        else:
            count(talk, counted)
        if counted == AT_HALF:
            assert talk.asked is None
            assert talk.state.ledger == before.ledger
            break
        assert talk.state is before
        if counted == last:
            assert isinstance(talk.asked, Explain)
            break
        assert isinstance(talk.asked, HowMany)
        last = counted
    talk.hand.close()


@pytest.mark.parametrize("counted", [3, 8, 10, 12])
def test_the_first_answer_never_changes_the_ledger(counted: int, tmp_path: Path) -> None:
    """It says what was found and put right, in the words of which it is; why it is doubted is said with the second."""
    talk = talk_at_half(tmp_path)
    before = talk.state
    count(talk, counted)
    again = talk.asked
    assert isinstance(again, HowMany)
    assert (again.told[:-1] == ("that is 6 fewer than your presses",)) == (counted == 3)
    talk.answer(counted)
    asked = talk.asked
    assert isinstance(asked, Explain)
    first, second = asked.options[0].text, asked.options[1].text
    assert first == {
        3: "6 stitches slipped off the tip: pick them up where they were",
        8: "A stitch slipped off the tip: pick it up where it was",
    }.get(counted, "Found it: 9")
    assert second.endswith(": re-space the rest")
    talk.answer(0)
    assert talk.asked is None
    assert talk.state.ledger == before.ledger
    assert (talk.said, due(talk.state)) == ("9 counted, as planned.", None)


@pytest.mark.parametrize("counted", [8, 10])
def test_one_stitch_off_is_one_line(counted: int, tmp_path: Path) -> None:
    """One more or fewer is put right with one key; every way is behind another."""
    talk = talk_at_half(tmp_path)
    count(talk, counted)
    talk.answer(counted)
    talk.answer(1)
    asked = talk.asked
    assert isinstance(asked, Choose)
    first = {8: "Fix it in round 1", 10: "Re-space the rest"}[counted]
    assert [one.text for one in asked.options] == [first, EVERY_WAY]
    talk.answer(1)
    listed = talk.asked
    assert isinstance(listed, Weigh)
    assert listed.answers.rows[0].text == first
    talk.answer(0)
    assert talk.said == f"{counted} counted: {first}."


def test_a_rest_that_cannot_be_is_counted_again_before_it_is_mended(tmp_path: Path) -> None:
    """24 counted of a section of 17 are doubted even when counted twice: counting again comes first.

    No way is said to lie any way with it, for nobody would do it, and nothing has changed.
    """
    talk = talk_at_half(tmp_path)
    count(talk, 24)
    again = talk.asked
    assert isinstance(again, HowMany)
    assert again.told[:-1] == ("the whole section has only 17 stitches",)
    talk.answer(24)
    talk.answer(1)
    asked = talk.asked
    assert isinstance(asked, Weigh)
    assert asked.answers.rows[0].text == "Count again"
    assert "Fix it in round 1" not in [one.text for one in asked.answers.rows]
    assert {one.verdict for one in asked.answers.rows} == {None}
    before = talk.state
    talk.answer(0)
    assert talk.state is before
    assert _asks(talk) == "Count the left front neck."
    for number in (24, 24, 1, 1):
        talk.answer(number)
    assert talk.state is not before
    assert talk.said.startswith(f"24 counted: {asked.answers.rows[1].text}")


@pytest.mark.parametrize(("answer", "number"), [(0, 3), (1, 15), (2, 15)])
def test_once_counted_where_that_was_may_be_said(answer: int, number: int, tmp_path: Path) -> None:
    """As expected, enter goes on and nothing is asked; the key that counts then says where, and the count stands."""
    talk = talk_at_half(tmp_path)
    before = talk.state.ledger
    count(talk, AT_HALF)
    counted = talk.state
    assert _asks(talk) == ""
    ask_for(talk, "recount")
    assert _asks(talk) == "9 counted. Where are you on this edge?"
    talk.leave()
    assert talk.state is counted
    ask_for(talk, "recount")
    talk.answer(answer)
    talk.answer(number)
    assert talk.state.ledger == before
    while _asks(talk):
        talk.answer(0)
    assert talk.said.startswith("9 counted: ")
    ask_for(talk, "press")
    ask_for(talk, "recount")
    assert isinstance(talk.asked, HowMany), "what was picked up since is to be counted first"


def test_an_edge_of_another_length_than_planned_is_said(tmp_path: Path) -> None:
    """Two rows fewer than planned are left: in one sentence, how long it really is."""
    talk = talk_at_half(tmp_path)
    work = talk.state.work
    assert work is not None
    stage, progress = work.stages[work.at], work.progress[work.at]
    count(talk, AT_HALF)
    ask_for(talk, "recount")
    talk.answer(2)
    talk.answer(stage.units - progress.mark.units - 2)
    while _asks(talk):
        talk.answer(0)
    now = talk.state.work
    assert now is not None
    assert now.stages[work.at].units == stage.units - 2
    assert talk.said.removesuffix(".").endswith(f". {stage.units - 2} rows, not the {stage.units} planned")


def _asks(talk: Talk) -> str:
    return talk.asked.question if talk.asked is not None else ""


def test_where_she_says_what_the_plan_has_nothing_changes(tmp_path: Path) -> None:
    """As many rows left as there are: one answer, and it is to go on."""
    talk = talk_at_half(tmp_path)
    work = talk.state.work
    assert work is not None
    stage, progress = work.stages[work.at], work.progress[work.at]
    count(talk, AT_HALF)
    ask_for(talk, "recount")
    talk.answer(2)
    talk.answer(stage.units - progress.mark.units)
    assert talk.said == "9 counted: Carry on as planned."
    assert talk.state.work is not None
    assert talk.state.work.stages == work.stages
