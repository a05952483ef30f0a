"""Where a chart is white: a raster of its ink, asked whether a rectangle is free."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, hypot
from typing import TYPE_CHECKING

from motifold.render.motif.model import Point
from motifold.symbols.ink import Fill, Mark, Stroke
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

CELL = 0.06
"""Side of a cell in u, on charts of ordinary size. The edges of the ink are entered; a question adds its clearance and a cell."""
TIGHT = 0.035
"""The white around furniture, in u, where there is little."""
_OUTSIDE = 0.45
"""How far beyond all ink a mark stands that finds no place in it."""
_MAX_CELLS = 3_000_000


@dataclass(frozen=True, slots=True)
class Edges:
    """The edges (x0, y0, x1, y1) of all ink, and its box."""

    lines: tuple[NDArray[np.float64], ...]
    box: tuple[float, float, float, float]


def edges_of(ink: Sequence[Mark]) -> Edges:
    """What a chart's white is around, at whatever pitch it is printed."""
    return Edges(tuple(_edges(ink)), _box_of(ink))


class White:
    """The white of a chart inside ``box`` (u), around its ink. Rectangles handed out are taken from it."""

    def __init__(self, box: tuple[float, float, float, float], ink: Edges, clearance: float) -> None:
        self._x0, self._y0, self._x1, self._y1 = box
        self._cell = max(CELL, ((box[2] - box[0]) * (box[3] - box[1]) / _MAX_CELLS) ** 0.5)
        self._columns = ceil((box[2] - box[0]) / self._cell) + 2
        self._rows = ceil((box[3] - box[1]) / self._cell) + 2
        self._pad = clearance + self._cell
        self._tight = min(clearance, TIGHT) + self._cell
        self._core = ink.box
        self._taken = self._no_boxes()
        self._count = 0  # of the rows of ``_taken`` that hold a rectangle
        self._lines: list[tuple[Point, Point]] = []
        self._sums = self._counted(ink)

    def take_first(self, centers: Sequence[Point], width: float, height: float) -> Point | None:
        """The first of ``centers`` where this rectangle, with its clearance, meets no ink and nothing taken before; it is taken now."""
        place = self.first_free(centers, width, height)
        if place is not None:
            self.take((place[0] - width / 2, place[1] - height / 2, place[0] + width / 2, place[1] + height / 2))
        return place

    def take(self, box: tuple[float, float, float, float]) -> None:
        """Whatever white is left in ``box`` is taken."""
        import numpy as np

        if self._count == len(self._taken):
            self._taken = np.concatenate([self._taken, self._no_boxes()])
        self._taken[self._count] = box
        self._count += 1

    @staticmethod
    def _no_boxes() -> NDArray[np.float64]:
        """Room for some hundred rectangles more."""
        import numpy as np

        return np.zeros((256, 4))

    def first_free(self, centers: Sequence[Point], width: float, height: float) -> Point | None:
        """The first of ``centers`` where this rectangle, with its clearance, meets no ink and nothing taken before."""
        import numpy as np

        if not len(centers):
            return None
        found = np.flatnonzero(self.free(np.asarray(centers), width, height))
        return centers[int(found[0])] if len(found) else None

    def free(self, centers: NDArray[np.float64], width: float, height: float, tight: bool = False) -> NDArray[np.bool_]:
        """For each row (x, y) of ``centers`` whether this rectangle about it is white; ``tight``: with less white around it."""
        pad = self._tight if tight else self._pad
        x0, y0 = centers[:, 0] - width / 2, centers[:, 1] - height / 2
        x1, y1 = x0 + width, y0 + height
        free: NDArray[np.bool_] = (x0 >= self._x0) & (y0 >= self._y0) & (x1 <= self._x1) & (y1 <= self._y1)
        left, right = self._cells(x0 - pad, self._x0, self._columns), self._cells(x1 + pad, self._x0, self._columns) + 1
        low, high = self._cells(y0 - pad, self._y0, self._rows), self._cells(y1 + pad, self._y0, self._rows) + 1
        sums, gap = self._sums, 0.06
        free &= sums[high, right] - sums[low, right] - sums[high, left] + sums[low, left] == 0
        near = self._taken_within(x0.min() - gap, y0.min() - gap, x1.max() + gap, y1.max() + gap) if len(centers) else ()
        for bx0, by0, bx1, by1 in near:
            free &= (x0 - gap >= bx1) | (bx0 >= x1 + gap) | (y0 - gap >= by1) | (by0 >= y1 + gap)
        return free

    def take_line(self, line: tuple[Point, Point]) -> None:
        """Remembers a leader, which others should not cross, and keeps labels off it."""
        self._lines.append(line)
        (ax, ay), (bx, by) = line
        count = max(1, int(hypot(bx - ax, by - ay) / 0.3))
        for k in range(count):
            x, y = ax + (bx - ax) * (k + 0.5) / count, ay + (by - ay) * (k + 0.5) / count
            self.take((x - 0.06, y - 0.06, x + 0.06, y + 0.06))

    def crossed(self, line: tuple[Point, Point]) -> int:
        """How many leaders a line would cross."""
        return sum(_cross(line, other) for other in self._lines)

    def labelled(self, line: NDArray[np.float64]) -> NDArray[np.bool_]:
        """For each row (x, y) of ``line``, points along a straight line, whether it lies in a rectangle that was taken."""
        import numpy as np

        found = np.zeros(len(line), dtype=bool)
        if not len(line):
            return found
        (ax, ay), (bx, by) = line[0], line[-1]
        taken = self._taken_within(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))
        middle, half = (taken[:, :2] + taken[:, 2:]) / 2, np.hypot(taken[:, 2] - taken[:, 0], taken[:, 3] - taken[:, 1]) / 2
        off = np.abs((bx - ax) * (middle[:, 1] - ay) - (by - ay) * (middle[:, 0] - ax))
        for x0, y0, x1, y1 in taken[off <= (half + 1e-6) * np.hypot(bx - ax, by - ay) + 1e-9]:
            found |= (line[:, 0] >= x0) & (line[:, 0] <= x1) & (line[:, 1] >= y0) & (line[:, 1] <= y1)
        return found

    def _taken_within(self, x0: float, y0: float, x1: float, y1: float) -> NDArray[np.float64]:
        """The rectangles taken that reach into this box: of many hundred only a few are asked about at a time."""
        taken = self._taken[: self._count]
        return taken[(taken[:, 0] <= x1) & (taken[:, 2] >= x0) & (taken[:, 1] <= y1) & (taken[:, 3] >= y0)]

    def around(self, size: tuple[float, float], target: Point) -> NDArray[np.float64]:
        """Free places for a rectangle just beyond all ink, those nearest to ``target`` first."""
        import numpy as np

        x0, y0, x1, y1 = self._core
        left, right = x0 - _OUTSIDE - size[0] / 2, x1 + _OUTSIDE + size[0] / 2
        low, high = y0 - _OUTSIDE - size[1] / 2, y1 + _OUTSIDE + size[1] / 2
        across, up = np.arange(left, right, 0.25), np.arange(low, high, 0.25)
        rows = [np.stack([across, np.full(len(across), y)], axis=1) for y in (low, high)]
        columns = [np.stack([np.full(len(up), x), up], axis=1) for x in (left, right)]
        places = np.concatenate([*rows, *columns])
        places = places[self.free(places, *size)]
        away = np.hypot(places[:, 0] - target[0], places[:, 1] - target[1])
        return places[np.lexsort((places[:, 1], places[:, 0], np.round(away, 6)))]

    def inked(self, points: NDArray[np.float64]) -> NDArray[np.bool_]:
        """For each row (x, y) of ``points`` whether it lies on the edge of ink, or right beside one."""
        column, row = self._cells(points[:, 0], self._x0, self._columns), self._cells(points[:, 1], self._y0, self._rows)
        sums = self._sums
        found: NDArray[np.bool_] = sums[row + 1, column + 1] - sums[row, column + 1] - sums[row + 1, column] + sums[row, column] > 0
        return found

    def _counted(self, ink: Edges) -> NDArray[np.int32]:
        """Inked cells left of and below each corner of the raster, so that any rectangle is counted in one step."""
        import numpy as np

        grid = np.zeros((self._rows, self._columns), dtype=bool)
        for edges in ink.lines:
            if not len(edges):
                continue
            counts = np.maximum(1, np.ceil(np.hypot(edges[:, 2] - edges[:, 0], edges[:, 3] - edges[:, 1]) / self._cell).astype(int))
            edge = np.repeat(np.arange(len(edges)), counts)
            part = (np.arange(len(edge)) - np.repeat(np.cumsum(counts) - counts, counts)) / counts[edge]
            x = edges[edge, 0] + (edges[edge, 2] - edges[edge, 0]) * part
            y = edges[edge, 1] + (edges[edge, 3] - edges[edge, 1]) * part
            columns = np.clip(((x - self._x0) / self._cell).astype(int), 0, self._columns - 1)
            rows = np.clip(((y - self._y0) / self._cell).astype(int), 0, self._rows - 1)
            grid[rows, columns] = True
        sums = np.zeros((self._rows + 1, self._columns + 1), dtype=np.int32)
        sums[1:, 1:] = grid.cumsum(axis=0, dtype=np.int32).cumsum(axis=1, dtype=np.int32)
        return sums

    def _cells(self, values: NDArray[np.float64], low: float, count: int) -> NDArray[np.int64]:
        import numpy as np

        cells: NDArray[np.int64] = np.clip(((values - low) / self._cell).astype(np.int64), 0, count - 1)
        return cells


def _cross(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    """Whether two segments meet."""

    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    (a, b), (c, d) = one, other
    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def _box_of(ink: Sequence[Mark]) -> tuple[float, float, float, float]:
    import numpy as np

    points = np.asarray([point for mark in ink for point in mark.points]).reshape(-1, 2)
    if not len(points):
        return (0.0, 0.0, 0.0, 0.0)
    (x0, y0), (x1, y1) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return (x0, y0, x1, y1)


def _edges(ink: Sequence[Mark]) -> list[NDArray[np.float64]]:
    """The edges (x0, y0, x1, y1) of all ink: of a box around each straight piece; a curve is taken by the handles that enclose it.

    A closed shape is entered again half way to its middle: nothing is set in the eye of a wide symbol.
    """
    import numpy as np

    if not ink:
        return []
    points = np.asarray([point for mark in ink for point in mark.points])
    sizes = np.asarray([len(mark.points) for mark in ink])
    halves = np.asarray([mark.width / 2 if isinstance(mark, Stroke) else 0.0 for mark in ink])
    closed = np.asarray([isinstance(mark, Fill) or mark.closed for mark in ink])
    first = np.cumsum(sizes) - sizes
    owner = np.repeat(np.arange(len(ink)), sizes)
    after = np.arange(1, len(points) + 1)
    after[first + sizes - 1] = first
    kept = np.ones(len(points), dtype=bool)
    kept[(first + sizes - 1)[~closed]] = False
    bars = _boxed(points[kept], points[after[kept]], halves[owner[kept]])
    middle = np.repeat(np.add.reduceat(points, first) / sizes[:, None], sizes, axis=0)
    inner = (middle + (points - middle) / 2)[closed[owner]]
    place = np.cumsum(closed[owner]) - 1
    return [bars, np.hstack([inner, inner[place[after[closed[owner]]]]])]


def _boxed(start: NDArray[np.float64], end: NDArray[np.float64], half: NDArray[np.float64]) -> NDArray[np.float64]:
    """The four edges of the box around each straight piece, as wide as its stroke."""
    import numpy as np

    along = end - start
    along = along * (half / np.maximum(np.hypot(along[:, 0], along[:, 1]), 1e-12))[:, None]
    side = np.stack([-along[:, 1], along[:, 0]], axis=1)
    start, end = start - along, end + along
    corners = [start + side, end + side, end - side, start - side]
    return np.concatenate([np.hstack([corners[i], corners[(i + 1) % 4]]) for i in range(4)])
