"""Every text that comes with the program and is read by people: spelling, length on a small screen, and one voice."""

import re
import textwrap
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from finishing_tui import shipped
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.reader import read_recipe
from tests.recipe.guide import GUIDE
from tests.recipe.test_shipped import NOTHING_ASKED

RECIPES = {name: read_recipe(path) for name, path in shipped.recipes().items()}
WORDS = Path(__file__).with_name("words.txt")

MOST = {"title": 36, "say": 400, "how": 250, "look": 200, "mend": 250, "mind": 250, "see": 200}
"""Characters; a title must fit on a screen of 40 columns beside its number."""

NOT_OURS = {
    "cast off": "bind off",
    "bindoff": "bind-off",
    "neck band": "neckband",
    "selvage": "selvedge",
    "3-needle": "three-needle",
    "three needle bind": "three-needle bind-off",
    "unravel": "rip back",
    "frog": "rip back",
    "stitchholder": "holder",
    "ravel": "rip back",
    "weaved": "woven",
}
"""Words that have another here, which stands beside them."""


def shipped_texts() -> dict[str, str]:
    """Return every file that comes with the program and is read by people, by name."""
    garments = (folder / "garment.toml" for folder in shipped.demos().values())
    files = [*shipped.recipes().values(), *shipped.techniques().values(), *garments, GUIDE]
    return {f"{path.parent.name}/{path.name}": path.read_text(encoding="utf-8") for path in files}


DRAWINGS = {
    tomllib.loads(path.read_text(encoding="utf-8")).get("drawing", "") for path in shipped.techniques().values()
}
"""The drawings of the techniques, which are no sentences."""


def strings(value: Any) -> Iterator[str]:
    """Yield every text in a parsed TOML file, keys excepted."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from strings(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from strings(inner)


@pytest.mark.parametrize("name", RECIPES)
def test_every_step_is_told_in_full_and_briefly(name: str) -> None:
    """Each step says what to do, how to count, how it should look, how to mend it, within what a screen holds."""
    for step in RECIPES[name].step:
        for key in ("title", "say", "how", "look", "mend"):
            assert getattr(step, key), (step.title, key)
        for key, most in MOST.items():
            assert len(getattr(step, key)) <= most, (step.title, key)
        if isinstance(step, Check):
            assert all(len(item) <= 100 for item in step.items), step.title
    assert len({step.title for step in RECIPES[name].step}) == len(RECIPES[name].step)


@pytest.mark.parametrize("name", RECIPES)
def test_asked_numbers_say_how_to_count_them(name: str) -> None:
    """What the knitter is asked for has its ``how``, and a least and a most that keep a digit too many out."""
    asked = [number for number in RECIPES[name].number.values() if number.ask]
    assert asked or name == NOTHING_ASKED
    for number in asked:
        printed = (number.by_size,) if isinstance(number.by_size, int) else number.by_size or ()
        assert number.how
        assert 0 < number.least <= min(printed) <= max(printed) <= number.most < 10 * min(printed)


def test_texts_hold_nothing_but_plain_characters() -> None:
    """All but drawings is plain ASCII, without braces other than the two words that turn round with the hand."""
    for name, text in shipped_texts().items():
        if not name.endswith(".toml"):
            continue
        said = [*strings(tomllib.loads(text))]
        assert all(one.isascii() for one in said if one not in DRAWINGS), name
        for one in said:
            if one in DRAWINGS:
                continue
            assert one.isprintable(), (name, one)
            assert one == one.strip(), (name, one)
            assert "  " not in one, (name, one)
            left = one.replace("{start end}", "").replace("{far end}", "")
            assert not re.search(r"[{}<>\\`]", left), (name, one)


def test_words_are_ours() -> None:
    """The words of the trade that this program uses, wherever people read; ``tests.test_words`` counts spelling."""
    for name, text in shipped_texts().items():
        for wrong, right in NOT_OURS.items():
            if name == "recipes/README.md" and wrong == "cast off":
                continue  # the guide explains that the British word is taken too
            assert not re.search(rf"\b{re.escape(wrong)}", text, re.IGNORECASE), f"{name}: {wrong} is {right} here"


NOT_READ = {"drawing", "is", "do", "unit", "units", "kind", "facing", "id", "recipe", "has", "slope", "over"}
"""Keys whose texts are for the program."""


def words(text: str) -> set[str]:
    """Return the words of a text, in small letters."""
    return {word.lower() for word in re.findall(r"[A-Za-z][a-z']+|[A-Za-z]+", text)}


def read_by_people(value: Any) -> Iterator[str]:
    """Yield every text in a parsed TOML file that people read."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            if key not in NOT_READ:
                yield from read_by_people(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from read_by_people(inner)


def said() -> Iterator[tuple[str, str]]:
    """Yield (file, text) for every text that people read; of the guide what is neither code nor a key."""
    for name, text in shipped_texts().items():
        if name.endswith(".toml"):
            yield from ((name, one) for one in read_by_people(tomllib.loads(text)))
        else:
            yield name, re.sub(r"```.*?```|`[^`]*`", "", text, flags=re.DOTALL)


def test_every_word_was_looked_at() -> None:
    """No spelling checker is at hand: a word that is in no shipped text yet is looked at, and added to ``words.txt``.

    A slip of the fingers is nearly always a word that is not there. The list is sorted, and holds no word in vain.
    """
    known = WORDS.read_text(encoding="utf-8").split()
    assert known == sorted(set(known))
    found = {word: name for name, text in said() for word in words(text)}
    assert {word: name for word, name in found.items() if word not in known} == {}
    assert set(known) <= set(found), sorted(set(known) - set(found))


def test_no_word_stands_twice() -> None:
    """A word written twice is the slip that no list of words finds."""
    for name, text in said():
        assert not re.search(r"\b(?!had\b|that\b)([a-z]+) \1\b", text), (name, text)


def test_one_voice() -> None:
    """Calm requests and plain statements: nobody shouts, pleads, or speaks of herself, and nothing is shortened."""
    for name, text in said():
        if name.startswith(("recipes/", "techniques/")):
            assert "!" not in text.replace("<!--", ""), (name, text)
            assert not re.search(r"\b(we|our|please|simply|just remember|etc)\b", text), (name, text)
            assert not re.search(r"\b\w+n't\b|\b(it's|you'll|you're|that's)\b", text), (name, text)


_NUMBER = r"(?:[0-9]+|one|two|three|four|five|six|seven|eight|nine|ten)"
RATIO = re.compile(
    rf"\b{_NUMBER} (?:\w+ )?(?:of|out of|in|for|to) (?:(?:every|each)\b(?! other| one\b)|{_NUMBER}\b)"
    rf"|\b(?:every|each) (?:second|third|fourth|fifth|sixth|{_NUMBER})\b(?! at )"
    r"|\b(?:[0-9]+|three|four|five|six|seven|eight|nine|ten) (?:more |fewer )?(?:loops|stitches|rows|ridges|chains)\b",
    re.IGNORECASE,
)
"""A number or a ratio of loops and rows that stands fixed in a text: "3 of every 4 rows", "every third chain", "12
loops". One stitch or two of a corner are no ratio."""


@pytest.mark.parametrize(
    "text",
    ["draw loops through 3 of every 4 rows", "two of every three", "a second one through every third chain",
     "one loop for each ridge", "there must be 3 in 2", "15 loops from pin to pin", "four rows to every three"],
)  # fmt: skip
def test_a_fixed_ratio_is_known_when_it_is_met(text: str) -> None:
    """The words in which earlier texts said fixed numbers are found."""
    assert RATIO.search(text)


@pytest.mark.parametrize("name", RECIPES)
def test_no_text_takes_the_gauge_for_granted(name: str) -> None:
    """How many rows go to a length is said by the gauge, which may be the knitter's own."""
    fixed = re.compile(r"\b(?:rows|rounds|stitches|chains|ridges) (?:go |are )?to (?:a|one|[0-9]+) ?(?:cm|centi|in)")
    for step in RECIPES[name].step:
        for text in (step.say, step.how, step.look, step.mend):
            assert not fixed.search(text), (step.title, text)
            assert "at this gauge" not in text, (step.title, text)


@pytest.mark.parametrize("name", RECIPES)
def test_no_text_contradicts_the_plan(name: str) -> None:
    """How many are picked, and over how many, is said by the plan, which knows the size and the knitter's own numbers.

    So no text of a step that picks up or sews says a ratio, and no number is explained by one. One for each stitch may
    be said where the stitches to pick and the stitches of the edge are the same number by name.
    """
    recipe = RECIPES[name]
    texts = [text for number in recipe.number.values() for text in (number.text, number.how)]
    for step in recipe.step:
        if isinstance(step, PickUpAndKnit | Seam):
            told = [step.title, step.say, step.how, step.look, step.mend]
            if isinstance(step, PickUpAndKnit) and any(
                isinstance(part, Along) and part.unit == "stitch" and part.spots == part.stitches
                for part in step.section
            ):
                told = [text.replace("one loop for each stitch", "") for text in told]
            texts += told
    assert [found[0] for text in texts if (found := RATIO.search(text))] == []


COLUMNS, LINES = 38, 14
"""What a screen of 40 columns and 20 lines has for one text, its heading and the line of keys left out."""


@pytest.mark.parametrize("name", RECIPES)
def test_each_text_stands_whole_on_the_smallest_screen(name: str) -> None:
    """Wrapped to a screen of 40 by 20, each text of a step can be read without scrolling, and no word is cut."""
    for step in RECIPES[name].step:
        for key in MOST:
            lines = textwrap.wrap(getattr(step, key), COLUMNS, break_long_words=False)
            assert len(lines) <= LINES, (step.title, key, len(lines))
            assert all(len(line) <= COLUMNS for line in lines), (step.title, key)
    for number in RECIPES[name].number.values():
        assert len(textwrap.wrap(number.text, COLUMNS)) <= 3
        assert len(textwrap.wrap(number.how, COLUMNS)) <= LINES
