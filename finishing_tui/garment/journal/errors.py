"""What can be wrong with a journal, each as one sentence for the person whose garment it is."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import capital


class NoJournal(FinishingError):
    """There is no journal in this folder: nothing has been begun."""


class AlreadyBegun(FinishingError):
    """A new journal was asked for where one lies already."""


class InUse(FinishingError):
    """Another window or program has this garment in hand; it may be looked at."""


class NotAJournal(FinishingError):
    """Something that is not ours stands under the journal's name; it was not touched."""


class Newer(FinishingError):
    """The journal was written by a newer program, in a format this one does not know; it was not touched."""

    def __init__(self, written: int, known: int) -> None:
        super().__init__(
            f"The journal is in format {written}, and this program knows only format {known}: open it with the newer "
            "program that wrote it. Nothing was changed."
        )


class Unreachable(FinishingError):
    """The system does not let us at the journal: no right, a disk that fails, a name that is gone."""


class OnlyToRead(Unreachable):
    """The folder lets us read, and write nothing: the garment in it may be looked at."""


class NotSaved(FinishingError):
    """Nothing more can be taken in, since too much waits to be saved or the garment is only looked at."""


class NoJSON(FinishingError):
    """A body is not JSON that can be read; the sentence says why, and belongs behind a colon."""


class Unwritable(FinishingError):
    """An entry holds something that has no place in a journal, such as NaN or half a character."""


class Damaged(FinishingError):
    """The journal is not as it was written.

    ``wrong`` says what was found; ``whole`` is the number of events, from the first, that the chain proves whole.
    """

    LOST = "None of it can be recovered. If you have a copy of the garment's folder, use that."
    """What to do when nothing can be recovered."""

    ANEW = "Otherwise 'finishing doctor' with --recover sets it aside, and the garment starts over from its files."
    """What to do when there is no copy either."""

    def __init__(self, wrong: str, whole: int = 0) -> None:
        self.wrong = wrong
        self.whole = whole
        super().__init__(self.told("NAME"))

    def told(self, name: str) -> str:
        """Say it of the garment that a command calls ``name``."""
        help_ = f"{self.LOST} {self.ANEW}"
        if self.whole:
            events = "event" if self.whole == 1 else "events"
            help_ = f"Run 'finishing doctor {name} --recover' to get back the first {self.whole} {events}."
        return f"The journal is damaged: {self.wrong}. {help_}"


class DoesNotGoOn(FinishingError):
    """Rows were to be taken in that do not follow the journal's last one."""


class Displaced(FinishingError):
    """What lies in the folder is not, or no longer, the journal that is being written; the writer mends what it can.

    ``why`` stands within a sentence; ``help``: what would help, a sentence that is true while the program goes on.
    """

    def __init__(self, why: str, help_: str = "") -> None:
        super().__init__(f"{capital(why)}. {help_}".rstrip())
        self.why = why
        self.help = help_
