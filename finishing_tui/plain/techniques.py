"""How the hands do a step, said move by move: what the technique screen draws, in lines that read well aloud."""

from collections.abc import Iterator

from finishing_tui.plain.digits import whole
from finishing_tui.recipe.techniques import Technique
from finishing_tui.talk.asks import ReadTechniques


def technique(ask: ReadTechniques, rest: str) -> list[str]:
    """Return the first technique that helps at the step, or the one of that number; name the others."""
    helping = ask.helping
    if not helping:
        return ["No technique is needed here."]
    number = whole(rest) if rest else 1
    if number is None or not 1 <= number <= len(helping):
        return [f"This step has techniques 1 to {len(helping)}. Nothing was done."]
    others = [f"technique {at}: {one.title}." for at, one in enumerate(helping, 1) if at != number]
    return [*_said(helping[number - 1]), *(["these help too:"] if others else []), *others]


def _said(shown: Technique) -> Iterator[str]:
    yield f"{shown.title.removesuffix('?')}: {shown.about}"
    if shown.shows:
        yield f"seen from the right hand: {shown.shows}"
    yield from (f"move {number}: {move}" for number, move in enumerate(shown.moves, 1))
    yield f"right when: {shown.look}"
    yield f"if not: {shown.mend}"
    if shown.mind:
        yield f"take care: {shown.mind}"
