"""Every action that has a key, in every screen: its name, its usual keys and its help. The one place they are named.

The actions are grouped by where they hold, and a settings file names them by these groups: ``needles``, ``lists``,
``lines``, ``pages`` and those of single screens. A screen is the actions that are alive on it together, so that no two
of them may have one key. Screens make their bindings from this, the settings are checked against it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from finishing_tui.talk.acts import ACTS


@dataclass(frozen=True, slots=True)
class Keyed:
    """An action with keys: the ``group`` it is in, its ``name`` there, the ``usual`` keys and what it does, ``help``.

    ``always``: keys that do it whatever is set, for whoever writes a line of text must be able to end it.
    """

    group: str
    name: str
    usual: tuple[str, ...]
    help: str
    always: tuple[str, ...] = ()

    @property
    def id(self) -> str:
        """Its name with the group's: "needles.press"."""
        return f"{self.group}.{self.name}"


@dataclass(frozen=True, slots=True)
class Together:
    """The actions of one screen: where that is, in words, their ``ids``, and ``taken``: keys that have a fixed use."""

    where: str
    ids: tuple[str, ...]
    taken: Mapping[str, str]


GROUPS: Mapping[str, str] = MappingProxyType(
    {
        "needles": "at the needles",
        "lists": "in lists and at questions, and where numbers are typed",
        "lines": "where a line of text is written; keys that write or move in it cannot be taken",
        "pages": "on pages that are read: the ledger, help, techniques, a recipe",
        "shelf": "on the shelf",
        "recipes": "among the recipes to start from",
        "audit": "at the audit of a garment that is being started",
        "numbers": "at the numbers of a garment",
        "what_if": "at what if",
    }
)
"""The groups, and where their keys hold."""

_PALETTE = "find anything these keys do by its words"
_NEEDLES = tuple(Keyed("needles", one.id, (one.key,), one.help) for one in ACTS)
_OTHERS = (
    Keyed("needles", "clear", ("escape",), "forget what was typed or asked"),
    Keyed("lists", "up", ("up",), "move up"),
    Keyed("lists", "down", ("down",), "move down"),
    Keyed("lists", "take", ("enter",), "choose the line at the caret, or enter the number typed"),
    Keyed("lists", "find", ("slash",), "find a line by its words, where there are more than nine"),
    Keyed("lists", "palette", ("ctrl+p",), _PALETTE),
    Keyed("lists", "on", ("space",), "go on, after coming back and at the audit: the same as take"),
    Keyed("lists", "take_off", ("backspace",), "take the last digit back, or the last answer"),
    Keyed("lists", "leave", ("escape",), "go one back, or clear what is typed"),
    Keyed("lists", "close", ("q",), "leave the list"),
    Keyed("lines", "keep", ("enter",), "keep the line", ("enter",)),
    Keyed("lines", "leave", ("escape",), "leave without it", ("escape",)),
    Keyed("lines", "up", ("up",), "move or scroll up"),
    Keyed("lines", "down", ("down",), "move or scroll down"),
    Keyed("pages", "up", ("up",), "one line up"),
    Keyed("pages", "down", ("down",), "one line down"),
    Keyed("pages", "left", ("left",), "ten lines up; the technique before"),
    Keyed("pages", "right", ("right",), "ten lines down; the technique after"),
    Keyed("pages", "back", ("pageup",), "ten lines up"),
    Keyed("pages", "on", ("space", "pagedown"), "ten lines down"),
    Keyed("pages", "palette", ("ctrl+p",), _PALETTE),
    Keyed("pages", "leave", ("escape", "enter", "q"), "leave the page"),
    Keyed("shelf", "start", ("s",), "start a garment: choose a recipe and a size, give your numbers"),
    Keyed("shelf", "demos", ("d",), "practice on a demo garment"),
    Keyed("shelf", "keys", ("k",), "keys and pedals: find out what a key or a pedal sends"),
    Keyed("shelf", "help", ("question_mark",), "see every key on one page"),
    Keyed("shelf", "leave", ("q",), "leave; it warns if something is not saved"),
    Keyed("recipes", "read", ("r",), "read the recipe through"),
    Keyed("recipes", "file", ("f",), "take a recipe file of your own"),
    Keyed("audit", "understood", ("a",), "every warning is understood"),
    Keyed("audit", "accept", ("x",), "accept the error at the caret"),
    Keyed("audit", "numbers", ("e",), "change numbers"),
    Keyed("numbers", "as_printed", ("p",), "give the number of one's own up: as the recipe has it"),
    Keyed("what_if", "before", ("left",), "to what is asked before"),
    Keyed("what_if", "next", ("right", "tab"), "to what is asked next"),
    Keyed("what_if", "of_every", ("slash", "full_stop", "o"), "the stroke of a rhythm, as in 3/4: pick 3 of every 4"),
    Keyed("what_if", "spread", ("space",), "spread it easily, or most evenly"),
)

KEYED: Mapping[str, Keyed] = MappingProxyType({one.id: one for one in (*_NEEDLES, *_OTHERS)})
"""Every action that has keys, by its id, in the order of the groups."""

NEWER = (
    "needles.palette",
    "needles.first_stitch",
    "needles.edge_ends",
    "needles.pins",
    "lists.find",
    "lists.palette",
    "pages.palette",
)
"""Actions that came when people had settings files already; their keys give way to those of a file."""

_DIGITS: Mapping[str, str] = MappingProxyType({})
_POINT: Mapping[str, str] = MappingProxyType({"full_stop": "the point of a measure"})
_MOVE = ("lists.up", "lists.down")
_LIST = (*_MOVE, "lists.take", "lists.palette")
_LONG = (*_LIST, "lists.find")
_TYPED = (*_LIST, "lists.take_off", "lists.leave")
_LINE = ("lines.keep", "lines.leave", "lines.up", "lines.down")
_PAGE = tuple(one.id for one in _OTHERS if one.group == "pages")


def _with(where: str, *ids: str, taken: Mapping[str, str] = _DIGITS) -> Together:
    return Together(where, ids, taken)


SCREENS: Mapping[str, Together] = MappingProxyType(
    {
        "needles": _with("at the needles", *(one.id for one in KEYED.values() if one.group == "needles"), taken=_POINT),
        "question": _with("at a question", *_LIST, "lists.leave"),
        "demos": _with("among the demo garments", *_LONG, "lists.leave", "lists.close"),
        "shelf": _with(
            "on the shelf",
            *_LONG,
            "shelf.start",
            "shelf.demos",
            "shelf.keys",
            "shelf.help",
            "shelf.leave",
        ),
        "recipes": _with(
            "among the recipes",
            *_LONG,
            "lists.leave",
            "lists.close",
            "recipes.read",
            "recipes.file",
        ),
        "start": _with("at the questions of a start", *_LONG, "lists.leave"),
        "start line": _with("at the lines of a start", *_LINE),
        "audit": _with(
            "at the audit",
            *_LONG,
            "lists.on",
            "lists.leave",
            "audit.understood",
            "audit.accept",
            "audit.numbers",
        ),
        "numbers": _with("at the numbers", *_TYPED, "lists.find", "lists.close", "numbers.as_printed"),
        "which size": _with("where the size is found", *_TYPED),
        "asked": _with("at a recount, and where you rip back to", *_TYPED, "lists.find"),
        "palette": _with("among all you can do now", *_MOVE, "lists.take", "lists.leave"),
        "find": _with("where you find a line of a list", *_LINE),
        "coming back": _with(
            "at coming back",
            "lists.take",
            "lists.palette",
            "lists.on",
            "lists.take_off",
            "lists.leave",
            "lists.close",
        ),
        "what if": _with("at what if", *_TYPED, *(one.id for one in _OTHERS if one.group == "what_if")),
        "page": _with("on a page", *_PAGE),
        "help": _with("in the help", *_PAGE, "needles.help"),
        "techniques": _with("among the techniques", *_PAGE, "needles.technique"),
        "line": _with("where a line is written", "lines.keep", "lines.leave"),
    }
)
"""What is alive together, by the name of the screen."""
