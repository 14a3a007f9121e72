"""The names of keys: which there are, how a settings file may write them, and how they are read on a screen.

Only keys that a terminal can tell of are in it. The names are those that the terminal program knows keys by; a test
compares them with what it makes of the bytes a terminal sends. Nothing here knows what any key does.
"""

from collections.abc import Mapping
from types import MappingProxyType

SIGNS: Mapping[str, str] = MappingProxyType(
    {
        "!": "exclamation_mark",
        '"': "quotation_mark",
        "#": "number_sign",
        "$": "dollar_sign",
        "%": "percent_sign",
        "&": "ampersand",
        "'": "apostrophe",
        "(": "left_parenthesis",
        ")": "right_parenthesis",
        "*": "asterisk",
        "+": "plus",
        ",": "comma",
        "-": "minus",
        ".": "full_stop",
        "/": "slash",
        ":": "colon",
        ";": "semicolon",
        "<": "less_than_sign",
        "=": "equals_sign",
        ">": "greater_than_sign",
        "?": "question_mark",
        "@": "at",
        "[": "left_square_bracket",
        "\\": "backslash",
        "]": "right_square_bracket",
        "^": "circumflex_accent",
        "_": "underscore",
        "`": "grave_accent",
        "{": "left_curly_bracket",
        "|": "vertical_line",
        "}": "right_curly_bracket",
        "~": "tilde",
    }
)
"""The signs of a keyboard, and what the keys that make them are called."""

_OF_NAME = {name: sign for sign, name in SIGNS.items()}

ARROWS = ("up", "down", "left", "right")
MOVING = (*ARROWS, "home", "end", "pageup", "pagedown")
EDITING = ("insert", "delete", "backspace")
FUNCTION = tuple(f"f{number}" for number in range(1, 25))
"""From f13 on they are on few keyboards: pedals and remotes are often made to send them."""
MEDIA = (
    "media_play",
    "media_pause",
    "media_play_pause",
    "media_stop",
    "media_fast_forward",
    "media_rewind",
    "media_track_next",
    "media_track_previous",
    "raise_volume",
    "lower_volume",
    "mute_volume",
)
"""The keys of remotes and headphones; only some terminals tell of them."""
OTHERS = ("menu", "pause", "print_screen")

NAMED: tuple[str, ...] = ("space", "enter", "escape", "tab", *MOVING, *EDITING, *FUNCTION, *MEDIA, *OTHERS)
"""The keys that have a name and make no sign."""

LEAVING = frozenset({"ctrl+c", "ctrl+q"})
"""The keys that put everything down and leave, always."""

_SAME = MappingProxyType({"ctrl+i": "tab", "ctrl+m": "enter", "ctrl+h": "backspace"})
"""What a terminal cannot tell from another key."""

TOLD_AS: Mapping[str, str] = MappingProxyType(
    {"\x19": "f13", "\x1a": "f14", "\x1c": "f15", "\x1d": "f16", "\x1f": "f17"}
)
"""What the terminal program makes of these keys as older terminals send them (ESC [ 2 5 ~ ...), and what they are."""

_MODIFIERS = ("alt", "ctrl", "shift")
"""In the order they stand in a name."""

_WITH_SHIFT = frozenset((*MOVING, "tab", "insert", "delete", *FUNCTION[:12]))
_WITH_OTHERS = frozenset((*MOVING, "insert", "delete", *FUNCTION[:12]))


class NoKey(ValueError):
    """What was written is the name of no key; the text says why, and what would be right, where that is known."""


def key_named(written: str) -> str:
    """Return the key that ``written`` names, as the terminal program calls it: "?" is "question_mark".

    Raises ``NoKey`` for what is no key, and for a key that can never be given to anything: a digit, and ctrl+c and
    ctrl+q, which leave.
    """
    key = _canonical(written)
    if key in LEAVING:
        raise NoKey(f"{key} always puts everything down and leaves; give another key")
    if len(key) == 1 and key.isdecimal():
        raise NoKey("digits are for counts and choices; give another key")
    if key in _SAME:
        raise NoKey(f"a terminal cannot tell it from {_SAME[key]}; write {_SAME[key]}")
    if not is_key(key):
        raise NoKey("no key has this name")
    return key


def is_key(key: str) -> bool:
    """Return whether ``key`` is the name of a key that can be given to something."""
    *modifiers, last = key.split("+")
    if not modifiers:
        return last in NAMED or last in _OF_NAME or (len(last) == 1 and last.isalpha())
    if modifiers != sorted(set(modifiers)) or not set(modifiers) <= set(_MODIFIERS) or key in LEAVING or key in _SAME:
        return False
    if len(last) == 1:
        return last in "abcdefghijklmnopqrstuvwxyz" and modifiers in (["alt"], ["ctrl"])
    return last in (_WITH_SHIFT if modifiers == ["shift"] else _WITH_OTHERS)


def can_be_typed(key: str) -> bool:
    """Return whether ``key`` writes a sign, or moves and takes off signs, where a line of text is written."""
    *modifiers, last = key.split("+")
    if modifiers and modifiers != ["alt"]:
        return True  # some of these move or cut; none of them is worth telling apart
    return (
        last in _OF_NAME
        or last in {"space", "left", "right", "home", "end", "delete", "backspace"}
        or (len(last) == 1 and not modifiers)
    )


def shown(key: str) -> str:
    """Return ``key`` as people read it, and as a settings file may write it: "?", "space", "ctrl+k"."""
    return _OF_NAME.get(key, key)


def written(key: str) -> str:
    """Return ``key`` as it is best written in a settings file, in its quotes."""
    sign = shown(key)
    return f"'{sign}'" if sign in {'"', "\\"} else f'"{sign}"'


def names() -> tuple[str, ...]:
    """Return the names that a wrong one is compared with."""
    letters = "abcdefghijklmnopqrstuvwxyz"
    held = [f"{held}+{last}" for held in ("alt", "ctrl") for last in (*letters, *MOVING) if is_key(f"{held}+{last}")]
    return (*NAMED, *_OF_NAME, "shift+tab", *held)


def _canonical(text: str) -> str:
    stripped = text.strip() or text
    if len(stripped) == 1:
        return SIGNS.get(stripped, "space" if stripped == " " else stripped)
    folded = stripped.casefold().replace(" ", "")
    *modifiers, last = folded.split("+") if not folded.endswith("+") else [*folded[:-2].split("+"), "plus"]
    last = SIGNS.get(last, last)
    return "+".join([*sorted(modifiers), last])
