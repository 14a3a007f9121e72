"""The message that something was saved, or could not be; it may be posted from any thread."""

from textual.message import Message


class Saved(Message):
    """What is on the disk, or what keeps it from being there, has changed."""
