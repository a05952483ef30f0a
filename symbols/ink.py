"""Marks: the two ways of putting ink down, and their outlines. Plain geometry, in whatever unit the points are in.

``smooth`` points are a chain of cubic curves: a point, two handles, a point, two handles, a point ... Otherwise straight lines join them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from math import atan2, ceil, cos, hypot, pi, sin

from motifold.symbols.record import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line of even width with round ends and corners; ``closed`` joins its end to its start."""

    points: tuple[Point, ...]
    width: float
    smooth: bool = False
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled shape."""

    points: tuple[Point, ...]
    smooth: bool = False


Mark = Stroke | Fill
Polygon = tuple[Point, ...]

_FLAT = 0.006
"""How far a flattened curve may leave the true one, in the unit of the points (u: a sixtieth of a millimetre on paper)."""
_CAP_STEPS = 4
_HANDLE = 0.36
"""The longest handle of a cubic through points, over the distance of its ends."""


def _weights(steps: int) -> tuple[tuple[float, float, float, float], ...]:
    return tuple(((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3) for t in (i / steps for i in range(1, steps + 1)))


_STEPS = tuple(_weights(steps) for steps in range(1, 13))
_CAP = tuple((sin(pi * i / _CAP_STEPS), cos(pi * i / _CAP_STEPS)) for i in range(_CAP_STEPS + 1))


def flatten(points: Sequence[Point], smooth: bool) -> list[Point]:
    """The points joined by straight lines only; a cubic is cut into as many pieces as its bend asks, up to twelve."""
    if not smooth:
        return list(points)
    flat = [points[0]]
    for i in range(0, len(points) - 3, 3):
        (ax, ay), (bx, by), (cx, cy), (dx, dy) = points[i : i + 4]
        bend = max(abs(ax - 2 * bx + cx) + abs(ay - 2 * by + cy), abs(bx - 2 * cx + dx) + abs(by - 2 * cy + dy))
        weights = _STEPS[min(11, int((0.75 * bend / _FLAT) ** 0.5))]
        flat.extend((p * ax + q * bx + r * cx + s * dx, p * ay + q * by + r * cy + s * dy) for p, q, r, s in weights)
    return flat


def outline(mark: Mark) -> Polygon:
    """The outer edge of a mark as one closed polygon, line width included; an open oval's too, as nothing may stand inside it."""
    if isinstance(mark, Fill):
        return tuple(_open_ring(flatten(mark.points, mark.smooth)))
    if len(mark.points) == 2 and not mark.closed:
        return _capsule(mark.points[0], mark.points[1], mark.width / 2)
    start = complex(*mark.points[0])
    along = complex(*mark.points[1]) - start
    turn = along / abs(along) if abs(along) > 1e-9 else 1 + 0j
    back = turn.conjugate()
    own = tuple([(complex(x, y) - start) * back for x, y in mark.points])
    shape = _shape_outline(tuple([(round(z.real, 7), round(z.imag, 7)) for z in own]), mark.width, mark.smooth, mark.closed)
    placed = [z * turn + start for z in shape]
    return tuple([(z.real, z.imag) for z in placed])


@lru_cache(maxsize=4096)
def _shape_outline(points: tuple[Point, ...], width: float, smooth: bool, closed: bool) -> tuple[complex, ...]:
    """The outline of a stroke in its own place: from its first point, which lies at 0, to the right. Most symbols share a few shapes."""
    half = width / 2
    flat = flatten(points, smooth)
    if closed:
        ring = _open_ring(flat)
        edge = _offset(ring if _area(ring) > 0 else ring[::-1], half, closed=True)
    else:
        edge = _offset(flat, half, closed=False) + _offset(flat[::-1], half, closed=False)
    return tuple([complex(x, y) for x, y in edge])


def outlines(marks: Iterable[Mark]) -> tuple[Polygon, ...]:
    """One closed polygon for each mark."""
    return tuple(outline(mark) for mark in marks)


def bounds(marks: Iterable[Mark]) -> tuple[float, float, float, float]:
    """The box (x0, y0, x1, y1) of all ink; ValueError where there is none."""
    points = [point for mark in marks for point in outline(mark)]
    return (min(p[0] for p in points), min(p[1] for p in points), max(p[0] for p in points), max(p[1] for p in points))


def moved(mark: Mark, a: float, b: float, c: float, d: float, e: float, f: float) -> Mark:
    """The mark under x' = a x + c y + e, y' = b x + d y + f. Stroke widths follow the scale (the root of the area's factor)."""
    points = tuple((a * x + c * y + e, b * x + d * y + f) for x, y in mark.points)
    if isinstance(mark, Fill):
        return Fill(points, mark.smooth)
    return Stroke(points, mark.width * abs(a * d - b * c) ** 0.5, mark.smooth, mark.closed)


def circle(center: Point, radius: float) -> tuple[Point, ...]:
    """A circle as four cubics."""
    return oval(center, (radius, 0.0), radius, 0.5523, 0.5523)


def oval(center: Point, half: Point, breadth: float, tip: float = 0.40, side: float = 0.60) -> tuple[Point, ...]:
    """A closed oval as four cubics: ``half`` from the centre to one tip, ``breadth`` half across.

    ``tip`` and ``side`` are the handles at tips and flanks, as parts of the half axes: 0.5523 for both is an ellipse; a smaller tip is more
    pointed, like a chain stitch seen from above.
    """
    cx, cy = center
    ax, ay = half
    length = hypot(ax, ay) or 1.0
    bx, by = -ay / length * breadth, ax / length * breadth

    def at(x: float, y: float) -> Point:
        return (cx + x * ax + y * bx, cy + x * ay + y * by)

    return (
        at(1, 0), at(1, tip), at(side, 1), at(0, 1), at(-side, 1), at(-1, tip), at(-1, 0),
        at(-1, -tip), at(-side, -1), at(0, -1), at(side, -1), at(1, -tip), at(1, 0),
    )  # fmt: skip


def arc(center: Point, radius: float, start: float, sweep: float) -> tuple[Point, ...]:
    """A part of a circle as cubics of at most a quarter turn each; angles in radians, counter-clockwise."""
    pieces = max(1, ceil(abs(sweep) / (pi / 2) - 1e-9))
    step = sweep / pieces
    handle = radius * 4 / 3 * sin(step / 4) / cos(step / 4)
    points: list[Point] = [(center[0] + radius * cos(start), center[1] + radius * sin(start))]
    for i in range(pieces):
        a, b = start + i * step, start + (i + 1) * step
        ex, ey = center[0] + radius * cos(b), center[1] + radius * sin(b)
        px, py = points[-1]
        points += [(px - handle * sin(a), py + handle * cos(a)), (ex + handle * sin(b), ey - handle * cos(b)), (ex, ey)]
    return tuple(points)


def through(points: Sequence[Point]) -> tuple[Point, ...]:
    """A smooth chain of cubics through the points (Catmull-Rom, ends free); handles are no longer than a good third of their piece, or a
    short piece beside a long one would loop.
    """
    out: list[Point] = [points[0]]
    last = len(points) - 1
    for i in range(last):
        before, here, there, after = points[max(i - 1, 0)], points[i], points[i + 1], points[min(i + 2, last)]
        most = _HANDLE * hypot(there[0] - here[0], there[1] - here[1])
        first, second = (_handle(before, there, most), _handle(here, after, most))
        out += [(here[0] + first[0], here[1] + first[1]), (there[0] - second[0], there[1] - second[1]), there]
    return tuple(out)


def _handle(start: Point, end: Point, most: float) -> Point:
    """A sixth of the way from start to end, or so far along it."""
    x, y = (end[0] - start[0]) / 6, (end[1] - start[1]) / 6
    scale = min(1.0, most / (hypot(x, y) or 1.0))
    return (x * scale, y * scale)


def _open_ring(points: list[Point]) -> list[Point]:
    """A ring without its closing point."""
    return points[:-1] if len(points) > 1 and hypot(points[0][0] - points[-1][0], points[0][1] - points[-1][1]) < 1e-9 else points


def _area(ring: Sequence[Point]) -> float:
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]], strict=True))


def _capsule(start: Point, end: Point, half: float) -> Polygon:
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = hypot(dx, dy)
    tx, ty = (half * dx / length, half * dy / length) if length > 1e-12 else (half, 0.0)
    (ax, ay), (bx, by) = start, end
    return (
        *((bx + ty * c + tx * s, by - tx * c + ty * s) for s, c in _CAP),
        *((ax - ty * c - tx * s, ay + tx * c - ty * s) for s, c in _CAP),
    )


def _offset(points: Sequence[Point], half: float, closed: bool) -> list[Point]:
    """The right-hand edge of a path, and (open) the round end after it. Corners are rounded on the outside, mitred on the inside."""
    count = len(points)
    if count < 2:
        return []
    edges: list[tuple[float, float]] = []
    for i in range(count if closed else count - 1):
        (ax, ay), (bx, by) = points[i], points[(i + 1) % count]
        length = hypot(bx - ax, by - ay) or 1e-12
        edges.append(((bx - ax) / length, (by - ay) / length))
    out: list[Point] = []
    for i in range(count):
        x, y = points[i]
        into = edges[i - 1] if closed or i > 0 else edges[0]
        away = edges[i % len(edges)] if closed or i < count - 1 else edges[-1]
        cross = into[0] * away[1] - into[1] * away[0]
        dot = into[0] * away[0] + into[1] * away[1]
        if cross > 0.35 or dot < -0.9:  # a corner on this side: an arc from one edge's normal to the next
            turn = atan2(abs(cross), dot)
            steps = max(1, ceil(turn / 0.6))
            start = atan2(-into[0], into[1])
            out += [(x + half * cos(start + turn * k / steps), y + half * sin(start + turn * k / steps)) for k in range(steps + 1)]
        else:
            scale = half / max(0.5, 1 + dot)
            out.append((x + scale * (into[1] + away[1]), y - scale * (into[0] + away[0])))
    if not closed:
        (x, y), (tx, ty) = points[-1], edges[-1]
        out += [(x + half * (ty * c + tx * s), y + half * (-tx * c + ty * s)) for s, c in _CAP[1:]]
    return out
