"""Finds what the program comes with: recipes, and demo garments to try it on.

In a checkout, and in an editable install of one, they lie beside the package, at the top of the tree; in an installed
wheel they lie inside it (``force-include`` in pyproject.toml). This module only finds them and never opens one.
"""

from pathlib import Path

from finishing_tui.craft.errors import FinishingError

PACKAGE = Path(__file__).parent
"""The folder of the package itself."""


class NotShipped(FinishingError):
    """Something that does not come with the program was asked for by name, or the install is not whole."""


def recipes(package: Path = PACKAGE) -> dict[str, Path]:
    """Return the files of the shipped recipes by name, in order; raises ``NotShipped`` when the install lacks them."""
    return {path.stem: path for path in sorted(_folder("recipes", package).glob("*.toml"))}


def techniques(package: Path = PACKAGE) -> dict[str, Path]:
    """Return the files of the techniques by name, in order; raises ``NotShipped`` when the install lacks them."""
    return {path.stem: path for path in sorted(_folder("recipes", package).glob("techniques/*.toml"))}


def demos(package: Path = PACKAGE) -> dict[str, Path]:
    """Return the folders of the demo garments by name, in order; raises ``NotShipped`` when the install lacks them."""
    found = sorted(_folder("demo_projects", package).iterdir())
    return {path.name: path for path in found if (path / "garment.toml").is_file()}


def recipe(name: str, package: Path = PACKAGE) -> Path:
    """Return the file of the shipped recipe ``name``; raises ``NotShipped`` with the names there are."""
    return _named(name, recipes(package), "recipe")


def demo(name: str, package: Path = PACKAGE) -> Path:
    """Return the folder of the demo garment ``name``; raises ``NotShipped`` with the names there are."""
    return _named(name, demos(package), "demo garment")


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
