"""How all text of a command leaves the program: inert, as the terminal or pipe can take it, never with a traceback."""

import json
import os
import sys
from collections.abc import Mapping
from io import TextIOWrapper
from typing import Any, TextIO

from finishing_tui.files import reason
from finishing_tui.inert import escaped, inert
from finishing_tui.letters import ALIKE, why_plain


def for_programs(data: Mapping[str, Any]) -> str:
    """Return ``data`` as one line of JSON; where standard output cannot take every sign, in ASCII alone."""
    return escaped(json.dumps(data, ensure_ascii=sys.stdout is not None and bool(why_plain(sys.stdout))))


def shown(text: str) -> str:
    """Return ``text`` as it may go to a terminal; a tab becomes spaces, so that columns stay where they are."""
    return inert(text.expandtabs())


def complain(text: str) -> None:
    """Print ``text`` on standard error, at once: neither people nor programs take it for a part of an answer."""
    print(shown(text), file=sys.stderr, flush=True)


def fit(stream: TextIO) -> str:
    """Have ``stream`` write what it can show and what looks like the rest; return why in plain letters, if it does.

    Looks that the environment names are left to the stream.
    """
    why = "" if os.environ.get("FINISHING_LOOKS") else why_plain(stream)
    if isinstance(stream, TextIOWrapper):
        stream.reconfigure(encoding="ascii" if why else None, errors=ALIKE)
    return why


def put_out(said: str) -> str:
    """Print ``said``, in plain letters where the terminal lacks others; return why not, if it cannot be written.

    Whoever reads may have read enough (a pager, head): that is no fault.
    """
    if not said or sys.stdout is None:  # closed before the program began
        return ""
    why = fit(sys.stdout)
    try:
        sys.stdout.write(f"{shown(said)}\n")
        sys.stdout.flush()
        if why and not said.isascii():
            complain(f"finishing: {why}")
    except OSError as error:
        # Python would complain once more when it closes the stream.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return "" if isinstance(error, BrokenPipeError) else reason(error)
    return ""
