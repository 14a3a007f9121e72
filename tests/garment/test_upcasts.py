"""Values of older versions are brought up to date wherever they are nested; those of later ones are refused."""

import json
import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from pathlib import Path
from typing import Any

import pytest

from finishing_tui.codec import Codec, Stored, Unreadable
from finishing_tui.garment.events import Begun, Event, TakenBack
from finishing_tui.garment.journal import NAME, Journal
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import NotUnderstood, encode, from_row
from finishing_tui.garment.stored_names import STORED
from finishing_tui.recipe.stage import Stage
from tests.journals.make import HERE


@dataclass(frozen=True)
class Petal:
    """A made-up value, in its third version."""

    hue: str
    many: int


@dataclass(frozen=True)
class Bed:
    """Another, that holds petals."""

    rows: tuple[tuple[Petal, ...], ...] = ()
    best: Petal | None = None
    named: Mapping[str, Petal] | None = None


def _to_2(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    return {"hue": plain["color"].lower()}


def _to_3(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    return {**plain, "many": 5}


CODEC = Codec({Petal: Stored("Petal", (_to_2, _to_3)), Bed: Stored("Bed")})
RED = Petal("red", 5)


def test_each_version_is_brought_up_wherever_it_is_nested() -> None:
    """In lists of lists, tables, and where there may be nothing; one beside the other."""
    first, second = {"is": "Petal", "color": "RED"}, {"is": "Petal", "v": 2, "hue": "red"}
    third = {"is": "Petal", "v": 3, "hue": "red", "many": 5}
    plain = {"is": "Bed", "rows": [[first, second], [third]], "best": first, "named": {"a": second}}
    assert CODEC.decode(Bed, plain) == Bed(((RED, RED), (RED,)), RED, {"a": RED})
    assert CODEC.encode(RED) == third


@pytest.mark.parametrize("version", [0, -1, 4, "2", None, [2], 2.0])
def test_a_version_that_is_not_known_is_refused(version: Any) -> None:
    """It may mean anything, whoever wrote it."""
    petal = {"is": "Petal", "v": version, "hue": "red"}
    with pytest.raises(Unreadable):
        CODEC.decode(Bed, {"best": petal})


@pytest.mark.parametrize("plain", [{"is": "Petal"}, {"is": "Petal", "color": 3}, {"is": "Petal", "color": None}])
def test_what_an_upcast_cannot_read_is_refused(plain: Any) -> None:
    """A stranger's value of an old version is unreadable, and no traceback."""
    with pytest.raises(Unreadable):
        CODEC.decode(Petal, plain)


def _quiet(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    return {**plain, "words": "quiet"}


QUIET = Codec({**STORED, Stage: Stored("Stage", (*STORED[Stage].upcasts, _quiet))})
"""A program of tomorrow, in which stages have another version."""


def stages(value: Any) -> Iterator[Stage]:
    """Yield every stage there is in a value."""
    if isinstance(value, Stage):
        yield value
    elif isinstance(value, tuple):
        for one in value:
            yield from stages(one)
    elif is_dataclass(value):
        for field in fields(value):
            yield from stages(getattr(value, field.name))


def test_a_stage_is_brought_up_in_every_event_and_in_a_snapshot(tmp_path: Path) -> None:
    """Those of a real journal with much taken back: begun, taken back, put back, and the state itself."""
    shutil.copy(HERE / "demos" / "ochre-jacket.sqlite3", tmp_path / NAME)
    held = set()
    with Journal.open(tmp_path, look=True) as journal:
        for row in journal.rows():
            event = from_row(row).event
            found = tuple(stages(QUIET.decode(type(event), encode(event))))
            assert found == tuple(replace(stage, words="quiet") for stage in stages(event))
            held |= {type(event)} if found else set()
    assert held >= {Begun, TakenBack}
    state = json.loads((HERE / "demos" / "ochre-jacket.json").read_text(encoding="utf-8"))
    found = tuple(stages(QUIET.decode(State, state)))
    assert found
    assert {stage.words for stage in found} == {"quiet"}


def test_what_a_later_program_nested_is_refused_in_a_sentence(tmp_path: Path) -> None:
    """This program does not read a stage of tomorrow as one of today, and says what to do."""
    shutil.copy(HERE / "demos" / "ochre-jacket.sqlite3", tmp_path / NAME)
    with Journal.open(tmp_path, look=True) as journal:
        row = next(
            row for row in journal.rows() if isinstance(from_row(row).event, TakenBack) and '"Stage"' in row.text
        )
    event: Event = from_row(row).event
    with pytest.raises(NotUnderstood, match="open it with the version that wrote it"):
        from_row(row._replace(text=json.dumps(QUIET.encode(event))))


def test_an_event_says_its_version_beside_its_body_and_in_it_alike(tmp_path: Path) -> None:
    """A row of which one of them is another is nobody's."""
    shutil.copy(HERE / "demos" / "ochre-jacket.sqlite3", tmp_path / NAME)
    with Journal.open(tmp_path, look=True) as journal:
        row = next(iter(journal.rows()))
    with pytest.raises(NotUnderstood, match="cannot read it"):
        from_row(row._replace(text=json.dumps({**row.body, "v": 2})))
