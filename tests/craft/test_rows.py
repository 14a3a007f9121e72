from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.rows import plain, told
from tests.craft.row_reader import words_of

PHRASES = st.lists(st.sampled_from(["k2, k2tog", "k1, k2tog", "k2tog", "k3"]), min_size=1, max_size=60)


@given(PHRASES)
def test_nothing_is_lost_or_added_by_saying_it_short(phrases: list[str]) -> None:
    """Written out again, a told row is the very row that was laid out."""
    assert words_of(told(phrases)) == [word for phrase in phrases for word in phrase.split(", ")]


@given(PHRASES, st.integers(2, 50))
def test_a_repeated_row_is_not_said_longer(phrases: list[str], count: int) -> None:
    """One phrase done many times is one repeat."""
    assert told([phrases[0]] * count).count(",") == phrases[0].count(",")


@given(PHRASES)
def test_brackets_nest_once_at_most(phrases: list[str]) -> None:
    """A repeat within a repeat is the deepest: round brackets in square ones."""
    depth = deepest = 0
    for sign in told(phrases):
        depth += (sign in "([") - (sign in ")]")
        deepest = max(deepest, depth)
    assert deepest <= 2


def test_no_plain_stitches_have_no_word() -> None:
    """A gap of none is passed over in silence."""
    assert plain(0) == []
    assert plain(4, "p") == ["p4"]
