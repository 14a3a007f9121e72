"""The engine: does the steps of a recipe on paper, one after the other, from any ledger, and looks at each.

It knows no kind of step. A step turns itself into stages, exactly as at the needles; whole stages are entered; then
the looks of its kind say what is wrong. After a mistake it goes on from the nearest sensible state, so that one mistake
neither hides nor multiplies others. It reads no file and no clock.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, Literal

from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.ledger import OFF, Entry, Ledger, Posting, Unbalanced
from finishing_tui.recipe.audit.finding import Compared, Finding, LedgerRow
from finishing_tui.recipe.audit.footing import GUESSES, AuditFooting
from finishing_tui.recipe.audit.left import left
from finishing_tui.recipe.audit.look import Findings, Instead, Look, Trail
from finishing_tui.recipe.audit.looks import EVERY, INSTEAD, LOOKS, remembered
from finishing_tui.recipe.audit.mending import before_entry, mend_for, to_hold
from finishing_tui.recipe.audit.printed import expected, repeats
from finishing_tui.recipe.audit.printing import places_of
from finishing_tui.recipe.audit.tally import TooMuch
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds.base import CannotBegin, Step
from finishing_tui.recipe.stage import Stage, whole

Trust = Literal["print", "ledger"]
"""What to go on from where a printed count and the ledger differ. On paper one of them is a misprint, and the audit
goes on from the printed one, unless the ledger's own gives fewer mistakes; at the needles the ledger is what is there.
"""

_MOST_MENDS = 30
"""Mends of one step; a step that needs more is not done at all."""

_MOST_DOUBTS = 20
"""Printed counts of a run for which both ways are tried; where more are wrong, the print is gone on from."""

_NONE: Mapping[Any, int] = MappingProxyType({})
_NO_REST: Mapping[int, tuple[Entry, ...]] = MappingProxyType({})
_NO_PLACES: Mapping[int, frozenset[str]] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class AuditRun:
    """What came of it: a ``row`` a step, what is wrong at the ``ending``, the last ledger, and all comparisons made."""

    rows: tuple[LedgerRow, ...]
    ending: tuple[Finding, ...]
    ledger: Ledger
    compared: tuple[Compared, ...]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Everything found, in the order of the steps."""
        return (*(finding for row in self.rows for finding in row.findings), *self.ending)

    @property
    def errors(self) -> int:
        """How many of them are errors."""
        return sum(finding.level == "error" for finding in self.findings)


@dataclass(frozen=True, slots=True)
class _Done:
    """A step that was done, or could not be (``look`` is ``None``)."""

    ledger: Ledger
    findings: tuple[Finding, ...]
    look: Look | None


def run(
    footing: AuditFooting,
    ledger: Ledger | None = None,
    steps: Sequence[int] | None = None,
    *,
    rest: Callable[[int], Mapping[int, tuple[Entry, ...]]] = lambda _: _NO_REST,
    off: Mapping[int, int] = _NONE,
    lost: Mapping[int, frozenset[str]] = _NO_PLACES,
    trust: Trust = "print",
    wrong: Mapping[str, int] = _NONE,
) -> AuditRun:
    """Do ``steps`` (positions from 0; all that are for this size, where none are given) from ``ledger``.

    ``ledger`` is that of the pieces as they come, where none is given. ``rest``: for each step that is under way,
    the entries it still has to make, with a guess at what nobody knows; ``off``: the stitches it worked off already;
    ``lost``: the places whose count nobody knows after it. ``wrong``: numbers whose print is known to differ from their
    sum.

    Where a count is not known on paper the steps are done once more with another guess, and only what is so with both
    is told. Raises ``TooMuch`` when the audit takes more than it may.
    """
    done = _run(footing, ledger, steps, rest=rest(footing.guess), off=off, lost=lost, trust=trust, wrong=wrong)
    if not any(row.unsure for row in done.rows):
        return done
    otherwise = replace(footing, guess=next(guess for guess in GUESSES if guess != footing.guess))
    other = _run(otherwise, ledger, steps, rest=rest(otherwise.guess), off=off, lost=lost, trust=trust, wrong=wrong)
    return _agreed(done, other)


def _agreed(one: AuditRun, other: AuditRun) -> AuditRun:
    """Return what two runs with different guesses have in common."""
    rows = tuple(
        replace(
            mine,
            live=_same(mine.live, yours.live),
            held=_same(mine.held, yours.held),
            stopped=mine.stopped and yours.stopped,
            findings=tuple(found for found in mine.findings if found in yours.findings),
            unsure=frozenset(
                place for place in {*mine.live, *yours.live} if mine.live.get(place) != yours.live.get(place)
            ),
        )
        for mine, yours in zip(one.rows, other.rows, strict=True)
    )
    ending = tuple(found for found in one.ending if found in other.ending)
    known = set(other.compared)
    return AuditRun(rows, ending, one.ledger, tuple(found for found in one.compared if found in known))


def _same(one: Mapping[str, int], other: Mapping[str, int]) -> dict[str, int]:
    return {place: held for place, held in one.items() if other.get(place) == held}


def _run(
    footing: AuditFooting,
    ledger: Ledger | None = None,
    steps: Sequence[int] | None = None,
    *,
    rest: Mapping[int, tuple[Entry, ...]],
    off: Mapping[int, int],
    lost: Mapping[int, frozenset[str]],
    trust: Trust,
    wrong: Mapping[str, int],
    trail: Trail = Trail(),  # noqa: B008  (frozen)
    ahead: bool = True,
) -> AuditRun:
    """Do the steps with one guess; ``ahead``: whether a doubt is settled by looking ahead, which itself does not."""
    ledger = ledger or footing.opening()
    steps = footing.steps() if steps is None else steps
    rows, compared = list[LedgerRow](), list[Compared]()
    doubts, guessed = 0, False

    def ahead_from(given: Ledger, after: int) -> int:
        more = steps[after:]
        done = _run(
            footing, given, more, rest=rest, off=off, lost=lost, trust=trust, wrong=wrong, trail=trail, ahead=False
        )
        return done.errors

    for number, at in enumerate(steps, 1):
        step = footing.recipe.step[at]
        blank = Look(footing, at, step, ledger, (), (), trail, wrong)
        done = _rest_done(blank, rest[at], off.get(at, 0)) if at in rest else _done(blank)
        held, ledger, look = ledger.live, done.ledger, done.look
        # What is refused for the sake of a count that nobody knows may well be possible.
        findings = list(done.findings) if places_of(step).isdisjoint(trail.unsure) or not guessed else []
        there, printed = ledger, list[str]()
        if look is None:
            ledger, trail = _adopted(footing, step, ledger), _unsure(trail, step)
            printed += [place for place in step.expect if ledger.on(place) != there.on(place)]
        else:
            footing.tally.numbers(len(step.expect))
            found = [*_looked(look), *expected(look)]
            trail = _lost_sight(remembered(look), look, lost.get(at, frozenset()))
            for one in [*found]:
                if isinstance(one, Finding) and one.place and (trust == "print" or one.place in trail.unsure):
                    assert isinstance(one.expected, int)
                    as_printed = to_hold(ledger, one.place, one.expected)
                    if one.place in trail.unsure:  # it was lost sight of: the print tells it again
                        ledger = as_printed
                        found.remove(one)
                        continue
                    doubts += 1
                    sure = not ahead or doubts > _MOST_DOUBTS
                    if sure or ahead_from(as_printed, number) <= ahead_from(ledger, number):
                        ledger, printed = as_printed, [*printed, one.place]
            trail = replace(trail, unsure=trail.unsure - step.expect.keys())
            on = ledger.on(step.main_place)
            odd = [*repeats(look, on)]
            if odd:
                trail = replace(trail, odd=trail.odd | {(step.main_place, on)})
            found += odd
            short = _short(findings)
            findings += [one for one in found if isinstance(one, Finding) and not (one.place and _over(one) == short)]
            compared += [one for one in found if isinstance(one, Compared)]
        row = _row(at, step, ledger, tuple(findings), done, held, {place: there.on(place) for place in printed})
        guessed = guessed or any(stage.uncounted == "all" for stage in (look.stages if look else ())) or at in lost
        rows.append(replace(row, unsure=trail.unsure) if guessed else row)
    last = [*left(footing, ledger, trail.unsure)]
    ending = tuple(one for one in last if isinstance(one, Finding))
    compared += [one for one in last if isinstance(one, Compared)]
    return AuditRun(tuple(rows), ending, ledger, tuple(compared))


def _looked(look: Look) -> Findings:
    for every in EVERY:
        yield from every(look)
    for own in LOOKS.get(type(look.step), ()):
        yield from own(look)


def _done(blank: Look) -> _Done:
    """Do one step: its stages, entered whole, with what had to be mended first."""
    findings: list[Finding] = []
    try:
        stages, ledger = _begun(blank, findings)
    except TooMuch:
        raise
    except FinishingError as error:
        doable, told = _instead(blank)
        if not told:
            findings.append(_refused(blank, error))
            return _Done(blank.before, tuple(findings), None)
        findings[:] = told
        try:
            stages, ledger = _begun(replace(blank, step=doable), findings)
        except TooMuch:
            raise
        except FinishingError:
            return _Done(blank.before, tuple(findings), None)
    before, after = ledger, list[Ledger]()
    for stage in stages:
        entries = whole(stage)
        blank.footing.tally.stage(stage, len(entries))
        ledger = _entered(blank, _worked_off(stage, ledger), entries, findings)
        after.append(ledger)
    return _Done(ledger, tuple(findings), replace(blank, before=before, stages=stages, after=tuple(after)))


def _instead(look: Look) -> Instead:
    """Return a step that can be done in place of one that was refused, and why; nothing is told where there is none."""
    swap = INSTEAD.get(type(look.step))
    try:
        return (look.step, ()) if swap is None else swap(look)
    except FinishingError:
        return look.step, ()


def _begun(look: Look, findings: list[Finding]) -> tuple[tuple[Stage, ...], Ledger]:
    """Return the stages and the ledger they begin from; raises the refusal that nothing mends."""
    ledger, tally, empty = look.before, look.footing.tally, frozenset[str]()
    for _ in range(_MOST_MENDS):
        tally.step(look.step)
        here = look.footing.here(ledger)
        try:
            return look.step.stages(replace(here, none=here.none | empty) if empty else here), ledger
        except FinishingError as error:
            tally.refusal()
            mend, nothing = mend_for(error, ledger), error.empty if isinstance(error, CannotBegin) else ()
            if not mend and not nothing:
                raise
            if not look.trail.unsure.issuperset(nothing) or not _only_of(mend, look.trail.unsure):
                findings.append(_refused(look, error))
            ledger, empty = ledger.enter(*mend), empty.union(nothing)
    raise CannotBegin(f"the step {look.step.title!r} cannot be done as it is written")


def _only_of(mend: tuple[Entry, ...], places: frozenset[str]) -> bool:
    """Return whether a mend only brings stitches to places whose count was lost sight of."""
    return all(isinstance(entry, Posting) and entry.to in places for entry in mend)


def _worked_off(stage: Stage, ledger: Ledger) -> Ledger:
    """Return the ledger with what one of two unequal needles has more worked off, where both are to be empty."""
    if not stage.empties:
        return ledger
    front, back = ledger.on(stage.front), ledger.on(stage.back)
    if front == back:
        return ledger
    return ledger.enter(Posting(stage.front if front > back else stage.back, OFF, abs(front - back)))


def _entered(look: Look, ledger: Ledger, entries: Iterable[Entry], findings: list[Finding]) -> Ledger:
    entries = tuple(entries)
    try:
        return ledger.enter(*entries)
    except Unbalanced:
        for entry in entries:
            try:
                ledger = ledger.enter(entry)
            except Unbalanced as error:
                findings.append(_refused(look, error))
                ledger = ledger.enter(*before_entry(entry, ledger), entry)
        return ledger


def _rest_done(blank: Look, rest: tuple[Entry, ...], off: int) -> _Done:
    """Do what is left of a step under way."""
    findings: list[Finding] = []
    after = _entered(blank, blank.before, rest, findings)
    stage = Stage("item", 1, "what is left of this step", "rest")
    return _Done(after, tuple(findings), replace(blank, stages=(stage,), after=(after,), off=off))


def _refused(look: Look, error: FinishingError) -> Finding:
    known = error if isinstance(error, CannotBegin) else None
    text = str(error)
    if isinstance(error, Unbalanced):
        for place, name in look.footing.texts.items():
            if text.startswith(f"{place} has "):
                text = f"the {name}{text[len(place) :]}"
    return look.finding(
        "error",
        known.kind if known else "does not fit" if isinstance(error, Impossible) else "cannot be done",
        text,
        expected=known.expected if known else None,
        found=known.found if known else None,
        suggestion=_or(known) if known else "",
    )


def _or(error: CannotBegin) -> str:
    if error.kind == "too few stitches" and not error.found:
        return "check the order of the steps, or what the place holds at the start"
    if error.found is None or error.expected is None:
        return ""
    if error.found > error.expected or error.kind != "too few stitches":
        return f"{error.expected} would do"
    return f"take {error.found}, or have {error.expected - error.found} more there"


def _short(findings: Sequence[Finding]) -> int | None:
    """Return how many stitches a step took that were not there; None where it took none."""
    return sum(-_over(one) for one in findings if one.kind == "too few stitches") or None


def _over(finding: Finding) -> int:
    """Return how far what was found is above what was expected, where both are counts."""
    found, wanted = finding.found, finding.expected
    return found - wanted if isinstance(found, int) and isinstance(wanted, int) else 0


def _adopted(footing: AuditFooting, step: Step, ledger: Ledger) -> Ledger:
    """Return the ledger as the recipe prints it after a step that could not be done."""
    for place, count in step.expect.items():
        ledger = to_hold(ledger, place, count_of(count, footing.numbers, footing.size))
    return ledger


def _unsure(trail: Trail, step: Step) -> Trail:
    places = places_of(step)
    edges = tuple(one for one in trail.edges if one[0] not in places)
    return replace(trail, unsure=(trail.unsure | places) - step.expect.keys(), edges=edges)


def _lost_sight(trail: Trail, look: Look, lost: frozenset[str]) -> Trail:
    """Return the trail with the places of which nobody knows any more what they hold.

    That is where an edge was picked up of which nothing is known, and wherever a step brings stitches from there.
    """
    unsure = trail.unsure | lost | {stage.place for stage in look.stages if stage.uncounted == "all"}
    if not unsure:
        return trail
    if not unsure.isdisjoint(places_of(look.step)):
        before, after = look.before, look.ledger
        unsure |= {place for place in {*before.live, *after.live} if before.on(place) != after.on(place)}
    return replace(trail, unsure=frozenset(place for place in unsure if look.ledger.on(place)))


def _row(
    at: int,
    step: Step,
    ledger: Ledger,
    findings: tuple[Finding, ...],
    done: _Done,
    held: Mapping[str, int],
    there: Mapping[str, int],
) -> LedgerRow:
    """Return the row of a step; ``there``: what places hold of which ``ledger`` has what is printed."""
    do = str(type(step).__dataclass_fields__["do"].default)
    return LedgerRow(
        at,
        do,
        step.title,
        {place: many for place, many in {**ledger.live, **there}.items() if many},
        tuple(ledger.tails),
        ledger.markers,
        ledger.holes,
        findings,
        held,
        begun=done.look is not None,
        stopped=bool(done.findings),
        printed={place: ledger.on(place) for place in there},
    )
