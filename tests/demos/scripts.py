"""What was done to each demo garment that is under way. To see what is in its journal, read its script."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime

from finishing_tui.garment.commands import Command, Finish, Other, Press, TakeCount, TakeMeasure, TakeOut, WriteNote
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.work import Reached, StepWork
from finishing_tui.recipe.stage import Stage


@dataclass(frozen=True)
class Sitting:
    """A sitting: when it ``began``, what was ``done``, and ``where`` it was put down."""

    began: datetime
    done: Callable[[InHand], None]
    where: str


def day(month: int, number: int, hour: int = 19) -> datetime:
    """Return a time of the autumn in which the demo garments are finished."""
    return datetime(2026, month, number, hour, tzinfo=UTC)


def do(hand: InHand, *commands: Command) -> None:
    """Carry commands out; one that is asked again is confirmed."""
    for command in commands:
        refusal = hand.do(command)
        if refusal is not None:
            assert refusal.again is not None, (command, refusal)
            assert hand.do(refusal.again) is None


def work_of(hand: InHand) -> StepWork | None:
    """Return the work under the needles."""
    return hand.state.standing.work if hand.state.standing else None


def now_on(hand: InHand) -> Stage:
    """Return the part that is under the needles."""
    work = work_of(hand)
    assert work is not None
    return work.stages[work.at]


def unit(hand: InHand, value: str = "") -> None:
    """Do the next thing: a press, the lot where that may be, the measure, or the count at a half mark."""
    work = work_of(hand)
    if work is not None and not work.complete:
        stage, progress = work.stages[work.at], work.progress[work.at]
        if stage.unit == "value":
            do(hand, TakeMeasure(value))
            return
        if stage.takes_all:
            do(hand, Finish())
            return
        if progress.mark.units in stage.halts and progress.confirmed[1] < progress.mark.units:
            do(hand, TakeCount(progress.mark.loops))
    do(hand, Press())


def to_step(hand: InHand, title: str, values: tuple[str, ...] = ()) -> None:
    """Work every step to its end until the one of that title is under the needles, just begun."""
    left = list(values)
    while hand.state.current is not None and hand.state.plan.step(hand.state.current).title != title:
        end_step(hand, left)
    if hand.state.current is not None and work_of(hand) is None:
        do(hand, Press())


def end_step(hand: InHand, values: list[str]) -> None:
    """Work the step under the needles to its end."""
    if work_of(hand) is None:
        do(hand, Press())
    while (work := work_of(hand)) is not None and not work.complete:
        unit(hand, values.pop(0) if work.stages[work.at].unit == "value" else "")
    do(hand, Finish())


def to_part(hand: InHand, title: str) -> None:
    """Go on until the part of that title is under the needles."""
    while now_on(hand).title != title:
        unit(hand)


def units(hand: InHand, many: int) -> None:
    """Do the next thing so often."""
    for _ in range(many):
        unit(hand)


def _rust_shoulders(hand: InHand) -> None:
    to_step(hand, "Right side out")
    do(hand, WriteNote("Left shoulder joined twice: the first time with the wrong sides in."))


def _rust_neck(hand: InHand) -> None:
    to_step(hand, "Pick up and knit the neckband")
    while now_on(hand).unit != "spot":
        unit(hand)
    (half,) = now_on(hand).halts
    while _mark(hand).units < half - 4:
        unit(hand)


def _moss_joined(hand: InHand) -> None:
    to_step(hand, "Back neck onto a needle")


def _moss_edge(hand: InHand) -> None:
    to_step(hand, "Pick up the panel edges")
    while now_on(hand).unit != "spot":
        unit(hand)
    do(hand, *[Press()] * 15)  # the count at halfway was due at 12, and was passed


def _plum_underarms(hand: InHand) -> None:
    to_step(hand, "Yoke onto the neck needle")


def _plum_neck(hand: InHand) -> None:
    to_step(hand, "Work the rib")
    units(hand, 4)
    do(hand, WriteNote("Tips are loose in the bag: put stoppers on next time."))


def _teal_front(hand: InHand) -> None:
    to_step(hand, "Pick up the band from hem to hem")
    to_part(hand, "right slope")
    units(hand, 10)
    do(hand, Other(), WriteNote("One row too many picked on the slope, about a third up."))
    to_part(hand, "left slope")


def _sand_shoulder(hand: InHand) -> None:
    to_step(hand, "Join the right shoulder")
    units(hand, 9)


def _ochre_shoulder(hand: InHand) -> None:
    to_step(hand, "The neck towards you")


def _ochre_neck(hand: InHand) -> None:
    to_step(hand, "Work the neckband")
    units(hand, 3)
    assert hand.state.current is not None
    do(hand, WriteNote("A purl among the knits: one row out again."), TakeOut(hand.state.current, 0, 2))
    to_step(hand, "The left back shoulder")


def _ochre_bands(hand: InHand) -> None:
    to_step(hand, "Pick up the button band")
    to_step(hand, "Front band over back band")


def _ochre_end(hand: InHand) -> None:
    to_step(hand, "", ("26",))


def _mark(hand: InHand) -> Reached:
    work = work_of(hand)
    assert work is not None
    return work.progress[work.at].mark


SCRIPTS: dict[str, tuple[Sitting, ...]] = {
    "moss-vest": (
        Sitting(day(11, 26, 10), _moss_joined, "panel ends joined at the center back"),
        Sitting(day(11, 28), _moss_edge, "a bit past half of the left panel edge, I think"),
    ),
    "ochre-jacket": (
        Sitting(day(10, 28), _ochre_shoulder, "right shoulder joined; pieces in the blue bag"),
        Sitting(day(10, 30), _ochre_neck, "neckband bound off"),
        Sitting(day(11, 1, 14), _ochre_bands, "both bands done"),
        Sitting(day(11, 6), _ochre_end, "in the drawer, ready to be given away"),
    ),
    "plum-yoke": (
        Sitting(day(11, 8, 15), _plum_underarms, "underarms closed; yoke still on waste yarn"),
        Sitting(day(11, 11), _plum_neck, "after round 4 of the rib, in the basket by the window"),
    ),
    "rust-crew": (
        Sitting(day(11, 21, 16), _rust_shoulders, "shoulders done, in the red bag"),
        Sitting(day(11, 24), _rust_neck, "half way up the first side of the neck"),
    ),
    "sand-v": (Sitting(day(11, 25, 9), _sand_shoulder, "in the middle of the first shoulder"),),
    "teal-cardigan": (Sitting(day(11, 22, 17), _teal_front, "back neck knitted; second front comes next"),),
}
"""The sittings of each garment under way."""
