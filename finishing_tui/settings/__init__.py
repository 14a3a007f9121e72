"""What a person sets for herself: keys, pace, bell, speech, units, hand and looks, in a file of her own.

It is read once, when the program starts. Everything in it that is wrong is told at once, by file, line and key. Nothing
here draws, and nothing is loaded for a file without mistakes but the standard library's parser.
"""

from finishing_tui.settings.model import Settings
from finishing_tui.settings.reading import BadSettings, read_settings, settings_file

__all__ = ["BadSettings", "Settings", "read_settings", "settings_file"]
