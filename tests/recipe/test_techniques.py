"""The techniques that come with the program: what they say, how they are drawn, and which steps they help at."""

import re
import tomllib
from dataclasses import replace

import pytest

from finishing_tui import shipped
from finishing_tui.letters import in_ascii
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along, Gap
from finishing_tui.recipe.kinds.work import Work
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.recipe.reader.techniques import read_technique
from finishing_tui.recipe.techniques import HIGH, WIDE, Technique, helping_at

TECHNIQUES = {name: read_technique(path) for name, path in shipped.techniques().items()}
ALL = tuple(TECHNIQUES.values())
STEPS = [step for path in shipped.recipes().values() for step in read_recipe(path).step]

MOST = {"title": 36, "about": 130, "look": 160, "mend": 250, "mind": 250, "shows": 160}
"""Characters: two or three lines of a screen of 40 columns for a sentence, seven at most."""


def titles(step: Step) -> list[str]:
    """Return the titles of what helps at a step."""
    return [technique.title for technique in helping_at(step, ALL)]


def test_recipes_and_techniques_are_kept_apart() -> None:
    """A technique is no recipe: neither list has anything of the other."""
    assert TECHNIQUES
    assert not set(shipped.recipes()) & set(TECHNIQUES)
    assert {path.parent.name for path in shipped.techniques().values()} == {"techniques"}


def test_every_step_of_every_recipe_has_help() -> None:
    """Whatever a shipped recipe asks for, at least one technique explains it."""
    assert [(step.title, titles(step)) for step in STEPS if not titles(step)] == []


def test_every_kind_has_help_and_every_technique_helps() -> None:
    """No kind is left alone, and no technique is there for nothing: each helps at a step of some shipped recipe."""
    assert {one.do for technique in ALL for one in technique.helps} == set(KINDS)
    assert {title for step in STEPS for title in titles(step)} == {technique.title for technique in ALL}


def test_the_nearest_help_comes_first() -> None:
    """What is said of this very unit or method stands before what is said of its kind."""
    join = Join(title="Join", front="a", back="b")
    assert titles(join)[0] == "Three-needle bind-off"
    assert titles(BindOff(title="Off", from_="a", method="sewn"))[0] == "Sewn bind-off"
    assert titles(BindOff(title="Off", from_="a", method="in rib"))[0] == "Bind off in pattern"
    assert titles(Work(title="Rib", on="a", rounds=2, pattern="k1, p1 rib"))[0] == "The first round of a rib"
    assert titles(BindOff(title="Off", from_="a", method="stitched down"))[0] == "Stitching live loops down"
    assert titles(BindOff(title="Off", from_="a", keep="b"))[0] == "Keeping the last loop"
    side = Along(along="neck", spots=10)
    turned = PickUpAndKnit(title="Pick up", onto="a", section=(side,), facing="wrong")
    assert titles(turned)[0] == "Picking up for what turns over"
    assert "Picking up for what turns over" not in titles(replace(turned, facing="right"))
    face = Along(along="row of the front", unit="stitch", length="18 cm")
    assert titles(replace(turned, section=(face,), facing=""))[0] == "Picking up in the middle of a piece"


def test_the_unit_of_the_edge_decides() -> None:
    """A ridge is never explained as a row (trade.md section 1: the commonest cause of a band half as long)."""
    rows = Along(along="side", spots=10, unit="row")
    step = PickUpAndKnit(title="Pick up", onto="a", section=(rows,))
    ridges = replace(step, section=(replace(rows, unit="ridge"),))
    chains = replace(step, section=(replace(rows, unit="chain"),))
    assert titles(step)[0] == "The right column to pick up in"
    assert titles(ridges)[0] == "Picking up along garter ridges"
    assert titles(chains)[0] == "Picking up along chains"
    assert "The right column to pick up in" not in titles(ridges) + titles(chains)
    assert "Loops lifted beside a gap" not in titles(step)
    assert "Loops lifted beside a gap" in titles(replace(step, section=(rows, Gap(gap="corner"))))


def test_what_a_step_only_mentions_does_not_count() -> None:
    """A bind-off that says in passing that it is not sewn gets no help with sewing."""
    step = BindOff(title="Off", from_="a", say="It is not sewn.", look="As if sewn.")
    assert "Sewn bind-off" not in titles(step)


@pytest.mark.parametrize("name", TECHNIQUES)
def test_texts_are_short_and_plain(name: str) -> None:
    """Each text but the drawing is plain ASCII, fits a small screen, and has one voice: sentences with an end."""
    technique = TECHNIQUES[name]
    text = shipped.techniques()[name].read_text(encoding="utf-8")
    assert text.replace(technique.drawing, "").isascii()
    for key, most in MOST.items():
        assert len(getattr(technique, key)) <= most, key
    assert 3 <= len(technique.moves) <= 8
    for text in (*technique.moves, technique.about, technique.look, technique.mend):
        assert len(text) <= 180 or text == technique.mend
        assert text.endswith((".", "?"))
        assert not re.search(r"[{}<>\\`]", text), text
        assert "  " not in text


@pytest.mark.parametrize("name", [name for name, technique in TECHNIQUES.items() if technique.drawing])
def test_drawings_stand_whole_on_the_narrowest_screen(name: str) -> None:
    """At most 36 columns and 10 lines of signs that plain letters have too, and words for whoever hears it read."""
    technique = TECHNIQUES[name]
    assert len(technique.lines) <= HIGH
    assert max(map(len, technique.lines)) <= WIDE
    assert all(line == line.rstrip() and line.isprintable() for line in technique.lines)
    assert "?" not in in_ascii(technique.drawing)
    assert technique.shows


def test_no_sign_of_a_chart_means_something_else() -> None:
    """No circle, dot, slash, V or X stands for a stitch, but where it means what it means in a chart and says so."""
    of_charts = {
        (name, sign)
        for name, technique in TECHNIQUES.items()
        for word in technique.drawing.split()
        for sign in word
        if set(word) <= set("oO.xXvV/-_|=")
    }
    assert of_charts == {("buttonhole-yarn-over", "O"), ("buttonhole-yarn-over", "/")}


def test_most_are_drawn() -> None:
    """People rather look than read: most techniques have a drawing, and no two the same."""
    drawn = [technique.drawing for technique in ALL if technique.drawing]
    assert len(drawn) > 2 * len(ALL) / 3
    assert len(set(drawn)) == len(drawn)


def test_titles_differ() -> None:
    """A technique is known by its title."""
    assert len({technique.title for technique in ALL}) == len(ALL)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("blocking", ("steam", "iron", "pins", "label", "local rules")),
        ("sewing-on", ("choking", "tug-test", "local rules")),
        ("over-the-head", ("cords", "local rules")),
    ],
)
def test_cautions_stand_where_someone_can_be_hurt(name: str, words: tuple[str, ...]) -> None:
    """Steam, buttons and necks carry their cautions, and defer to local rules (trade.md section 9)."""
    assert all(word in TECHNIQUES[name].mind.lower() for word in words)


def test_the_drawn_sum_of_stitches_to_rows_is_right() -> None:
    """60 stitches to 84 rows is 5 to 7: bars taken 1, 2, 1, 1, 2 (H. Yeoh 2009; trade.md section 5)."""
    bars = TECHNIQUES["mattress-mixed"].lines[-1].split()[1:]
    assert [len(bar) for bar in bars] == [1, 2, 1, 1, 2]


def test_a_file_says_nothing_that_is_not_shown() -> None:
    """Every key of every file is one of the model's."""
    for path in shipped.techniques().values():
        assert set(tomllib.loads(path.read_text(encoding="utf-8"))) <= set(Technique.__dataclass_fields__)
