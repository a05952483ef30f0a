"""How to read a symbol: its five parts, each with an example in which that part is dark and the rest pale."""

from __future__ import annotations

from collections.abc import Collection

from motifold.symbols.ink import Mark, moved
from motifold.symbols.record import dataclass
from motifold.symbols.specimens import increase, specimen


@dataclass(frozen=True, slots=True)
class Lesson:
    """One part of the grammar: what it is called, what it says (stitches in braces, by their US abbreviation), and its example."""

    part: str
    words: str
    pale: tuple[Mark, ...]
    dark: tuple[Mark, ...]


def lessons() -> tuple[Lesson, ...]:
    """The five parts, from the stem on; a symbol is its stem, then what the foot draws, then its bars, then its head."""
    treble = specimen("tr")
    return (
        _lesson(
            "Stem",
            "As tall as the stitch. Crossed near its top it is {sc}; a T without a bar is {hdc}.",
            ((specimen("sc"), -1.0, {0}), (specimen("hdc"), 0.0, {0}), (treble, 1.0, {0})),
        ),
        _lesson("Bars", "One for each yarn over before the hook goes in. Two bars: {tr}.", ((treble, 0.0, {1, 2}),)),
        _lesson("Head", "Where the hook of the next round goes in.", ((treble, 0.0, {3}),)),
        _lesson(
            "Foot",
            "What the hook went into. Bare: both loops of a stitch. This cup: its back loop only.",
            ((specimen("dc", "back loop"), 0.0, {1}),),
        ),
        _lesson(
            "Gathers",
            "One head: worked together. One foot: worked into one place. Closed: many stitches made into one.",
            ((specimen("dc2tog"), -1.85, range(9)), (increase("dc"), 0.0, range(9)), (specimen("bobble"), 1.85, range(9))),
        ),
    )


def _lesson(part: str, words: str, examples: tuple[tuple[tuple[Mark, ...], float, Collection[int]], ...]) -> Lesson:
    """``examples``: marks, how far to the right they stand, and which of them are dark."""
    placed = [(moved(mark, 1, 0, 0, 1, x, 0), i in dark) for marks, x, dark in examples for i, mark in enumerate(marks)]
    return Lesson(part, words, tuple(mark for mark, is_dark in placed if not is_dark), tuple(mark for mark, is_dark in placed if is_dark))
