"""``finishing record``: where a garment stands, and what was really done to it. It only reads."""

import argparse
import os
from pathlib import Path

from finishing_tui.commands.answer import Answer
from finishing_tui.commands.folders import garment_folder
from finishing_tui.garment.file import plan_of
from finishing_tui.garment.journal import NAME, Journal
from finishing_tui.garment.stored import happenings
from finishing_tui.record import Record, as_data, as_text, not_begun, record_of

EXAMPLE = """\
The folder of a garment, or the name of one on the shelf. Works while the garment is open. Shows work you ripped back,
not presses you undid.

  finishing record slate-crew
  finishing record ~/knitting/slate-crew --json

Programs may rely on the keys of --json; new ones may be added.
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the garment's folder, or its name on the shelf")


def answer(args: argparse.Namespace) -> Answer:
    """Return the record of a garment.

    Raises ``FinishingError`` with a sentence when there is none, or its journal cannot be read.
    """
    record = read_record(garment_folder(args.folder))
    return Answer(as_text(record), as_data(record))


def read_record(folder: Path) -> Record:
    """Return the record of the garment in ``folder``; of one that was never picked up, its plan. Raises as above."""
    if os.path.lexists(folder / NAME):
        with Journal.open(folder, look=True) as journal:
            if journal.last_seq:
                return record_of(happenings(journal.rows()))
    return not_begun(plan_of(folder))
