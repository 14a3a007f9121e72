"""Sums: what a recipe writes is what arithmetic says, and nothing else is ever done with it."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.recipe.sums import MOST, BadSum, names_in, postfix, work_out

NUMBERS = {"side": 7, "back_neck": 40, "_x1": 3}


@st.composite
def sums(draw: st.DrawFn, depth: int = 4) -> tuple[str, int, set[str], int]:
    """Return a sum as text with its value, the names in it, and how tightly its last sign binds (3: a single value)."""
    space = draw(st.sampled_from(("", " ", "\t")))
    if depth == 0 or draw(st.booleans()):
        name = draw(st.sampled_from((None, *NUMBERS)))
        if name is not None:
            return f"{space}{name}", NUMBERS[name], {name}, 3
        value = draw(st.integers(0, 9))
        return f"{space}{value}", value, set(), 3
    sign, binds = draw(st.sampled_from((("+", 1), ("-", 1), ("*", 2))))
    left, right = draw(sums(depth - 1)), draw(sums(depth - 1))
    texts = [
        f"({text})" if bound < least or draw(st.booleans()) else text
        for (text, _, _, bound), least in ((left, binds), (right, binds + 1))
    ]
    value = {"+": left[1] + right[1], "-": left[1] - right[1], "*": left[1] * right[1]}[sign]
    return f"{texts[0]}{space}{sign}{texts[1]}", value, left[2] | right[2], binds


@given(sums())
def test_a_sum_comes_to_what_arithmetic_says(made: tuple[str, int, set[str], int]) -> None:
    """Multiplication before addition, left before right, brackets first: as the sum was put together."""
    text, value, names, _ = made
    assert set(names_in(text)) == names
    try:
        found = work_out(text, NUMBERS)
    except BadSum as error:
        assume("no count is above" not in str(error))  # something on the way was too large: another test's business
        raise
    assert found == value


@given(st.text("ab1(+-*) ", max_size=12))
def test_any_text_is_a_sum_or_refused(text: str) -> None:
    """Reading raises nothing but ``BadSum``, and what can be read can be worked out."""
    try:
        names = names_in(text)
    except BadSum:
        return
    assert isinstance(work_out(text, dict.fromkeys(names, 2)), int)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "the sum '' ends where a number or a name should stand"),
        ("2 +", "the sum '2 +' ends where a number or a name should stand"),
        ("2 3", "the sum '2 3' has '3' where +, -, * or ')' should stand"),
        ("2 / 3", "the sum '2 / 3' has '/' where +, -, * or ')' should stand"),
        ("-2", "the sum '-2' has '-' where a number, a name or '(' should stand"),
        ("(2", "the sum '(2' opens a bracket that is never closed"),
        ("2)", "the sum '2)' closes a bracket that was never opened"),
        ("__import__('os')", "the sum \"__import__('os')\" has '(' where +, -, * or ')' should stand"),
        ("1000000", "the sum '1000000' has a number above 100,000"),
        ("9" * 5000, f"the sum '{'9' * 5000}' has a number above 100,000"),
        ("sides", "the sum 'sides' names 'sides', which is not a number of this recipe"),
        ("1000 * 1000", "the sum '1000 * 1000' comes to 1000000, and no count is above 100,000"),
    ],
)
def test_what_is_no_sum_is_told(text: str, said: str) -> None:
    """Each in one sentence that quotes it."""
    with pytest.raises(BadSum) as caught:
        work_out(text, NUMBERS)
    assert str(caught.value) == said


def test_the_example_of_the_design() -> None:
    """The neckband of the design's example: 40 + 16 + 2 · 22 + 4 is 104, as the pattern prints it for size 1."""
    numbers = {"back_neck": 40, "front_neck": 16, "side": 22}
    assert work_out("back_neck + front_neck + 2 * side + 4", numbers) == 104


def test_deep_and_long_sums_do_not_exhaust_the_stack() -> None:
    """Thousands of brackets or signs are read in a loop."""
    assert work_out("(" * 5000 + "1" + ")" * 5000, {}) == 1
    assert work_out("1" + " + 1" * 5000, {}) == 5001
    assert postfix("1 - 2 * 3") == (1, 2, 3, "*", "-")
    assert work_out(f"{MOST} - {MOST}", {}) == 0
