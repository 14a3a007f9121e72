"""Straight to the first stitch, in both mouths: what it says, what stays to be seen, and what the record keeps."""

from pathlib import Path

from finishing_tui.garment.hand import InHand
from finishing_tui.glance import look_at
from finishing_tui.glance.values import WordLine
from finishing_tui.record.data import as_data
from finishing_tui.record.gather import not_begun
from finishing_tui.record.text import as_text
from finishing_tui.record.values import Record
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.offers import offers
from tests.plain.making import crew, events, talked
from tests.screens.hands import Hours
from tests.talk.test_offers import NOW

ACT = BY_ID["first_stitch"]


def talk_of(folder: Path) -> Talk:
    """Return a conversation about a crew neck that was just begun."""
    hand = InHand.open(crew(folder / "crew"), clock=Hours().clock())
    hand.pick_up()
    return Talk(hand, "", USUAL)


def test_it_is_offered_at_the_start_alone_and_says_what_it_left_open(tmp_path: Path) -> None:
    """One key leads there, one takes it back; there it is offered no more, and says so."""
    talk = talk_of(tmp_path)
    offer = next(one for one in offers(talk.state) if one.action == ACT.id)
    assert (offer.label, offer.what) == ("first stitch", "go to step 2, Count the back holder")
    ask_for(talk, ACT.id)
    assert talk.state.current == 1
    assert talk.said == "Left open: step 1, Look the pieces over."
    assert not talk.alarm
    assert ACT.id not in {one.action for one in offers(talk.state)}
    ask_for(talk, ACT.id)
    assert talk.said == "There is no first stitch to go to from here."
    for _ in range(2):  # what is no press is named first
        ask_for(talk, "take_back")
    assert talk.state.current == 0
    assert ACT.id in {one.action for one in offers(talk.state)}
    talk.hand.put_down()


def test_what_is_left_open_is_listed_until_it_is_done_and_said_once(tmp_path: Path) -> None:
    """Among the words of every later step; looked back at and taken up, it is done like any other."""
    talk = talk_of(tmp_path)
    ask_for(talk, ACT.id)
    listed = WordLine("left open", "Step 1, Look the pieces over.")
    for asked in ("finish", "finish"):
        ask_for(talk, asked)
    assert talk.state.current == 2
    assert not talk.said
    assert look_at(talk.state, 2, NOW).lines[-1] == listed
    for asked in ("look_back", "look_back", "finish"):
        ask_for(talk, asked)
    assert talk.state.current == 0
    assert listed not in look_at(talk.state, 0, NOW).lines
    for asked in ("press", "press", "press", "press", "finish"):
        ask_for(talk, asked)
    assert listed not in look_at(talk.state, talk.state.current, NOW).lines
    talk.hand.put_down()


def test_the_record_says_what_was_left_open(tmp_path: Path) -> None:
    """For people beside the step, for programs as a list; of what is begun in its turn nothing is left open."""
    talk = talk_of(tmp_path)
    assert as_data(not_begun(talk.state.plan))["left_open"] == []
    assert as_data(Record(talk.state, events=1))["left_open"] == []
    ask_for(talk, ACT.id)
    record = Record(talk.state, events=1)
    assert as_data(record)["left_open"] == [1]
    assert "  1  Look the pieces over (left open)" in as_text(record)
    talk.hand.put_down()


def test_its_key_and_its_words_do_the_same(tmp_path: Path) -> None:
    """Typed as a key, as a word, or as its label."""
    found = []
    for number, typed in enumerate((ACT.shown, "first stitch", "First  Stitch")):
        folder = crew(tmp_path / str(number))
        said = talked(folder, typed, "q", "")
        assert any("Left open: step 1, Look the pieces over." in line for line in said)
        found.append(events(folder))
    assert found[0] == found[1] == found[2]
