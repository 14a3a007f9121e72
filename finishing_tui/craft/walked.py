"""A rhythm from what was really picked, spot by spot: for the second side of a pair that is to match the first."""

from collections.abc import Iterable, Sequence

from finishing_tui.craft.runs import Run, Runs, joined


def rhythm_of(loops: Sequence[int]) -> Runs:
    """Return the rhythm that makes just these ``loops`` (0, 1 or 2), spot by spot in walking order.

    Runs have their picks first and their skips last, or the spot that takes two last; equal runs that follow each
    other are one run with its times. ValueError for any other number of loops.
    """
    if any(one not in {0, 1, 2} for one in loops):
        raise ValueError("a spot takes no loop, one or two")
    return Runs(joined(_runs(loops)))


def _runs(loops: Sequence[int]) -> Iterable[Run]:
    start = 0
    for spot, here in enumerate(loops):
        after = loops[spot + 1] if spot + 1 < len(loops) else None
        if after is None or here == 2 or (here == 0 and after != 0):
            yield Run(sum(loops[start : spot + 1]), spot + 1 - start, 1)
            start = spot + 1
