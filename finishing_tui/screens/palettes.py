"""What a palette offers: at the needles what the conversation does, elsewhere what the keys of the screen do."""

from collections.abc import Callable
from typing import Any

from textual.screen import Screen

from finishing_tui.screens.finding import Finding
from finishing_tui.screens.keys import NUMBERS, PALETTES, keys_of
from finishing_tui.screens.palette import PaletteScreen
from finishing_tui.talk.action import Offer
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.asks import FindAction
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.offers import open_to
from finishing_tui.talk.rooms import GROUPS, KEYED
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.entry import EntryBox

QUESTION = "What do you want to do?"

_EVERYWHERE = frozenset({"lists", "pages"})
"""The groups of actions that many screens have."""

_OWN = frozenset(GROUPS) - _EVERYWHERE - {"needles"}
"""Those that one screen has; the keys of the needles, on other screens, only lead back there."""

_MOVES = ("up", "down", "left", "right", "back", "on", "before", "next")
"""What only moves is offered last."""


def put_palette(over: Screen[Any], talk: Talk, ask: FindAction, then: Callable[[str | None], None]) -> None:
    """Offer at the needles all that can be done there; ``then`` gets the id of the action, or None."""
    offers = [one for one in open_to(talk) if one.action != "palette"]

    def entry(offer: Offer) -> Choice:
        """Return an action with its key; it is found by what is typed for it in a line too."""
        also = f"{offer.label} {BY_ID[offer.action].letter}"
        return Choice(offer.what, aside=talk.keys.shown(f"needles.{offer.action}"), also=also)

    entries = [entry(one) for one in offers]
    over.app.push_screen(
        PaletteScreen(ask.question, entries), lambda at: then(None if at is None else offers[at].action)
    )


def open_palette(over: Screen[Any]) -> None:
    """Offer all that the keys of a screen do, and the lines of its list where digits choose them.

    It rings where a line of text is typed: that takes the keys.
    """
    if isinstance(over.focused, EntryBox):
        over.app.bell()
        return
    found = [*_keyed(over, _OWN), *_lines(over), *_keyed(over, _EVERYWHERE)]

    async def chosen(at: int | None) -> None:
        if at is not None:
            await over.app.run_action(found[at][1], over)

    over.app.push_screen(PaletteScreen(QUESTION, [entry for entry, _ in found]), chosen)


def _keyed(over: Screen[Any], groups: frozenset[str]) -> list[tuple[Choice, str]]:
    """Return what each key of these groups does, and what Textual does for it; each once."""
    alive = {str(one.binding.id): one.binding.action for one in over.active_bindings.values()}
    if not isinstance(over, Finding) or not over.is_long:
        alive.pop("lists.find", None)
    ids = [one.id for one in KEYED.values() if one.group in groups and one.id in alive and one.id not in PALETTES]
    once = {alive[one]: one for one in reversed(ids)}
    key = keys_of(over).shown
    return [
        (Choice(KEYED[one].help, aside=key(one)), action)
        for action, one in sorted(once.items(), key=lambda item: (KEYED[item[1]].name in _MOVES, ids.index(item[1])))
    ]


def _lines(over: Screen[Any]) -> list[tuple[Choice, str]]:
    """Return the lines of a list, where a digit chooses its own."""
    first = over.active_bindings.get(NUMBERS[0].key)
    if first is None or first.binding.action != NUMBERS[0].action:
        return []
    lines = over.query_one(Choices).choices
    verb = f"{over.CHOOSES} " if isinstance(over, Finding) else ""  # the answers of a box say what they do
    return [(Choice(f"{verb}{one.text}", aside=one.aside), f"take({at})") for at, one in enumerate(lines)]
