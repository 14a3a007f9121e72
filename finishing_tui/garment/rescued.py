"""Rescue files of earlier sittings: found when their garment is picked up, and taken in if the knitter wants that.

What is offered follows the journal's last event by its chain, and makes sense after it. All else is left alone.
"""

from contextlib import suppress
from dataclasses import dataclass
from itertools import dropwhile
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import plural
from finishing_tui.files import as_written, exists, reason
from finishing_tui.garment.events import Taken
from finishing_tui.garment.evolve import begun_with, evolve
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import Journal, Row
from finishing_tui.garment.journal.lock import in_use
from finishing_tui.garment.journal.rescue import NotOurs, Rescue, Unsound, digest_of, for_garment, groups, read
from finishing_tui.garment.journal.rescue_places import rescue_files
from finishing_tui.garment.meaning import understood
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import from_row

PATIENCE = 5.0
"""Seconds that taking in waits for the disk."""


class NotTakenIn(FinishingError):
    """What is in a rescue file could not be saved in the journal, or the file could not be deleted."""


@dataclass(frozen=True, slots=True)
class Fitting:
    """A rescue file that goes on from where its garment's journal ends; ``rows``: those that are not in there.

    ``garment``: its title; ``at``: at which step it is with them, in words; ``elsewhere``: the folder they were written
    for, where it is another one than the garment's, and is not there.
    """

    file: Path
    rows: tuple[Row, ...]
    garment: str = ""
    at: str = ""
    elsewhere: Path | None = None

    @property
    def question(self) -> str:
        """What is asked of them."""
        return "Add the unsaved work?"

    @property
    def told(self) -> tuple[str, ...]:
        """What they are, in sentences that belong before the question."""
        first, last = (f"{row.at[:10]} {row.at[11:16]}" for row in (self.rows[0], self.rows[-1]))
        when = first if first == last else f"{first} to {last.removeprefix(first[:11])}"
        moved: tuple[str, ...] = ()
        if self.elsewhere is not None:
            where = f"It was for the garment in {as_written(self.elsewhere)}, which is not there now."
            moved = (f"{where} Add it only if you moved that garment here.",)
        return (
            f"{self.garment}: {plural(self._many, 'entry')} not saved ({when} UTC).",
            f"With them you are at {self.at}.",
            *moved,
            f"It is in {as_written(self.file)}.",
        )

    @property
    def taken(self) -> str:
        """What is said once they are taken in."""
        return f"{plural(self._many, 'entry')} added; everything is saved."

    @property
    def left(self) -> str:
        """What is said when they are left for later."""
        return f"{plural(self._many, 'entry')} left in {as_written(self.file)}. You can only look until you decide."

    @property
    def _many(self) -> int:
        return groups(self.rows)


@dataclass(frozen=True, slots=True)
class Rescued:
    """What was found for a garment.

    ``fits``: the file that can be taken in; ``all_in``: those with nothing that is not in the journal; ``others``: a
    sentence about each that does not fit.
    """

    fits: Fitting | None = None
    all_in: tuple[Path, ...] = ()
    others: tuple[str, ...] = ()


def found_for(folder: Path) -> Rescued:
    """Return what rescue files there are for the garment in ``folder``; nothing is changed.

    There is nothing for a garment that someone has in hand, or that cannot be opened: that is said when it is opened.
    """
    files = rescue_files()
    if not files:
        return Rescued()
    try:
        if in_use(folder):
            return Rescued()
        with Journal.open(folder, look=True) as journal:
            return _sorted(folder, journal, files)
    except FinishingError:
        return Rescued()


def tidied(folder: Path) -> Rescued:
    """Return the same, once the files were deleted that hold nothing but what is in the journal anyway."""
    found = found_for(folder)
    for file in found.all_in:
        with suppress(OSError):  # the next sitting tries again
            file.unlink()
    return found


def take_in(folder: Path, fitting: Fitting) -> None:
    """Put the rows of a rescue file into the journal of the garment in ``folder``, then delete the file.

    Raises ``NotTakenIn``, and whatever keeps the journal from being opened; then the file is still there.
    """
    journal = Journal.open(folder)
    try:
        journal.adopt(fitting.rows)
        saved = journal.flush(PATIENCE)
        why = journal.why_unsaved or "the disk is slow to answer"
    finally:
        journal.close(PATIENCE if not journal.unsaved else 0.0)
    if not saved:
        raise NotTakenIn(f"The unsaved work could not be added ({why}). It is still in {as_written(fitting.file)}.")
    with suppress(OSError):  # then it is found to be in the journal the next time
        fitting.file.unlink()


def throw_away(fitting: Fitting) -> None:
    """Delete a rescue file, with what is in it. Raises ``NotTakenIn``."""
    try:
        fitting.file.unlink(missing_ok=True)
    except OSError as error:
        raise NotTakenIn(f"{as_written(fitting.file)} could not be deleted: {reason(error)}.") from error


def _sorted(folder: Path, journal: Journal, files: tuple[Path, ...]) -> Rescued:
    named = {digest_of(name): name for name in _ids(folder, journal)}
    fits: list[Fitting] = []
    all_in: list[Path] = []
    others: list[str] = []
    for file in files:
        garment = named.get(for_garment(file.name) or "")
        if garment is None:
            continue
        try:
            rescue = read(file)
            if rescue.garment != garment or _lies_elsewhere(rescue, folder):
                continue
            rows = _new(rescue, journal)
            if not rows:
                all_in.append(file)
            else:
                state, there = _led_to(folder, rows), Path(rescue.folder)
                elsewhere = None if there == folder.resolve() else there
                fits.append(Fitting(file, rows, state.plan.title, _where(state), elsewhere))
        except NotOurs:
            continue
        except Unsound as error:
            others.append(f"{file} is left alone: {error}.")
    fits.sort(key=lambda one: len(one.rows))
    return Rescued(fits[-1] if fits else None, tuple(all_in), tuple(others))


def _ids(folder: Path, journal: Journal) -> set[str]:
    """Return what the garment is or was called by: a changed plan may have named it anew. Raises ``FinishingError``."""
    first = next(journal.rows(), None)
    if first is None:
        from finishing_tui.garment.file import plan_of  # noqa: PLC0415  (the reader: only before the first event)

        return {plan_of(folder).name}
    taken = from_row(first).event
    return {_state(folder).plan.name, *([taken.plan.name] if isinstance(taken, Taken) else [])}


def _lies_elsewhere(rescue: Rescue, folder: Path) -> bool:
    """Say whether the rescue is another folder's: a copy has the same id. One that was moved leaves none behind."""
    there, here = Path(rescue.folder), folder.resolve()
    return there != here and exists(there)


def _new(rescue: Rescue, journal: Journal) -> tuple[Row, ...]:
    """Return the rows that go on from the journal's last event; none if all are in it. Raises ``Unsound``."""
    last = rescue.rows[-1]
    if last.seq <= journal.last[0] and _row_at(journal, last.seq).chain == last.chain:
        return ()
    rest = rescue.rows
    if rescue.after != journal.last:
        rest = tuple(dropwhile(lambda one: (one.seq, one.chain) != journal.last, rest))[1:]
    if rest and (rest[0].group == rest[0].seq or rest[0].group == _row_at(journal, rest[0].seq - 1).group):
        return rest
    if rescue.after[0] > journal.last[0]:
        raise Unsound("the garment's journal ends before it begins, so it does not fit")
    raise Unsound("the garment was worked on without what is in it, so it no longer fits")


def _row_at(journal: Journal, seq: int) -> Row:
    return next(iter(journal.rows(seq - 1)))


def _state(folder: Path) -> State:
    hand = InHand.open(folder, look=True)
    hand.close()
    return hand.state


def _where(state: State) -> str:
    if state.current is None:
        return "its end: every step is done"
    return f"step {state.current + 1}, {state.plan.step(state.current).title.removesuffix('.')}"


def _led_to(folder: Path, rows: tuple[Row, ...]) -> State:
    """Return the state that the rows lead to. Raises ``Unsound``: a journal never loses what it has."""
    try:
        if rows[0].seq == 1:
            state, rest = begun_with(from_row(rows[0])), rows[1:]
        else:
            state, rest = _state(folder), rows
        for one in rest:
            state = evolve(state, from_row(one))
        return understood(state)
    except FinishingError as error:
        raise Unsound("what is in it does not make sense after what the garment has") from error
