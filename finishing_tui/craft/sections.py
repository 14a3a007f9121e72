"""The sections of an edge as sharing sees them: what each may get, and which of them go together.

It checks each section and puts mirrored ones in one group; choosing the counts is the work of
``craft.sharing``.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.apportion import Group
from finishing_tui.craft.counts import MOST
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.totals import CannotShare
from finishing_tui.craft.words import decimal

MOST_SECTIONS = 100
"""The greatest number of sections of one edge."""


@dataclass(frozen=True, slots=True)
class Portion:
    """One section of an edge, in walking order.

    ``ideal`` stitches would be right for it (not negative); a ``fixed`` one gets exactly that, which must
    then be whole. A free one gets from ``least`` to ``most`` (None: no limit), no more than its edge
    ``holds`` (None: not known), and 0 if its ideal is 0.
    ``mirrors`` is the 0-based place of the section that must get the same count; two at most may belong
    together. ``along`` names it in sentences.
    """

    ideal: Fraction
    fixed: bool = False
    least: int = 0
    most: int | None = None
    holds: int | None = None
    mirrors: int | None = None
    along: str = ""


def name_of(sections: Sequence[Portion], place: int) -> str:
    """Return what the section at ``place`` (0-based) is called in a sentence."""
    return sections[place].along or f"section {place + 1}"


def in_groups(sections: Sequence[Portion]) -> list[Group]:
    """Return the sections in groups of one or two with their bounds, after checking each.

    Raises:
        CannotShare: two that mirror each other have no count in common. Impossible: a section that is out of
        range or contradicts itself, too many of them, or too many stitches.

    """
    if not 1 <= len(sections) <= MOST_SECTIONS:
        raise Impossible(f"an edge has from 1 to {MOST_SECTIONS} sections, and this one has {len(sections)}")
    partner: dict[int, int] = {}
    for place, section in enumerate(sections):
        other = section.mirrors
        if other is None or partner.get(place) == other:
            continue
        if not 0 <= other < len(sections) or other == place:
            raise Impossible(f"{name_of(sections, place)} must mirror another section of this edge")
        if place in partner or other in partner:
            raise Impossible(
                f"{name_of(sections, place)} cannot mirror {name_of(sections, other)}: "
                "only two sections may mirror each other"
            )
        partner[place], partner[other] = other, place
    if sum(section.ideal for section in sections) > MOST:
        raise Impossible(f"the ideals of all sections come to more than {MOST} stitches")
    limits = [_limits(sections, place) for place in range(len(sections))]
    groups = []
    for place in range(len(sections)):
        other = partner.get(place, place)
        if other < place:
            continue
        at = (place,) if other == place else (place, other)
        least = max(limits[one][0] for one in at)
        most = min(limits[one][1] for one in at)
        if least > most:
            raise CannotShare(
                f"{name_of(sections, place)} and {name_of(sections, other)} mirror each other, but no count suits both "
                f"({_say_limits(limits[place])}, and {_say_limits(limits[other])}): give up the mirror or change one",
                "mirrors",
            )
        bare = [one for one in at if sections[one].ideal == 0]
        if 0 < len(bare) < len(at):
            raise CannotShare(
                f"{name_of(sections, bare[0])} has nothing to pick up (its ideal is 0), but its mirror has: "
                "give up the mirror or change its ideal",
                "mirrors",
            )
        groups.append(Group(at, tuple(sections[one].ideal for one in at), least, most))
    return groups


def _limits(sections: Sequence[Portion], place: int) -> tuple[int, int]:
    """Return the least and the most stitches that the section at ``place`` can get."""
    section, name = sections[place], name_of(sections, place)
    most = min(MOST if limit is None else limit for limit in (section.most, section.holds))
    if not 0 <= section.ideal <= MOST:
        raise Impossible(f"the ideal of {name} must be from 0 to {MOST} stitches")
    if section.fixed:
        if section.ideal.denominator != 1:
            raise Impossible(f"{name} is fixed, so it must be a whole number, not {decimal(section.ideal, 3)}")
        return section.ideal.numerator, section.ideal.numerator
    if not 0 <= section.least <= most <= MOST:
        raise Impossible(f"{name} must get at least 0, at most {MOST}, and its least may not be over its most")
    if section.ideal == 0:
        if section.least:
            raise Impossible(f"{name} has nothing to pick up (its ideal is 0), so it cannot get {section.least}")
        return 0, 0
    return section.least, most


def _say_limits(limits: tuple[int, int]) -> str:
    least, most = limits
    return f"exactly {least}" if least == most else f"{least} to {most}"
