from pathlib import Path

from finishing_tui.garment.commands import ChoosePace, LeaveOut, Other, Press, TakeCount, TakeOut, TakeUp, WriteNote
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.ripping import rip_points
from tests.plain.making import Twin, crew, events, garment, typed

NECKBAND = 12
"""The step of the crew neck in which the neckband is picked up, counted from 0; its first part is the left front."""


def finished(folder: Path) -> bool:
    """Return whether every step is done and the ledger holds nothing."""
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state.current is None and hand.state.ledger.empty


def test_a_vest_is_finished_by_lines(tmp_path: Path) -> None:
    """A whole garment worked by lines through the real command leaves the very events that the commands leave."""
    twin = Twin(garment(tmp_path / "twin", "long-front-vest", "XS"))
    while twin.hand.state.current is not None:
        twin.works_on()
    twin.puts_down("all done")
    plain = garment(tmp_path / "plain", "long-front-vest", "XS")
    said = typed(plain, *twin.lines)
    assert f"all {len(twin.hand.state.steps)} steps: finished." in said.splitlines()
    assert events(plain) == events(tmp_path / "twin")
    assert finished(plain)


def test_a_crew_neck_with_everything_that_happens_on_the_way(tmp_path: Path) -> None:
    """Strays, tinking, putting back, a recount, ripping back, notes and all else: the events are those of commands."""
    twin = Twin(crew(tmp_path / "twin"))
    twin.works_to(1)
    twin.does(WriteNote("a note [bold] of \\ signs"), "note a note [bold] of \\ signs")
    twin.does(TakeCount(46, "back"), "46")
    twin.takes_back("b", "b")
    twin.puts_back()
    twin.takes_back("b", "backspace")
    twin.does(LeaveOut(2, sure=True), "leave out 3", "leave out 3")
    twin.does(TakeUp(2), "step 3", "enter")
    twin.does(TakeUp(1), "take up 2")
    twin.works_to(NECKBAND, 0, 5)
    twin.does(Other(), "x")
    twin.does(Press(), "space")
    twin.takes_back("b")
    twin.takes_back("b", "b")
    twin.puts_back()
    twin.puts_back()
    twin.does(ChoosePace("spot"), "p")
    twin.works_to(NECKBAND, 0, 12)
    twin.does(TakeCount(twin.loops(NECKBAND)), str(twin.loops(NECKBAND)))
    twin.does(ChoosePace("run"), "pace run")
    twin.works_to(NECKBAND, 0, 16)
    twin.does(TakeOut(NECKBAND, 0, 10), "t", "1", "10")
    twin.does(ChoosePace("loop"), "pace loop")
    twin.works_to(NECKBAND + 1)
    to_the_start = [point.command for point in rip_points(twin.hand.state)].index(TakeOut(NECKBAND)) + 1
    twin.does(TakeOut(NECKBAND, sure=True), "t", *["more"] * ((to_the_start - 1) // 9), str(to_the_start), "2")
    while twin.hand.state.current is not None:
        twin.works_on()
    twin.puts_down("")
    plain = crew(tmp_path / "plain")
    typed(plain, *twin.lines)
    assert events(plain) == events(tmp_path / "twin")
    assert finished(plain)
