"""The real shapes of placed symbols as round-ended segments, kept in a grid: what is near a place, and how much white is left there."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import field
from itertools import pairwise
from math import floor
from typing import TYPE_CHECKING

from motifold.render.fabric.model import Stitch
from motifold.render.motif.ground import Ground, point
from motifold.symbols.glyphs import LegAt, stitch_marks
from motifold.symbols.ink import Fill, Mark, flatten
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    ComplexArray = NDArray[np.complex128]
    FloatArray = NDArray[np.float64]

Segment = tuple[complex, complex, float]
"""A straight piece of a stroke: its ends, and half its width."""

_CELL = 1.6


@dataclass(slots=True)
class Ink:
    """Segments by grid cell, each with the symbol that it belongs to."""

    cells: dict[tuple[int, int], list[tuple[Segment, int]]] = field(default_factory=dict)

    def add(self, owner: int, segments: Iterable[Segment]) -> None:
        for segment in segments:
            for cell in _cells(segment):
                self.cells.setdefault(cell, []).append((segment, owner))

    def near(self, at: complex, reach: float) -> list[Segment]:
        """All segments in the cells within reach of a place."""
        found: dict[int, Segment] = {}
        for i in range(floor((at.real - reach) / _CELL), floor((at.real + reach) / _CELL) + 1):
            for j in range(floor((at.imag - reach) / _CELL), floor((at.imag + reach) / _CELL) + 1):
                for segment, _ in self.cells.get((i, j), ()):
                    found[id(segment)] = segment
        return list(found.values())

    def white(self, segments: Sequence[Segment], but: frozenset[int] = frozenset(), least: float = 0.0) -> float:
        """The least distance from these segments to any other ink (negative when they overlap); not looked for below ``least``, nor
        past a cell.
        """
        found = _CELL
        for segment in segments:
            seen: set[int] = set()
            for cell in _cells(segment):
                for other, owner in self.cells.get(cell, ()):
                    if owner in but or id(other) in seen:
                        continue
                    seen.add(id(other))
                    found = min(found, apart(segment, other))
                    if found < least:
                        return found
        return found


def _cells(segment: Segment) -> list[tuple[int, int]]:
    """The grid cells within reach of a segment."""
    (a, b, half), reach = segment, 0.25
    x0, x1 = sorted((a.real, b.real))
    y0, y1 = sorted((a.imag, b.imag))
    grow = half + reach
    return [
        (i, j)
        for i in range(floor((x0 - grow) / _CELL), floor((x1 + grow) / _CELL) + 1)
        for j in range(floor((y0 - grow) / _CELL), floor((y1 + grow) / _CELL) + 1)
    ]


def apart(first: Segment, second: Segment) -> float:
    """White between two round-ended segments; negative where they overlap."""
    a, b, r = first
    c, d, q = second
    return _distance(a, b, c, d) - r - q


def _distance(a: complex, b: complex, c: complex, d: complex) -> float:
    u, v = b - a, d - c
    cross = u.real * v.imag - u.imag * v.real
    if cross:
        w = c - a
        t = (w.real * v.imag - w.imag * v.real) / cross
        s = (w.real * u.imag - w.imag * u.real) / cross
        if 0.0 <= t <= 1.0 and 0.0 <= s <= 1.0:
            return 0.0
    return min(to_segment(a, c, d), to_segment(b, c, d), to_segment(c, a, b), to_segment(d, a, b))


def to_segment(p: complex, a: complex, b: complex) -> float:
    """Distance from a point to a segment."""
    v = b - a
    square = v.real * v.real + v.imag * v.imag
    if square < 1e-18:
        return abs(p - a)
    w = p - a
    t = min(max((w.real * v.real + w.imag * v.imag) / square, 0.0), 1.0)
    return abs(w - t * v)


def segments_of(marks: Iterable[Mark]) -> list[Segment]:
    """Marks as round-ended segments; a filled disc is one point as wide as itself."""
    found: list[Segment] = []
    for mark in marks:
        flat = [complex(x, y) for x, y in flatten(mark.points, mark.smooth)]
        if isinstance(mark, Fill):
            centre = sum(flat[:-1]) / (len(flat) - 1)
            found.append((centre, centre, max(abs(p - centre) for p in flat)))
            continue
        half = mark.width / 2
        if mark.closed and abs(flat[0] - flat[-1]) > 1e-9:
            flat.append(flat[0])
        found.extend((a, b, half) for a, b in pairwise(flat))
    return found


def symbol_segments(ground: Ground, stitch: Stitch) -> list[Segment]:
    """The ink of one placed stitch; nothing where it has no ink of its own."""
    if stitch.role in ("standing", "given"):
        return []
    if stitch.id in ground.tips:
        first, last = ground.tips[stitch.id]
        marks = stitch_marks(stitch.kind, [LegAt(stitch.kind, point(first))], point(last), point(ground.normals[stitch.id]))
    elif stitch.id in ground.heads:
        feet = [point(foot) for foot in ground.feet[stitch.id]]
        # A foundation stitch stands on nothing: it has a foot and no leg that would say on what.
        legs = [LegAt(leg.kind, foot, leg.base.foot) for leg, foot in zip(stitch.legs, feet, strict=bool(stitch.legs))]
        bend = [point(p) for p in ground.bends.get(stitch.id, ())]
        head, normal = ground.heads[stitch.id], ground.normals[stitch.id]
        legs = legs or [LegAt(stitch.kind, feet[0])]
        bars = ground.bars.get(stitch.id)
        marks = stitch_marks(stitch.kind, legs, point(head), point(normal), stitch.gather, bend, bars)
    else:
        return []
    return segments_of(marks)


def white_at(places: Sequence[complex], shape: Sequence[Segment], others: Sequence[Segment]) -> list[float]:
    """The white that a shape (about 0) leaves to other segments, for each place that it may be moved to."""
    import numpy as np

    found = np.full(len(places), 9.0)
    if not others:
        return [9.0] * len(places)
    at = np.asarray(places)[:, None]
    c, d = np.array([s[0] for s in others])[None, :], np.array([s[1] for s in others])[None, :]
    half = np.array([s[2] for s in others])[None, :]
    for start, end, own in shape:
        a, b = at + start, at + end
        distance = np.minimum(_points_to(a, c, d), _points_to(b, c, d))
        if start != end:
            distance = np.minimum(distance, np.minimum(_points_to(c, a, b), _points_to(d, a, b)))
            u, v, w = b - a, d - c, c - a
            cross = u.real * v.imag - u.imag * v.real
            cross = np.where(cross == 0, 1e-30, cross)
            t = (w.real * v.imag - w.imag * v.real) / cross
            s = (w.real * u.imag - w.imag * u.real) / cross
            distance = np.where((t >= 0) & (t <= 1) & (s >= 0) & (s <= 1), 0.0, distance)
        found = np.minimum(found, (distance - half - own).min(axis=1))
    return [float(x) for x in found]


def _points_to(p: ComplexArray, a: ComplexArray, b: ComplexArray) -> FloatArray:
    """Distances from points to segments, broadcast."""
    import numpy as np

    v, w = b - a, p - a
    square = np.maximum(v.real**2 + v.imag**2, 1e-18)
    t = np.clip((w.real * v.real + w.imag * v.imag) / square, 0.0, 1.0)
    return np.abs(w - t * v)
