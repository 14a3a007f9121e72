"""Garments crafted to do harm: looking at one is safe, and so is working it.

A small share of what is run by hand: ``pytest -m long``, or ``python -m tests.safety.crafted 500 1``.
"""

import pytest

from tests.safety.crafted.looks import Figures, looked_at
from tests.seed import seed_of_commit

DECODED = 12
"""How often a row may be decoded while its garment is looked at once: to open it, and for each thing taken back."""

READ = 16
"""How often a body may be read then: to prove it, to decode it, and by each of the ways in which salvage tries."""

MEMORY = 150 * 2**20
"""Bytes that may be in use at once: what the screens need, and one body of the largest size there is, several times."""


def test_crafted_garments_do_no_harm() -> None:
    """No traceback, nothing raw on its way out, no file outside touched; what is read and kept is bounded."""
    _does_no_harm(looked_at(10, seed_of_commit(), screens_every=5, weigh_every=10))


@pytest.mark.long
def test_many_more_do_none() -> None:
    """The same of five hundred, crafted from the seed of the commit: all on the screens, and weighed.

    Some of so many can be read and some cannot, or the crafting has gone stale; of a few all may be refused.
    """
    seen = looked_at(500, seed_of_commit())
    _does_no_harm(seen)
    assert len(seen.statuses["record"]) == 2


def _does_no_harm(seen: Figures) -> None:
    assert seen.faults == []
    assert seen.most_rows <= DECODED
    assert seen.most_read <= READ
    assert seen.most_memory <= MEMORY
    for way, statuses in seen.statuses.items():
        assert set(statuses) <= {0, 1, 2}, way
