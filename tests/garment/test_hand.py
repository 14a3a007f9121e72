"""A garment in hand, with a real journal: what was done is there again, however it was left."""

from dataclasses import replace
from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Ledger, Posting
from finishing_tui.garment.commands import Finish, Other, Press, Replan, WriteNote
from finishing_tui.garment.events import Begun, Event, Marked, Noted, PutBack, PutDown, Stood, TakenBack, Turned, Worked
from finishing_tui.garment.evolve import DoesNotFit
from finishing_tui.garment.hand import SNAPSHOT_EVERY, InHand
from finishing_tui.garment.journal import NAME, InUse, Journal, NoJournal, NotSaved
from finishing_tui.garment.journal.rows import written
from finishing_tui.garment.plan import StepId
from finishing_tui.garment.shelf import on_shelf
from finishing_tui.garment.state import LONGEST_NOTE, State
from finishing_tui.garment.stored import SNAPSHOT, NotUnderstood, from_row, happenings, snapshot_of, to_store
from finishing_tui.garment.work import Progress, Reached, Standing, StepWork
from finishing_tui.record import record_of
from tests.garment.folders import NOON, Watch, garment_in
from tests.garment.no_planning import no_planning
from tests.garment.recipes import EDGE, NECKBAND


def in_hand(folder: Path, recipe: str = EDGE) -> InHand:
    """Return a garment newly begun in ``folder``, picked up."""
    hand = InHand.open(garment_in(folder, recipe), clock=Watch().clock())
    assert hand.pick_up() is None
    return hand


def seen(folder: Path) -> State:
    """Return the state of a garment as one who only looks finds it."""
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state


def put_in(folder: Path, *events: Event) -> None:
    """Write events into the journal that no program of ours would write there."""
    with Journal.open(folder) as journal:
        journal.append(to_store(events), at=NOON, sitting=1, after_ms=0)
        assert journal.flush(30)


def cut_off(hand: InHand) -> State:
    """Leave a garment as a killed process does: everything acknowledged is on the disk, and nothing is said."""
    assert hand.flush(30)
    hand.close()
    return hand.state


def test_the_first_sitting_takes_the_recipe_and_begins_the_first_step(tmp_path: Path) -> None:
    """The recipe's very text and the garment file's are in the journal; the first step is begun."""
    hand = in_hand(tmp_path)
    assert hand.state.plan.text == (tmp_path / "recipe.toml").read_text(encoding="utf-8")
    assert hand.state.plan.file_text == (tmp_path / "garment.toml").read_text(encoding="utf-8")
    assert hand.state.standing is not None
    assert hand.state.standing.status == "under-way"
    assert hand.take_back() is not None, "the beginning of it all is not taken back"
    assert hand.put_down("on the blue chair")
    assert [(one.number, one.where, bool(one.ended)) for one in seen(tmp_path).sittings] == [
        (1, "on the blue chair", True)
    ]


def test_cut_off_at_any_moment_it_stands_as_it_was(tmp_path: Path) -> None:
    """Twenty presses, a stray, some taken back and put back; opened again it is the same, and taking back goes on."""
    hand = in_hand(tmp_path)
    for _ in range(20):
        assert hand.do(Press()) is None
    hand.do(Other())
    hand.take_back()
    hand.take_back()
    hand.put_back()
    before = cut_off(hand)
    again = InHand.open(tmp_path, clock=Watch().clock())
    assert again.state == before
    assert again.pick_up() is None
    assert [one.number for one in again.state.sittings] == [1, 2]
    assert again.put_back() is None
    assert again.take_back() is None
    for _ in range(20):
        assert again.take_back() is None
    assert again.state.ledger.on("band") == 0
    assert again.take_back() is not None
    again.put_down()


def test_every_row_knows_its_sitting(tmp_path: Path) -> None:
    """The recipe is taken before the first sitting; what begins a sitting belongs to it already."""
    in_hand(tmp_path).put_down()
    hand = InHand.open(tmp_path, clock=Watch().clock())
    hand.pick_up()
    hand.do(Press())
    hand.put_down()
    with Journal.open(tmp_path, look=True) as journal:
        rows = [(row.kind, row.sitting) for row in journal.rows()]
    assert rows[:3] == [("Taken", 0), ("Begun", 0), ("SittingBegan", 1)]
    assert rows[3:] == [("PutDown", 1), ("SittingBegan", 2), ("Worked", 2), ("PutDown", 2)]


def test_snapshots_are_a_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With one, without any, and with none of this version: the same state, with nothing worked out on the way."""
    monkeypatch.setattr("finishing_tui.garment.hand.SNAPSHOT_EVERY", 7)
    hand = in_hand(tmp_path)
    for _ in range(30):
        hand.do(Press())
    before = cut_off(hand)
    with Journal.open(tmp_path, look=True) as journal:
        found = journal.newest_snapshot(SNAPSHOT)
        assert found is not None
        assert 0 < found[0] < journal.last_seq
    no_planning(monkeypatch)
    assert seen(tmp_path) == before
    monkeypatch.setattr("finishing_tui.garment.hand.SNAPSHOT", SNAPSHOT + 1)
    assert seen(tmp_path) == before
    assert SNAPSHOT_EVERY > 7


def test_a_snapshot_that_does_not_fit_is_passed_over(tmp_path: Path) -> None:
    """What happened is in the events."""
    hand = in_hand(tmp_path)
    before = cut_off(hand)
    with Journal.open(tmp_path) as journal:
        journal.snapshot(journal.last_seq, SNAPSHOT, {"is": "State", "nonsense": 1})
    assert seen(tmp_path) == before


def test_a_journal_that_was_cut_off_before_anything_was_kept_is_begun(tmp_path: Path) -> None:
    """The process died between making the journal and its first event: the next sitting takes the recipe."""
    Journal.create(garment_in(tmp_path, EDGE)).close()
    with pytest.raises(NoJournal):
        InHand.open(tmp_path, look=True)
    hand = in_hand(tmp_path)
    assert hand.do(Press()) is None
    assert hand.put_down()
    assert seen(tmp_path).plan == hand.state.plan


def test_a_garment_that_cannot_be_read_begins_no_journal(tmp_path: Path) -> None:
    """A size that is not there: said, and nothing is left in the folder."""
    with pytest.raises(FinishingError, match="no size"):
        InHand.open(garment_in(tmp_path, EDGE, "enormous"))
    assert not (tmp_path / NAME).exists()


def test_an_opening_that_cannot_be_worked_out_begins_no_journal(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever goes wrong before the first event is known leaves the folder free, with no journal and no lock."""

    def refuse(*_: object) -> None:
        raise FinishingError("it cannot begin")

    folder = garment_in(tmp_path, EDGE)
    with monkeypatch.context() as patch:
        patch.setattr("finishing_tui.garment.hand.begin", refuse)
        with pytest.raises(FinishingError, match="it cannot begin"):
            InHand.open(folder)
    assert not (folder / NAME).exists()
    InHand.open(folder).close()


def test_an_opening_that_cannot_be_stored_lets_go_of_the_garment(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The lock is given back, so that it can be opened once the trouble is over."""

    def refuse(*_: object, **__: object) -> None:
        raise NotSaved("nothing can be kept")

    folder = garment_in(tmp_path, EDGE)
    with monkeypatch.context() as patch:
        patch.setattr(Journal, "append", refuse)
        with pytest.raises(NotSaved):
            InHand.open(folder)
    hand = InHand.open(folder)
    assert hand.state.standing is not None
    hand.close()


def test_while_one_window_has_it_another_looks(tmp_path: Path) -> None:
    """A second one is told, may look, sees what is on the disk, and cannot change anything."""
    hand = in_hand(tmp_path)
    hand.do(Press())
    assert hand.flush(30)
    with pytest.raises(InUse):
        InHand.open(tmp_path)
    looking = InHand.open(tmp_path, look=True)
    assert looking.state == hand.state
    refusal = looking.do(Press())
    assert refusal is not None
    assert "only look at" in refusal.sentence
    assert looking.state == hand.state
    looking.close()
    hand.put_down()


def test_edited_files_are_noticed_and_offered_but_the_journal_rules(tmp_path: Path) -> None:
    """A corrected recipe is a changed plan; files that cannot be read or that are gone change nothing."""
    hand = in_hand(tmp_path, NECKBAND)
    assert hand.changed_plan() is None
    recipe = tmp_path / "recipe.toml"
    recipe.write_text(NECKBAND.replace("rounds  = 3", "rounds  = 5"), encoding="utf-8")
    changed = hand.changed_plan()
    assert changed is not None
    assert hand.do(Replan(changed, "the recipe was corrected")) is None
    assert hand.changed_plan() is None
    recipe.write_text("format = 1\nnonsense", encoding="utf-8")
    assert hand.changed_plan() is None
    recipe.unlink()
    (tmp_path / "garment.toml").unlink()
    assert hand.changed_plan() is None
    hand.put_down()
    assert seen(tmp_path).plan == changed


def test_an_event_of_a_later_program_is_named(tmp_path: Path) -> None:
    """A kind, a version or a field that is not known here: a sentence, never a traceback."""
    hand = in_hand(tmp_path)
    hand.do(WriteNote("a note"))
    hand.put_down()
    with Journal.open(tmp_path, look=True) as journal:
        *_, row = (row for row in journal.rows() if row.kind == "Noted")
    for later in (
        row._replace(kind="Dyed"),
        row._replace(version=row.version + 1),
        row._replace(text=written({**row.body, "colour": "slate"})),
        row._replace(text=written({"is": "Noted"})),
    ):
        with pytest.raises(NotUnderstood, match="version"):
            from_row(later)


def test_finishing_the_last_step_leaves_nothing_in_hand(tmp_path: Path) -> None:
    """Every step done, nothing is left, and the next sitting still finds it so."""
    hand = in_hand(tmp_path)
    for _ in range(300):
        if hand.state.current is not None and hand.do(Press()) is not None:
            assert hand.do(Finish()) is None
    assert hand.state.current is None
    hand.put_down()
    assert seen(tmp_path).ledger.empty


FIRST, GONE = StepId("1"), StepId("100")

ODD: tuple[Event, ...] = (
    Worked(step=FIRST, entries=(Posting("nowhere", "band", 1),)),
    Worked(step=FIRST, changes=(Marked(GONE, 0, Reached(), Reached()),)),
    Worked(step=FIRST, changes=(Marked(StepId("-1"), 0, Reached(), Reached()),)),
    Worked(step=FIRST, changes=(Marked(FIRST, 9, Reached(), Reached()),)),
    Worked(step=FIRST, changes=(Marked(StepId("2"), 0, Reached(), Reached()),)),
    Begun(step=FIRST, changes=(Stood(GONE, Standing(), Standing()),)),
    Begun(
        step=FIRST, changes=(Stood(FIRST, Standing(), Standing("under-way", StepWork((), (Progress(),), Ledger()))),)
    ),
    Begun(step=FIRST, turned=Turned(FIRST, GONE)),
    TakenBack(1, (Worked(step=FIRST, changes=(Marked(GONE, 0, Reached(), Reached()),)),), 0, None),
    PutBack(1, ()),
    Noted("x" * (LONGEST_NOTE + 1), None),
    PutDown("x" * (LONGEST_NOTE + 1)),
)


@pytest.mark.parametrize("event", ODD, ids=range(len(ODD)))
def test_what_does_not_follow_is_one_sentence_and_takes_no_other_garment_with_it(event: Event, tmp_path: Path) -> None:
    """Whole by its checksums, but never ours: it cannot be opened or recorded, and the shelf shows the rest."""
    odd = tmp_path / "odd"
    cut_off(in_hand(odd))
    cut_off(in_hand(tmp_path / "well"))
    put_in(odd, event)
    for look in (True, False):
        with pytest.raises(DoesNotFit, match="does not follow"):
            InHand.open(odd, look=look)
    with Journal.open(odd, look=True) as journal, pytest.raises(DoesNotFit):
        record_of(happenings(journal.rows()))
    found = {one.folder.name: one for one in on_shelf(tmp_path)}
    assert "does not follow" in found["odd"].trouble
    assert not found["well"].trouble


@pytest.mark.parametrize("event", [PutDown(), Begun(step=FIRST)], ids=["put down", "begun"])
def test_a_journal_that_begins_with_anything_but_the_recipe_is_refused(event: Event, tmp_path: Path) -> None:
    """There is nothing it could be about."""
    Journal.create(garment_in(tmp_path, EDGE)).close()
    put_in(tmp_path, event)
    with pytest.raises(DoesNotFit, match="does not begin with the recipe"):
        InHand.open(tmp_path, look=True)


def test_nothing_was_put_down_before_it_was_picked_up(tmp_path: Path) -> None:
    """A sitting that ends before any began does not follow either."""
    InHand.open(garment_in(tmp_path, EDGE)).close()
    put_in(tmp_path, PutDown())
    with pytest.raises(DoesNotFit, match="does not follow"):
        InHand.open(tmp_path, look=True)


def test_a_snapshot_of_another_garment_is_passed_over(tmp_path: Path) -> None:
    """One that points at a step there is not is only a cache: what happened is in the events."""
    hand = in_hand(tmp_path)
    before = cut_off(hand)
    with Journal.open(tmp_path) as journal:
        journal.snapshot(journal.last_seq, SNAPSHOT, snapshot_of(replace(before, current=99)))
    assert seen(tmp_path) == before


def test_what_was_done_last_and_is_not_there_cannot_be_taken_back(tmp_path: Path) -> None:
    """A sentence, and nothing changes."""
    hand = in_hand(tmp_path)
    cut_off(hand)
    put_in(tmp_path, TakenBack(999, (), 999, None))
    hand = InHand.open(tmp_path)
    for refusal in (hand.take_back(), hand.put_back()):
        assert refusal is not None
        assert "not in the journal" in refusal.sentence
    hand.close()
