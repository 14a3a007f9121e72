"""The plan of one garment: the recipe as it was taken, the size, and what the knitter said of her own garment."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Literal, NewType

from finishing_tui.craft.ledger import Ledger
from finishing_tui.recipe.footing import Footing, is_for
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.numbers import size_index

StepId = NewType("StepId", str)
"""What a step of one garment is called for as long as there is the garment, wherever it stands among the others.

A step of the recipe has its number there; one that was inserted later has "+1", "+2" and so on, never given twice.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What is to be done to one garment.

    ``name``: the garment's id; ``source`` and ``text``: where the recipe came from and its very
    text, ``file_text`` that of the garment's own file; ``size``: the
    size's name; ``own``: the knitter's own numbers; ``gauge``: her own gauge, if it is not the recipe's;
    ``wearer``: who will wear it, where she said so; ``ids``: the ids of its steps, in their order.
    """

    name: str
    title: str
    recipe: Recipe
    source: str
    text: str
    file_text: str = ""
    size: str
    own: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    gauge: RecipeGauge | None = None
    hand: Literal["right", "left"] = "right"
    yarn: str = ""
    needles: str = ""
    notes: str = ""
    wearer: str = ""
    ids: tuple[StepId, ...] = ()
    _footing: list[Footing] = field(default_factory=list, init=False, repr=False, compare=False)  # once worked out

    def __post_init__(self) -> None:
        """Give each step its number for an id where none has one: that is a recipe as it is taken."""
        if not self.ids:
            ids = tuple(StepId(str(number)) for number in range(1, len(self.recipe.step) + 1))
            object.__setattr__(self, "ids", ids)

    @property
    def size_index(self) -> int:
        """The position of the size among the recipe's."""
        return size_index(self.recipe, self.size)

    def step(self, index: int) -> AnyStep:
        """Return the step at ``index``, counted from 0."""
        return self.recipe.step[index]

    def index_of(self, step: StepId) -> int:
        """Return where the step with this id is, counted from 0. Raises ``ValueError`` where there is none."""
        return self.ids.index(step)

    def number_of(self, step: StepId | None) -> int | None:
        """Return the number of the step with this id, from 1; None where there is none any more."""
        return self.ids.index(step) + 1 if step in self.ids else None

    def is_for(self, index: int) -> bool:
        """Return whether the step at ``index`` is for this size and wearer."""
        return is_for(self.recipe.step[index], self.size, self.wearer)

    def numbers(self) -> dict[str, int]:
        """Return every number for this size, the knitter's own among them."""
        return dict(self.footing.numbers)

    @property
    def footing(self) -> Footing:
        """What the steps stand on: worked out when it is first asked for, since every press asks for it.

        Raises ``NoNumber`` or ``BadSum``.
        """
        if not self._footing:
            self._footing.append(
                Footing.of(
                    self.recipe, self.size_index, own=self.own, gauge=self.gauge, hand=self.hand, wearer=self.wearer
                )
            )
        return self._footing[0]

    def here(self, ledger: Ledger) -> Here:
        """Return what a step may know when it begins with ``ledger``."""
        return self.footing.here(ledger)

    def opening(self) -> Ledger:
        """Return the ledger of the garment as its pieces come off the needles."""
        return self.footing.opening()

    def with_step(self, index: int, step: AnyStep) -> "Plan":
        """Return the plan with the step at ``index`` replaced."""
        steps = (*self.recipe.step[:index], step, *self.recipe.step[index + 1 :])
        return replace(self, recipe=replace(self.recipe, step=steps))

    def with_inserted(self, new: StepId, step: AnyStep, index: int) -> "Plan":
        """Return the plan with one step more, at ``index``."""
        steps = (*self.recipe.step[:index], step, *self.recipe.step[index:])
        return replace(self, recipe=replace(self.recipe, step=steps), ids=(*self.ids[:index], new, *self.ids[index:]))

    def without(self, index: int) -> "Plan":
        """Return the plan without the step at ``index``."""
        steps = (*self.recipe.step[:index], *self.recipe.step[index + 1 :])
        return replace(self, recipe=replace(self.recipe, step=steps), ids=(*self.ids[:index], *self.ids[index + 1 :]))

    def with_those_inserted_in(self, other: "Plan") -> "Plan":
        """Return the plan with the steps that were inserted in ``other``, each behind the same one as there."""
        plan = self
        for index, (one, step) in enumerate(zip(other.ids, other.recipe.step, strict=True)):
            if one not in self.ids and (not index or other.ids[index - 1] in plan.ids):
                plan = plan.with_inserted(one, step, plan.index_of(other.ids[index - 1]) + 1 if index else 0)
        return plan
