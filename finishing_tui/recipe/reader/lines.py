"""Finds the line of every key of a TOML text, from a syntax tree.

The TOML parser gives values but no places. This module is imported only when there is something to report, and it
never decides whether a text is right: it reads only what the parser has accepted.
"""

import tomllib

import tree_sitter_toml
from tree_sitter import Language, Node, Parser

from finishing_tui.recipe.reader.errors import Path

_KEYS = ("bare_key", "quoted_key", "dotted_key")


def lines_of(text: str) -> dict[Path, int]:
    """Return the line (from 1) of every key, table and list entry of ``text``, by its path.

    A table that is only implied by a longer name has the line on which it was first implied.
    """
    root = Parser(Language(tree_sitter_toml.language())).parse(text.encode()).root_node
    lines: dict[Path, int] = {}
    many: dict[Path, int] = {}  # arrays of tables: how many tables each has so far
    for node in root.named_children:
        if node.type == "pair":
            _pair(node, (), lines)
        elif node.type in {"table", "table_array_element"}:
            path = _header(node, lines, many)
            for pair in node.named_children:
                if pair.type == "pair":
                    _pair(pair, path, lines)
    return lines


def line_of(path: Path, lines: dict[Path, int]) -> int | None:
    """Return the line of ``path``, or of the nearest thing around it that has one."""
    for length in range(len(path), 0, -1):
        if path[:length] in lines:
            return lines[path[:length]]
    return None


def _header(node: Node, lines: dict[Path, int], many: dict[Path, int]) -> Path:
    """Note a ``[table]`` or ``[[table]]`` and return its path; parts that are arrays of tables mean their last one."""
    key = next(child for child in node.named_children if child.type in _KEYS)
    line = key.start_point.row + 1
    path: Path = ()
    parts = _parts(key)
    for place, part in enumerate(parts, 1):
        path = (*path, part)
        lines.setdefault(path, line)
        if node.type == "table_array_element" and place == len(parts):
            many[path] = many.get(path, 0) + 1
        if path in many:
            path = (*path, many[path] - 1)
            lines.setdefault(path, line)
    if node.type == "table":
        lines[path] = line  # its own header, though a longer name may have implied it before
    return path


def _pair(node: Node, path: Path, lines: dict[Path, int]) -> None:
    key, value = [child for child in node.named_children if child.type != "comment"][:2]
    line = key.start_point.row + 1
    for part in _parts(key):
        path = (*path, part)
        lines.setdefault(path, line)
    _value(value, path, lines)


def _value(node: Node, path: Path, lines: dict[Path, int]) -> None:
    if node.type == "inline_table":
        for pair in node.named_children:
            if pair.type == "pair":
                _pair(pair, path, lines)
    elif node.type == "array":
        for place, item in enumerate(child for child in node.named_children if child.type != "comment"):
            lines[*path, place] = item.start_point.row + 1
            _value(item, (*path, place), lines)


def _parts(key: Node) -> list[str]:
    if key.type == "dotted_key":
        return [part for child in key.named_children for part in _parts(child)]
    text = (key.text or b"").decode()
    return [text] if key.type == "bare_key" else list(tomllib.loads(f"{text} = 0"))
