"""The same few words over and over: a step that was read before is not read again, only put in its new place.

A round says "sc in next st" many times. What such words mean depends on nothing around them as long as they stand between two commas,
speak of no "same" place and nothing was said that changes all places of the line; only then are they remembered.
"""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import Place, Step, Work
from motifold.render.pattern.notation.reader import Known, Reader

_LONGEST = 9
_PLAIN_KINDS = frozenset({"word", "stitch", "num", "ord"})
_DEPENDS = frozenset({"same", "place", "spot", "position", "inc", "dec", "ring", "magic ring", "made", "sl st", "work"})
"""Words whose meaning hangs on what was worked before, or that change what comes after."""
_GOES_ON = frozenset({"counts as", "counts", "not"})


def key_of_step(r: Reader) -> tuple[str, ...] | None:
    """The words up to the next comma, if they may be remembered."""
    memory = r.memory
    if r.mode.loop is not None or r.mode.target is not None or memory.ring_fresh or memory.ring_wanted or r.in_definition:
        return None
    items, at, words = r.items, r.pos, list[str]()
    last = min(at + _LONGEST, r.end)
    while at < last:
        lexeme = items[at]
        if lexeme.kind not in _PLAIN_KINDS:
            break
        if lexeme.value in _DEPENDS:
            return None
        words.append(f"{lexeme.kind}{'-' if lexeme.tight else ' '}{lexeme.value} {lexeme.raw}")
        at += 1
    if len(words) < 2 or items[r.pos].kind != "stitch" or at >= r.end or items[at].kind != "sep":
        return None
    after = items[at + 1] if at + 1 < r.end else None
    if after is not None and (after.kind == "open" or after.value in _GOES_ON or after.raw == "which"):
        return None
    return tuple(words)


def read_before(r: Reader, key: tuple[str, ...]) -> list[Step] | None:
    """The step that these words were, with its own number and place in the text."""
    known = r.memory.known.get(key)
    if known is None:
        return None
    start, number = r.pos, r.new_id()
    place = known.step.place
    if place is not None:
        first, last = r.items[start + known.place_from], r.items[start + known.place_to]
        place = replace(place, span=r.text.span(first.start, last.end))
        r.memory.last_place = place
    r.pos = start + len(key)
    r.memory.hand = known.hand
    return [replace(known.step, id=number, span=r.span(start), place=place)]


def remember(r: Reader, key: tuple[str, ...], start: int, said: int, steps: list[Step]) -> None:
    """Keeps a step that was just read from these words, if nothing else came of them. ``said``: how many problems there were before."""
    if len(r.memory.problems) > said:
        return
    step = steps[0] if len(steps) == 1 else None
    if not isinstance(step, Work) or r.pos != start + len(key) or step.id != r.memory.next_id - 1 or step.counts_as is not None:
        return
    if r.memory.hand != step.stitch.name:
        return
    found = _where(r, start, len(key), step.place) if step.place is not None else (0, 0)
    if found is not None:
        r.memory.known[key] = Known(step, r.memory.hand, *found)


def _where(r: Reader, start: int, length: int, place: Place) -> tuple[int, int] | None:
    """From which of the words to which the place is said; None where it names other places within it."""
    if place.of is not None or place.then or (place.extent is not None and place.extent.place is not None):
        return None
    for first in range(length):
        for last in range(length - 1, first - 1, -1):
            if r.text.span(r.items[start + first].start, r.items[start + last].end) == place.span:
                return first, last
    return None
