"""``python -m finishing_tui`` is the command ``finishing``."""

from finishing_tui.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
