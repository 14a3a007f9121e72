"""A correction as an editor writes it: "bind off 16, not 17", "23 from back, not 24", "7 times, not 8"."""

from collections.abc import Sequence

from finishing_tui.craft.words import listing
from finishing_tui.recipe.audit.finding import Correction, Finding, Where
from finishing_tui.recipe.audit.printing import value_at
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.model import Recipe

MOST = 3
"""Corrections named for one error."""


def said(recipe: Recipe, finding: Finding, found: Sequence[Correction]) -> str:
    """Return ``found`` in words, the likeliest first; another print is last, unless nothing else goes as evenly."""
    few = [one for at, one in enumerate(found[:MOST]) if at == 0 or not one.printed]
    ways = [_words(recipe, [one for one in few if one.wheres == where], finding) for where in _wheres(few)]
    text = "; ".join((*ways[:-1], f"or {ways[-1]}")) if len(ways) > 1 else "".join(ways)
    if finding.kind == "repeat" and text:
        return f"{finding.suggestion}: {text}"
    last = next((one for one in found if one.printed and one not in few), None)
    return f"{text}; else print {last.now}" if last and text else text


def _wheres(found: Sequence[Correction]) -> dict[tuple[Where, ...], None]:
    return dict.fromkeys(one.wheres for one in found)


def _words(recipe: Recipe, same: Sequence[Correction], finding: Finding) -> str:
    """Say corrections of one and the same number: "side 22 or 24, not 23"."""
    was, where = same[0].was, same[0].wheres[0]
    now = listing([str(abs(one.now)) for one in same], "or")
    if same[0].printed:
        return f"print {now}"
    match where:
        case ("number", str(name), *_):
            return f"{name} {now}, not {was}"
        case ("place", str(name), *_):
            return f"{now} on the {recipe.place[name].text} at the start, not {was}"
        case ("gauge", *band, str(key)):
            return f"{'band ' if band else ''}gauge {now} {key}, not {was}"
        case ("step", int(at), *path):
            elsewhere = "" if at == finding.step else f" in step {at + 1}"
            if path[0] == "section":
                parts = [value_at(recipe, part[:-1]) for part in same[0].wheres]
                return f"{_of_section(parts, str(path[-1]), now, was)}{elsewhere}"
            return f"{_in_step(recipe, where, now, was)}{elsewhere}"
    return f"{where[-1]} = {now}, not {was}"


def _in_step(recipe: Recipe, where: Where, now: str, was: int) -> str:
    _, at, *path = where
    match path:
        case ("expect", str(place)):
            return f"print {now} on the {recipe.place[place].text}, not {was}"
        case ("repeat", "of"):
            return f"a multiple of {now}, not {was}"
        case ("repeat", "plus"):
            return f"plus {now}, not {was}"
        case ("count",):
            return f"{recipe.step[int(at)].do} {now}, not {was}"
        case (*_, "times"):
            return f"{now} times, not {was}"
        case (*_, "round"):
            return f"round {now}, not {was}"
        case (*_, "every"):
            return f"every {now} rounds, not {was}"
        case ("shaping", _, "change"):
            return f"{now} {'more' if was > 0 else 'fewer'} each time, not {abs(was)}"
        case ("rounds" | "rows" as key,):
            return f"{now} {key}, not {was}"
        case _:
            return f"{path[-1]} = {now}, not {abs(was)}"


def _of_section(sections: Sequence[Along | Held | Gap], key: str, now: str, was: int) -> str:
    first = sections[0]
    if isinstance(first, Gap):
        return f"{now} extra at {first.gap}, not {was}"
    names = [one.along or (one.from_ if isinstance(one, Held) else "") for one in sections if not isinstance(one, Gap)]
    name = names[0] if len(names) == 1 else f"each side ({listing(names, 'and')})"
    if isinstance(first, Along) and key == "spots":
        return f"{now} {'stitche' if first.unit == 'stitch' else first.unit}s along {name}, not {was}"
    return f"{now} {'from' if len(names) == 1 else 'on'} {name}, not {was}"
