"""All the words there are about what is to see: for the help, where everything can be read at leisure."""

from finishing_tui.glance.values import Glance, WordLine


def all_lines(seen: Glance) -> tuple[WordLine, ...]:
    """Return the words of the step, of what is done just now, and of where everything is."""
    now = (getattr(seen.face, "words", ""), getattr(seen.face, "rhythm", ""), getattr(seen.face, "halfway", ""))
    held = ", ".join(f"{one.name} {one.stitches}" for one in seen.holdings)
    yarn, coming = getattr(seen.face, "yarn", ""), getattr(seen.face, "coming", "")
    found = (
        ("now", ". ".join(text.removesuffix(".") for text in now if text)),
        ("later", coming),
        ("yarn", yarn),
        ("how it lies", " · ".join(text for text in (seen.posture, seen.needles) if text)),
        ("on needles and holders", held),
        ("tails", ", ".join(seen.tails)),
        ("markers", ", ".join(seen.markers)),
        ("holes", ", ".join(seen.holes)),
    )
    return (*seen.lines, *(WordLine(heading, text) for heading, text in found if text))
