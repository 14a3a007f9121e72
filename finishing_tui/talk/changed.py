"""A recipe or a garment's file that was changed since it was taken: what is different, and whether to take it."""

from finishing_tui.garment.plan import Plan
from finishing_tui.glance.plan_changes import plan_change
from finishing_tui.talk.asks import Choose, Option
from finishing_tui.talk.conversation import Talk


def changed(talk: Talk, plan: Plan) -> Choose:
    """Return the question whether ``plan`` is to be taken, with what it changes."""
    change = plan_change(talk.state, plan)

    def chosen(at: int) -> None:
        if at == 1 and talk.do(change.command):
            talk.say("the new version is in use")

    stay = Option("keep the old version", change.refusal)
    take = Option("use the new version", "For steps you have not started.")
    return Choose(
        question="The recipe has changed since you started.",
        told=change.lines,
        options=(stay,) if change.refusal else (stay, take),
        then=chosen,
        unasked=True,
    )
