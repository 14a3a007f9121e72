"""Any one printed number changed by one, in any size: the audit finds it wherever something else depends on it."""

import sys
from itertools import islice
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.recipe.reader import read_recipe
from tests.recipe.audit.mutation import findings_in, mutants, offs, summed
from tests.seed import seed_of_commit

PUBLISHED = Path(__file__).parents[2] / "published" / "recipes"
FILES = {**shipped.recipes(), **{f"published {path.stem}": path for path in sorted(PUBLISHED.glob("*.toml"))}}


SHARE = 32
"""One change in so many is made in CI, beginning with another one at every commit."""


@pytest.mark.parametrize("every", [SHARE, pytest.param(1, marks=pytest.mark.long)])
@pytest.mark.parametrize("name", FILES)
def test_every_changed_number_that_matters_is_found(name: str, every: int) -> None:
    """A number that a printed sum or count hangs on is found, changed by one either way; the others are listed."""
    recipe = read_recipe(FILES[name])
    every_size = tuple(range(len(recipe.sizes)))
    base = findings_in(recipe, every_size)
    right = {size: offs(recipe, size) for size in every_size}
    must = summed(recipe)
    matters, found, free = 0, 0, list[str]()
    for mutant in islice(mutants(recipe), seed_of_commit() % every, None, every):
        sizes = (
            every_size if mutant.size is None else every_size[mutant.size : mutant.size + 2]
        )  # a fall shows in the next one
        new = any(findings_in(mutant.recipe, (size,)) - base for size in sizes)
        depends = any(
            offs(mutant.recipe, size) != right[size] for size in sizes[: 1 if mutant.size is not None else None]
        )
        if mutant.where[0] == "number" and mutant.where[1] in must:
            assert depends, f"{mutant.name}: a printed sum hangs on it"
        if depends:
            matters += 1
            found += new
            assert new, f"{mutant.name} was not found, and a printed count hangs on it"
        elif not new:
            free.append(mutant.name)
    assert matters or every > 1, "something in every recipe is printed twice or adds up"
    sys.stdout.write(f"{name}: {found} of {matters} found\n")
    sys.stdout.write(f"  nothing depends on {len(free)}: {'; '.join(free)}\n")
