"""Keys of one's own: what is valid leaves every action reachable, and whatever is not is refused with its line."""

import hypothesis.strategies as st
import pytest
from hypothesis import assume, given
from textual import events
from textual._xterm_parser import XTermParser

from finishing_tui.settings.reading import BadSettings, settings_in
from finishing_tui.talk.key_names import (
    LEAVING,
    NAMED,
    SIGNS,
    TOLD_AS,
    NoKey,
    is_key,
    key_named,
    names,
    shown,
    written,
)
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.rooms import GROUPS, KEYED, NEWER, SCREENS
from tests.settings.keymaps import Table, as_toml, free_for, keymaps


def refusals(text: str) -> list[tuple[int | None, str, str]]:
    """Return what is wrong with a settings file, as (line, key, sentence)."""
    with pytest.raises(BadSettings) as refused:
        settings_in(text, "settings.toml")
    return [(one.line, one.key, one.message) for one in refused.value.problems]


def test_the_usual_keys_are_sound() -> None:
    """Every action is in a group and alive on a screen, has a key there is, and shares it with none beside it."""
    assert {action for screen in SCREENS.values() for action in screen.ids} == set(KEYED)
    assert {one.group for one in KEYED.values()} == set(GROUPS)
    for keyed in KEYED.values():
        assert keyed.usual
        assert keyed.help
        assert all(is_key(key) for key in keyed.usual)
    for screen in SCREENS.values():
        keys = [key for action in screen.ids for key in USUAL.of(action)]
        assert len(set(keys)) == len(keys), screen.where
        if "what_if.of_every" not in screen.ids:
            assert not set(keys) & set(screen.taken)


@given(keymaps())
def test_a_valid_keymap_keeps_every_action_reachable(table: Table) -> None:
    """It is read as it was written; on every screen each action has keys, and each key one action."""
    settings = settings_in(as_toml(table), "settings.toml")
    keys = settings.in_force
    for group, actions in table.items():
        for name, wanted in actions.items():
            listed = [wanted] if isinstance(wanted, str) else wanted
            assert keys.of(f"{group}.{name}")[: len(listed)] == tuple(map(key_named, listed))
    for name, screen in SCREENS.items():
        pressed = [(key, action) for action in screen.ids for key in keys.of(action)]
        assert len({key for key, _ in pressed}) == len(pressed)
        for key, action in pressed:
            assert keys.does(name, key) == action
    assert set(keys.keymap()) == (set(KEYED) if table else set())


BEFORE = [one for one in KEYED if one not in NEWER]
"""The actions of settings files that are older than the newer actions."""


@given(st.sampled_from(BEFORE), st.data())
def test_a_newer_action_gives_way(action: str, data: st.DataObject) -> None:
    """Any key that was free beside the older actions can be given to any of them; newer ones are done all the same."""
    free = [key_named(key) for key in free_for(action, {})]
    contested = [key for newer in NEWER for key in USUAL.of(newer) if key in free]
    key = data.draw(st.sampled_from(contested or free) | st.sampled_from(free))
    group, _, name = action.partition(".")
    keys = settings_in(as_toml({group: {name: key}}), "settings.toml").in_force
    assert keys.of(action)[0] == key
    for screen in SCREENS.values():
        pressed = [one for each in screen.ids for one in keys.of(each)]
        assert len(set(pressed)) == len(pressed)
        assert all(map(keys.of, screen.ids))


def test_a_key_that_was_given_away_stays_away() -> None:
    """What was g, / and ctrl+p before there were actions on them: those get spare keys, and help says so."""
    text = '[keys.needles]\nnote = "g"\npress = ["space", "ctrl+p"]\n[keys.shelf]\nstart = "/"\n'
    keys = settings_in(text, "settings.toml").in_force
    assert (keys.shown("needles.note"), keys.shown("shelf.start")) == ("g", "/")
    assert keys.shown("needles.palette", "needles.first_stitch", "lists.find") == "v j v"
    assert keys.shown("lists.palette", "pages.palette") == "ctrl+p ctrl+p"
    assert ("v", KEYED["lists.find"].help) in keys.help("shelf", {})


def test_two_keys_of_ones_own_are_not_sorted_out() -> None:
    """A newer action gives way only with the key nobody gave it."""
    said = refusals('[keys.needles]\nfirst_stitch = "f9"\nnote = "f9"\n')
    assert "f9 is a key of needles.first_stitch too" in said[0][2]


@given(keymaps(), st.data())
def test_two_actions_on_one_key_are_refused_with_their_line(table: Table, data: st.DataObject) -> None:
    """Whatever else is set: a key that another action of the screen has is refused, and both are named."""
    screen = data.draw(st.sampled_from([one for one in SCREENS.values() if "lines.keep" not in one.ids]))
    keys = settings_in(as_toml(table), "settings.toml").in_force
    one, other = data.draw(st.lists(st.sampled_from(screen.ids), unique=True, min_size=2, max_size=2))
    group, _, name = other.partition(".")
    assume(other not in NEWER or name in table.get(group, {}))
    key = data.draw(st.sampled_from(keys.of(other)))
    group, _, name = one.partition(".")
    table.setdefault(group, {})[name] = shown(key)
    text = as_toml(table)
    found = refusals(text)
    assert any(one in said or other in said for _, _, said in found)
    set_here = {f"keys.{each}.{action}" for each, actions in table.items() for action in actions}
    for line, path, said in found:
        assert line is not None
        assert path in set_here
        assert text.splitlines()[line - 1].startswith(f"{path.rpartition('.')[2]} = ")
        assert said.startswith(f"{shown(key)} is a key of ")


FAULTS = {
    'needle = { press = "a" }': ("keys.needle", "there is no group 'needle'; did you mean 'needles'?"),
    'press = "f13"': ("keys.press", "'press' is an action of needles; write it under [keys.needles]"),
    'needles.pres = "f13"': ("keys.needles.pres", "'pres' is not an action of needles; did you mean 'press'?"),
    "needles.press = 5": ("keys.needles.press", "5 stands here; a key in quotes is wanted"),
    "needles.press = []": ("keys.needles.press", "an action needs a key; leave the line out for the usual one"),
    'needles.press = ["space", 1]': ("keys.needles.press", "a list stands here; a key in quotes is wanted"),
    'needles.press = "pagedwn"': ("keys.needles.press", "no key has this name; did you mean 'pagedown'?"),
    'needles.press = ["space", "f99"]': ("keys.needles.press 2", "no key has this name; did you mean 'f9'?"),
    'needles.press = "7"': ("keys.needles.press", "digits are for counts and choices"),
    'needles.press = "ctrl+c"': ("keys.needles.press", "ctrl+c always puts everything down and leaves"),
    'needles.press = "ctrl+q"': ("keys.needles.press", "ctrl+q always puts everything down and leaves"),
    'needles.press = "ctrl+i"': ("keys.needles.press", "a terminal cannot tell it from tab; write tab"),
    'needles.press = "."': ("keys.needles.press", ". is the point of a measure at the needles"),
    'needles.press = "x"': ("keys.needles.press", "x is a key of needles.other too, at the needles"),
    'lines.leave = "enter"': ("keys.lines.leave", "enter is a key of lines.keep too"),
    'lines.keep = "escape"': ("keys.lines.keep", "escape is a key of lines.leave too"),
    'lines.keep = "k"': ("keys.lines.keep", "k writes or moves in a line of text"),
    'lines.keep = "left"': ("keys.lines.keep", "left writes or moves in a line of text"),
    'lists.take = "f2"\nshelf.help = "f2"': ("keys.shelf.help", "f2 is a key of lists.take too, on the shelf"),
    'lists = "f2"': ("keys.lists", '"f2" stands here; a table is wanted: [keys.lists]'),
}


@pytest.mark.parametrize("line", FAULTS)
def test_each_fault_is_told_at_its_line(line: str) -> None:
    """The only mistake of a file is told once, with its line and key, and what would be right."""
    key, said = FAULTS[line]
    problems = refusals(f'# mine\npace = "spot"\n[keys]\n{line}\n')
    assert [one[1] for one in problems] == [key]
    assert problems[0][0] == 3 + len(line.splitlines())
    assert said in problems[0][2]


@given(st.text(max_size=12))
def test_whatever_is_written_is_a_key_or_refused(text: str) -> None:
    """A name is taken and is then a key there is, written as it is shown; or it is refused in words."""
    try:
        key = key_named(text)
    except NoKey as error:
        key = str(error)
        assert " " in key
    else:
        assert is_key(key)
        assert key not in LEAVING
        assert key_named(shown(key)) == key


def sent(sequence: str) -> list[str]:
    """Return what the terminal program makes of bytes that a terminal sends."""
    parser = XTermParser()
    return [one.key for one in (*parser.feed(sequence), *parser.feed("")) if isinstance(one, events.Key)]


PLAIN = {"space": " ", "enter": "\r", "escape": "\x1b", "tab": "\t", "backspace": "\x7f"}
TILDE = {"insert": 2, "delete": 3, "pageup": 5, "pagedown": 6, "f3": 13, "f5": 15, "f6": 17, "f7": 18, "f8": 19}
TILDE |= {"f9": 20, "f10": 21, "f11": 23, "f12": 24}
LETTER = {"up": "A", "down": "B", "right": "C", "left": "D", "home": "H", "end": "F", "f1": "P", "f2": "Q", "f4": "S"}
CODE = {"tab": 9, "print_screen": 57361, "pause": 57362, "menu": 57363, "media_play": 57428, "media_pause": 57429}
CODE |= {"media_play_pause": 57430, "media_stop": 57432, "media_fast_forward": 57433, "media_rewind": 57434}
CODE |= {"media_track_next": 57435, "media_track_previous": 57436}
CODE |= {"lower_volume": 57438, "raise_volume": 57439, "mute_volume": 57440}
CODE |= {f"f{number}": 57363 + number for number in range(13, 25)}
# of the keyboard protocol that terminals share ("functional key definitions"; from memory)
MODIFIERS = {"": 1, "shift": 2, "alt": 3, "ctrl": 5}


def sequence_of(key: str) -> str:
    """Return bytes that a terminal sends for a key."""
    held, _, last = key.rpartition("+")
    if not held:
        sign = {name: sign for sign, name in SIGNS.items()}.get(last, last)
        if last in PLAIN or (len(sign) == 1 and last not in LETTER):
            return PLAIN.get(last, sign)
    modifier = MODIFIERS[held]
    if last in TILDE:
        return f"\x1b[{TILDE[last]};{modifier}~"
    if last in LETTER:
        return f"\x1b[1;{modifier}{LETTER[last]}"
    return f"\x1b[{CODE.get(last) or ord(last)};{modifier}u"


@pytest.mark.parametrize("key", [*names(), *SIGNS.values(), *"azAZé", "shift+f1", "shift+home", "alt+f12"])
def test_every_key_that_can_be_named_can_be_sent(key: str) -> None:
    """The terminal program calls what a terminal sends for a key by the name that the settings take."""
    name = SIGNS.get(key, key)
    assert key_named(key) == name
    assert sent(sequence_of(name)) == [name]


@pytest.mark.parametrize(("code", "key"), zip([25, 26, 28, 29, 31], ["f13", "f14", "f15", "f16", "f17"], strict=True))
def test_older_terminals_send_the_keys_of_pedals_otherwise(code: int, key: str) -> None:
    """What the terminal program makes of the codes of the VT220 for these keys (from memory) is known by its name."""
    assert [TOLD_AS[one] for one in sent(f"\x1b[{code}~")] == [key]


@pytest.mark.parametrize("sign", SIGNS)
def test_a_key_is_written_as_toml_reads_it(sign: str) -> None:
    """What the shelf's screen says to write is the key that was pressed."""
    text = f'[keys.recipes]\nread = {written(SIGNS[sign])}\n[keys.lists]\nfind = "f9"\n'
    settings = settings_in(text, "settings.toml")
    assert settings.in_force.of("recipes.read") == (SIGNS[sign],)


def test_named_keys_are_all_there() -> None:
    """Pedals and remotes send these; every one can be set."""
    assert {f"f{number}" for number in range(13, 25)} | {"pageup", "pagedown", "home", "end"} <= set(NAMED)
