"""Screen, lines and speech say the same facts: whatever is on the screen at the needles can be heard."""

from random import Random

import pytest

from finishing_tui.garment.events import Pace
from finishing_tui.glance import look_at
from finishing_tui.glance.spoken import spoken
from finishing_tui.glance.values import Glance, ItemFace, MessageFace, RoundFace, SpotFace, ValueFace
from finishing_tui.plain.telling import coming, holding, part, upcoming
from finishing_tui.widgets.faces import VIEWS
from tests.garment.test_recipes_by_commands import SIZES, done_or_taken_back, taken
from tests.safety.test_random_offers import NOW

WALKED = 300
"""So many things are done with each recipe."""


def drawn(seen: Glance) -> tuple[list[str], str]:
    """Return the figures on the screen, and the verb with all that stands beside it, in small letters."""
    face = seen.face
    shown = VIEWS[type(face)]().figures(face)
    return [one for one in (shown.count, shown.of) if one], f"{shown.verb} {shown.first}".lower()


def said(seen: Glance) -> str:
    """Return what is said in lines of all that."""
    return " ".join((upcoming(seen.face), *coming(seen), *part(seen), *holding(seen))).lower()


@pytest.mark.parametrize("name", ["crew-neck", "cardigan-bands", "hood", "v-neck", "seamed-crew-neck"])
@pytest.mark.parametrize("pace", ["loop", "spot", "run"])
def test_what_is_drawn_is_said(name: str, pace: Pace) -> None:
    """On a random walk through a recipe: figures, verb, what comes before it, and what is held where."""
    dice = Random(f"{name} {pace}")  # noqa: S311  (a hand, not a secret)
    paper = taken(name, SIZES[name][0], pace=pace)
    for _ in range(WALKED):
        done_or_taken_back(paper, dice)
        seen = look_at(paper.state, paper.state.current, NOW)
        figures, words = drawn(seen)
        lines, speech = said(seen), spoken(None, seen, "all").lower()
        for held in seen.holdings:
            assert f"on the {held.name}: {held.stitches}".lower() in lines
        match seen.face:
            case ItemFace(items=items, done=done):
                item = items[done].lower().rstrip(".")
                assert item in lines
                assert item in speech
            case ValueFace(words=wanted) | MessageFace(words=wanted):
                assert wanted.lower().rstrip(".") in lines
                assert wanted.lower().rstrip(".") in speech
            case RoundFace(count=count, of=of, unit=name_of_one):  # speech names the one that comes next
                assert f"{name_of_one} {count} of {of}" in lines
                assert f"{name_of_one} {count + 1} of {of}" in speech
            case _:
                assert f"{figures[0]} of {figures[1]}" in lines
                assert f"{figures[0]} of {figures[1]}" in speech
        if isinstance(seen.face, SpotFace) and not seen.face.waits:
            for word in words.replace(" first", "").split():
                assert word in lines, (words, lines)
                assert word in speech, (words, speech)
        if isinstance(seen.face, SpotFace) and seen.face.due:
            assert seen.face.halfway.lower() in lines
