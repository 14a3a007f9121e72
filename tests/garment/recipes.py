"""Small recipes of our own to work in tests, as the text of a recipe file; each is balanced in every size."""

NECKBAND = """
format = 1
title  = "Small neckband"
sizes  = ["small", "large"]

[number.shoulder]
text    = "stitches of one shoulder"
by_size = [5, 7]

[number.rows]
text    = "rows along one side of the neck"
by_size = [14, 16]
ask     = true

[number.side]
text    = "stitches along one side of the neck"
by_size = [10, 12]

[number.chains]
text    = "chains along the slipped edge"
by_size = [4, 5]

[number.centre]
text    = "held stitches at the centre front"
by_size = [6, 6]

[place.front]
text = "front shoulder"
kind = "holder"
live = "shoulder"

[place.back]
text = "back shoulder"
kind = "needle"
live = "shoulder"

[place.centre]
text = "centre front holder"
kind = "waste yarn"
live = "centre"

[place.spare]
text = "spare pin"
kind = "pin"

[place.neck]
text = "short circular needle"
kind = "needle"

[[step]]
do    = "check"
title = "Look the pieces over"
items = ["No stitch has slipped off."]
same  = ["front", "back"]
how   = "Count from the {start end}."

[[step]]
do       = "arrange"
title    = "Right sides together"
facing   = "wrong"
together = "right"

[[step]]
do    = "join"
title = "Join the shoulder"
front = "front"
back  = "back"
yarn  = "new"
tail  = "shoulder"
mind  = "Both needles must hold the same number."

[[step]]
do       = "arrange"
title    = "Right side out"
facing   = "right"

[[step]]
do    = "count"
title = "Count the held stitches"
place = "centre"

[[step]]
do    = "move"
title = "Move the held stitches to a pin"
from  = "centre"
to    = "spare"

[[step]]
do     = "pick up and knit"
title  = "Pick up the neckband"
onto   = "neck"
tail   = "start of neckband"
repeat = { of = 2 }
expect = { neck = "2 * side + centre + 2 * chains + 2" }

  [[step.section]]
  along    = "left front neck"
  spots    = "rows"
  stitches = "side"

  [[step.section]]
  gap   = "left corner"
  extra = 2

  [[step.section]]
  from = "spare"

  [[step.section]]
  gap = "right corner"

  [[step.section]]
  along    = "right front neck"
  spots    = "rows"
  stitches = "side"
  mirrors  = "left front neck"

  [[step.section]]
  along    = "slipped edge"
  spots    = "chains"
  unit     = "chain"
  stitches = "2 * chains"
  style    = "even"
  marker   = "end of the slipped edge"

[[step]]
do     = "mark"
title  = "Mark the start of the round"
marker = "start of round"

[[step]]
do      = "work"
title   = "Work the rib"
on      = "neck"
rounds  = 3
pattern = "k1, p1 rib"
shaping = [{ round = 2, change = -2, at = "in the corner", method = "k2tog" }]

[[step]]
do     = "unmark"
title  = "Take the marker of the round out"
marker = "start of round"

[[step]]
do     = "unmark"
title  = "Take the other marker out"
marker = "end of the slipped edge"

[[step]]
do    = "bind off"
title = "Bind off the start"
from  = "neck"
count = 3

[[step]]
do    = "pick up"
title = "Lift a loop over the gap"
onto  = "neck"
count = 1

[[step]]
do    = "cut"
title = "Cut the yarn"
tail  = "end of neckband"

[[step]]
do         = "bind off"
title      = "Bind off the rest"
from       = "neck"
yarn       = "new"
start_tail = "start of bind-off"
tail       = "end of bind-off"

[[step]]
do    = "close hole"
title = "Close the left corner"
hole  = "left corner"
tail  = "start of neckband"

[[step]]
do    = "close hole"
title = "Close the right corner"
hole  = "right corner"
tail  = "start of neckband"

[[step]]
do    = "weave in"
title = "Weave in"

[[step]]
do    = "block"
title = "Block"
to    = "60 cm round the neck"

[[step]]
do    = "check"
title = "A knot, for the large size only"
items = ["It holds."]
for   = ["large"]
"""
"""Every kind of step once or more, every sort of section, and one step that is for one size only."""

EDGE = """
format = 1
title  = "One long edge"
sizes  = ["one"]

[gauge]
stitches = 21
rows     = 28
over     = "10 cm"

[place.band]
text = "band needle"
kind = "needle"

[[step]]
do    = "pick up and knit"
title = "Pick up the band"
onto  = "band"
tail  = "start of band"

  [[step.section]]
  along    = "front edge"
  spots    = 64
  stitches = 48

  [[step.section]]
  along    = "neck edge"
  spots    = 20
  stitches = 15
  ends     = "closed"

[[step]]
do     = "work"
title  = "Work the band"
on     = "band"
rows   = 4

[[step]]
do    = "bind off"
title = "Bind off the band"
from  = "band"
tail  = "end of band"

[[step]]
do    = "weave in"
title = "Weave in"
"""
"""A long section with a halfway recount and a gauge, one with closed ends, and a band that can mend a difference."""

UNEQUAL = """
format = 1
title  = "Two needles that do not match"
sizes  = ["one"]

[place.front]
text = "front needle"
kind = "needle"
live = 9

[place.back]
text = "back needle"
kind = "needle"
live = 11

[place.pin]
text = "pin"
kind = "pin"

[[step]]
do      = "join"
title   = "Join some of them"
front   = "front"
back    = "back"
count   = 3
keep    = "front"
yarn    = "new"
unequal = true

[[step]]
do      = "join"
title   = "Join the rest"
front   = "front"
back    = "back"
keep    = "pin"
unequal = true

[[step]]
do    = "bind off"
title = "Fasten the last loop off"
from  = "pin"

[[step]]
do    = "weave in"
title = "Weave in"
"""
"""Joins of unequal needles, one of them partial; the loop that is kept changes the count of the front needle."""

UNCOUNTED = """
format = 2
title  = "Edges nobody counted"
sizes  = ["one"]

[place.band]
text = "band needle"
kind = "needle"

[[step]]
do    = "pick up and knit"
title = "Pick up all round"
onto  = "band"
ratio = "2/3"

  [[step.section]]
  along    = "first edge"
  stitches = 24

  [[step.section]]
  along    = "second edge"
  stitches = 24

  [[step.section]]
  along    = "third edge"
  stitches = 24

  [[step.section]]
  along    = "fourth edge"
  stitches = 24

  [[step.section]]
  along    = "fifth edge"
  stitches = 24

  [[step.section]]
  along    = "sixth edge"
  stitches = 24

  [[step.section]]
  along    = "seventh edge"
  stitches = 24

[[step]]
do    = "work"
title = "Work the band"
on    = "band"
rows  = 2
"""
"""Seven edges in turn of which nobody counted the rows."""
