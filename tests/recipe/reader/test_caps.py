"""How much a recipe may have: one more than that is refused when it is read, on the line of the first too many."""

import dataclasses
from collections.abc import Callable
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.recipe.numbers import unprinted_in
from finishing_tui.recipe.reader import BadRecipe, caps, read_recipe, read_text

PUBLISHED = sorted((Path(__file__).parents[2] / "published" / "recipes").rglob("*.toml"))
HEAD = 'format = 1\ntitle = "x"\nsizes = ["one"]\n[place.neck]\ntext = "neck"\nkind = "pin"\n'
STEP = '[[step]]\ndo = "cast on"\ntitle = "Cast on"\nonto = "neck"\ncount = 1\n'


def steps(many: int) -> str:
    """Return a recipe of so many steps."""
    return HEAD + STEP * many


def sizes(many: int) -> str:
    """Return a recipe in so many sizes, a line each."""
    names = "".join(f'"{n}",\n' for n in range(many))
    return HEAD.replace('"one"', f"\n{names}") + STEP


def numbers(many: int) -> str:
    """Return a recipe with so many numbers."""
    return HEAD + "".join(f'[number.n{n}]\ntext = "n"\nby_size = 1\n' for n in range(many)) + STEP


def places(many: int) -> str:
    """Return a recipe with so many places besides the first."""
    return HEAD + "".join(f'[place.p{n}]\ntext = "p"\nkind = "pin"\n' for n in range(many - 1)) + STEP


def unprinted(many: int) -> str:
    """Return a recipe with so many numbers that are not printed."""
    return HEAD + "".join(f'[number.n{n}]\ntext = "n"\n' for n in range(many)) + STEP


def sections(many: int) -> str:
    """Return a recipe that walks so many sections in one step."""
    walked = "".join(f'[[step.section]]\nalong = "edge {n}"\nspots = 1\n' for n in range(many))
    return f'{HEAD}[[step]]\ndo = "pick up and knit"\ntitle = "Pick up"\nonto = "neck"\n{walked}'


def things(many: int) -> str:
    """Return a recipe with a list of so many things to check, a line each."""
    items = "".join('"all of it",\n' for _ in range(many))
    return f'{HEAD}[[step]]\ndo = "check"\ntitle = "Check"\nitems = [\n{items}]\n'


def tails(many: int) -> str:
    """Return a recipe with so many tails, a line each."""
    names = "".join(f'"t{n}",\n' for n in range(many))
    return HEAD.replace("[place", f"tails = [\n{names}]\n[place") + STEP


def shapings(many: int) -> str:
    """Return a recipe with so many shapings in one step."""
    shaped = "".join(f"[[step.shaping]]\nchange = 1\nround = {n + 1}\n" for n in range(many))
    return f'{HEAD}[[step]]\ndo = "work"\ntitle = "Work"\non = "neck"\nrounds = 999\n{shaped}'


def sums(many: int) -> str:
    """Return a recipe with a sum of so many characters."""
    return STEP.join((HEAD, "")).replace("count = 1", f'count = "{"1+" * (many // 2 - 1)}11"')


# what makes a recipe, how much it may have, the line of the first, how many lines each takes, the key, what is said
CAPS = [
    (steps, caps.MOST_STEPS, 7, 5, "step 501", "there are 501 steps; up to 500 can be audited"),
    (sizes, caps.MOST_SIZES, 4, 1, "sizes 101", "there are 101 sizes; up to 100 can be audited"),
    (numbers, caps.MOST_NUMBERS, 7, 3, "number.n200", "there are 201 numbers; up to 200 can be audited"),
    (places, caps.MOST_PLACES, 4, 3, "place.p99", "there are 101 places; up to 100 can be audited"),
    (unprinted, caps.MOST_UNPRINTED, 7, 2, "number.n10", "11 numbers have neither 'by_size' nor 'is'; up to 10"),
    (sections, caps.MOST_IN_LIST, 11, 3, "step 1.section 101", "there are 101 entries in this list; up to 100"),
    (things, caps.MOST_IN_LIST, 11, 1, "step 1.items 101", "there are 101 entries in this list; up to 100"),
    (tails, caps.MOST_IN_LIST, 5, 1, "tails 101", "there are 101 entries in this list; up to 100"),
    (shapings, caps.MOST_IN_LIST, 12, 3, "step 1.shaping 101", "there are 101 entries in this list; up to 100"),
    (sums, caps.MOST_IN_SUM, 11, 0, "step 1.count", "this sum has 202 characters, 200 is the most"),
]


@pytest.mark.parametrize(("made", "most", "first", "each", "key", "said"), CAPS, ids=[cap[0].__name__ for cap in CAPS])
def test_one_more_than_there_may_be(
    made: Callable[[int], str], most: int, first: int, each: int, key: str, said: str
) -> None:
    """As many as there may be are read; one more is one sentence, with the line on which that one stands."""
    read_text(made(most), "x.toml")
    with pytest.raises(BadRecipe) as caught:
        read_text(made(most + 1 + (made is sums)), "x.toml")
    (problem,) = caught.value.problems
    assert problem.message.startswith(said)
    assert (problem.line, problem.key) == (first + most * each, key)


@pytest.mark.parametrize("path", [*shipped.recipes().values(), *PUBLISHED], ids=lambda path: path.stem)
def test_recipes_that_are_shipped_or_published_are_far_inside(path: Path) -> None:
    """They have a fifth of what they may, at most."""
    recipe = read_recipe(path)
    values = [getattr(step, field.name) for step in recipe.step for field in dataclasses.fields(step)]
    lists = [len(value) for value in values if isinstance(value, tuple)]
    assert 5 * len(recipe.step) <= caps.MOST_STEPS
    assert 5 * len(recipe.sizes) <= caps.MOST_SIZES
    assert 5 * len(recipe.number) <= caps.MOST_NUMBERS
    assert 5 * len(recipe.place) <= caps.MOST_PLACES
    assert 5 * len(unprinted_in(recipe)) <= caps.MOST_UNPRINTED
    assert 5 * max((*lists, len(recipe.tails))) <= caps.MOST_IN_LIST
    assert 2 * max([0, *(len(number.is_) for number in recipe.number.values())]) <= caps.MOST_IN_SUM
