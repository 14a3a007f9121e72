"""The recipes and demo garments that come with the program, worked by hand in every size, without the audit."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from math import isqrt
from pathlib import Path
from typing import Literal, NamedTuple

import pytest

from finishing_tui import shipped
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Ledger, opened
from finishing_tui.craft.lengths import read_length
from finishing_tui.craft.spacing import Runs, draw
from finishing_tui.garment.file import plan_of
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.kinds.block import Block
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.natural import gauges, natural_ratios
from finishing_tui.recipe.numbers import numbers_for
from finishing_tui.recipe.reader import read_recipe, read_text
from finishing_tui.recipe.stage import Stage, whole
from finishing_tui.recipe.sums import work_out

RECIPES = {name: read_recipe(path) for name, path in shipped.recipes().items()}
SIZES = [pytest.param(name, size, id=f"{name} {size}") for name, recipe in RECIPES.items() for size in recipe.sizes]
NOTHING_ASKED = "long-front-vest"
"""Nobody need count anything of this one: its edges are worked at a rate."""

GUIDE = shipped.recipe("crew-neck").parent / "README.md"

Hand = Literal["right", "left"]


@dataclass(frozen=True, slots=True)
class Worked:
    """One step of a recipe, worked whole: what it was made of, and the ledger after it."""

    step: Step
    stages: tuple[Stage, ...]
    ledger: Ledger


class Wrong(AssertionError):
    """A count that is not as the recipe prints it."""


def work(recipe: Recipe, size: str, own: Mapping[str, int] | None = None, hand: Hand = "right") -> Iterator[Worked]:
    """Work every step of ``recipe`` whole, in order; raises ``Wrong`` where a printed count or repeat is not met."""
    index = recipe.sizes.index(size)
    numbers = numbers_for(recipe, index, own)
    texts = {name: place.text for name, place in recipe.place.items()}
    body, band = gauges(recipe.gauge)
    known = Here(index, numbers, Ledger(), texts, natural=natural_ratios(recipe.gauge), hand=hand, body=body, band=band)
    live = {name: count_of(place.live, numbers, index) for name, place in recipe.place.items()}
    ledger = opened(live, recipe.tails)
    for step in recipe.step:
        if step.for_ and size not in step.for_:
            continue
        if isinstance(step, CountStitches) and step.count is not None:
            counted = count_of(step.count, numbers, index)
            if ledger.on(step.place) != counted:
                raise Wrong(f"{step.title}: {step.place} holds {ledger.on(step.place)}, printed is {counted}")
        stages = step.stages(replace(known, ledger=ledger))
        for stage in stages:
            ledger = ledger.enter(*whole(stage))
        for place, count in step.expect.items():
            if ledger.on(place) != count_of(count, numbers, index):
                raise Wrong(f"{step.title}: {place} holds {ledger.on(place)}, printed is {count}")
        if step.repeat is not None and not step.repeat.takes(ledger.on(step.main_place)):
            raise Wrong(f"{step.title}: {ledger.on(step.main_place)} is not of its repeat")
        yield Worked(step, stages, ledger)


def mirrored(recipe: Recipe, size: str, hand: Hand = "right") -> Iterator[tuple[Stage, Stage]]:
    """Yield the two stages of every pair of sections of which one mirrors the other."""
    for worked in work(recipe, size, hand=hand):
        if isinstance(worked.step, PickUpAndKnit):
            stages = {stage.title: stage for stage in worked.stages}
            for section in worked.step.section:
                if isinstance(section, Along) and section.mirrors:
                    yield stages[section.mirrors], stages[section.along]


def edges(recipe: Recipe, size: str, hand: Hand = "right") -> Iterator[Stage]:
    """Yield every stage in which spots are picked from an edge."""
    for worked in work(recipe, size, hand=hand):
        yield from (stage for stage in worked.stages if stage.unit == "spot")


# --------------------------------------------------------------------------------------------------- the counts


def test_there_are_recipes_of_six_sizes_or_more() -> None:
    """The main job stands on a crew neck and a vest with long fronts; every recipe has six sizes at least."""
    assert set(RECIPES) >= {"crew-neck", "long-front-vest"}
    assert all(len(recipe.sizes) >= 6 for recipe in RECIPES.values())


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize(("name", "size"), SIZES)
def test_every_size_ends_with_nothing_left(name: str, size: str, hand: Hand) -> None:
    """For both hands nothing is refused, every printed count is met, and no stitch, tail, marker or hole is left."""
    *_, last = work(RECIPES[name], size, hand=hand)
    assert last.ledger.empty, last.ledger


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_printed_numbers_are_their_sums(name: str, size: str) -> None:
    """Where a number is printed and has a sum, both say the same."""
    recipe = RECIPES[name]
    numbers = numbers_for(recipe, recipe.sizes.index(size))
    sums = {key: number.is_ for key, number in recipe.number.items() if number.is_}
    assert sums
    assert {key: work_out(text, numbers) for key, text in sums.items()} == {key: numbers[key] for key in sums}


@pytest.mark.parametrize("off", [-3, -1, 1, 3])
@pytest.mark.parametrize(("name", "size"), [one for one in SIZES if one.values[0] != NOTHING_ASKED])
def test_a_few_rows_more_or_fewer_still_come_out(name: str, size: str, off: int) -> None:
    """Whatever the knitter is asked for may differ a little from print: the ledger still ends empty."""
    recipe = RECIPES[name]
    numbers = numbers_for(recipe, recipe.sizes.index(size))
    own = {key: numbers[key] + off for key, number in recipe.number.items() if number.ask}
    assert own
    assert all(recipe.number[key].least <= value <= recipe.number[key].most for key, value in own.items())
    *_, last = work(recipe, size, own)
    assert last.ledger.empty, last.ledger


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_one_stitch_too_many_anywhere_is_found_out(name: str, size: str) -> None:
    """A holder with one stitch more than print says does not come through: some step or count stands in its way."""
    recipe = RECIPES[name]
    index = recipe.sizes.index(size)
    numbers = numbers_for(recipe, index)
    for key, place in recipe.place.items():
        live = count_of(place.live, numbers, index)
        if live:
            faulty = replace(recipe, place={**recipe.place, key: replace(place, live=live + 1)})
            with pytest.raises((FinishingError, Wrong)):
                list(work(faulty, size))


def test_no_count_falls_from_one_size_to_the_next() -> None:
    """Larger sizes never have fewer stitches, rows or rounds, and none has twice its neighbour's."""
    for recipe in RECIPES.values():
        rows = [numbers_for(recipe, index) for index in range(len(recipe.sizes))]
        for key in recipe.number:
            for before, after in pairwise(numbers[key] for numbers in rows):
                assert before <= after < 2 * before, (recipe.title, key)


# ------------------------------------------------------------------------------------------------- the picking up


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_rows_are_picked_near_the_natural_ratio(name: str, size: str) -> None:
    """Stitches to rows are within 10 % of the gauge's (trade.md section 1: stitches over a length by its rows).

    A ridge and a chain are two rows each; on an edge of stitches every one is picked. An edge given by its slope is as
    long as its hypotenuses (Studio Knits ch. 23: up to 5 of 6, and to 1 of 1 where it is strong).
    """
    recipe = RECIPES[name]
    assert recipe.gauge is not None
    row = Fraction(recipe.gauge.stitches, recipe.gauge.rows)
    natural = {"row": row, "ridge": 2 * row, "chain": 2 * row, "stitch": Fraction(1)}
    slopes = {
        section.along: section.slope
        for step in recipe.step
        if isinstance(step, PickUpAndKnit) and (not step.for_ or size in step.for_)
        for section in step.section
        if isinstance(section, Along) and section.slope
    }
    for stage in edges(recipe, size):
        picked = Fraction(stage.target, stage.units)
        if stage.title in slopes:
            assert Fraction(5, 6) <= picked <= 1
            assert abs(picked / (slanted(slopes[stage.title], recipe.gauge) / stage.units) - 1) <= Fraction(1, 10)
        else:
            assert abs(picked / natural[stage.spot] - 1) <= Fraction(1, 10)


def slanted(slope: str, gauge: RecipeGauge) -> Fraction:
    """Return the stitches of the gauge that lie along a slope: Pythagoras, leg by leg, to a millionth."""
    long = Fraction(0)
    for stitches, rows, times in re.findall(r"([0-9]+) stitch(?:es)? every ([0-9]+) rows, ([0-9]+) times", slope):
        wide, high = Fraction(int(stitches)), Fraction(int(rows) * gauge.stitches, gauge.rows)
        long += int(times) * Fraction(isqrt(int((wide**2 + high**2) * 10**12)), 10**6)
    for rows in re.findall(r"([0-9]+) rows straight", slope):
        long += Fraction(int(rows) * gauge.stitches, gauge.rows)
    return long


def test_there_are_edges_to_pick() -> None:
    """The recipes of the main job have edges to pick from, long enough to be recounted."""
    found = {name: [stage.units for stage in edges(recipe, recipe.sizes[-1])] for name, recipe in RECIPES.items()}
    assert {"crew-neck", "long-front-vest"} <= {name for name, spots in found.items() if max(spots, default=0) >= 12}


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_long_sections_are_recounted_at_their_half(name: str, size: str) -> None:
    """Every section of 12 spots or more halts once, at its half, unless its step says that it is too short for it."""
    for worked in work(RECIPES[name], size):
        if isinstance(worked.step, PickUpAndKnit):
            for stage in (stage for stage in worked.stages if stage.unit == "spot"):
                long = stage.units >= 12 and worked.step.recount == "half"
                assert stage.halts == ((stage.units // 2,) if long else ())
                assert long or stage.units < 20, "a section of 20 spots is not short"


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize(("name", "size"), SIZES)
def test_both_sides_mirror_each_other_in_a_rhythm_that_is_easy(name: str, size: str, hand: Hand) -> None:
    """The second side is the first one backwards; a side has one rhythm, and at its end at most one odd run.

    The longest such rhythm is 4 of every 5, for the edge of a V (Studio Knits ch. 23; trade.md section 1).
    """
    for first, second in mirrored(RECIPES[name], size, hand):
        assert first.rhythm is not None
        assert second.rhythm is not None
        assert draw(first.rhythm) == draw(second.rhythm)[::-1]
        if first.units == first.target or first.style == "even":
            continue  # every spot is picked, or all are spread as evenly as can be
        assert isinstance(first.rhythm, Runs)
        long = [run for run in first.rhythm.runs if run.times > 1]
        assert len(long) == 1
        assert long[0].of <= 5
        assert len(first.rhythm.runs) <= 2


@pytest.mark.parametrize(("name", "size"), SIZES)
def test_no_two_skips_stand_together(name: str, size: str) -> None:
    """Nowhere along the whole edge are two spots beside each other left out (Stitches of Violet, 2009)."""
    for worked in work(RECIPES[name], size):
        if isinstance(worked.step, PickUpAndKnit):
            drawn = "".join(draw(s.rhythm) if s.rhythm else "x" * s.units for s in worked.stages)
            assert ".." not in drawn
            assert "x.x" in drawn or all(s.target >= s.units for s in worked.stages)


def test_the_panels_close_at_the_corners_and_at_the_centre_join() -> None:
    """On the vest the first and the last row of each panel are picked, so that no hole is left at either end."""
    recipe = RECIPES["long-front-vest"]
    for size in recipe.sizes:
        for stage in edges(recipe, size):
            assert stage.rhythm is not None
            drawn = draw(stage.rhythm)
            assert (drawn[0], drawn[-1]) == ("x", "x")


# ----------------------------------------------------------------------------------------------------- the necks

CHILDREN = {
    "3 months": Fraction("41.7"),
    "6 months": Fraction("44.6"),
    "12 months": Fraction("47.6"),
    "24 months": Fraction("50.1"),
    "36 months": Fraction("51.4"),
    "2 years": Fraction("50.1"),
    "3 years": Fraction("51.4"),
}
"""Heads in cm, 95th percentile of girls (medical table; trade.md section 7)."""
GROWING, NEARLY_GROWN = Fraction(53), Fraction(56)
"""Older children, no published value at hand: the smallest woman's head of the craft charts, from ten years on the
smallest man's (trade.md section 7)."""
LARGEST = Fraction(62)
"""The largest adult head, in cm, of the craft charts (trade.md section 7: men 56 to 62)."""
STRETCH = Fraction(16) / Fraction("11.5")
"""An ordinary bind-off: 11.5 cm relaxed, 16 cm stretched (S. Winter 2019; trade.md section 7)."""


class Neck(NamedTuple):
    """A neck that is tried over the head: stitches bound off, and the numbers of its size."""

    stitches: int
    numbers: dict[str, int]


def neck_of(recipe: Recipe, size: str) -> Neck | None:
    """Return the neck of a recipe that has one to pass a head."""
    if not any(isinstance(step, Check) and step.over_the_head for step in recipe.step):
        return None
    bound_off = [stage.target for worked in work(recipe, size) for stage in worked.stages if stage.act == "bind-off"]
    return Neck(bound_off[-1], numbers_for(recipe, recipe.sizes.index(size)))


def child(size: str) -> bool:
    """Return whether a size is named after a child's age."""
    return size.endswith(("years", "months")) or size == "newborn"


def deep(name: str, size: str) -> bool:
    """Return whether a recipe prints how wide and deep its neck is, in a size for adults."""
    return not child(size) and {"back_neck", "front_rows"} <= set(RECIPES[name].number)


NECKS = [case for case in SIZES if neck_of(RECIPES[str(case.values[0])], str(case.values[1]))]
"""Every size of every recipe whose neck is tried over the head."""


@pytest.mark.parametrize(("name", "size"), NECKS)
def test_necks_go_over_the_head(name: str, size: str) -> None:
    """The bound-off edge at the recipe's gauge, stretched as an ordinary one stretches, passes the head of its size."""
    recipe = RECIPES[name]
    neck = neck_of(recipe, size)
    assert neck is not None
    assert recipe.gauge is not None
    relaxed = neck.stitches * read_length(recipe.gauge.over).cm / recipe.gauge.stitches
    older = NEARLY_GROWN if re.match(r"1[0-9] years", size) else GROWING
    assert relaxed * STRETCH >= CHILDREN.get(size, older if child(size) else LARGEST)


@pytest.mark.parametrize(("name", "size"), [case for case in NECKS if deep(*map(str, case.values))])
def test_adult_necks_are_wide_and_deep_enough(name: str, size: str) -> None:
    """Width of the back neck and depth of the front are 25.5 cm or more (S. Melville's rule, trade.md section 7)."""
    recipe = RECIPES[name]
    neck = neck_of(recipe, size)
    assert neck is not None
    assert recipe.gauge is not None
    over = read_length(recipe.gauge.over).cm
    width = neck.numbers["back_neck"] * over / recipe.gauge.stitches
    depth = neck.numbers["front_rows"] * over / recipe.gauge.rows
    assert width + depth >= Fraction("25.5")


def test_the_rib_fits_in_every_size() -> None:
    """k2, p2 rib in the round wants a multiple of 4 (Binka Schwan, TKGA, 2022; trade.md section 4)."""
    recipe = RECIPES["crew-neck"]
    necks = [neck_of(recipe, size) for size in recipe.sizes]
    assert [neck.stitches % 4 for neck in necks if neck] == [0] * len(recipe.sizes)


# -------------------------------------------------------------------------------------------------- the cautions


@pytest.mark.parametrize("name", RECIPES)
def test_cautions_stand_at_their_steps(name: str) -> None:
    """Pins counted at both ends, breaks and doctors for hands, steam at blocking (trade.md section 9)."""
    steps = RECIPES[name].step
    for step in (steps[0], steps[-1]):
        assert isinstance(step, Check)
        assert re.search(r"\bpins\b.*\bcounted\b", " ".join(step.items), re.IGNORECASE)
    assert "5 to 10 minutes" in steps[0].mind
    for step in steps:
        if isinstance(step, PickUpAndKnit):
            assert "numbness" in step.mind
            assert "doctor" in step.mind
        if isinstance(step, Block):
            assert all(word in step.mind for word in ("iron", "steam", "pins", "local rules", "yarn's label"))


@pytest.mark.parametrize("name", [name for name in RECIPES if any(map(child, RECIPES[name].sizes))])
def test_children_have_their_own_caution(name: str) -> None:
    """Sizes for children, and only these, have a step on cords, buttons and trims, which names the rules."""
    recipe = RECIPES[name]
    (step,) = [step for step in recipe.step if isinstance(step, Check) and "CPSC" in step.see]
    assert set(step.for_ or recipe.sizes) == {size for size in recipe.sizes if child(size)}
    for word in ("strangle", "choke", "local rules", "qualified"):
        assert word in step.mind
    for rule in ("CPSC", "ASTM F1816", "EN 14682", "CEN/TR 16792"):
        assert rule in step.see


# ------------------------------------------------------------------------------------------- demos and the guide


@pytest.mark.parametrize("name", shipped.demos())
def test_demo_garments_can_be_worked_to_their_end(name: str) -> None:
    """Each demo names a shipped recipe, and with its own numbers and hand the ledger ends empty."""
    plan = plan_of(shipped.demos()[name])
    assert plan.recipe == RECIPES[plan.source]
    assert plan.name == f"demo-{name}"
    *_, last = work(plan.recipe, plan.size, plan.own, plan.hand)
    assert last.ledger.empty


def test_demos_are_of_shipped_recipes() -> None:
    """Demo garments are of recipes that come with the program, the two of the main job among them."""
    sources = {plan_of(folder).source for folder in shipped.demos().values()}
    assert {"crew-neck", "long-front-vest"} <= sources <= set(RECIPES)


def blocks(text: str) -> list[str]:
    """Return the TOML blocks of a guide."""
    return re.findall(r"^```toml\n(.*?)^```", text, re.MULTILINE | re.DOTALL)


def test_the_guide_s_recipe_can_be_worked() -> None:
    """The recipe that the guide writes from scratch is read without a fault and ends empty in every size."""
    (text,) = [block for block in blocks(GUIDE.read_text(encoding="utf-8")) if block.startswith("format")]
    recipe = read_text(text, "README.md")
    for size in recipe.sizes:
        *_, last = work(recipe, size)
        assert last.ledger.empty


def test_the_shipped_files_are_where_the_guide_is() -> None:
    """The guide lies beside the recipes, so that a writer finds examples where the explanation is."""
    assert {path.parent for path in shipped.recipes().values()} == {Path(GUIDE).parent}
