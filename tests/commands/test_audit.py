"""``finishing audit`` as an editor types it."""

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest

from finishing_tui import shipped
from finishing_tui.cli import main
from tests.recipe.audit.writing import NECK

PUBLISHED = Path(__file__).parents[1] / "published" / "recipes"
GOOD, WRONG = PUBLISHED / "round-neck.toml", PUBLISHED / "wrong" / "printed-total.toml"
DOUBTFUL = PUBLISHED / "doubtful" / "deep-collar.toml"


def asked(capsys: pytest.CaptureFixture[str], *words: str | Path) -> tuple[int, str, str]:
    """Return the exit status, what is printed, and what is complained of."""
    status = main(["audit", *map(str, words)])
    said = capsys.readouterr()
    return status, said.out, said.err


def asked_json(capsys: pytest.CaptureFixture[str], *words: str | Path) -> tuple[int, dict[str, Any]]:
    """Return the exit status and the one JSON object."""
    status, out, _ = asked(capsys, *words, "--json")
    found = json.loads(out)
    assert isinstance(found, dict)
    return status, found


def test_a_shipped_recipe_goes_by_its_name(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """As with ``recipes`` and ``start``; a file of that name is meant before it."""
    monkeypatch.chdir(tmp_path)
    assert asked(capsys, "crew-neck")[1].startswith("crew-neck: Crew neck")
    (tmp_path / "crew-neck").write_text(WRONG.read_text())
    assert asked(capsys, "crew-neck")[0] == 1


def test_status_is_0_for_warnings_and_1_for_errors(capsys: pytest.CaptureFixture[str]) -> None:
    """What can be knitted as written is done; what cannot is an error."""
    assert asked(capsys, GOOD)[0] == 0
    assert asked(capsys, DOUBTFUL)[0] == 0
    assert asked(capsys, WRONG)[0] == 1
    assert asked(capsys, GOOD, WRONG, DOUBTFUL)[0] == 1


def test_the_json_has_the_keys_it_is_said_to_have(capsys: pytest.CaptureFixture[str]) -> None:
    """A program gets every size with its ledger and its findings, with line, step and both numbers."""
    status, found = asked_json(capsys, WRONG)
    assert status == 1
    answer = found[str(WRONG)]
    assert answer["ok"] is False
    assert list(answer["sizes"]) == ["1", "2"]
    first = answer["sizes"]["1"]
    assert (first["ledger"][0]["live"], first["ledger"][0]["printed"]) == ({"neck": 98}, {"neck": 97})
    assert first["ledger"][1]["live"] == {}, "the bind-off goes on from the printed count"
    error = next(each for each in first["findings"] if each["level"] == "error")
    assert {"level", "kind", "step", "line", "expected", "found", "message"} <= error.keys()
    assert (error["kind"], error["step"], error["expected"], error["found"]) == ("printed count", 1, 97, 98)
    assert WRONG.read_text().splitlines()[error["line"] - 1].startswith("expect = ")


def test_the_ledger_is_that_of_the_recipe(capsys: pytest.CaptureFixture[str]) -> None:
    """Every step is there with its live stitches, and a step for other sizes only is not."""
    _, found = asked_json(capsys, GOOD)
    sizes = found[str(GOOD)]["sizes"]
    for at, (back, front, band) in enumerate(((20, 14, 52), (20, 14, 52), (22, 16, 56), (24, 18, 60)), 1):
        size = sizes[str(at)]
        assert (size["start"]["back"], size["start"]["front"]) == (back, front)
        assert [row["live"].get("neck", 0) for row in size["ledger"]] == [band, band, 0, 0]
        assert [row["step"] for row in size["ledger"]] == [1, 2, 3, 4]


def test_findings_come_first_and_show_the_sum(capsys: pytest.CaptureFixture[str]) -> None:
    """The text begins with what is wrong, in words with line, step, size, sum and suggestion; then the ledger."""
    _, out, _ = asked(capsys, WRONG)
    words = " ".join(out.split())
    assert words.index("error, line 20: step 1") < words.index("Size 1: live stitches after every step")
    assert "18 + 15 + 18 + 11 + 24 + 12 = 98" in words
    assert "23 from back, not 24" in words


def test_the_sizes_that_are_wrong_come_first_and_alone(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """The headline names them, then what was audited; only their ledgers follow, unless all are asked for.

    Both counts stand where the print differs, with what they are; a recipe without findings shows every size.
    """
    out = asked(capsys, WRONG)[1]
    assert out.splitlines()[1] == "Sizes 1 and 2: 2 errors and 2 warnings. 2 sizes and 3 steps checked."
    assert "98/97: 98 there, 97 printed; the steps below go on from 97." in " ".join(out.split())
    recipe = tmp_path / "recipe.toml"
    recipe.write_text(NECK.replace('expect = { neck = "band" }', "expect = { neck = [98, 104, 110] }"))
    out = asked(capsys, recipe)[1]
    assert out.splitlines()[1] == "Size 3: 1 error. 3 sizes and 9 steps checked."
    assert [line for line in out.splitlines() if "live stitches" in line] == ["Size 3: live stitches after every step"]
    assert asked(capsys, recipe, "--ledger")[1].count("live stitches after every step") == 3
    good = asked(capsys, GOOD)[1]
    assert good.count("live stitches after every step") == 4
    assert good.splitlines()[1].startswith("All counts agree in sizes 1, 2, 3 and 4")


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("columns", [40, 80, 97])
def test_no_line_is_wider_than_the_window(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, columns: int
) -> None:
    """Tables and sentences are broken where the window ends."""
    monkeypatch.setenv("COLUMNS", str(columns))
    for path in (*shipped.recipes().values(), WRONG):
        out, first = asked(capsys, path)[1], f"{path}: {_title(path)}"
        assert max(len(line) for line in out.splitlines() if line != first) <= columns


def _title(path: Path) -> str:
    return str(tomllib.loads(path.read_text(encoding="utf-8"))["title"])


def test_every_live_stitch_of_the_json_stands_in_the_table(capsys: pytest.CaptureFixture[str]) -> None:
    """A row a step: each count of the ledger is a cell of that step's row."""
    path = next(iter(shipped.recipes().values()))
    size = next(iter(asked_json(capsys, path)[1][str(path)]["sizes"]))
    rows = asked_json(capsys, path, "--size", size)[1][str(path)]["sizes"][size]["ledger"]
    lines = asked(capsys, path, "--size", size)[1].splitlines()
    for row in rows:
        cells = [word for line in lines if line[:3].strip("!? ") == str(row["step"]) for word in line.split()]
        for count in row["live"].values():
            assert str(count) in cells


def test_one_size_only(capsys: pytest.CaptureFixture[str]) -> None:
    """With --size only that size is told; a size that is not there is a sentence and status 2."""
    assert list(asked_json(capsys, WRONG, "--size", "2")[1][str(WRONG)]["sizes"]) == ["2"]
    status, out, complaint = asked(capsys, WRONG, "--size", "XL")
    assert (status, out) == (2, "")
    assert "no size 'XL'" in complaint


def test_what_is_implied_is_told_for_all_sizes_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    """A number that is not printed is reported, and it is no failure."""
    status, out, _ = asked(capsys, PUBLISHED / "chunky.toml")
    assert status == 0
    assert "must be 18, 20, 20, 22, 22" in " ".join(out.split())


def test_a_folder_is_all_the_recipes_in_it(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Folders are searched; garments' own files and techniques are no recipes; of several no ledger is shown."""
    (tmp_path / "deep").mkdir()
    (tmp_path / "techniques").mkdir()
    (tmp_path / "techniques" / "bow.toml").write_text("order = 1")
    (tmp_path / "a.toml").write_bytes(GOOD.read_bytes())
    (tmp_path / "deep" / "b.toml").write_bytes(WRONG.read_bytes())
    (tmp_path / "deep" / "garment.toml").write_text("id = 1")
    status, found = asked_json(capsys, tmp_path)
    assert status == 1
    assert [Path(name).name for name in found] == ["a.toml", "b.toml"]
    assert "live stitches after every step" not in asked(capsys, tmp_path)[1]
    assert "live stitches after every step" in asked(capsys, tmp_path, "--ledger")[1]
    (tmp_path / "empty").mkdir()
    assert asked(capsys, tmp_path / "empty")[0] == 2


def test_what_cannot_be_read_is_status_2_and_hides_nothing(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A recipe with mistakes of its own is complained of with file, line and key; the others are audited all the same.

    What is complained of never stands among the answers, so that a pipe gets these alone.
    """
    bad = tmp_path / "bad.toml"
    bad.write_text('format = 1\ntitle = "x"\nsizes = ["1"]\nwrong = 2\nstep = []\n')
    status, out, complaint = asked(capsys, bad)
    assert (status, out) == (2, "")
    assert f"{bad}:4: wrong" in complaint
    status, out, complaint = asked(capsys, bad, WRONG)
    assert status == 2
    assert f"{bad}:4: wrong" in complaint
    assert str(bad) not in out
    assert "the recipe says 97" in out
    status, found = asked_json(capsys, bad, GOOD)
    assert (status, found[str(bad)]["ok"], found[str(GOOD)]["ok"]) == (2, False, True)


@pytest.mark.parametrize("name", shipped.recipes())
def test_every_shipped_recipe_is_clean_in_every_size(capsys: pytest.CaptureFixture[str], name: str) -> None:
    """What comes with the program has neither errors nor warnings."""
    path = shipped.recipe(name)
    status, found = asked_json(capsys, path)
    answer = found[str(path)]
    assert (status, answer["ok"], answer["findings"]) == (0, True, [])
    assert all(finding["level"] == "implied" for size in answer["sizes"].values() for finding in size["findings"])
