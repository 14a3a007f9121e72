"""The mistakes people make in a recipe, one at a time, with the exact sentence each is answered with."""

import pytest

from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.reader import BadRecipe, read_text
from tests.recipe.reader.good import GOOD, line

# what stands in the good recipe, what is written instead, where the mistake is found, and what is said
MISTAKES = [
    ('tail  = "left', 'tial  = "left', "step 2.tial", "'tial' is not a key of a join step; did you mean 'tail'?"),
    ('front = "left_front"\n', "", "step 2",
     "this step does not say which needle is 'front'; it needs two needles, 'near' and 'far'"),
    ('"cast off"', '"cst off"', "step 5.do", "there is no kind of step \"cst off\"; did you mean 'cast off'?"),
    ('do       = "arrange"\n', "", "step 1",
     f"this step does not say what is done; add 'do', one of {', '.join(KINDS)}"),
    ("extra = 1", "extra = true", "step 3.section 3.extra", "true stands here; a whole number, a list with one for each"
     " size, or in quotes the name of a number or a sum is wanted"),
    ("of = 1", 'of = "1"', "step 3.repeat.of", '"1" stands here; a whole number is wanted: 1, without quotes'),
    ('"1", "2", "3"', '"1", "2", 3', "sizes 3", '3 stands here; text in quotes is wanted: "3"'),
    ("[24, 26, 28]", "[24, 26]", "number.shoulder.by_size",
     "the list has 2 entries and there are 3 sizes; it needs one for each"),
    ("[24, 26, 28]", "[24, -26, 28]", "number.shoulder.by_size 2",
     "-26 is out of range; use 0 or more"),
    ("[24, 26, 28]", "[24, 26.5, 28]", "number.shoulder.by_size 2", "26.5 stands here; a whole number is wanted"),
    ('live = "shoulder"', 'live = "sholder"', "place.left_front.live",
     "there is no number \"sholder\"; did you mean 'shoulder'?"),
    ('from  = "front_holder"', 'from  = "front holder"', "step 3.section 2.from",
     "there is no place \"front holder\"; did you mean 'front_holder'?"),
    ('"16 + 2 * side + 1"', '"16 + 2 side + 1"', "number.band.is",
     "the sum '16 + 2 side + 1' has 's' where +, -, * or ')' should stand; "
     "a sum has whole numbers, names of numbers, + - * and brackets"),
    ('"16 + 2 * side + 1"', '"16 + band"', "number.band.is",
     "this number is worked out from itself: band → band; break the circle"),
    ('recount = "half"', 'recount = "halfway"', "step 3.recount", '"halfway" stands here; it is "half" or "none"'),
    ('for   = ["1", "2"]', 'for   = ["1", "S"]', "step 5.for 2", 'there is no size "S"; the sizes are 1, 2, 3'),
    ('for   = ["1", "2"]', 'for   = "1"', "step 5.for",
     '"1" stands here; a list of texts, such as ["a", "b"], is wanted'),
    ('"1", "2", "3"', '"1", "2", "1"', "sizes 3",
     'the size "1" is there twice; give every size a name of its own'),
    ('sizes  = ["1", "2", "3"]', "sizes  = []", "sizes",
     'there are no sizes; a recipe has at least one, such as sizes = ["one size"]'),
    ('"1", "2", "3"', ", ".join(f'"{size}"' for size in range(1, 102)), "sizes 101",
     "there are 101 sizes; up to 100 can be audited: write the rest as a recipe of its own"),
    ('mirrors  = "left front neck"', 'mirrors  = "left neck"', "step 3.section 4.mirrors",
     "no section of this step runs along \"left neck\"; did you mean 'left front neck'?"),
    ("gap   = ", "hole  = ", "step 3.section 3",
     "this section does not say what it is; give it one of the keys gap, from, along"),
    ("{start end}", "{left end}", "step 2.say",
     "'{left end}' is no word that the program knows; only {start end} and {far end} are turned round, "
     "write others without braces"),
    ("[gauge]", "[tension]", "tension", "'tension' is not a key of a recipe; here it is called 'gauge'"),
    ("rounds = 6\n", "", "step 4",
     "this step says neither rounds nor rows; it needs 'rounds' (worked in the round) or 'rows' (worked flat)"),
    ('"Crew neck on held shoulders"', '" "', "title", "'title' is blank; say what is finished, in a few words"),
    ("[place.neck]", "[place.edge]", "place.edge",
     '"edge" is a word of the ledger\'s own; give this place another name'),
    ('text = "neck needle"', r'text = "neck\u001b[31m"', "place.neck.text",
     "the character U+001B (a control character) stands in this text; take it out"),
    ("by_size = 24\n", "by_size = 240000\n", "number.side.by_size",
     "240,000 is out of range; use 0 to 100,000"),
    ("least   = 4", "least   = 31", "number.front_rows.by_size 1",
     "30 is outside of this number's own 'least' and 'most', 31 or more; change one of them"),
    ('back  = "left_back"', 'back  = "left_front"', "step 2.front",
     "'front' and 'back' are the same place; two different ones are wanted"),
    ("shaping = [{ round = 2, change = -1 }]", 'shaping = "decrease"', "step 4.shaping",
     '"decrease" stands here; a list of tables is wanted'),
    ('over     = "10 cm"', 'over     = "10"', "gauge.over", "'10' is not a length: "
     "write a number and its unit, such as 10 cm or 4 in"),
    ('kind = "needle"', 'kind = "nedle"', "place.neck.kind",
     '"nedle" stands here; it is "needle", "holder", "waste yarn" or "pin"'),
    ("extra = 1", 'extra = "3 - 4"', "step 3.section 3.extra",
     "in size 1, 3 - 4 comes to -1; a count is 0 or more"),
]  # fmt: skip


@pytest.mark.parametrize(("right", "wrong", "key", "said"), MISTAKES, ids=[mistake[1] for mistake in MISTAKES])
def test_one_mistake_gets_one_sentence(right: str, wrong: str, key: str, said: str) -> None:
    """Each is told once, at its key, and says what is wrong and what would be right."""
    assert right in GOOD
    with pytest.raises(BadRecipe) as caught:
        read_text(GOOD.replace(right, wrong, 1), "x.toml")
    told = [(problem.key, problem.message) for problem in caught.value.problems]
    assert (key, said) in told
    assert told.count((key, said)) == 1


SYNTAX = [
    ('title = "Bind off"', "title = Bind off",
     "what stands after '=' here is no value; text stands in quotes, yes and no are true and false"),
    ('title = "Bind off"', 'title : "Bind off"',
     "a key must be followed by '=' and its value; in brackets it is a table"),
    ('title = "Bind off"', 'title = "Bind off',
     "a text is not closed on its line; end it with a quote, or use three quotes for several lines"),
    ('title = "Bind off"', 'title = "Bind off"\ntitle = "Cast off"',
     "this key is here a second time; keep one of them"),
    ('text = "neck needle"', 'text = "neck\\needle \\size"',
     "a '\\' in this text means nothing; write '\\\\' for one, or use single quotes"),
    ("[place.neck]", "[place.neck", "the name of a table that began with '[' must end with ']'"),
    ("[place.left_back]", "[place.left_front]",
     "this table is here a second time; join the two, or use [[two brackets]] for one more of a list"),
    ("by_size = 24\n", "by_size = 24 26\n", "something follows the value; give it a line of its own"),
]  # fmt: skip


@pytest.mark.parametrize(("right", "wrong", "said"), SYNTAX, ids=[mistake[1] for mistake in SYNTAX])
def test_a_mistake_in_toml_is_told_in_a_persons_words(right: str, wrong: str, said: str) -> None:
    """Only the first is told, with its line."""
    assert right in GOOD
    with pytest.raises(BadRecipe) as caught:
        read_text(GOOD.replace(right, wrong, 1), "x.toml")
    at = line(right) + wrong.rstrip().count("\n")
    assert [(problem.line, problem.message) for problem in caught.value.problems] == [(at, said)]


def test_a_text_that_never_ends_is_told_where_it_begins() -> None:
    """The parser only notices at the end of the file; the place to look is where the text begins."""
    with pytest.raises(BadRecipe) as caught:
        read_text(GOOD.replace('"Knit the band"', '"""Knit the band'), "x.toml")
    said = "a text that begins here never ends; close it with the same quotes it begins with"
    assert str(caught.value) == f"x.toml:{line('Knit the band')}: {said}"


def test_everything_is_told_at_once_in_the_order_of_the_file() -> None:
    """All mistakes of all sorts together, each with its own line."""
    text = (
        GOOD.replace("[24, 26, 28]", "[24, 26]")
        .replace('kind = "needle"', 'kind = "nedle"')
        .replace('onto    = "neck"', 'onto    = "neckband"')
        .replace("extra = 1", "extra = 1.5")
        .replace("{start end}", "{there}")
        .replace('title = "Bind off"\n', "")
    )
    with pytest.raises(BadRecipe) as caught:
        read_text(text, "x.toml")
    where = [
        line(part, text)
        for part in ("[24, 26]", "nedle", "{there}", 'onto    = "neckb', "1.5", '[[step]]\ndo    = "cast')
    ]
    assert [problem.line for problem in caught.value.problems] == where


def test_every_circle_of_sums_is_told_once() -> None:
    """Two circles and a number that names itself: three sentences, each at the sum that closes its circle."""
    sums = {"a": "b", "b": "c + 1", "c": "a", "d": "a + e", "e": "d", "f": "2 * f"}
    numbers = "".join(f'[number.{name}]\ntext = "{name}"\nis = "{sum_}"\n\n' for name, sum_ in sums.items())
    with pytest.raises(BadRecipe) as caught:
        read_text(GOOD.replace("[place.left_front]", f"{numbers}[place.left_front]"), "x.toml")
    said = "this number is worked out from itself: {}; break the circle"
    assert [(problem.key, problem.message) for problem in caught.value.problems] == [
        ("number.c.is", said.format("a → b → c → a")),
        ("number.e.is", said.format("d → e → d")),
        ("number.f.is", said.format("f → f")),
    ]
