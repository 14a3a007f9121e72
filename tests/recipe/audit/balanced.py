"""Recipes in which everything comes out, made at random: what a careful pattern writer could have written."""

from typing import Any

from hypothesis import strategies as st

Table = dict[str, Any]


def rising(least: int, most: int, sizes: int) -> st.SearchStrategy[list[int]]:
    """Return counts that never fall from one size to the next, nor jump."""
    return st.tuples(st.integers(least, most), st.lists(st.integers(0, 3), min_size=sizes - 1, max_size=sizes - 1)).map(
        lambda drawn: [drawn[0] + sum(drawn[1][:at]) for at in range(sizes)]
    )


@st.composite
def balanced(draw: st.DrawFn) -> Table:
    """Return a recipe as a plain table: shoulders joined, a neck picked up in mirrored sides, a band, all put away."""
    sizes = draw(st.integers(1, 4))
    shoulder = draw(rising(6, 40, sizes))
    # At most 33 held beside two sides of 12, four fewer: less than three times what the size with none held has.
    side = draw(rising(12, 40, sizes))
    held = draw(rising(6, 24, sizes))
    none = draw(st.integers(0, sizes - 1))  # the smallest sizes hold nothing at the front
    held = [0] * none + held[none:]
    extra = draw(st.integers(0, 2))
    total = [2 * one + other + 2 * extra for one, other in zip(side, held, strict=True)]
    fewer = draw(st.integers(0, 4))
    number = {
        "shoulder": {"text": "shoulder", "by_size": shoulder},
        "side": {"text": "side", "by_size": side},
        "held": {"text": "held", "by_size": held},
        "rows": {"text": "rows", "by_size": [-(-4 * count // 3) for count in side]},
        "band": {"text": "band", "by_size": total, "is": f"2 * side + held + {2 * extra}"},
    }
    place = {
        "front_shoulder": {"text": "front shoulder", "kind": "holder", "live": "shoulder"},
        "back_shoulder": {"text": "back shoulder", "kind": "holder", "live": "shoulder"},
        "front": {"text": "front holder", "kind": "holder", "live": "held"},
        "neck": {"text": "neck needle", "kind": "needle"},
    }
    pick = {
        "do": "pick up and knit",
        "title": "Pick up the neck",
        "onto": "neck",
        "tail": "start",
        "expect": {"neck": draw(st.sampled_from(("band", total, f"2 * side + held + {2 * extra}")))},
        "section": [
            {"along": "left", "spots": "rows", "stitches": "side"},
            {"gap": "left corner", "extra": extra},
            {"from": "front"},
            {"gap": "right corner", "extra": extra},
            {"along": "right", "spots": "rows", "stitches": "side", "mirrors": "left"},
        ],
    }
    steps: list[Table] = [
        {"do": "join", "title": "Join the shoulder", "front": "front_shoulder", "back": "back_shoulder", "yarn": "new"},
        pick,
    ]
    work: Table = {"do": "work", "title": "Work the band", "on": "neck", "rounds": draw(st.integers(2, 9))}
    if fewer:
        work["shaping"] = [{"round": 2, "change": -fewer, "at": "evenly"}]
        work["expect"] = {"neck": [count - fewer for count in total]}
    steps += [
        work,
        {"do": "bind off", "title": "Bind off", "from": "neck", "tail": "end"},
        {"do": "close hole", "title": "Close one corner", "hole": "left corner", "tail": "start"},
        {"do": "close hole", "title": "Close the other", "hole": "right corner", "tail": "end"},
        {"do": "weave in", "title": "Weave in"},
    ]
    names = [str(size + 1) for size in range(sizes)]
    return {"format": 1, "title": "neck", "sizes": names, "number": number, "place": place, "step": steps}
