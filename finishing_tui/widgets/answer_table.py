"""Ways to go on as a table: what to do first, the total, how it lies and the work; under it the edge of one way.

Every row stands where it stands whichever way the caret is at: the edge always takes the same rows, and so does what
is said about a way. Where there is room, the changes of every way are marked at once, and the rows stand apart.
"""

import re
from collections.abc import Sequence

from textual.content import Content

from finishing_tui.glance.answers import NO_WORK, Answer, Answers
from finishing_tui.widgets.plain import cut_short, plain, wrapped
from finishing_tui.widgets.rows import Rows
from finishing_tui.widgets.two_edges import BOTH, all_seen, two_edges

_EDGE = BOTH + 1
"""The rows that the edge takes with one way marked."""


class AnswerTable(Rows):
    """The ways to go on, one under the other, and the edge of the one at the caret beside the planned one."""

    def __init__(self, *, numbered: bool = True) -> None:
        """``numbered``: a number takes a way, so each shows its own, and the caret stands at one."""
        super().__init__(id="answers")
        self._answers: Answers | None = None
        self._numbered = numbered
        self.at = 0

    @property
    def answers(self) -> Answers | None:
        """What is shown."""
        return self._answers

    def show(self, answers: Answers | None, at: int = 0) -> None:
        """Show ``answers`` with the caret at one of them; None shows nothing."""
        self._answers, self.at = answers, at
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the table, then the edge and the words of the way at the caret, as far as there is room for them."""
        answers = self._answers
        if answers is None:
            return ()
        table, at = self._table(answers, width)
        room = len(table) + 99 if height is None else height
        brief = len(table) > room
        if brief:
            table, at = self._table(answers, width, brief=True)
        if len(table) > room:
            top = min(max(at - room // 2, 0), len(table) - room)
            return table[top : top + room]
        more = self._more(answers, width, room - len(table), brief=brief)
        if answers.planned is not None and len(more) > room - len(table) - _EDGE:
            less = self._more(answers, width, room - len(table) - _EDGE, brief=brief)
            more = more if brief and not less else less  # the drawing says most of it too
        edge = self._edge(answers, width, room - len(table) - len(more))
        left = room - len(table) - len(edge) - len(more)
        parts = [part for part in (table, edge, more) if part]
        apart = min(len(parts) - 1, left if height is not None else 1)
        if height is not None and left - apart >= len(answers.rows) - 1 and len(table) == len(answers.rows) + 1:
            parts[0] = [table[0], *(line for row in table[1:] for line in (row, Content()))][:-1]
        rows = parts[0]
        for index, part in enumerate(parts[1:]):
            rows = [*rows, *[Content()] * (index < apart), *part]
        return rows[:room]

    def _table(self, answers: Answers, width: int, *, brief: bool = False) -> tuple[list[Content], int]:
        """Return the rows of the table, and which of them the caret stands at.

        ``brief``: where it is too narrow for columns, a row for each text and one for what comes of it.
        """
        most = 1 if brief else 99
        heads = [self._head(index) for index in range(len(answers.rows))]
        margin = heads[0].cell_length
        lies = f"how {answers.lying or 'it'} lies" if any(one.lies for one in answers.rows) else ""
        titles = ("total", lies, "work")
        wide = [max(map(len, column)) for column in zip(titles, *map(_facts, answers.rows), strict=True)]
        facts = sum(wide) + 3 * len(wide)
        texts = max(len(one.text) for one in answers.rows)
        if margin + texts + facts <= width:
            heads_of = [plain(title.ljust(of), "$quiet") for title, of in zip(titles, wide, strict=True) if of]
            rows = [_row(Content(" " * (margin + texts)), heads_of)]
            for index, one in enumerate(answers.rows):
                text = self._text(index, one)
                rows.append(_row(heads[index] + text.pad_right(texts - text.cell_length), _drawn(one, wide)))
            return rows, self.at + 1
        rows, at = [], 0
        for index, one in enumerate(answers.rows):
            at = len(rows) if index == self.at else at
            for line, text in enumerate(
                cut_short(wrapped(self._text(index, one), width - margin), width - margin, most)
            ):
                rows.append((Content(" " * margin) if line else heads[index]) + text)
            facts_below = _drawn(one, [0, 0, 0], answers.lying.removeprefix("the "))
            below = Content("  ").join(facts_below)
            if below.cell_length > width - 3 and one.work == NO_WORK:
                below = Content("  ").join(facts_below[:-1])  # what costs no work may say so by leaving it out
            rows += [Content("   ") + line for line in cut_short(wrapped(below, width - 3), width - 3, most)]
        return rows, at

    def _head(self, index: int) -> Content:
        if not self._numbered:
            return Content("  ")
        return plain("▸ " if index == self.at else "  ", "bold $act") + plain(f"{index + 1}  ", "bold $act")

    def _text(self, index: int, one: Answer) -> Content:
        return plain(one.text, "bold $count" if self._numbered and index == self.at else "bold $foreground")

    def _edge(self, answers: Answers, width: int, room: int) -> list[Content]:
        """Return the edge with what every way changes marked, or only the one at the caret where there is no room."""
        planned = answers.planned
        if planned is None or room <= BOTH:
            return []
        edges = [one.edge or planned for one in answers.rows]
        changes = {way: spots for way in range(len(edges)) if (spots := answers.changed(way))}
        if not self._numbered:
            changes = {self.at: answers.changed(self.at)} if edges[self.at] != planned else {}
        elif BOTH + len(changes) + (self.tallness != "low") > room or not all_seen(planned, edges, changes, width):
            changes = {self.at: answers.changed(self.at)}
        if self._numbered and answers.rows[self.at].edge is None:
            return [Content()] * (BOTH + len(changes))  # nothing goes otherwise; what stands below stays there
        return two_edges(
            planned,
            edges,
            changes,
            self.at,
            width,
            numbered=self._numbered,
            explained=0 if self.tallness == "low" else max(room - BOTH - len(changes), 0),
            ascii_only=self.ascii,
        )

    def _more(self, answers: Answers, width: int, most: int, *, brief: bool) -> list[Content]:
        """Return what is said about the way at the caret, in as many rows as the longest of all takes, up to ``most``.

        Where that is not all of it, it ends with a sentence. ``brief``: its text stands cut in the table.
        """
        texts = [f"{one.text}. {one.more}".strip() if brief else one.more for one in answers.rows]
        said = [_whole(text, width, most) for text in texts]
        most = max(map(len, said))
        return [*said[self.at], *[Content()] * (most - len(said[self.at]))]


def _whole(text: str, width: int, most: int) -> list[Content]:
    """Return as many whole sentences as have room in ``most`` rows."""
    sentences = re.split(r"(?<=[.]) ", text) if text else []
    for many in range(len(sentences), 0, -1):
        rows = wrapped(plain(" ".join(sentences[:many]), "$foreground"), width)
        if len(rows) <= most:
            return rows
    return []


def _facts(one: Answer, lying: str = "") -> tuple[str, str, str]:
    """Return the facts of a way; ``lying`` where no heading says what lies."""
    return one.comes_to, " ".join(filter(None, (one.shape, lying if one.lies else "", one.lies))), one.work


def _drawn(one: Answer, wide: Sequence[int], lying: str = "") -> list[Content]:
    total, lies, work = _facts(one, lying)
    if work == NO_WORK and not any(wide):
        work = "no work"  # there no heading stands over it
    styles = ("$alarm" if one.note else "bold $foreground", "bold $alarm" if one.shows else "bold $good", "$foreground")
    return [
        plain(text.ljust(of), style)
        for text, of, style in zip((total, lies, work), wide, styles, strict=True)
        if text or of
    ]


def _row(begins: Content, parts: Sequence[Content]) -> Content:
    return Content("   ").join([begins, *parts])
