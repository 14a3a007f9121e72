"""How the hands do a step, said move by move: what the technique screen draws, in lines that read well aloud."""

from collections.abc import Iterator

from finishing_tui.craft.errors import FinishingError
from finishing_tui.glance.techniques import techniques_for
from finishing_tui.plain.held import Held
from finishing_tui.plain.questions import Reply
from finishing_tui.recipe.techniques import Technique


def technique(held: Held, rest: str) -> Reply:
    """Say the first technique that helps at the step in the middle, or the one of that number; name the others."""
    try:
        helping = techniques_for(held.state, held.looking)
    except FinishingError as error:
        return [str(error)], None
    if not helping:
        return ["No technique is wanted here."], None
    if rest and not (rest.isascii() and rest.isdecimal() and len(rest) < 4 and 1 <= int(rest) <= len(helping)):
        return [f"The techniques of this step are 1 to {len(helping)}. Nothing was done."], None
    number = int(rest) if rest else 1
    others = [f"technique {at}: {one.title}." for at, one in enumerate(helping, 1) if at != number]
    return [*_said(helping[number - 1]), *(["also of help here:"] if others else []), *others], None


def _said(shown: Technique) -> Iterator[str]:
    yield f"{shown.title.removesuffix('?')}: {shown.about}"
    if shown.shows:
        yield f"seen from the right hand: {shown.shows}"
    yield from (f"move {number}: {move}" for number, move in enumerate(shown.moves, 1))
    yield f"right when: {shown.look}"
    yield f"if not: {shown.mend}"
    if shown.mind:
        yield f"take care: {shown.mind}"
