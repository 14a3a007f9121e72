"""A pinned edge in conversation: its pins and its end are counted alike, and nothing is asked about rows."""

from collections.abc import Sequence
from pathlib import Path

import pytest

from finishing_tui.garment.commands import Command, PinEdge, Press, TakeCount
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.stops import due
from finishing_tui.talk.asks import Ask, Choose, Explain, HowMany, Weigh
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.one_off import EVERY_WAY
from tests.plain.making import events, garment, talked
from tests.screens.hands import Hours, app_for, settled, work_to
from tests.screens.scenes import EDGES


def pinned_to(folder: Path, stitches: int) -> Path:
    """Return a vest whose first panel edge was pinned in four and picked up so far, every pin behind it counted."""
    garment(folder, "long-front-vest", "XL")
    commands: list[Command] = [PinEdge(4)]
    for pin in range(6, stitches, 6):
        commands += [*[Press()] * 6, TakeCount(pin)]
    work_to(folder, EDGES, *commands, *[Press()] * (stitches - (stitches - 1) // 6 * 6))
    return folder


@pytest.fixture
def talk(tmp_path: Path, request: pytest.FixtureRequest) -> Talk:
    """Return the talk about such a vest, picked up as far as the test asks for."""
    return Talk(InHand.open(pinned_to(tmp_path / "vest", request.param), clock=Hours().clock()), "", USUAL)


def counts(talk: Talk, number: int) -> Ask | None:
    """Type a count, and the same again where it is asked again; return what is asked then."""
    talk.typed = str(number)
    ask_for(talk, "finish")
    if isinstance(talk.asked, HowMany):
        talk.answer(number)
    return talk.asked


def texts(ask: Ask | None) -> Sequence[str]:
    """Return the answers there are."""
    if isinstance(ask, Weigh):
        return [row.text for row in ask.answers.rows]
    assert isinstance(ask, Explain | Choose)
    return [option.text for option in ask.options]


@pytest.mark.parametrize("talk", [12, 18], indirect=True)
@pytest.mark.parametrize("off", [-1, 1])
def test_one_off_at_a_pin_is_one_line_about_the_next_part(talk: Talk, off: int) -> None:
    """Nothing is asked: it says how many that takes, to the next pin or to the end."""
    pin = due(talk.state)
    assert pin is not None
    assert counts(talk, pin + off) is None
    assert talk.said == f"{pin + off} counted: Pick up {6 - off} to the {'end' if pin == 18 else 'next pin'}."


@pytest.mark.parametrize("talk", [12], indirect=True)
def test_two_off_at_a_pin_are_asked_about_without_any_row(talk: Talk) -> None:
    """What hands may have done, and then: the next part takes them, or back to the pin before."""
    asked = counts(talk, 10)
    assert texts(asked) == [
        "2 stitches slipped off the tip: pick them up where they were",
        "I missed 2",
        "I missed a press, or pressed twice",
    ]
    talk.answer(1)
    assert texts(talk.asked) == ["Pick up 8 to the next pin", "Rip back to the pin at 6"]


@pytest.mark.turns(of=2)
@pytest.mark.parametrize("talk", [24], indirect=True)
@pytest.mark.parametrize(
    ("keys", "lines"),
    [
        (("enter",), ("f",)),
        (("r", "enter"), ("enter",)),
        (("z",), ("edge ends",)),
        (("space",), ("d",)),
        (("2", "3", "enter", "2", "3", "enter", "2", "1"), ("23", "23", "2", "1")),
        (("2", "5", "enter", "2", "5", "enter", "2", "1"), ("25", "25", "2", "1")),
    ],
)
async def test_both_mouths_answer_its_end_alike(
    talk: Talk, keys: tuple[str, ...], lines: tuple[str, ...], tmp_path: Path
) -> None:
    """Enter, r and z take the count; a press goes on; one short or over is put right."""
    assert due(talk.state) == 24
    talk.hand.close()
    screens, plain = tmp_path / "vest", pinned_to(tmp_path / "plain", 24)
    app = app_for(screens)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press(*keys, "q", "enter")
        await settled(pilot)
    talked(plain, *lines, "q", "")
    assert events(screens) == events(plain)


@pytest.mark.parametrize("talk", [24], indirect=True)
def test_one_short_at_its_end_is_one_line_and_every_way_behind_it(talk: Talk) -> None:
    """There is no next part: what shows least comes first, on purpose and unequal sides last."""
    counts(talk, 23)
    talk.answer(1)
    assert texts(talk.asked) == ["Pick up a second stitch in one of the last rows", EVERY_WAY]
    talk.answer(1)
    assert texts(talk.asked) == [
        "Pick up a second stitch in one of the last rows",
        "Lift 1 strand, twisted, onto the needle here",
        "Rip back to the pin at 18",
        "Leave it with fewer stitches",
        "Pick up 1 more along the right panel edge; the sides won't match",
    ]


@pytest.mark.parametrize("talk", [20], indirect=True)
def test_it_may_end_early(talk: Talk) -> None:
    """No row is asked for; where more than three are missing going on comes first; taken back, it is as it was."""
    before = talk.state
    ask_for(talk, "edge_ends")
    assert texts(talk.asked)[:2] == ["It isn't the end: keep picking up", "Rip back to the pin at 18"]
    talk.answer(0)
    assert talk.state == before
    ask_for(talk, "edge_ends")
    talk.answer(1)
    assert due(talk.state) is None
    talk.take_back()
    assert talk.state.steps == before.steps
