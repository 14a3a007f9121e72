"""One row or round written out in full: it must use the stitches that are there, and change them as the step says.

Only a text that is a row from end to end is looked at ("k3, k2tog, (k6, k2tog) 9 times, k3"); a rib to repeat, or any
other words, are none. Where a row of even shaping cannot be worked, the audit goes on with the count it should give.
"""

import re
from dataclasses import dataclass

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.methods import method
from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Instead, Look
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.work import Work

_TOKEN = re.compile(r"\s*(?:([(\[])|([)\]])|(twice|[0-9]{1,4} times)|(,)|([A-Za-z][A-Za-z0-9]*))")
_PLAIN = re.compile(r"[kp]([0-9]{0,4})")


@dataclass(frozen=True, slots=True)
class _Part:
    """Part of a row: the stitches it ``eats`` and ``leaves``, and what it eats as part of a sum."""

    eats: int
    leaves: int
    shown: str
    single: bool = True

    def times(self, count: int) -> "_Part":
        """Return it worked ``count`` times."""
        inner = self.shown if self.single else f"({self.shown})"
        return _Part(self.eats * count, self.leaves * count, f"{count} × {inner}")


def look(look: Look) -> Findings:
    """Yield a comparison of a written row with the stitches there, and a finding where they differ."""
    step = look.step
    if not isinstance(step, Work):
        return
    given = step.rounds if step.rows is None else step.rows
    row = _read(step.pattern) if given is not None and look.count(given) == 1 else None
    if row is None or not look.stages or not look.stages[0].units:
        return
    held, change = look.before.on(step.on), look.ledger.on(step.on) - look.before.on(step.on)
    yield look.compared("row", row.eats, held, "pattern")
    if row.eats != held:
        yield look.finding(
            "error",
            "row does not fit",
            f"this row uses {plural(row.eats, 'stitch')}, and there are {held} on the {look.name(step.on)}",
            "pattern",
            expected=row.eats,
            found=held,
            sum=f"{row.shown} = {row.eats}",
            suggestion=f"{abs(held - row.eats)} {'fewer' if row.eats > held else 'more'} must be used",
        )
    made = row.leaves - row.eats
    yield look.compared("row change", made, change, "change")
    if made != change and row.eats == held:
        yield look.finding(
            "error",
            "row does not fit",
            f"this row leaves {plural(row.leaves, 'stitch')} of {held}, and the step makes {held + change} of them",
            "change",
            expected=held + made,
            found=held + change,
            suggestion=f"say change = {made}",
        )


def _read(text: str) -> _Part | None:
    """Return what a written row eats and leaves; None where the text is not a row that says how often."""
    levels: list[list[_Part]] = [[]]
    at, sure = 0, False
    text = text.rstrip()
    while at < len(text):
        token = _TOKEN.match(text, at)
        if token is None:
            return None
        at = token.end()
        opens, closes, often, comma, word = token.groups()
        if opens:
            levels.append([])
        elif closes:
            if len(levels) < 2 or not levels[-1]:
                return None
            group = _joined(levels.pop())
            levels[-1].append(group)
        elif often:
            if not levels[-1]:
                return None
            levels[-1].append(levels[-1].pop().times(2 if often == "twice" else int(often.split()[0])))
            sure = True
        elif not comma:
            part = _word(word)
            if part is None:
                return None
            sure = sure or part.eats != part.leaves
            levels[-1].append(part)
    return _joined(levels[0]) if sure and len(levels) == 1 and levels[0] else None


def _joined(parts: list[_Part]) -> _Part:
    shown = " + ".join(part.shown for part in parts)
    return _Part(sum(part.eats for part in parts), sum(part.leaves for part in parts), shown, len(parts) == 1)


def _word(word: str) -> _Part | None:
    plain = _PLAIN.fullmatch(word.lower())
    if plain is not None:
        count = int(plain[1] or 1)
        return _Part(count, count, str(count))
    try:
        way = method(word)
    except Impossible:
        return None
    return _Part(way.eats, way.leaves, str(way.eats))


def instead(look: Look) -> Instead:
    """Return a plain row that changes the count all the same, and why the one that is written cannot be worked."""
    step = look.step
    if not isinstance(step, Shape):
        return step, ()
    held, wanted = look.before.on(step.on), look.count(step.to)
    if not held:
        return step, ()
    try:
        step.stages(look.here)
    except Impossible as error:
        told = look.finding("error", "row does not fit", str(error), "to", expected=wanted, found=held)
        return Work(title=step.title, on=step.on, rounds=1, change=wanted - held), (told,)
    return step, ()
