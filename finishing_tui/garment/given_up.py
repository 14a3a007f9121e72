"""What could not be saved when a garment had to be put down: put in a rescue file, and said for what it is."""

from dataclasses import dataclass
from pathlib import Path

from finishing_tui.craft.words import plural, sentence
from finishing_tui.files import NotWritten, as_written, exists
from finishing_tui.garment.journal import Journal
from finishing_tui.garment.journal.rescue import Rescue
from finishing_tui.garment.journal.rescue_places import PutAway, put


@dataclass(frozen=True, slots=True)
class GivenUp:
    """What was given up when a garment was put down.

    ``many``: how many commands are not in its journal; ``why``, within a sentence; ``kept``: the rescue file they are
    in, None where they are lost, and ``nowhere`` then says why; ``ended``: putting it down is among what was kept;
    ``where``: so is what was written about where it was left.
    """

    many: int
    why: str
    kept: PutAway | None
    nowhere: str = ""
    ended: bool = True
    where: bool = True

    @property
    def waits(self) -> bool:
        """Whether there is still something to say of it: not once its file was taken in or thrown away."""
        return self.kept is None or exists(self.kept.file)

    def __str__(self) -> str:
        return " ".join((*self._entries(), *self._end()))

    def _entries(self) -> tuple[str, ...]:
        if not self.many:
            return ("Everything you counted is saved.",)
        one = self.many == 1
        last = "The last entry" if one else f"The last {plural(self.many, 'entry')}"
        if self.kept is None:
            nowhere = f"{'it' if one else 'they'} could not be put anywhere else: {self.nowhere}"
            return (f"{last} {'is' if one else 'are'} lost ({self.why}).", sentence(nowhere))
        told = f"{last} could not be saved ({self.why})."
        are, them = ("It is", "it") if one else ("They are", "them")
        where = f"{are} in {as_written(self.kept.file)}; next time the program asks whether to add {them}."
        soon = ("That is a temporary folder: restarting the computer may delete it.",) if self.kept.temporary else ()
        return (told, where, *soon)

    def _end(self) -> tuple[str, ...]:
        if self.ended:
            return ()
        return ("The end of the sitting is not.",) if self.where else ("Your line about where you left it is lost.",)


def give_up(folder: Path, garment: str, journal: Journal, *, ended: bool = True, where: str = "") -> GivenUp:
    """Put what ``journal``, closed by now, could not save into a rescue file; say what came of it.

    ``folder``: the whole path of its folder, which may be gone by now; ``garment``: its id; ``ended``: whether the
    journal was given the end of the sitting, with ``where`` it was left.
    """
    after, rows = journal.left()
    why = journal.why_unsaved or "the disk did not answer in time"
    many, kept, nowhere = journal.unsaved, None, ""
    if rows:
        try:
            kept = put(Rescue(garment, str(folder), after, rows), folder)
        except NotWritten as error:
            nowhere = str(error)
    return GivenUp(many, why, kept, nowhere, ended, ended or not where)
