"""No text of the screens has a key written into it: what it names must be the key that is set."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import finishing_tui

ROOMS = ("craft", "recipe/kinds", "recipe/audit", "garment", "glance", "record", "widgets", "screens", "speech")
KEY = re.compile(r"\b(?:enter|backspace|escape|spacebar|space (?:bar|key)|press [b-z])\b|\([a-z?]\)", re.IGNORECASE)


def texts() -> Iterator[tuple[str, int, str]]:
    """Yield (file, line, text) of every text of several words that stands in the source and is no docstring."""
    top = Path(finishing_tui.__file__).parent
    for path in sorted(file for room in ROOMS for file in (top / room).rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        docs = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        for node in ast.walk(tree):
            if not isinstance(node, ast.Constant) or not isinstance(node.value, str) or id(node) in docs:
                continue
            if " " in node.value.strip():
                yield path.relative_to(top).as_posix(), node.lineno, node.value


def test_no_sentence_names_a_key_of_its_own() -> None:
    """Sentences ask for the key in force, or leave it to the foot of the screen."""
    read = list(texts())
    assert len(read) > 500
    named = [one for one in read if KEY.search(one[2])]
    assert not named
