"""The keys at the foot and in the help: the same places from press to press, and each key that works now, once."""

from pathlib import Path
from random import Random

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.stops import due
from finishing_tui.screens.keys_shown import PLACES, foot, now
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.offers import offers, open_to
from finishing_tui.widgets.key_line import KeyLine, KeyPlace
from tests.plain.making import crew
from tests.screens.hands import PICK_UP, RIB, Hours, app_for, needles, settled, shelf, shown, work_to

WALK = 40
"""So many keys a walk has; a section of the neck has fewer spots."""


def in_talk(folder: Path, look: str = "") -> Talk:
    """Return the conversation about the garment in ``folder``."""
    hand = InHand.open(folder, clock=Hours().clock(), look=bool(look))
    if not look:
        hand.pick_up()
    return Talk(hand, look, USUAL)


def columns(talk: Talk, *, narrow: bool) -> dict[str, int]:
    """Return where on the line each key with a place of its own begins."""
    at, found = 0, {}
    for one in foot(talk):
        if not isinstance(one, KeyPlace) or one.brief:
            break
        found[one.key] = at
        at += len(one.key) + 1 + max(len(one.label), one.narrow if narrow else one.wide) + 2
    return found


@pytest.mark.parametrize("narrow", [False, True])
@pytest.mark.parametrize("seed", range(4))
def test_the_keys_of_the_stitch_keep_their_places(seed: int, narrow: bool, tmp_path: Path) -> None:  # noqa: FBT001
    """Over a random walk of presses, strays, things taken back, and counts along an edge no key moves by a cell."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    talk, draw = in_talk(folder), Random(seed)  # noqa: S311  (no secret)
    talk.hand.do(Press())
    first = columns(talk, narrow=narrow)
    assert set(first) == {BY_ID[action].shown for action in PLACES}
    dues = 0
    for _ in range(WALK):
        ask_for(talk, draw.choice(["press"] * 6 + ["other", "take_back", "finish", "pace"]))
        talk.asks(None)
        if talk.state.current != PICK_UP or talk.state.standing is None or talk.state.standing.work is None:
            break
        if talk.state.standing.work.at:
            break
        dues += due(talk.state) is not None
        assert columns(talk, narrow=narrow) == first
    assert dues or seed


@pytest.mark.parametrize("size", [(40, 20), (60, 24), (80, 24), (100, 30)])
async def test_a_narrow_foot_has_fewer_keys_and_never_others(size: tuple[int, int], tmp_path: Path) -> None:
    """While a count is due what answers it is there at every width: enter says the number, and r; help stands last."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 9)
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        line = app.screen.query_one(KeyLine)
        text = " ".join(shown(app).split("\n")[-line.size.height :])
        assert "enter it's 9" in text
        assert "r count" in text
        assert text.endswith("?" if size[0] < 62 else "? help")
        there = [text.index(f"{key} {label}") for key, label in line.keys_shown[:-1] if f" {key} {label}" in text]
        assert there == sorted(there)
        assert len(there) >= 3
        assert all(f" {key} {label}" in text for key, label in line.keys_shown[: len(there)])


@pytest.mark.parametrize("step", [0, 1, PICK_UP, PICK_UP + 2, 11])
@pytest.mark.parametrize("typed", ["", "14"])
@pytest.mark.parametrize("looking", [False, True])
def test_help_has_each_key_that_works_now_once(step: int, typed: str, looking: bool, tmp_path: Path) -> None:  # noqa: FBT001
    """Under headings of its own, with what it does now; none that is refused, and those that clear only if they do."""
    folder = shelf(tmp_path)
    work_to(folder, step)
    talk = in_talk(folder)
    if looking:
        ask_for(talk, "look_back" if step > 5 else "look_on")
    for sign in typed:
        talk.typed += sign
    groups = now(talk, USUAL)
    keys = [key for _, some in groups for key, _ in some]
    assert len(keys) == len(set(keys))
    acts = {one.action for one in open_to(talk)}
    named = {USUAL.every(f"needles.{action}") for action in acts}
    assert named == set(keys) - {"digits", "escape"}
    assert ("escape" in keys) == bool(typed or looking)
    assert all((what and what[0].islower()) or what[:1].isdigit() for _, some in groups for _, what in some)
    assert [group for group, some in groups if not some] == []
    if typed:
        assert acts <= {act for act, one in BY_ID.items() if one.digits}


def test_only_looked_at_help_has_what_may_be_looked_up(tmp_path: Path) -> None:
    """Nothing that changes anything; putting it down is going back."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    groups = dict(now(in_talk(folder, "only looked at"), USUAL))
    assert list(groups) == ["look something up", "leave"]
    assert groups["leave"] == [("q", "go back")]


def test_no_offer_says_what_another_says(tmp_path: Path) -> None:
    """What a key does is said once, by what it does now; a label is no sentence."""
    found = offers(in_talk(crew(tmp_path / "crew")).state)
    whats = [one.what for one in found if one.action not in {"press", "finish"}]
    assert len(whats) == len(set(whats))
    assert all(len(one.label.split()) <= 3 for one in found)


@pytest.mark.parametrize("size", [(40, 20), (80, 24), (100, 30)])
async def test_no_key_moves_as_it_is_drawn(size: tuple[int, int], tmp_path: Path) -> None:
    """On the foot itself, with digits typed or not, other and tink stand where they stood, and are shown.

    Putting it down is there where there is room for its word too: no key stands without one.
    """
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        found = []
        for pressed in ("", "space", "4", "backspace", "x", "p", "escape"):
            await pilot.press(*filter(None, [pressed]))
            await pilot.pause()
            text = "".join(line.ljust(size[0]) for line in shown(app).split("\n")[-2:])
            found.append((text.find(" x "), text.find(" backspace "), text.find(" q put down")))
            assert (" q " in text) == (" q put down" in text)
        places = [{at for at in key if at >= 0} for key in zip(*found, strict=True)]
        assert [len(one) for one in places] == [1, 1, int(size[0] > 80)]


async def test_help_opens_on_the_keys(tmp_path: Path) -> None:
    """The first thing on the page, at the smallest size too, and the words of the step are below."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 9)
    app = app_for(folder)
    async with app.run_test(size=(40, 20)) as pilot:
        await pilot.press("?")
        lines = [line.strip() for line in shown(app).split("\n") if line.strip()]
        assert lines[1] == "right now"
        assert "it's 9, as it should be" in lines[3]
        await pilot.press("?")
        assert app.screen is needles(app)


@pytest.mark.parametrize("size", [(40, 20), (80, 24)])
async def test_what_counts_elsewhere_says_where(size: tuple[int, int], tmp_path: Path) -> None:
    """While another step is looked at, the key that still counts on the one under way names it, at every width."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await pilot.press("right")
        assert f"space pick, step {PICK_UP + 1}" in " ".join(shown(app).split())
        await pilot.press("space")
        assert ", step" not in app.screen.query_one(KeyLine).keys_shown[0][1]


async def test_while_looking_the_ways_back_are_at_the_foot(tmp_path: Path) -> None:
    """At 80x24: to the step under the needles, and to before the last press; the way off the needles is in the help."""
    folder = shelf(tmp_path)
    work_to(folder, RIB)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("right")
        await settled(pilot)
        foot = shown(app).split("\n")[-1]
        assert all(f" {key} " in foot for key in ("space", "enter", "escape", "backspace", "?")), foot


def test_what_an_edge_nobody_counted_needs_is_at_the_foot(tmp_path: Path) -> None:
    """Before its first stitch it can be pinned, from then on it may end; the other keys keep their places.

    The key that says it ends stands in no other place, whatever is due.
    """
    folder = shelf(tmp_path, recipe="long-front-vest", size="XL")
    work_to(folder, 12)
    talk = in_talk(folder)
    assert [one.label for one in foot(talk) if isinstance(one, KeyPlace)][:3] == ["pick", "end step", "pin it"]
    for _ in range(12):
        talk.hand.do(Press())
        labels = [one.label if isinstance(one, KeyPlace) else one[1] for one in foot(talk)]
        assert labels.index("edge ends") == 1 if "edge ends" in labels else labels[1] == "it's 12"
    assert [one.label for one in foot(talk) if isinstance(one, KeyPlace)][:3] == ["skip 1, pick", "it's 12", "count"]
    talk.hand.do(Press())
    assert [one.label for one in foot(talk) if isinstance(one, KeyPlace)][:3] == ["pick", "edge ends", "count"]
    talk.typed = "13"
    assert [one.label for one in foot(talk) if isinstance(one, KeyPlace)][:3] == ["", "it's 13", "count"]
