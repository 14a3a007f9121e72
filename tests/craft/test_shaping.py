import pytest
from hypothesis import assume, given, reject
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.methods import METHODS
from finishing_tui.craft.shaping import Evenly, evenly, room
from tests.craft.row_reader import worked

COUNTS = st.integers(1, 400)
LIES = st.sampled_from(["flat", "round"])
WAYS = st.one_of(st.none(), st.sampled_from(list(METHODS)))


@st.composite
def asked(draw: st.DrawFn, methods: st.SearchStrategy[str | None] = WAYS) -> tuple[int, int, bool, str | None]:
    """Return (before, after, flat, method) that fit: so many shapings as there is room for, at the most."""
    before, flat, method = draw(COUNTS), draw(st.booleans()), draw(methods)
    inner = max(before - 2, 0) if flat else before
    if method is None:
        after = draw(st.integers(before - 2 * (inner // 3), before + 3 * inner // 2))  # doubles too
        return before, after, flat, method
    way = METHODS[method]
    most = inner // way.eats if way.eats else max(inner - 1, 0)
    return before, before + draw(st.integers(0, most)) * way.change, flat, method


def shaped(before: int, after: int, *, flat: bool, method: str | None = None, margin: int | None = None) -> Evenly:
    """Return the row, or give this example up where it cannot be."""
    try:
        return evenly(before, after, flat=flat, method=method, margin=margin)
    except Impossible:
        reject()


@given(asked())
def test_the_row_as_written_leaves_what_it_says(row: tuple[int, int, bool, str | None]) -> None:
    """Worked stitch by stitch from its words, the row takes ``before`` stitches and leaves ``after``."""
    before, after, flat, method = row
    found = shaped(before, after, flat=flat, method=method)
    assert worked(found.text) == (before, after)


@given(asked())
def test_plain_stitches_and_shapings_make_up_the_row(row: tuple[int, int, bool, str | None]) -> None:
    """Plain stitches and what the shapings eat are all of ``before``; the shapings make the whole change."""
    before, after, flat, method = row
    found = shaped(before, after, flat=flat, method=method)
    assert sum(found.plain) + sum(way.eats for way in found.shapings) == before
    assert sum(way.change for way in found.shapings) == after - before
    assert len(found.plain) == len(found.shapings) + (flat or before == after)


@given(asked())
def test_groups_differ_by_one_at_most(row: tuple[int, int, bool, str | None]) -> None:
    """Between shapings (and round the round) the plain stitches differ by at most one."""
    before, after, flat, method = row
    found = shaped(before, after, flat=flat, method=method)
    gaps = found.plain[1:-1] if flat else found.plain
    if gaps:
        assert max(gaps) - min(gaps) <= 1


@given(asked(), st.one_of(st.none(), st.integers(1, 30)))
def test_flat_rows_are_balanced_and_spare_the_edge(row: tuple[int, int, bool, str | None], margin: int | None) -> None:
    """The edge stitches are never shaped, and the margins differ by at most one."""
    before, after, _, method = row
    found = shaped(before, after, flat=True, method=method, margin=margin)
    assume(found.shapings)
    assert min(found.plain[0], found.plain[-1]) >= (margin or 1)
    assert abs(found.plain[0] - found.plain[-1]) <= 1


@given(asked(st.just("M1")))
def test_one_bar_is_lifted_once(row: tuple[int, int, bool, str | None]) -> None:
    """Two stitches made between others never come from the same bar."""
    before, after, flat, method = row
    found = shaped(before, after, flat=flat, method=method)
    assert min(found.plain) >= 1


@given(st.integers(1, 120), st.integers(1, 120), LIES, st.sampled_from(["k2tog", "cdd", "kfb", "M1", "yo"]))
def test_refused_exactly_when_it_does_not_fit(before: int, after: int, lie: str, method: str) -> None:
    """A row is refused exactly when its shapings, each with its room, are more than the row holds."""
    flat = lie == "flat"
    way = METHODS[method]
    count, rest = divmod(after - before, way.change)
    inner = before - 2 if flat else before
    fits = rest == 0 and count >= 0 and (count * way.eats <= inner if way.eats else count <= inner + flat)
    try:
        evenly(before, after, flat=flat, method=method)
    except Impossible:
        assert not fits
    else:
        assert fits or before == after


@given(st.integers(1, 300), LIES, st.sampled_from(["k2tog", "cdd", "kfb", "M1"]))
def test_what_it_could_hold_can_be_done(before: int, lie: str, method: str) -> None:
    """The most that ``room`` promises works, and one more is refused."""
    flat = lie == "flat"
    way = METHODS[method]
    most = room(before, way, flat=flat)
    assume(most)
    assert len(evenly(before, before + most * way.change, flat=flat, method=method).shapings) == most
    with pytest.raises(Impossible):
        evenly(before, before + (most + 1) * way.change, flat=flat, method=method)


@given(st.integers(3, 200), LIES, st.data())
def test_double_only_where_single_does_not_fit(before: int, lie: str, data: st.DataObject) -> None:
    """With no method asked for, as few places as possible do double, and none where one a stitch is enough."""
    flat = lie == "flat"
    after = data.draw(st.integers(1, 3 * before))
    found = shaped(before, after, flat=flat)
    assume(found.shapings)
    doubles = sum(1 for way in found.shapings if way != found.method)
    count = abs(after - before)
    if count <= room(before, found.method, flat=flat):
        assert doubles == 0
    else:
        fewer = doubles - 1
        inner = before - 2 if flat else before
        needs = (count - 2 * fewer) * found.method.eats + fewer * METHODS[found.method.doubled or ""].eats
        places = count - fewer
        assert needs > inner if found.method.eats else places > inner + flat


def test_the_left_hand_works_the_mirror_of_it() -> None:
    """The counts stay; k2tog and ssk change places."""
    right, left = evenly(80, 70, flat=True), evenly(80, 70, flat=True, left_handed=True)
    assert left.plain == right.plain
    assert left.text == right.text.replace("k2tog", "ssk")


@pytest.mark.parametrize(
    ("before", "after", "method", "says"),
    [
        (20, 8, "k2tog", "9 times at most"),
        (20, 5, None, "8 is as far as it goes"),
        (10, 7, "cdd", "8 or 6 can be reached"),
        (10, 8, "kfb", "adds stitches"),
        (10, 12, "ssk", "loses stitches"),
        (2, 1, None, "too few to shape"),
        (0, 5, None, "use 1 or more"),
        (10, 100_001, None, "use 1 to 100,000"),
    ],
)
def test_refusals_say_what_would_be_right(before: int, after: int, method: str | None, says: str) -> None:
    """A row that cannot be worked is refused in one sentence that says what could."""
    with pytest.raises(Impossible, match=says):
        evenly(before, after, flat=True, method=method)


@given(st.integers(1, 80), st.integers(1, 80), LIES)
def test_as_far_as_it_goes_is_true(before: int, after: int, lie: str) -> None:
    """The count that a refusal names can be reached, and nothing beyond it."""
    flat = lie == "flat"
    try:
        evenly(before, after, flat=flat)
    except Impossible as error:
        if "as far as it goes" in str(error):
            reach = int(str(error).split(" is as far")[0].rsplit(" ", 1)[1])
            assert evenly(before, reach, flat=flat).after == reach
            beyond = reach + (1 if after > before else -1)
            with pytest.raises(Impossible):
                evenly(before, beyond, flat=flat)


def test_a_margin_is_for_rows_only() -> None:
    """A round has no edge."""
    with pytest.raises(Impossible, match="no margins"):
        evenly(40, 36, flat=False, margin=2)


def test_nothing_to_do_is_said() -> None:
    """The same count before and after is no error."""
    found = evenly(40, 40, flat=True)
    assert (found.plain, found.shapings) == ((40,), ())
    assert "as they are" in found.sentence


def test_the_largest_row_is_worked_out_whole() -> None:
    """The bound is no hang: the largest counts come out, and add up."""
    found = evenly(100_000, 61_803, flat=False)
    assert worked(found.text) == (100_000, 61_803)
