"""Finds the program that speaks: the one that was named, or one of those that are usual on this kind of computer."""

import shutil
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from finishing_tui.craft.errors import FinishingError


class NoProgram(FinishingError):
    """There is nothing here that speaks; the sentence says what would help."""


@dataclass(frozen=True, slots=True)
class SpeechProgram:
    """A program that speaks: the ``command`` it is started with, whole.

    ``argument``: it takes the text as its last argument, behind ``--``; otherwise it reads it on its standard input.
    """

    command: tuple[str, ...]
    argument: bool = False

    def with_text(self, text: str) -> tuple[tuple[str, ...], str]:
        """Return what is started to say ``text``, and what it is given on its standard input."""
        return ((*self.command, "--", text), "") if self.argument else (self.command, text)


# All but the first read what they say on their standard input. The manuals of spd-say 0.11 and espeak-ng 1.51 say so;
# how the other systems' are started is from memory.
_WINDOWS = (
    "Add-Type -AssemblyName System.Speech; "
    "$text = New-Object IO.StreamReader ([Console]::OpenStandardInput(), [Text.Encoding]::UTF8); "
    "(New-Object System.Speech.Synthesis.SpeechSynthesizer).Speak($text.ReadToEnd())"
)
# It hands the text on and ends at once; what it hands it to drops an older text for a newer one by itself. Where it
# reads its standard input some lines would be orders, so the text is an argument.
_DISPATCHER = SpeechProgram(("spd-say",), argument=True)
_SYNTHESIZERS = (SpeechProgram(("espeak-ng", "--stdin")), SpeechProgram(("espeak", "--stdin")))

USUAL: Mapping[str, tuple[SpeechProgram, ...]] = MappingProxyType(
    {
        "darwin": (SpeechProgram(("say", "-f", "-")), *_SYNTHESIZERS),
        "win32": (SpeechProgram(("powershell", "-NoProfile", "-NonInteractive", "-Command", _WINDOWS)), *_SYNTHESIZERS),
        "": (_DISPATCHER, *_SYNTHESIZERS),
    }
)
"""The usual programs by the kind of computer, as Python names it; under "" those of all others."""


def program_for(named: tuple[str, ...]) -> SpeechProgram:
    """Return the program ``named`` (with its arguments), or, where that is empty, the first of the usual ones there is.

    Raises ``NoProgram``.
    """
    if named:
        found = shutil.which(named[0])
        if found is None:
            raise NoProgram(f"nothing is spoken: there is no program {named[0]!r} here, which speak_with names")
        return SpeechProgram((found, *named[1:]))
    usual = USUAL.get(sys.platform, USUAL[""])
    for program in usual:
        if (found := shutil.which(program.command[0])) is not None:
            return SpeechProgram((found, *program.command[1:]), program.argument)
    names = " or ".join(program.command[0] for program in usual)
    raise NoProgram(f"nothing is spoken: {names} would be needed, or another program that speak_with names")
