"""``measure``: lay a ruler on the work and write down what it says."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.lengths import Length, read_length, say_length
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure(Step):
    """Measure something and write it down."""

    do: Literal["measure"] = "measure"
    what: str
    """What is measured: "the neck opening, laid flat"."""
    value: str = ""
    """What it should be, with its unit: "24.5 cm"."""
    tolerance: str = ""
    """How far off it may be, with its unit: "1 cm"."""

    def stages(self, _here: Here) -> tuple[Stage, ...]:
        """Return the value to type, in the unit of what is wanted (cm where nothing is).

        Raises ``Impossible`` when a length cannot be read.
        """
        wanted = read_length(self.value) if self.value.strip() else None
        off = read_length(self.tolerance) if self.tolerance.strip() else None
        words = f"Measure {self.what}, and type it in {wanted.unit if wanted else 'cm'}."
        if wanted:
            words += f" Wanted: {say_length(wanted)}{_within(wanted, off)}."
        elif off:
            raise CannotBegin(
                f"the tolerance of {say_length(off)} in {self.title!r} belongs to a value, and none is given"
            )
        return (Stage("value", 1, self.what, "measure", words, of=wanted.unit if wanted else "cm"),)


def _within(wanted: Length, off: Length | None) -> str:
    """Say how far off it may be; raise ``CannotBegin`` when that is as much as what is wanted."""
    if off is None:
        return ""
    if off >= wanted:
        raise CannotBegin(
            f"a tolerance of {say_length(off)} is as much as the {say_length(wanted)} itself; give a smaller one"
        )
    return f", give or take {say_length(off)}"
