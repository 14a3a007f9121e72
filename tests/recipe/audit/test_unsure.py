"""Edges of which a pattern prints a rate and no count: what the audit then knows, and what it keeps still about."""

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.recipe.audit import audit_size, running
from finishing_tui.recipe.audit.auditing import SizeAudit
from finishing_tui.recipe.audit.footing import GUESSES, Inputs
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_text
from tests.examples import share
from tests.recipe_texts import place, recipe, section, step

PLACES = place("band") + place("holder", "holder") + place("back", "holder", live=10)


def of(*steps: str) -> Recipe:
    """Return a recipe that picks up an edge by rate alone and goes on with ``steps``."""
    edge = section(along="front edge", ratio="2/3")
    back = section(from_="back", along="back neck")
    pick_up = step("pick up and knit", "Pick up the band", edge, back, onto="band")
    return read_text(recipe("By rate", PLACES, pick_up, *steps, format=2), "a recipe of the tests")


def audited(recipe: Recipe, guesses: tuple[int, int], monkeypatch: pytest.MonkeyPatch) -> SizeAudit:
    """Audit with other guesses at how long the edge is."""
    with monkeypatch.context() as patch:
        patch.setattr(running, "GUESSES", guesses)
        return audit_size(Inputs(recipe=recipe, size=0, guess=guesses[0]))


def seen(found: SizeAudit) -> list[Any]:
    """Return all that an audit says."""
    return [found.findings, found.implied, [(dict(row.live), row.unsure, row.tails, row.holes) for row in found.rows]]


def test_what_a_rate_alone_gives_is_not_known_on_paper() -> None:
    """The needle is unsure from there; what takes all of it leaves it empty, and that is known again."""
    found = audit_size(
        Inputs(recipe=of(step("bind off", "Bind off", from_="band"), step("weave in", "Weave in", tails="all")), size=0)
    )
    assert [row.unsure for row in found.rows] == [{"band"}, frozenset(), frozenset()]
    assert "band" not in found.rows[0].live
    assert not found.findings


def test_the_next_printed_total_makes_it_known_and_is_never_called_wrong() -> None:
    """80 on the needle after the first row: from there on every count is checked again."""
    sure = step("work", "Work a row", on="band", rows=1, expect={"band": 80})
    wrong = step("work", "Work two rows", on="band", rows=2, expect={"band": 82})
    found = audit_size(Inputs(recipe=of(sure, wrong), size=0))
    assert [dict(row.live) for row in found.rows] == [{}, {"band": 80}, {"band": 80}]
    assert [dict(row.printed) for row in found.rows] == [{}, {}, {"band": 82}]
    assert [(one.kind, one.expected, one.found) for one in found.findings if one.step == 2] == [
        ("printed count", 82, 80)
    ]


def test_what_is_moved_from_there_is_not_known_either() -> None:
    """A holder that gets stitches of it is unsure with it; a repeat on it is not called wrong."""
    move = step("move", "Move it", from_="band", to="holder")
    band = step("work", "Rib", on="holder", rows=2, repeat={"of": 97})
    found = audit_size(Inputs(recipe=of(move, band), size=0))
    assert [row.unsure for row in found.rows] == [{"band"}, {"holder"}, {"holder"}]
    assert {one.kind for one in found.findings} <= {"tail left", "yarn left"}


_STEPS: tuple[Mapping[str, Any], ...] = (
    {"do": "move", "title": "Move some", "from_": "band", "to": "holder", "count": 12},
    {"do": "move", "title": "Move all", "from_": "band", "to": "holder"},
    {"do": "work", "title": "Work", "on": "band", "rows": 2, "change": -3},
    {"do": "work", "title": "Rib", "on": "holder", "rows": 2, "repeat": {"of": 4, "plus": 2}},
    {"do": "shape", "title": "To 60", "on": "band", "to": 60},
    {"do": "count", "title": "Count", "place": "band", "count": 66},
    {"do": "work", "title": "Known", "on": "band", "rows": 1, "expect": {"band": 66}},
    {"do": "bind off", "title": "Bind off some", "from_": "band", "count": 5},
    {"do": "bind off", "title": "Bind off", "from_": "band"},
    {"do": "bind off", "title": "Bind off the holder", "from_": "holder"},
    {"do": "join", "title": "Join", "front": "band", "back": "holder"},
    {"do": "weave in", "title": "Weave in", "tails": "all"},
)


@settings(max_examples=share(60))
@given(st.lists(st.sampled_from(_STEPS), max_size=5), st.tuples(st.integers(300, 700), st.integers(800, 1500)))
def test_nothing_said_depends_on_a_guess(steps: list[Mapping[str, Any]], guesses: tuple[int, int]) -> None:
    """Whatever comes after it: the audit says the same, word for word, whatever it takes the edge to be."""
    made = of(*(step(**one) for one in steps))
    with pytest.MonkeyPatch.context() as patch:
        assert seen(audited(made, guesses, patch)) == seen(audited(made, GUESSES, patch))
