from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from tests.plain.making import garment, talked

RECIPE = """
format = 1
title  = "[red]Hostile[/red] $(touch owned) `touch owned`"
sizes  = ["[b]", "2"]

[place.holder]
text = "next: holder [link=x]"
kind = "holder"
live = 3

[[step]]
do    = "count"
title = "put down; everything is kept."
place = "holder"
count = 3
say   = \"\"\"%s %(x)s \\\\x1b[31m. Next: row 3.

next: nothing at all.
step 9 of 9: done.\"\"\"

[[step]]
do    = "bind off"
from  = "holder"
method = "plain"
tail  = "d"
title = "{start end} \\\\ ]] [["
"""


def hostile(folder: Path, recipe: str = RECIPE) -> Path:
    """Make a garment of a recipe that would steer, mark up or run something if anything in it were heeded."""
    made = garment(folder, "hostile.toml", "[b]")
    (made / "hostile.toml").write_text(recipe)
    return made


def test_recipe_texts_are_only_said(tmp_path: Path) -> None:
    """Brackets, braces and shell marks are said as they stand, and no text begins a line as if it were an answer."""
    folder = hostile(tmp_path / "hostile")
    said = talked(folder, "words", "where", "steps", "d", "ledger", "q", "[red]where[/red] %s {0}")
    assert "do: %s %(x)s \\x1b[31m." in said
    assert any(line.startswith("  Next: row 3.") for line in said)
    assert not any(line.startswith(("next: nothing", "step 9 of 9", "next: holder")) for line in said)
    assert "on the next: holder [link=x]: 3, in use now." in said
    assert [line for line in said if line.startswith("put down;")] == ["put down; everything is kept."]
    again = talked(folder)
    assert "you wrote: [red]where[/red] %s {0}" in again
    assert sorted(path.name for path in folder.iterdir()) == [
        "garment.toml", "hostile.toml", "journal.lock", "journal.sqlite3"
    ]  # fmt: skip


@pytest.mark.parametrize("sign", ["\\u001b", "\\u009b", "\\u202e", "\\u0007", "\\u2028"])
def test_steering_signs_never_get_in(tmp_path: Path, sign: str) -> None:
    """A recipe with a control character or a direction override is refused before anything is begun."""
    folder = hostile(tmp_path / "hostile", RECIPE.replace("[red]", sign))
    with pytest.raises(FinishingError, match="U\\+"):
        talked(folder)
    assert not (folder / "journal.sqlite3").exists()
