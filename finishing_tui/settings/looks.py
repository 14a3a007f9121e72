"""The words for how the screens look: from the settings, or from the environment, which counts instead.

Where neither names any, the terminal decides whether every sign is drawn.
"""

import os
from collections.abc import Iterable
from typing import TextIO, cast, get_args

from finishing_tui.craft.errors import FinishingError
from finishing_tui.letters import why_plain
from finishing_tui.settings.model import ScreenLook, Settings

GROUNDS = ("auto", "dark", "light", "terminal")
"""Of these one can hold."""


class BadLooks(FinishingError):
    """The environment asks for looks there are not."""


def wrong_looks(words: Iterable[str]) -> str:
    """Return why ``words`` cannot be the looks, or nothing."""
    found = list(words)
    for word in found:
        if word not in get_args(ScreenLook):
            from finishing_tui.recipe.reader.near import near  # noqa: PLC0415  (only to tell what was perhaps meant)

            return f"there are no looks {word!r}; {near(word, get_args(ScreenLook), 'there are')}"
    grounds = [word for word in GROUNDS if word in found]
    return f"{grounds[0]} and {grounds[1]} cannot both be; leave one out" if len(grounds) > 1 else ""


def looks_in_force(settings: Settings, stream: TextIO) -> tuple[tuple[ScreenLook, ...], str]:
    """Return the words for the looks on ``stream``: those of ``FINISHING_LOOKS`` where it is set; and what to say.

    Said is why only plain letters are drawn where nobody asked for that. Raises ``BadLooks``.
    """
    named = os.environ.get("FINISHING_LOOKS", "").replace(",", " ").split()
    if why := wrong_looks(named):
        raise BadLooks(f"FINISHING_LOOKS: {why}")
    words = cast("tuple[ScreenLook, ...]", tuple(named)) or settings.look_words
    if words == ("auto",):
        why = why_plain(stream)
        return ("auto", "ascii") if why else words, why
    return words, ""
