"""How much an audit may take, in counts: entries of the ledger, and what is worked out beside them."""

from pathlib import Path

import pytest
from hypothesis import given

from finishing_tui import shipped
from finishing_tui.craft import ledger
from finishing_tui.recipe.audit import Audit, audit, auditing, tally
from finishing_tui.recipe.audit.tally import Tally, TooMuch
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import caps, read_recipe, read_text
from tests.commands.prompt import ask, leave, refused
from tests.strategies import recipes, toml_of

FOR_EACH = 4
"""Entries made at the most for each that is counted: a stage is planned from a ledger, entered, and mended before."""


class Watched:
    """Counts the entries that are really made while something is audited, and keeps what the audit counts itself."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.made = 0
        self.tally = Tally()
        enter = ledger._enter  # noqa: SLF001  (the one place through which every entry goes)

        def entered(one: ledger.Ledger, entry: ledger.Entry) -> ledger.Ledger:
            self.made += 1
            return enter(one, entry)

        monkeypatch.setattr(ledger, "_enter", entered)
        monkeypatch.setattr(auditing, "Tally", lambda: self.tally)

    def audit(self, recipe: Recipe) -> Audit | None:
        """Return the audit of ``recipe``, or nothing where it is too much."""
        self.made, self.tally = 0, Tally()
        try:
            return audit(recipe)
        except TooMuch:
            return None


def table(header: str, **keys: object) -> str:
    """Return a table of a recipe; values as they stand in a file."""
    return f"{header}\n" + "".join(f"{key.rstrip('_')} = {value}\n" for key, value in keys.items())


def head(sizes: int = caps.MOST_SIZES, places: int = 2, unprinted: int = 0) -> str:
    """Return how a recipe begins."""
    named = ", ".join(f'"{size}"' for size in range(sizes))
    numbers = "".join(table(f"[number.u{n}]", text='"u"') for n in range(unprinted))
    held = "".join(table(f"[place.p{n}]", text='"p"', kind='"pin"', live=20) for n in range(places))
    return f'format = 1\ntitle = "x"\nsizes = [{named}]\n{numbers}{held}'


def step(do: str, **keys: object) -> str:
    """Return a step."""
    return table("[[step]]", do=f'"{do}"', title='"x"', **keys)


EXPECT = "{" + ", ".join(f"p{n} = {21 + n}" for n in range(40)) + "}"
SECTIONS = "".join(table("[[step.section]]", along=f'"e{n}"', spots=50, stitches=31) for n in range(100))
HARD = {
    "steps in sizes": head() + step("cast on", onto='"p0"', count=3) * caps.MOST_STEPS,
    "numbers not printed": head(unprinted=caps.MOST_UNPRINTED)
    + "".join(step("move", from_='"p0"', to='"p1"', count=f'"u{n % 10}"') for n in range(caps.MOST_STEPS)),
    "prints that are wrong": head(places=caps.MOST_PLACES) + step("cast on", onto='"p0"', count=3, expect=EXPECT) * 350,
    "both of these": head(places=caps.MOST_PLACES, unprinted=caps.MOST_UNPRINTED)
    + step("cast on", onto='"p0"', count='"u0 + u9"', expect=EXPECT) * 330,
    "sections": head() + (step("pick up and knit", onto='"p0"', yarn='"same"') + SECTIONS) * 20,
    "shaped rounds": head() + step("work", on='"p0"', rounds=2000, shaping="[{change = 1, every = 1}]") * 400,
    "what is not there": head(unprinted=1) + step("move", from_='"p0"', to='"p1"', count=100) * caps.MOST_STEPS,
    "what cannot be": head() + step("shape", on='"p0"', to=100_000) * caps.MOST_STEPS,
}
"""Recipes inside every cap of the reader, each with as much as there may be of something that grows."""


@pytest.mark.turns(of=2)
@pytest.mark.parametrize("most", [tally.MOST // 10, pytest.param(tally.MOST, marks=pytest.mark.long)])
@pytest.mark.parametrize("hard", HARD)
def test_the_hardest_recipes_come_to_an_end_by_counts(hard: str, most: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever the recipe, the audit ends with an answer or a sentence, after a bounded number of entries."""
    monkeypatch.setattr(tally, "MOST", most)
    recipe = read_text(HARD[hard], "x.toml")
    watched = Watched(monkeypatch)
    found = watched.audit(recipe)
    most_at_once = 20_000  # what one stage may add before it is looked at
    assert watched.tally.entries <= tally.MOST + most_at_once
    assert watched.made <= FOR_EACH * (tally.MOST + most_at_once)
    assert found is not None or watched.tally.entries > tally.MOST


def test_as_many_steps_and_sizes_as_there_may_be_are_audited(monkeypatch: pytest.MonkeyPatch) -> None:
    """500 steps in 100 sizes have an answer: what is refused is what is done over and over, not what is long."""
    watched = Watched(monkeypatch)
    found = watched.audit(read_text(HARD["steps in sizes"], "x.toml"))
    assert found is not None
    assert [len(size.rows) for size in found.sizes] == [caps.MOST_STEPS] * caps.MOST_SIZES
    assert watched.made >= caps.MOST_SIZES * (caps.MOST_STEPS + 2)  # an entry a step, and what the two places hold


@given(recipes())
def test_whatever_is_entered_is_counted(recipe: dict[str, object]) -> None:
    """No entry is made that the count does not answer for, however wrong the recipe is."""
    with pytest.MonkeyPatch.context() as monkeypatch:
        watched = Watched(monkeypatch)
        watched.audit(read_text(toml_of(recipe), "x.toml"))
        assert watched.made <= FOR_EACH * watched.tally.entries


@pytest.mark.parametrize("name", shipped.recipes())
def test_shipped_recipes_are_far_inside(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each takes a twentieth of what an audit may, at most, in all its sizes."""
    watched = Watched(monkeypatch)
    assert watched.audit(read_recipe(shipped.recipe(name))) is not None
    assert 20 * watched.tally.entries <= tally.MOST


@pytest.mark.parametrize("words", [("audit",), ("start", "--size", "7")])
def test_too_much_is_a_sentence(
    words: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Status 2, and nothing on the shelf; another recipe named beside it is audited all the same."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    monkeypatch.setattr(tally, "MOST", 5_000)
    path = tmp_path / "hard.toml"
    path.write_text(HARD["numbers not printed"])
    said = refused(capsys, words[0], str(path), *words[1:])
    assert "this recipe is too much to audit: it takes more than 5,000 entries in the ledger" in said
    assert not (tmp_path / "shelf").exists()
    easy = tmp_path / "easy.toml"
    easy.write_text(head(sizes=1) + step("bind off", from_='"p0"', tail='"t"'))
    if words[0] == "audit":
        assert leave("audit", str(path), str(easy)) == 2
        assert f"{easy}: x" in capsys.readouterr().out


def test_every_audit_has_an_allowance_of_its_own(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Many recipes after one another are not too much."""
    names = [str(path) for path in shipped.recipes().values()]
    watched = Watched(monkeypatch)
    for name in names:
        watched.audit(read_recipe(Path(name)))
    monkeypatch.undo()
    monkeypatch.setattr(tally, "MOST", 50_000)
    assert "All counts agree" in ask(capsys, "audit", *names)
