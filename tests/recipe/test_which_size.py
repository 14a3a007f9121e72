import pytest

from finishing_tui import shipped
from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import numbers_for
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.recipe.which_size import which_size

RECIPE = read_recipe(shipped.recipe("crew-neck"))


def held_in(recipe: Recipe, index: int) -> dict[str, int]:
    """Return what every place holds in a size."""
    numbers = numbers_for(recipe, index)
    return {name: count_of(place.live, numbers, index) for name, place in recipe.place.items() if place.live}


@pytest.mark.parametrize("index", range(len(RECIPE.sizes)))
def test_a_garment_tells_its_own_size(index: int) -> None:
    """From everything its pieces hold, the size it was knitted in comes first and fits exactly."""
    first, *others = which_size(RECIPE, held_in(RECIPE, index))
    assert (first.size, first.far) == (RECIPE.sizes[index], 0)
    assert all(other.far for other in others)


def test_one_stitch_missing_still_tells_the_size() -> None:
    """With one stitch gone from a holder the size is the nearest, and says where it differs."""
    held = held_in(RECIPE, 5) | {"front_held": 15}
    first = which_size(RECIPE, held)[0]
    assert (first.size, first.off) == ("M", {"front_held": (15, 16)})


def test_a_place_there_is_not() -> None:
    """It is refused, with the places there are."""
    with pytest.raises(FinishingError, match="its places are left_front"):
        which_size(RECIPE, {"cuff": 3})
