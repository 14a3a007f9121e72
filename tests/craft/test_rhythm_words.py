"""What is said of a rhythm is what it does: the words, read back by someone who knows nothing else, give it again."""

import re

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.saying import say
from finishing_tui.craft.spacing import Rhythm, Run, Runs, Style, draw, space

NUMBERS = dict(
    zip(
        ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
        range(1, 13),
        strict=True,
    )
)
NUMBERS |= {"once": 1, "twice": 2}


def number(word: str) -> int:
    """Read a number in words or figures, or how often."""
    word = word.removesuffix(" times")
    return NUMBERS[word] if word in NUMBERS else int(word)


def follow(words: str) -> list[Run]:
    """Follow the words as hands would, and note the runs."""
    runs: list[Run] = []
    for part in re.split(r", then (?![^(]*\))", words.removesuffix("; skip first in each repeat")):
        group = re.fullmatch(r"\((.*;.*)\) (.+)", part)
        if group:
            inner = [run for piece in group[1].split("; ") for run in follow(piece)]
            runs += inner * number(group[2])
        elif found := re.fullmatch(r"skip ([0-9]+) rows?", part):
            runs.append(Run(0, 1, int(found[1])))
        elif found := re.fullmatch(r"(two in )?(?:the|each of the) (?:first|next|last) (?:(\w+) )?rows?", part):
            runs.append(Run(2 if found[1] else 1, 1, number(found[2] or "one")))
        else:
            told = r"([0-9]+) (?:of|in) (?:every )?([0-9]+)(?: \(two in [a-z0-9 ]+\))?(?:, (.+))?"
            found = re.fullmatch(told, part)
            assert found, part
            runs.append(Run(int(found[1]), int(found[2]), number(found[3] or "one")))
    return runs


@st.composite
def rhythms(draw_from: st.DrawFn) -> Rhythm:
    """Give a rhythm as the program makes them: easy or even, whole, cut, mirrored or both."""
    spots = draw_from(st.integers(2, 90))
    stitches = draw_from(st.integers(2, 2 * spots))
    style: Style = draw_from(st.sampled_from(("easy", "even")))
    rhythm = space(stitches, spots, style=style, ends=draw_from(st.sampled_from(("open", "closed", "last"))))
    if draw_from(st.booleans()):
        rhythm = rhythm.mirrored()
    return rhythm.rest(draw_from(st.integers(0, spots - 1)))


@given(rhythms())
def test_whoever_follows_the_words_makes_the_rhythm(rhythm: Rhythm) -> None:
    """The words alone, and that skips come first where they say so, draw the same picture."""
    words = say(rhythm, "row")
    assume("as drawn" not in words and not re.fullmatch(r"(skip |two in )?every row", words))
    skips_first = rhythm.skips_first
    assert draw(Runs(tuple(follow(words)), skips_first)) == draw(rhythm)
    some_skips = any(0 < run.pick < run.of for run in rhythm.as_runs())
    assert words.endswith("skip first in each repeat") == (skips_first and some_skips)


@pytest.mark.parametrize(
    ("rhythm", "words"),
    [
        (space(12, 12), "every row"),
        (space(24, 12), "two in every row"),
        (Runs((Run(0, 5, 1),)), "skip every row"),
        (Runs(()), "no row is left"),
        (space(31, 44), "2 of every 3, eight times, then 3 of every 4, five times"),
        (
            space(31, 44).mirrored(),
            "3 of every 4, five times, then 2 of every 3, eight times; skip first in each repeat",
        ),
        (space(31, 44).rest(1), "1 of 2, then 2 of every 3, seven times, then 3 of every 4, five times"),
        (space(10, 8), "5 in every 4 (two in the last), twice"),
        (space(10, 8).mirrored(), "5 in every 4 (two in the first), twice"),
        (space(14, 8), "7 in every 4 (two in each of the last three), twice"),
        (space(71, 88, ends="closed"), "4 of every 5, 17 times, then each of the last three rows"),
        (
            space(50, 80, style="even"),
            "1 of 2, then 2 of 3, then (1 of 2; 2 of every 3, twice) nine times, then 1 of 2, then the last row",
        ),
        (
            space(355, 501, style="even"),
            "evenly mixed, as drawn (2 of every 3, 82 times; 3 of every 4, 63 times; 1 of 2), then the last row",
        ),
        (
            space(729, 440),
            "evenly mixed, as drawn (5 in every 3 (two in each of the last two), 138 times; "
            "3 in every 2 (two in the last), 13 times)",
        ),
    ],
)
def test_how_it_is_said(rhythm: Rhythm, words: str) -> None:
    """Every form the words can take."""
    assert say(rhythm, "row") == words


@given(st.integers(2, 100_000), st.data())
def test_even_the_longest_edge_is_said_in_a_breath(spots: int, data: st.DataObject) -> None:
    """No rhythm takes more words than a person would listen to."""
    stitches = data.draw(st.integers(2, 2 * spots))
    style: Style = data.draw(st.sampled_from(("easy", "even")))
    assert len(say(space(stitches, spots, style=style))) < 400
