"""Which printed number an error comes from: each correction does what it says, and the right one comes first."""

import sys
from collections import Counter
from itertools import islice
from typing import Any

import pytest
from hypothesis import given, settings

from finishing_tui import shipped
from finishing_tui.recipe.audit import Finding, audit
from finishing_tui.recipe.audit.auditing import errors_in
from finishing_tui.recipe.audit.corrections import Corrections
from finishing_tui.recipe.audit.tally import Tally
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_recipe
from tests.examples import share
from tests.recipe.audit.correcting import Corrected, corrected, errors_after, misprints
from tests.recipe.audit.writing import NECK, changed, recipe_of
from tests.seed import seed_of_commit
from tests.strategies import model_of, recipes

SHARE = 120
"""One misprint in so many is tried in CI, beginning with another one at every commit."""


def same(error: Finding) -> tuple[Any, ...]:
    """Return what an error is known again by."""
    return error.kind, error.where, error.size


@given(table=recipes())
@settings(max_examples=share(8))
def test_a_correction_mends_its_error_and_makes_none(table: dict[str, Any]) -> None:
    """Made in the recipe, it removes the error it is for, and there are fewer errors in all, by as many as it says."""
    recipe = model_of(Recipe, table)
    errors = [one for one in audit(recipe).findings if one.level == "error"]
    if errors:
        size = recipe.sizes.index(errors[0].size)
        mine = [one for one in errors if one.size == errors[0].size]
        for one in Corrections(recipe, errors_in, Tally()).of(mine[0], size, mine)[:3]:
            after = errors_after(recipe, one)
            assert len(after) < len(errors)
            assert not [left for left in after if same(left) == same(mine[0])]
            if one.size is not None:
                assert len([left for left in after if left.size == mine[0].size]) == one.left
            assert one.now >= 0 or one.was < 0


CASES = {
    "a number": ([("[98, 104, 108]", "[98, 106, 108]")], "print 104; held 18, not 16; or side 25, not 24"),
    "a sum that is printed": (
        [("[22, 24, 24]", "[22, 34, 24]")],
        "side 24, not 34; or back 20, not 40; else print 124",
    ),
    "a step": (
        [("rounds  = 7", "rounds  = 7\nshaping = [{ round = 8, change = -2 }]")],
        "8 rounds, not 7; or round 7, not 8",
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_corrections_in_words(case: str) -> None:
    """The likeliest comes first, in the words of an editor."""
    changes, wanted = CASES[case]
    said = next(one for one in audit(changed(*changes)).findings if one.level == "error")
    assert said.suggestion.startswith(wanted)


def test_a_correction_is_told_apart_by_its_section() -> None:
    """Two sides that mirror each other are corrected together, and said so; others are named."""
    both = "stitches = [22, 24, 24]"
    recipe = recipe_of(
        NECK.replace('stitches = "side"', both).replace('{ neck = "band" }', "{ neck = [94, 100, 104] }")
    )
    (said, *_) = (one.suggestion for one in audit(recipe).findings if one.kind == "printed count")
    assert "20 on each side (" in said
    assert " and " in said


def test_a_recipe_without_errors_is_audited_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is tried where there is nothing to put right."""
    monkeypatch.delattr(Corrections, "put_right")
    assert audit(recipe_of(NECK)).ok


def tried(name: str, every: int) -> list[Corrected]:
    """Return how one misprint in so many of a recipe is corrected, of those that make an error."""
    recipe = read_recipe(shipped.recipe(name))
    some = islice(misprints(recipe), seed_of_commit() % every, None, every)
    return [one for mutant in some if (one := corrected(mutant))]


@pytest.mark.parametrize("name", shipped.recipes())
def test_the_misprint_is_among_the_corrections(name: str) -> None:
    """A printed number off by 1 or 10 in one size: there are corrections, and the right figure is one of three."""
    found = tried(name, SHARE)
    assert sum(one.rank is not None and one.rank < 3 for one in found) >= len(found) - 1


@pytest.mark.long
def test_the_right_figure_comes_first() -> None:
    """Of all misprints in all recipes that come with it: first in 70 of 100, and among the first three in 95."""
    total = Counter[str]()
    for name in shipped.recipes():
        found = tried(name, 1)
        count = Counter({"tried": len(found)})
        count["first"] = sum(one.rank == 0 for one in found)
        count["in three"] = sum(one.rank is not None and one.rank < 3 for one in found)
        total += count
        sys.stdout.write(f"{name}: {count['first']} first, {count['in three']} in three, of {count['tried']}\n")
        for one in found:
            if one.rank is None or one.rank > 2:
                sys.stdout.write(f"  {one.mutant.name}: {one.error.kind}, {one.rank}\n")
    sys.stdout.write(f"all: {total['first']} first, {total['in three']} in three, of {total['tried']}\n")
    assert total["first"] >= 0.7 * total["tried"]
    assert total["in three"] >= 0.95 * total["tried"]
