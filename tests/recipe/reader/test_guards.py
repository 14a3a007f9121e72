"""Guards: what would make the parser hang, fall over or let a terminal be steered never reaches it."""

import tomllib
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.recipe.reader import BadRecipe, read_text
from finishing_tui.recipe.reader.errors import Problem
from finishing_tui.recipe.reader.guards import decoded, looked_over, where_unended
from finishing_tui.recipe.reader.text import tidy, unprintable
from tests.recipe.reader.good import GOOD, line

PARTS = st.sampled_from(("a", '"b.c"', "'d.e.f'", "7", "-", '"\\".\\""'))


@given(
    st.lists(PARTS, min_size=1, max_size=12), st.sampled_from((".", " . ", "\t.")), st.sampled_from(("{}=1", "[{}]"))
)
def test_a_key_has_at_most_eight_parts(parts: list[str], dot: str, written: str) -> None:
    """Dots between parts count, dots inside quotes do not, in keys and in headers alike."""
    text = "x = 1\n" + written.format(dot.join(parts)) + "\n"
    problem = looked_over(text)
    assert (problem is not None) == (len(parts) > 8)
    if problem is not None:
        assert problem == Problem(2, "", "a key of this line has more than 8 parts; use a shorter one")


@given(st.integers(1, 40), st.sampled_from(("[]", "{}")))
def test_brackets_stand_at_most_twenty_deep(depth: int, brackets: str) -> None:
    """Deeper ones are refused, on their line, closed or not."""
    between = "a = " if brackets == "{}" else ""
    text = "\nk = " + (brackets[0] + between) * depth + "1" + brackets[1] * depth
    problem = looked_over(text)
    assert (problem is not None) == (depth > 20)
    assert problem is None or problem.line == 2


@pytest.mark.parametrize(
    "text",
    [
        'a = "' + "[" * 50 + '"',
        "a = '" + ".a" * 50 + "'",
        'a = """\n' + "[{" * 50 + '\\""" ""\n"""""',
        "a = '''''" + "[" * 50 + "'''",
        "# " + "[.a" * 50,
        "a = [1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5]",
        "a.b.c = 1\na.d.e = 2\na.f.g.h = 3\n",
        "a = 123456789012",
    ],
)
def test_what_stands_in_texts_and_comments_does_not_count(text: str) -> None:
    """Brackets, dots and quotes inside a text or a comment are only text; and numbers in a list are no key."""
    assert looked_over(text) is None
    tomllib.loads(text)


@pytest.mark.parametrize("number", ["9" * 13, "-" + "9" * 3900, "1_0" * 20, "0x" + "f" * 13])
def test_a_number_of_many_digits_is_refused(number: str) -> None:
    """The parser would raise an error that is not its own for thousands of digits; no count needs thirteen."""
    assert looked_over(f"\na = {number}") == Problem(
        2, "", "a number of this line is far too large; no count is above 100,000"
    )


def test_a_line_has_at_most_4000_characters() -> None:
    """4,000 are fine; one more is refused with its line."""
    assert looked_over("#" * 4000) is None
    assert looked_over("\n" + "#" * 4001) == Problem(
        2, "", "this line has 4001 characters; break it up, 4000 is the most"
    )


def test_a_file_has_at_most_256_kb() -> None:
    """256 kB are decoded; one byte more is not."""
    assert decoded(b"#" * 262_144) == "#" * 262_144
    assert isinstance(decoded(b"#" * 262_145), Problem)


STEERING = [*map(chr, range(9)), "\x0b", "\x0c", "\x1b", "\x7f", "\x85", "\x9b", "\u200b", "\u200e", "\u202e", "\u2028",
            "\u2066", "\u2069", "\u00ad", "\ufeff", "\ue000", "\U000e0041"]  # fmt: skip


@pytest.mark.parametrize("char", STEERING, ids=lambda char: f"{ord(char):04X}")
def test_characters_that_steer_are_refused(char: str) -> None:
    """Control and escape characters, direction overrides and invisible ones, raw or spelled as an escape."""
    at = line("neck needle")
    for spelled in (char, f"\\U{ord(char):08x}"):
        with pytest.raises(BadRecipe) as caught:
            read_text(GOOD.replace("neck needle", f"neck{spelled}needle"), "x.toml")
        (problem,) = caught.value.problems
        assert problem.line == at
        assert f"U+{ord(char):04X}" in problem.message
        assert str(caught.value).isprintable()


@pytest.mark.parametrize("key", ["ne\\u001bck", "ne\\u202eck", "a\\nb", "caf\\u0065\\u0301"])
def test_keys_are_looked_at_too(key: str) -> None:
    """The same in a key, which would be shown as a name; also one that only looks like another."""
    with pytest.raises(BadRecipe) as caught:
        read_text(GOOD + f'\n[place."{key}"]\ntext = "x"\nkind = "pin"\n', "x.toml")
    at = GOOD.count("\n") + 2
    assert [problem.line for problem in caught.value.problems] == [at]
    assert str(caught.value).isprintable()


def test_a_name_stands_on_one_line() -> None:
    """Instructions may have several lines; what is shown as one line may not."""
    read_text(GOOD.replace('"Work from', '"First\\nwork from'), "x.toml")
    with pytest.raises(BadRecipe, match=r"step 4\.title: this text has several lines or a tab in it"):
        read_text(GOOD.replace('"Knit the band"', '"Knit\\nthe band"'), "x.toml")


@given(st.text())
def test_tidy_text_is_composed_once_and_for_all(text: str) -> None:
    """Bringing text into one form again changes nothing, and leaves every line where it is."""
    once = tidy(text)
    assert tidy(once) == once
    assert unicodedata.is_normalized("NFC", once)
    assert once.count("\n") == text.count("\n")


@given(st.text())
def test_what_is_let_through_is_printable(text: str) -> None:
    """Text without a refused character is printable, but for line ends, tabs and the joiners inside words."""
    if unprintable(text) is None:
        assert all(char.isprintable() or char in "\n\t\u200c\u200d" for char in tidy(text))


@pytest.mark.parametrize(("text", "at"), [('a = 1\nb = """x\n', 2), ("a = 'x\n", 1), ('a = "x"\n', None), ("", None)])
def test_a_text_that_never_ends_is_found(text: str, at: int | None) -> None:
    """The line on which it begins, or nothing."""
    assert where_unended(text) == at
