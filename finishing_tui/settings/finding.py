"""Finds the settings file. What reads it is loaded only where there is one."""

import os
from pathlib import Path

from finishing_tui.settings.model import Settings

NAME = "settings.toml"
"""What the file is called."""


def settings_file() -> Path:
    """Return where the settings are: what ``FINISHING_SETTINGS`` names, or in the user's configuration folder."""
    named = os.environ.get("FINISHING_SETTINGS")
    if named:
        return Path(named).expanduser()
    from platformdirs import user_config_path  # noqa: PLC0415  (only when it is asked for)

    return user_config_path("finishing", appauthor=False) / NAME


def read_settings() -> Settings:
    """Return the settings, the usual ones where there is no file.

    Raises ``BadSettings`` with everything that is wrong, also with a file that ``FINISHING_SETTINGS`` names in vain.
    """
    path = settings_file()
    if not os.environ.get("FINISHING_SETTINGS") and not os.path.lexists(path):
        return Settings()
    from finishing_tui.settings.reading import read_file  # noqa: PLC0415  (only where there is something to read)

    return read_file(path)
