"""No TOML value of a wrong type is ever ignored in the settings: each is refused, on its own line."""

import re

import pytest

from finishing_tui.settings import Settings
from finishing_tui.settings.reading import BadSettings, settings_in
from finishing_tui.talk.rooms import GROUPS, KEYED
from tests.recipe.reader.wrong_types import VALUES, Key, keys_of, wrong_for


def _refused(text: str, line: int, key: str) -> bool:
    with pytest.raises(BadSettings) as caught:
        settings_in(text, "settings.toml")
    return any(one.line == line and key in re.split(r"[ .]", one.key) for one in caught.value.problems)


@pytest.mark.parametrize("key", keys_of(Settings), ids=str)
def test_a_value_of_a_wrong_type_is_refused_on_its_line(key: Key) -> None:
    """A date, a time, a fraction, nan, 1 for true, a text, a list, a table: each wherever the key does not take it."""
    for wrong in wrong_for(key):
        assert _refused(f"\n{key.field.key} = {wrong}\n", 2, key.field.key), wrong


@pytest.mark.parametrize("group", GROUPS)
def test_a_group_of_keys_is_a_table(group: str) -> None:
    """Nothing else may stand there."""
    for wrong in [text for kind, texts in VALUES.items() for text in texts if kind != "table"]:
        assert _refused(f"[keys]\n{group} = {wrong}\n", 2, group), wrong


@pytest.mark.parametrize("action", KEYED)
def test_an_action_has_a_key_or_a_list_of_keys(action: str) -> None:
    """Nothing else, and neither an empty text nor an empty list."""
    group, _, name = action.partition(".")
    others = [text for kind, texts in VALUES.items() if kind not in {"string", "list"} for text in texts]
    for wrong in ['""', "[]", '[""]', "[[]]", *others, *(f"[{text}]" for text in others)]:
        assert _refused(f"[keys.{group}]\n\n{name} = {wrong}\n", 3, name), wrong


def test_an_empty_list_of_looks_says_nothing() -> None:
    """Left out, the looks are as usual; an empty list of them would be none at all."""
    assert _refused("looks = []\n", 1, "looks")
