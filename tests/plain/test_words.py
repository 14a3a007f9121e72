from pathlib import Path

import pytest

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.hand import InHand
from finishing_tui.plain.pages import KEPT
from finishing_tui.plain.telling import ASKED
from finishing_tui.plain.typed import WORDS
from finishing_tui.plain.words import ASKS, ORDERS, KnownWord, known, understood
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.shipped import recipe
from finishing_tui.talk.acts import ACTS, BY_ID
from finishing_tui.talk.offers import offers
from tests.plain.making import crew, events, talked


def test_no_word_means_two_things() -> None:
    """No letter, key, id or word stands for two things, and each leads to something that is done, offered or said."""
    words = [*ASKS, *ORDERS, *(act.letter for act in ACTS if act.letter)]
    for act in ACTS:
        words += {act.id.replace("_", " "), act.shown}
    assert len(words) == len(set(words))
    assert {*known().values()} == {*BY_ID, *WORDS, *ASKED, *KEPT, "hands"}


def test_every_offer_can_be_typed(tmp_path: Path) -> None:
    """At every step of a garment each offer is understood by its label, its id and its key, as just that action."""
    hand = InHand.open(crew(tmp_path / "crew"))
    for step in (None, 3, 12):
        for offer in offers(hand.state, step):
            if offer.label == "begin":
                continue  # both to press and to finish begin a step
            for word in (offer.label.upper(), offer.action.replace("_", " "), BY_ID[offer.action].shown):
                assert understood(word, offers(hand.state, step)) == KnownWord(offer.action)
    hand.put_down()


def test_what_is_asked_for_is_said(tmp_path: Path) -> None:
    """All that the screen shows of a step can be asked for: its words in full, the needles, the ledger, the steps."""
    folder = crew(tmp_path / "crew")
    shipped = read_recipe(recipe("crew-neck"))
    first = shipped.step[0]
    for asked in ("say", "how", "look", "mend", "mind"):
        answer = " ".join(line.strip() for line in talked(folder, asked))
        assert " ".join(getattr(first, asked).split()) in answer
    said = talked(
        folder, "words", "where", "needles", "ledger", "steps", "next", "time", "notes", "edge", "saved", "see"
    )
    for line in (
        "garment: under test, size 2 years.",
        "on the back holder: 46.",
        "tail right front neck: not used yet.",
        "markers: none.",
        "holes: none.",
        "step 1, under way, here: Look the pieces over.",
        f"step {len(shipped.step)}, to come: {shipped.step[-1].title}.",
        "no note was written.",
        "no edge is being picked up just now.",
        "everything is on the disk.",
        "this step says nothing about that.",
    ):
        assert line in said


def test_asking_changes_nothing(tmp_path: Path) -> None:
    """ChoiceBox, looking, help, empty lines and words that are not known write no event but the sitting's."""
    folder = crew(tmp_path / "crew")
    looking = ["?", "help", "", "right", "left", "left", "step 9", "step", "step 0", "step x", "escape"]
    unknown = ["foo", "d d", "d 5", "55 d", "1e3", "+4", "-1", ".", "\u0661", "1234567", "pace", "take up 99"]
    for lines in ([*ASKS], looking, unknown):
        before = events(folder) if (folder / "journal.sqlite3").exists() else None
        talked(folder, *lines)
        after = events(folder)
        assert before is None or after[: len(before)] == before
        assert [kind for kind, _, _ in after[len(before) if before else 2 :]] == ["SittingBegan", "PutDown"]


@pytest.mark.parametrize(
    ("line", "said"), [("lookk on", "'look on'"), ("recuont", "'recount'"), ("\N{OLD PERSIAN SIGN A}", "help")]
)
def test_near_words(tmp_path: Path, line: str, said: str) -> None:
    """A word that is not known is answered with near ones, or with where to find them all."""
    answers = [answer for answer in talked(crew(tmp_path / "crew"), line) if "isn't a word here" in answer]
    assert len(answers) == 1
    assert said in answers[0]


def test_an_empty_line_counts_only_when_asked_for(tmp_path: Path) -> None:
    """Empty lines change nothing; with full hands each is the next thing done, unless it came too soon to be meant."""
    folder = crew(tmp_path / "crew")
    at = [0]

    def ticks(by: int) -> Clock:
        def told() -> int:
            at[0] += by
            return at[0]

        return Clock(ticks=told)

    def worked() -> int:
        return sum(kind == "Worked" for kind, _, _ in events(folder))

    talked(folder, "", "", clock=ticks(500))
    assert worked() == 0
    talked(folder, "hands", "", "", clock=ticks(500))
    assert worked() == 2
    talked(folder, "hands", *[""] * 50, clock=ticks(1))
    assert worked() == 2
    talked(folder, "hands", "", "hands", "", clock=ticks(500))
    assert worked() == 3


def test_asked_twice(tmp_path: Path) -> None:
    """What is asked twice is done only when the very same is typed again, at once; an empty line does not do it."""
    folder = crew(tmp_path / "crew")
    for lines in (
        ["enter", "", "next", "enter"],
        ["leave out 3", "leave out 4"],
        ["leave out 3", "foo", "leave out 3"],
    ):
        talked(folder, *lines)
        assert {kind for kind, _, _ in events(folder)} <= {"Taken", "Begun", "SittingBegan", "PutDown"}
    talked(folder, "enter", "", "enter")
    assert "Finished" in {kind for kind, _, _ in events(folder)}
