"""What the audit says of a garment with its knitter's own numbers: findings, and what her numbers change, in sentences.

It is the recipe on paper, in one size, from the pieces as they come off the needles. Nothing here draws, and nothing
is changed: a number is mended where it was typed.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import listing, plural, sentence
from finishing_tui.garment.starting import asked_numbers
from finishing_tui.recipe.audit import Finding, Inputs, SizeAudit, audit_size
from finishing_tui.recipe.audit.printing import numbers_under, resting_on
from finishing_tui.recipe.numbers import unprinted_in

NEEDS_A_NUMBER = frozenset({"number", "no number fits", "not worked out"})
"""Kinds of findings after which no garment can be begun: a number is missing, and only the knitter can tell it."""

PointLevel = Literal["error", "warning", "implied", "differs"]
"""``error``: cannot be worked so; ``warning``: doubtful; ``implied``: worked out; ``differs``: not as printed."""


@dataclass(frozen=True, slots=True)
class AuditPoint:
    """One thing to know before the first stitch, in a sentence.

    ``number``: the number by which it is mended, where one is to be asked about; ``missing``: it must be, for no
    garment can be begun without.
    """

    level: PointLevel
    text: str
    number: str = ""
    missing: bool = False


@dataclass(frozen=True, slots=True)
class Audited:
    """All points: errors first, then warnings, what was worked out, and what her numbers change.

    ``counts``: the stitches on paper, a line for every step after which a place holds more than before.
    """

    points: tuple[AuditPoint, ...]
    counts: tuple[str, ...] = ()

    def of(self, level: PointLevel) -> tuple[AuditPoint, ...]:
        """Return the points of one level."""
        return tuple(point for point in self.points if point.level == level)

    @property
    def ok(self) -> bool:
        """Whether it can be worked as it stands: no errors."""
        return not self.of("error")

    @property
    def possible(self) -> bool:
        """Whether a garment can be begun at all, errors accepted."""
        return not any(point.missing for point in self.points)


def audited(inputs: Inputs) -> Audited:
    """Audit a recipe in one size with all that a knitter said, and lay it beside the recipe as it is printed."""
    mine = audit_size(inputs)
    points = [_point(inputs, finding) for finding in mine.findings]
    points.sort(key=lambda point: ("error", "warning", "implied").index(point.level))
    seen = dict.fromkeys(points)
    differs = [AuditPoint("differs", sentence(text)) for text in _differences(inputs, mine)]
    return Audited((*seen, *differs), tuple(_counts(inputs, mine)))


def _counts(inputs: Inputs, mine: SizeAudit) -> Iterator[str]:
    """Yield what the pieces hold, then what each step puts on a place, and whether all is worked off in the end."""
    places, live = inputs.recipe.place, mine.start
    held = listing([f"{many} on the {places[name].text}" for name, many in live.items() if many])
    if held:
        yield sentence(f"at the start: {held}")
    for row in mine.rows:
        more = [name for name, many in row.live.items() if many > live.get(name, 0) and name in places]
        if more:
            now = listing([f"{row.live[name]} on the {places[name].text}" for name in more])
            yield sentence(f"step {row.step + 1}, {row.title.removesuffix('.')}: {now}")
        live = row.live
    if mine.rows and not any(live.values()):
        yield sentence(f"after {plural(len(mine.rows), 'step')}: no live stitches left")


def _point(inputs: Inputs, finding: Finding) -> AuditPoint:
    missing = finding.kind in NEEDS_A_NUMBER
    level: PointLevel = "error" if missing else finding.level
    title = "" if finding.step is None else inputs.recipe.step[finding.step].title
    text = sentence(finding.sentence)
    if finding.step is not None:
        text = f"Step {finding.step + 1}, {title}: {finding.sentence[:1].lower()}{text[1:]}"
    number = "" if finding.level == "implied" else _number(inputs, finding)
    return AuditPoint(level, text, number, missing=missing)


def _number(inputs: Inputs, finding: Finding) -> str:
    """Return the number that a finding is about: one of hers if it rests on any, else one that she is asked for."""
    recipe, where = inputs.recipe, finding.where
    direct = str(where[1]) if where[0] == "number" and len(where) > 1 else ""
    if direct and (finding.kind in NEEDS_A_NUMBER or direct in inputs.own):
        return direct
    names = resting_on(recipe, {direct}) if direct else numbers_under(recipe, where[:2])
    asked = asked_numbers(recipe)
    return next((name for name in (*inputs.own, *asked) if name in names), next(iter(inputs.own), ""))


def _differences(inputs: Inputs, mine: SizeAudit) -> Iterator[str]:
    """Yield what comes out otherwise than printed because of the knitter's own numbers: numbers first, then counts."""
    unprinted = unprinted_in(inputs.recipe)
    kept: Mapping[str, int] = {name: value for name, value in inputs.own.items() if name in unprinted}
    if len(kept) == len(inputs.own):
        return
    try:
        printed = audit_size(replace(inputs, own=MappingProxyType(kept)))
    except FinishingError:
        return
    for name, value in mine.numbers.items():
        was = printed.numbers.get(name, value)
        if value != was and name not in inputs.own:
            yield f"with your numbers, {inputs.recipe.number[name].text}: {value}; the recipe says {was}"
    told = dict[str, int]()  # a place that goes on differing by as much is told of once
    for mine_row, row in zip(mine.rows, printed.rows, strict=False):
        for place in dict.fromkeys((*row.live, *mine_row.live)):
            was, now = row.live.get(place, 0), mine_row.live.get(place, 0)
            if was != now and told.get(place) != now - was:
                name = inputs.recipe.place[place].text if place in inputs.recipe.place else place
                yield f"after step {row.step + 1}, {row.title}: {name} {now}; the recipe says {was}"
                told[place] = now - was
