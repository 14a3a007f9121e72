"""A key that is held down is told from taps, stops where hands stop, and is one act."""

import itertools
import tempfile
from pathlib import Path

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.garment.commands import ChoosePace, Command, Press
from finishing_tui.garment.decide import decide
from finishing_tui.garment.events import Pace
from finishing_tui.garment.evolve import Happening, evolve
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due, stops
from finishing_tui.glance.postings import posted
from finishing_tui.record import gather
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.held import EVEN, GAPS, ONE_READ, PAUSE, SLOWEST, Beat
from finishing_tui.talk.keys import USUAL
from tests.examples import share
from tests.screens.hands import BIND_OFF, JOIN, PICK_UP, RIB, WEAVE, Hours, shelf, work_to

SLIGHT = 1e-6
"""Seconds below what sums of fractions may be off."""

pauses = st.floats(PAUSE[0] + SLIGHT, PAUSE[1] - SLIGHT)
slow = st.floats(SLOWEST + SLIGHT, 5)
one_read = st.floats(0, ONE_READ - SLIGHT)


def heard(gaps: list[float]) -> list[tuple[int, int] | None]:
    """Return what a beat says of each key, the first one and one after each gap; marks are 1, 2, 3 ..."""
    beat, times = Beat(), itertools.accumulate([100.0, *gaps])
    return [beat.came("space", at, mark) for mark, at in enumerate(times, 1)]


@st.composite
def uneven(draw: st.DrawFn) -> list[float]:
    """Draw quick taps of a person, each gap another one than that before it by a hundredth of a second or more."""
    gaps: list[float] = []
    for _ in range(draw(st.integers(0, 30))):
        found = draw(st.floats(ONE_READ, SLOWEST))
        assume(not gaps or abs(found - gaps[-1]) >= EVEN + SLIGHT)
        gaps.append(found)
    return gaps


@given(st.lists(st.one_of(uneven(), st.lists(slow), st.lists(one_read), st.lists(pauses)), max_size=6))
def test_no_taps_of_a_person_are_a_repeat(parts: list[list[float]]) -> None:
    """Uneven, slow, or in one read of the terminal, behind any pauses: never."""
    gaps: list[float] = []
    for part in parts:  # a part's first gap may not go on evenly with those of the part before it
        gaps += part if not gaps else [1.0, *part]
    assert set(heard(gaps)) == {None}


@given(pauses, st.floats(0.01, 0.09), st.lists(st.floats(0, EVEN - SLIGHT), min_size=GAPS, max_size=60))
def test_every_repeat_is_known(pause: float, fastest: float, more: list[float]) -> None:
    """From its fourth even gap on each key is one of it, and its first one is the one before the pause."""
    gaps = [min(fastest + one, SLOWEST - SLIGHT) for one in more]
    found = heard([pause, *gaps])
    assert found[: 1 + GAPS] == [None] * (1 + GAPS)
    assert found[1 + GAPS :] == [(1, 2)] * (len(gaps) - GAPS + 1)


@given(st.lists(st.floats(0.02, 0.0299), min_size=GAPS, max_size=9), st.floats(0, SLOWEST - SLIGHT))
def test_a_busy_machine_does_not_let_go_of_a_key(gaps: list[float], late: float) -> None:
    """A repeat whose beat is blurred goes on; after a longer pause, or another key, the next tap is a person's."""
    assert heard([0.5, *gaps, late, 0.03])[-1] == (1, 2)
    assert heard([0.5, *gaps, SLOWEST + SLIGHT])[-1] is None


@given(st.floats(0.2, 0.7), st.floats(0.01, 0.2))
def test_four_picks_and_four_taps_are_counted(pause: float, gap: float) -> None:
    """However even they are."""
    assert set(heard([pause, *[gap] * 3])) == {None}
    assert set(heard([1.0, *[gap] * 3])) == {None}


def test_a_key_between_ends_a_repeat() -> None:
    """Another key, and the same again, is a person's."""
    beat = Beat()
    for at in (0.0, 0.5, 0.53, 0.56, 0.59, 0.62, 0.65):
        last = beat.came("space", at, 7)
    assert last == (7, 7)
    assert beat.came("x", 0.66, 8) is None
    assert beat.came("space", 0.67, 9) is None


def talk_at(at: Path, step: int, *then: Command) -> Talk:
    """Return the conversation about a garment that was worked to ``step``."""
    at.mkdir(exist_ok=True)
    folder = shelf(at)
    work_to(folder, step, *then)
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    return Talk(hand, "", USUAL)


def held_down(talk: Talk, times: int, action: str = "press") -> None:
    """Press as a key that is held down does: its sixth press is the first that is known for one."""
    marks = [talk.hand.known]
    for at in range(times):
        ask_for(talk, action, (marks[0], marks[1]) if at > GAPS else None)
        marks.append(talk.hand.known)


def loops(state: State) -> int:
    """Return how many were counted in the part under way."""
    work = state.standing.work if state.standing else None
    assert work is not None
    return work.progress[min(work.at, len(work.progress) - 1)].mark.units


def test_it_stops_at_a_due_count_and_one_backspace_takes_it_back(tmp_path: Path) -> None:
    """Halfway is the ninth loop; what was there before is there again, in the record too, and u puts it back whole."""
    talk = talk_at(tmp_path, PICK_UP)
    before = talk.state
    held_down(talk, 40)
    assert due(talk.state) == 9
    assert talk.said == "Key held: 9 counted; it stops here. Backspace takes back all 9."
    after = talk.state
    ask_for(talk, "take_back")
    assert talk.said == "Taken back: 9 of a held key."
    assert (talk.state.steps, talk.state.ledger) == (before.steps, before.ledger)
    assert talk.state.top == before.top
    ask_for(talk, "put_back")
    assert (talk.state.steps, talk.state.ledger) == (after.steps, after.ledger)
    talk.hand.put_down()
    again = InHand.open(talk.hand.folder, clock=Hours().clock())
    assert again.take_back() is None
    assert again.state.steps == before.steps
    again.close()


def test_what_went_past_the_end_before_it_was_known_comes_back(tmp_path: Path) -> None:
    """Two loops are left to halfway, and six presses came before the key was known for a held one: four come back."""
    talk = talk_at(tmp_path, PICK_UP, *[Press()] * 7)
    for _ in range(6):
        ask_for(talk, "press")
    assert due(talk.state) is None
    held_down_on(talk)
    assert due(talk.state) == 9
    ask_for(talk, "take_back")
    assert loops(talk.state) == 10


def held_down_on(talk: Talk) -> None:
    """Let the last six presses be known for those of a held key, with one more."""
    ask_for(talk, "press", (talk.hand.known - 6, talk.hand.known - 5))


def test_it_stops_at_the_end_of_every_part(tmp_path: Path) -> None:
    """Held again and again it gets to the end of a step, a part at a time, and never into the next step."""
    talk = talk_at(tmp_path, JOIN)
    steps = set()
    for _ in range(30):
        was = talk.state.standing.work.at if talk.state.standing and talk.state.standing.work else -1
        held_down(talk, 60)
        work = talk.state.standing.work if talk.state.standing else None
        assert work is not None
        assert work.at - was <= 1
        assert stops(talk.state)
        steps.add(talk.state.current)
    assert steps == {JOIN}


def test_what_is_no_knitting_is_done_once(tmp_path: Path) -> None:
    """Enter held down ends one step, and the next ones stay; where it was asked twice, nothing is done at all."""
    talk = talk_at(tmp_path / "ticks", 0)
    held_down(talk, 20, "finish")
    assert [one.status for one in talk.state.steps[:3]] == ["done", "under-way", "to-come"]
    assert talk.said == "Key held: it is taken once."
    talk = talk_at(tmp_path / "rounds", RIB)
    before = talk.state
    held_down(talk, 20, "finish")
    assert (talk.state.steps, talk.state.ledger, talk.state.top) == (before.steps, before.ledger, before.top)
    held_down(talk, 20, "leave_out")
    assert (talk.state.steps, talk.state.ledger, talk.state.top) == (before.steps, before.ledger, before.top)


def test_a_held_key_is_one_line_in_the_ledger_and_its_presses_are_in_the_record(tmp_path: Path) -> None:
    """What was taken back to make one act of it is not told."""
    talk = talk_at(tmp_path, PICK_UP)
    held_down(talk, 40)
    plan = talk.state.plan
    last = posted(talk.hand.lately(100), {name: one.text for name, one in plan.recipe.place.items()}, plan)[0]
    assert (last.text, last.presses) == ("9 presses", 9)
    few = posted(talk.hand.lately(3), {}, plan)
    assert [one.presses for one in few] == [9]
    assert gather.record_of(talk.hand.lately(10_000)).state.steps == talk.state.steps


@settings(max_examples=share(15))
@given(
    step=st.sampled_from((JOIN, PICK_UP, RIB, BIND_OFF, WEAVE)),
    pace=st.sampled_from(("loop", "spot", "run")),
    presses=st.integers(0, 14),
    repeats=st.integers(1 + GAPS + 1, 40),
)
def test_a_held_key_is_a_press_for_each_repeat_up_to_the_first_stop(
    step: int, pace: Pace, presses: int, repeats: int
) -> None:
    """Whatever is under way, and wherever it was pressed first: no more, no less, and one thing to take back."""
    with tempfile.TemporaryDirectory() as place:
        talk = talk_at(Path(place), step, ChoosePace(pace))
        for _ in range(presses):
            talk.hand.do(Press())
        before = talk.state
        expected, many = before, 0
        while many < repeats and isinstance(events := decide(expected, Press()), tuple):
            for event in events:
                expected = evolve(expected, Happening(talk.hand.known + 1, "", 0, event))
            many += 1
            if stops(expected):
                break
        held_down(talk, repeats)
        after = talk.state
        assert (talk.state.steps, talk.state.ledger) == (expected.steps, expected.ledger)
        if many:
            talk.take_back()
            assert (talk.state.steps, talk.state.ledger, talk.state.top) == (before.steps, before.ledger, before.top)
            assert talk.hand.put_back() is None
            assert (talk.state.steps, talk.state.ledger, talk.state.top) == (after.steps, after.ledger, after.top)
        talk.hand.put_down()


def test_quick_taps_pass_the_end(tmp_path: Path) -> None:
    """Nothing of a person's is swallowed: eleven presses are eleven loops."""
    talk = talk_at(tmp_path, PICK_UP)
    for _ in range(11):
        ask_for(talk, "press")
    work = talk.state.standing.work if talk.state.standing else None
    assert work is not None
    assert work.progress[0].mark.loops == 11
