"""Every finding: what brings it, that it comes alone, and what is suggested."""

import pytest

from tests.recipe.audit.writing import NECK, changed, kinds, recipe_of

ALL = ("1", "2", "3")


def every(level: str, kind: str) -> list[tuple[str, str, str]]:
    """Return what a finding in every size is."""
    return [(level, kind, size) for size in ALL]


def test_what_comes_out_is_clean() -> None:
    """A recipe in which every number comes out has nothing to be told."""
    assert kinds(recipe_of(NECK)) == []


CASES: list[tuple[str, list[tuple[str, str]], list[tuple[str, str, str]]]] = [
    ("needles that do not match", [('live = "shoulder"', 'live = "shoulder + 1"')], every("error", "needles differ")),
    ("a sum misprinted", [("[98, 104, 108]", "[98, 106, 108]")], [("error", "sum", "2")]),
    (
        "a printed count the ledger contradicts",
        [('expect = { neck = "band" }', "expect = { neck = [98, 104, 110] }")],
        [("error", "printed count", "3")],
    ),
    ("a band that is not its repeat", [("{ of = 2 }", "{ of = 4 }")], [("error", "repeat", "1")]),
    (
        "taking more than a place holds",
        [('from = "front"', 'from = "front"\ntake = "held + 2"')],
        every("error", "too few stitches"),
    ),
    (
        "sections that should mirror and differ",
        [
            ('stitches = "side"\nmirrors', 'stitches = "side - 2"\nmirrors'),
            ('+ 2 * side"', '+ 2 * side - 2"'),
            ("[98, 104, 108]", "[96, 102, 106]"),
        ],
        every("error", "mirror"),
    ),
    ("a ridge that contradicts the lie", [('together = "right"', 'together = "wrong"')], every("error", "ridge")),
    (
        "picking up with the wrong side facing",
        [('facing = "right"', 'facing = "wrong"')],
        every("warning", "facing"),
    ),
    (
        "the wrong side facing, when it is said",
        [('facing = "right"', 'facing = "wrong"'), ('onto   = "neck"', 'onto   = "neck"\nfacing = "wrong"')],
        [],
    ),
    (
        "a side that is said and not so",
        [('onto   = "neck"', 'onto = "neck"\nfacing = "wrong"')],
        every("error", "facing"),
    ),
    (
        "yarn that does not hang there",
        [('onto   = "neck"', 'onto = "neck"\nyarn = "same"')],
        [*every("error", "yarn")],
    ),
    (
        "a tail used before it is there",
        [('tail  = "shoulder"\nyarn', 'tail  = "other"\nyarn')],
        every("error", "tail"),
    ),
    (
        "a hole that is not there, and the one that is",
        [('gap = "corner"', 'gap = "other corner"')],
        [*every("error", "hole"), *every("error", "hole left")],
    ),
    ("a marker that is not there", [('marker   = "side seam"\n', "")], every("error", "marker")),
    (
        "too many stitches for a section",
        [('spots    = "rows"', "spots = 10")],
        every("error", "pick-up does not fit"),
    ),
    (
        "a pick-up off the natural ratio",
        [('spots    = "rows"', 'spots    = "rows + 9"'), ('spots    = "rows"', 'spots    = "rows + 9"')],
        every("warning", "natural ratio"),
    ),
    (
        "a number never used",
        [("[number.shoulder]", '[number.spare]\ntext = "spare"\nby_size = 3\n[number.shoulder]')],
        [("warning", "never used", "")],
    ),
    (
        "a place never used",
        [("[place.neck]", '[place.spare]\ntext = "spare"\nkind = "pin"\n[place.neck]')],
        [("warning", "never used", "")],
    ),
    ("a count that falls", [("[30, 32, 34]", "[34, 32, 34]")], [("warning", "from size to size", "2")]),
    ("a count that jumps", [("[24, 26, 28]", "[24, 26, 88]")], [("warning", "from size to size", "3")]),
    (
        "a rib that does not close",
        [("k1, p1 rib", "k2, p2 rib")],
        [("warning", "rib", "1")],
    ),
    (
        "more shaping than stitches",
        [("rounds  = 7", "rounds  = 7\nshaping = [{ round = 9, change = -2 }]")],
        [*every("error", "cannot begin")],
    ),
]


@pytest.mark.parametrize(("changes", "wanted"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_one_mistake_is_one_finding(changes: list[tuple[str, str]], wanted: list[tuple[str, str, str]]) -> None:
    """Each mistake is found in the sizes that have it, and nothing else is told because of it."""
    found = kinds(changed(*changes))
    assert sorted(found) == sorted(wanted)


def left(step: str) -> list[tuple[str, str, str]]:
    """Return what is found when the last step that begins with ``do = step`` is left out."""
    before, after = NECK.rsplit(f'\n[[step]]\ndo    = "{step}"', 1)
    return kinds(recipe_of(before + ("\n[[step]]" + after.split("\n[[step]]", 1)[1] if "\n[[step]]" in after else "")))


def test_what_is_left_behind_is_found() -> None:
    """At the end no tail, hole, live stitch or yarn may be left."""
    assert set(left("weave in")) == {("error", "tail left", size) for size in ALL}
    assert set(left("close hole")) == {("error", "hole left", size) for size in ALL}
    assert set(left("bind off")) == {
        (level, kind, size) for size in ALL for level, kind in (("error", "stitches left"), ("error", "yarn left"))
    }


def test_a_marker_left_in_the_fabric() -> None:
    """A marker that goes in must come out."""
    recipe = changed(('do     = "unmark"', 'do = "check"\nitems = ["marker"]'), ('marker = "side seam"\n', ""))
    assert set(kinds(recipe)) == {("error", "marker left", size) for size in ALL}
