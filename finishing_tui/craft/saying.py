"""A rhythm in words a hand can follow: "2 of every 3, eight times, then 3 of every 4, five times".

Equal runs are told once, a pattern of runs that comes round again is told as such, and a rhythm with too many
changes to be learnt by heart is told by what it is made of, with a word to follow the drawing. It never says
anything that the rhythm does not do.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.rhythm import Rhythm, Run
from finishing_tui.craft.words import many, number, plural, times

_LONGEST_PATTERN = 6
"""Runs in a pattern that a person can be asked to go round."""

_MOST_PARTS = 8
"""Parts of a rhythm that a person can be asked to follow by ear."""

_LONGEST = 300
"""Characters that a person can be asked to follow by ear: of parts with doubled spots, fewer than that many do."""


def say(rhythm: Rhythm, unit: str = "spot") -> str:
    """Say a rhythm in words; ``unit`` is what a spot is here: ``row``, ``ridge``, ``chain`` or ``stitch``."""
    runs = rhythm.as_runs()
    if not runs:
        return f"no {unit} is left"
    if len(runs) == 1 and _plain(runs[0]):
        return (f"skip every {unit}", f"every {unit}", f"two in every {unit}")[runs[0].pick // runs[0].of]
    found = _pattern(runs)
    if (len(runs) if found is None else found.parts) > _MOST_PARTS:
        return _mixture(runs, unit, skips_first=rhythm.skips_first)
    told = _in_order(runs, found, unit, skips_first=rhythm.skips_first)
    return told if len(told) <= _LONGEST else _mixture(runs, unit, skips_first=rhythm.skips_first)


@dataclass(frozen=True, slots=True)
class _Pattern:
    """The runs from ``start`` on are ``length`` runs that come ``times`` times, out of ``among`` runs in all."""

    start: int
    length: int
    times: int
    among: int

    @property
    def end(self) -> int:
        return self.start + self.length * self.times

    @property
    def parts(self) -> int:
        """How many runs have to be told."""
        return self.among - self.length * (self.times - 1)


def _pattern(runs: Sequence[Run]) -> _Pattern | None:
    """Return the pattern of two to six runs that saves the most telling, if any comes at least twice."""
    best: _Pattern | None = None
    for length in range(2, _LONGEST_PATTERN + 1):
        start = 0
        for place in range(length, len(runs) + 1):
            if place < len(runs) and runs[place] == runs[place - length]:
                continue
            found = _Pattern(start, length, (place - start) // length, len(runs))
            if found.times > 1 and (best is None or found.parts < best.parts):
                best = found
            start = place - length + 1
    return best


def _in_order(runs: Sequence[Run], found: _Pattern | None, unit: str, *, skips_first: bool) -> str:
    """Tell the runs one after the other, a pattern in brackets."""

    def tell(start: int, end: int) -> list[str]:
        ends = {0: "first", len(runs) - 1: "last"}
        return [_run(runs[i], unit, which=ends.get(i, "next"), skips_first=skips_first) for i in range(start, end)]

    if found is None:
        told = tell(0, len(runs))
    else:
        around = runs[found.start : found.start + found.length]
        inner = [_run(run, unit, which="next", skips_first=skips_first) for run in around]
        told = [
            *tell(0, found.start),
            f"({'; '.join(inner)}) {times(found.times)}",
            *tell(found.end, len(runs)),
        ]
    return ", then ".join(told) + _order(runs, skips_first=skips_first)


def _mixture(runs: Sequence[Run], unit: str, *, skips_first: bool) -> str:
    """Tell a rhythm with many changes by what it is made of; what stands alone at its ends is told in its place."""
    head = 1 if _plain(runs[0]) else 0
    tail = len(runs) - (1 if _plain(runs[-1]) else 0)
    made: Counter[tuple[int, int]] = Counter()
    for run in runs[head:tail]:
        made[run.pick, run.of] += run.times
    mixed = [
        _run(Run(pick, of, count), unit, which="next", skips_first=skips_first)
        for (pick, of), count in made.most_common()
    ]
    told = [
        *(_run(run, unit, which="first", skips_first=skips_first) for run in runs[:head]),
        f"evenly mixed, as drawn ({'; '.join(mixed)})",
        *(_run(run, unit, which="last", skips_first=skips_first) for run in runs[tail:]),
    ]
    return ", then ".join(told) + _order(runs, skips_first=skips_first)


def _plain(run: Run) -> bool:
    """Return whether all spots of a run are alike."""
    return run.pick in {0, run.of, 2 * run.of}


def _run(run: Run, unit: str, *, which: str, skips_first: bool) -> str:
    """Tell one run of several; ``which`` of them it is: first, next or last."""
    if run.pick == 0:
        return f"skip {plural(run.spots, unit)}"
    if _plain(run):
        spots = f"the {which} {unit}" if run.spots == 1 else f"each of the {which} {number(run.spots)} {many(unit)}"
        return spots if run.pick == run.of else f"two in {spots}"
    every, often = ("every ", f", {times(run.times)}") if run.times > 1 else ("", "")
    if run.pick < run.of:
        return f"{run.pick} of {every}{run.of}{often}"
    end = "first" if skips_first else "last"
    doubled = run.pick - run.of
    where = f"the {end}" if doubled == 1 else f"each of the {end} {number(doubled)}"
    return f"{run.pick} in {every}{run.of} (two in {where}){often}"


def _order(runs: Sequence[Run], *, skips_first: bool) -> str:
    """Say so where the skips of a run come first."""
    return "; skip first in each repeat" if skips_first and any(0 < run.pick < run.of for run in runs) else ""
