"""Stitches on needles, as shapes: what is longer looks longer."""

from hypothesis import given
from hypothesis import strategies as st
from textual.app import App, ComposeResult

from finishing_tui.widgets.loops import DrawnNeedle, Loops


class _Two(App[None]):
    def compose(self) -> ComposeResult:
        yield Loops()


async def test_the_longer_needle_is_never_drawn_shorter() -> None:
    """However many there are on both, and however wide it is: the tips stand opposite, the longer one sticks out."""
    app = _Two()
    async with app.run_test():
        loops = app.query_one(Loops)

        @given(st.integers(1, 120), st.integers(1, 120), st.integers(30, 160))
        def drawn(one: int, other: int, width: int) -> None:
            loops.show((DrawnNeedle("back", 0, one), DrawnNeedle("front", 0, other)))
            back, front = (row.plain for row in loops.rows(width, None) if "▷" in row.plain)
            assert back.rindex("▷") == front.rindex("▷")
            begins, ends = back.index("∩"), front.index("∩")
            assert begins >= ends if one <= other else begins <= ends

        drawn()
