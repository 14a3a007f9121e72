"""The reader: a good recipe comes out as it was written; anything else is refused in sentences, never otherwise."""

import re
import string
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from finishing_tui.recipe.annotations import fields_of
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import BadRecipe, read_recipe, read_text
from tests.recipe.reader.good import GOOD
from tests.strategies import model_of, recipes, toml_of

TOKENS = re.findall(r'"[^"\n]*"|\w+|\s+|.', GOOD)


def outcome(text: str) -> Recipe | BadRecipe:
    """Return what reading gives; any other exception than ``BadRecipe`` fails the test."""
    try:
        return read_text(text, "x.toml")
    except BadRecipe as error:
        bad = error
    assert bad.problems
    assert str(bad) == "\n".join(problem.told("x.toml") for problem in bad.problems)
    for problem in bad.problems:
        assert problem.message
        assert problem.told("x.toml").isprintable()
        assert problem.line is None or 1 <= problem.line <= text.count("\n") + 1
    return bad


@given(recipes())
def test_a_recipe_comes_out_as_it_was_written(table: dict[str, Any]) -> None:
    """What the file says is what the model holds: steps of every kind, in order, with every key."""
    assert read_text(toml_of(table), "x.toml") == model_of(Recipe, table)


@given(st.text())
@example("")
@example("\0")
@example("\ud800")
@example('a = "' + "\\" * 200)
@example("[" * 5000)
@example("a=" + "[" * 5000)
@example("a=" + "{a=" * 5000)
@example("a" + ".a" * 100_000 + "=1")
@example("a=" + "9" * 5000)
@example('format=1\ntitle="x"\nsizes=["1"]\nstep=[1979-05-27, 07:32:00, nan, -inf, 1e400]')
def test_any_text_gives_a_recipe_or_sentences(text: str) -> None:
    """Whatever is in the file, nothing but ``BadRecipe`` is raised."""
    outcome(text)


@given(st.text(string.printable), st.integers(0, len(GOOD)))
def test_a_recipe_with_anything_put_in_gives_a_recipe_or_sentences(text: str, at: int) -> None:
    """The same for a good recipe with random characters in a random place."""
    outcome(GOOD[:at] + text + GOOD[at:])


@given(
    st.lists(st.tuples(st.integers(0, len(TOKENS) - 1), st.sampled_from("dux"), st.sampled_from(TOKENS)), max_size=3)
)
def test_a_recipe_with_changed_words_gives_a_recipe_or_sentences(changes: list[tuple[int, str, str]]) -> None:
    """The same when words are deleted, doubled, or replaced by other words of the recipe."""
    tokens = list(TOKENS)
    for at, change, other in changes:
        tokens[at] = {"d": "", "u": tokens[at] * 2, "x": other}[change]
    outcome("".join(tokens))


VALUES = st.recursive(
    st.one_of(
        st.sampled_from(
            ("0", "-1", "true", "1.5", "nan", "99999999", "1979-05-27", '""', '"all"', '"neck"', '"\\u001b"')
        ),
        st.integers().map(str),
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3).map(lambda items: f"[{', '.join(items)}]"),
        st.lists(inner, max_size=2).map(
            lambda items: "{" + ", ".join(f"k{n} = {i}" for n, i in enumerate(items)) + "}"
        ),
    ),
    max_leaves=4,
)


@given(st.integers(0, GOOD.count(" = ") - 1), VALUES)
def test_any_value_at_any_key_gives_a_recipe_or_sentences(which: int, value: str) -> None:
    """The same when the value of any key is replaced by one of any type; it is told at its own key, or further on."""
    at = [match.end() for match in re.finditer(r"= ", GOOD)][which]
    end = GOOD.index("\n", at)
    outcome(GOOD[:at] + value + GOOD[end:])


def test_the_example_is_read() -> None:
    """Types, defaults, British words and sections of all three sorts come out as the model has them."""
    recipe = read_text(GOOD, "good.toml")
    assert [step.do for step in recipe.step] == ["arrange", "join", "pick up and knit", "work", "bind off"]
    sections = [type(section) for section in recipe.step[2].section]  # type: ignore[union-attr]  # the third is that kind
    assert sections == [Along, Held, Gap, Along]
    assert recipe.number["shoulder"].by_size == (24, 26, 28)
    assert recipe.step[4].for_ == ("1", "2")
    assert recipe.step[1].say == "Work from the {start end} [to the far end]."


@pytest.mark.parametrize("markup", ["[red]x[/]", "[/nope]", "[@click=app.bell]x[/]", "<b>x</b>", "[B]", "%s{{"])
def test_markup_stays_text(markup: str) -> None:
    """Brackets and markup are read as they stand."""
    recipe = read_text(GOOD.replace("Knit the band", markup), "x.toml")
    assert recipe.step[3].title == markup


def test_line_ends_of_windows_are_fine() -> None:
    """A file with CRLF reads as the same recipe."""
    assert read_text(GOOD.replace("\n", "\r\n"), "x.toml") == read_text(GOOD, "x.toml")


def test_look_alike_spaces_and_letters_become_one() -> None:
    """No-break spaces become spaces and letters with loose accents whole ones, so that names that look alike are."""
    odd = GOOD.replace("Knit the band", "Cafe\u0301\u00a0band").replace("of one", "de\\u0301\\u202f1")
    assert read_text(odd, "x.toml").step[3].title == "Caf\u00e9 band"


def test_a_newer_format_is_named() -> None:
    """A file of a later format is not picked to pieces: both formats are named, and that is all."""
    bad = outcome(GOOD.replace("format = 1", "format = 3").replace("title ", "heading "))
    assert str(bad) == (
        "x.toml:1: format: this recipe is of format 3, and this program reads up to 2; use a newer program"
    )


def test_mistakes_beyond_a_hundred_are_counted_off() -> None:
    """A file with thousands of mistakes is answered soon and in a bearable number of lines."""
    steps = "".join(
        f'[[step]]\ndo = "move"\ntitle = "m"\nfrom = "a{n}"\nto = "b{n}"\ncount = "c{n}"\n' for n in range(400)
    )
    bad = outcome(f"{GOOD}{steps}")
    assert isinstance(bad, BadRecipe)
    assert len(bad.problems) == 101
    assert "there are more" in bad.problems[-1].message


class TestFiles:
    """Files that are no text at all are refused in a sentence too."""

    def test_good(self, tmp_path: Path) -> None:
        """A file gives what its text gives."""
        path = tmp_path / "good.toml"
        path.write_text(GOOD, encoding="utf-8")
        assert read_recipe(path) == read_text(GOOD, "x")

    def test_missing(self, tmp_path: Path) -> None:
        """A file that is not there."""
        with pytest.raises(BadRecipe, match=r"nothing\.toml: there is no such file; check its name and folder$"):
            read_recipe(tmp_path / "nothing.toml")

    def test_folder(self, tmp_path: Path) -> None:
        """A folder."""
        with pytest.raises(BadRecipe, match="this is a folder; name a recipe file in it"):
            read_recipe(tmp_path)

    def test_no_permission(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """A file that may not be read (raised by hand: whoever runs the tests may be allowed everything)."""

        def refuse(*_args: object, **_kwargs: object) -> None:
            raise PermissionError(13, "Permission denied")

        (tmp_path / "closed.toml").touch()
        monkeypatch.setattr(Path, "open", refuse)
        with pytest.raises(BadRecipe, match=r"the file cannot be read: permission denied$"):
            read_recipe(tmp_path / "closed.toml")

    @pytest.mark.parametrize(
        ("raw", "said"),
        [
            (b"format = 1\ntitle = '\xff'\n", ":2: this line is not UTF-8 text; save the file in the encoding UTF-8"),
            (b"\xef\xbb\xbfformat = 1\n", ":1: the file begins with a byte order mark (U+FEFF)"),
            (b"f\x00o\x00", ":1: the character U+0000 (a control character) stands in this line; take it out"),
            (b"#" * 300_000, ": the file is larger than 256 kB; a recipe is far smaller than that"),
        ],
    )
    def test_bytes(self, tmp_path: Path, raw: bytes, said: str) -> None:
        """Other encodings, byte order marks, control characters and large files."""
        path = tmp_path / "x.toml"
        path.write_bytes(raw)
        with pytest.raises(BadRecipe, match=re.escape(said)):
            read_recipe(path)


def test_every_key_has_a_meaning() -> None:
    """A missing key is explained by the text under its field, so every field of the model must have one."""
    for cls in (Recipe, Along, Held, Gap):
        assert all(field_texts(cls)[key] for key in fields_of(cls) if key != "do")


def test_the_example_is_toml() -> None:
    """The text that the tests break is TOML by the standard parser."""
    assert tomllib.loads(GOOD)["format"] == 1
