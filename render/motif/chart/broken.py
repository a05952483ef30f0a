"""Stems that pass behind others, broken where these lie over them, so that a crossing can be read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from motifold.render.motif.ink import Segment, segments_of, to_segment
from motifold.symbols.ink import Mark, Stroke, flatten

_WHITE = 0.06
"""Left white on either side of the stem in front."""
_STEP = 0.02
_SHORTEST = 0.09
"""A shorter piece, between two that lie over it, is left out."""


def broken(marks: Sequence[Mark], over: Sequence[Sequence[Mark]]) -> tuple[Mark, ...]:
    """The marks of a stitch, its lines broken where the marks of others lie ``over`` them; what has no ends stays whole."""
    if not over:
        return tuple(marks)
    front = [segment for other in over for segment in segments_of(other)]
    found: list[Mark] = []
    for mark in marks:
        found += _pieces(mark, front) if isinstance(mark, Stroke) and not mark.closed else [mark]
    return tuple(found)


def behind(pairs: Sequence[tuple[int, int]]) -> Mapping[int, list[int]]:
    """Of pairs (front, back), what lies over each stitch."""
    found: dict[int, list[int]] = {}
    for front, back in pairs:
        found.setdefault(back, []).append(front)
    return found


def _pieces(mark: Stroke, front: Sequence[Segment]) -> list[Mark]:
    """What of a stroke shows beside the ink in front of it; the stroke itself where that does not reach it."""
    line = [complex(x, y) for x, y in flatten(mark.points, mark.smooth)]
    xs, ys = [p.real for p in line], [p.imag for p in line]
    near = [
        (a, b, half) for a, b, half in front
        if min(a.real, b.real) < max(xs) + 1 and max(a.real, b.real) > min(xs) - 1
        and min(a.imag, b.imag) < max(ys) + 1 and max(a.imag, b.imag) > min(ys) - 1
    ]  # fmt: skip
    if not near:
        return [mark]
    pieces: list[list[complex]] = [[]]
    hidden = False
    for p in _finely(line):
        if any(to_segment(p, a, b) < half + mark.width / 2 + _WHITE for a, b, half in near):
            hidden = True
            if pieces[-1]:
                pieces.append([])
        else:
            pieces[-1].append(p)
    if not hidden:
        return [mark]
    kept = [piece for piece in pieces if len(piece) > 1 and abs(piece[-1] - piece[0]) > _SHORTEST]
    return [Stroke(tuple((p.real, p.imag) for p in _coarsely(piece)), mark.width) for piece in kept]


def _finely(line: Sequence[complex]) -> list[complex]:
    found = [line[0]]
    for a, b in pairwise(line):
        count = max(int(abs(b - a) / _STEP), 1)
        found += [a + (b - a) * k / count for k in range(1, count + 1)]
    return found


def _coarsely(line: Sequence[complex]) -> list[complex]:
    """The same line without the points that lie straight between their neighbours."""
    found = [line[0]]
    for here, there in pairwise(line[1:]):
        ahead, past = here - found[-1], there - here
        if abs((ahead.conjugate() * past).imag) > 1e-6 * abs(ahead) * abs(past):
            found.append(here)
    return [*found, line[-1]]
