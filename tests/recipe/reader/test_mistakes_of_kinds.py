"""What cannot hold between the keys of one kind of step is said while the recipe is written, with its line and key."""

import pytest

from finishing_tui.recipe.reader import BadRecipe, read_text

HEAD = """format = 1
title = "Small recipe"
sizes = ["one"]

[place.band]
text = "band needle"
kind = "needle"
live = 20

[[step]]
"""

MISTAKES = [
    (
        'do = "seam"\ntitle = "Sew"\ntail = "end"\nsides = [{ spots = 4 }]',
        "sides",
        "a seam has two sides, and here is 1",
    ),
    (
        'do = "graft"\ntitle = "Graft"\ntail = "end"\nfront = "band"\nback = "band"',
        "front",
        "'front' and 'back' are the same place; two different ones are wanted",
    ),
    (
        'do = "shape"\ntitle = "Shape"\non = "band"\nto = 18\nmethod = "k2tgo"',
        "method",
        "no way of shaping is called 'k2tgo': try k2tog",
    ),
    (
        'do = "buttonholes"\ntitle = "Holes"\non = "band"\nholes = 2\nfirst = 3\nmethod = "yarn over"\nwidth = 2',
        "width",
        "a yarn over makes a hole of 1 stitch, not 2; leave the width out",
    ),
    (
        'do = "buttonholes"\ntitle = "Holes"\non = "band"\nholes = 2\nfirst = 3\nover = 9\nbetween = 4',
        "",
        "this step says both 'over' and 'between'; it needs one of them, or neither",
    ),
    (
        'do = "measure"\ntitle = "Measure"\nwhat = "the neck"\ntolerance = "1 cm"',
        "tolerance",
        "a tolerance belongs to a 'value', and none is given",
    ),
    (
        'do = "work"\ntitle = "Slope"\non = "band"\nrows = 6\nshort_rows = { first = 0, step = 2, times = 2 }',
        "short_rows.first",
        "0 is out of range; use 1 or more",
    ),
    (
        'do = "pick up and knit"\ntitle = "Pick up"\nonto = "band"\n[[step.section]]\nalong = "edge"',
        "section 1",
        "this section does not say how long it is; give 'spots', 'slope' or 'length'",
    ),
]


@pytest.mark.parametrize(("step", "key", "said"), MISTAKES, ids=[said for _, _, said in MISTAKES])
def test_it_is_told_in_one_sentence_where_it_stands(step: str, key: str, said: str) -> None:
    """One mistake, one sentence, at its key."""
    with pytest.raises(BadRecipe) as caught:
        read_text(HEAD + step + "\n", "x.toml")
    (problem,) = caught.value.problems
    assert problem.message.startswith(said)
    assert problem.key == (f"step 1.{key}" if key else "step 1")
    assert problem.line is not None


@pytest.mark.parametrize(("key", "wrong"), [("length", "10"), ("slope", "downhill")])
def test_a_length_or_a_slope_that_cannot_be_read(key: str, wrong: str) -> None:
    """It is quoted, and what would be right is said."""
    step = 'do = "pick up and knit"\ntitle = "Pick up"\nonto = "band"\n[[step.section]]\nalong = "edge"\n'
    with pytest.raises(BadRecipe) as caught:
        read_text(f'{HEAD}{step}{key} = "{wrong}"\n', "x.toml")
    (problem,) = caught.value.problems
    assert (problem.key, repr(wrong) in problem.message) == (f"step 1.section 1.{key}", True)


def test_sections_without_spots_may_mirror_one_another() -> None:
    """A section is walked whether its spots are given, or its slope, or its length."""
    text = HEAD + 'do = "pick up and knit"\ntitle = "Pick up"\nonto = "band"\n'
    for mirrors in ("", 'mirrors = "left"\n'):
        name = "right" if mirrors else "left"
        text += f'[[step.section]]\nalong = "{name}"\nslope = "20 rows straight"\n{mirrors}'
    assert read_text(text, "x.toml").sizes == ("one",)
