"""Places for marks: white as near as can be to what they mark, else further off with a light line to it. None is ever left out."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import hypot
from typing import TYPE_CHECKING, Literal

from motifold.render.motif.chart.items import Item, triangle_item
from motifold.render.motif.chart.starts import Start
from motifold.render.motif.chart.white import White
from motifold.render.motif.model import Point
from motifold.symbols import marks as working
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

NEAR = 1.7
"""A mark no further than this, in u, from what it marks needs no line to it."""
FURTHER = 7.0
"""How far inside the chart white is looked for, before a mark goes outside."""
SMALL = 0.36
"""Side of a triangle where there is little room, in u."""
_STEP = 0.12
_TRIED = 60
"""How many places with a line are compared."""
_INK_COST = 3.0
"""What a u of a line over ink costs, against one over white."""
_LABEL_COST = 40.0
_CROSS_COST = 12.0
"""What it costs, in u, that it crosses another line."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where a mark stands: ``tight`` with less white around it than usual; ``leader``: from its edge to what it marks."""

    at: Point
    tight: bool
    leader: tuple[Point, Point] | None = None


def put(white: White, target: Point, wish: Point, size: tuple[float, float], small: tuple[float, float]) -> Place | None:
    """The best place for a rectangle that marks ``target`` and would best stand at ``wish``; it is taken from ``white``.

    ``size`` where there is room, ``small`` where there is not. Beyond the stitches all is white: None only where ``white`` ends there.
    """
    for tight in (False, True):
        measure = small if tight else size
        found = spots(white, wish, NEAR + 0.6, measure, tight)
        found = found[[hypot(x - target[0], y - target[1]) <= NEAR for x, y in found]]
        if len(found):
            return _taken(white, Place((float(found[0][0]), float(found[0][1])), tight), measure)
    for tight, within in ((False, FURTHER), (True, FURTHER), (False, 0.0)):
        measure = small if tight else size
        found = spots(white, target, within, measure, tight) if within else white.around(measure, target)
        best = min(((*lead(white, (float(x), float(y)), measure, target), (float(x), float(y))) for x, y in found[:_TRIED]), default=None)
        if best is not None:
            return _taken(white, Place(best[2], tight, best[1]), measure)
    return None


def yarn_triangle(kind: Literal["attach", "fasten off"], index: int, target: Point, start: Start, white: White) -> list[Item]:
    """Yarn joined before the stitch that it is joined with, or cut beyond the last one."""
    side = working.TRIANGLE + 0.1
    toward = -1.0 if kind == "attach" else 1.0
    wish = (target[0] + 0.55 * toward * start.on[0], target[1] + 0.55 * toward * start.on[1])
    place = put(white, target, wish, (side, side), (SMALL + 0.06, SMALL + 0.06))
    if place is None:
        return []
    item = triangle_item(kind, index, place.at, start.on, SMALL if place.tight else working.TRIANGLE)
    return [replace(item, target=target, leader=place.leader)]


def spots(white: White, wish: Point, within: float, size: tuple[float, float], tight: bool) -> NDArray[np.float64]:
    """White places no further than ``within`` from ``wish``, the nearest first."""
    import numpy as np

    at = _offsets(within) + np.asarray(wish)
    found: NDArray[np.float64] = at[white.free(at, *size, tight)]
    return found


def lead(white: White, place: Point, size: tuple[float, float], target: Point) -> tuple[float, tuple[Point, Point]]:
    """The straight line from the edge of a rectangle to what it marks, and what it costs: its length, more over ink and labels."""
    import numpy as np

    dx, dy = target[0] - place[0], target[1] - place[1]
    long = hypot(dx, dy) or 1e-9
    off = min(size[0] / 2 / max(abs(dx) / long, 1e-9), size[1] / 2 / max(abs(dy) / long, 1e-9)) + 0.1
    begin = (place[0] + dx / long * off, place[1] + dy / long * off)
    parts = np.linspace(0.0, 1.0, max(2, int(long / 0.1)))[:, None]
    line = np.asarray(begin) + (np.asarray(target) - np.asarray(begin)) * parts
    over = float(white.inked(line).mean()), float(white.labelled(line).mean())
    crossed = _CROSS_COST * white.crossed((begin, target))
    return long * (1 + _INK_COST * over[0] + _LABEL_COST * over[1]) + crossed, (begin, target)


def _taken(white: White, place: Place, size: tuple[float, float]) -> Place:
    (x, y), (w, h) = place.at, size
    white.take((x - w / 2, y - h / 2, x + w / 2, y + h / 2))
    if place.leader is not None:
        white.take_line(place.leader)
    return place


@lru_cache(maxsize=8)
def _offsets(within: float) -> NDArray[np.float64]:
    """Offsets to try, nearest first."""
    import numpy as np

    reach = int(within / _STEP)
    grid = [(i * _STEP, j * _STEP) for i in range(-reach, reach + 1) for j in range(-reach, reach + 1)]
    return np.asarray(sorted((p for p in grid if hypot(*p) <= within), key=lambda p: (round(p[0] ** 2 + p[1] ** 2, 6), p)))
