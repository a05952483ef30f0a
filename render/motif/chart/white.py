"""Where a chart is white: a raster of its ink, asked whether a rectangle is free."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil
from typing import TYPE_CHECKING

from motifold.render.motif.model import Point
from motifold.symbols.ink import Polygon

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

CELL = 0.06
"""Side of a cell in u, on charts of ordinary size. The edges of the ink are entered; a question adds its clearance and a cell."""
_MAX_CELLS = 20_000_000


class White:
    """The white of a chart inside ``box`` (u), around the ``ink``. Rectangles handed out are taken from it."""

    def __init__(self, box: tuple[float, float, float, float], ink: Sequence[Polygon], clearance: float) -> None:
        self._x0, self._y0, self._x1, self._y1 = box
        self._cell = max(CELL, ((box[2] - box[0]) * (box[3] - box[1]) / _MAX_CELLS) ** 0.5)
        self._columns = ceil((box[2] - box[0]) / self._cell) + 2
        self._rows = ceil((box[3] - box[1]) / self._cell) + 2
        self._pad = clearance + self._cell
        self._taken: list[tuple[float, float, float, float]] = []
        self._sums = self._counted(ink)

    def free(self, center: Point, width: float, height: float) -> bool:
        """Whether this rectangle, with its clearance, lies inside the box and meets no ink and nothing taken before."""
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

    def _counted(self, ink: Sequence[Polygon]) -> NDArray[np.int32]:
        """Inked cells left of and below each corner of the raster, so that any rectangle is counted in one step."""
        import numpy as np

        grid = np.zeros((self._rows, self._columns), dtype=bool)
        for shrunk in (1.0, 0.5):  # inside too: nothing is set in the eye of a wide symbol
            edges = [
                (cx + (ax - cx) * shrunk, cy + (ay - cy) * shrunk, cx + (bx - cx) * shrunk, cy + (by - cy) * shrunk)
                for ring in ink
                for cx, cy in [(sum(p[0] for p in ring) / len(ring), sum(p[1] for p in ring) / len(ring))]
                for (ax, ay), (bx, by) in zip(ring, (*ring[1:], ring[0]), strict=True)
            ]
            if not edges:
                continue
            a = np.asarray(edges)
            counts = np.maximum(1, np.ceil(np.hypot(a[:, 2] - a[:, 0], a[:, 3] - a[:, 1]) / self._cell).astype(int))
            edge = np.repeat(np.arange(len(a)), counts)
            part = (np.arange(len(edge)) - np.repeat(np.cumsum(counts) - counts, counts)) / counts[edge]
            x = a[edge, 0] + (a[edge, 2] - a[edge, 0]) * part
            y = a[edge, 1] + (a[edge, 3] - a[edge, 1]) * part
            columns = np.clip(((x - self._x0) / self._cell).astype(int), 0, self._columns - 1)
            rows = np.clip(((y - self._y0) / self._cell).astype(int), 0, self._rows - 1)
            grid[rows, columns] = True
        sums = np.zeros((self._rows + 1, self._columns + 1), dtype=np.int32)
        sums[1:, 1:] = grid.cumsum(axis=0, dtype=np.int32).cumsum(axis=1, dtype=np.int32)
        return sums

    def _column(self, x: float) -> int:
        return int(min(max((x - self._x0) / self._cell, 0), self._columns - 1))

    def _row(self, y: float) -> int:
        return int(min(max((y - self._y0) / self._cell, 0), self._rows - 1))
