"""The seed that examples are made from in CI: that of the commit, so that anyone can run what CI will run."""

import subprocess
from functools import cache
from pathlib import Path


@cache
def seed_of_commit() -> int:
    """Return the seed of the commit that is checked out; 0 where the tree is in no repository."""
    try:
        head = subprocess.run(
            ["git", "rev-parse", "HEAD"],
            cwd=Path(__file__).parent,
            capture_output=True,
            text=True,
            check=True,
        ).stdout
    except (OSError, subprocess.CalledProcessError):
        return 0
    return int(head[:8], 16)
