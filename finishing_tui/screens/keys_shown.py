"""The keys that are alive at the needles, with what they will do just now: for the foot of the screen and the help."""

from collections.abc import Mapping

from finishing_tui.garment.stops import due
from finishing_tui.glance.counting import asks_for_value, countables
from finishing_tui.talk.action import GROUPS, Offer
from finishing_tui.talk.acts import ACTS
from finishing_tui.talk.acts.edge_ends import may_end_anywhere
from finishing_tui.talk.acts.finish import LAST
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.keys import Keys
from finishing_tui.talk.offers import grouped, open_to
from finishing_tui.widgets.key_line import KeyPlace, ShownKey

PLACES: dict[str, tuple[int, int]] = {
    "press": (12, 12),
    "finish": (8, 8),
    "recount": (5, 5),
    "other": (7, 7),
    "take_back": (4, 4),
}
"""The actions whose keys keep their places from press to press, and how wide their labels are, wide and narrow."""

FIRST_STITCH = (16, 16)
"""Before the first stitch the key that goes there has the place of the keys to count and to do otherwise."""

KeyGroup = tuple[str, list[ShownKey]]
"""A heading, and keys with what they will do."""


def foot(talk: Talk) -> list[ShownKey | KeyPlace]:
    """Return the keys for the foot of the screen: always in this order, those of the stitch first, help last."""
    offered = {one.action: one for one in open_to(talk)}
    last = "finish" in offered and offered["finish"].label == LAST  # one key is enough for one act

    def key(action: str) -> str:
        return talk.keys.shown(f"needles.{action}")

    def label(action: str) -> str:
        said = offered[action].label if action in offered and not (action == "press" and last) else ""
        where = _where(talk, action) if said and talk.looking is not None else ""
        return f"{said.split()[0]}{where}" if where else said

    places = {} if talk.read_only else dict(PLACES)
    if "first_stitch" in offered and not {"recount", "other"} & {*offered}:
        del places["recount"], places["other"]
        places = {**places, "first_stitch": FIRST_STITCH, "take_back": places.pop("take_back")}
    ends = "edge_ends" in offered and may_end_anywhere(talk.state)
    if talk.looking is None and not talk.typed and ("pins" in offered or ends):
        places = _at_an_open_edge(talk, offered, places, ends=ends)
    kept = [
        KeyPlace(key(one), label(one), *cells, ends=one in {"finish", "edge_ends"}) for one, cells in places.items()
    ]
    clear = [(key("clear"), "clear" if talk.typed else "go back")] if _clears(talk) else []
    placed = {*places, *PLACES, *(("edge_ends",) if ends else ()), "help"}  # that one stands nowhere else then
    others = [(key(act.id), label(act.id)) for act in ACTS if act.id in offered and act.id not in placed]
    if talk.looking is not None:  # the way back comes before what else can be done there, and no place is kept
        left = sorted((one for one in kept[2:] if one.label), key=lambda one: one.key != key("take_back"))
        return [*kept[:2], *clear, *left, *others, KeyPlace(key("help"), label("help"), 4, brief=True)]
    return [*kept, *clear, *others, KeyPlace(key("help"), label("help"), 4, brief=True)]


def _at_an_open_edge(
    talk: Talk, offered: Mapping[str, Offer], places: dict[str, tuple[int, int]], *, ends: bool
) -> dict[str, tuple[int, int]]:
    """Give the key of what an edge nobody counted needs next the place of one that is idle there.

    Before the first stitch that is to pin it, for there is nothing to count; from then on to say that it ends, but
    where a count is due. Each key has only that one place.
    """
    put = {}
    if "pins" in offered:
        put["recount"] = "pins"
    if ends and due(talk.state) is None:
        put["finish"] = "edge_ends"
    return {put.get(one, one): cells for one, cells in places.items()} if put else places


def now(talk: Talk, in_force: Keys) -> list[KeyGroup]:
    """Return every key that does something now under the heading of what it is about, each once."""
    every = in_force.every
    found = {
        str(group): [(every(f"needles.{one.action}"), f"{one.what}{_where(talk, one.action)}") for one in some]
        for group, some in grouped(open_to(talk))
    }
    numbers = _number(talk, in_force)
    here = [(every("needles.clear"), clears)] if (clears := _clears(talk)) else []
    first = found.get("right now", [])
    found["right now"] = [*first[:2], *numbers, *first[2:], *here]
    return [(group, found[group]) for group in GROUPS if found.get(group)]


def _where(talk: Talk, action: str) -> str:
    """Return which step is counted on while another one is looked at: no press is lost, and none goes to that one."""
    step = talk.state.current
    if talk.looking is None or step is None or action not in {"press", "other"}:
        return ""
    return f", step {step + 1}"


def _number(talk: Talk, in_force: Keys) -> list[ShownKey]:
    """Return how a number is entered, where one can be."""
    what = "measurement" if asks_for_value(talk.state) else "count" if countables(talk.state) else ""
    if not what or talk.read_only or talk.typed:
        return []
    return [("digits", f"type a {what}, then {in_force.shown('needles.finish')}")]


def _clears(talk: Talk) -> str:
    if talk.typed:
        return "clear what you typed"
    return "go back to your step" if talk.looking is not None else ""
