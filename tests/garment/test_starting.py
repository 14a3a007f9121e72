"""A garment about to be started: its file says what was said, whatever was typed, and it is whole on the shelf."""

import unicodedata
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from finishing_tui import shipped
from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.gauge import read_gauge
from finishing_tui.files import NotWritten
from finishing_tui.garment.file import plan_of, read_garment
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.shelf import folders_on, put_on_shelf
from finishing_tui.garment.starting import (
    LONGEST_LINE,
    LONGEST_TITLE,
    Draft,
    asked_numbers,
    file_text,
    gauge_as_typed,
    one_line,
    same_gauge,
    source_of,
    whole_gauge,
    with_number,
)
from finishing_tui.recipe.model import BandGauge, Recipe
from finishing_tui.recipe.numbers import numbers_for
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.recipe.reader.text import unprintable
from tests.examples import share

BY_HAND = """format = 1
id = "the same"
title = "{recipe.title}"
recipe = "{name}"
size = "{size}"
"""

anything = st.text(st.characters(), max_size=60)


@cache
def _recipe(name: str) -> Recipe:
    return read_recipe(shipped.recipes()[name])


def _draft(name: str = "crew-neck", size: str = "M") -> Draft:
    return Draft(recipe=_recipe(name), source=name, size=size)


def _plan(folder: Path, text: str) -> Plan:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "garment.toml").write_text(text, encoding="utf-8")
    return plan_of(folder)


@pytest.mark.parametrize("name", shipped.recipes())
def test_printed_numbers_are_no_numbers_of_ones_own(name: str, tmp_path: Path) -> None:
    """In the first size and the last, numbers answered as printed make the plan of a file by hand without them."""
    recipe = _recipe(name)
    for size in (recipe.sizes[0], recipe.sizes[-1]):
        draft, printed = _draft(name, size), numbers_for(recipe, recipe.sizes.index(size))
        for number in asked_numbers(recipe):
            draft = replace(draft, own=with_number(recipe, size, draft.own, number, printed[number]))
        assert not draft.own
        made = _plan(tmp_path / "made", file_text(draft, "the same"))
        by_hand = _plan(tmp_path / "hand", BY_HAND.format(recipe=recipe, name=name, size=size))
        assert replace(made, file_text="") == replace(by_hand, file_text="")


@settings(max_examples=share(60))
@given(title=anything, yarn=anything, rows=st.integers(12, 80), left=st.booleans(), own_gauge=st.booleans())
def test_whatever_is_typed_is_read_back(
    tmp_path_factory: pytest.TempPathFactory, *, title: str, yarn: str, rows: int, left: bool, own_gauge: bool
) -> None:
    """Any text, quotes and controls and overrides among it, makes a file from which just that line is read again."""
    draft = replace(
        _draft(),
        title=one_line(title, LONGEST_TITLE),
        yarn=one_line(yarn, LONGEST_LINE),
        own=with_number(_recipe("crew-neck"), "M", {}, "front_rows", rows),
        hand="left" if left else "right",
        body=BandGauge(stitches=45, rows=61, over="8 in") if own_gauge else None,
    )
    folder = tmp_path_factory.getbasetemp() / "read-back"
    folder.mkdir(exist_ok=True)
    (folder / "garment.toml").write_text(file_text(draft, "the same"), encoding="utf-8")
    read, _ = read_garment(folder)
    assert (read.title, read.yarn, read.hand) == (draft.called, draft.yarn, draft.hand)
    assert dict(read.number) == ({} if rows == 32 else {"front_rows": rows})  # size M prints 32
    assert read.gauge == draft.gauge


@given(anything)
@example("0\x85\x08\r0")  # what goes between two spaces leaves one
def test_a_line_keeps_every_sign_that_may_stand_in_it(text: str) -> None:
    """What can be shown stays, in order and composed (NFC); what steers a terminal goes; nothing stands at its ends."""
    line = one_line(text, 60)
    assert unprintable(line, "") is None
    assert line == line.strip()
    assert one_line(line, 60) == line
    if text.isprintable() and not any(map(str.isspace, text)):
        assert line == unicodedata.normalize("NFC", text)[:60]


@pytest.mark.parametrize(
    "title", ['"', "\\", '"""', "'''", "# no comment", "[number]", 'a"\nsize = "S', "[red]x[/]", "漢字 e\u0301 " * 4]
)
def test_hostile_names_stay_names(title: str, tmp_path: Path) -> None:
    """Quotes, backslashes, tables and markup in a name change nothing else in the file."""
    draft = replace(_draft(), title=one_line(title, LONGEST_TITLE))
    _plan(tmp_path, file_text(draft, "the same"))
    read, _ = read_garment(tmp_path)
    assert (read.title, read.size, dict(read.number)) == (draft.title, "M", {})


@given(st.fractions(1, 60, max_denominator=3), st.fractions(1, 80, max_denominator=3), st.sampled_from(["cm", "in"]))
def test_a_gauge_of_parts_is_the_same_gauge_in_whole_stitches(stitches: Fraction, rows: Fraction, unit: str) -> None:
    """Half a stitch over 10 cm is one over 20 cm: exactly as wide and as tall, read back from its own words."""
    typed = f"{_mixed(stitches)} x {_mixed(rows)} over 3 1/2 {unit}"
    gauge, said = whole_gauge(typed), read_gauge(typed)
    again = read_gauge(gauge_as_typed(gauge))
    assert (again.stitches_per_cm, again.rows_per_cm) == (said.stitches_per_cm, said.rows_per_cm)
    assert same_gauge(gauge, whole_gauge(gauge_as_typed(gauge)))


def _mixed(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    return f"{whole} {rest}" if rest else str(whole)


def test_a_gauge_must_say_both_and_fit() -> None:
    """A gauge without rows, or in parts too small to be one, is refused with what would be right."""
    with pytest.raises(Impossible, match="count the rows too"):
        whole_gauge("20 stitches over 10 cm")
    with pytest.raises(Impossible, match="longer piece"):
        whole_gauge("20.01 x 28 over 10 cm")


def test_a_band_may_be_as_the_body_or_as_the_recipe() -> None:
    """Said of the body, a gauge goes for the band too, unless the recipe or she says another."""
    body = BandGauge(stitches=22, rows=30, over="4 in")
    plain = replace(_draft(), body=body)
    assert plain.gauge is not None
    assert plain.gauge.band is None
    other = replace(plain, band=BandGauge(stitches=24, rows=32)).gauge
    assert other is not None
    assert other.band == BandGauge(stitches=24, rows=32)
    banded = replace(_draft(), recipe=replace(_recipe("crew-neck"), gauge=other))
    assert banded.gauge is None
    as_body = replace(banded, band="body").gauge
    assert as_body is not None
    assert (as_body.stitches, as_body.band) == (22, None)


def test_her_numbers_are_in_range_and_known() -> None:
    """A number out of its range, or of another recipe, is refused with what would be right, and nothing changes."""
    recipe = _recipe("crew-neck")
    with pytest.raises(Impossible, match="use 12 to 80"):
        with_number(recipe, "M", {}, "front_rows", 81)
    with pytest.raises(Impossible, match="front_rows"):
        with_number(recipe, "M", {}, "sleeve", 8)
    own = with_number(recipe, "M", {}, "front_rows", 34)
    assert dict(own) == {"front_rows": 34}
    assert not with_number(recipe, "M", own, "front_rows", None)


def test_a_recipe_is_named_or_a_path(tmp_path: Path) -> None:
    """A shipped name stays a name, a file is a whole path, and anything else is refused with the names there are."""
    known = shipped.recipes()
    assert source_of("crew-neck", known) == ("crew-neck", known["crew-neck"])
    own = tmp_path / "own.toml"
    assert source_of(str(own), known) == (str(own), own)
    for nowhere in ("~nobody-of-this-name/own.toml", "a" * 5000, "a\0b"):
        with pytest.raises(FinishingError):
            source_of(nowhere, known)
    with pytest.raises(Impossible, match="did you mean"):
        source_of("crewneck", known)
    with pytest.raises(Impossible, match="cannot be shown"):
        file_text(replace(_draft(), source="/a\u202e/own.toml"), "the same")


def test_it_is_put_on_the_shelf_whole(tmp_path: Path) -> None:
    """A folder of its own name, private, twice over under two names, and nothing beside them."""
    shelf = tmp_path / "shelf"
    text = file_text(replace(_draft(), title="Grey: crew!"), "the same")
    first, second = (put_on_shelf(shelf, "Grey: crew!", text) for _ in range(2))
    assert (first.name, second.name) == ("grey-crew", "grey-crew-2")
    assert sorted(path.name for path in shelf.iterdir()) == ["grey-crew", "grey-crew-2"]
    assert all(path.stat().st_mode & 0o077 == 0 for path in (first, first / "garment.toml"))
    assert plan_of(first).title == "Grey: crew!"


@pytest.mark.parametrize("called", ["漢字", "", "..", "a" * 300, "/etc/passwd"])
def test_any_name_makes_a_folder_on_the_shelf(called: str, tmp_path: Path) -> None:
    """Whatever it is called, its folder lies on the shelf and nowhere else."""
    folder = put_on_shelf(tmp_path, called, file_text(_draft(), "the same"))
    assert folder.parent == tmp_path
    assert folders_on(tmp_path) == (folder,)


def test_what_could_not_be_opened_is_not_put_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A text that is no garment, a full disk, a stop in the middle: said, and nothing half-made is left."""
    with pytest.raises(FinishingError, match="size"):
        put_on_shelf(tmp_path, "x", file_text(_draft(), "the same").replace('"M"', '"enormous"'))
    assert list(tmp_path.iterdir()) == []

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("finishing_tui.garment.shelf.write_whole", full)
    with pytest.raises(NotWritten, match="no space left"):
        put_on_shelf(tmp_path, "x", "")
    monkeypatch.setattr("finishing_tui.garment.shelf.write_whole", stopped)
    with pytest.raises(KeyboardInterrupt):
        put_on_shelf(tmp_path, "x", "")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_was_cut_off_is_no_garment(tmp_path: Path) -> None:
    """What a killed process left under its waiting name does not stand on the shelf."""
    waiting = tmp_path / ".grey-crew.0123"
    waiting.mkdir()
    (waiting / "garment.toml").write_text(file_text(_draft(), "the same"))
    assert folders_on(tmp_path) == ()
