"""Finds the lines of what is wrong with a file, and puts it in the order of the file.

It must never be reached by a file without mistakes: the second parser, which knows the lines, is loaded only here.
"""

from collections.abc import Iterable

from finishing_tui.inert import inert
from finishing_tui.recipe.reader.errors import Path, Problem, spoken

MOST_TOLD = 100
"""Problems told of one file; whoever has more of them mends these first."""


def placed(found: Iterable[tuple[Path, str]], text: str) -> list[Problem]:
    """Return what was found in ``text``, as (path, sentence), as problems with their lines, in the order of the file.

    Those beyond ``MOST_TOLD`` become one that says there are more.
    """
    from finishing_tui.recipe.reader.lines import line_of, lines_of  # noqa: PLC0415  (only to report)

    lines = lines_of(text)
    problems = dict.fromkeys(
        Problem(line_of(path, lines), inert(spoken(path), lines=False), inert(said, lines=False))
        for path, said in found
    )
    in_order = sorted(problems, key=lambda problem: problem.line or 0)
    if len(in_order) > MOST_TOLD:
        in_order = [*in_order[:MOST_TOLD], Problem(None, "", "and there are more; mend these first")]
    return in_order
