"""Goes on after a mistake: what must be entered for a step or an entry that the ledger cannot bear.

So one mistake is told once, and the rest of the recipe is audited as if it had been mended there. Nothing here decides
what is a mistake; it only gives the nearest sensible state.
"""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import (
    FOUND,
    MISSING,
    Entry,
    HoleEntry,
    Ledger,
    MarkerEntry,
    Posting,
    TailEntry,
    Unbalanced,
    YarnEntry,
)
from finishing_tui.recipe.kinds.base import CannotBegin


def mend_for(error: FinishingError, ledger: Ledger) -> tuple[Entry, ...]:
    """Return what, entered in ``ledger``, lets the refused step begin; nothing where that is not known."""
    if isinstance(error, CannotBegin):
        return error.mend
    if isinstance(error, Unbalanced) and error.entry is not None:
        return before_entry(error.entry, ledger)
    return ()


def before_entry(entry: Entry, ledger: Ledger) -> tuple[Entry, ...]:
    """Return what must be entered before ``entry`` so that ``ledger`` can bear it."""
    match entry:
        case Posting(source, _, stitches):
            short = stitches - ledger.on(source)
            return (Posting(FOUND, source, short),) if short > 0 else ()
        case TailEntry(tail, "made"):
            return (TailEntry(tail, "woven", ledger.tails[tail]),) if tail in ledger.tails else ()
        case TailEntry(tail, _):
            return (TailEntry(tail, "made"),)
        case MarkerEntry(marker, did):
            return (MarkerEntry(marker, "out" if did == "in" else "in"),)
        case HoleEntry(hole, did):
            return (HoleEntry(hole, "closed" if did == "made" else "made"),)
        case YarnEntry(place, "joined"):
            return (YarnEntry(place, "cut"),)
        case YarnEntry(place, "cut"):
            return (YarnEntry(place, "joined"),)
        case YarnEntry(place, _, source):
            there = (YarnEntry(place, "cut"),) if place in ledger.yarns else ()
            return (*(() if source in ledger.yarns else (YarnEntry(source, "joined"),)), *there)
        case _:
            return ()


def to_hold(ledger: Ledger, place: str, wanted: int) -> Ledger:
    """Return the ledger with ``wanted`` stitches on ``place``, the difference posted as found or missing."""
    off = ledger.on(place) - wanted
    if not off:
        return ledger
    return ledger.enter(Posting(place, MISSING, off) if off > 0 else Posting(FOUND, place, -off))
