"""Every action leads somewhere: it does something to the garment in hand, or opens what is called after it."""

import pytest

from finishing_tui.glance.actions import ACTIONS, ActionId
from finishing_tui.screens.asked import DOES
from finishing_tui.screens.openings import OPENINGS


@pytest.mark.parametrize("action", ACTIONS)
def test_every_action_does_something_or_opens_something(action: ActionId) -> None:
    """No key is without a function behind it."""
    assert action in DOES or action in OPENINGS


def test_nothing_is_opened_that_no_action_asks_for() -> None:
    """What can be opened is called after an action, or asks which needle is meant."""
    assert {opening for opening in OPENINGS if ":" not in opening} <= set(ACTIONS)
