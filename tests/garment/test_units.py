"""Centimetres and inches: a gauge may be given in either, in a recipe and in a garment, and leads to the same plan."""

import re
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.garment.commands import Press, TakeCount
from finishing_tui.garment.file import plan_of
from finishing_tui.garment.plan import Plan
from finishing_tui.recipe.model import RecipeGauge
from tests.garment.edges import reach, section
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import place, recipe, step
from tests.recipe_texts import section as part


def by_length(over: str, length: str) -> Plan:
    """Return the plan of an edge of which the length is said, with a gauge over another."""
    return plan_for(
        recipe(
            "An edge by its length",
            place("band"),
            step("pick up and knit", "Pick up", part(along="edge", length=length), onto="band"),
            step("work", "Work the band", on="band", rows=2),
            gauge={"stitches": 20, "rows": 28, "over": over},
        )
    )


SAME = {"4 in": "10.16 cm", "2 in": "5.08 cm", "1 in": "2.54 cm"}
"""An inch is 2.54 cm, exactly (the international yard and pound agreement of 1959; from memory)."""


@pytest.mark.parametrize("inches", SAME)
def test_an_edge_by_its_length_is_the_same_in_both(inches: str) -> None:
    """Gauge in one and length in the other, both ways: the same rows, the same stitches, the same rhythm."""
    cm = SAME[inches]
    stages = [
        section(Paper(by_length(over, length)))[0]
        for over, length in ((inches, "10 in"), (inches, "25.4 cm"), (cm, "10 in"), (cm, "25.4 cm"))
    ]
    assert all(stage == stages[0] for stage in stages)


def test_ten_centimetres_are_no_four_inches() -> None:
    """The same 28 rows over 4 inches are over 10.16 cm: an edge of 50 cm has 140 rows by the one, 138 by the other.

    28 rows x 50 / 10 = 140; 28 x 50 / 10.16 = 137.8.
    """
    rows = [section(Paper(by_length(one, "50 cm")))[0].units for one in ("10 cm", "4 in")]
    assert rows == [140, 138]


OVER = re.compile(r'(?m)^(over +)= "[0-9]+ (?:cm|in)"')
TEXTS = {name: path.read_text(encoding="utf-8") for name, path in shipped.recipes().items()}


@pytest.mark.parametrize("name", [name for name, text in TEXTS.items() if "[[step.section]]" in text])
def test_every_recipe_plans_the_same_in_both(name: str) -> None:
    """A shipped recipe with its gauge over 4 inches has the stages that it has over as many centimetres."""
    plans = [plan_for(OVER.sub(rf'\1= "{over}"', TEXTS[name])) for over in ("4 in", "10.16 cm")]
    assert plans[0].recipe.gauge != plans[1].recipe.gauge
    step = next(index for index, one in enumerate(plans[0].recipe.step) if hasattr(one, "section"))
    first, second = (reach(Paper(plan), step).state.steps for plan in plans)
    assert first == second


def test_shipped_gauges_are_in_both() -> None:
    """Recipes and demo garments show both ways of giving a gauge."""
    garments = [(folder / "garment.toml").read_text(encoding="utf-8") for folder in shipped.demos().values()]
    for texts in (TEXTS.values(), garments):
        assert {found[0][-3:-1] for text in texts for found in OVER.finditer(text)} == {"cm", "in"}


GARMENT = """format = 1
id = "of-the-tests"
title = "grey V"
recipe = "v-neck"
size = "L"
[gauge]
stitches = 24
rows = 32
over = "{over}"
"""


def planned(folder: Path, over: str) -> Plan:
    """Return the plan of a garment whose gauge is over so much."""
    folder.mkdir()
    (folder / "garment.toml").write_text(GARMENT.format(over=over), encoding="utf-8")
    return plan_of(folder)


def test_a_garment_s_own_gauge_may_be_in_either(tmp_path: Path) -> None:
    """The garment's gauge rules over the recipe's, in cm and in inches alike: same sums before the needles."""
    inches, cm = planned(tmp_path / "inches", "4 in"), planned(tmp_path / "cm", "10.16 cm")
    assert inches.gauge == RecipeGauge(stitches=24, rows=32, over="4 in")
    here = [plan.here(plan.opening()) for plan in (inches, cm)]
    assert (here[0].natural, here[0].per_10cm) == (here[1].natural, here[1].per_10cm)
    assert here[0].body is not None
    assert here[1].body is not None
    assert (here[0].body.stitches_per_cm, here[0].body.rows_per_cm) == (
        here[1].body.stitches_per_cm,
        here[1].body.rows_per_cm,
    )


def test_a_recount_judges_the_same_in_both() -> None:
    """Three loops short at half way are told with the same verdict, and re-spaced in the same way."""
    papers = [Paper(by_length(over, "50 cm")) for over in ("4 in", "10.16 cm")]
    for paper in papers:
        (half,) = section(paper)[0].halts
        while section(paper)[1].mark.units < half:
            paper.did(Press())
        paper.did(TakeCount(section(paper)[1].mark.loops - 3, answer="loops"))
    assert section(papers[0]) == section(papers[1])
