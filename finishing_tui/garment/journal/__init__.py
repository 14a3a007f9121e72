"""The journal of a garment: everything that happened, in order, on disk; it knows nothing of what events mean.

It stands below everything else in ``garment``. Events are appended and never changed, each carries a checksum over
itself and all before it, and what is shown as saved is on the disk.
"""

from finishing_tui.garment.journal.errors import Damaged, InUse, NoJournal, NoJSON, NotSaved, OnlyToRead, Unwritable
from finishing_tui.garment.journal.journal import Journal
from finishing_tui.garment.journal.recovery import check, recover
from finishing_tui.garment.journal.rows import NewEvent, Row, is_moment, moment
from finishing_tui.garment.journal.schema import NAME

__all__ = [
    "NAME",
    "Damaged",
    "InUse",
    "Journal",
    "NewEvent",
    "NoJSON",
    "NoJournal",
    "NotSaved",
    "OnlyToRead",
    "Row",
    "Unwritable",
    "check",
    "is_moment",
    "moment",
    "recover",
]
