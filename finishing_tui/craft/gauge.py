"""Gauge: how many stitches and rows lie in a measured length of a fabric, and what blocking makes of them.

Everything is exact, whatever the length and its unit. The gauge after blocking is the one that counts, for
the body and for the band: what is worn has been washed. Nothing here knows about edges; see ``craft.edges``.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import NUMBER, read_number, rounded, unfolded
from finishing_tui.craft.lengths import Length, read_length, say_length
from finishing_tui.craft.words import decimal

MOST = 1_000
"""The greatest number of stitches or rows in a gauge."""

_GAUGE = re.compile(
    rf"(?P<stitches>{NUMBER})\s*(?:stitches|stitch|sts?)?"
    rf"(?:(?:\s*(?:x|×|\*|by|,|and)\s*|\s+)(?P<rows>{NUMBER})\s*(?:rows?)?)?"
    r"\s*(?:over|per|in|to|/|=)\s*(?P<over>\S.*)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Gauge:
    """``stitches`` and ``rows`` in the length ``over``; ``rows`` is None where they were not counted (a band's).

    Raises:
        Impossible: a number that is not more than 0, or more than 1,000.

    """

    stitches: Fraction
    rows: Fraction | None
    over: Length

    def __post_init__(self) -> None:
        for number, what in ((self.stitches, "stitches"), (self.rows, "rows")):
            if number is not None and not 0 < number <= MOST:
                raise Impossible(f"the {what} of a gauge must be more than 0, up to {MOST}")

    @property
    def stitches_per_cm(self) -> Fraction:
        """Stitches in one centimetre."""
        return self.stitches / self.over.cm

    @property
    def rows_per_cm(self) -> Fraction:
        """Rows in one centimetre; raises ``Impossible`` where the rows were not counted."""
        if self.rows is None:
            raise Impossible(
                f"the gauge of {decimal(self.stitches)} stitches over {say_length(self.over)} has no rows: "
                "count those too"
            )
        return self.rows / self.over.cm

    def stitches_in(self, given: Length) -> Fraction:
        """Return how many stitches lie in ``given``, exactly (a fraction of a stitch is kept)."""
        return self.stitches_per_cm * given.cm

    def rows_in(self, given: Length) -> Fraction:
        """Return how many rows lie in ``given``, exactly; raises ``Impossible`` where the rows were not counted."""
        return self.rows_per_cm * given.cm

    def length_of_rows(self, rows: Fraction | int) -> Length:
        """Return how long ``rows`` rows (more than 0) lie, in the gauge's own unit of length."""
        return Length(rows / self.rows_per_cm, self.over.unit)


@dataclass(frozen=True, slots=True)
class Blocking:
    """What must be worked for a length wanted after blocking.

    ``rows`` is the whole number to work (a half is rounded up), ``before`` what they measure on the ruler
    before blocking, and ``after`` what they will measure afterwards.
    """

    rows: int
    before: Length
    after: Length


def before_blocking(wanted: Length, unblocked: Gauge, blocked: Gauge) -> Blocking:
    """Return the rows to work so that the piece is ``wanted`` long after blocking, and their length until then.

    The rows are ``wanted`` × blocked rows per length, rounded; a half goes up. Work to the rows, not to the
    ruler.

    Raises:
        Impossible: a gauge without rows, or a length of less than one row.

    """
    rows = rounded(blocked.rows_in(wanted))
    if rows == 0:
        raise Impossible(f"{say_length(wanted)} is shorter than one row: use a longer length")
    before, after = unblocked.length_of_rows(rows), blocked.length_of_rows(rows)
    return Blocking(rows, Length(before.cm, wanted.unit), Length(after.cm, wanted.unit))


def read_gauge(typed: str) -> Gauge:
    """Return the gauge written in ``typed``: "20 x 28 over 10 cm", "5 sts, 8 rows per inch", "22 stitches over 4 in".

    Raises:
        Impossible: no such form, no length with its unit, or a number out of range.

    """
    found = _GAUGE.fullmatch(unfolded(typed)) if len(typed) <= 80 else None
    if found is None:
        raise Impossible(
            f"{typed[:80]!r} is not a gauge: write stitches, rows and the length, such as '20 x 28 over 10 cm'"
        )
    rows = found["rows"]
    return Gauge(read_number(found["stitches"]), read_number(rows) if rows else None, read_length(found["over"]))


def say_gauge(gauge: Gauge) -> str:
    """Return ``gauge`` in words: "20 stitches and 28 rows over 10 cm"."""
    rows = "" if gauge.rows is None else f" and {decimal(gauge.rows, 2)} rows"
    return f"{decimal(gauge.stitches, 2)} stitches{rows} over {say_length(gauge.over)}"
