import shutil
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.plain.words import known
from finishing_tui.talk.offers import offers
from tests.examples import share
from tests.plain.making import Twin, crew, talked
from tests.plain.test_whole_garments import NECKBAND

lines = st.one_of(
    st.sampled_from(sorted(known())),
    st.sampled_from(["d", "x", "b", "enter", "r", "t", "yes", "1", "2", "3", ""]),
    st.integers(0, 40).map(str),
    st.integers(0, 40).map("take up {}".format),
    st.integers(0, 40).map("leave out {}".format),
    st.sampled_from(["what if 3/4", "what if even", "numbers front_rows 30", "note x", "pace run", "more", "escape"]),
    st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\n"), max_size=12),
)
"""Lines as they may come: words of the mode, often the ones that change something, numbers, and anything at all."""


@pytest.fixture(scope="module")
def half_way(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a crew neck put down while the neckband is picked up."""
    twin = Twin(crew(tmp_path_factory.mktemp("any lines") / "crew"))
    twin.works_to(NECKBAND, 0, 9)
    twin.puts_down("")
    return twin.hand.folder


def looked_at(folder: Path) -> State:
    """Return the state of a garment as its journal has it."""
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state


@settings(max_examples=share(25))
@given(typed=st.lists(lines, max_size=25))
def test_no_lines_crash_it_or_corrupt_a_count(
    half_way: Path, tmp_path_factory: pytest.TempPathFactory, typed: list[str]
) -> None:
    """After any lines it was put down properly, and no stitch came from nowhere: the ledger adds up to what it was."""
    folder = tmp_path_factory.mktemp("copy") / "crew"
    shutil.copytree(half_way, folder)
    before = looked_at(folder).ledger.stitches
    said = talked(folder, *typed)
    assert said[-1] == "put down; everything is kept."
    after = looked_at(folder)
    assert after.sittings[-1].ended
    assert sum(before.values()) == sum(after.ledger.stitches.values())
    assert all(count >= 0 for place, count in after.ledger.stitches.items() if place in after.plan.recipe.place)
    shutil.rmtree(folder.parent)


@settings(max_examples=share(40))
@given(line=st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\n"), min_size=1, max_size=30))
def test_a_line_that_is_no_word_does_nothing(half_way: Path, line: str) -> None:
    """Whatever is no word and no number leaves the state as it was."""
    words = " ".join(line.casefold().split())
    every = {*known(), *(offer.label.casefold() for offer in offers(looked_at(half_way)))}
    if any(words == word or words.startswith(f"{word} ") for word in every) or words[:1].isdecimal():
        return
    before = looked_at(half_way)
    talked(half_way, line)
    after = looked_at(half_way)
    assert (after.ledger, after.steps, after.top, after.notes) == (
        before.ledger,
        before.steps,
        before.top,
        before.notes,
    )
