"""Knitters on true edges that nobody counted: hands slip, counts slip, and what is truly said still comes true.

The truth is kept beside the program: at which row the hands really are, and how many loops are really there. A press
too many or too few is a slip of the hand; a count that is wrong by one is no true answer, and is put right by the next.
"""

from dataclasses import dataclass
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.craft.markers import divide
from finishing_tui.craft.open_edges import by_rate
from finishing_tui.garment.commands import PinEdge, TakeCount
from finishing_tui.garment.recounting import outlook
from finishing_tui.garment.stops import due
from finishing_tui.garment.walk import really_done
from tests.examples import share
from tests.garment.paper import Paper
from tests.garment.test_open_edges import at, edges, jobs


@dataclass
class Hands:
    """A knitter at an edge of ``rows`` rows: ``row`` and ``loops`` are where her hands really are."""

    paper: Paper
    rows: int
    row: int = 0
    loops: int = 0

    def picks(self, presses: int = 1) -> bool:
        """Do what the program says next, and press for it ``presses`` times; say whether her edge had room for it."""
        before = at(self.paper)[1].mark
        self.paper.press(1)
        after = at(self.paper)[1].mark
        rows = after.units - before.units
        if self.row + rows > self.rows:
            return False
        self.row, self.loops = self.row + rows, self.loops + after.loops - before.loops
        if presses == 0:
            self.paper.take_back()
        elif presses == 2:
            self.paper.press(1)
        return True

    def says(self, how: str, rate: Fraction, target: int, wrong: int = 0) -> TakeCount:
        """Return what she says of her count: the rows left, or what she found by counting ahead at the rate."""
        left, counted = self.rows - self.row, self.loops + wrong
        if how == "rows-left":
            return TakeCount(counted, answer="rows-left", left=left)
        spare = left - by_rate(target - counted, rate).spots
        if spare >= 0:
            return TakeCount(counted, answer="rows-to-spare", left=spare)
        return TakeCount(counted, answer="ends-at", left=counted + by_rate(2 * left, rate).up_to(left))

    def goes_on(self, target: int) -> None:
        """Pick up until the count is there, or the edge has no row left."""
        while self.loops < target and self.picks():
            pass


@settings(max_examples=share(60))
@given(
    jobs(),
    st.sampled_from(["rows-left", "ahead"]),
    st.integers(30, 65),
    st.dictionaries(st.integers(1, 12), st.sampled_from([0, 2]), max_size=2),
)
def test_slips_of_the_hand_before_a_true_answer_do_no_harm(
    job: tuple[int, Fraction, int], how: str, part: int, slips: dict[int, int]
) -> None:
    """Presses missed or doubled: after a true answer the edge ends within a stitch of perfect knowledge, always."""
    rows, rate, target = job
    hands = Hands(edges(target, f"{rate.numerator}/{rate.denominator}"), rows)
    while hands.loops < max(2, target * part // 100) and hands.row < rows - 6:
        assume(at(hands.paper)[1].mark.loops < target - 3)
        assert hands.picks(slips.get(hands.loops + 1, 1))
    left = rows - hands.row
    assume(at(hands.paper)[1].mark.loops > 0 and 0 < hands.loops < target and left >= 4)
    perfect = min(target, hands.loops + 2 * left)
    hands.paper.did(hands.says(how, rate, target))
    hands.goes_on(target)
    assert abs(hands.loops - perfect) <= 1


@settings(max_examples=share(60))
@given(jobs(), st.integers(30, 45), st.integers(60, 75), st.sampled_from([-1, 1]))
def test_a_slipped_count_is_put_right_by_the_next(
    job: tuple[int, Fraction, int], first: int, second: int, wrong: int
) -> None:
    """A count wrong by one is no true answer; counted again further on, the edge is as it would have been."""
    rows, rate, target = job
    assume(target >= 12)
    hands = Hands(edges(target, f"{rate.numerator}/{rate.denominator}"), rows)
    while hands.loops < target * first // 100 and hands.row < rows - 8:
        assert hands.picks()
    assume(0 < hands.loops < target - 2 and rows - hands.row >= 8)
    refused = hands.paper.do(hands.says("rows-left", rate, target, wrong))
    assume(refused is None)
    while hands.loops < target * second // 100 and hands.row < rows - 4:
        assume(hands.picks())
    left = rows - hands.row
    assume(hands.loops < target and left >= 4)
    perfect = min(target, hands.loops + 2 * left)
    hands.paper.did(hands.says("rows-left", rate, target))
    hands.goes_on(target)
    assert abs(hands.loops - perfect) <= 1


@settings(max_examples=share(60))
@given(jobs(), st.sampled_from([2, 4, 8]), st.lists(st.integers(-1, 1), min_size=7, max_size=7))
def test_who_pins_it_ends_with_its_count_and_even(job: tuple[int, Fraction, int], parts: int, slips: list[int]) -> None:
    """One over or under at a pin goes into the next part: the end has its count, no part is off by more than two."""
    rows, _, target = job
    assume(target >= 3 * parts and rows >= 2 * parts)
    paper = edges(target).did(PinEdge(parts))
    shares, real = divide(target, parts), 0
    made: list[int] = []
    for share_of, slip in zip(shares, [*slips[: parts - 1], 0], strict=True):
        pin = sum(shares[: len(made) + 1])
        to_pick = pin - real
        presses = 0
        while presses < to_pick:
            assert due(paper.state) is None
            paper.press(1)
            presses += 1
        made.append(to_pick + slip)
        real += to_pick + slip
        if pin < target:
            assert due(paper.state) == pin
            paper.did(TakeCount(real))
        assert abs(made[-1] - share_of) <= 2
    assert paper.state.ledger.on("band") == real == target


@settings(max_examples=share(40))
@given(jobs(), st.integers(30, 65))
def test_nothing_behind_a_rip_is_guessed_where_presses_tell_it(job: tuple[int, Fraction, int], part: int) -> None:
    """Ripped back to a row, there is on the needle what was picked up to that row, and the rest makes the target."""
    rows, rate, target = job
    paper = edges(target, f"{rate.numerator}/{rate.denominator}")
    while at(paper)[1].mark.loops < target * part // 100:
        paper.press(1)
    mark, before = at(paper)[1].mark, at(paper)[1]
    assume(0 < mark.loops < target and mark.units < rows - 2)

    seen = outlook(paper.state, mark.loops, "rows-left", rows - mark.units)
    for way in seen.ways:
        if way.repair == "rip-back":
            spot, loops = way.progress.mark.units, way.progress.mark.loops
            assert loops == sum(really_done(before, 0, mark.units, mark.loops)[:spot])
