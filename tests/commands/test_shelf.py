"""``finishing shelf --json`` and what no program is offered."""

from pathlib import Path

import pytest

from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from tests.commands.prompt import ask_json, help_of, refused
from tests.garment.folders import garment_in
from tests.garment.recipes import EDGE, UNEQUAL


def test_the_garments_on_the_shelf(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each with how far it is, also one that was never begun and one that cannot be opened; no terminal is needed."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    assert ask_json(capsys, "shelf") == {"shelf": str(tmp_path / "shelf"), "garments": []}
    begun = garment_in(tmp_path / "shelf" / "begun", EDGE)
    garment_in(tmp_path / "shelf" / "new", UNEQUAL)
    damaged = garment_in(tmp_path / "shelf" / "damaged", EDGE)
    (damaged / NAME).write_bytes(b"not a journal")
    hand = InHand.open(begun)
    hand.pick_up()
    assert hand.put_down()
    garments = {Path(one["folder"]).name: one for one in ask_json(capsys, "shelf")["garments"]}
    assert (garments["begun"]["step"], garments["begun"]["finished"], garments["begun"]["trouble"]) == (1, False, "")
    assert garments["new"]["touched"] == ""
    assert garments["damaged"]["trouble"].startswith("The journal is damaged")


def test_nothing_is_offered_to_programs_that_cannot_be_answered(capsys: pytest.CaptureFixture[str]) -> None:
    """Where a screen must be worked there is no --json, in the help and at the prompt."""
    assert "--json" not in help_of(capsys, "work")
    assert "--json" in refused(capsys, "work", "x", "--json")
