"""The name of the program, large, where there is nothing to count yet."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.widgets.figures import LEAST, Lettering, big, width_of
from finishing_tui.widgets.plain import plain_rows
from finishing_tui.widgets.rows import Rows

NAME = "FINISHING"

_LETTERINGS = (Lettering(7, 6, 2), Lettering(LEAST, 3, 1))


class Name(Rows):
    """The name in the largest letters that fit; nothing on a low screen."""

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the name."""
        del height
        if self.tallness == "low":
            return ()
        fit = next((one for one in _LETTERINGS if width_of(NAME, one) <= width), None)
        return plain_rows(big(NAME, fit, ascii_only=self.ascii), "bold $count") if fit else ()
