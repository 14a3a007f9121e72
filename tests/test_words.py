"""How the program speaks: what it never says, and American English, counted over every text a person can read.

The count may only fall: ``USES`` is the number there is, and whoever lowers it writes the new one here.
``python -m tests.test_words`` lists every use.
"""

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

TREE = Path(__file__).parents[1]

USES = 13

NEVER = (
    r"anew|meanwhile|likewise|by presses|the lot|takes? it up|told(?! apart)|tells|falls|strays|otherwise than"
    r"|as it (?:now )?(?:is|stands)(?! \w+(?:ed|en|wn|rn)\b)|it comes out(?! even)|another one|of which"
)
"""Words of a translation; a rib may come out even, and what is told apart is."""
BRITISH = (
    r"\w*colour\w*|centre\w*|centring|grey\w*|jumpers?|stocking stitch|moss stitch(?! is)|mitr\w*|fibres?|favourites?"
    r"|half way"
)
NOT_SAID = re.compile(rf"\b(?:{NEVER}|{BRITISH})\b", re.IGNORECASE)
A_NAME = re.compile(BRITISH, re.IGNORECASE)
"""A British word by itself: the name of something, or what may be typed."""
LABEL = re.compile(r"(?:\S+ ){0,2}so far\W*", re.IGNORECASE)


def in_code(path: Path) -> Iterator[tuple[str, int]]:
    """Yield the texts with a space in them, and their lines; an f-string is one text.

    Docstrings are for us, but for those under the fields of the settings; what stands in a ``Literal`` is a name.
    """
    tree = ast.parse(path.read_text(encoding="utf-8"))
    let_be, names = set[ast.AST](), set[object]()
    shown = path.parent.name == "settings"
    fields = {one for found in ast.walk(tree) if isinstance(found, ast.ClassDef) for one in found.body[1:] if shown}
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and node not in fields:
            let_be.add(node.value)
        elif isinstance(node, ast.JoinedStr):
            let_be.update(node.values)
        elif isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name) and node.value.id == "Literal":
            names.update(one.value for one in ast.walk(node.slice) if isinstance(one, ast.Constant))
    for node in ast.walk(tree):
        if node in let_be:
            continue
        if isinstance(node, ast.JoinedStr):
            yield "".join(str(one.value) if isinstance(one, ast.Constant) else "{}" for one in node.values), node.lineno
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value not in names:
            yield node.value, node.lineno


def in_values(value: object) -> Iterator[tuple[str, int]]:
    """Yield the texts among the values of a file; no line is known."""
    for one in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from in_values(one)
    if isinstance(value, str):
        yield value, 0


def texts() -> Iterator[tuple[Path, int, str]]:
    """Yield every text that a person can read, with its file and line."""
    for path in sorted(TREE.glob("finishing_tui/**/*.py")):
        yield from ((path, line, text) for text, line in in_code(path) if " " in text.strip())
    for path in sorted([*TREE.glob("recipes/**/*.toml"), *TREE.glob("demo_projects/*/garment.toml")]):
        values = tomllib.loads(path.read_text(encoding="utf-8"))
        yield from ((path, 0, text) for text, _ in in_values(values))
    for path in (TREE / "README.md", TREE / "recipes" / "README.md"):
        lines = path.read_text(encoding="utf-8").splitlines()
        yield from ((path, number, line) for number, line in enumerate(lines, 1))


def uses() -> list[str]:
    """Return every use of what is not said, in a line for each."""
    found = []
    for path, line, text in texts():
        flat = " ".join(text.split())
        said = [] if A_NAME.fullmatch(flat) else [one[0] for one in NOT_SAID.finditer(flat)]
        said += ["so far"] if LABEL.fullmatch(flat) else []
        found += [f"{path.relative_to(TREE)}:{line}: {word}: {flat[:100]}" for word in said]
    return found


def test_the_voice_only_gets_better() -> None:
    """No more uses than there were; and where there are fewer, the number above is lowered with them."""
    many = len(uses())
    assert many <= USES, "a text says what this program never says: see python -m tests.test_words"
    assert many == USES, f"well done: there are {many} uses now; write that number into USES"


def test_every_text_is_looked_at() -> None:
    """Thousands of texts, of the program, the recipes, the garments and the pages."""
    looked_at = {path.relative_to(TREE).parts[0] for path, _, text in texts() if text}
    assert looked_at == {"finishing_tui", "recipes", "demo_projects", "README.md"}


if __name__ == "__main__":
    import sys

    sys.stdout.write("\n".join([*uses(), ""]))
