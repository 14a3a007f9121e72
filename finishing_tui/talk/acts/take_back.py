"""The last thing is taken back, or the last digit typed; what is no press is named first."""

from finishing_tui.garment.state import State
from finishing_tui.glance.label_words import top_words
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    if not state.top:
        return None
    return Offer("take_back", _label(state), f"take back {top_words(state) or 'the last press'}")


def _label(state: State) -> str:
    """Return the trade's word where stitches are unknitted, and the plain one where nothing is knitted."""
    work = state.work
    if work is None or not work.stages or state.top_label:
        return "undo"
    last = work.stages[min(work.at, len(work.stages) - 1)]
    return "undo" if last.unit in {"item", "value"} else "tink"


def _does(talk: Talk) -> None:
    if talk.typed:
        talk.typed = talk.typed[:-1]
        return
    talk.looking = None
    if talk.state.top and talk.state.top_label:
        talk.again = ("take_back", talk.state, None)
        talk.say(f"{talk.keys.begins('needles.take_back')} again takes back: {top_words(talk.state)}")
        return
    talk.take_back()


ACT = Action(
    "take_back",
    "backspace",
    "take back the last press, or the last digit you typed",
    _offered,
    _does,
    "right now",
    letter="b",
    digits=True,
)
