"""What a count means when the row is not known."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.recount import recount
from finishing_tui.craft.spacing import space
from finishing_tui.craft.unknown_row import CountedAt, place, second_half

TWO_THIRDS = Fraction(2, 3)


@given(st.integers(6, 400))
def test_at_the_half_mark_the_rhythm_kept_tells_the_rows_give_or_take_one(half: int) -> None:
    """Whoever kept 2 of every 3 up to the half mark gets her rows back, to one, and is told that it lies flat."""
    counted = space(max(1, round(half * TWO_THIRDS)), half).up_to(half)
    found = place(2 * counted, None, counted=counted, half=True, rhythm=TWO_THIRDS)
    assert found is not None
    assert abs(found.at - half) <= 1
    assert found.spots == 2 * found.at
    assert not found.sure
    done = recount(2 * counted, found.spots, at=found.at, counted=counted, natural=TWO_THIRDS)
    assert done.verdict is Verdict.LIES_FLAT


def test_every_way_to_say_where_one_is() -> None:
    """Spots known: from the start, from the end, or half; unknown: the rhythm or the fold gives what is missing."""
    assert place(71, 88, counted=33, at=44) == CountedAt(44, 88, sure=True)
    assert place(71, 88, counted=33, left=44) == CountedAt(44, 88, sure=True)
    assert place(71, 88, counted=33, half=True) == CountedAt(44, 88, sure=True)
    assert place(71, 89, counted=33, half=True) == CountedAt(44, 89, sure=True)
    assert place(71, None, counted=33, half=True, at=45) == CountedAt(45, 90, sure=False)
    assert place(71, None, counted=33, half=True, left=45) == CountedAt(45, 90, sure=False)
    assert place(72, None, counted=30, at=45, rhythm=TWO_THIRDS) == CountedAt(45, 108, sure=False)
    assert place(72, None, counted=36, left=50, rhythm=TWO_THIRDS) == CountedAt(54, 104, sure=False)
    assert place(72, None, counted=36, half=True) is None


@pytest.mark.parametrize(
    ("spots", "at", "left", "half", "says"),
    [
        (None, None, None, False, "in one way"),
        (None, 3, 4, False, "in one way"),
        (None, 3, None, False, "the rhythm you kept is needed"),
        (None, None, 3, False, "the rhythm you kept is needed"),
        (20, 21, None, False, "from 0 to 20"),
        (20, None, 21, False, "from 0 to 20"),
        (20, 5, None, True, "not halfway"),
    ],
)
def test_too_little_or_contradicting_is_refused(
    spots: int | None,
    at: int | None,
    left: int | None,
    half: bool,  # noqa: FBT001  (a column of the table above)
    says: str,
) -> None:
    """One sentence that says what is missing or does not fit."""
    with pytest.raises(Impossible, match=says):
        place(24, spots, counted=9, at=at, left=left, half=half)


def test_a_rhythm_of_more_than_two_a_spot_is_refused() -> None:
    """No spot takes more than two loops."""
    with pytest.raises(Impossible, match="at most 2"):
        place(24, None, counted=9, half=True, rhythm=Fraction(5, 2))


def test_the_second_half_is_measured_by_the_first() -> None:
    """Off is the target less twice the count; the words are for hands that know only their own rhythm."""
    more = second_half(75, counted=36)
    assert (more.stitches, more.judgement.off, more.judgement.change) == (39, Fraction(3), Fraction(3, 36))
    assert more.judgement.verdict is Verdict.JUST_SHOWS
    assert "Keep your rhythm, but three times, after about every 12 loops, pick one that you would skip" in more.text
    assert second_half(72, counted=36).judgement.off == 0
    assert "go on as you began" in second_half(72, counted=36).text
    assert "skip one that you would pick" in second_half(71, counted=36).text
    assert second_half(30, counted=36).judgement.verdict is Verdict.CANNOT_BE
    assert "6 too many" in second_half(30, counted=36).text
    assert "increase 18 evenly in the first round" in second_half(90, counted=36).text
    with pytest.raises(Impossible, match="nothing is counted"):
        second_half(30, counted=0)
