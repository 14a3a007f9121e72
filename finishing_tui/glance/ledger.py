"""The ledger as a person reads it: every place with what the plan has there, the accounts outside, and all the rest."""

from dataclasses import dataclass

from finishing_tui.craft.ledger import EDGE, FOUND, MISSING, OFF, Ledger, TailEntry
from finishing_tui.craft.words import listing, times
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.state import State
from finishing_tui.garment.supposed import supposed
from finishing_tui.glance.posture import lie, posture_words
from finishing_tui.recipe.stage import HAND


@dataclass(frozen=True, slots=True)
class HeldStitches:
    """A place with its live stitches; ``planned``: what the plan has there now, None where that cannot be told."""

    name: str
    kind: str
    stitches: int
    planned: int | None

    @property
    def words(self) -> str:
        """What the plan says of it, in a few words; nothing where it cannot be told."""
        if self.planned is None:
            return ""
        return "as planned" if self.planned == self.stitches else f"the plan has {self.planned}"


@dataclass(frozen=True, slots=True)
class Account:
    """An account outside the garment: stitches that came from it, or went to it; ``words``: what it stands for."""

    name: str
    words: str
    stitches: int
    came: bool


@dataclass(frozen=True, slots=True)
class Thread:
    """A tail, with how often it was sewn with and by which steps, in words."""

    name: str
    words: str


@dataclass(frozen=True, slots=True)
class Books:
    """All that the ledger holds. ``live``: stitches on all places; ``yarn``: from where working yarn hangs."""

    title: str
    held: tuple[HeldStitches, ...]
    live: int
    accounts: tuple[Account, ...]
    tails: tuple[Thread, ...]
    markers: tuple[str, ...]
    holes: tuple[str, ...]
    yarn: tuple[str, ...]
    posture: str

    @property
    def named(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """What is only known by its names, each sort under its heading."""
        return (("markers", self.markers), ("holes", self.holes), ("working yarn hangs from", self.yarn))

    @property
    def balance(self) -> str:
        """The proof that no stitch is unaccounted for, as a sum in words."""
        came = [f"{one.stitches} {one.name}" for one in self.accounts if one.came]
        went = [f"{one.stitches} {one.name}" for one in self.accounts if not one.came]
        return f"{listing(came)} = {listing([f'{self.live} live', *went])}"


def books(state: State) -> Books:
    """Return everything the ledger of ``state`` holds; every step is planned anew for it, so ask only on request."""
    ledger, plan = state.ledger, supposed(state)
    here = state.plan.here(ledger)
    return Books(
        title=f"{state.plan.title} · size {state.plan.size}",
        held=_held(state, ledger, plan),
        live=sum(ledger.live.values()),
        accounts=(
            Account("added", "picked up, cast on or made", -ledger.on(EDGE), came=True),
            Account("found", "extra at a count", -ledger.on(FOUND), came=True),
            Account("worked off", "bound off, joined or decreased", ledger.on(OFF), came=False),
            Account("missing", "missing at a count", ledger.on(MISSING), came=False),
        ),
        tails=tuple(Thread(tail, _used(state, tail, often)) for tail, often in ledger.tails.items()),
        markers=ledger.markers,
        holes=ledger.holes,
        yarn=tuple(here.name(place) for place in ledger.yarns),
        posture=posture_words(lie(state)),
    )


def _held(state: State, ledger: Ledger, plan: Ledger | None) -> tuple[HeldStitches, ...]:
    found = [
        HeldStitches(place.text, place.kind, ledger.on(name), None if plan is None else plan.on(name))
        for name, place in state.plan.recipe.place.items()
    ]
    if ledger.on(HAND) or (plan is not None and plan.on(HAND)):
        found.append(HeldStitches(HAND, "needle", ledger.on(HAND), None if plan is None else plan.on(HAND)))
    return tuple(found)


def _used(state: State, tail: str, often: int) -> str:
    """Say how often a tail was sewn with, and by which steps where their work is known."""
    if not often:
        return "not used yet"
    steps = [
        f"step {index + 1}"
        for index, standing in enumerate(state.steps)
        if standing.work is not None and TailEntry(tail, "shortened") in entered(standing.work)
    ]
    by = f" at {listing(steps)}" if steps else ""
    return f"sewn with {times(often)}{by}"
