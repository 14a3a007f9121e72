"""How a garment is named at the prompt: by its folder, or by its name on the shelf."""

from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import exists, expanded, is_dir
from finishing_tui.garment.shelf import shelf_folder


def garment_folder(named: Path) -> Path:
    """Return the folder that ``named`` is, or that lies on the shelf under that name.

    Raises ``FinishingError`` when there is none.
    """
    folder = expanded(named)
    if not exists(folder) and len(folder.parts) == 1 and exists(on_shelf := shelf_folder() / folder):
        folder = on_shelf
    if not is_dir(folder):
        raise FinishingError(f"there is no folder {str(named)!r}; name the folder of a garment, or one on the shelf")
    return folder
