"""Makes a stored journal from its script: ``python -m tests.journals.make NAME``. See README.md beside it."""

import hashlib
import json
import shutil
import sys
import tempfile
from pathlib import Path
from typing import Any

from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import snapshot_of
from tests.garment.folders import Watch, garment_in
from tests.journals.scripts import SCRIPTS

HERE = Path(__file__).parent
"""Where the journals lie."""


def worked(name: str, folder: Path) -> State:
    """Work a script in ``folder`` and return the state it leads to; the journal is left there."""
    script, watch = SCRIPTS[name], Watch()
    garment_in(folder, script.recipe, script.size, more='yarn = "grey wool"\nnotes = "The [left] side first."')
    for number, sitting in enumerate(script.sittings):
        hand = InHand.open(folder, clock=watch.clock())
        assert hand.pick_up() is None
        sitting(hand)
        assert hand.flush(30)
        if number in script.cut:
            hand.close()
        else:
            assert hand.put_down(f"sitting {number + 1} is over")
    return hand.state


def expected(state: State) -> Any:
    """Return what is compared of a state, as JSON values."""
    return json.loads(json.dumps(snapshot_of(state)))


def main(words: list[str]) -> int:
    """Make the journals named, and the states they lead to."""
    for name in words:
        journal, state = HERE / f"{name}.sqlite3", HERE / f"{name}.json"
        with tempfile.TemporaryDirectory() as folder:
            if journal.exists():
                sys.stdout.write(f"{journal.name} is there already, and a stored journal is never changed\n")
                return 1
            reached = worked(name, Path(folder))
            shutil.copy(Path(folder) / NAME, journal)
            sys.stdout.write(f"{hashlib.sha256(journal.read_bytes()).hexdigest()}  {journal.name}\n")
        state.write_text(json.dumps(expected(reached), indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
