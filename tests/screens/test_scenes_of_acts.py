"""Every action at the needles is pictured in a scene: what its key leads to was looked at."""

import pytest

from finishing_tui.talk.action import Action
from finishing_tui.talk.acts import ACTS
from tests.screens.scenes import SCENES


@pytest.mark.parametrize("act", ACTS, ids=lambda act: act.id)
def test_every_action_has_a_scene(act: Action) -> None:
    """Among the keys of some scene at the needles is that of the action."""
    at_the_needles = [scene for scene in SCENES.values() if not scene.on_shelf and scene.opened is None]
    assert any({act.key, act.shown} & {*scene.keys} for scene in at_the_needles)
