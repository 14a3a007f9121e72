"""A rate and no count ("2 sts for every 3 rows"), in lines: no number is shown that nobody knows."""

from pathlib import Path

import pytest

from finishing_tui.commands.record import read_record
from finishing_tui.garment.hand import InHand
from finishing_tui.record import as_data, as_text
from tests.plain.making import garment, talked
from tests.recipe_texts import place, recipe, section, step


@pytest.fixture
def rate(tmp_path: Path) -> Path:
    """Return the folder of a band that is picked up at a rate alone, and bound off again."""
    pick_up = step("pick up and knit", "Pick up", section(along="front edge", ratio="2/3"), onto="band")
    off = step("bind off", "Bind off", from_="band")
    ends = step("weave in", "Weave in", tails="all")
    path = tmp_path / "rate.toml"
    path.write_text(recipe("By rate", place("band"), pick_up, off, ends, format=2))
    return garment(tmp_path / "rate", str(path), "one")


def test_no_number_is_said_that_nobody_knows(rate: Path) -> None:
    """Neither at the needles nor at a count, in what-if, at an early end or in the record: 1000 rows are a guess."""
    said = talked(rate, "enter", *["d"] * 9, "r", "9", "3", "w", "f", "ledger", "q", "")
    assert "9 stitches, row 13." in said
    assert "1: I counted the rows that are left." in said
    assert "2: At the fold: halfway." in said
    assert any("picked up, and you have not said that it ends here" in line for line in said)
    assert any("nobody knows how many stitches" in line.lower() for line in said)
    text = "\n".join([*said, as_text(read_record(rate))])
    assert "667" not in text
    assert "1000" not in text
    assert "1,000" not in text
    assert "333" not in text
    data = as_data(read_record(rate))
    assert (data["count"], data["target"], data["spot"], data["spots"]) == (9, None, 13, None)


def test_where_it_ends_its_count_is_real(rate: Path) -> None:
    """The ledger has what was picked up, the length is known, and nothing is short."""
    said = talked(rate, "enter", *["d"] * 9, "z", "enter", "q", "")
    assert any(line.endswith("9 counted; The edge ends here.") for line in said)
    hand = InHand.open(rate, look=True)
    hand.close()
    work = hand.state.steps[0].work
    assert work is not None
    assert (work.stages[0].units, work.stages[0].target, work.stages[0].uncounted) == (13, 9, "")
    assert hand.state.ledger.on("band") == 9


def test_its_half_is_offered_at_the_fold_only(rate: Path) -> None:
    """At the fold it gets a target, twice what is there; it goes on at its rate until then, or until it ends."""
    said = talked(rate, "enter", *["d"] * 9, "r", "9", "2", "1", "q", "")
    assert not any("halfway" in line for line in said[: said.index("2: At the fold: halfway.")])
    hand = InHand.open(rate, look=True)
    hand.close()
    work = hand.state.steps[0].work
    assert work is not None
    assert (work.stages[0].target, work.stages[0].uncounted) == (18, "spots")
