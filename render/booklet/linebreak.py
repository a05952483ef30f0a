"""Breaking a paragraph into lines as a whole: of all ways, the one whose lines are most even.

After D. E. Knuth and M. F. Plass, "Breaking paragraphs into lines", Software: Practice and Experience 11 (1981): the least sum over all
lines of a badness that grows with the empty room, found by dynamic programming. Lines are ragged: instructions are read word by word, and
stretched spaces in a narrow column cost more than an even edge gives.
"""

from __future__ import annotations

import functools
from collections.abc import Sequence
from math import inf

from motifold.render.booklet.inline import Type, Word, words_of

_SHORT_LAST = 300.0   # a last line of one short word


def line_width(words: Sequence[Word]) -> float:
    """From the first word's left to the last word's right edge."""
    return sum(word.width + word.space for word in words[:-1]) + words[-1].width if words else 0.0


def break_lines(words: Sequence[Word], width: float, first_indent: float = 0.0) -> tuple[tuple[Word, ...], ...]:
    """The lines of least total badness, no line wider than ``width`` unless one word alone is.

    ``first_indent`` narrows the first line. A line of words w units wide in room r costs (100 (r - w) / r)^2 / 10 plus the penalty of its
    break; the last line costs only when it is very short.
    """
    count = len(words)
    best: list[float] = [0.0] + [inf] * count
    start_of: list[int] = [0] * (count + 1)
    for start in range(count):
        if best[start] == inf:
            continue
        room = width - (first_indent if start == 0 else 0.0)
        used = 0.0
        for end in range(start + 1, count + 1):
            word = words[end - 1]
            used += word.width
            if used > room + 1e-6 and end > start + 1:
                break
            cost = best[start] + _badness(used, room, end == count or word.forced, word.penalty)
            if cost < best[end]:
                best[end], start_of[end] = cost, start
            if word.forced:
                break
            used += word.space
    lines: list[tuple[Word, ...]] = []
    end = count
    while end:
        lines.append(tuple(words[start_of[end] : end]))
        end = start_of[end]
    return tuple(reversed(lines))


@functools.lru_cache(maxsize=8192)
def broken(spans: tuple[tuple[str, Type], ...], width: float, first_indent: float = 0.0) -> tuple[tuple[Word, ...], ...]:
    """The lines of a paragraph of ``spans``; the same paragraph is asked for in every plan that is compared."""
    return break_lines(words_of(spans, width - first_indent), width, first_indent)


def _badness(used: float, room: float, last: bool, penalty: float) -> float:
    slack = max(0.0, (room - used) / room)
    if last:
        return _SHORT_LAST * (0.12 - used / room) / 0.12 if used / room < 0.12 else 0.0
    return 1000 * slack * slack + penalty
