"""A pinned edge as a stage: counted stitch by stitch, with a halt at every pin, and its end as the last of them."""

from dataclasses import replace

from finishing_tui.craft.markers import divide
from finishing_tui.garment.work import Progress, Reached
from finishing_tui.recipe.stage import Stage, loops_onto


def pinned(stage: Stage, parts: int, target: int, *, mirrored: bool = False) -> Stage:
    """Return the edge in ``parts`` for ``target`` stitches; ``mirrored``: its shares are those of the first side."""
    shares = divide(target, parts)
    if mirrored:
        shares = shares[::-1]
    each = " or ".join(str(share) for share in sorted(set(shares)))
    return Stage(
        "stitch",
        target,
        stage.title,
        stage.act,
        f"{each} in each part, spread evenly.",
        target,
        stage.place,
        stage.spot,
        flows=loops_onto(stage.place, 2 * target),
        opening=stage.opening,
        closing=stage.closing,
        halts=tuple(sum(shares[:part]) for part in range(1, parts)),
    )


def pin_before(stage: Stage, loops: int) -> int:
    """Return the stitches at the last pin before ``loops``; 0 at the beginning of the edge."""
    return max((pin for pin in stage.halts if pin < loops), default=0)


def taken_back(stage: Stage, before: Progress, units: int) -> tuple[Stage, Progress]:
    """Return a pinned edge taken out to ``units``: what was counted beyond falls, and these pins are as planned."""
    if units == before.mark.units:
        return stage, before
    planned = stage.as_planned or stage
    kept = tuple(pin for pin in stage.halts if pin <= units)
    halts = (*kept, *planned.halts[len(kept) :])
    back = planned if halts == planned.halts else replace(planned, halts=halts, as_planned=planned)
    confirmed = before.confirmed
    if confirmed[1] > units:
        confirmed = (pin_before(stage, units),) * 2
    return back, replace(before, mark=Reached(units, 0, units), confirmed=confirmed)
