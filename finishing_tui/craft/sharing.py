"""Sharing the stitches of a band among the sections of its edge.

Each section has an ideal; the total is given, or must fit a repeat, or is simply the nearest. The counts are
the best by the Sainte-Laguë measure, exactly (``craft.apportion``); where nothing fits, one sentence names
the condition to give up and the nearest totals (``craft.totals``). Where the ideals come from is no matter
here: see ``craft.edges``.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.apportion import Group, best_counts
from finishing_tui.craft.counts import MOST, span
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.sections import Portion, in_groups, name_of
from finishing_tui.craft.totals import EVERY, CannotShare, Reach, Repeat, choose, nearest, reach
from finishing_tui.craft.words import listing

__all__ = ["CannotShare", "Portion", "Shares", "share"]

MOST_REPEAT = 1_000
"""The greatest repeat, and the most stitches beyond it."""


@dataclass(frozen=True, slots=True)
class Shares:
    """The answer: a count for each section in walking order.

    ``ideal_total`` is the sum of the ideals, ``measure`` the sum of (given - ideal)² / ideal that no other
    counts of this total get under.
    """

    counts: tuple[int, ...]
    total: int
    ideal_total: Fraction
    measure: Fraction


def share(sections: Sequence[Portion], *, total: int | None = None, repeat: tuple[int, int] | None = None) -> Shares:
    """Share a band's stitches among ``sections``.

    The total is ``total``, or the one nearest to the sum of the ideals that can be met (of two, the lesser)
    and, where ``repeat`` = (of, plus) is given, is of × m + plus. Both may be given; the total must then be
    of that form.

    Raises:
        CannotShare: no counts fit; the sentence names what to give up and the nearest totals.
        Impossible: a section, total or repeat that is out of range or contradicts itself.

    """
    form = _form(repeat)
    groups = in_groups(sections)
    can = _reach(groups)
    ideal_total = sum((section.ideal for section in sections), Fraction(0))
    if total is None:
        chosen = choose(ideal_total, can, form)
        if chosen is None:
            raise _no_repeat(groups, can, ideal_total, form)
    else:
        _check_total(total, form)
        if not can.holds(total):
            raise _no_total(sections, can, total, form)
        chosen = total
    counts = [0] * len(sections)
    for group, count in zip(groups, best_counts(groups, chosen), strict=True):
        for place in group.at:
            counts[place] = count
    costs = (
        (count - section.ideal) ** 2 / section.ideal
        for count, section in zip(counts, sections, strict=True)
        if section.ideal
    )
    return Shares(tuple(counts), chosen, ideal_total, sum(costs, Fraction(0)))


def _form(repeat: tuple[int, int] | None) -> Repeat:
    if repeat is None:
        return EVERY
    of, plus = repeat
    if not (1 <= of <= MOST_REPEAT and 0 <= plus <= MOST_REPEAT):
        raise Impossible(
            f"a repeat must be of 1 to {MOST_REPEAT} stitches, with 0 to {MOST_REPEAT} more, such as 4m + 2"
        )
    return Repeat(of, plus)


def _check_total(total: int, form: Repeat) -> None:
    if not 1 <= total <= MOST:
        raise Impossible(f"a total cannot be {total:,}: use {span(1, MOST, total)}")
    if not form.holds(total):
        near = nearest(total, Reach(1, MOST), form)
        raise CannotShare(
            f"{total} is not {form}: give up the total, or the repeat; the nearest {form} {_are(near)}", "total", near
        )


def _reach(groups: Sequence[Group], *, mirrored: bool = True) -> Reach:
    """Return the totals that the groups can have; with ``mirrored`` false, as if each stood alone."""
    fixed = sum(group.weight * group.least for group in groups if not group.free)
    free = [group for group in groups if group.free]
    singles = [group for group in free if group.weight == 1]
    pairs = [group for group in free if group.weight == 2]
    if not mirrored:
        singles, pairs = [*singles, *pairs, *pairs], []
    return reach(
        fixed,
        (sum(group.least for group in singles), sum(group.most for group in singles)),
        (sum(group.least for group in pairs), sum(group.most for group in pairs)),
    )


def _no_total(sections: Sequence[Portion], can: Reach, total: int, form: Repeat) -> CannotShare:
    """Return why ``total`` cannot be met: an end of what the sections can take, or mirrors that move by two."""
    near = nearest(total, can, form) or nearest(total, can)
    instead = (
        f"the nearest total that can be met {_are(near)}" if len(near) == 1 else f"the nearest totals {_are(near)}"
    )
    if can.least <= total <= can.most:
        pairs = [
            f"{name_of(sections, place)} with {name_of(sections, section.mirrors)}"
            for place, section in enumerate(sections)
            if section.mirrors is not None
        ]
        return CannotShare(
            f"{total} cannot be met: all that can change is mirrored, so that the total moves by two; "
            f"give up a mirror ({_some(pairs)}) or the total; {instead}",
            "mirrors",
            near,
        )
    end = f"at most {can.most}" if total > can.most else f"at least {can.least}"
    bound = [
        name_of(sections, place)
        for place, section in enumerate(sections)
        if not section.fixed and (_is_limited(section) if total > can.most else section.least > 0)
    ]
    if bound:
        return CannotShare(
            f"{total} cannot be met: the sections take {end} in all; "
            f"give up the limit of {_some(bound)}, or the total; {instead}",
            "limits",
            near,
        )
    if total > can.most and any(section.holds is not None for section in sections):
        return CannotShare(
            f"{total} cannot be met: the sections take {end} in all, with two in every spot of their edges; "
            f"give up the total, or count the edges again; {instead}",
            "total",
            near,
        )
    held = [name_of(sections, place) for place, section in enumerate(sections) if section.fixed]
    return CannotShare(
        f"{total} cannot be met: the sections take {end} in all; "
        + (
            f"give up a fixed count ({_some(held)}), or the total; {instead}"
            if held
            else f"give up the total; {instead}"
        ),
        "fixed" if held else "total",
        near,
    )


def _is_limited(section: Portion) -> bool:
    """Return whether a limit, and not its edge, keeps ``section`` from getting more."""
    return section.most is not None and (section.holds is None or section.most < section.holds)


def _no_repeat(groups: Sequence[Group], can: Reach, ideal_total: Fraction, form: Repeat) -> CannotShare:
    """Return why no total of the form asked for can be met: mirrors that move by two, or limits."""
    near = nearest(ideal_total, can)
    if not near:
        return CannotShare("there is nothing to share: every section gets 0; change an ideal or a limit", "limits")
    alone = nearest(ideal_total, _reach(groups, mirrored=False), form)
    without = f"without the repeat the nearest {_are(near)}"
    if alone:
        parity = "odd" if can.least % 2 else "even"
        return CannotShare(
            f"no total is {form}: all that can change is mirrored, so that every total is {parity}; "
            f"give up a mirror (then the nearest {_are(alone)}) or the repeat ({without})",
            "mirrors",
            alone,
        )
    span = f"only {can.least}" if can.least == can.most else f"from {can.least} to {can.most}"
    return CannotShare(
        f"no total is {form}: the sections take {span} in all; give up the repeat ({without}) "
        f"or change a limit or a fixed count (the nearest {form} {_are(nearest(ideal_total, Reach(1, MOST), form))})",
        "repeat",
        near,
    )


def _some(names: Sequence[str]) -> str:
    """Return up to three names in a row."""
    return listing([*names[:3], *(["others"] if len(names) > 3 else [])], "or")


def _are(totals: Sequence[int]) -> str:
    """Return "is 52", "are 52 and 54"."""
    return f"{'is' if len(totals) == 1 else 'are'} {listing([str(total) for total in totals])}"
