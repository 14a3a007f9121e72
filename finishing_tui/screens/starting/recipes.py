"""The recipes to choose from: those that come with the program, and files of one's own."""

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from textual import work
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.events import Key
from textual.message import Message

from finishing_tui import shipped
from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import listing, plural, sentence
from finishing_tui.garment.starting import Draft, source_of
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.keys import LONG_LISTS, NUMBERS, bindings, is_alive, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.one_line import OneLine
from finishing_tui.screens.program import program
from finishing_tui.screens.starting.questions import StartScreen
from finishing_tui.screens.starting.reading import ReadingScreen
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences


class RecipesScreen(Listed[Path | None]):
    """Choose a recipe, or read it through first; returns the folder of the garment that was started, or None."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *NUMBERS,
        *bindings(
            "recipes",
            {
                **LONG_LISTS,
                "lists.leave": "leave",
                "lists.close": "leave",
                "recipes.read": "read",
                "recipes.file": "file",
            },
        ),
    ]

    @dataclass
    class Read(Message):
        """A recipe was read, or could not be."""

        source: str
        recipe: Recipe | None
        trouble: str = ""
        typed: str = ""

    def __init__(self, shelf: Path) -> None:
        """Find the recipes; raises ``NotShipped`` where they are missing. The garment goes on ``shelf``."""
        super().__init__()
        self._shelf = shelf
        self._titles, files = shipped.recipe_titles(), shipped.recipes()
        self._files = {name: files[name] for name in self._titles}
        self._recipes: dict[str, Recipe | None] = dict.fromkeys(self._files)
        self._troubles: dict[str, str] = {}
        self._drafts: dict[str, Draft] = {}

    def compose(self) -> ComposeResult:
        """Lay out the recipes."""
        with Vertical(classes="head"):
            yield Sentences()
        yield Choices(spaced=False)
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the recipes by their titles, and read them beside the keys."""
        self.query_one(Sentences).show(("Start a garment", "bold $count"), ("Choose a recipe.", "$quiet"))
        self._draw(0)
        key = keys_of(self).shown
        self.query_one(KeyLine).show(
            (
                *self.choosing(),
                (key("recipes.read"), "read it"),
                (key("recipes.file"), "open a file"),
                *self.moving(),
                (key("lists.leave"), "back"),
            )
        )
        self._read_all()

    def on_key(self, event: Key) -> None:
        """Ring for a key that does nothing here."""
        if not is_alive(self, event.key):
            self.app.bell()

    def on_recipes_screen_read(self, message: Read) -> None:
        """Show a recipe that was read; one of her own is chosen at once, or its mistakes are told."""
        if message.recipe is not None:
            self._recipes[message.source] = message.recipe
        elif not message.typed:
            self._troubles[message.source] = message.trouble
        choices = self.query_one(Choices)
        if not message.typed:
            self._draw(choices.at)
        elif message.recipe is not None:
            self._draw(list(self._recipes).index(message.source))
            self._start(message.source, message.recipe)
        else:
            self.app.bell()
            lines = message.trouble.splitlines()
            answers = (Choice("type it again"), Choice("back to the recipes"))
            asking = ChoiceBox("You can't use this recipe", answers, lines)
            self.app.push_screen(asking, lambda at: self._ask_file(message.typed) if at == 0 else None)

    def action_take(self, number: int | None = None) -> None:
        """Choose a recipe."""
        at = self.query_one(Choices).at if number is None else number
        found = self._at(at)
        if found is not None:
            self._start(*found)

    def action_read(self) -> None:
        """Read the recipe at the caret through."""
        found = self._at(self.query_one(Choices).at)
        if found is not None:
            self.app.push_screen(ReadingScreen(found[1]))

    def action_file(self) -> None:
        """Ask for a recipe file."""
        self._ask_file("")

    def move_to(self, at: int) -> None:
        """Show the caret at a recipe."""
        self._draw(at)

    def action_leave(self) -> None:
        """Go to the shelf; what was typed for a garment is asked about first."""
        if not any(draft.said(self._hand) for draft in self._drafts.values()):
            self.dismiss(None)
            return
        answers = (Choice("stay"), Choice("leave", ("Your answers are not kept.",)))

        def answered(at: int | None) -> None:
            if at == 1:
                self.dismiss(None)

        self.app.push_screen(ChoiceBox("No garment is started yet. Leave?", answers), answered)

    @property
    def _hand(self) -> Literal["right", "left"]:
        return program(self).settings.hand

    def _at(self, at: int) -> tuple[str, Recipe] | None:
        """Return the recipe at ``at``, or ring and say why there is none."""
        sources = list(self._recipes)
        if at >= len(sources):
            self.app.bell()
            return None
        source = sources[at]
        recipe = self._recipes[source]
        if recipe is None:
            self.app.bell()
            told = self._troubles.get(source, "it is still being read")
            self.query_one(Notice).show(sentence(told.splitlines()[0]), alarm=True)
            return None
        self.query_one(Notice).show("")
        return source, recipe

    def _ask_file(self, value: str) -> None:
        line = OneLine(
            "Which recipe file?", "Its path; it ends in .toml.", enter="read it", escape="to the recipes", value=value
        )

        def answered(typed: str | None) -> None:
            if typed:
                self._read_file(typed)

        self.app.push_screen(line, answered)

    def _start(self, source: str, recipe: Recipe) -> None:
        fresh = Draft(recipe=recipe, source=source, size=recipe.sizes[0], hand=self._hand)
        draft = self._drafts.get(source, fresh)
        if draft.recipe != recipe:  # a file of hers, mended meanwhile: the numbers may not be those of before
            draft = fresh

        def came(back: Draft | Path | None) -> None:
            if isinstance(back, Path):
                self.dismiss(back)
            elif back is not None:
                self._drafts[source] = back

        self.app.push_screen(StartScreen(draft, self._shelf), came)

    @work(thread=True, group="reading")
    def _read_all(self) -> None:
        for name, path in self._files.items():
            try:
                self.post_message(self.Read(name, read_recipe(path)))
            except FinishingError as error:
                self.post_message(self.Read(name, None, str(error)))

    @work(thread=True, group="reading")
    def _read_file(self, typed: str) -> None:
        try:
            source, path = source_of(typed.strip(), self._files)
            self.post_message(self.Read(source, read_recipe(path), typed=typed))
        except FinishingError as error:
            self.post_message(self.Read(typed, None, str(error), typed))

    def _draw(self, at: int) -> None:
        found = enumerate(self._recipes.items())
        choices = [self._choice(source, recipe, whole=index == at) for index, (source, recipe) in found]
        self.query_one(Choices).show(choices, at)

    def _choice(self, source: str, recipe: Recipe | None, *, whole: bool) -> Choice:
        """Return a recipe's lines: what it is for only where the caret is, so that the list stays short."""
        if recipe is None:
            trouble = self._troubles.get(source, "").splitlines()
            return Choice(self._titles.get(source, source), (trouble[0],) if trouble else (), alarm=bool(trouble))
        lines = (recipe.about, f"Sizes {listing(recipe.sizes)}.") if whole else ()
        return Choice(recipe.title, tuple(text for text in lines if text), plural(len(recipe.sizes), "size"))
