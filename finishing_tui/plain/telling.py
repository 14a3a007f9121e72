"""What there is to see of a garment, in lines that read well aloud: what the screen draws, this says."""

from collections.abc import Callable, Iterable, Mapping
from types import MappingProxyType

from finishing_tui.craft.words import listing
from finishing_tui.glance.cautions import CARE
from finishing_tui.glance.coming_back import ComingBack, next_words
from finishing_tui.glance.faces import counted
from finishing_tui.glance.stored_words import STATUSES
from finishing_tui.glance.values import (
    Edge,
    Face,
    Glance,
    ItemFace,
    MessageFace,
    PairFace,
    RoundFace,
    SpotFace,
    StepLine,
    StitchFace,
    WordLine,
)

HEADINGS = {"say": "", "how": "count", "look": "right when", "mend": "if not", "mind": CARE, "see": "see"}
"""The words of a step by what is asked for, and the heading each stands under."""

AHEAD = 24
"""So many spots of an edge are said at a time."""


def upcoming(face: Face) -> str:
    """Return what comes next in words, without capitals that would be spelt out."""
    words = next_words(face)
    acts = face.acts if isinstance(face, SpotFace) else (getattr(face, "act", ""),)
    if not isinstance(face, MessageFace):
        for act in acts:
            words = words.replace(act, act.lower()) if act else words
    if isinstance(face, PairFace):
        words = ": ".join(part for part in (words, ", then ".join(face.moves), face.said) if part)
    return words


def standing(face: Face) -> list[str]:
    """Return how far the part under way is; nothing for a message, which says itself what comes next."""
    if isinstance(face, MessageFace):
        return []
    told = counted(face)
    if isinstance(face, PairFace):
        told += f"; {face.front} {face.front_left}, {face.back} {face.back_left}"
    if isinstance(face, RoundFace):
        told += f", {face.stitches} on the needle"
    lines = [f"{told}."]
    if isinstance(face, SpotFace):
        lines += [f"{face.to_go}."] if face.to_go else []
        lines += [f"{face.halfway}."] if face.due else []
    if isinstance(face, StitchFace) and face.waits:
        lines.append(f"{face.said}.")
    return lines


def heading(seen: Glance) -> list[str]:
    """Return which step is in the middle, and which part of it."""
    if not seen.step:
        return [f"all {seen.steps} steps: {seen.heading.lower()}."]
    return [f"step {seen.step} of {seen.steps}: {seen.heading.removesuffix('.')}.", *part(seen)]


def part(seen: Glance) -> list[str]:
    """Return which part of the step is under way, with its rhythm where it has one."""
    lines = [f"here: {seen.part}."] if seen.part not in {"", seen.heading} else []
    return [*lines, f"rhythm: {seen.face.rhythm}."] if isinstance(seen.face, SpotFace) else lines


def beginning(seen: Glance) -> list[str]:
    """Return what must be known when a step is come to: what it is, how it is done, what to mind, what waits."""
    waiting = [_under(line) for line in seen.lines if line.heading == "half done"]
    care = [_under(line) for line in seen.lines if line.heading == CARE and not line.behind]
    return [*heading(seen), *worded(seen, "say"), *care, *waiting]


def worded(seen: Glance, asked: str) -> list[str]:
    """Return the words of a step that were asked for."""
    found = [line for line in seen.lines if line.heading == HEADINGS[asked]]
    return [_under(line) for line in found]


def all_words(seen: Glance) -> list[str]:
    """Return all the words of a step, and of what is done just now."""
    now = getattr(seen.face, "words", "")
    return [*heading(seen), *(_under(line) for line in seen.lines), *([f"now: {now}"] if now else [])]


def _under(line: WordLine) -> str:
    return f"{line.heading or 'do'}: {line.text}"


def coming(seen: Glance) -> list[str]:
    """Return all about what comes next."""
    face = seen.face
    lines = [*heading(seen), *standing(face)]
    if isinstance(face, MessageFace):
        return lines
    words = getattr(face, "words", "")
    lines += [f"now: {words}"] if words else []
    if isinstance(face, SpotFace):
        lines.append(f"after that: {face.then}.")
        lines += [f"count: {face.halfway}."] if face.halfway and not face.due else []
    if isinstance(face, RoundFace) and face.coming:
        lines.append(f"later: {face.coming}.")
    if isinstance(face, StitchFace) and face.edge:
        lines += [] if face.waits else [f"{face.said}."]
    elif isinstance(face, StitchFace | PairFace) and face.said:
        lines.append(f"this one: {face.said}.")
    if isinstance(face, StitchFace | PairFace) and face.yarn:
        lines.append(face.yarn)
    if isinstance(face, ItemFace):
        marks = ("done" if at < face.done else "to do" for at in range(len(face.items)))
        lines += [f"{at}, {mark}: {item}" for at, (mark, item) in enumerate(zip(marks, face.items, strict=True), 1)]
    return lines


def holding(seen: Glance) -> list[str]:
    """Return what is on every needle and holder."""
    if not seen.holdings:
        return ["no stitch is on any needle or holder."]
    here = {True: ", in use now", False: ""}
    return [f"on the {one.name}: {one.stitches}{here[one.here]}." for one in seen.holdings]


def lying(seen: Glance) -> list[str]:
    """Return how the work lies and what is worked with, where anything is known."""
    lies, needles = seen.posture.replace(" · ", ", "), seen.needles
    return [*([f"it lies: {lies}."] if lies else []), *([f"needles: {needles}."] if needles else [])]


def steps(lines: Iterable[StepLine]) -> list[str]:
    """Return how each of some steps stands."""
    here = {True: ", here", False: ""}
    stands = [f"step {one.number}, {STATUSES[one.status]}{here[one.here]}" for one in lines]
    return [f"{how}: {one.title.removesuffix('.')}." for how, one in zip(stands, lines, strict=True)]


def time(seen: Glance) -> list[str]:
    """Return the time of this sitting and the time left, where that can be known."""
    left = f"{seen.time_left}." if seen.time_left else "the time left is not known yet."
    if seen.minutes is None:
        return [left]
    lasts = f"minutes in this sitting: {seen.minutes}." if seen.minutes else "less than a minute in this sitting."
    return [lasts, left]


def edge(face: Face) -> list[str]:
    """Return the next spots of the edge under way, in runs, and the spots where something else was done."""
    if isinstance(face, StitchFace) and face.edge:
        return [f"pins after {listing(list(map(str, face.edge.pins)))} stitches.", f"{face.said}."]
    if not isinstance(face, SpotFace):
        return ["no edge is being picked up just now."]
    strip, ends = face.edge, min(face.edge.at + AHEAD, face.edge.spots)
    lines = [f"{face.where}{': nobody counted how many there are' if face.uncounted else ''}."]
    if ends > strip.at:
        lines.append(f"up to {face.unit} {ends}: {_runs(strip, strip.at + 1, ends)}.")
    if strip.half is not None and strip.half > strip.at:
        lines.append(f"halfway at {face.unit} {strip.half}.")
    strayed = ", ".join(f"{spot} {strip.sort(spot)}" for spot in sorted(strip.strayed))
    return [*lines, f"against the plan: {face.unit} {strayed}."] if strayed else lines


def _runs(strip: Edge, first: int, last: int) -> str:
    runs: list[tuple[str, int]] = []
    for spot in range(first, last + 1):
        act = strip.sort(spot).removeprefix("to ")
        if runs and runs[-1][0] == act:
            runs[-1] = (act, runs[-1][1] + 1)
        else:
            runs.append((act, 1))
    return ", ".join(f"{act} {many}" for act, many in runs)


def where(seen: Glance) -> list[str]:
    """Return where the work is, with everything on the needles."""
    return [
        f"garment: {seen.title}, size {seen.size}.",
        *heading(seen),
        *standing(seen.face),
        *lying(seen),
        *holding(seen),
    ]


def came_back(back: ComingBack) -> list[str]:
    """Return what a knitter coming back must know."""
    now = back.now
    left = f", {'left' if back.cut_off else 'put down'} {back.away}" if back.away else ""
    cut = "the program stopped last time. Nothing said to be saved was lost."
    return [
        f"garment: {now.title}, size {now.size}{left}.",
        *([cut] if back.cut_off else []),
        *([f"you wrote: {back.where}"] if back.where else []),
        *(f"note: {note}" for note in back.notes),
        f"you were at {back.last}.",
        *lying(now),
        *holding(now),
    ]


def _worded_or_not(asked: str) -> Callable[[Glance], list[str]]:
    return lambda seen: worded(seen, asked) or ["this step says nothing about that."]


ASKED: Mapping[str, Callable[[Glance], list[str]]] = MappingProxyType(
    {
        "where": where,
        "next": coming,
        "needles": holding,
        "edge": lambda seen: edge(seen.face),
        "steps": lambda seen: steps(seen.list),
        "words": all_words,
        "time": time,
        **{asked: _worded_or_not(asked) for asked in HEADINGS},
    }
)
"""What is said for each word that only asks, of the step that is looked at."""
