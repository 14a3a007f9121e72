"""No TOML value of a wrong type is ever ignored: at every key of every file, each is refused, on the key's own line."""

import re
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.recipe.annotations import fields_of
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.kinds.arrange import Arrange
from finishing_tui.recipe.kinds.base import RepeatOf
from finishing_tui.recipe.kinds.seam import Side
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.model import BandGauge, Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.reader import BadRecipe, read_text
from finishing_tui.recipe.reader.techniques import read_technique_text
from finishing_tui.recipe.techniques import HelpsAt, Technique
from tests.examples import share
from tests.recipe.reader.wrong_types import Key, Steps, keys_of, line_changed, with_key, written, wrong_for

_SIDES = [{"spots": 10}, {"spots": 10}]
_SECTIONS = [{"along": "front", "spots": 10}, {"from": "pin"}, {"gap": "corner"}]
_SHAPING = [{"change": 1, "round": 1}]
_SHORT_ROWS = {"first": 1, "step": 1, "times": 1}
_VALUES: Mapping[str, Any] = {
    "from": "pin", "to": "neck", "onto": "neck", "on": "neck", "place": "neck",
    "count": 1, "holes": 1, "first": 1, "section": _SECTIONS, "sides": _SIDES,
}  # fmt: skip
"""For keys that must be there: values in a recipe that has the places ``neck`` and ``pin``."""
_BESIDES: Mapping[str, Mapping[str, Any]] = {
    "join": {"near": "pin", "far": "neck"},
    "graft": {"near": "pin", "far": "neck"},
    "work": {"rounds": 4, "shaping": _SHAPING, "short_rows": _SHORT_ROWS},
    "shape": {"to": 5},
    "block": {"to": "size"},
    "check": {"items": ["all of it"]},
    "measure": {"value": "4 in"},
}


def _step(do: str) -> dict[str, Any]:
    """Return a step of the kind ``do`` with a ``repeat`` and the keys that it must have."""
    kind: type = KINDS[do]
    needed = {key: _VALUES.get(key, "a name") for key, field in fields_of(kind).items() if not field.optional}
    return {"do": do, **needed, **_BESIDES.get(do, {}), "repeat": {"of": 1}}


RECIPE: dict[str, Any] = {
    "format": 2,
    "title": "Any",
    "sizes": ["one"],
    "gauge": {"stitches": 20, "rows": 28, "band": {"stitches": 22, "rows": 30}},
    "number": {"side": {"text": "side", "by_size": [4]}},
    "place": {"neck": {"text": "neck", "kind": "needle"}, "pin": {"text": "pin", "kind": "pin"}},
    "step": [_step(do) for do in KINDS],
}
TECHNIQUE: dict[str, Any] = {
    "format": 1,
    "title": "Any",
    "about": "What for",
    "order": 1,
    "moves": ["Knit."],
    "look": "Even",
    "mend": "Rip back",
    "drawing": "x",
    "shows": "a stitch",
    "helps": [{"do": "join"}],
}
_AT = {do: place for place, do in enumerate(KINDS)}
WHERE: Mapping[type, Steps] = {
    Recipe: (),
    RecipeGauge: ("gauge",),
    BandGauge: ("gauge", "band"),
    Number: ("number", "side"),
    Place: ("place", "neck"),
    RepeatOf: ("step", 0, "repeat"),
    Along: ("step", _AT["pick up and knit"], "section", 0),
    Held: ("step", _AT["pick up and knit"], "section", 1),
    Gap: ("step", _AT["pick up and knit"], "section", 2),
    Side: ("step", _AT["seam"], "sides", 0),
    Shaping: ("step", _AT["work"], "shaping", 0),
    ShortRows: ("step", _AT["work"], "short_rows"),
    Technique: (),
    HelpsAt: ("helps", 0),
    **{kind: ("step", _AT[do]) for do, kind in KINDS.items()},
}
"""Where a table of each class of the model stands in the recipe, or in the technique."""
KEYS = keys_of(Recipe, Technique)


def _read(text: str, key: Key) -> None:
    if key.owner in {Technique, HelpsAt}:
        read_technique_text(text, "technique.toml")
    else:
        read_text(text, "recipe.toml")


def _refused(key: Key, wrong: str) -> str:
    """Return why the value ``wrong`` at ``key`` is not refused as it should be; empty where it is."""
    whole = TECHNIQUE if key.owner in {Technique, HelpsAt} else RECIPE
    before = written(whole)
    text = written(with_key(whole, WHERE[key.owner], key.field.key, wrong))
    line = line_changed(before, text)
    try:
        _read(text, key)
    except BadRecipe as error:
        named = [one for one in error.problems if key.field.key in re.split(r"[ .]", one.key)]
        if any(one.line == line for one in named):
            return ""
        return f"{key} = {wrong} on line {line}: {error}"
    return f"{key} = {wrong} is taken"


def test_the_files_that_a_wrong_value_is_put_in_are_right() -> None:
    """So whatever is refused below is refused for the wrong value; and every class of the model is in them."""
    read_text(written(RECIPE), "recipe.toml")
    read_technique_text(written(TECHNIQUE), "technique.toml")
    assert {key.owner for key in KEYS} == set(WHERE)


@pytest.mark.turns(of=16)
@pytest.mark.parametrize("key", [key for key in KEYS if key.declared or key.owner is Arrange], ids=str)
def test_a_value_of_a_wrong_type_is_refused_on_its_line(key: Key) -> None:
    """Whatever the type: a date, a time, a fraction, nan, true for 1, 1 for true, a text, a list, a list of lists."""
    assert not [why for wrong in wrong_for(key) if (why := _refused(key, wrong))]


@given(st.sampled_from(KEYS).flatmap(lambda key: st.tuples(st.just(key), st.sampled_from(wrong_for(key)))))
@settings(max_examples=share(300))
def test_also_at_the_keys_that_every_kind_of_step_has(wrong: tuple[Key, str]) -> None:
    """The keys that all kinds share are refused in each kind."""
    assert not _refused(*wrong)
