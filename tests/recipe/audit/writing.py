"""Small recipes for the tests of the audit, written as a pattern writer would, and what is found in them."""

from finishing_tui.recipe.audit import Finding, audit
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_text

NECK = """
format = 1
title  = "neckband"
sizes  = ["1", "2", "3"]

[gauge]
stitches = 20
rows     = 28

[number.shoulder]
text    = "stitches of a shoulder"
by_size = [24, 26, 28]

[number.held]
text    = "stitches held at the front"
by_size = [16, 16, 18]

[number.back]
text    = "stitches of the back neck"
by_size = [38, 40, 42]

[number.rows]
text    = "rows along one side"
by_size = [30, 32, 34]

[number.side]
text    = "stitches along one side"
by_size = [22, 24, 24]

[number.band]
text    = "stitches of the band"
by_size = [98, 104, 108]
is      = "held + back + 2 * side"

[place.left_front]
text = "left front holder"
kind = "holder"
live = "shoulder"

[place.left_back]
text = "left back holder"
kind = "holder"
live = "shoulder"

[place.front]
text = "front holder"
kind = "holder"
live = "held"

[place.back]
text = "back holder"
kind = "holder"
live = "back"

[place.neck]
text = "neck needle"
kind = "needle"

[[step]]
do       = "arrange"
title    = "Right sides together"
facing   = "wrong"
together = "right"

[[step]]
do    = "join"
title = "Join the shoulder"
front = "left_front"
back  = "left_back"
tail  = "shoulder"
yarn  = "new"

[[step]]
do     = "arrange"
title  = "Right side out"
facing = "right"

[[step]]
do     = "pick up and knit"
title  = "Pick up the band"
onto   = "neck"
tail   = "start of band"
repeat = { of = 2 }
expect = { neck = "band" }
[[step.section]]
along    = "left front neck"
spots    = "rows"
stitches = "side"
[[step.section]]
from = "front"
[[step.section]]
gap = "corner"
[[step.section]]
along    = "right front neck"
spots    = "rows"
stitches = "side"
mirrors  = "left front neck"
marker   = "side seam"
[[step.section]]
from = "back"

[[step]]
do      = "work"
title   = "Work the rib"
on      = "neck"
rounds  = 7
pattern = "k1, p1 rib"

[[step]]
do     = "unmark"
title  = "Marker out"
marker = "side seam"

[[step]]
do    = "bind off"
title = "Bind off"
from  = "neck"
tail  = "end of band"

[[step]]
do    = "close hole"
title = "Close the corner"
hole  = "corner"
tail  = "shoulder"

[[step]]
do    = "weave in"
title = "Weave in"
"""
"""A neckband that comes out in every size: a join, a pick-up with a mirror, a gap and a marker, all of it closed."""


def recipe_of(text: str) -> Recipe:
    """Return the recipe in ``text``."""
    return read_text(text, "test.toml")


def changed(*changes: tuple[str, str], text: str = NECK) -> Recipe:
    """Return the neckband with pieces of its text replaced; each must be there."""
    for before, after in changes:
        assert before in text, before
        text = text.replace(before, after, 1)
    return recipe_of(text)


def told(recipe: Recipe) -> list[Finding]:
    """Return everything found in every size."""
    return list(audit(recipe).findings)


def kinds(recipe: Recipe) -> list[tuple[str, str, str]]:
    """Return (level, kind, size) of everything found."""
    return [(finding.level, finding.kind, finding.size) for finding in told(recipe)]
