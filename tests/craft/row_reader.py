"""Reads a written row and works it stitch by stitch, knowing nothing of how the program lays a row out.

What each word eats and leaves is common practice, written down here from memory and apart from the program's table.
"""

import re

EATS_AND_LEAVES = {
    "k2tog": (2, 1),
    "ssk": (2, 1),
    "p2tog": (2, 1),
    "ssp": (2, 1),
    "k3tog": (3, 1),
    "sssk": (3, 1),
    "p3tog": (3, 1),
    "sssp": (3, 1),
    "cdd": (3, 1),
    "kfb": (1, 2),
    "pfb": (1, 2),
    "kfbf": (1, 3),
    "pfbf": (1, 3),
    "M1": (0, 1),
    "M1L": (0, 1),
    "M1R": (0, 1),
    "M1P": (0, 1),
    "M2": (0, 2),
    "yo": (0, 1),
    "yo2": (0, 2),
}

_TOKENS = re.compile(r"[\[\](),]|[^\[\](),]+")


def words_of(row: str) -> list[str]:
    """Return the words of a written row with every repeat written out."""
    tokens = [token.strip() for token in _TOKENS.findall(row) if token.strip()]
    levels: list[list[str]] = [[]]
    last: list[str] = []
    for part in tokens:
        often = re.fullmatch(r"(.*?) ?(twice|(\d+) times)", part)
        if part in "([":
            levels.append([])
        elif part in ")]":
            last = levels.pop()
            levels[-1] += last
        elif part == ",":
            last = []
        elif often:
            count = 2 if often[2] == "twice" else int(often[3])
            if often[1]:
                levels[-1] += [often[1]] * count
            else:
                assert last, f"a repeat of nothing in {row!r}"
                levels[-1] += last * (count - 1)
        else:
            levels[-1].append(part)
    assert len(levels) == 1, f"brackets that do not close in {row!r}"
    return levels[0]


def worked(row: str) -> tuple[int, int]:
    """Return the stitches a written row takes from the left needle and leaves on the right one."""
    eaten = left = 0
    for word in words_of(row):
        plain = re.fullmatch(r"(?:[kp]|work )(\d+)", word)
        off = re.fullmatch(r"bind off (\d+)", word)
        if plain:
            eaten, left = eaten + int(plain[1]), left + int(plain[1])
        elif off:  # works one more than it takes off, and that one stays
            eaten, left = eaten + int(off[1]) + 1, left + 1
        else:
            eats, leaves = EATS_AND_LEAVES[word]
            eaten, left = eaten + eats, left + leaves
    return eaten, left
