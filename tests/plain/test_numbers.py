"""Numbers in the line-by-line mode: said, changed after it was said what that changes, and refused."""

from pathlib import Path

from finishing_tui.garment.commands import Replan
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.numbers import named, number_lines, renumbering
from tests.plain.making import Twin, crew, events, talked


def test_a_number_is_changed_by_lines_as_by_a_command(tmp_path: Path) -> None:
    """The journal of the lines is that of the command; before it is taken nothing is done, and it can be taken back."""
    twin = Twin(crew(tmp_path / "twin"))
    plan = twin.hand.state.plan
    line = named(number_lines(plan.recipe, plan.size, plan.own), "front_rows")
    twin.does(renumbering(twin.hand.state, line, 28).command, "numbers front_rows 28", "2")
    twin.puts_down("")
    told = talked(crew(tmp_path / "lines"), "numbers front_rows 30", "1", *twin.lines)
    assert any(line.endswith("front neck, from the held stitches to the shoulder join: 30, was 24.") for line in told)
    assert [one for one in events(tmp_path / "lines") if one[0] == Replan.__name__ or "Replanned" in one[0]] == [
        one for one in events(tmp_path / "twin") if "Replanned" in one[0]
    ]
    hand = InHand.open(tmp_path / "lines", look=True)
    assert dict(hand.state.plan.own) == {"front_rows": 28}
    hand.close()


def test_numbers_are_said_and_nonsense_does_nothing(tmp_path: Path) -> None:
    """All with what they are; a word, a number out of range, a name that is none: told, nothing done."""
    told = talked(
        crew(tmp_path / "x"),
        *(
            "numbers",
            "escape",
            "numbers front_rows",
            "numbers front_rows 3",
            "numbers front_rows many",
            "numbers fronts 3",
        ),
        *("numbers front_rows recipe", "q", ""),
    )
    text = " ".join(line.strip() for line in told)
    assert "band, stitches of the neckband: 76." in text
    assert "12 to 80." in text.casefold()
    assert "3 is too few" in text
    assert "'many' is not a whole number" in text
    assert "no number 'fronts'" in text
    assert "already 24" in text
    hand = InHand.open(tmp_path / "x", look=True)
    assert not hand.state.plan.own
    assert not hand.state.top
    hand.close()
