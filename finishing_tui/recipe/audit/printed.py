"""After every step: the counts the pattern prints against the ledger, and the repeat the band must be of."""

from finishing_tui.craft.ribs import nearest
from finishing_tui.craft.totals import Repeat
from finishing_tui.craft.words import listing, plural
from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.audit.showing import added


def expected(look: Look) -> Findings:
    """Yield a comparison for every printed count after this step, and a finding for each that the ledger contradicts.

    A number that is known to be misprinted, and whose sum is what the ledger has, is not told a second time.
    """
    for place, count in look.step.expect.items():
        wanted, found = look.count(count), look.ledger.on(place)
        yield look.compared(place, wanted, found, "expect", place)
        if wanted != found and not (isinstance(count, str) and look.wrong.get(count.strip()) == found):
            yield contradicted(look, place, wanted, found)


def contradicted(look: Look, place: str, wanted: int, found: int) -> Finding:
    """Return the finding that the ledger has ``found`` stitches on ``place`` where ``wanted`` are printed."""
    parts = look.parts(place)
    return look.finding(
        "error",
        "printed count",
        f"the {look.name(place)} has {plural(found, 'stitch')} after this step; the recipe says {wanted}",
        "expect",
        place,
        expected=wanted,
        found=found,
        place=place,
        sum=added(look.before.on(place), parts),
        suggestion=f"print {found}",
    )


def repeats(look: Look, held: int) -> Findings:
    """Yield a finding where the ``held`` stitches on the step's place are not of the repeat it names."""
    place, repeat = look.step.main_place, look.step.repeat
    if repeat is None or not place or look.here.absent(place) or repeat.takes(held):
        return
    if (place, held) in look.trail.odd or place in look.trail.unsure:
        return
    form = Repeat(repeat.of, repeat.plus)
    beyond = f" plus {repeat.plus}" if repeat.plus else ""
    near = nearest(held, repeat.of, repeat.plus) if held else ()
    yield look.finding(
        "error",
        "repeat",
        f"{held} on the {look.name(place)} is not a multiple of {repeat.of}{beyond}",
        "repeat",
        expected=str(form),
        found=held,
        suggestion=f"use {listing([str(count) for count in near], 'or')}" if near else "",
    )
