"""Speech: texts are handed to a program that is on this computer already. It is never needed, and nothing waits for it.

No shell is used, and a text can never become an option of the program.
"""

from finishing_tui.speech.programs import NoProgram, SpeechProgram, program_for
from finishing_tui.speech.speaker import Speaker

__all__ = ["NoProgram", "Speaker", "SpeechProgram", "program_for"]
