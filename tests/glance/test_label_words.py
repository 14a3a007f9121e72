"""What an act was is stored as an id with what fills it: its words are the same as ever, and follow the plan."""

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.rhythm import Rhythm, Run, Runs
from finishing_tui.craft.spacing import space
from finishing_tui.garment.commands import Finish, InsertStep, Press
from finishing_tui.garment.events import Finished, Replanned, RippedBack, TakenBack
from finishing_tui.garment.evolve import DoesNotFit, Happening, evolve
from finishing_tui.garment.journal import NAME, Journal
from finishing_tui.garment.labels import Label, Said
from finishing_tui.garment.plan import StepId
from finishing_tui.garment.stored import decode, happenings
from finishing_tui.glance.label_words import WORDS, label_words, labels_words, reason_words, top_words
from finishing_tui.glance.postings import posted
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.record import as_data, as_text, record_of
from tests.garment.edges import along
from tests.garment.paper import NOON, Paper
from tests.journals.make import HERE

PLAN = along(32, 24).state.plan
ONE, TWO, THREE = PLAN.ids[:3]
EVERY = Runs((Run(1, 1, 6),))
SKIPPING = Runs((Run(2, 3, 4),))


def ids(wanted: Any) -> Iterator[Said]:
    """Yield every id that a label can have."""
    for one in get_args(wanted):
        if isinstance(one, str):
            yield one  # type: ignore[misc]
        else:
            yield from ids(one)


SAID = (
    (Label("skipped", names=("row",), numbers=(2,)), "row 2, skipped against the plan"),
    (Label("picked", names=("row",), numbers=(4,)), "row 4, picked against the plan"),
    (Label("picked-once", names=("ridge",), numbers=(2,)), "ridge 2, picked once against the plan"),
    (Label("doubled", names=("chain",), numbers=(1,)), "chain 1, doubled against the plan"),
    (Label("step-begun", (TWO,)), "the beginning of step 2"),
    (Label("step-ended", (TWO,)), "the end of step 2"),
    (Label("step-taken-up", (THREE,)), "taking up step 3"),
    (Label("step-left-out", (ONE,)), "leaving out step 1"),
    (Label("step-inserted", (TWO,), numbers=(9,)), "a new step 2"),
    (Label("step-inserted", (StepId("+1"),), numbers=(9,)), "a new step 9"),
    (Label("done-elsewhere", (ONE,)), "step 1, done elsewhere"),
    (Label("done-elsewhere", (ONE, TWO, THREE)), "steps 1, 2 and 3, done elsewhere"),
    (Label("done-elsewhere", (ONE, TWO, TWO, THREE)), "steps 1 to 3, done elsewhere"),
    (Label("whole-lot", names=("spare pin",), numbers=(2,)), "the lot: 2 stitches of spare pin"),
    (Label("many-of-lot", names=("spare pin",), numbers=(1,)), "1 stitch of spare pin"),
    (Label("measured"), "the measure"),
    (Label("recounted", names=("left front neck",)), "the recount of left front neck"),
    (Label("place-counted", names=("neck needle",)), "the count of neck needle"),
    (Label("two-together", numbers=(3,)), "two together at pair 3"),
    (Label("two-at-once", names=("back edge",), numbers=(1,)), "two at once from the back edge at pair 1"),
    (Label("other-tail", names=("left corner", "start")), "left corner, closed with the tail start"),
    (Label("stitches-made", names=("neck needle",), numbers=(1,)), "making 1 stitch on the neck needle"),
    (Label("stitches-worked-off", names=("neck needle",), numbers=(3,)), "working off 3 stitches on the neck needle"),
    (Label("kept-as-it-is"), "carrying on as it is"),
    (Label("re-spaced", (TWO,)), "re-spacing step 2"),
    (Label("first-round-changed"), "putting it right in the first round"),
    (Label("mirrored-as-worked", names=("right front neck",)), "right front neck as worked"),
    (Label("mirrored-as-planned", names=("right front neck",)), "right front neck as planned"),
    (Label("plan-altered", names=("edge",)), "another plan for edge"),
    (Label("plan-taken"), "a changed plan"),
    (Label("ripped-to-start", names=("edge",)), "ripping back to the start of edge"),
    (Label("ripped-to-spot", names=("row",), numbers=(8,)), "ripping back to row 8"),
    (Label("ripped-to-unit", names=("rounds",), numbers=(3,)), "ripping back to 3 of rounds"),
    (Label("start", names=("edge",)), "the start of edge"),
    (Label("spot", names=("row",), numbers=(8,)), "row 8"),
    (Label("unit", names=("rounds",), numbers=(3,)), "3 of rounds"),
    (Label("recount-to-first-round", (ONE, TWO), numbers=(4,)), "recount of step 1: +4 in the first round of step 2"),
    (Label("to-first-round", (TWO,), numbers=(-1,)), "-1 in the first round of step 2"),
    (Label("sections-re-spaced", (ONE,), ("neck",), (24, 22)), "step 1: neck 24 instead of 22"),
    (
        Label("sections-re-spaced", (ONE,), ("left", "right"), (13, 12, 11, 10)),
        "step 1: left 13 instead of 12, right 11 instead of 10",
    ),
    (
        Label("section-altered", (ONE,), ("edge", "row"), (8, 12, 6, 6), (SKIPPING, EVERY)),
        "step 1, edge: 8 from 12 rows, 2 of every 3, four times; before: 6 from 6 rows, every row",
    ),
    (Label("rounds-altered", (TWO,), ("rounds", "round"), (1, 8)), "step 2, rounds: 1 round; before: 8 rounds"),
    (
        Label("number-first-given", names=("rows of the front",), numbers=(30,)),
        "rows of the front: 30, was empty",
    ),
    (Label("number-changed", names=("rows of the front",), numbers=(30, 28)), "rows of the front: 30, was 28"),
    (Label("files-changed"), "the files were changed"),
    (Label("nothing-typed"), "nothing was typed yet"),
    (Label("unfinished", names=("rounds",), numbers=(1, 3)), "rounds: 1 of 3 so far"),
    (
        Label("unexpected-count", names=("neck needle",), numbers=(24, 25)),
        "the recipe expects 24 on the neck needle, and there are 25",
    ),
    (Label("no-whole-repeat", names=("neck needle",), numbers=(25, 4)), "25 on the neck needle is not a multiple of 4"),
    (
        Label("no-whole-repeat-and", names=("neck needle",), numbers=(25, 4, 2)),
        "25 on the neck needle is not a multiple of 4 and 2",
    ),
    (Label("edge-pinned", names=("left panel edge",), numbers=(4,)), "left panel edge pinned in 4 parts"),
    (Label("number-not-counted", names=("rows along the neck",)), "rows along the neck: not counted"),
    (Label("as-said", names=("whatever {it} was",)), "whatever {it} was"),
)
"""A label of every id, and what was stored for it in words before there were labels."""


@pytest.mark.parametrize(("label", "words"), SAID)
def test_a_label_says_what_was_stored_in_words(label: Label, words: str) -> None:
    """Of every id there is."""
    assert label_words(PLAN, label) == words


def test_every_id_has_words() -> None:
    """And an example above; a plain press has none."""
    assert set(WORDS) == set(ids(Said)) == {label.what for label, _ in SAID}
    assert not label_words(PLAN, None)


rhythms = st.sampled_from((EVERY, SKIPPING, space(5, 7, style="even"), Runs(())))
names = st.lists(st.text(max_size=5), max_size=3).map(tuple)


@given(
    st.sampled_from(sorted(WORDS)),
    st.lists(st.sampled_from((ONE, TWO, StepId("+7"), StepId("{steps}"))), max_size=5).map(tuple),
    names,
    st.lists(st.integers(-(2**53), 2**53), max_size=5).map(tuple),
    st.lists(rhythms, max_size=3).map(tuple),
)
def test_whoever_wrote_a_label_it_is_said(
    what: Said, steps: tuple[StepId, ...], names: tuple[str, ...], numbers: tuple[int, ...], rhythms: tuple[Rhythm, ...]
) -> None:
    """A stranger's has too few fills or too many, steps that are nowhere, and words that look like places for fills."""
    assert isinstance(label_words(PLAN, Label(what, steps, names, numbers, rhythms)), str)


@pytest.mark.parametrize("what", sorted(WORDS))
def test_a_label_with_nothing_to_fill_in_is_said(what: Said) -> None:
    """The least that a stranger may have written."""
    assert isinstance(label_words(PLAN, Label(what)), str)


def test_an_edge_of_no_length_there_is_cannot_be_in_a_label() -> None:
    """Putting it into words would take for ever."""
    with pytest.raises(ValueError, match="longer than any"):
        Label("section-altered", rhythms=(Runs((Run(1, 1, 10**9),)),))


def test_more_than_is_ever_said_is_nobody_s() -> None:
    """Neither of what fills one label, nor of what a step was accepted in spite of."""
    with pytest.raises(ValueError, match="more in it"):
        Label("sections-re-spaced", names=("edge",) * 9)
    paper = along(8, 6).press(3)
    paper.surely(Finish())
    done = paper.latest[0]
    assert isinstance(done, Finished)
    paper.take_back()
    assert evolve(paper.state, Happening(50, NOON, 0, done)).top_label == done.label
    with pytest.raises(DoesNotFit):
        evolve(paper.state, Happening(50, NOON, 0, replace(done, although=done.although * 10_000)))


def _told(name: str, folder: Path) -> tuple[Any, ...]:
    """Return all that is said of what a stored journal holds, on the page of the ledger and in the record."""
    folder.mkdir()
    shutil.copy(HERE / f"{name}.sqlite3", folder / NAME)
    with Journal.open(folder, look=True) as journal:
        events = tuple(happenings(journal.rows()))
    record = record_of(events)
    plan = record.state.plan
    places = {place: one.text for place, one in plan.recipe.place.items()}
    return posted(events, places, plan), as_text(record), as_data(record), top_words(record.state)


@pytest.mark.parametrize("name", ["1-neckband", "1-edge", "1-unequal"])
def test_journals_with_texts_and_with_ids_are_told_alike(name: str, tmp_path: Path) -> None:
    """The same was done in both: one holds the words that were written then, the other ids that have words now."""
    told = _told(f"{name}-ids", tmp_path / "texts")
    assert told == _told(f"{name}-labels", tmp_path / "ids")
    assert "the end of step" in str(told)


def test_a_text_that_was_stored_is_said_as_it_was() -> None:
    """In each field that held one; an empty one is none, and what the program and the knitter wrote stays one text."""
    step = {"step": "1", "label": "the end of step 3"}
    finished = decode(Finished, {"is": "Finished", "v": 2, **step, "although": "edge: 8 of 20 so far; and more"})
    assert label_words(PLAN, finished.label) == "the end of step 3"
    assert labels_words(PLAN, finished.although) == "edge: 8 of 20 so far; and more"
    assert decode(Finished, {"is": "Finished", "v": 2, "step": "1", "label": "", "although": ""}) == Finished(step=ONE)
    ripped = decode(RippedBack, {"is": "RippedBack", "v": 2, **step, "to": "row 8"})
    assert label_words(PLAN, ripped.to) == "row 8"
    changed = decode(Replanned, {"is": "Replanned", "label": "a changed plan", "why": "rows: 30; counted again"})
    assert reason_words(PLAN, changed) == "rows: 30; counted again"
    back = decode(TakenBack, {"is": "TakenBack", "group": 1, "acts": [], "top": 1, "top_label": "the measure"})
    assert label_words(PLAN, back.top_label) == "the measure"


def _lately(paper: Paper) -> tuple[str, ...]:
    events = tuple(Happening(one.group, one.at, one.after_ms, one.event) for one in happenings(paper.rows))
    return tuple(one.text for one in posted(events, {}, paper.state.plan))


def test_a_label_names_its_step_wherever_it_is_now() -> None:
    """A step is inserted before the one that was ended: that one is step 2 now, and so it is said everywhere."""
    paper = along(8, 6).press(6).did(Finish())
    assert top_words(paper.state) == "the end of step 1"
    paper.did(InsertStep(Check(title="Look at it", items=("It lies flat.",)), -1))
    assert top_words(paper.state) == "a new step 1"
    assert _lately(paper)[:2] == ("a new step 1", "the end of step 2")
    paper.take_back()
    assert top_words(paper.state) == "the end of step 1"
    assert _lately(paper)[0] == "taken back: a new step 1"
    paper.put_back()
    paper.did(Press())
    paper.take_back()
    paper.take_back()
    assert _lately(paper)[0] == "taken back: a new step 1"
