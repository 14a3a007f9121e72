"""``measure`` and ``sew on``: what is written down, and what is ticked off."""

from finishing_tui.recipe.kinds.measure import Measure
from finishing_tui.recipe.kinds.sew_on import SewOn
from tests.recipe.kinds.beginning import after, here, refused


def test_a_measure_says_what_is_wanted_and_how_near() -> None:
    """Value and tolerance are said in their own units, and the value is typed in the unit of what is wanted."""
    (stage,) = Measure(title="Measure", what="the neck opening", value="25.5 cm", tolerance="1 cm").stages(here({}))
    assert (stage.unit, stage.units, stage.act, stage.of) == ("value", 1, "measure", "cm")
    assert stage.words == "Measure the neck opening, and type it in cm. Wanted: 25.5 cm, give or take 1 cm."
    (inches,) = Measure(title="Measure", what="the band", value="9 1/2 in").stages(here({}))
    assert inches.of == "in"
    (free,) = Measure(title="Measure", what="the band").stages(here({}))
    assert (free.of, "Wanted" in free.words) == ("cm", False)


def test_refused_measures_name_what_is_wrong() -> None:
    """A length without a unit or out of any range; a tolerance of nothing, or as much as the value."""
    assert "'25'" in refused(Measure(title="M", what="it", value="25"), here({}))
    assert "10000 cm" in refused(Measure(title="M", what="it", value="999999 cm"), here({}))
    assert "1 cm" in refused(Measure(title="M", what="it", tolerance="1 cm"), here({}))
    assert "2 cm is as much as the 1 cm" in refused(
        Measure(title="M", what="it", value="1 cm", tolerance="2 cm"), here({})
    )


def test_each_thing_is_sewn_on_by_itself() -> None:
    """An item each, and nothing in the ledger."""
    step = SewOn(title="Sew the buttons on", what="button", count=5)
    start = here({"neck": 3})
    (stage,) = step.stages(start)
    assert [item.text for item in stage.items] == [f"button {each} of 5" for each in range(1, 6)]
    assert stage.words == "Sew 5 buttons on, each at its mark."
    assert after(step, start) == start.ledger


def test_the_recipe_s_own_caution_is_kept() -> None:
    """A caution is the recipe's to give; the kind invents none."""
    step = SewOn(title="Sew on", what="button", mind="Choking hazard: sew very firmly and tug-test.")
    assert "Choking" in step.mind
    assert "Choking" not in step.stages(here({}))[0].words


def test_sewing_on_none_or_absurdly_many() -> None:
    """None is done as it begins; more than 1,000 is refused."""
    assert SewOn(title="S", what="button", count=0).stages(here({}))[0].units == 0
    assert "100000" in refused(SewOn(title="S", what="button", count=100_000), here({}))
