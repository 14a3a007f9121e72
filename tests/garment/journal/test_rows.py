"""What is written comes back the same, and what would not is refused."""

import json
import tempfile
from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.garment.journal import Journal, NewEvent, NotSaved, Unwritable
from tests.examples import share
from tests.garment.journal.making import NOON, bodies, entries, press, read, values


def typed(value: Any) -> Any:
    """Return ``value`` with every leaf beside its type, since 1, 1.0 and True are equal."""
    if isinstance(value, dict):
        return {key: typed(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [typed(inner) for inner in value]
    return type(value), value


@settings(max_examples=share(40))
@given(groups=st.lists(st.lists(entries, min_size=1, max_size=3), max_size=5))
def test_every_entry_comes_back_the_same(groups: list[list[NewEvent]]) -> None:
    """Any JSON bodies, large numbers and every script included, come back equal and of the same types, in order."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        with Journal.create(folder) as journal:
            added = [journal.append(group, at=NOON, sitting=3, after_ms=9) for group in groups]
            waiting = tuple(journal.rows())
        back = read(folder)
    flat = tuple(one for rows in added for one in rows)
    assert back == flat == waiting
    written = [one for group in groups for one in group]
    assert [(one.kind, one.version, typed(one.body)) for one in back] == [
        (one.kind, one.version, typed(one.body)) for one in written
    ]
    assert [one.seq for one in back] == list(range(1, len(written) + 1))
    assert [one.group for one in back] == [rows[0].seq for rows in added for _ in rows]


@settings(max_examples=share(40))
@given(body=bodies)
def test_the_text_of_a_body_is_canonical(body: dict[str, Any]) -> None:
    """Equal bodies have one text, whatever order their keys came in; it is plain JSON without spaces."""
    with tempfile.TemporaryDirectory() as name, Journal.create(Path(name)) as journal:
        turned = dict(reversed(body.items()))
        pair = [NewEvent("a", 1, body), NewEvent("a", 1, turned)]
        one, other = journal.append(pair, at=NOON, sitting=1, after_ms=0)
        assert one.text == other.text == json.dumps(body, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


@pytest.mark.parametrize(
    "body",
    [
        {"x": float("nan")},
        {"x": [float("inf")]},
        {"x": "\ud800"},
        {"\udfff": 1},
        {"x": {1: 2}},
        {"x": b"bytes"},
        {"x": {1, 2}},
        {"x": 10**5000},
    ],
)
def test_what_would_not_come_back_is_refused(tmp_path: Path, body: Any) -> None:
    """NaN, half characters, keys and values that JSON would change: refused, and nothing of the group is added."""
    with Journal.create(tmp_path) as journal:
        with pytest.raises(Unwritable):
            journal.append([press(1), NewEvent("a", 1, body)], at=NOON, sitting=1, after_ms=0)
        assert journal.last_seq == 0
        journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
    assert [one.seq for one in read(tmp_path)] == [1]


def test_endless_nesting_is_refused(tmp_path: Path) -> None:
    """A body nested too deeply to be read back is refused, not a crash."""
    deep: Any = []
    for _ in range(100_000):
        deep = [deep]
    with Journal.create(tmp_path) as journal, pytest.raises(Unwritable):
        journal.append([NewEvent("a", 1, {"x": deep})], at=NOON, sitting=1, after_ms=0)


@settings(max_examples=share(20))
@given(value=values)
def test_a_row_does_not_change_with_what_it_was_made_of(value: Any) -> None:
    """Changing the caller's list after it was added changes neither the row nor what is saved."""
    with tempfile.TemporaryDirectory() as name, Journal.create(Path(name)) as journal:
        mine: list[Any] = [value]
        (one,) = journal.append([NewEvent("a", 1, {"x": mine})], at=NOON, sitting=1, after_ms=0)
        mine.append("more")
        assert one.body == {"x": [value]}


def test_times_are_universal_to_the_millisecond(tmp_path: Path) -> None:
    """A time is kept in universal time, cut to the millisecond; one without a zone is a mistake of the program."""
    with Journal.create(tmp_path) as journal:
        here = NOON.astimezone(timezone(timedelta(hours=5, minutes=30)))
        (one,) = journal.append([press(1)], at=here, sitting=1, after_ms=0)
        assert one.at == "2024-05-01T12:00:00.123Z"
        assert datetime.fromisoformat(one.at) == NOON.replace(microsecond=123_000)
        with pytest.raises(ValueError, match="zone"):
            journal.append([press(2)], at=NOON.replace(tzinfo=None), sitting=1, after_ms=0)


def test_groups_are_found_waiting_saved_and_after_reopening(tmp_path: Path) -> None:
    """A group is all rows of one command, whether it waits, is on the disk, or was written in an earlier sitting."""
    with Journal.create(tmp_path) as journal:
        groups = [journal.append([press(1)] * size, at=NOON, sitting=1, after_ms=0) for size in (1, 3, 2)]
        assert [journal.group(rows[0].seq) for rows in groups] == groups
        assert journal.flush(30)
        assert [journal.group(rows[0].seq) for rows in groups] == groups
        assert journal.group(3) == journal.group(0) == journal.group(99) == ()
    with Journal.open(tmp_path) as journal:
        assert [journal.group(rows[0].seq) for rows in groups] == groups
        assert tuple(journal.rows(after=4)) == groups[2]
        assert tuple(journal.rows(after=6)) == tuple(journal.rows(after=60)) == ()


def test_an_onlooker_follows_and_cannot_add(tmp_path: Path) -> None:
    """Who looks sees rows as they are saved, from where it left off, and is refused any change in one sentence."""
    with Journal.create(tmp_path) as journal, Journal.open(tmp_path, look=True) as onlooker:
        assert onlooker.last_seq == 0
        first = journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
        assert journal.flush(30)
        assert tuple(onlooker.rows()) == first
        second = journal.append([press(2)], at=NOON, sitting=1, after_ms=1)
        assert journal.flush(30)
        assert tuple(onlooker.rows(after=1)) == second
        assert onlooker.last_seq == 2
        with pytest.raises(NotSaved):
            onlooker.append([press(3)], at=NOON, sitting=1, after_ms=2)
