"""Wishes: what is told names the keys as they are set."""

from datetime import UTC, datetime

from hypothesis import given

from finishing_tui.garment.commands import TakeUp
from finishing_tui.glance import glance, look_at
from finishing_tui.glance.values import MessageFace
from finishing_tui.glance.wishes import Wishes
from finishing_tui.settings.reading import settings_in
from finishing_tui.talk.counting import meaning
from tests.garment.edges import along
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND
from tests.settings.keymaps import Table, as_toml, keymaps

NOW = datetime(2024, 5, 1, 12, tzinfo=UTC)


@given(keymaps())
def test_what_is_told_names_the_keys_in_force(table: Table) -> None:
    """To take a step up, and to take a count: the key is the one that is set, whatever it is."""
    keys = settings_in(as_toml(table), "settings.toml").in_force
    face = look_at(Paper(plan_for(NECKBAND)).state, 7, NOW, keys.wishes()).face
    assert isinstance(face, MessageFace)
    assert face.words == f"Press {keys.shown('needles.finish')} to start this step."
    assert meaning(along(8, 6).state, keys) == f"{keys.shown('needles.finish')}: stitches counted"


def test_usual_keys_are_named_as_ever() -> None:
    """Without wishes the usual keys are named."""
    paper = Paper(plan_for(NECKBAND))
    assert paper.do(TakeUp(1)) is None
    seen = glance(paper.state, NOW)
    assert seen == look_at(paper.state, paper.state.current, NOW, Wishes())
