"""The codec: whatever the program stores comes back as it was, through JSON, whole and of the same type."""

import json
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Any, Literal, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.codec import LARGEST, LONGEST, Codec, Stored, Unreadable
from finishing_tui.craft.ledger import Entry, Ledger, Posting, TailEntry
from finishing_tui.craft.rhythm import Line, Runs
from finishing_tui.craft.spacing import space
from finishing_tui.garment.events import Event, PutBack, TakenBack
from finishing_tui.garment.labels import MOST_FILLS, Label
from finishing_tui.garment.state import Sitting
from finishing_tui.garment.stored import decode, encode
from finishing_tui.inert import inert
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.model import Number, Recipe
from finishing_tui.recipe.stage import Stage
from tests.examples import share
from tests.strategies import ledgers, model_of, recipes, steps

OF_ACTS = (TakenBack, PutBack)
"""The events that hold other events: drawing one is as slow as drawing many of the others."""


def rhythms(style: Literal["easy", "even"]) -> st.SearchStrategy[Runs | Line]:
    """Return rhythms as spacing makes them: runs in the easy style, a line in the even one."""
    sizes = st.integers(1, 60).flatmap(lambda spots: st.tuples(st.integers(1, spots), st.just(spots)))
    return sizes.map(lambda size: space(*size, style=style))


st.register_type_strategy(str, st.text(st.characters(exclude_categories=["Cc", "Cf", "Cs", "Zl", "Zp"])))
st.register_type_strategy(int, st.integers(-LARGEST, LARGEST))
st.register_type_strategy(Runs, rhythms("easy"))
st.register_type_strategy(Line, rhythms("even"))
st.register_type_strategy(Recipe, recipes().map(lambda table: model_of(Recipe, table)))
st.register_type_strategy(Ledger, ledgers())
st.register_type_strategy(
    Label,
    st.builds(
        Label,
        st.sampled_from(("step-ended", "recounted", "as-said")),
        names=st.lists(st.from_type(str), max_size=2).map(tuple),
        numbers=st.lists(st.integers(-LARGEST, LARGEST), max_size=MOST_FILLS).map(tuple),
        rhythms=st.lists(rhythms("even"), max_size=1).map(tuple),
    ),
)


def there_and_back(wanted: Any, value: Any) -> Any:
    """Store ``value`` as JSON text and read it again."""
    return decode(wanted, json.loads(json.dumps(encode(value))))


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(25))  # a kind
@given(data=st.data())
def test_steps_of_every_kind_come_back(do: str, data: st.DataObject) -> None:
    """A step is stored in the plan with all its fields."""
    step = model_of(KINDS[do], data.draw(steps(do)))
    back = there_and_back(KINDS[do], step)
    assert back == step
    assert type(back) is type(step)


@given(recipes())
def test_whole_recipes_come_back(table: dict[str, Any]) -> None:
    """The recipe as it was taken: every step its own class, found by the union that holds it."""
    recipe = model_of(Recipe, table)
    back = there_and_back(Recipe, recipe)
    assert back == recipe
    assert [type(step) for step in back.step] == [type(step) for step in recipe.step]


@pytest.mark.parametrize("cls", get_args(Entry), ids=lambda cls: cls.__name__)
@given(data=st.data())
def test_entries_come_back(cls: Any, data: st.DataObject) -> None:
    """Each sort of entry is told from the others by its class."""
    entry = data.draw(st.from_type(cls))
    back = there_and_back(Entry, entry)
    assert back == entry
    assert type(back) is cls


@given(st.from_type(Stage))
def test_stages_come_back(stage: Stage) -> None:
    """A stage with its flows, items, rhythm and words."""
    assert there_and_back(Stage, stage) == stage


@given(ledgers())
def test_ledgers_come_back(ledger: Ledger) -> None:
    """A snapshot holds the ledger itself."""
    assert there_and_back(Ledger, ledger) == ledger


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("cls", [cls for cls in get_args(Event) if cls not in OF_ACTS], ids=lambda cls: cls.__name__)
@settings(max_examples=share(10))  # a sort of event; each holds many values
@given(data=st.data())
def test_events_come_back(cls: Any, data: st.DataObject) -> None:
    """Every event that can happen, with everything in it."""
    _comes_back(cls, data.draw(st.from_type(cls)))


@pytest.mark.parametrize("cls", OF_ACTS, ids=lambda cls: cls.__name__)
@settings(max_examples=share(3))  # acts come back above, each kind of its own
@given(data=st.data())
def test_events_that_hold_acts_come_back(cls: Any, data: st.DataObject) -> None:
    """So do those that hold other events whole."""
    _comes_back(cls, data.draw(st.from_type(cls)))


def _comes_back(cls: type, event: Any) -> None:
    back = there_and_back(Event, event)
    assert back == event
    assert type(back) is cls


def test_what_is_stored_names_its_class_and_all_its_fields() -> None:
    """A default that changes later must not change what was stored, so defaults are written too."""
    assert encode(TailEntry("left", "made")) == {"is": "TailEntry", "tail": "left", "did": "made", "used": 0}
    assert encode(MappingProxyType({"a": (1, 2)})) == {"a": [1, 2]}


def test_a_field_that_is_missing_takes_its_default() -> None:
    """That is how a field is added to what old journals hold."""
    assert decode(TailEntry, {"tail": "left", "did": "made"}) == TailEntry("left", "made", 0)


@pytest.mark.parametrize(
    ("wanted", "plain"),
    [
        (Posting, {"source": "a", "to": "b"}),
        (Posting, {"source": "a", "to": "b", "stitches": "3"}),
        (Posting, {"source": "a", "to": "b", "stitches": True}),
        (Posting, {"source": "a", "to": "b", "stitches": 1, "more": 1}),
        (Posting, {"is": "TailEntry", "tail": "left", "did": "made"}),
        (Posting, [1, 2, 3]),
        (TailEntry, {"tail": "left", "did": "eaten"}),
        (Number, {"text": "n", "by_size": ["1"]}),
        (TailEntry, {"tail": "left", "did": ["made"]}),
        (TailEntry, {"tail": "left", "did": {}}),
        (Entry, {"is": "TailEntry", "tail": 3, "did": "made"}),
        (Entry, {"is": "Nothing"}),
        (Entry, None),
        (Runs, {"runs": [{"pick": 3, "of": 1, "times": 1}]}),
        (Line, {"numerator": 9, "denominator": 2, "offset": 0, "spots": 4}),
        (Posting, {"source": "a", "to": "b", "stitches": 2**53 + 1}),
        (Posting, {"source": "a", "to": "b", "stitches": -(10**4000)}),
        (Sitting, {"number": 2**60, "began": ""}),
        (Sitting, {"number": 1, "began": "x" * (LONGEST + 1)}),
        (Line, {"numerator": 0, "denominator": 0, "offset": 0, "spots": 4}),
        (Recipe, {"format": True}),
        (Stage, {"unit": "spot", "units": 3, "title": "a", "act": "b", "flows": {}}),
        (Stage, {"unit": "spot", "units": 3, "title": "a", "act": "b", "said": [[1]]}),
    ],
)
def test_what_does_not_fit_is_refused(wanted: Any, plain: Any) -> None:
    """Missing, unknown and mistyped fields, other classes and other words: ``Unreadable``, and nothing else."""
    with pytest.raises(Unreadable):
        decode(wanted, plain)


@given(st.text())
def test_text_comes_in_inert(text: str) -> None:
    """Whoever wrote a journal, no text or name in it steers a terminal, and a stream can take it."""
    assert decode(str, text) == inert(text)
    assert decode(TailEntry, {"tail": text, "did": "made"}).tail == inert(text)
    assert list(decode(Ledger, {"stitches": {text: 1}}).stitches) == [inert(text)]


@pytest.mark.parametrize("value", [1.5, Fraction(1, 2), {1, 2}, b"x", object()])
def test_what_is_not_of_the_model_is_not_stored(value: Any) -> None:
    """Floats above all: no count is ever one."""
    with pytest.raises(TypeError, match="cannot be stored"):
        encode(value)


@dataclass(frozen=True)
class Petal:
    """A made-up value: its field and its class have other names on disk."""

    hue: str
    size: int = 1


def test_what_is_nested_without_end_is_refused() -> None:
    """A stage may hold the one it was begun with, and a stranger's one in one in one: no traceback comes of it."""
    plain: dict[str, Any] = {"unit": "item", "units": 1, "title": "a", "act": "check", "v": 2}
    for _ in range(5000):
        plain = {**plain, "as_planned": plain}
    with pytest.raises(Unreadable):
        decode(Stage, plain)


def test_a_class_and_its_fields_are_stored_under_the_names_in_the_table() -> None:
    """So that either can be renamed; what a field is called in the code is no name on disk."""
    codec = Codec({Petal: Stored("Leaf", fields={"hue": "color"})})
    assert codec.encode(Petal("red")) == {"is": "Leaf", "color": "red", "size": 1}
    assert codec.decode(Petal, {"is": "Leaf", "color": "red"}) == Petal("red")
    for plain in ({"is": "Leaf", "hue": "red"}, {"is": "Petal", "color": "red"}):
        with pytest.raises(Unreadable):
            codec.decode(Petal, plain)


def test_a_class_that_is_not_in_the_table_is_never_stored() -> None:
    """Whoever adds a class is told so by the first garment that holds one."""
    with pytest.raises(TypeError, match="Petal cannot be stored"):
        encode(Petal("red"))
    with pytest.raises(Unreadable):
        decode(Petal, {"hue": "red"})
