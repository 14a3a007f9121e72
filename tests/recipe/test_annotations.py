"""The one walk over types: what is in a file and what the model makes of it are walked alike, and order is kept."""

from typing import Literal

from hypothesis import given

from finishing_tui.recipe.annotations import annotation, fields_of, models, walk
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.model import Recipe
from finishing_tui.settings.model import Settings
from tests.strategies import model_of, recipes


@given(recipes())
def test_a_file_and_its_values_are_walked_alike(data: dict[str, object]) -> None:
    """Every table, count and name in the plain table is met at the same place of the values of the model."""
    in_file = {(seen.path, str(seen.mark)) for seen in walk(Recipe, data)}
    in_model = {(seen.path, str(seen.mark)) for seen in walk(Recipe, model_of(Recipe, data))}
    assert in_file <= in_model


def test_what_is_written_first_is_said_first() -> None:
    """Two literals are equal to Python whatever their order, and yet each keeps its own; so do unions."""
    assert annotation(Literal["a", "b"]).literals == ("a", "b")
    assert annotation(Literal["b", "a"]).literals == ("b", "a")
    assert [arm.bare for arm in annotation(int | str).arms] == [int, str]
    assert [arm.bare for arm in annotation(str | int | None).arms] == [str, int]


def test_every_class_of_the_model_is_found_once() -> None:
    """The recipe first, then all that stands in it, every kind of step among it; and each field has its text."""
    found = list(models(Recipe))
    assert found[0] is Recipe
    assert len(found) == len(set(found))
    assert set(KINDS.values()) < set(found)
    for cls in (*found, Settings):
        assert set(fields_of(cls)) <= set(field_texts(cls))
