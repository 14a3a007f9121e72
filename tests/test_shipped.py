"""What comes with the program is found in a checkout, an editable install and an installed wheel."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.shipped import NotShipped

TOP = Path(__file__).parent.parent


def layout(root: Path) -> None:
    """Make the two folders under ``root`` with a recipe, a demo garment and things that are neither."""
    (root / "recipes").mkdir(parents=True)
    for name in ("b.toml", "a.toml", "README.md"):
        (root / "recipes" / name).touch()
    (root / "demo_projects" / "crew").mkdir(parents=True)
    (root / "demo_projects" / "crew" / "garment.toml").touch()
    (root / "demo_projects" / "README.md").touch()
    (root / "demo_projects" / "empty").mkdir()


@pytest.mark.parametrize("where", [".", "finishing_tui/shipped"], ids=["beside the package", "inside a wheel"])
def test_found_in_either_place(tmp_path: Path, where: str) -> None:
    """Recipes and demo garments by name, in order, and nothing else that lies there."""
    package = tmp_path / "finishing_tui"
    package.mkdir()
    layout(tmp_path / where)
    assert list(shipped.recipes(package)) == ["a", "b"]
    assert list(shipped.demos(package)) == ["crew"]
    assert shipped.recipe("a", package).is_file()
    assert shipped.demo("crew", package).is_dir()


def test_a_wheel_does_not_look_beside_itself(tmp_path: Path) -> None:
    """Beside an installed package lie other packages; a folder of theirs named recipes is none of ours."""
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "other.toml").touch()
    layout(tmp_path / "finishing_tui" / "shipped")
    assert list(shipped.recipes(tmp_path / "finishing_tui")) == ["a", "b"]


def test_other_names_are_answered_with_those_there_are(tmp_path: Path) -> None:
    """A name that is not there, and an install that is not whole, are sentences."""
    layout(tmp_path)
    with pytest.raises(NotShipped, match="no recipe named 'c' comes with the program; there are a, b"):
        shipped.recipe("c", tmp_path / "finishing_tui")
    with pytest.raises(NotShipped, match="the folder recipes that comes with the program is missing"):
        shipped.recipes(tmp_path / "nowhere" / "finishing_tui")


def test_this_checkout_has_them() -> None:
    """The tests run from a checkout, or an editable install of it: the folders at the top of the tree are found."""
    assert all(path.parent == TOP / "recipes" for path in shipped.recipes().values())


def test_the_wheel_carries_all_of_them(tmp_path: Path) -> None:
    """Every file of both folders is in the wheel, where an installed package looks for it."""
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(build, cwd=TOP, check=True, capture_output=True)
    (wheel,) = tmp_path.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(tmp_path / "installed")
    package = tmp_path / "installed" / "finishing_tui"
    assert list(shipped.recipes(package)) == list(shipped.recipes())
    assert list(shipped.demos(package)) == list(shipped.demos())
    assert (package / "py.typed").is_file()
