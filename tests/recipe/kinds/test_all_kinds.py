"""What holds for every kind of step, whatever it is asked to do; ``tests/recipe/test_stage.py`` proves its postings."""

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.garment.stored import decode, encode
from finishing_tui.recipe.annotations import fields_of
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.cast_on import CastOn
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.seam import Seam, Side
from finishing_tui.recipe.kinds.sew_on import SewOn
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.kinds.work import Work
from finishing_tui.recipe.stage import Stage
from tests.examples import share
from tests.recipe.kinds.beginning import here as beginning
from tests.recipe.kinds.beginning import stages_or_refusal
from tests.strategies import heres, model_of, steps


@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(18))
@given(data=st.data(), here=heres())
def test_a_step_is_refused_in_a_sentence_or_said_in_one(do: str, data: st.DataObject, here: Here) -> None:
    """A refusal is one plain sentence on one line; else every stage has words, for each unit where they differ."""
    found = stages_or_refusal(model_of(KINDS[do], data.draw(steps(do))), here)
    if isinstance(found, str):
        assert found.strip()
        assert found.isprintable()
        return
    for stage in found:
        assert stage.words or all(item.text for item in stage.items)
        assert all(moves.said and 1 <= moves.first <= stage.units for moves in stage.moves)
        assert not stage.bars or all(len(taken) == stage.units for taken in stage.bars)
        assert decode(Stage, json.loads(json.dumps(encode(stage)))) == stage


@pytest.mark.parametrize("kind", [*KINDS.values(), Side, ShortRows], ids=lambda kind: kind.__name__)
def test_every_key_is_explained(kind: type) -> None:
    """The text under each field is what the schema, the guide and the refusals tell of it."""
    told = field_texts(kind)
    assert [key for key in fields_of(kind) if key != "do" and not told.get(key)] == []


ABSURD = 100_000
"""The largest count there is."""


@pytest.mark.parametrize(
    "step",
    [
        CastOn(title="T", onto="neck", count=ABSURD),
        Graft(title="T", front="neck", back="body", tail="end"),
        Seam(title="T", sides=(Side(spots=ABSURD), Side(spots=ABSURD)), tail="end"),
        Seam(title="T", sides=(Side(spots=2_000), Side(spots=1_001)), tail="end"),
        Seam(title="T", sides=(Side(spots=ABSURD, unit="stitch"), Side(spots=40_000)), tail="end"),
        Work(title="T", on="neck", rows=ABSURD, short_rows=ShortRows(first=1, step=1, times=49_999)),
        Work(title="T", on="neck", rows=ABSURD, short_rows=ShortRows(first=ABSURD, step=ABSURD, times=500)),
        Shape(title="T", on="neck", to=60_000),
        Shape(title="T", on="neck", to=99_000),
        Buttonholes(title="T", on="neck", holes=ABSURD, first=1),
        Buttonholes(title="T", on="neck", holes=1_000, first=1, between=ABSURD),
        SewOn(title="T", what="button", count=ABSURD),
    ],
    ids=lambda step: f"{step.do}",
)
def test_an_absurd_number_makes_no_absurd_stage(step: Step) -> None:
    """It is refused with the number, or what it makes stays small enough to store and to show at once."""
    start = beginning({"neck": ABSURD, "body": ABSURD}, ["end"])
    found = stages_or_refusal(step, start)
    if isinstance(found, str):
        assert any(char.isdigit() for char in found), "the number is named"
        return
    for stage in found:
        assert len(stage.items) + len(stage.said) <= 2_000
        assert sum(len(taken) for taken in stage.bars) <= 4_000


@pytest.mark.parametrize("kind", KINDS.values())
def test_the_main_place_of_a_kind_is_one_of_its_keys(kind: Any) -> None:
    """A kind that names it names a field with a place, and the place of a step is what stands there."""
    found = {field.attribute: field for field in fields_of(kind).values()}
    assert not kind.main or found[kind.main].annotation.marks == ("place",)
