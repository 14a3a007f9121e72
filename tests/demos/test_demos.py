"""The demo garments: each is at the moment it promises, is whole, and can be gone on with."""

import json
import stat
from datetime import timedelta
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.commands import demo as demo_command
from finishing_tui.commands.record import read_record
from finishing_tui.garment.commands import Press, TakeCount
from finishing_tui.garment.decide.mirror import choice
from finishing_tui.garment.file import file_text, read_garment
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from finishing_tui.garment.shelf import take_copy
from finishing_tui.garment.sources import FILE, with_id
from finishing_tui.glance import coming_back
from finishing_tui.glance.following import following
from finishing_tui.record import as_data, as_text
from finishing_tui.talk.offers import offers
from tests.demos.scripts import SCRIPTS, Sitting, end_step, now_on, units, work_of

BEGUN = sorted(SCRIPTS)
MOST = 400_000
"""Bytes: a journal that is checked in stays small."""


def taken(name: str, shelf: Path) -> InHand:
    """Return a copy of a demo garment, in hand."""
    return InHand.open(take_copy(shipped.demo(name), shelf))


def test_there_is_one_for_each_telling_moment() -> None:
    """Nothing done yet, just begun, before a recount, lying with a stitch missing, a second side to come, finished."""
    assert {name for name, folder in shipped.demos().items() if (folder / NAME).exists()} == set(BEGUN)
    assert set(shipped.demos()) - set(BEGUN) == {"slate-crew"}
    assert len(BEGUN) >= 5


def test_the_first_is_in_mid_edge(tmp_path: Path) -> None:
    """Whoever takes the first of the list picks up a stitch with her first press, and ticks nothing off before."""
    first = next(iter(shipped.demos()))
    hand = taken(first, tmp_path)
    work = work_of(hand)
    assert work is not None
    before = work.progress[work.at].mark.loops
    assert now_on(hand).unit == "spot"
    assert 0 < before < now_on(hand).target
    units(hand, 1)
    now = work_of(hand)
    assert now is not None
    assert now.progress[work.at].mark.loops == before + 1
    hand.close()


def test_the_list_tells_the_moments() -> None:
    """Each is listed with a line that says what moment it is at, no two alike, short enough for a small screen."""
    abouts = [read_garment(folder)[0].about for folder in shipped.demos().values()]
    assert all(20 < len(about) <= 140 for about in abouts)
    assert len(set(abouts)) == len(abouts)
    assert all(word in " ".join(abouts) for word in ("nothing done yet", "just begun", "recount", "slipped", "mirror"))
    listed = demo_command._listed().data["demos"]  # noqa: SLF001  (what ``finishing demo --json`` prints)
    assert json.dumps([one["about"] for one in listed]) == json.dumps(abouts)


@pytest.mark.parametrize("name", BEGUN)
def test_journals_are_whole_small_and_of_today_s_recipe(name: str, tmp_path: Path) -> None:
    """A demo that is taken up asks nothing about changed files: else run ``python -m tests.demos.make``."""
    assert (shipped.demo(name) / NAME).stat().st_size <= MOST
    hand = taken(name, tmp_path)
    assert hand.changed_plan() is None
    assert hand.state.plan.text == shipped.recipe(hand.state.plan.source).read_text(encoding="utf-8")
    hand.close()


@pytest.mark.parametrize("name", BEGUN)
def test_a_copy_is_its_own(name: str, tmp_path: Path) -> None:
    """A copy is private, has an id of its own and the same journal; working on it leaves what came as it was."""
    came = shipped.demo(name)
    before = {path.name: path.read_bytes() for path in came.iterdir()}
    folder = take_copy(came, tmp_path)
    assert {path.name for path in folder.iterdir()} == {FILE, NAME}
    assert (folder / NAME).read_bytes() == before[NAME]
    assert all(stat.S_IMODE(path.stat().st_mode) == 0o600 for path in folder.iterdir())
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert file_text(folder) != file_text(came)
    assert with_id(file_text(folder), "") == with_id(file_text(came), "")
    hand = InHand.open(folder)
    assert hand.pick_up() is None
    assert hand.put_down("here")
    assert {path.name: path.read_bytes() for path in came.iterdir()} == before


@pytest.mark.parametrize("name", sorted(shipped.demos()))
def test_it_goes_on_to_its_end(name: str, tmp_path: Path) -> None:
    """From its moment on every demo can be worked to an empty ledger, and the record says that it is finished."""
    hand = taken(name, tmp_path)
    hand.pick_up()
    while hand.state.current is not None:
        end_step(hand, ["26"])
    assert hand.state.ledger.empty
    folder = hand.folder
    assert hand.put_down()
    assert as_data(read_record(folder))["finished"]


@pytest.mark.parametrize("name", BEGUN)
def test_coming_back_tells_where_it_was_left(name: str, tmp_path: Path) -> None:
    """The sittings are those of the script, each put down with its line."""
    hand = taken(name, tmp_path)
    sittings: tuple[Sitting, ...] = SCRIPTS[name]
    assert [one.where for one in hand.state.sittings] == [one.where for one in sittings]
    assert all(one.ended for one in hand.state.sittings)
    back = coming_back(hand.state, sittings[-1].began + timedelta(days=14))
    assert back.where == sittings[-1].where
    assert back.away == "13 days ago"
    assert not back.cut_off
    hand.close()


def test_sand_v_is_just_begun_and_in_inches(tmp_path: Path) -> None:
    """It is within the first join, and its gauge is over four inches."""
    hand = taken("sand-v", tmp_path)
    assert (hand.state.current, now_on(hand).unit) == (3, "pair")
    assert hand.state.plan.gauge is not None
    assert hand.state.plan.gauge.over == "4 in"
    hand.close()


def test_rust_crew_is_before_its_recount_and_left_handed(tmp_path: Path) -> None:
    """A few loops further on, the half mark is reached and the recount is due."""
    hand = taken("rust-crew", tmp_path)
    work = work_of(hand)
    assert work is not None
    (half,) = work.stages[work.at].halts
    assert half - 5 <= work.progress[work.at].mark.units < half
    assert hand.state.plan.hand == "left"
    hand.close()


def test_plum_yoke_finds_the_missing_stitch_by_the_count(tmp_path: Path) -> None:
    """Coming back shows what the needle should hold; one fewer is made in the next round, or there and then."""
    hand = taken("plum-yoke", tmp_path)
    hand.pick_up()
    before = hand.state
    should = before.ledger.on("neck")
    assert hand.do(TakeCount(should - 1, "neck")) is None
    found = following(before, hand.state)
    assert found is not None
    rows = found.answers.rows
    at = [one.text for one in rows].index("Make 1 on the neck needle now")
    made = found.does[at].command
    assert made is not None
    assert hand.do(made) is None
    assert hand.state.ledger.on("neck") == should == rows[at].total
    hand.put_down()


def test_teal_cardigan_has_a_second_side_to_mirror(tmp_path: Path) -> None:
    """The second slope is about to begin, can go as worked or as planned, and holds as many as the first one got."""
    hand = taken("teal-cardigan", tmp_path)
    found = choice(hand.state)
    assert found is not None
    _, second = found
    assert second.mirrors == "right slope"
    assert second.as_worked
    assert "mirror" in {offer.action for offer in offers(hand.state)}
    hand.pick_up()
    units(hand, 1)
    assert choice(hand.state) is None
    hand.put_down()
    (strayed,) = as_data(read_record(hand.folder))["deviations"]
    assert "row" in json.dumps(strayed)


def test_ochre_jacket_is_finished_with_its_record(tmp_path: Path) -> None:
    """All steps are done, nothing is left, and the record tells of the row that was taken out, and of the notes."""
    hand = taken("ochre-jacket", tmp_path)
    assert hand.state.current is None
    assert hand.state.ledger.empty
    assert hand.do(Press()) is not None
    hand.close()
    record = read_record(hand.folder)
    assert record.ripped
    text = as_text(record)
    assert "Finished" in text
    assert "taken out to 2" in text
    assert "tug-tested" in text
