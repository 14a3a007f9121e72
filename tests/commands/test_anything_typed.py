"""Whatever is typed after the shaping commands is answered or refused; never a traceback, never a hang."""

import contextlib
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.commands.prompt import leave
from tests.examples import share

OPTIONS = (
    *("--flat", "--round", "--method", "--margin", "--double", "--rows", "--stitches-to-rows", "--holes", "--width"),
    *("--first", "--last", "--have", "--ball", "--metres", "--between", "--seam", "--middle", "--printed", "--rounds"),
    *("--every", "--corners", "--outside", "--steps", "--each", "--graft", "--gauge", "--size", "--wearer", "--json"),
)
WORDS = st.lists(
    st.one_of(
        st.integers(-3, 120).map(str),
        st.sampled_from(["100000", "99999", "1/2", "0", "60 cm", "4 in", "k2p2", "k2tog", "woman", "half", *OPTIONS]),
        st.text(max_size=8),
    ),
    max_size=9,
)


@pytest.mark.parametrize(
    "command", ["evenly", "pair", "buttonholes", "yarn", "rib", "corner", "shoulder", "gap", "head"]
)
@settings(max_examples=share(60))
@given(words=WORDS)
def test_answered_or_refused(command: str, words: list[str]) -> None:
    """Status 0 with an answer and no complaint, or 2 with one line on standard error and nothing else."""
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        status = leave(command, *words)
    if status == 0:
        assert out.getvalue()
        assert err.getvalue() == ""
    else:
        assert status == 2
        assert out.getvalue() == ""
        assert err.getvalue().endswith("\n")
        assert "Traceback" not in err.getvalue()
