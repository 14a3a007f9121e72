from collections.abc import Callable
from itertools import groupby

import pytest
from hypothesis import assume, given, reject
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.ribs import (
    Placed,
    Rib,
    balanced,
    centred,
    edges_mirror,
    fitting,
    in_the_round,
    nearest,
    read_rib,
    rib_row,
    seamed,
    start_of_round,
)
from tests.craft.row_reader import words_of

RIBS = st.builds(Rib, st.integers(1, 6), st.integers(1, 6))


def stitches(row: str) -> str:
    """Return a written rib stitch by stitch: ``kkppkk``."""
    return "".join(word[0] * int(word[1:]) for word in words_of(row))


def begun(rib: Rib, count: int, start: int) -> str:
    """Return ``count`` stitches of the rib from stitch ``start`` of its repeat on."""
    return "".join("k" if (start + at) % rib.period < rib.knit else "p" for at in range(count))


def runs(tube: str) -> list[tuple[str, int]]:
    """Return the ribs of a tube, begun where one of them begins."""
    turn = next((at for at in range(len(tube)) if tube[at - 1] != tube[at]), 0)
    return [(kind, len(list(run))) for kind, run in groupby(tube[turn:] + tube[:turn])]


def unbroken(tube: str, rib: Rib) -> bool:
    """Return whether the rib runs on all the way round."""
    wanted = {("k", rib.knit), ("p", rib.purl)}
    return set(runs(tube)) == wanted


def half_stitch(pieces: list[str]) -> str | None:
    """Sew pieces into a tube, each two edge stitches becoming one; None where they are not of one kind."""
    tube = ""
    for at, piece in enumerate(pieces):
        if pieces[at - 1][-1] != piece[0]:
            return None
        tube += piece[1:]
    return tube


def full_stitch(pieces: list[str]) -> str | None:
    """Sew pieces into a tube, each edge stitch hidden in the seam."""
    return "".join(piece[1:-1] for piece in pieces)


@pytest.mark.parametrize("rib", [Rib(2, 2), Rib(1, 1), Rib(3, 2), Rib(1, 3), Rib(3, 3)])
@pytest.mark.parametrize(("seam", "sew"), [("half stitch", half_stitch), ("full stitch", full_stitch)])
def test_seamed_numbers_are_exactly_those_that_run_on(
    rib: Rib, seam: str, sew: Callable[[list[str]], str | None]
) -> None:
    """Every count and every start is knitted and sewn on paper: the tube is unbroken for just the counts given."""
    found = seamed(rib, "half stitch" if seam == "half stitch" else "full stitch")
    for count in range(rib.period + 2, 5 * rib.period):
        starts = range(rib.period)
        alike = [sew([begun(rib, count, start)] * 2) for start in starts]
        assert any(tube and unbroken(tube, rib) for tube in alike) == found.alike.holds(count)
        turned = [sew([begun(rib, count, start), begun(rib, count, start + rib.knit)]) for start in starts]
        works = any(tube and unbroken(tube, rib) for tube in turned)
        assert works == (found.turned is not None and found.turned.holds(count))


@given(RIBS, st.integers(1, 300))
def test_whole_repeats_are_unbroken_in_the_round(rib: Rib, count: int) -> None:
    """The tube of ``count`` stitches is unbroken exactly when the count is of the form given."""
    assert unbroken(begun(rib, count, 0), rib) == (count > 0 and in_the_round(rib).holds(count))


@given(RIBS, st.integers(2, 300))
def test_a_balanced_rib_begins_and_ends_with_whole_knit_ribs(rib: Rib, count: int) -> None:
    """It is its own mirror and both ends are whole knit ribs, exactly when the count is of the form given."""
    row = [(kind, len(list(run))) for kind, run in groupby(begun(rib, count, 0))]
    assert (row[-1] == ("k", rib.knit)) == balanced(rib).holds(count)


@given(st.integers(1, 5_000), st.integers(1, 60), st.integers(0, 60))
def test_the_nearest_numbers_are_the_nearest(count: int, of: int, plus: int) -> None:
    """Each fits; nothing that fits lies between them; the count itself alone when it fits."""
    near = nearest(count, of, plus)

    def fits(number: int) -> bool:
        return number >= max(plus, 1) and (number - plus) % of == 0

    assert all(fits(number) for number in near)
    if fits(count):
        assert near == (count,)
    else:
        assert not any(fits(number) for number in range(near[0] + 1 if near[0] < count else 1, near[-1]))


@given(RIBS, st.integers(1, 300), st.integers(0, 11))
def test_a_rib_in_words_is_that_rib(rib: Rib, count: int, skip: int) -> None:
    """Written out, the words are the rib from the stitch it begins with."""
    assert stitches(rib_row(count, rib, skip % rib.period)) == begun(rib, count, skip % rib.period)


@given(RIBS, st.integers(2, 300))
def test_a_centred_row_is_its_own_mirror(rib: Rib, count: int) -> None:
    """Both edges mirror each other, and the rib named stands across the middle."""
    try:
        found = centred(count, rib)
    except Impossible:
        assert (count - rib.knit) % 2 and (count - rib.purl) % 2  # noqa: PT018  (one fact: neither has that middle)
        return
    row = stitches(found.row)
    assert len(row) == count
    assert row == row[::-1]
    assert row[count // 2] == found.middle[0]


def turned_to(found: Placed, middle: int, *, on_stitch: bool) -> str:
    """Return the round, turned so that the middle is where its two ends meet."""
    row = stitches(found.row)
    return row[middle + 1 :] + row[:middle] if on_stitch else row[middle:] + row[:middle]


@given(RIBS, st.integers(1, 40), st.data())
def test_a_round_is_centred_where_it_was_asked(rib: Rib, repeats: int, data: st.DataObject) -> None:
    """Seen from the middle the round is the same both ways, and it is unbroken."""
    on_stitch = data.draw(st.booleans())
    count = rib.period * repeats
    middle = data.draw(st.integers(0, count - 1))
    try:
        found = start_of_round(count, rib, middle, on_stitch=on_stitch)
    except Impossible:
        reject()
    both_ways = turned_to(found, middle, on_stitch=on_stitch)
    assert both_ways == both_ways[::-1]
    assert unbroken(stitches(found.row), rib)


@given(RIBS, st.integers(2, 300))
def test_edges_mirror_when_both_are_whole_and_alike(rib: Rib, count: int) -> None:
    """Begun with a whole knit or a whole purl rib, the row ends with the same."""
    from_knit = begun(rib, count, 0)
    from_purl = begun(rib, count, rib.knit)
    assume(count > rib.period)
    assert edges_mirror(count, rib) == (from_knit == from_knit[::-1] or from_purl == from_purl[::-1])


@pytest.mark.parametrize(("typed", "rib"), [("k2p2", Rib(2, 2)), ("K1, P1", Rib(1, 1)), (" k3 p2 ", Rib(3, 2))])
def test_ribs_are_read_as_people_write_them(typed: str, rib: Rib) -> None:
    """Commas, spaces and capitals do not matter."""
    assert read_rib(typed) == rib


@pytest.mark.parametrize("typed", ["", "rib", "k0p2", "k2p", "2x2", "k2p2 k", "k9999p1", "k٢p2"])
def test_what_is_no_rib_is_refused(typed: str) -> None:
    """One sentence for anything else."""
    with pytest.raises(Impossible):
        read_rib(typed)


def test_a_round_of_broken_repeats_is_refused_with_the_way_out() -> None:
    """The refusal names the numbers that fit."""
    with pytest.raises(Impossible, match=r"1 fewer \(168\) or 3 more \(172\)"):
        start_of_round(169, Rib(2, 2), 40)
    assert fitting(168, in_the_round(Rib(2, 2))) == "168 stitches fit the repeat (4m)."
