"""Where a chart is white: a raster of its ink, asked whether a rectangle is free."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from math import ceil, hypot
from typing import TYPE_CHECKING

from motifold.render.motif.model import Point
from motifold.symbols.ink import Mark, Stroke, flatten, outline

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

CELL = 0.08
"""Side of a cell in u. Ink is entered along the middle of its strokes; a question adds half a stroke, the clearance and a cell."""
_HALF_STROKE = 0.07
_MAX_CELLS = 40_000_000


class White:
    """The white of a chart inside ``box`` (u). Rectangles handed out are taken from it."""

    def __init__(self, box: tuple[float, float, float, float], marks: Iterable[Mark], clearance: float) -> None:
        import numpy as np

        self._x0, self._y0, self._x1, self._y1 = box
        self._cell = max(CELL, ((box[2] - box[0]) * (box[3] - box[1]) / _MAX_CELLS) ** 0.5)
        self._columns = ceil((box[2] - box[0]) / self._cell) + 2
        self._rows = ceil((box[3] - box[1]) / self._cell) + 2
        self._pad = _HALF_STROKE + clearance + self._cell
        self._taken: list[tuple[float, float, float, float]] = []
        ink = np.zeros((self._rows, self._columns), dtype=bool)
        points = [p for mark in marks for p in _samples(mark, self._cell)]
        if points:
            xy = np.asarray(points)
            columns = np.clip(((xy[:, 0] - self._x0) / self._cell).astype(int), 0, self._columns - 1)
            rows = np.clip(((xy[:, 1] - self._y0) / self._cell).astype(int), 0, self._rows - 1)
            ink[rows, columns] = True
        sums = np.zeros((self._rows + 1, self._columns + 1), dtype=np.int32)
        sums[1:, 1:] = ink.cumsum(axis=0, dtype=np.int32).cumsum(axis=1, dtype=np.int32)
        self._sums: NDArray[np.int32] = sums

    def free(self, center: Point, width: float, height: float) -> bool:
        """Whether this rectangle, with its clearance, meets no ink and nothing taken before."""
        x0, y0 = center[0] - width / 2, center[1] - height / 2
        x1, y1 = x0 + width, y0 + height
        if x0 < self._x0 or y0 < self._y0 or x1 > self._x1 or y1 > self._y1:
            return False
        gap = 0.06
        if any(x0 - gap < b[2] and b[0] < x1 + gap and y0 - gap < b[3] and b[1] < y1 + gap for b in self._taken):
            return False
        left, right = self._column(x0 - self._pad), self._column(x1 + self._pad) + 1
        low, high = self._row(y0 - self._pad), self._row(y1 + self._pad) + 1
        sums = self._sums
        return bool(sums[high, right] - sums[low, right] - sums[high, left] + sums[low, left] == 0)

    def take(self, center: Point, width: float, height: float) -> None:
        self._taken.append((center[0] - width / 2, center[1] - height / 2, center[0] + width / 2, center[1] + height / 2))

    def _column(self, x: float) -> int:
        return int(min(max((x - self._x0) / self._cell, 0), self._columns - 1))

    def _row(self, y: float) -> int:
        return int(min(max((y - self._y0) / self._cell, 0), self._rows - 1))


def _samples(mark: Mark, step: float) -> list[Point]:
    """Points along a mark no further apart than a cell, and inside what it closes: nothing is set inside an oval."""
    closed = not isinstance(mark, Stroke) or mark.closed
    edge = outline(mark) if not isinstance(mark, Stroke) else tuple(flatten(mark.points, mark.smooth))
    line = [*edge, edge[0]] if closed else list(edge)
    out: list[Point] = []
    for (ax, ay), (bx, by) in pairwise(line):
        count = max(1, ceil(hypot(bx - ax, by - ay) / step))
        out += [(ax + (bx - ax) * i / count, ay + (by - ay) * i / count) for i in range(count + 1)]
    if closed:
        cx, cy = sum(p[0] for p in edge) / len(edge), sum(p[1] for p in edge) / len(edge)
        out += [(cx + (x - cx) * t, cy + (y - cy) * t) for x, y in edge for t in (0.0, 0.25, 0.5, 0.75)]
    return out
