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
            talk.say("the change is taken")

    stay = Option("go on by the plan there is", change.refusal)
    take = Option("take the change", "For the steps that are not begun yet.")
    return Choose(
        question="The recipe or the garment's file was changed since it was taken.",
        told=change.lines,
        options=(stay,) if change.refusal else (stay, take),
        then=chosen,
        unasked=True,
    )
