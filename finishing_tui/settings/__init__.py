"""What a person sets for herself: keys, pace, bell, speech, units, hand and looks, in a file of her own.

It is read once, when the program starts. Everything in it that is wrong is told at once, by file, line and key. Nothing
here draws, and nothing is loaded for a file without mistakes but the standard library's parser.
"""

from finishing_tui.settings.finding import read_settings, settings_file
from finishing_tui.settings.model import Settings

__all__ = ["Settings", "read_settings", "settings_file"]
