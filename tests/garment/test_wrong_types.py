"""No TOML value of a wrong type is ever ignored in a garment's file: each is refused, on its own line."""

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from finishing_tui.garment.file import BadGarment, GarmentFile, read_garment
from finishing_tui.recipe.model import BandGauge, RecipeGauge
from tests.recipe.reader.wrong_types import Key, Steps, keys_of, line_changed, with_key, written, wrong_for

GARMENT: dict[str, Any] = {
    "format": 1,
    "id": "one",
    "title": "Slate crew",
    "recipe": "crew-neck",
    "size": "M",
    "number": {"front_rows": 34},
    "gauge": {"stitches": 20, "rows": 28, "band": {"stitches": 22, "rows": 30}},
}
WHERE: Mapping[type, Steps] = {GarmentFile: (), RecipeGauge: ("gauge",), BandGauge: ("gauge", "band")}


@pytest.mark.parametrize("key", keys_of(GarmentFile), ids=str)
def test_a_value_of_a_wrong_type_is_refused_on_its_line(key: Key, tmp_path: Path) -> None:
    """A date, a time, a fraction, nan, true for 1, a text, a list, a table: each wherever the key does not take it."""
    before = written(GARMENT)
    (tmp_path / "garment.toml").write_text(before)
    read_garment(tmp_path)
    for wrong in wrong_for(key):
        text = written(with_key(GARMENT, WHERE[key.owner], key.field.key, wrong))
        (tmp_path / "garment.toml").write_text(text)
        with pytest.raises(BadGarment) as caught:
            read_garment(tmp_path)
        found = [(one.line, key.field.key in re.split(r"[ .]", one.key)) for one in caught.value.problems]
        assert (line_changed(before, text), True) in found, wrong
