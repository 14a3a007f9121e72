"""``finishing recipes --technique``: how the hands do one thing, or which techniques there are.

It is part of ``finishing recipes``, kept apart because it reads other files and says other things.
"""

from collections.abc import Iterator
from dataclasses import asdict

from finishing_tui import shipped
from finishing_tui.commands.answer import Answer
from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.techniques import read_technique
from finishing_tui.recipe.techniques import Technique


def technique(named: str) -> Answer:
    """Return the technique that is ``named`` by its file's name or by its title, or the list where no name is given.

    Part of a name will do where only one technique has it. Raises ``FinishingError`` with the names that are near.
    """
    known = {name: read_technique(path) for name, path in shipped.techniques().items()}
    wanted = " ".join(named.casefold().split())
    if not wanted:
        wide = max(map(len, known))
        text = "\n".join(f"{name:<{wide}}  {one.title}" for name, one in known.items())
        listed = [{"name": name, "title": one.title, "about": one.about} for name, one in known.items()]
        return Answer(text, {"techniques": listed})
    called = {one.title.casefold(): name for name, one in known.items()} | {name: name for name in known}
    parts = {name for other, name in called.items() if wanted.replace(" ", "-") in other or wanted in other}
    found = called.get(wanted) or called.get(wanted.replace(" ", "-")) or (parts.pop() if len(parts) == 1 else None)
    if found is None:
        if parts:
            raise FinishingError(f"{named!r} is in the name of several techniques: {', '.join(sorted(parts))}")
        raise FinishingError(f"no technique is named {named!r}; {near(wanted.replace(' ', '-'), known, 'there are')}")
    shown = known[found]
    data = {key: value for key, value in asdict(shown).items() if key not in {"format", "order", "helps"}}
    return Answer("\n".join(_told(shown)), {"name": found, **data, "moves": list(shown.moves)})


def _told(shown: Technique) -> Iterator[str]:
    yield shown.title
    yield shown.about
    if shown.lines:
        yield ""
        yield from (f"  {line}".rstrip() for line in shown.lines)
        yield f"  As a right-handed knitter sees it: {shown.shows}"
    yield ""
    yield from (f"  {number}  {move}" for number, move in enumerate(shown.moves, 1))
    yield ""
    yield f"right when: {shown.look}"
    yield f"if not: {shown.mend}"
    if shown.mind:
        yield f"take care: {shown.mind}"
