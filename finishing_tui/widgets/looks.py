"""Our own looks: a dark and a light one, and what stands for the same words in a terminal's own sixteen colours.

State is never told by colour alone; these only make it calm to look at for hours. Every colour that text is written in
has a contrast of at least 4.5 : 1 on its background; a test computes it.
"""

from collections.abc import Mapping
from types import MappingProxyType

from textual.theme import Theme

WORDS = ("count", "act", "quiet", "alarm", "good", "mark")
"""The names of the colours that text may be written in, besides the foreground."""

DARK = Theme(
    name="lamp",
    primary="#e9b872",
    secondary="#8fc7b5",
    accent="#e9b872",
    warning="#f0a58c",
    error="#f0a58c",
    success="#a9cf8a",
    foreground="#ece6da",
    background="#17181c",
    surface="#17181c",
    panel="#22242a",
    dark=True,
    variables={
        "count": "#f3cd8f",
        "act": "#9fd8c5",
        "quiet": "#a8a296",
        "alarm": "#f5ae95",
        "good": "#b3d894",
        "mark": "#d9b8e6",
        "line": "#3a3c44",
    },
)
"""Lamplight: warm on charcoal."""

LIGHT = Theme(
    name="window",
    primary="#7d4a06",
    secondary="#0d5b4d",
    accent="#7d4a06",
    warning="#9b2f17",
    error="#9b2f17",
    success="#35600f",
    foreground="#2a2926",
    background="#faf6ee",
    surface="#faf6ee",
    panel="#efe9dc",
    dark=False,
    variables={
        "count": "#7d4a06",
        "act": "#0d5b4d",
        "quiet": "#655f53",
        "alarm": "#9b2f17",
        "good": "#35600f",
        "mark": "#6d3a80",
        "line": "#c9c1b0",
    },
)
"""By the window: dark on undyed wool."""

LIGHT_OF_FEW = Theme(
    name="window-of-few",
    primary="#000000",
    secondary="#000000",
    accent="#000000",
    warning="#000000",
    error="#000000",
    success="#000000",
    foreground="#000000",
    background="#ffffff",
    surface="#ffffff",
    panel="#ffffff",
    dark=False,
    variables=dict.fromkeys((*WORDS, "line"), "#000000"),
)
"""By the window, where there are sixteen colours: the nearest to a dark one is often a bright one, such as yellow."""

FALLBACK: Mapping[str, str] = MappingProxyType(dict.fromkeys((*WORDS, "line"), "ansi_default"))
"""With any other theme the words are written in the terminal's own foreground."""
