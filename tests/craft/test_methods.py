import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.methods import METHODS, for_left_hand, method
from tests.craft.row_reader import EATS_AND_LEAVES


def test_every_method_eats_and_leaves_what_hands_know() -> None:
    """The table agrees with one written down apart from it (common practice, no source)."""
    assert {name: (way.eats, way.leaves) for name, way in METHODS.items()} == EATS_AND_LEAVES


def test_the_left_hand_swaps_and_swaps_back() -> None:
    """Swapping twice changes nothing, never changes a count, and k2tog and ssk change places."""
    for way in METHODS.values():
        other = for_left_hand(way)
        assert for_left_hand(other) == way
        assert (other.eats, other.leaves, other.ground) == (way.eats, way.leaves, way.ground)
    assert for_left_hand(METHODS["k2tog"]) == METHODS["ssk"]
    assert for_left_hand(METHODS["kfb"]) == METHODS["kfb"]


def test_doubling_does_twice_as_much() -> None:
    """A doubled method changes the count by twice as much in one place, on the same ground."""
    for way in METHODS.values():
        if way.doubled:
            assert METHODS[way.doubled].change == 2 * way.change
            assert METHODS[way.doubled].ground == way.ground


@pytest.mark.parametrize(
    ("typed", "name"), [("K2 tog", "k2tog"), ("m1l", "M1L"), ("Yarn over", "yo"), ("SSK", "ssk"), ("cdd", "cdd")]
)
def test_methods_are_read_as_people_write_them(typed: str, name: str) -> None:
    """Spaces and capitals do not matter."""
    assert method(typed).name == name


def test_an_unknown_method_names_near_ones() -> None:
    """A slip of the finger is answered with what was probably meant."""
    with pytest.raises(Impossible, match="k2tog"):
        method("k2to")


@given(st.text(max_size=200))
def test_any_text_is_a_method_or_refused_in_one_sentence(typed: str) -> None:
    """Nothing typed brings anything but an answer or a sentence."""
    try:
        found = method(typed).name
    except Impossible as error:
        found = str(error)
    assert found in METHODS or (found.startswith("no way of shaping") and len(found) < 300)
