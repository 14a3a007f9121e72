"""What holds for every recipe, however it was made."""

from collections.abc import Mapping
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.craft.ledger import Ledger
from finishing_tui.recipe.audit import Finding, Inputs, audit
from finishing_tui.recipe.audit.consequences import onward
from finishing_tui.recipe.audit.footing import AuditFooting, footing
from finishing_tui.recipe.audit.running import run
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.stage import entries_between, whole
from tests.examples import share
from tests.recipe.audit.balanced import balanced
from tests.strategies import PLACES, model_of, recipes


def ground(recipe: Recipe, size: int) -> AuditFooting:
    """Return what the audit of one size stands on."""
    return footing(Inputs(recipe=recipe, size=size))


@given(table=balanced())
def test_a_recipe_that_balances_is_clean(table: dict[str, Any]) -> None:
    """No false alarms: plateaus, none of something in a size, extra loops decreased later are all right."""
    found = audit(model_of(Recipe, table))
    assert not [finding.sentence for finding in found.findings if finding.level != "implied"]


@given(table=balanced(), data=st.data())
def test_one_wrong_total_is_one_error_in_its_size(table: dict[str, Any], data: st.DataObject) -> None:
    """A printed total that is off is told once, in its size, with the right number; the others stay clean."""
    size = data.draw(st.integers(0, len(table["sizes"]) - 1))
    off = data.draw(st.sampled_from((-2, -1, 1, 2)))
    right = table["number"]["band"]["by_size"][size]
    table["number"]["band"]["by_size"][size] += off
    table["step"][1]["expect"] = {"neck": "band"}
    errors = [finding for finding in audit(model_of(Recipe, table)).findings if finding.level == "error"]
    assert [(one.kind, one.size, one.expected, one.found) for one in errors] == [
        ("sum", table["sizes"][size], right, right + off)
    ]


@given(table=balanced())
def test_the_audit_enters_the_whole_stages(table: dict[str, Any]) -> None:
    """Step by step the audit's ledger is the one that entering the whole stages of every step gives."""
    recipe = model_of(Recipe, table)
    for size in range(len(recipe.sizes)):
        stands = ground(recipe, size)
        ledger = stands.opening()
        for row in run(stands).rows:
            for stage in recipe.step[row.step].stages(stands.here(ledger)):
                ledger = ledger.enter(*whole(stage))
            assert (row.live, row.tails, row.holes) == (ledger.live, tuple(ledger.tails), ledger.holes)


@given(table=recipes())
@settings(max_examples=share(150))
def test_any_recipe_is_audited_and_its_postings_sum_to_zero(table: dict[str, Any]) -> None:
    """Whatever is wrong with a recipe, every step has its row, no place is ever negative, and nothing is lost."""
    recipe = model_of(Recipe, table)
    found = audit(recipe)
    for at, size in enumerate(found.sizes):
        steps = [step for step in recipe.step if not step.for_ or size.size in step.for_]
        assert len(size.rows) == len(steps) or not size.rows
        assert all(count > 0 for row in size.rows for count in row.live.values())
        if size.rows:
            assert sum(run(ground(recipe, at)).ledger.stitches.values()) == 0


def bare(finding: Finding) -> tuple[Any, ...]:
    """Return a finding without where it is, since that names places, as does what is said of one never used."""
    message = "" if finding.kind == "never used" else finding.message
    return finding.level, finding.kind, finding.size, finding.step, message, finding.expected, finding.sum


@given(table=recipes())
def test_findings_do_not_hang_on_the_names_of_places(table: dict[str, Any]) -> None:
    """With every place named otherwise, in the file and wherever it is used, the same things are found."""
    names = {place: f"z{len(PLACES) - at}" for at, place in enumerate(PLACES)}
    other = renamed(table, names)
    before, after = (audit(model_of(Recipe, each)) for each in (table, other))
    assert [bare(finding) for finding in before.findings] == [bare(finding) for finding in after.findings]


def renamed(value: Any, names: Mapping[str, str]) -> Any:
    """Return a table with the names of places replaced: as values but for words, and as keys where places are keys."""
    if isinstance(value, dict):
        words = {"text", "title", "along", "what"}
        renewed = {key: item if key in words else renamed(item, names) for key, item in value.items()}
        for key in {"place", "expect"} & renewed.keys():
            if isinstance(renewed[key], dict):
                renewed[key] = {names.get(name, name): item for name, item in renewed[key].items()}
        return renewed
    if isinstance(value, list):
        return [renamed(item, names) for item in value]
    return names.get(value, value) if isinstance(value, str) else value


@given(table=balanced(), data=st.data())
def test_the_audit_goes_on_from_the_middle_of_any_step(table: dict[str, Any], data: st.DataObject) -> None:
    """Begun anywhere, in the middle of a step too, it comes to the same ledger as from the start."""
    recipe = model_of(Recipe, table)
    inputs = Inputs(recipe=recipe, size=data.draw(st.integers(0, len(recipe.sizes) - 1)))
    stands = footing(inputs)
    all_of_it = run(stands)
    first = data.draw(st.integers(0, len(recipe.step) - 1))
    ledger = run(stands, steps=range(first)).ledger
    stages = recipe.step[first].stages(stands.here(ledger))
    at = data.draw(st.integers(0, len(stages) - 1))
    units = stages[at].target if stages[at].unit == "spot" else stages[at].units
    done = data.draw(st.integers(0, units))
    here = halfway(ledger, stages, at, done)
    to_come = (*entries_between(stages[at], done, units), *stages[at].closing)
    to_come += tuple(entry for later in stages[at + 1 :] for entry in whole(later))
    rest = onward(inputs, here, range(first, len(recipe.step)), lambda _: {first: to_come})
    assert [row.live for row in rest.rows] == [row.live for row in all_of_it.rows[first:]]
    assert rest.ledger == all_of_it.ledger
    assert not rest.findings


def halfway(ledger: Ledger, stages: Any, at: int, done: int) -> Ledger:
    """Return the ledger with ``done`` units of stage ``at`` done, and the stages before it whole."""
    for stage in stages[:at]:
        ledger = ledger.enter(*whole(stage))
    return ledger.enter(*stages[at].opening, *entries_between(stages[at], 0, done))
