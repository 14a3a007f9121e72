"""Names that were perhaps meant."""

import difflib
from collections.abc import Iterable

_MOST = 200
"""Names compared: a hostile file may have tens of thousands, and comparing is slow."""
_LISTED = 12


def near(name: str, names: Iterable[str], what: str) -> str:
    """Return the half of a sentence that says what would be right instead of ``name``: "did you mean 'say'?".

    Where nothing is near, the names there are, if they are few; ``what`` is what they are ("the places are").
    """
    known = list(names)
    folded = {other.casefold(): other for other in reversed(known[:_MOST])}
    wanted = name.casefold()[:100]
    found = difflib.get_close_matches(wanted, folded, n=2)
    if found:
        alike = [difflib.SequenceMatcher(None, other, wanted).ratio() for other in found]
        as_near = [folded[other] for other, ratio in zip(found, alike, strict=True) if ratio == alike[0]]
        return f"did you mean {' or '.join(repr(other) for other in as_near)}?"
    if not known:
        return f"{what} none"
    rest = f" and {len(known) - _LISTED} more" if len(known) > _LISTED else ""
    return f"{what} {', '.join(known[:_LISTED])}{rest}"
