"""Finds the settings file. What reads it is loaded only where there is one."""

import os
from collections.abc import Callable
from pathlib import Path

from finishing_tui.files import path_in, usual_path
from finishing_tui.settings.model import Settings

NAME = "settings.toml"
"""What the file is called."""

VARIABLE = "FINISHING_SETTINGS"
"""What names another file in the environment."""


def settings_file() -> Path:
    """Return where the settings are: what ``FINISHING_SETTINGS`` names, or in the user's configuration folder.

    Raises ``NoHome``.
    """
    if named := path_in(VARIABLE):
        return named
    from platformdirs import user_config_path  # noqa: PLC0415  (only when it is asked for)

    return usual_path(lambda: user_config_path("finishing", appauthor=False), "the settings", VARIABLE) / NAME


def read_settings(tell: Callable[[str], None] = lambda _: None) -> Settings:
    """Return the settings, the usual ones where there is no file.

    ``tell`` is given a sentence where a file is named in vain. Raises ``BadSettings`` with everything that is wrong
    with the file, and ``NoHome``.
    """
    path = settings_file()
    if not os.environ.get(VARIABLE) and not os.path.lexists(path):
        return Settings()
    from finishing_tui.settings.reading import NoSettings, read_file  # noqa: PLC0415  (only where there is one to read)

    try:
        return read_file(path)
    except NoSettings as error:
        tell(f"{error}. The usual settings hold; 'finishing settings --write' makes the file.")
        return Settings()
