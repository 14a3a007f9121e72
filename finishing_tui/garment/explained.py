"""Guessing at a difference: the steps or numbers of the recipe that are just as large.

It is only ever a guess, said as one: 16 too many where a recipe has 8 a side looks like a part that was left out.
"""

from collections.abc import Iterator

from finishing_tui.craft.words import plural
from finishing_tui.garment.state import State

MOST_GUESSES = 2
"""More guesses than this help nobody."""
SMALLEST = 3
"""Differences below this are as large as too many numbers to mean anything."""


def explained(state: State, difference: int) -> tuple[str, ...]:
    """Return guesses at a count ``difference`` stitches above (or, negative, below) what was known, likeliest first."""
    size = abs(difference)
    if size < SMALLEST:
        return ()
    whole = [f"{size} is {text}" for count, text in _parts(state) if count == size]
    halves = [
        f"{size} is twice {plural(count, 'stitch')}: {text}" for count, text in _parts(state) if 2 * count == size
    ]
    did = "left out" if difference > 0 else "worked twice"
    guesses = list(dict.fromkeys((*whole, *halves)))[:MOST_GUESSES]
    return tuple(f"A guess: {guess}; was that {did}?" for guess in guesses)


def _parts(state: State) -> Iterator[tuple[int, str]]:
    """Yield (stitches, what they are) for everything in the plan that has a size of its own."""
    numbers = state.plan.numbers()
    for name, number in state.plan.recipe.number.items():
        yield numbers[name], number.text
    for index, standing in enumerate(state.steps):
        title = state.plan.step(index).title
        for stage in standing.work.stages if standing.work else ():
            if stage.unit in {"stitch", "spot"} and stage.target:
                yield stage.target, f"step {index + 1}, {title}" + (f", {stage.title}" if stage.title else "")
