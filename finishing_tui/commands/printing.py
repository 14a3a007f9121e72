"""How all text of a command leaves the program: inert, as the terminal or pipe can take it, never with a traceback."""

import json
import os
import sys
from collections.abc import Mapping
from typing import Any

from finishing_tui.files import reason
from finishing_tui.inert import escaped, inert


def for_programs(data: Mapping[str, Any]) -> str:
    """Return ``data`` as one line of JSON; where standard output cannot take every sign, in ASCII alone."""
    encoding = (getattr(sys.stdout, "encoding", None) or "utf-8").lower().replace("-", "")
    return escaped(json.dumps(data, ensure_ascii=not encoding.startswith("utf")))


def shown(text: str) -> str:
    """Return ``text`` as it may go to a terminal; a tab becomes spaces, so that columns stay where they are."""
    return inert(text.expandtabs())


def complain(text: str) -> None:
    """Print ``text`` on standard error, at once: neither people nor programs take it for a part of an answer."""
    print(shown(text), file=sys.stderr, flush=True)


def put_out(said: str) -> str:
    """Print ``said``, with a question mark for what the terminal cannot show; return why not, if it cannot be written.

    Whoever reads may have read enough (a pager, head): that is no fault.
    """
    if not said or sys.stdout is None:  # closed before the program began
        return ""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="replace")
    try:
        sys.stdout.write(f"{shown(said)}\n")
        sys.stdout.flush()
    except OSError as error:
        # Python would complain once more when it closes the stream.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return "" if isinstance(error, BrokenPipeError) else reason(error)
    return ""
