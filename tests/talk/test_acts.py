"""All actions at the needles, walked: what each must have, and that what is not offered says why."""

from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest

from finishing_tui.garment.commands import LeaveOut, Other, Press
from finishing_tui.garment.hand import InHand
from finishing_tui.plain.words import known, understood
from finishing_tui.talk import acts
from finishing_tui.talk.action import Action
from finishing_tui.talk.acts import ACTS
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.offers import offers
from tests.garment.test_mirror import two_sides, walk
from tests.plain.making import Twin, crew, garment
from tests.plain.test_whole_garments import NECKBAND

EACH = pytest.mark.parametrize("act", ACTS, ids=lambda act: act.id)


@EACH
def test_an_action_has_all_that_is_made_from_it(act: Action) -> None:
    """A file named by its id, a key nobody else has, a plain word that means it, and a line of help."""
    assert import_module(f"{acts.__name__}.{act.id}").ACT is act
    assert [one for one in ACTS if act.key == one.key or act.id == one.id] == [act]
    words = {act.id.replace("_", " "), act.shown, *filter(None, [act.letter])}
    assert {known()[word] for word in words} == {act.id}
    assert not isinstance(understood(act.shown, ()), str)
    assert act.help
    assert act.help[0].islower() or act.help.startswith("I ")
    assert not act.help.endswith(".")


def test_every_file_is_listed() -> None:
    """There is no file of an action that the one line was forgotten for."""
    files = {path.stem for path in Path(acts.__file__).parent.glob("*.py")} - {"__init__"}
    assert files == {act.id for act in ACTS}


def moments(folder: Path) -> Iterator[InHand]:
    """Go through a crew neck and a vest, stopping where something is offered that is not offered elsewhere."""
    twin = Twin(crew(folder / "crew"))
    yield twin.hand
    twin.works_to(1)
    yield twin.hand
    twin.does(LeaveOut(2, sure=True))
    twin.takes_back()
    yield twin.hand
    twin.works_to(NECKBAND, 0, 5)
    yield twin.hand
    twin.does(Other())
    twin.does(Press())
    yield twin.hand
    twin.puts_down("")
    vest = Twin(garment(folder / "vest", "long-front-vest", "XS"))
    vest.works_to(12, 1)  # an edge nobody counted, before its first stitch
    yield vest.hand
    while vest.hand.state.current is not None:
        vest.works_on()
    yield vest.hand
    vest.puts_down("")


def test_what_is_offered_is_not_refused_and_what_is_not_says_why(tmp_path: Path) -> None:
    """At each moment what is not offered is refused in a sentence and changes nothing; each is offered at some moment.

    The second of two sides is a garment of its own.
    """
    seen = set()
    for hand in moments(tmp_path):
        offered = {offer.action for offer in offers(hand.state)}
        seen |= offered
        for act in ACTS:
            talk, before = Talk(hand, "", USUAL), hand.state
            if act.id in offered:
                continue
            ask_for(talk, act.id)
            assert talk.alarm, act.id
            assert talk.said.endswith((".", "?")), act.id
            assert talk.asked is None, act.id
            assert hand.state is before, act.id
    sides = two_sides()
    walk(sides, [True])
    sides.press()  # the loop in the corner
    seen |= {offer.action for offer in offers(sides.state)}
    assert seen == {act.id for act in ACTS}


@EACH
def test_only_looked_at_an_action_changes_nothing(act: Action, tmp_path: Path) -> None:
    """Where a garment can only be looked at each action shows something, or says that nothing can be changed."""
    Twin(crew(tmp_path / "crew")).puts_down("")
    hand = InHand.open(tmp_path / "crew", look=True)
    talk, before = Talk(hand, "only looked at", USUAL), hand.state
    ask_for(talk, act.id)
    assert (talk.said == "Only looked at.") is not act.changes_nothing
    assert hand.state is before
    hand.close()
