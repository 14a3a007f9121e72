"""The ledger: nothing is used twice, nothing is left behind, and everything can be undone."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.ledger import (
    EDGE,
    FOUND,
    MISSING,
    OFF,
    OUTSIDE,
    Entry,
    HoleEntry,
    Ledger,
    MarkerEntry,
    Posting,
    Posture,
    PostureEntry,
    TailEntry,
    Unbalanced,
    YarnEntry,
    inverses,
    opened,
)
from tests.strategies import PLACES, entries_for, ledgers


@given(st.data())
def test_leaving_what_was_entered_restores_the_ledger_exactly(data: st.DataObject) -> None:
    """Entering a list and then its inverses, last first, gives the same ledger back; also the other way round."""
    before = data.draw(ledgers())
    entries = data.draw(entries_for(before))
    after = before.enter(*entries)
    assert after.leave(*entries) == before
    assert after.leave(*entries).enter(*entries) == after


@given(st.data())
def test_the_inverse_of_an_inverse_is_the_entry(data: st.DataObject) -> None:
    """``inverse`` is its own inverse, so what was put back can be taken back."""
    entries = data.draw(entries_for(data.draw(ledgers())))
    assert inverses(inverses(entries)) == entries


@given(st.data())
def test_the_sum_is_always_zero_and_no_place_is_negative(data: st.DataObject) -> None:
    """Double entry: all accounts together hold nothing; only outside accounts may be below zero."""
    ledger = data.draw(ledgers())
    ledger = ledger.enter(*data.draw(entries_for(ledger)))
    assert sum(ledger.stitches.values()) == 0
    assert all(count > 0 for count in ledger.live.values())
    assert 0 not in ledger.stitches.values()


@given(st.data())
def test_the_order_of_independent_entries_does_not_show(data: st.DataObject) -> None:
    """Two ledgers with the same things at the same places are equal, however they got there."""
    ledger = data.draw(ledgers())
    markers = [MarkerEntry(name, "in") for name in ("a", "b", "c")]
    shuffled = data.draw(st.permutations(markers))
    assert ledger.enter(*markers) == ledger.enter(*shuffled)


@given(ledgers(), st.sampled_from(PLACES), st.integers(1, 50))
def test_no_place_gives_more_than_it_holds(ledger: Ledger, place: str, more: int) -> None:
    """Taking more than a place holds is refused, with its name and what it has; nothing is changed."""
    held = ledger.on(place)
    with pytest.raises(Unbalanced, match=f"{place} has {held} stitch"):
        ledger.enter(Posting(place, OFF, held + more))
    assert ledger.on(place) == held


@pytest.mark.parametrize(
    "twice",
    [
        MarkerEntry("side", "in"),
        HoleEntry("corner", "made"),
        TailEntry("left", "made"),
        YarnEntry("neck", "joined"),
    ],
)
def test_nothing_is_there_twice(twice: Entry) -> None:
    """A marker, hole, tail or yarn that is in the work cannot be put in again, nor be taken out twice."""
    ledger = Ledger().enter(twice)
    with pytest.raises(Unbalanced, match="already"):
        ledger.enter(twice)
    with pytest.raises(Unbalanced, match="is not there"):
        ledger.leave(twice, twice)


@pytest.mark.parametrize("stitches", [0, -3])
def test_a_posting_moves_at_least_one_stitch(stitches: int) -> None:
    """A posting of nothing, or of fewer, is refused."""
    with pytest.raises(Unbalanced, match=f"at least 1 stitch, not {stitches}"):
        Ledger().enter(Posting(EDGE, "neck", stitches))


def test_only_weaving_in_ends_a_tail() -> None:
    """Sewing with a tail shortens it and it stays; weaving in ends it; unweaving restores how often it was used."""
    used = Ledger().enter(TailEntry("left", "made"), TailEntry("left", "shortened"), TailEntry("left", "shortened"))
    assert used.tails == {"left": 2}
    woven = TailEntry("left", "woven", 2)
    assert used.enter(woven).tails == {}
    assert used.enter(woven).leave(woven) == used


def test_yarn_is_carried_from_where_it_hangs() -> None:
    """Carrying the yarn moves it; it cannot be carried from where none hangs."""
    ledger = Ledger().enter(YarnEntry("front", "joined"), YarnEntry("neck", "carried", "front"))
    assert ledger.yarns == ("neck",)
    with pytest.raises(Unbalanced, match="working yarn at 'front' is not there"):
        ledger.enter(YarnEntry("back", "carried", "front"))


def test_a_garment_is_finished_when_nothing_is_left() -> None:
    """Stitches bound off, tails woven in, markers out, holes closed, yarn cut: then, and only then, it is empty."""
    entries: tuple[Entry, ...] = (
        MarkerEntry("side", "in"),
        HoleEntry("corner", "made"),
        YarnEntry("neck", "joined"),
        Posting("neck", OFF, 10),
        YarnEntry("neck", "cut"),
        HoleEntry("corner", "closed"),
        MarkerEntry("side", "out"),
        TailEntry("left", "woven"),
    )
    ledger = opened({"neck": 10, "front": 0}, ["left"])
    for entry in entries:
        assert not ledger.empty
        ledger = ledger.enter(entry)
    assert ledger.empty
    assert ledger.on(EDGE) == -10
    assert ledger.on(OFF) == 10


def test_a_count_that_differs_posts_the_difference() -> None:
    """Found and missing stitches come from and go to accounts of their own, so the number before stays readable."""
    ledger = opened({"neck": 38}).enter(Posting("neck", MISSING, 1), Posting(FOUND, "neck", 3))
    assert ledger.live == {"neck": 40}
    assert (ledger.on(MISSING), ledger.on(FOUND)) == (1, -3)
    assert set(ledger.stitches) - OUTSIDE == {"neck"}


def test_the_lie_of_the_work_is_put_back_too() -> None:
    """A change of posture carries the one before it, so that undoing needs nothing else."""
    turned = PostureEntry(Posture(), Posture(facing="wrong", together="right"))
    ledger = Ledger().enter(turned)
    assert ledger.posture.together == "right"
    assert ledger.leave(turned) == Ledger()
