"""The record: where a garment stands, and what was really done to it, from its events in order.

It only reads. Nothing here opens a journal, draws, or works anything out that an event does not carry; what was taken
back is left out of it, and what was ripped back stays in.
"""

from finishing_tui.record.data import as_data
from finishing_tui.record.gather import not_begun, record_of
from finishing_tui.record.text import as_text
from finishing_tui.record.values import CountTaken, Happened, Record, RippedOut, Sat

__all__ = ["CountTaken", "Happened", "Record", "RippedOut", "Sat", "as_data", "as_text", "not_begun", "record_of"]
