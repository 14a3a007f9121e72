"""The root of every error this program shows to a person.

An error here is one sentence that says what is wrong and what would be right; whoever shows it adds nothing but a
file and a line. Errors meant for programmers stay Python's own.
"""


class FinishingError(Exception):
    """Something a person asked for cannot be done; the message is the sentence to show."""


class Impossible(FinishingError):
    """A sum that has no answer: a number out of range, a row that cannot hold what was asked of it."""
