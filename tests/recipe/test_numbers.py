"""Counts and numbers of a recipe, worked out for one size, as printed and as on the knitter's own garment."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.recipe.counts import NoNumber, count_of
from finishing_tui.recipe.kinds.block import Block
from finishing_tui.recipe.model import Number, Recipe
from finishing_tui.recipe.numbers import circle_in, numbers_for, size_index


def recipe(**number: Number) -> Recipe:
    """Return a recipe of two sizes with these numbers."""
    return Recipe(format=1, title="r", sizes=("S", "L"), number=number, step=(Block(title="block"),))


def printed(*by_size: int, is_: str = "") -> Number:
    """Return a number as printed."""
    return Number(text="n", by_size=by_size, is_=is_)


def worked(is_: str) -> Number:
    """Return a number that is only a sum."""
    return Number(text="n", is_=is_)


@given(st.integers(0, 99), st.integers(0, 99), st.permutations(("a", "b", "c", "d")), st.integers(0, 1))
def test_a_sum_comes_after_what_it_names_in_any_order(a: int, b: int, order: list[str], size: int) -> None:
    """Numbers are worked out in the order their sums need, whichever way the file lists them."""
    numbers = {"a": printed(a, a + 1), "b": worked("2 * a"), "c": worked("b + a"), "d": printed(b, b)}
    found = numbers_for(recipe(**{name: numbers[name] for name in order}), size)
    assert found == {"a": a + size, "b": 2 * (a + size), "c": 3 * (a + size), "d": b}


@given(st.integers(0, 500), st.integers(0, 1))
def test_what_the_knitter_counted_goes_into_sums(own: int, size: int) -> None:
    """Her own number replaces the printed one, and a printed total that rests on it follows; others stay."""
    made = recipe(side=printed(20, 22), band=printed(44, 48, is_="2 * side + 4"), other=printed(9, 9, is_="3 * 3"))
    found = numbers_for(made, size, {"side": own})
    as_printed = own == (20, 22)[size]
    assert found == {"side": own, "band": (44, 48)[size] if as_printed else 2 * own + 4, "other": 9}


@pytest.mark.parametrize(
    "numbers",
    [{"a": worked("a")}, {"a": worked("b"), "b": worked("a")}, {"x": printed(1, 1), "a": worked("b + x"),
      "b": worked("c"), "c": worked("a")}],
)  # fmt: skip
def test_sums_in_a_circle_are_refused(numbers: dict[str, Number]) -> None:
    """A number that rests on itself, at once or round about, has no value."""
    with pytest.raises(NoNumber, match="is worked out from itself"):
        numbers_for(recipe(**numbers), 0)


def test_a_long_chain_of_sums_does_not_exhaust_the_stack() -> None:
    """Thousands of numbers that rest on each other are worked out in a loop."""
    chain = {f"n{place}": worked(f"n{place + 1}") for place in range(3000)}
    assert numbers_for(recipe(**chain, n3000=printed(7, 7)), 0)["n0"] == 7


def test_sizes_are_found_by_name() -> None:
    """A size has its place; another name is answered with those there are."""
    assert size_index(recipe(), "L") == 1
    with pytest.raises(NoNumber, match="r has no size 'M'; its sizes are S, L"):
        size_index(recipe(), "M")


@pytest.mark.parametrize(("count", "value"), [(7, 7), ("n", 5), ("2 * n - 3", 7), ((3, 4), 4)])
def test_a_count_in_each_of_its_ways(count: int | str | tuple[int, ...], value: int) -> None:
    """A whole number, a name, a sum and a list by size."""
    assert count_of(count, {"n": 5}, 1) == value


@pytest.mark.parametrize(
    ("count", "said"),
    [
        ((3,), "the list [3] has no entry for size number 2"),
        ("n - 9", "n - 9 comes to -4; a count is 0 or more"),
        (-1, "-1 comes to -1; a count is 0 or more"),
        (100_001, "100001 comes to 100,001; a count is 0 to 100,000"),
    ],
)
def test_what_is_no_count_is_told(count: int | str | tuple[int, ...], said: str) -> None:
    """Too short a list, and values no count can have."""
    with pytest.raises(NoNumber) as caught:
        count_of(count, {"n": 5}, 1)
    assert str(caught.value) == said


@given(st.dictionaries(st.sampled_from("abcdef"), st.lists(st.sampled_from("abcdef"), max_size=4)))
def test_a_circle_goes_round(follows: dict[str, list[str]]) -> None:
    """Each name in it names the next, it ends where it begins, and there is none where names can be put in order."""
    circle = circle_in(follows)
    assert all(after in follows[name] for name, after in pairwise(circle))
    assert circle[:1] == circle[-1:]
    assert len(set(circle)) == max(len(circle) - 1, 0)
    placed: set[str] = set()
    for _ in follows:
        placed |= {name for name, named in follows.items() if {other for other in named if other in follows} <= placed}
    assert bool(circle) == (placed != set(follows))


def test_numbers_stand_as_the_file_has_them() -> None:
    """A sum that stands before what it names is worked out later, and still stands first."""
    assert list(numbers_for(recipe(b=worked("a + 1"), a=printed(1, 1)), 0)) == ["b", "a"]
