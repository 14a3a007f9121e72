"""The numbers of a recipe for one size: printed ones, the knitter's own, and sums of these.

A number that the knitter gave replaces the printed one; a number with no printed value is worked out from its sum.
Whether a printed value agrees with its sum is the audit's question, not asked here.
"""

from collections.abc import Mapping, Sequence
from graphlib import CycleError, TopologicalSorter

from finishing_tui.recipe.counts import NoNumber, in_range
from finishing_tui.recipe.model import Number, Recipe
from finishing_tui.recipe.sums import names_in, work_out

NOT_COUNTED = -999_999
"""Among a knitter's own numbers: how many there are of this nobody counted. As a count there is no such number."""


def size_index(recipe: Recipe, size: str) -> int:
    """Return the position of ``size`` among the recipe's sizes; raises ``NoNumber`` naming those there are."""
    if size not in recipe.sizes:
        raise NoNumber(f"{recipe.title} has no size {size!r}; its sizes are {', '.join(recipe.sizes)}")
    return recipe.sizes.index(size)


def unprinted_in(recipe: Recipe) -> tuple[str, ...]:
    """Return the names of the numbers that have neither printed values nor a sum: the audit solves for them."""
    return tuple(name for name, number in recipe.number.items() if number.by_size is None and not number.is_)


def none_in(recipe: Recipe, live: Mapping[str, int]) -> frozenset[str]:
    """Return the places printed to hold nothing in a size where others hold some: a number by size comes to 0 there.

    ``live``: what every place holds before the first step, in this size.
    """
    return frozenset(name for name, place in recipe.place.items() if not isinstance(place.live, int) and not live[name])


def numbers_for(recipe: Recipe, size: int, own: Mapping[str, int] | None = None) -> dict[str, int]:
    """Return every number of ``recipe`` for the size at index ``size``; ``own`` are the knitter's, by name.

    Numbers the knitter changed are carried into sums: where a printed value rests on a sum and one of the numbers in
    it differs from print, the sum counts. A number with neither printed values nor a sum must be among ``own``; giving
    it changes nothing that is printed. One that nobody counted is as printed; where it is not, it is 0 and nothing may
    rest on it. Raises ``NoNumber`` or ``BadSum`` when one cannot be worked out.
    """
    own = own or {}
    known: dict[str, int] = {}
    changed: set[str] = set()
    unprinted = unprinted_in(recipe)
    for name in _in_order(recipe.number):
        number = recipe.number[name]
        if own.get(name) == NOT_COUNTED and name in unprinted:
            known[name] = 0
            continue
        if own.get(name, NOT_COUNTED) != NOT_COUNTED:
            known[name] = own[name]
            if own[name] != printed_in(number, size) and name not in unprinted:
                changed.add(name)
            continue
        printed = printed_in(number, size)
        follows = bool(number.is_) and not changed.isdisjoint(names_in(number.is_))
        if printed is None or follows:
            if not number.is_:
                raise NoNumber(
                    f"the number {name!r} is not printed; count it, or find out what it must be by the audit"
                )
            known[name] = in_range(work_out(number.is_, known), name)
            if follows:
                changed.add(name)
        else:
            known[name] = printed
    return {name: known[name] for name in recipe.number}


def printed_in(number: Number, size: int) -> int | None:
    """Return the value that is printed for the size at index ``size``; None where none is."""
    if number.by_size is None or isinstance(number.by_size, int):
        return number.by_size
    return number.by_size[size] if size < len(number.by_size) else None


def circle_in(follows: Mapping[str, Sequence[str]]) -> list[str]:
    """Return names each of which names the next in ``follows``, the first one again at the end; empty if none do.

    It begins with the one of them that ``follows`` has first.
    """
    try:
        TopologicalSorter(follows).prepare()
    except CycleError as error:
        names = error.args[1][:0:-1]
        first = names.index(next(name for name in follows if name in names))
        return [*names[first:], *names[: first + 1]]
    return []


def _in_order(numbers: Mapping[str, Number]) -> list[str]:
    """Return the names so that every sum comes after what it names; raises ``NoNumber`` when sums go in a circle."""
    follows = {name: _named(numbers, name) for name in numbers}
    try:
        return [*TopologicalSorter(follows).static_order()]
    except CycleError:
        circle = circle_in(follows)
        raise NoNumber(f"the number {circle[0]!r} is worked out from itself: {' → '.join(circle)}") from None


def _named(numbers: Mapping[str, Number], name: str) -> list[str]:
    return [other for other in names_in(numbers[name].is_) if other in numbers] if numbers[name].is_ else []
