"""From one size to the next: a count that falls, or jumps to three times its neighbour, is doubtful.

The same number in two sizes is usual, and none of something in a size is no fall.
"""

from collections.abc import Iterator

from finishing_tui.recipe.audit.finding import Finding, Where
from finishing_tui.recipe.audit.printing import printed_counts
from finishing_tui.recipe.model import Recipe

_JUMP = 3
"""A count this many times its neighbour's has jumped."""

_SMALL = 6
"""Differences below this are never a jump: 1 loop and 3 loops are both few."""


def falls_and_jumps(recipe: Recipe) -> Iterator[Finding]:
    """Yield a warning for every printed list that falls or jumps, at the size where it does."""
    for where, count in printed_counts(recipe):
        if isinstance(count, tuple):
            yield from _of(recipe, where, count)


def _of(recipe: Recipe, where: Where, counts: tuple[int, ...]) -> Iterator[Finding]:
    before: tuple[int, int] | None = None
    for size, count in enumerate(counts[: len(recipe.sizes)]):
        if not count:
            continue
        if before is not None:
            last, value = before
            fell = count < value
            jumped = count >= _JUMP * value and count - value >= _SMALL
            if fell or jumped:
                name, other = recipe.sizes[size], recipe.sizes[last]
                yield Finding(
                    level="warning",
                    kind="from size to size",
                    message=f"{_called(recipe, where)} {'falls' if fell else 'jumps'} from {value} in size {other} "
                    f"to {count} in size {name}",
                    where=(*where, size),
                    size=name,
                    step=_step(where),
                    expected=value,
                    found=count,
                    suggestion=f"{', '.join(str(each) for each in counts)}: look at sizes {other} and {name} again",
                )
        before = (size, count)


def _called(recipe: Recipe, where: Where) -> str:
    """Return what a count is called: a number, what a place holds, what is printed of a place, or its key."""
    match where:
        case ("number", str(name), _):
            return f"the number {name} ({recipe.number[name].text})"
        case ("place", str(name), _):
            return f"what the {recipe.place[name].text} holds"
        case (*_, "expect", str(name)):
            return f"the count printed of the {recipe.place[name].text}"
        case _:
            return f"the count of {where[-1]!r}"


def _step(where: Where) -> int | None:
    return where[1] if where[0] == "step" and isinstance(where[1], int) else None
