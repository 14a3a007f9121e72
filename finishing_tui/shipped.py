"""Finds what the program comes with: recipes, and demo garments to try it on.

In a checkout, and in an editable install of one, they lie beside the package, at the top of the tree; in an installed
wheel they lie inside it (``force-include`` in pyproject.toml). This module only finds them and never opens one.
"""

import re
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import exists

PACKAGE = Path(__file__).parent
"""The folder of the package itself."""

FIRST_DEMO = "moss-vest"
"""The demo garment that is listed first: one in mid edge, so that the first press there picks up a stitch."""

_TITLE = re.compile(r'^title *= *"([^"\\\n]+)"', re.MULTILINE)


class NotShipped(FinishingError):
    """Something that does not come with the program was asked for by name, or the install is not whole."""


def recipes(package: Path = PACKAGE) -> dict[str, Path]:
    """Return the files of the shipped recipes by name, in order; raises ``NotShipped`` when the install lacks them."""
    return {path.stem: path for path in sorted(_folder("recipes", package).glob("*.toml"))}


def recipe_titles(package: Path = PACKAGE) -> dict[str, str]:
    """Return the shipped recipes by name with their titles, in the order of these, as people look for them.

    Only the line of the title is looked for, so that a list is there at once; a recipe without one goes by its name.
    Raises ``NotShipped`` when the install lacks them.
    """
    found = {name: _title(path) or name for name, path in recipes(package).items()}
    return dict(sorted(found.items(), key=lambda one: one[1].casefold()))


def techniques(package: Path = PACKAGE) -> dict[str, Path]:
    """Return the files of the techniques by name, in order; raises ``NotShipped`` when the install lacks them."""
    return {path.stem: path for path in sorted(_folder("recipes", package).glob("techniques/*.toml"))}


def demos(package: Path = PACKAGE) -> dict[str, Path]:
    """Return the folders of the demo garments by name, the one for the first try first, then in order.

    Raises ``NotShipped`` when the install lacks them.
    """
    found = sorted(_folder("demo_projects", package).iterdir(), key=lambda path: (path.name != FIRST_DEMO, path.name))
    return {path.name: path for path in found if (path / "garment.toml").is_file()}


def recipe(name: str, package: Path = PACKAGE) -> Path:
    """Return the file of the shipped recipe ``name``; raises ``NotShipped`` with the names there are."""
    return _named(name, recipes(package), "recipe")


def recipe_file(named: Path, package: Path = PACKAGE) -> Path:
    """Return ``named``, or the shipped recipe of that name where there is no such file."""
    return named if exists(named) else recipes(package).get(str(named), named)


def demo(name: str, package: Path = PACKAGE) -> Path:
    """Return the folder of the demo garment ``name``; raises ``NotShipped`` with the names there are."""
    return _named(name, demos(package), "demo garment")


def _title(recipe: Path) -> str:
    """Return the title of a recipe file, which stands on a line of its own; empty where none is found."""
    try:
        found = _TITLE.search(recipe.read_text(encoding="utf-8"))
    except (OSError, UnicodeError):
        return ""  # what is wrong with the file is said when it is read
    return found[1] if found else ""


def _folder(name: str, package: Path) -> Path:
    inside = package / "shipped" / name
    folder = inside if inside.is_dir() else package.parent / name
    if not folder.is_dir():
        raise NotShipped(f"the folder {name} that comes with the program is missing; install the program again")
    return folder


def _named(name: str, found: dict[str, Path], what: str) -> Path:
    if name not in found:
        raise NotShipped(f"no {what} named {name!r} comes with the program; there are {', '.join(found) or 'none'}")
    return found[name]
