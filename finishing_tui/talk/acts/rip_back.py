"""Work was taken out: to which place, to which row of it, and sure, where later steps fall with it."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import TakeOut
from finishing_tui.garment.state import State
from finishing_tui.glance.ripping import RipPoint, rip_points
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, Choose, HowMany, Option, Pick
from finishing_tui.talk.conversation import Talk

STAYS = "The record keeps what you rip back."


def _offered(state: State, _: int | None) -> Offer | None:
    return (
        Offer("rip_back", "rip back", "rip back; choose the row, stitches or step you ripped back to")
        if state.order
        else None
    )


def _does(talk: Talk) -> Ask | None:
    points = rip_points(talk.state)
    if not points:
        talk.refuse("there is nothing to rip back yet")
        return None
    return _to_where(talk, points)


def _to_where(talk: Talk, points: tuple[RipPoint, ...]) -> Ask:
    def chosen(at: int) -> Ask | None:
        point = points[at]
        return _to_which(talk, points, point) if point.most else _taken_out(talk, point.command)

    options = tuple(Option(point.text) for point in points)
    return Pick(question="Rip back to where?", told=(STAYS,), options=options, then=chosen)


def _to_which(talk: Talk, points: tuple[RipPoint, ...], point: RipPoint) -> Ask:
    def chosen(units: int) -> Ask | None:
        try:
            command = point.to(units)
        except FinishingError as error:
            talk.refuse(str(error))
            return talk.asked
        return _taken_out(talk, command)

    keep = f"keep 0 to {point.most}" if point.left else f"type the last {point.unit} you keep, up to {point.most}"
    work = talk.state.work
    return HowMany(
        question=point.asks,
        told=(f"{keep}. Zero rips it all out", STAYS),
        on_edge=work is not None and (point.command.step, point.command.stage) == (talk.state.current, work.at),
        unit=point.unit,
        most=point.most,
        takes=f"rip to {point.unit} {{}}" if point.left is None else "rip to {}",
        then=chosen,
        back=lambda: _to_where(talk, points),
    )


def _taken_out(talk: Talk, command: TakeOut) -> Ask | None:
    """Take it out; what falls with it is named first."""
    asked, refusal = talk.asked, talk.attempt(command)
    if refusal is None:
        talk.say("ripped back; the record keeps it")
        return None
    sure = refusal.again
    if not isinstance(sure, TakeOut):
        talk.refused(refusal)
        return asked
    options = Option("keep it all"), Option("rip all that back", STAYS)
    return Choose(
        question=sentence(refusal.sentence),
        options=options,
        then=lambda at: _taken_out(talk, sure) if at == 1 else None,
        left=lambda: asked,
    )


ACT = Action("rip_back", "t", "rip back to an earlier row, number of stitches or step", _offered, _does, "this garment")
