"""``finishing doctor``: proves the journal of a garment whole from end to end, and recovers a damaged one.

It never destroys anything: a damaged journal is kept beside the recovered one, under a name of its own.
"""

import argparse
from pathlib import Path

from finishing_tui.commands.answer import Answer
from finishing_tui.commands.folders import garment_folder
from finishing_tui.commands.record import read_record
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import plural
from finishing_tui.garment.journal import Damaged, check, recover
from finishing_tui.garment.rescued import found_for

EXAMPLE = """\
The folder of a garment, or the name of one on the shelf. Without --recover nothing is changed. The exit status is 0
if the journal is whole (or was made whole), and 1 if something is wrong with it.

  finishing doctor slate-crew
  finishing doctor slate-crew --recover
"""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="the garment's folder, or its name on the shelf")
    parser.add_argument(
        "--recover", action="store_true", help="repair a damaged journal, and keep the damaged one beside it"
    )


def answer(args: argparse.Namespace) -> Answer:
    """Return what a check found, or what a recovery did; raises ``FinishingError`` when there is no journal."""
    folder = garment_folder(args.folder)
    return _recovered(folder) if args.recover else _checked(folder)


def _checked(folder: Path) -> Answer:
    report = check(folder)
    fault = report.fault
    if fault is None:
        lines = [_whole(report.events)]
        if unread := _unread(folder):  # whole, but of another program
            fault = unread
            lines.append(unread)
    else:
        lines = [f"The journal is damaged: {fault}.", Damaged.LOST, Damaged.ANEW]
        if report.events:
            lines[1:] = [f"The first {plural(report.events, 'event')} can be recovered: run this again with --recover."]
    if report.in_use:
        lines.append("The garment is open now, so more may have been added since.")
    rescued = found_for(folder)
    if rescued.fits is not None:
        lines += [*rescued.fits.told, "The program asks about them when you next open the garment."]
    lines += rescued.others
    rescue = None if rescued.fits is None else str(rescued.fits.file)
    data = {
        "folder": str(folder), "events": report.events, "fault": fault, "in_use": report.in_use, "rescue": rescue,
    }  # fmt: skip
    return Answer("\n".join(lines), data, 0 if fault is None else 1)


def _whole(events: int) -> str:
    if not events:
        return "The journal is whole and still empty."
    return f"The journal is whole: {plural(events, 'event')}."


def _recovered(folder: Path) -> Answer:
    found = recover(folder)
    data = {
        "folder": str(folder),
        "events": found.events,
        "fault": found.fault,
        "in_use": False,
        "aside": None if found.aside is None else str(found.aside),
        "unsure": found.unsure,
    }
    if found.aside is None:
        return Answer(f"{_whole(found.events)} Nothing was changed.", data)
    again = f"It is whole again, with {plural(found.events, 'event')}."
    if not found.events:
        again = "Nothing could be kept. The garment starts over from its files when you next open it."
    lines = [f"The journal was damaged: {found.fault}.", f"{again} The damaged one is kept as {found.aside.name}."]
    if found.unsure is not None:
        lines.append("The last press may be incomplete. Count your stitches before you go on.")
    return Answer("\n".join(lines), data)


def _unread(folder: Path) -> str:
    """Return why a whole journal cannot be understood, as a sentence; empty if it can."""
    try:
        read_record(folder)
    except FinishingError as error:
        return str(error)
    return ""
