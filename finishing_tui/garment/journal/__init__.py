"""The journal of a garment: everything that happened, in order, on disk; it knows nothing of what events mean.

It stands below everything else in ``garment``. Events are appended and never changed, each carries a checksum over
itself and all before it, and what is shown as saved is on the disk.
"""

from finishing_tui.garment.journal.errors import (
    AlreadyBegun,
    Damaged,
    InUse,
    Newer,
    NoJournal,
    NoJSON,
    NotAJournal,
    NotSaved,
    OnlyToRead,
    Unreachable,
    Unwritable,
)
from finishing_tui.garment.journal.journal import Journal
from finishing_tui.garment.journal.recovery import CheckReport, Recovery, check, recover
from finishing_tui.garment.journal.rows import JSON, NewEvent, Row, is_moment, moment
from finishing_tui.garment.journal.schema import NAME

__all__ = [
    "JSON",
    "NAME",
    "AlreadyBegun",
    "CheckReport",
    "Damaged",
    "InUse",
    "Journal",
    "NewEvent",
    "Newer",
    "NoJSON",
    "NoJournal",
    "NotAJournal",
    "NotSaved",
    "OnlyToRead",
    "Recovery",
    "Row",
    "Unreachable",
    "Unwritable",
    "check",
    "is_moment",
    "moment",
    "recover",
]
