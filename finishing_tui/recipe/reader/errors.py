"""What is wrong with a recipe file, as values and as sentences."""

from collections.abc import Iterable
from dataclasses import dataclass

from finishing_tui.craft.errors import FinishingError

Path = tuple[str | int, ...]
"""Where a value stands in a file: keys, and positions in lists from 0."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong: on which ``line`` (from 1; ``None``: the file as a whole), at which ``key``, and what.

    ``message`` says what is wrong and what would be right.
    """

    line: int | None
    key: str
    message: str

    def told(self, file: str) -> str:
        """Return it as one line of text: "file:line: key: what is wrong; what would be right"."""
        where = file if self.line is None else f"{file}:{self.line}"
        return f"{where}: {self.key}: {self.message}" if self.key else f"{where}: {self.message}"


class BadRecipe(FinishingError):
    """A recipe file that cannot be used; ``problems`` are all that is wrong with it, in the order of the file."""

    def __init__(self, file: str, problems: Iterable[Problem]) -> None:
        self.file = file
        self.problems = tuple(problems)
        super().__init__("\n".join(problem.told(file) for problem in self.problems))


def spoken(path: Path) -> str:
    """Return ``path`` as people read it, lists counted from 1: "step 3.section 2.spots"."""
    parts: list[str] = []
    for part in path:
        if isinstance(part, int) and parts:
            parts[-1] += f" {part + 1}"
        else:
            parts.append(str(part))
    return ".".join(parts)
