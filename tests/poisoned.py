"""A garment whose journal holds, in every text of it, what must never reach a terminal; made by hand."""

import json
import re
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

from finishing_tui.garment.commands import Command, Other, Press, TakeCount, WriteNote
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME, Row
from finishing_tui.garment.journal.chain import START, link
from finishing_tui.garment.journal.schema import build
from tests.screens.hands import PICK_UP, Hours, shelf, work_to
from tests.steering import POISON

MARK = "zqz"
"""What stands in every text of the garment until its journal is written; letters, for a name may hold them."""

_TEXTS = re.compile(
    r'(?m)^\s*(?:title|about|text|say|how|look|mend|mind|along|gap|tail|start_tail|marker|hole|needles)'
    r' *= (".*")$|("[^"]*(?: cast-on|wool,[^"]*)"|"[A-Z][^"]*\.")'
)  # fmt: skip
"""The texts of the recipe with every face that are not names of our own; a tail's name is one of them."""


def marked(folder: Path) -> Path:
    """Put ``MARK`` in every text of the garment in ``folder``, and of the recipe with every face; return the folder."""
    for path in (folder.parent / "every_face.toml", folder / "garment.toml"):
        _mark(path)
    with (folder / "garment.toml").open("a") as file:
        file.write(f'notes = "Mind the collar{MARK}."\n')
    return folder


def poisoned(at: Path, step: int = PICK_UP, *commands: Command) -> Path:
    """Put a garment on a shelf in ``at``, worked to ``step`` and left there with a note; poison its journal.

    ``commands``: what is done last. Every text in the journal holds ``POISON``.
    """
    folder = marked(shelf(at))
    work_to(folder, step, *commands)
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    assert hand.do(WriteNote(f"Tight{MARK}")) is None
    assert hand.put_down(f"in the bag{MARK}")
    return poison(folder)


PICKED: tuple[Command, ...] = (*[Press()] * 3, Other(), *[Press()] * 4, TakeCount(9, answer="loops", repair="as-it-is"))
"""Some rows of the neckband: a stray, and a recount."""


def poison(folder: Path, what: str = POISON) -> Path:
    """Put ``what`` in the place of every mark in the journal of ``folder``, with a right chain; return the folder."""
    path = folder / NAME
    with closing(sqlite3.connect(path)) as connection:
        rows = connection.execute("SELECT * FROM events ORDER BY seq").fetchall()
    before, made = START, []
    for seq, group, at, sitting, after_ms, kind, version, body, _ in rows:
        text = json.dumps(_poisoned(json.loads(body), what), sort_keys=True, separators=(",", ":"))
        before = link(before, seq, group, at, sitting, after_ms, kind, version, text)
        made.append(Row(seq, group, at, sitting, after_ms, kind, version, text, before))
    build(path, made)
    return folder


def _mark(path: Path) -> None:
    text = path.read_text()
    for found in {one[1] or one[2] for one in _TEXTS.finditer(text)}:
        text = text.replace(found, f'{found[:-1]}{MARK}"')
    path.write_text(text)


def _poisoned(value: Any, what: str) -> Any:
    if isinstance(value, str):
        return value.replace(MARK, what)
    if isinstance(value, list):
        return [_poisoned(one, what) for one in value]
    if isinstance(value, dict):
        return {_poisoned(key, what): _poisoned(one, what) for key, one in value.items()}
    return value
