"""The ledger of an audit shows what is there; what is printed otherwise is marked, and gone on from."""

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.recipe.audit import audit
from tests.recipe.audit.writing import NECK, changed, kinds, recipe_of


@given(st.integers(-9, 9).filter(bool), st.integers(0, 2))
def test_what_is_there_is_shown_beside_what_is_printed(off: int, size: int) -> None:
    """A total misprinted by any number: the row has both, those above and below have one, and the end is empty."""
    band = [98, 104, 108]
    counts = [count + (off if at == size else 0) for at, count in enumerate(band)]
    found = audit(changed(('expect = { neck = "band" }', f"expect = {{ neck = {counts} }}")))
    for at, audited in enumerate(found.sizes):
        picked_up = next(row for row in audited.rows if row.do == "pick up and knit")
        assert picked_up.live["neck"] == band[at]
        assert dict(picked_up.printed) == ({"neck": counts[at]} if at == size else {})
        assert all(not row.printed for row in audited.rows if row is not picked_up)
        assert audited.rows[-1].live == {}


@given(st.integers(1, 30))
def test_an_empty_holder_brings_no_stitch(held: int) -> None:
    """A holder emptied before is told once; the sum has nothing for it, and no stitch that nobody knitted."""
    early = '[[step]]\ndo = "move"\ntitle = "Slip them too early"\nfrom = "front"\nto = "other"\n\n'
    place = '[place.other]\ntext = "other holder"\nkind = "holder"\n\n'
    before, after = NECK.replace("[16, 16, 18]", str([held] * 3)).split('[[step]]\ndo     = "pick up and knit"')
    before = before.replace("[place.neck]", f"{place}[place.neck]")
    taken = f'{before}{early}[[step]]\ndo = "pick up and knit"{after}'
    found = audit(recipe_of(taken))
    for audited, (side, back) in zip(found.sizes, ((22, 38), (24, 40), (24, 42)), strict=True):
        row = next(row for row in audited.rows if row.do == "pick up and knit")
        assert row.live["neck"] == 2 * side + back
        (empty,) = [one for one in audited.findings if one.kind == "too few stitches"]
        assert empty.message == "the front holder is empty; its stitches were to be knitted across"
        assert empty.found == 0


def test_two_needles_of_which_one_is_empty() -> None:
    """The join is told, once a size, and done with as many as the other holds: nothing is left for later steps."""
    recipe = changed(('kind = "holder"\nlive = "shoulder"', 'kind = "holder"'))
    assert set(kinds(recipe)) == {("error", "too few stitches", size) for size in "123"}
    assert len(kinds(recipe)) == 3
