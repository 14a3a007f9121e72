"""Numbers that are not printed: solved for where they can be, and said so where they cannot."""

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.recipe.audit import Inputs, audit, implied
from finishing_tui.recipe.reader import read_text
from tests.recipe.audit.writing import told

HEAD = """
format = 1
title  = "neck"
sizes  = ["1"]
{numbers}
[place.neck]
text = "neck needle"
kind = "needle"
{places}
[[step]]
do     = "pick up and knit"
title  = "Pick up"
onto   = "neck"
tail   = "start"
expect = {{ neck = {total} }}
{sections}
[[step]]
do    = "bind off"
title = "Bind off"
from  = "neck"
[[step]]
do    = "weave in"
title = "Weave in"
"""


def neck(total: str, **held: str) -> str:
    """Return a recipe with a holder for every name; each holds what is said, and names in it are not printed."""
    numbers = "".join(f'[number.n_{name}]\ntext = "held {name}"\n' for name in held)
    places = "".join(
        f'[place.{name}]\ntext = "{name}"\nkind = "holder"\nlive = "{live}"\n' for name, live in held.items()
    )
    sections = "".join(f'[[step.section]]\nfrom = "{name}"\n' for name in held)
    return HEAD.format(numbers=numbers, places=places, total=total, sections=sections)


@given(held=st.integers(0, 400), picked=st.integers(1, 60), times=st.integers(1, 3))
def test_one_number_is_solved_exactly(held: int, picked: int, times: int) -> None:
    """Whatever the one number is that makes the total come out, it is found, and the audit with it is clean."""
    text = neck(str(times * held + picked), back=f"{times} * n_back + {picked}")
    found = audit(read_text(text, "t"))
    assert found.sizes[0].implied == {"n_back": held}
    assert [finding.level for finding in found.findings] == ["implied"]


@given(one=st.integers(0, 90), other=st.integers(0, 90))
def test_two_numbers_are_solved_from_two_counts(one: int, other: int) -> None:
    """Two numbers with two independent counts are both found."""
    text = neck(str(one + other), back="n_back", front="n_front").replace(
        "[[step]]\n", f'[[step]]\ndo = "count"\ntitle = "Count"\nplace = "back"\ncount = {one}\n[[step]]\n', 1
    )
    assert implied(Inputs(recipe=read_text(text, "t"), size=0)).values == {"n_back": one, "n_front": other}


def test_numbers_that_cannot_be_told_apart_say_what_they_come_to() -> None:
    """Two holders and one total: only their sum is known, and it is said."""
    found = told(read_text(neck("38", back="n_back", front="n_front"), "t"))
    assert {(one.level, one.kind) for one in found if one.kind == "not worked out"} == {("warning", "not worked out")}
    assert "n_back + n_front = 38" in found[0].message


def test_a_number_that_nothing_tells() -> None:
    """A holder whose stitches nothing printed hangs on."""
    text = neck("38", back="n_back").replace("expect = { neck = 38 }\n", "")
    (found,) = told(read_text(text, "t"))
    assert found.kind == "not worked out"
    assert "no count gives it" in found.message


def test_a_number_that_would_not_be_whole() -> None:
    """An odd total of two equal parts cannot come out."""
    found = told(read_text(neck("37", back="2 * n_back"), "t"))
    assert found[0].kind == "no number fits"
    assert found[0].found == "37/2"


def test_the_knitters_own_number_is_taken() -> None:
    """At the needles the number is hers: nothing is solved, and what it changes is told."""
    recipe = read_text(neck("38", back="n_back"), "t")
    assert implied(Inputs(recipe=recipe, size=0, own={"n_back": 37})).values == {}
