"""Values of the domain for property tests: names, counts, ledgers, steps of every kind, and whole recipes.

The steps are made from the types and marks of the model itself, so that a new kind of step is tried out in every
property as soon as it is listed.
"""

import unicodedata
from collections.abc import Mapping
from typing import Any

from hypothesis import strategies as st

from finishing_tui.craft.ledger import (
    EDGE,
    OFF,
    Entry,
    HoleEntry,
    Ledger,
    MarkerEntry,
    Posting,
    TailEntry,
    YarnEntry,
    opened,
)
from finishing_tui.recipe.annotations import Annotation, ModelField, fields_of
from finishing_tui.recipe.formats import FORMAT
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.measure import Measure
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.model import Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.natural import band_stitches, gauges, natural_ratios
from tests.recipe_texts import toml

PLACES = ("front", "back", "neck", "holder")
"""The places of every ledger and recipe made here."""
TAILS = ("left tail", "right tail", "start of neckband")
"""Tails: some hang there, some are made."""
MARKERS = ("side seam", "half way")
"""Markers that may be in the work."""
HOLES = ("left corner", "right corner")
"""Holes that may be open."""
SIZES = ("small", "medium", "large")
"""The sizes of every recipe made here."""
NUMBERS: Mapping[str, tuple[int, ...]] = {"side": (7, 8, 9), "band": (16, 16, 20), "one": (1, 1, 1)}
"""The numbers of every recipe made here, by size."""

texts = (
    st.text(st.characters(exclude_categories=["C", "Z"], include_characters=" "), min_size=1, max_size=20)
    .map(lambda text: unicodedata.normalize("NFC", text))
    .filter(lambda text: text.strip() and "{" not in text)
)
"""Printable text of one line, in the form that the reader brings text into."""

counts = st.one_of(
    st.integers(0, 12),
    st.sampled_from(("side", "band", "one", "2 * side + 1", "(band - 2) * one")),
    st.tuples(*[st.integers(0, 12)] * len(SIZES)),
)
"""Counts in every way a recipe can say one, from 0 to 20."""


GAUGE = RecipeGauge(stitches=20, rows=28)
"""The gauge of a step that is begun with one, over 10 cm."""

_ANY_STEP = frozenset({"say", "how", "look", "mend", "mind", "see", "expect", "repeat", "for", "unequal"})


@st.composite
def ledgers(draw: st.DrawFn) -> Ledger:
    """Return a ledger in the middle of a garment: stitches on some places, and some tails, markers, holes and yarns."""
    live = {place: draw(st.integers(0, 40)) for place in PLACES}
    ledger = opened(live, draw(st.sets(st.sampled_from(TAILS))))
    ledger = ledger.enter(*(MarkerEntry(name, "in") for name in draw(st.sets(st.sampled_from(MARKERS)))))
    ledger = ledger.enter(*(HoleEntry(name, "made") for name in draw(st.sets(st.sampled_from(HOLES)))))
    return ledger.enter(*(YarnEntry(name, "joined") for name in draw(st.sets(st.sampled_from(PLACES), max_size=1))))


@st.composite
def entries_for(draw: st.DrawFn, ledger: Ledger) -> tuple[Entry, ...]:
    """Return some entries that ``ledger`` can bear one after the other."""
    entered: list[Entry] = []
    for _ in range(draw(st.integers(0, 8))):
        entry = draw(st.sampled_from(_bearable(ledger)))
        if isinstance(entry, Posting):
            entry = Posting(entry.source, entry.to, draw(st.integers(1, entry.stitches)))
        entered.append(entry)
        ledger = ledger.enter(entry)
    return tuple(entered)


def _bearable(ledger: Ledger) -> list[Entry]:
    """Return one entry of every sort that the ledger can bear; postings with the most they may move."""
    found: list[Entry] = [Posting(EDGE, place, 10) for place in PLACES]
    found += [Posting(place, OFF, many) for place, many in ledger.live.items()]
    found += [Posting(place, "neck", many) for place, many in ledger.live.items() if place != "neck"]
    found += [TailEntry(name, "made") for name in TAILS if name not in ledger.tails]
    found += [TailEntry(name, "shortened") for name in ledger.tails]
    found += [TailEntry(name, "woven", used) for name, used in ledger.tails.items()]
    found += [MarkerEntry(name, "out" if name in ledger.markers else "in") for name in MARKERS]
    found += [HoleEntry(name, "closed" if name in ledger.holes else "made") for name in HOLES]
    found += [YarnEntry(name, "cut" if name in ledger.yarns else "joined") for name in PLACES]
    found += [YarnEntry(to, "carried", source) for source in ledger.yarns for to in PLACES if to not in ledger.yarns]
    return found


@st.composite
def heres(draw: st.DrawFn) -> Here:
    """Return where a step may begin: any size and ledger, either hand, with or without a gauge."""
    size, gauge = draw(st.integers(0, len(SIZES) - 1)), draw(st.sampled_from((GAUGE, None)))
    body, band = gauges(gauge)
    return Here(
        size=size,
        numbers={name: values[size] for name, values in NUMBERS.items()},
        ledger=draw(ledgers()),
        texts={place: f"{place} needle" for place in PLACES},
        natural=natural_ratios(gauge),
        hand=draw(st.sampled_from(("right", "left"))),
        per_10cm=band_stitches(gauge),
        body=body,
        band=band,
    )


def steps(do: str | None = None, *, work_only: bool = False) -> st.SearchStrategy[Any]:
    """Return steps of the kind ``do``, or of any kind at all: plain tables that the reader takes.

    ``work_only``: without the words and checks that any step may carry, which no stage depends on.
    """
    left_out = _ANY_STEP if work_only else frozenset()
    return st.one_of(*(_table(KINDS[name], left_out) for name in ([do] if do else KINDS)))


def recipes() -> st.SearchStrategy[dict[str, Any]]:
    """Return whole recipes as plain tables: every reference is right, though the stitches may not come out."""
    numbers = {name: {"text": name, "by_size": list(values)} for name, values in NUMBERS.items()}
    places = {name: {"text": name, "kind": "needle", "live": "band"} for name in PLACES}
    return st.fixed_dictionaries(
        {
            "format": st.just(FORMAT),
            "title": texts,
            "sizes": st.just(list(SIZES)),
            "number": st.just(numbers),
            "place": st.just(places),
            "step": st.lists(steps(), min_size=1, max_size=5),
        },
        optional={"about": texts, "gauge": _table(RecipeGauge), "tails": st.just(list(TAILS))},
    )


def model_of(cls: type, table: Mapping[str, Any]) -> Any:
    """Return a plain table as a value of the model class, by the model's own types and without the reader."""
    fields = fields_of(cls)
    return cls(**{fields[key].attribute: _value_of(fields[key].annotation, value) for key, value in table.items()})


def toml_of(recipe: Mapping[str, Any]) -> str:
    """Return a plain recipe as a TOML file: simple keys first, then tables, then the steps."""
    lines = [f"{key} = {toml(value)}" for key, value in recipe.items() if not isinstance(value, dict | list)]
    lines += [f"{key} = {toml(recipe[key])}" for key in ("sizes", "tails") if key in recipe]
    lines += [f"{key} = {toml(recipe[key])}" for key in ("gauge",) if key in recipe]
    for key in ("number", "place"):
        for name, table in recipe[key].items():
            lines += [f"\n[{key}.{name}]", *(f"{inner} = {toml(value)}" for inner, value in table.items())]
    for step in recipe["step"]:
        lines += ["\n[[step]]", *(f"{key} = {toml(value)}" for key, value in step.items() if key != "section")]
        for section in step.get("section", ()):
            lines += ["[[step.section]]", *(f"{key} = {toml(value)}" for key, value in section.items())]
    return "\n".join(lines) + "\n"


def _table(cls: type, left_out: frozenset[str] = frozenset()) -> st.SearchStrategy[Any]:
    """Return tables of a model class, with any of the keys that may be left out but for ``left_out``."""
    fields = fields_of(cls).items()
    required = {key: _field(cls, field) for key, field in fields if not field.optional}
    optional = {key: _field(cls, field) for key, field in fields if field.optional and key not in left_out}
    if issubclass(cls, Step):
        required["do"] = optional.pop("do")
    tables = st.fixed_dictionaries(required, optional=optional)
    return tables.map(_one_of_two).filter(_sensible)


def _field(cls: type, field: ModelField) -> st.SearchStrategy[Any]:
    if field.key in {"of", "every", "round", "from", "times", "stitches", "rows"} and field.type in {int, int | None}:
        return st.integers(1, 4)
    if field.key == "change":
        return st.sampled_from((-2, -1, 1, 2, 4))
    if field.key == "over" and field.type is str:
        return st.sampled_from(("10 cm", "4 in"))
    if (cls, field.key) in _FITTING:
        return st.sampled_from(_FITTING[cls, field.key])
    if field.key == "for":
        return st.lists(st.sampled_from(SIZES), max_size=2, unique=True)
    if field.key == "mirrors":
        return st.just("")
    assert cls not in {Recipe, Number, Place}, "these are made by recipes()"
    return _values(field.annotation)


def _values(one: Annotation) -> st.SearchStrategy[Any]:
    if one.choice is not None:
        return st.one_of(*(_table(cls) for cls in one.choice.choices.values()))
    for mark in one.marks:
        return {
            "count": counts.map(lambda count: list(count) if isinstance(count, tuple) else count),
            "place": st.sampled_from(PLACES),
            "tail": st.sampled_from(TAILS),
            "marker": st.sampled_from(MARKERS),
            "hole": st.sampled_from(HOLES),
        }[mark]
    if one.arms:
        return st.one_of(*map(_values, one.arms))
    if one.table is not None:
        return _table(one.table)
    if one.literals:
        return st.sampled_from(one.literals)
    if one.item is not None:
        return st.lists(_values(one.item), min_size=1, max_size=3)
    if one.name is not None and one.named is not None:
        return st.dictionaries(_values(one.name), _values(one.named), max_size=2)
    return {str: texts, int: st.integers(0, 9), bool: st.booleans()}[one.bare]


_FITTING: Mapping[tuple[type, str], tuple[Any, ...]] = {
    (Along, "length"): ("18 cm", "7 in"),
    (Along, "ratio"): ("2/3", "1"),
    (PickUpAndKnit, "ratio"): ("3/4",),
    **{(cls, key): ("30 cm", "6 in") for cls in (Join, BindOff) for key in ("length", "start_length")},
    (PickUpAndKnit, "length"): ("45 cm",),
    (Along, "slope"): ("1 stitch every 2 rows, 5 times, then 4 rows straight", "14 rows straight"),
    (Buttonholes, "holes"): (1, 2, [2, 2, 3]),
    (Buttonholes, "width"): (1, 2),
    (Buttonholes, "first"): (1, 2, "one"),
    (Buttonholes, "last"): (1, 3),
    (Measure, "value"): ("24.5 cm", "9 1/2 in"),
    (Measure, "tolerance"): ("1 cm", "1/2 in"),
    (Shape, "method"): ("k2tog", "ssk", "M1"),
    (ShortRows, "first"): (1, 2, "one"),
    (ShortRows, "step"): (1, 2),
    (ShortRows, "times"): (1, 2),
}
"""Values that can be read, or fit one another, for keys whose type alone would seldom give them."""


def _one_of_two(table: dict[str, Any]) -> dict[str, Any]:
    """Keep one of two keys that exclude each other, and give one where one is needed."""
    if table.get("do") == "seam":
        table["sides"] = (table["sides"] * 2)[:2]
    if table.get("do") in {"join", "graft"}:
        kept, gone = (("front", "back"), ("near", "far"))[:: 1 if "front" in table else -1]
        table = {key: value for key, value in table.items() if key not in gone}
        for key, place in zip(kept, PLACES, strict=False):
            table.setdefault(key, place)
    if table.get("with_tail"):
        leaves = {"yarn", "tail", "start_tail", "length", "start_length"}
        table = {key: value for key, value in table.items() if key not in leaves}
    if table.get("keep"):
        table.pop("length", None)
    if table.get("yarn", "same") != "new":
        table.pop("start_length", None)
    if table.get("do") == "pick up and knit" and table.get("yarn") == "same":
        table.pop("length", None)
    if table.get("do") == "measure":
        table = {key: value for key, value in table.items() if key != "tolerance" or "value" in table}
    if table.get("do") == "buttonholes" and "between" in table:
        table.pop("over", None)
    if table.get("do") == "buttonholes" and table.get("method") == "yarn over":
        table.pop("width", None)
    if "along" in table and "from" not in table and "gap" not in table:
        table.setdefault("spots", 14)
    if table.get("do") == "work":
        table.pop("rows" if "rounds" in table else "", None)
        if "rows" not in table:
            table.setdefault("rounds", 6)
    if "do" not in table and "change" in table:
        table.setdefault("every", 2)
        table.pop("round", None)
    return table


def _sensible(table: dict[str, Any]) -> bool:
    pairs = (("front", "back"), ("near", "far"), ("to", "from"))
    if table.get("do") in {"join", "graft", "move"} and any(
        one in table and table[one] == table.get(other) for one, other in pairs
    ):
        return False
    return table.get("do") != "check" or bool(table.get("items") or table.get("same") or table.get("over_the_head"))


def _value_of(one: Annotation, value: Any) -> Any:
    if one.choice is not None:
        meant = one.choice.meant(value)
        assert meant is not None
        return model_of(meant, value)
    if one.arms:
        fitting = [arm for arm in one.arms if _fits(arm, value)]
        return _value_of(fitting[0], value) if fitting else value
    if one.table is not None:
        return model_of(one.table, value)
    if one.item is not None and isinstance(value, list):
        return tuple(_value_of(one.item, item) for item in value)
    if one.named is not None and isinstance(value, dict):
        return {key: _value_of(one.named, item) for key, item in value.items()}
    return value


def _fits(one: Annotation, value: Any) -> bool:
    if isinstance(value, list):
        return one.item is not None or any(_fits(arm, value) for arm in one.arms)
    return isinstance(value, dict) and one.table is not None
