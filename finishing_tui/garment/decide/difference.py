"""The entries that lead from one ledger to another: what ripping back enters, however the work got where it is."""

from collections.abc import Mapping

from finishing_tui.craft.ledger import (
    EDGE,
    OFF,
    OUTSIDE,
    Entry,
    HoleEntry,
    Ledger,
    MarkerEntry,
    Posting,
    PostureEntry,
    TailEntry,
    YarnEntry,
)


def difference(now: Ledger, then: Ledger) -> tuple[Entry, ...]:
    """Return entries after which every place, tail, marker, hole and yarn of ``now`` is as in ``then``.

    Stitches go back from place to place first; what one place has too many is taken out to the edge, and what one has
    too few comes back from what was worked off. The outside accounts keep the history of both.
    """
    return (*_postings(now, then), *_tails(now.tails, then.tails), *_names(now, then), *_posture(now, then))


def _postings(now: Ledger, then: Ledger) -> list[Posting]:
    places = sorted({*now.live, *then.live} - OUTSIDE)
    surplus = {place: now.on(place) - then.on(place) for place in places}
    postings: list[Posting] = []
    for short in places:
        for long in places:
            many = min(-surplus[short], surplus[long])
            if many > 0:
                postings.append(Posting(long, short, many))
                surplus[short] += many
                surplus[long] -= many
    postings += [Posting(place, EDGE, many) for place, many in surplus.items() if many > 0]
    postings += [Posting(OFF, place, -many) for place, many in surplus.items() if many < 0]
    return postings


def _tails(now: Mapping[str, int], then: Mapping[str, int]) -> list[Entry]:
    entries: list[Entry] = []
    for tail in sorted({*now, *then}):
        if tail not in then:
            entries += [TailEntry(tail, "lengthened")] * now[tail]
            entries.append(TailEntry(tail, "unmade"))
        elif tail not in now:
            entries.append(TailEntry(tail, "unwoven", then[tail]))
        else:
            change = then[tail] - now[tail]
            entries += [TailEntry(tail, "shortened" if change > 0 else "lengthened")] * abs(change)
    return entries


def _names(now: Ledger, then: Ledger) -> list[Entry]:
    entries: list[Entry] = [MarkerEntry(one, "out") for one in now.markers if one not in then.markers]
    entries += [MarkerEntry(one, "in") for one in then.markers if one not in now.markers]
    entries += [HoleEntry(one, "unmade") for one in now.holes if one not in then.holes]
    entries += [HoleEntry(one, "opened") for one in then.holes if one not in now.holes]
    entries += [YarnEntry(one, "cut") for one in now.yarns if one not in then.yarns]
    entries += [YarnEntry(one, "joined") for one in then.yarns if one not in now.yarns]
    return entries


def _posture(now: Ledger, then: Ledger) -> list[Entry]:
    return [] if now.posture == then.posture else [PostureEntry(now.posture, then.posture)]
