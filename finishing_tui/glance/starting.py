"""The questions by which a garment is started, in words, and what each answer makes of it.

The screen asks them one by one and the line-by-line prompt takes them as options; both get the same refusals. Nothing
here reads or writes a file.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.wearers import UNKNOWN_WEARER, wearer_of
from finishing_tui.craft.words import plural
from finishing_tui.garment.starting import (
    LONGEST_LINE,
    LONGEST_TITLE,
    UNCOUNTED,
    Draft,
    asked_numbers,
    gauge_as_typed,
    one_line,
    same_gauge,
    whole_gauge,
    with_number,
    without,
)
from finishing_tui.glance.numbers import allowed, number_lines, read_number
from finishing_tui.glance.wishes import Units
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.model import BandGauge, Recipe, RecipeGauge
from finishing_tui.recipe.numbers import NOT_COUNTED, numbers_for, unprinted_in
from finishing_tui.recipe.only_spots import only_spots

NUMBER = "number: "
"""Before a number's name this is the name of its question."""


@dataclass(frozen=True, slots=True)
class StartOption:
    """One answer to choose: its text, lines about it, and ``aside``: the same in a few figures."""

    text: str
    lines: tuple[str, ...] = ()
    aside: str = ""


@dataclass(frozen=True, slots=True)
class StartQuestion:
    """One question: what is asked in ``text``, more about it in ``lines``, what the answer must be in ``range``.

    With ``options`` one of them is chosen, ``at`` is the one that stands now; without, a line is typed, and ``value``
    stands on it already. ``longest``: characters on the line.
    """

    key: str
    text: str
    lines: tuple[str, ...] = ()
    range: str = ""
    value: str = ""
    options: tuple[StartOption, ...] = ()
    at: int = 0
    longest: int = LONGEST_LINE


def questions(draft: Draft) -> tuple[str, ...]:
    """Return the keys of the questions in the order they are asked."""
    numbers = tuple(f"{NUMBER}{name}" for name in asked_numbers(draft.recipe))
    who = () if wearer_of(draft.size) is not None else ("wearer",)
    return ("size", *who, *numbers, "gauge", "band", "hand", "title", "yarn", "needles")


def question(draft: Draft, key: str, units: Units = "as given") -> StartQuestion:
    """Return a question with what was answered so far; raises ``KeyError`` for a key there is not.

    ``units``: the example of a gauge is in inches for whoever wants these; any length may be typed.
    """
    if key.startswith(NUMBER):
        return _number(draft, key)
    asked = {
        "size": _size,
        "wearer": _wearer,
        "gauge": _gauge,
        "band": _band,
        "hand": _hand,
        "title": _title,
        "yarn": _yarn,
        "needles": _needles,
    }[key](draft)
    return replace(asked, range="such as 20 x 28 over 4 in") if units == "in" and key in {"gauge", "band"} else asked


def chosen(draft: Draft, key: str, at: int) -> Draft:
    """Return the draft after the option ``at`` of a question was chosen."""
    if key == "size":
        size = draft.recipe.sizes[at]
        return replace(draft, size=size, wearer="" if wearer_of(size) is not None else draft.wearer)
    return replace(draft, hand="left" if at else "right")


def typed(draft: Draft, key: str, line: str) -> Draft:
    """Return the draft after ``line`` was typed at a question.

    Raises ``Impossible`` with what would be right; the draft is as it was then.
    """
    text = one_line(line, LONGEST_LINE)
    if key.startswith(NUMBER):
        return _with_number(draft, key.removeprefix(NUMBER), text)
    if key == "gauge":
        return _with_body(draft, text)
    if key == "band":
        return _with_band(draft, text)
    if key == "wearer":
        return _with_wearer(draft, text)
    if key == "title":
        text = text[:LONGEST_TITLE].strip()
        return replace(draft, title="" if text == one_line(draft.recipe.title, LONGEST_TITLE) else text)
    return replace(draft, yarn=text) if key == "yarn" else replace(draft, needles=text)


def summary(draft: Draft) -> tuple[str, ...]:
    """Return what was said of a garment, a line each, for a last look before it is started."""
    own = [
        f"{draft.recipe.number[name].text}: {UNCOUNTED if value == NOT_COUNTED else value}"
        for name, value in draft.own.items()
    ]
    gauge = draft.gauge or draft.recipe.gauge
    whose = "your gauge" if draft.gauge is not None else "the recipe's gauge"
    lines = [
        f"{draft.recipe.title}, size {draft.size}, {draft.hand}-handed",
        *([f"to be worn by: {draft.wearer}"] if draft.wearer else []),
        *own,
        "no gauge" if gauge is None else f"{whose}: {_both(gauge)}",
        *(text for text in (draft.yarn, draft.needles) if text),
    ]
    return tuple(lines)


def size_numbers(recipe: Recipe, size: int) -> tuple[tuple[str, int], ...]:
    """Return the numbers by which a size is recognised, each with its words: what its pieces hold at the start.

    Without any, its first numbers. Raises ``FinishingError`` where they cannot be worked out.
    """
    numbers = numbers_for(recipe, size, dict.fromkeys(unprinted_in(recipe), 0))
    places = recipe.place.values()
    held = [(f"on the {place.text}", count_of(place.live, numbers, size)) for place in places if place.live != 0]
    if held:
        return tuple(held)
    return tuple((number.text, numbers[name]) for name, number in list(recipe.number.items())[:3])


def held_places(recipe: Recipe) -> Mapping[str, str]:
    """Return what the places are called, by name, that hold stitches before the first step: by them a size is told."""
    return {name: place.text for name, place in recipe.place.items() if place.live != 0}


def held_by_size(recipe: Recipe) -> Mapping[str, tuple[int, ...]]:
    """Return what those places hold in each size; a size whose numbers cannot be worked out is left out."""
    found = {}
    for index, size in enumerate(recipe.sizes):
        try:
            numbers = numbers_for(recipe, index)
            found[size] = tuple(count_of(recipe.place[name].live, numbers, index) for name in held_places(recipe))
        except FinishingError:
            continue
    return found


def _size(draft: Draft) -> StartQuestion:
    recipe = draft.recipe
    options = tuple(_size_option(recipe, index) for index in range(len(recipe.sizes)))
    lines = ("The size you knitted.", *_heads(recipe))
    return StartQuestion("size", "Which size?", lines, options=options, at=recipe.sizes.index(draft.size))


def _heads(recipe: Recipe) -> Iterator[str]:
    """Yield what the figures beside the sizes are, in their order."""
    held = tuple(held_places(recipe).values())
    if held:
        yield f"Stitches held: {' · '.join(held)}."
    else:
        yield f"Figures: {' · '.join(number.text for number in list(recipe.number.values())[:3])}."


def _size_option(recipe: Recipe, size: int) -> StartOption:
    try:
        numbers = size_numbers(recipe, size)
    except FinishingError as error:
        return StartOption(recipe.sizes[size], (f"its numbers cannot be worked out: {error}",))
    words = ", ".join(f"{count} {text}" for text, count in numbers)
    return StartOption(recipe.sizes[size], (words,), " · ".join(str(count) for _, count in numbers))


def _wearer(draft: Draft) -> StartQuestion:
    lines = (
        "Type the age, or just child: the neck has to go over a child's head, and the child's safety checks stay in.",
        "For an adult, or if you don't know yet, leave the line empty.",
    )
    return StartQuestion(
        "wearer", "Is it for a child?", lines, "such as 9 months, 2T or 6 years", draft.wearer, longest=40
    )


def _with_wearer(draft: Draft, text: str) -> Draft:
    said = "" if text.lower() in {"no", "n"} else "child" if text.lower() in {"yes", "y"} else text
    if said and wearer_of(said) is None:
        raise Impossible(UNKNOWN_WEARER)
    return replace(draft, wearer=said)


def _number(draft: Draft, key: str) -> StartQuestion:
    name = key.removeprefix(NUMBER)
    number = draft.recipe.number[name]
    otherwise = without(draft.recipe, draft.size, draft.own, name)
    value = draft.own.get(name, otherwise)
    if value == NOT_COUNTED:
        value = None
    if name in only_spots(draft.recipe):
        printed = "Leave the line empty if you haven't counted: you count stitches as you go."
        printed = printed if otherwise is None else f"Recipe: {otherwise} for size {draft.size}. {printed}"
    elif otherwise is None:
        printed = "The recipe doesn't print it. Count it, or leave the line empty to have it worked out."
    else:
        printed = f"Recipe: {otherwise} for size {draft.size}. Type yours to replace it."
    lines = tuple(line for line in (f"{allowed(number.least, number.most)} {printed}".strip(), number.how) if line)
    question = f"{number.text[:1].upper()}{number.text[1:]}?"
    return StartQuestion(key, question, lines, value="" if value is None else str(value), longest=40)


def _with_number(draft: Draft, name: str, text: str) -> Draft:
    recipe = draft.recipe
    told = name in unprinted_in(recipe) or without(recipe, draft.size, draft.own, name) is not None
    if not text and told and name not in only_spots(recipe):
        return replace(draft, own=with_number(recipe, draft.size, draft.own, name, None))
    line = next(one for one in number_lines(recipe, draft.size, draft.own) if one.name == name)
    return replace(draft, own=with_number(recipe, draft.size, draft.own, name, read_number(line, text)))


def _gauge(draft: Draft) -> StartQuestion:
    gauge = draft.gauge or draft.recipe.gauge
    lines = (
        "Stitches and rows over 4 in or 10 cm, from a washed, dried swatch.",
        "The recipe has none. Leave the line empty if you don't know it."
        if draft.recipe.gauge is None
        else f"Recipe: {_three(draft.recipe.gauge)}. Type yours to replace it.",
    )
    value = "" if gauge is None else _three(gauge)
    return StartQuestion(
        "gauge", "Your gauge?", lines, "such as 20 x 28 over 10 cm, or 5 x 7 over 1 in", value, longest=80
    )


def _with_body(draft: Draft, text: str) -> Draft:
    if not text:
        band = draft.band if draft.recipe.gauge is not None else None
        return replace(draft, body=None, band=band)
    body = whole_gauge(text)
    printed = draft.recipe.gauge
    return replace(draft, body=None if printed is not None and same_gauge(body, printed) else body)


def _band(draft: Draft) -> StartQuestion:
    gauge, printed = draft.gauge or draft.recipe.gauge, draft.recipe.gauge
    lines = [
        "The band's gauge, if it differs from the body's.",
        "Leave the line empty to use the body's gauge.",
    ]
    if printed is not None and printed.band is not None:
        lines.append(f"Recipe: {_three(printed.band)}. Type yours to replace it.")
    value = _three(gauge.band) if gauge is not None and gauge.band is not None else ""
    return StartQuestion(
        "band", "The gauge of the band?", tuple(lines), "such as 22 x 30 over 10 cm", value, longest=80
    )


def _with_band(draft: Draft, text: str) -> Draft:
    printed = draft.recipe.gauge
    of_recipe = printed.band if printed is not None else None
    if not text:
        return replace(draft, band=None if of_recipe is None else "body")
    if draft.body is None and printed is None:
        raise Impossible("give the body's gauge first: go back one question")
    band: BandGauge | None = whole_gauge(text)
    if of_recipe is not None and band is not None and same_gauge(band, of_recipe):
        band = None
    return replace(draft, band=band)


def _hand(draft: Draft) -> StartQuestion:
    options = (
        StartOption("right", ("Yarn at the right, edges walked from right to left.",)),
        StartOption("left", ("Everything is mirrored: edges from the other end, rounds the other way.",)),
    )
    lines = ("The left front stays the wearer's left.",)
    return StartQuestion("hand", "Right- or left-handed?", lines, options=options, at=int(draft.hand == "left"))


def _title(draft: Draft) -> StartQuestion:
    lines = ("What do you call it? Its yarn or its wearer, say.",)
    return StartQuestion("title", "Its name?", lines, value=draft.called, longest=LONGEST_TITLE)


def _yarn(draft: Draft) -> StartQuestion:
    lines = ("In your own words; an empty line is fine.",)
    return StartQuestion("yarn", "The yarn?", lines, value=draft.yarn)


def _needles(draft: Draft) -> StartQuestion:
    lines = ("Needles for the band and the joins, in your own words, if you like.",)
    return StartQuestion("needles", "The needles?", lines, value=draft.needles)


def _three(gauge: RecipeGauge | BandGauge) -> str:
    return gauge_as_typed(gauge)


def _both(gauge: RecipeGauge) -> str:
    band = f", the band {_three(gauge.band)}" if gauge.band is not None else ""
    return f"{_three(gauge)}{band}"


def progress(draft: Draft, at: int) -> str:
    """Return where one is among the questions, in words."""
    many = len(questions(draft))
    return f"question {at + 1} of {many}" if at < many else f"{plural(many, 'question')} answered"
