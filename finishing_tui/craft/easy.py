"""The easy rhythm: two kinds of run that a hand can remember, set in as few blocks as stay within one stitch.

For ``k`` stitches over ``n`` spots, with ``k/n`` from one half up to one, there is one ``b`` with
``(b-1)/b <= k/n < b/(b+1)``. Both bounds are neighbours in the Stern-Brocot tree, so the two equations

    (b-1) x + b y = k        b x + (b+1) y = n

have the determinant ``(b-1)(b+1) - b b = -1`` and the whole answer ``x = n b - k (b+1)`` runs of "b-1 of every b"
and ``y = k b - n (b-1)`` runs of "b of every b+1"; neither is negative, which is what the bounds say. Below one half
there is one ``b`` with ``1/(b+1) < k/n <= 1/b``, and ``x + y = k`` with ``b x + (b+1) y = n`` gives
``x = k (b+1) - n`` runs of "1 of every b" and ``y = n - k b`` runs of "1 of every b+1", again never negative.

**Order.** Straying is counted here in ``1/n`` of a stitch: ``e = n loops - k spots``. A run of one kind moves ``e``
up, one of the other kind down. Strays of at most ``worst`` mean that ``e`` stays in a band: every run begins and ends
with a stray from ``-worst`` to ``worst - reserve``, where ``reserve`` is how much further the picks of a run lead
above its end (``k``, from one half up) or above its start (``n - k``, below). With ``worst = n``, one stitch, the
band is ``2n - k`` or ``n + k`` wide, and never too narrow for both kinds at once, since the two steps together are
``n - k`` or ``k``: so a walk inside it always exists. A block taken as long as the band allows is never the wrong
one: how far a block of one kind can go grows with how many of the other kind went before, so by induction the
greedy walk is ahead of any other after every block, and no walk that begins with the same kind has fewer blocks.
"""

from dataclasses import dataclass

from finishing_tui.craft.runs import Run, Runs


@dataclass(frozen=True, slots=True)
class _Kind:
    """One kind of run (``pick`` of every ``of``), how many of it are to be set, and how far one moves the stray."""

    pick: int
    of: int
    count: int
    step: int


@dataclass(frozen=True, slots=True)
class _Setting:
    """Runs in an order, and their worst stray in ``1/n`` of a stitch."""

    runs: tuple[Run, ...]
    worst: int


def easy_open(stitches: int, spots: int) -> Runs:
    """Spread ``1 <= stitches <= 2 spots`` in easy runs; the straight line runs on at both ends."""
    if stitches > spots:
        if stitches == 2 * spots:
            return Runs((Run(2, 1, spots),))
        # Every spot takes one; the extra ones are spread in the same way, seen from the far end, so that the
        # doubled spots of a run come last.
        extra = easy_open(stitches - spots, spots).runs
        return Runs(tuple(Run(run.pick + run.of, run.of, run.times) for run in reversed(extra)))
    if stitches == spots:
        return Runs((Run(1, 1, spots),))
    return Runs(_set(_kinds(stitches, spots), stitches, spots).runs)


def easy_closed(stitches: int, spots: int) -> Runs:
    """Spread ``2 <= stitches <= 2 spots`` (or 1 over 1) in easy runs with the first and the last spot picked.

    From one half up these are the runs of ``stitches`` over ``spots + 1``, one of them last and without its skip;
    below, the runs of ``stitches - 1`` over ``spots - 1`` and a final pick.
    """
    if stitches >= spots:
        return easy_open(stitches, spots)
    if 2 * stitches > spots:
        kinds = _kinds(stitches, spots + 1)
        settings = []
        for last in kinds:
            if last.count:
                before = tuple((kind, kind.count - (kind is last)) for kind in kinds)
                setting = _set(_again(before, stitches, spots), stitches, spots)
                settings.append(_Setting((*setting.runs, Run(last.pick, last.pick, 1)), setting.worst))
        return Runs(min(settings, key=lambda setting: (len(setting.runs), setting.worst)).runs)
    kinds = _kinds(stitches - 1, spots - 1)
    setting = _set(_again(tuple((kind, kind.count) for kind in kinds), stitches, spots), stitches, spots)
    return Runs((*setting.runs, Run(1, 1, 1)))


def _kinds(stitches: int, spots: int) -> tuple[_Kind, _Kind]:
    """Return the two kinds of run that give ``1 <= stitches < spots``, the fuller one first."""
    if 2 * stitches >= spots:
        b = spots // (spots - stitches)
        fuller = (b, b + 1, stitches * b - spots * (b - 1))
        other = (b - 1, b, spots * b - stitches * (b + 1))
    else:
        b = spots // stitches
        fuller = (1, b, stitches * (b + 1) - spots)
        other = (1, b + 1, spots - stitches * b)
    return (
        _Kind(*fuller, fuller[0] * spots - fuller[1] * stitches),
        _Kind(*other, other[0] * spots - other[1] * stitches),
    )


def _again(kinds: tuple[tuple[_Kind, int], ...], stitches: int, spots: int) -> tuple[_Kind, _Kind]:
    """Return the two kinds with other counts, their steps seen from the line of ``stitches`` over ``spots``."""
    first, second = (_Kind(kind.pick, kind.of, count, kind.pick * spots - kind.of * stitches) for kind, count in kinds)
    return first, second


def _set(kinds: tuple[_Kind, _Kind], stitches: int, spots: int) -> _Setting:
    """Set the runs in the fewest blocks that stray at most one stitch, and among those with the least straying."""
    # Below one half the first pick alone strays by n - k.
    reserve, least = (stitches, 0) if 2 * stitches >= spots else (spots - stitches, spots - stitches)
    best = _walk(kinds, spots, reserve)
    assert best is not None, "a walk inside one stitch always exists (see the head of this file)"
    low, high = least - 1, spots  # straying by `high` is enough for so few blocks; by `low` it is not
    while high - low > 1:
        worst = (low + high) // 2
        found = _walk(kinds, worst, reserve)
        if found is not None and len(found) <= len(best):
            best, high = found, worst
        else:
            low = worst
    return _Setting(best, high)


def _walk(kinds: tuple[_Kind, _Kind], worst: int, reserve: int) -> tuple[Run, ...] | None:
    """Return the fewest blocks that stray at most ``worst``, or None if no order of the runs does."""
    ways = [way for first in (0, 1) if (way := _greedy(kinds, first, -worst, worst - reserve)) is not None]
    return min(ways, key=len) if ways else None


def _greedy(kinds: tuple[_Kind, _Kind], turn: int, lowest: int, highest: int) -> tuple[Run, ...] | None:
    """Set blocks of either kind by turns, each as long as the band allows; None if one cannot be begun."""
    left = [kinds[0].count, kinds[1].count]
    blocks: list[Run] = []
    stray = 0
    while any(left):
        kind = kinds[turn]
        length = min(left[turn], _reach(stray, kind.step, lowest, highest, left[turn]))
        if length == 0:
            return None
        blocks.append(Run(kind.pick, kind.of, length))
        stray += length * kind.step
        left[turn] -= length
        turn = 1 - turn
    return tuple(blocks)


def _reach(stray: int, step: int, lowest: int, highest: int, most: int) -> int:
    """Return how many steps can be taken from ``stray`` so that each of them ends inside the band."""
    if not lowest <= stray + step <= highest:
        return 0
    if step == 0:
        return most
    return (highest - stray) // step if step > 0 else (stray - lowest) // -step
