"""A recipe without mistakes, for tests that make one in it."""

GOOD = """
format = 1
title  = "Crew neck on held shoulders"
about  = "Both shoulders joined on live stitches, then a neckband picked up."
sizes  = ["1", "2", "3"]

[gauge]
stitches = 20
rows     = 28
over     = "10 cm"

[number.shoulder]
text    = "stitches held for one shoulder"
by_size = [24, 26, 28]

[number.front_rows]
text    = "rows along one side of the front neck"
by_size = [30, 32, 32]
ask     = true
least   = 4

[number.side]
text    = "stitches up one side"
by_size = 24

[number.band]
text = "stitches in the neckband"
is   = "16 + 2 * side + 1"

[place.left_front]
text = "left front shoulder"
kind = "holder"
live = "shoulder"

[place.left_back]
text = "left back shoulder"
kind = "holder"
live = "shoulder"

[place.front_holder]
text = "front holder"
kind = "holder"
live = 16

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
title = "Join the left shoulder"
front = "left_front"
back  = "left_back"
tail  = "left shoulder"
say   = "Work from the {start end} [to the far end]."

[[step]]
do      = "pick up and knit"
title   = "Pick up the neckband"
onto    = "neck"
tail    = "start of neckband"
repeat  = { of = 1, plus = 0 }
expect  = { neck = "band" }
recount = "half"

  [[step.section]]
  along    = "left front neck"
  spots    = "front_rows"
  unit     = "row"
  stitches = "side"

  [[step.section]]
  along = "front neck"
  from  = "front_holder"

  [[step.section]]
  gap   = "right neck corner"
  extra = 1

  [[step.section]]
  along    = "right front neck"
  spots    = "front_rows"
  stitches = "side"
  mirrors  = "left front neck"

[[step]]
do    = "work"
title = "Knit the band"
on    = "neck"
rounds = 6
shaping = [{ round = 2, change = -1 }]

[[step]]
do    = "cast off"
title = "Bind off"
from  = "neck"
for   = ["1", "2"]
""".lstrip()


def line(fragment: str, text: str = GOOD) -> int:
    """Return the line (from 1) on which ``fragment`` first stands in ``text``."""
    return text.count("\n", 0, text.index(fragment)) + 1
