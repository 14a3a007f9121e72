"""The rescue file: what a journal could not take before its garment had to be put down, on another disk until then.

It is read by later versions, so what is said here may not change; a new shape gets a new format number.

The name is ``finishing-rescue-WHICH-ID-RANDOM.jsonl``: WHICH is the garment folder's name as far as it consists of
plain letters and digits, ID the first 16 hexadecimal digits of SHA-256 over the garment's id, RANDOM 8 more. The
content is ASCII, one JSON value a line, each line ended by a newline:

1.  an object: ``finishing`` (always "rescue"), ``format`` (1), ``garment`` (its id, as its journal has it), ``folder``
    (where it lay), ``seq`` and ``chain`` (of the last event the journal has; 0 and 64 zeros for none), ``rows``
    (how many follow);
2.  for each row a list of the columns of the journal in their order: seq, group, at, sitting, after_ms, kind, version,
    body as text, chain;
3.  an object with ``sha256``, over every byte before that line.

The chain of the rows is the journal's own (``chain``) and goes on from the one in the first line.
"""

import json
import os
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from itertools import groupby
from pathlib import Path
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import NotWritten, reason, sync, sync_folder
from finishing_tui.garment.journal.chain import link
from finishing_tui.garment.journal.door import MOST_IN_BODY
from finishing_tui.garment.journal.errors import NoJSON
from finishing_tui.garment.journal.rows import LARGEST, TYPES, Row, is_moment, parsed
from finishing_tui.garment.journal.writer import MOST_UNSAVED

FORMAT = 1
"""The number of this format."""

MOST_BYTES = 64 * 2**20
"""The largest rescue file that is written or read."""

_HEADER = {"finishing": str, "format": int, "garment": str, "folder": str, "seq": int, "chain": str, "rows": int}
_CHAIN = re.compile(r"[0-9a-f]{64}")
_NAME = re.compile(r"finishing-rescue-[a-z0-9-]{1,40}-([0-9a-f]{16})-[0-9a-f]{8}\.jsonl")


class NotOurs(FinishingError):
    """It is not a plain file of this user's own: someone else may have put it there, and nothing of it is read."""


class Unsound(FinishingError):
    """It is this user's own, and not as this program wrote it; the sentence says why, and belongs behind a colon."""


@dataclass(frozen=True, slots=True)
class Rescue:
    """What a rescue file holds.

    ``garment``: the garment's id; ``folder``: where it lay; ``after``: number and chain of the journal's last event;
    ``rows``: what goes on from there, at least one.
    """

    garment: str
    folder: str
    after: tuple[int, str]
    rows: tuple[Row, ...]


def groups(rows: tuple[Row, ...]) -> int:
    """Return how many commands ``rows`` come from."""
    return sum(1 for _ in groupby(rows, key=lambda one: one.group))


def write(rescue: Rescue, folder: Path) -> Path:
    """Write ``rescue`` to a new file in ``folder``, for this user alone, and return it once the disk has it.

    It is whole, or removed again. Raises ``NotWritten``.
    """
    content = _content(rescue)
    if len(content) > MOST_BYTES:
        raise NotWritten(f"a rescue file takes up to {MOST_BYTES:,} bytes, and this has {len(content):,}")
    path = folder / _name(rescue)
    try:
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_NOFOLLOW", 0), 0o600)
        try:
            with open(handle, "wb") as file:  # noqa: PTH123  (a handle, not a path)
                file.write(content)
                file.flush()
                sync(file.fileno())
            sync_folder(folder)
        except BaseException:
            path.unlink(missing_ok=True)
            raise
    except OSError as error:
        raise NotWritten(reason(error)) from error
    return path


def digest_of(garment: str) -> str:
    """Return the part of a rescue file's name that says which garment it is for."""
    return sha256(garment.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def for_garment(name: str) -> str | None:
    """Return the digest in the name of a rescue file; None for any other name."""
    found = _NAME.fullmatch(name)
    return found[1] if found else None


def read(path: Path) -> Rescue:
    """Return what is in the rescue file at ``path``, every row proved against the one before.

    Only a plain file of one name is read, owned by this user and not writable by anyone else. Raises ``NotOurs`` and
    ``Unsound``.
    """
    return _understood(_bytes(path))


def _name(rescue: Rescue) -> str:
    which = re.sub(r"[^a-z0-9]+", "-", Path(rescue.folder).name.lower())[:40].strip("-") or "garment"
    return f"finishing-rescue-{which}-{digest_of(rescue.garment)}-{os.urandom(4).hex()}.jsonl"


def _content(rescue: Rescue) -> bytes:
    seq, chain = rescue.after
    header = {
        "finishing": "rescue", "format": FORMAT, "garment": rescue.garment, "folder": rescue.folder,
        "seq": seq, "chain": chain, "rows": len(rescue.rows),
    }  # fmt: skip
    # ASCII: a folder's name may hold bytes that are no text, and a stray tool must not turn letters into others.
    lines = "".join(f"{json.dumps(one)}\n" for one in (header, *rescue.rows))
    content = lines.encode("ascii")
    return content + _seal(content)


def _seal(content: bytes) -> bytes:
    return f'{{"sha256": "{sha256(content).hexdigest()}"}}\n'.encode("ascii")


def _bytes(path: Path) -> bytes:
    # Not blocking: a pipe that nobody writes to would be waited for; what it is, is asked of what was opened.
    flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
    try:
        handle = os.open(path, flags)
    except OSError as error:
        raise NotOurs(f"it cannot be opened: {reason(error)}") from error
    try:
        with open(handle, "rb") as file:  # noqa: PTH123  (a handle, not a path)
            _hers(os.fstat(handle))
            content = file.read(MOST_BYTES + 1)
    except OSError as error:
        raise NotOurs(f"it cannot be read: {reason(error)}") from error
    if len(content) > MOST_BYTES:
        raise Unsound(f"it has more than {MOST_BYTES:,} bytes")
    return content


def _hers(found: os.stat_result) -> None:
    if not stat.S_ISREG(found.st_mode):
        raise NotOurs("it is not a plain file")
    if hasattr(os, "geteuid"):  # Windows has neither owners nor rights in these numbers
        if found.st_uid != os.geteuid():
            raise NotOurs("it belongs to someone else")
        if found.st_mode & (stat.S_IWGRP | stat.S_IWOTH):
            raise Unsound("others may write to it")
    if found.st_nlink != 1:
        raise Unsound("it has a second name somewhere else")
    if found.st_size > MOST_BYTES:
        raise Unsound(f"it has more than {MOST_BYTES:,} bytes")


def _understood(content: bytes) -> Rescue:
    end = content.rfind(b"\n", 0, -1) + 1
    if content[end:] != _seal(content[:end]):
        raise Unsound("it is not as it was written")
    try:
        first, *rest = (parsed(line) for line in content[:end].decode("ascii").split("\n")[:-1])
        header = _header(first)
        rows = tuple(_rows(header["seq"], header["chain"], rest))
    except NoJSON as error:
        raise Unsound(str(error)) from error
    except ValueError as error:  # not ASCII, or no first line
        raise Unsound("it is not as it was written") from error
    if not rows or len(rows) != header["rows"]:
        raise Unsound("it holds another number of entries than it says")
    if groups(rows) > MOST_UNSAVED:
        raise Unsound("it holds more entries than are ever kept waiting")
    return Rescue(header["garment"], header["folder"], (header["seq"], header["chain"]), rows)


def _header(found: Any) -> dict[str, Any]:
    if not isinstance(found, dict) or found.get("finishing") != "rescue":
        raise Unsound("it is not a rescue file")
    if type(found.get("format")) is int and found["format"] > FORMAT:
        raise Unsound("a newer version of finishing wrote it")
    if {key: type(value) for key, value in found.items()} != _HEADER or found["format"] != FORMAT:
        raise Unsound("its first line is not as this program writes it")
    if not 0 <= found["seq"] < LARGEST or not _CHAIN.fullmatch(found["chain"]):
        raise Unsound("its first line names no event")
    return found


def _rows(seq: int, chain: str, found: list[Any]) -> Iterator[Row]:
    group = 0
    for at, columns in enumerate(found):
        seq += 1
        if not isinstance(columns, list) or tuple(map(type, columns)) != TYPES:
            raise Unsound(f"entry {seq} is not as this program writes it")
        one = Row._make(columns)
        if one.group == seq or (not at and 0 < one.group < seq):  # else one more of a group; a held key's is long
            group = one.group
        if not _in_range(one) or (one.seq, one.group) != (seq, group) or not isinstance(one.body, dict):
            raise Unsound(f"entry {seq} is not as this program writes it")
        chain = link(chain, *one[:8])
        if one.chain != chain:
            raise Unsound(f"entry {seq} does not follow the one before")
        yield one


def _in_range(one: Row) -> bool:
    numbers = all(0 <= number <= LARGEST for number in (one.sitting, one.after_ms, one.version))
    return numbers and is_moment(one.at) and len(one.text) <= MOST_IN_BODY and _is_text(one.kind + one.text)


def _is_text(text: str) -> bool:
    """Say whether no half character is in ``text``: JSON can name them, and no journal takes them."""
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True
