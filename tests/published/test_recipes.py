"""Recipes written from published figures audit as their sources say; each file names its source at its head."""

from pathlib import Path

import pytest

from finishing_tui.recipe.audit import Audit, Finding, audit
from finishing_tui.recipe.reader import read_recipe

FOLDER = Path(__file__).parent / "recipes"


def audited(name: str) -> Audit:
    """Return the audit of a recipe of this folder."""
    return audit(read_recipe(FOLDER / f"{name}.toml"))


def errors(found: Audit) -> list[Finding]:
    """Return the errors of an audit."""
    return [finding for finding in found.findings if finding.level == "error"]


@pytest.mark.parametrize("name", sorted(path.stem for path in FOLDER.glob("*.toml")))
def test_what_balances_is_clean_in_every_size(name: str) -> None:
    """Figures that come out give neither an error nor a warning, whatever the size."""
    found = audited(name)
    assert not [finding.sentence for finding in found.findings if finding.level != "implied"]
    assert all(row.begun for size in found.sizes for row in size.rows)
    assert all(not size.rows[-1].live for size in found.sizes), "at the end nothing is live"


@pytest.mark.parametrize("name", sorted(path.stem for path in (FOLDER / "wrong").glob("*.toml")))
def test_what_is_wrong_is_an_error(name: str) -> None:
    """Every recipe whose published figures cannot be right has an error."""
    assert errors(audited(f"wrong/{name}"))


@pytest.mark.parametrize("name", sorted(path.stem for path in (FOLDER / "doubtful").glob("*.toml")))
def test_what_is_doubtful_is_a_warning_and_no_error(name: str) -> None:
    """Every recipe that can be knitted but is doubtful has a warning, and no error."""
    found = audited(f"doubtful/{name}")
    assert {finding.level for finding in found.findings} == {"warning"}


def test_the_holder_that_is_not_printed_is_implied() -> None:
    """94 100 100 104 104 with 28 30 30 31 31 twice and 10 twice: 18 20 20 22 22 are held (a collection, 2016)."""
    found = audited("chunky")
    assert [size.implied["back"] for size in found.sizes] == [18, 20, 20, 22, 22]
    assert [finding.level for finding in found.findings] == ["implied"] * 5


def test_a_printed_total_that_is_not_its_parts() -> None:
    """97 is 98 and 105 is 108; the 24 and 28 should be the 23 and 25 bound off (Rico 617, corrections page)."""
    first, second = errors(audited("wrong/printed-total"))
    assert (first.expected, first.found, first.sum) == (97, 98, "18 + 15 + 18 + 11 + 24 + 12 = 98")
    assert first.suggestion.startswith("23 from back, not 24; ")
    assert (second.expected, second.found, second.sum) == (105, 108, "20 + 17 + 20 + 11 + 28 + 12 = 108")
    assert second.suggestion.startswith("25 from back, not 28; ")


def test_a_rib_in_the_round_is_one_fewer_or_three_more() -> None:
    """169 in k2p2 in the round: 168 or 172 (KnittingHelp 58695); told once, though two steps see it."""
    (found,) = errors(audited("wrong/rib-in-the-round"))
    assert found.kind == "repeat"
    assert found.suggestion.startswith("use 168 or 172")


def test_needles_that_differ_say_by_how_many() -> None:
    """A front with one stitch more than the back: one fewer there (wendyknits.net, 2007)."""
    (found,) = errors(audited("wrong/front-one-more"))
    assert (found.kind, found.expected, found.found) == ("needles differ", 24, 23)
    assert found.suggestion.startswith("23 on the front needle at the start, not 24")


def test_what_was_left_out_shows_in_the_difference_and_only_once() -> None:
    """83 where 67 should be: 16 too many, 8 a side, the armhole bind-offs (anonyknits, 2006)."""
    (found,) = errors(audited("wrong/underarm-left-out"))
    assert (found.expected, found.found) == (67, 83)
    assert found.sum == "16 too many, 8 a side"


def test_a_cast_on_undone_gives_one_fewer() -> None:
    """A cast-on of 15 undone gives 14 (Holly Briscoe)."""
    (found,) = errors(audited("wrong/undone-cast-on"))
    assert (found.expected, found.found) == (15, 14)


def test_fence_posts() -> None:
    """Ten holes of 2 and gaps of 9 need 11 x 10 + 9 = 119, not 110 (Yarn Harlot, 2005)."""
    (found,) = errors(audited("wrong/fence-posts"))
    assert (found.expected, found.found) == (119, 110)


def test_four_buttons_have_two_between() -> None:
    """4 buttons are the first, the last and 2 between (Australian Knitting, January 2016)."""
    (found,) = errors(audited("wrong/four-buttons"))
    assert found.suggestion == "between 2, not 1; else print 3"


def test_only_some_sizes_are_of_the_repeat() -> None:
    """Of 72 78 82 84 88 only 72, 84 and 88 are 4m (thenuttyknitters, 2010)."""
    assert [finding.found for finding in errors(audited("wrong/child-in-fours"))] == [78, 82]


def test_edges_that_do_not_mirror_name_the_numbers_that_would() -> None:
    """60 64 64 68 68 in k2p2 flat: 62 66 66 70 70 would mirror (NobleKnits, 2007)."""
    found = audited("doubtful/edges-do-not-mirror").findings
    assert ["62" in one.suggestion for one in found] == [True, True, True, False, False]
    assert [one.suggestion.removesuffix(" would").split(" or ")[-1] for one in found] == ["62", "66", "66", "70", "70"]


def test_more_picks_than_stitches_on_a_straight_edge() -> None:
    """37 from 36 and 41 from 38 stitches are doubtful; picked up from the wrong side is not, when it is said."""
    found = audited("doubtful/deep-collar").findings
    assert {(one.kind, one.found) for one in found} == {("natural ratio", 37), ("natural ratio", 41)}


def test_a_seam_may_differ_by_one_row() -> None:
    """Sides of 100 and 101 rows are eased without a word; 105 is a warning (L. Neatby; Knitting Robin, 2013)."""
    (found,) = audited("doubtful/seam-rows").findings
    assert (found.size, found.expected, found.found) == ("five rows", 100, 105)
