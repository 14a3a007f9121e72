"""A recount tells the truth about the rest, and whoever follows the plan is told that it lies flat."""

from dataclasses import dataclass
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.recount import Recount, RecountMend, Verdict, judge, recount
from finishing_tui.craft.spacing import Ends, Style, space

GENTLE = {Verdict.LIES_FLAT, Verdict.JUST_SHOWS}


@dataclass(frozen=True)
class Asked:
    """One recount: what is asked, so that the answer can be held against it."""

    target: int
    spots: int
    at: int
    counted: int
    confirmed: tuple[int, int]
    natural: Fraction | None
    style: Style
    ends: Ends
    per_10cm: int | None

    def answer(self) -> Recount:
        """Ask it."""
        return recount(
            self.target,
            self.spots,
            at=self.at,
            counted=self.counted,
            confirmed=self.confirmed,
            natural=self.natural,
            style=self.style,
            ends=self.ends,
            per_10cm=self.per_10cm,
        )


@st.composite
def taken(draw_from: st.DrawFn) -> Asked:
    """Give any recount at all that may be asked for."""
    ends: Ends = draw_from(st.sampled_from(("open", "closed")))
    least = 1 if ends == "open" else 2
    spots = draw_from(st.integers(least, 90))
    at = draw_from(st.integers(0, spots))
    seen = draw_from(st.integers(0, at))
    return Asked(
        target=draw_from(st.integers(least, 2 * spots)),
        spots=spots,
        at=at,
        counted=draw_from(st.integers(0, 2 * at)),
        confirmed=(draw_from(st.integers(0, 2 * seen)), seen),
        natural=draw_from(st.sampled_from((None, Fraction(3, 4), Fraction(2, 3), Fraction(1, 2), Fraction(3, 2)))),
        style=draw_from(st.sampled_from(("easy", "even"))),
        ends=ends,
        per_10cm=draw_from(st.sampled_from((None, 14, 30))),
    )


@pytest.mark.parametrize("style", ["easy", "even"])
@pytest.mark.parametrize("ends", ["open", "closed"])
def test_who_follows_the_plan_is_told_that_it_lies_flat(style: Style, ends: Ends) -> None:
    """At every spot of every plan for k <= n <= 60: off is at most one stitch, so the rest lies flat."""
    for spots in range(1, 61):
        for target in range(2 if ends == "closed" and spots > 1 else 1, spots + 1):
            plan, natural, counted = space(target, spots, style=style, ends=ends), Fraction(target, spots), 0
            assert plan.drift <= 1
            for at, here in enumerate((plan.at(spot) for spot in range(1, spots + 1)), 1):
                counted += here
                # By hand, for speed: off is at most one stitch, which is what lies flat.
                assert abs((target - counted) * spots - target * (spots - at)) <= spots
            middle = spots // 2
            judged = judge(target - plan.up_to(middle), spots - middle, natural, target=target)
            assert judged.verdict is Verdict.LIES_FLAT


@given(st.integers(1, 120), st.data())
def test_who_follows_a_plan_by_gauge_is_told_the_same_after_every_recount(spots: int, data: st.DataObject) -> None:
    """Where the plan lies flat by the natural ratio, so does every later count on it, and on the rest spaced anew."""
    natural = data.draw(st.sampled_from((Fraction(3, 4), Fraction(2, 3), Fraction(5, 7), Fraction(1))))
    target = max(1, round(natural * spots) + data.draw(st.integers(-1, 1)))
    plan = space(target, spots, style=data.draw(st.sampled_from(("easy", "even"))))
    if judge(target, spots, natural, target=target).verdict is not Verdict.LIES_FLAT:
        return
    at = data.draw(st.integers(0, spots))
    first = recount(target, spots, at=at, counted=plan.up_to(at), natural=natural)
    assert first.verdict is Verdict.LIES_FLAT
    assert first.rhythm is not None
    assert first.rip_back is None
    # She may also have strayed and been told that the rest lies flat; then the rest spaced anew is her plan.
    strayed = plan.up_to(at) + data.draw(st.integers(-2, 2))
    if strayed < 0 or judge(target - strayed, spots - at, natural, target=target).verdict is not Verdict.LIES_FLAT:
        return
    second = recount(target, spots, at=at, counted=strayed, natural=natural)
    assert second.rhythm is not None
    later = data.draw(st.integers(at, spots))
    third = recount(
        target,
        spots,
        at=later,
        counted=strayed + second.rhythm.up_to(later - at),
        confirmed=(strayed, at),
        natural=natural,
    )
    assert third.verdict is Verdict.LIES_FLAT


@given(taken())
def test_the_rest_is_exactly_what_is_left(asked: Asked) -> None:
    """Every way to go on comes out as it says; with closed ends the last spot is picked if anything is."""
    done = asked.answer()
    assert (done.rhythm is None) == (done.verdict is Verdict.CANNOT_BE)
    for way in done.repairs:
        at, have = (asked.at, asked.counted) if way.to is None else (way.to.spot, way.to.loops)
        assert way.rhythm.spots == asked.spots - at
        assert way.total == have + way.rhythm.stitches
        assert way.total + way.difference == asked.target
        if asked.ends == "closed" and way.rhythm.stitches:
            assert way.rhythm.at(way.rhythm.spots) >= 1
    assert RecountMend.FIRST_ROUND in [way.mend for way in done.repairs]
    assert (done.repairs[0].mend is RecountMend.SPACE_THE_REST) == (done.verdict in GENTLE)
    if done.rhythm is not None:
        assert (done.rhythm.stitches, done.rhythm.spots) == (done.stitches_left, done.spots_left)


@given(taken())
def test_the_judgement_and_the_spot_to_rip_back_to_agree_with_brute_force(asked: Asked) -> None:
    """Every spot before here is tried, the last one first, by the words of the design."""
    done = asked.answer()
    if done.verdict is Verdict.LIES_FLAT:
        assert done.rip_back is None
        return
    assert not _flat(asked, asked.target - asked.counted, asked.spots - asked.at)
    loops, since = asked.confirmed
    if not 0 < since < asked.at or loops > asked.counted:
        loops, since = 0, 0
    expected = None
    for spot in range(asked.at - 1, since - 1, -1):
        even = loops + Fraction((asked.counted - loops) * (spot - since), asked.at - since)
        there = (2 * even + 1) // 2
        if _flat(asked, asked.target - there, asked.spots - spot):
            expected = (spot, there)
            break
    assert (None if done.rip_back is None else (done.rip_back.spot, done.rip_back.loops)) == expected


def _flat(asked: Asked, left: int, spots_left: int) -> bool:
    """Return whether ``left`` stitches from ``spots_left`` spots lie flat, straight from the design."""
    natural = Fraction(asked.target, asked.spots) if asked.natural is None else asked.natural
    if left < 0 or left > 2 * spots_left:
        return False
    off = abs(left - natural * spots_left)
    short = min(asked.target, 20 if asked.per_10cm is None else asked.per_10cm)
    return off <= 1 or off * 20 <= natural * spots_left or off * 20 <= short


@pytest.mark.parametrize(
    ("left", "spots", "verdict"),
    [
        (75, 100, Verdict.LIES_FLAT),  # just right
        (76, 100, Verdict.LIES_FLAT),  # one stitch
        (78, 100, Verdict.LIES_FLAT),  # 4 %
        (79, 100, Verdict.JUST_SHOWS),  # 5.3 %
        (82, 100, Verdict.JUST_SHOWS),  # 9.3 %
        (83, 100, Verdict.WILL_FLARE),  # 10.7 %
        (72, 100, Verdict.LIES_FLAT),
        (71, 100, Verdict.JUST_SHOWS),
        (67, 100, Verdict.WILL_PUCKER),
        (63, 80, Verdict.LIES_FLAT),  # 5 % exactly
        (66, 80, Verdict.JUST_SHOWS),  # 10 % exactly
        (57, 80, Verdict.LIES_FLAT),
        (54, 80, Verdict.JUST_SHOWS),
        (5, 4, Verdict.JUST_SHOWS),  # 2 in 20: a short rest is judged by 10 cm of the band
        (6, 4, Verdict.WILL_FLARE),
        (9, 4, Verdict.CANNOT_BE),  # more than two a spot
        (-1, 4, Verdict.CANNOT_BE),
        (1, 0, Verdict.CANNOT_BE),
        (0, 0, Verdict.LIES_FLAT),
    ],
)
def test_the_limits_are_inclusive(left: int, spots: int, verdict: Verdict) -> None:
    """One stitch, 5 % and 10 % are still on the kinder side; natural ratio 3 of 4, a target of 100."""
    assert judge(left, spots, Fraction(3, 4), target=100).verdict is verdict


def test_a_known_gauge_and_a_small_target_shorten_the_measure() -> None:
    """Change is measured by 10 cm of the band, or by the whole target where that is less."""
    natural = Fraction(3, 4)
    assert judge(5, 4, natural, target=100).change == Fraction(2, 20)
    assert judge(5, 4, natural, target=100, per_10cm=16).change == Fraction(2, 16)
    assert judge(5, 4, natural, target=12, per_10cm=16).change == Fraction(2, 12)


@pytest.mark.parametrize(
    ("spots", "at", "counted", "says"),
    [(0, 0, 0, "at least 1"), (10, 11, 0, "from 0 to 10"), (10, -1, 0, "from 0 to 10"), (10, 5, -1, "0 or more")],
)
def test_numbers_out_of_range_are_refused(spots: int, at: int, counted: int, says: str) -> None:
    """One sentence with the range."""
    with pytest.raises(Impossible, match=says):
        recount(8, spots, at=at, counted=counted)


def test_a_judgement_needs_a_ratio_and_a_target() -> None:
    """A ratio of nothing judges nothing."""
    with pytest.raises(Impossible, match="more than 0"):
        judge(5, 5, Fraction(0), target=10)


def test_a_closed_edge_with_everything_picked_too_soon_says_what_to_do() -> None:
    """The last spot would stay empty: the last loop moves there."""
    done = recount(24, 32, at=31, counted=24, ends="closed")
    assert "pick it up in the last spot" in done.text


def test_the_text_names_the_unit_and_the_hands_way_of_ripping_back() -> None:
    """9 of 24 half way along 32 rows: the answer is to rip back, said as hands do it."""
    done = recount(24, 32, at=16, counted=9, unit="row")
    assert done.verdict is Verdict.WILL_FLARE
    assert "9 of 24 at row 16 of 32. Pick up 15 over the last 16 rows." in done.text
    assert "1. Rip back to row 8 (5 stitches). From there it lies flat" in done.text
    assert "increase 3 evenly in the first row or round" in done.text


def test_where_the_target_does_not_suit_the_edge_ripping_back_mends_nothing() -> None:
    """24 from 24 rows that take 3 of 4: no spot to go back to, and the text says why."""
    done = recount(24, 24, at=12, counted=9, natural=Fraction(3, 4))
    assert done.rip_back is None
    assert "the total is wrong for this edge" in done.text
