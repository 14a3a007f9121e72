"""A garment that is about to be started: what was said of it so far, and the file that says it all.

A draft is a plain value. Nothing is on the shelf until ``garment.shelf.put_on_shelf`` writes all of it at once, and
what is written is the same ``garment.toml`` that a knitter could have written by hand.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from math import lcm
from pathlib import Path
from types import MappingProxyType
from typing import Any, Literal

from finishing_tui.craft.counts import span
from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.gauge import MOST as MOST_IN_GAUGE
from finishing_tui.craft.gauge import Gauge, read_gauge
from finishing_tui.craft.lengths import Length
from finishing_tui.files import expanded
from finishing_tui.recipe.audit import Inputs
from finishing_tui.recipe.model import BandGauge, Number, Recipe, RecipeGauge
from finishing_tui.recipe.numbers import NOT_COUNTED, numbers_for, printed_in, size_index, unprinted_in
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.text import tidy, unprintable

LONGEST_TITLE = 80
"""Characters in what a knitter calls a garment."""

LONGEST_LINE = 200
"""Characters in a line about the yarn or the needles."""

UNCOUNTED = "not counted"
"""What stands in a garment's file for a number that nobody counted."""

_BARE = re.compile(r"[A-Za-z0-9_-]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A garment that is about to be started.

    ``source``: the recipe as the garment's file names it, a shipped name or a path; ``own``: her numbers that are not
    the printed ones; ``body`` and ``band``: her gauge, None for the recipe's, and "body" for a band like the body.
    """

    recipe: Recipe
    source: str
    size: str
    own: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    body: BandGauge | None = None
    band: BandGauge | Literal["body"] | None = None
    hand: Literal["right", "left"] = "right"
    title: str = ""
    yarn: str = ""
    needles: str = ""
    wearer: str = ""

    @property
    def called(self) -> str:
        """What the garment will be called: as the recipe is, until it has a name."""
        return self.title or one_line(self.recipe.title, LONGEST_TITLE)

    @property
    def gauge(self) -> RecipeGauge | None:
        """Her own gauge, whole, as a garment's file has it; None where it is the recipe's."""
        if self.body is None and self.band is None:
            return None
        printed = self.recipe.gauge
        body = self.body or (None if printed is None else BandGauge(**_three(printed)))
        if body is None:
            return None
        band = body if self.band == "body" else self.band or (printed.band if printed is not None else None)
        return RecipeGauge(**_three(body), band=None if band == body else band)

    @property
    def inputs(self) -> Inputs:
        """What the audit takes: the recipe in her size, with all that she said."""
        size = size_index(self.recipe, self.size)
        return Inputs(recipe=self.recipe, size=size, own=self.own, gauge=self.gauge, hand=self.hand, wearer=self.wearer)

    def said(self, hand: Literal["right", "left"] = "right") -> bool:
        """Return whether anything was said that would be a pity to lose; ``hand``: the one that is so unasked."""
        return self != Draft(recipe=self.recipe, source=self.source, size=self.size, hand=hand)


def asked_numbers(recipe: Recipe) -> tuple[str, ...]:
    """Return the names of the numbers a knitter is asked for: the recipe says so, or prints nothing for them."""
    unprinted = unprinted_in(recipe)
    return tuple(name for name, number in recipe.number.items() if number.ask or name in unprinted)


def with_number(recipe: Recipe, size: str, own: Mapping[str, int], name: str, value: int | None) -> Mapping[str, int]:
    """Return her numbers with one of them changed; None, or just what is printed, is no number of her own.

    ``NOT_COUNTED`` is: that she did not count it.

    Raises ``Impossible`` with the range for a value out of it, and for a name the recipe has not.
    """
    number = recipe.number.get(name)
    if number is None:
        raise Impossible(f"the recipe has no number {name!r}; it has {', '.join(recipe.number) or 'none'}")
    kept = {other: count for other, count in own.items() if other != name}
    if value == NOT_COUNTED:
        kept[name] = value
    elif value is not None:
        in_reach(number, value)
        if value != without(recipe, size, kept, name):
            kept[name] = value
    return MappingProxyType({each: kept[each] for each in recipe.number if each in kept})


def without(recipe: Recipe, size: str, own: Mapping[str, int], name: str) -> int | None:
    """Return what a number comes to where it is not the knitter's own: printed, or a sum; None where nothing tells."""
    kept = {other: count for other, count in own.items() if other != name}
    try:
        return numbers_for(recipe, size_index(recipe, size), kept)[name]
    except FinishingError:
        return printed_in(recipe.number[name], size_index(recipe, size))


def in_reach(number: Number, value: int) -> None:
    """Raise ``Impossible`` unless ``value`` can be what a number of the recipe comes to on a real garment."""
    if not number.least <= value <= number.most:
        few = "few" if value < number.least else "many"
        raise Impossible(f"{number.text}: {value:,} is too {few}; use {span(number.least, number.most, value)}")


def whole_gauge(typed: str) -> BandGauge:
    """Return the gauge ``typed``, in whole stitches and rows: half a stitch over 10 cm is one over 20 cm.

    Raises ``Impossible`` where it cannot be read, has no rows, or would be of more than 1,000 stitches then.
    """
    gauge = read_gauge(typed)
    if gauge.rows is None:
        raise Impossible("count the rows too: stitches, rows and the length, such as '20 x 28 over 10 cm'")
    times = lcm(gauge.stitches.denominator, gauge.rows.denominator)
    stitches, rows = gauge.stitches * times, gauge.rows * times
    if max(stitches, rows) > MOST_IN_GAUGE:
        raise Impossible("count over a longer piece: no gauge has such parts of a stitch")
    return BandGauge(stitches=int(stitches), rows=int(rows), over=_over(Length(gauge.over.cm * times, gauge.over.unit)))


def gauge_as_typed(gauge: RecipeGauge | BandGauge) -> str:
    """Return a gauge as it is typed, so that it can be kept or changed: "20 x 28 over 10 cm"."""
    return f"{gauge.stitches} x {gauge.rows} over {gauge.over}"


def same_gauge(one: RecipeGauge | BandGauge, other: RecipeGauge | BandGauge) -> bool:
    """Return whether two gauges are as wide and as tall, however they were counted."""
    a, b = read_gauge(gauge_as_typed(one)), read_gauge(gauge_as_typed(other))
    return _per_cm(a) == _per_cm(b)


def one_line(text: str, longest: int) -> str:
    """Return ``text`` as it may stand in a garment's file: on one line, without what steers a terminal."""
    tidied = tidy(" ".join(text.split()))
    kept = "".join(sign for sign in tidied if unprintable(sign, "") is None and not "\ud800" <= sign <= "\udfff")
    return " ".join(kept.split())[:longest].strip()


def file_text(draft: Draft, name: str) -> str:
    """Return the ``garment.toml`` of ``draft``; ``name`` is the garment's id.

    Raises ``Impossible`` where the path of its recipe has a character that may not stand in such a file.
    """
    if tidy(draft.source) != draft.source or unprintable(draft.source, "") is not None:
        raise Impossible("the path of this recipe has a character that cannot be shown; move the recipe elsewhere")
    keys = {"id": name, "title": draft.called, "recipe": draft.source, "size": draft.size, "hand": draft.hand}
    more = {"wearer": draft.wearer, "yarn": draft.yarn, "needles": draft.needles}
    keys |= {key: text for key, text in more.items() if text}
    lines = [f"format  = {2 if draft.wearer else 1}", *(f"{key:<7} = {_quoted(text)}" for key, text in keys.items())]
    if draft.own:
        lines += ["", "[number]", *(f"{_key(number)} = {_value(value)}" for number, value in draft.own.items())]
    if draft.gauge is not None:
        lines += _table("gauge", draft.gauge)
        lines += _table("gauge.band", draft.gauge.band) if draft.gauge.band is not None else []
    return "\n".join(lines) + "\n"


def _three(gauge: RecipeGauge | BandGauge) -> dict[str, Any]:
    return {"stitches": gauge.stitches, "rows": gauge.rows, "over": gauge.over}


def _per_cm(gauge: Gauge) -> tuple[Fraction, Fraction]:
    return gauge.stitches_per_cm, gauge.rows_per_cm


def _over(over: Length) -> str:
    """Say a length so that it is read back as exactly that: "10 cm", "9 1/2 in"."""
    whole, part = divmod(over.amount, 1)
    amount = " ".join(str(one) for one in (whole, part) if one)
    return f"{amount} {over.unit}"


def _table(name: str, gauge: RecipeGauge | BandGauge) -> list[str]:
    lines = [f"stitches = {gauge.stitches}", f"rows     = {gauge.rows}", f"over     = {_quoted(gauge.over)}"]
    return ["", f"[{name}]", *lines]


def _value(value: int) -> str:
    return _quoted(UNCOUNTED) if value == NOT_COUNTED else str(value)


def _key(name: str) -> str:
    return name if _BARE.fullmatch(name) else _quoted(name)


def _quoted(text: str) -> str:
    """Return ``text`` as a TOML string; there is nothing in it but what may stand there, and quotes and backslashes."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def source_of(named: str, shipped: Mapping[str, Path]) -> tuple[str, Path]:
    """Return how a garment's file names the recipe that was ``named``, and its file: a path, or one of those shipped.

    Raises ``Impossible`` for a file whose name does not end in .toml: a garment's file tells paths from names by that.
    """
    path = expanded(Path(named))
    if named in shipped and not path.is_file():
        return named, shipped[named]
    if path.suffix != ".toml":
        near_names = near(named, shipped, "the recipes that come with it are")
        raise Impossible(f"{named[:80]!r} is neither a shipped recipe nor a file that ends in .toml; {near_names}")
    return str(path.absolute()), path
