"""The bracket around what repeats, with how many times: outside the last round, or below the foundation. A hairline, out of the way."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, ceil, cos, hypot, pi, sin, tau

from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.motif.chart.items import Item, item_box
from motifold.render.motif.chart.look import ChartLook, Repeat
from motifold.render.motif.chart.starts import Start
from motifold.render.motif.chart.white import White
from motifold.render.motif.model import Layout, Point
from motifold.symbols.ink import Mark, Stroke, arc

LABEL_PT = 7.5
_LINE_MM = 0.17
"""The bracket's line as it is printed."""
_TICK_MM = 1.1
_CLEAR_MM = 0.35
_CORNER = 0.12
"""How far, in radians, the end of a repeat may lie from a corner and still be taken to lie on it."""
_SHORT = 0.22
"""How much of u a bracket leaves free at either end, so that its neighbours would not touch it."""
_STEP = 0.3
"""How far apart, in u, the places are that are asked whether they are white."""
_FURTHEST = 3.2
"""How far beyond the last round's heads a bracket may go, in u."""
Path = tuple[Point, ...]


def round_bracket(repeat: Repeat, layout: Layout, starts: dict[int, Start], white: White, look: ChartLook) -> Item | None:
    """A bracket on the copy of the repeat that lies nearest to the top and is white outside; None where no copy is."""
    index = max(starts)
    flip = -1.0 if look.left_handed else 1.0
    corners = next(((shape.corners if len(shape.corners) > 2 else ()) for shape in layout.shapes if shape.round == index), ())
    ring = tuple((flip * x, y) for x, y in corners)
    reach = float(starts[index].reaches.max())
    step = tau / repeat.times
    copies = sorted(range(repeat.times), key=lambda k: (round(_from_top(repeat, k * step), 6), k))
    for away in [0.55 + 0.25 * i for i in range(ceil((_FURTHEST - 0.55) / 0.25))]:
        for copy in copies[:8]:
            margin = _SHORT / max(reach, 1.0)
            path = _along(ring, reach, away, repeat.start + copy * step + margin, repeat.end + copy * step - margin)
            item = _bracket(index, path, repeat.times, look, not ring)
            if _is_white(item, path, white):
                white.take(item_box(item))
                return item
    return None


def row_bracket(repeat: Repeat, index: int, low: float, look: ChartLook) -> Item:
    """A bracket below the work, whose lowest ink is at ``low``; it goes with the first row, ``index``."""
    level = low - max(0.5, (_TICK_MM + _CLEAR_MM) / look.pitch_mm, (cap_height_mm("sans", LABEL_PT) / 2 + _CLEAR_MM) / look.pitch_mm)
    path = ((repeat.start + _SHORT, level), (repeat.end - _SHORT, level))
    return _bracket(index, path, repeat.times, look, False)


def _from_top(repeat: Repeat, turned: float) -> float:
    """How far the middle of a copy is from straight up; a little less to the right than to the left, so that it is never a toss."""
    off = ((repeat.start + repeat.end) / 2 + turned - pi / 2 + pi) % tau - pi
    return abs(off + 1e-3)


def _along(ring: Path, reach: float, away: float, begin: float, end: float) -> Path:
    """The outline of the last round from one angle to another, ``away`` further out: on a circle in small steps, else by its corners."""
    if not ring:
        count = max(2, ceil((end - begin) * (reach + away) / _STEP))
        angles = [begin + (end - begin) * k / count for k in range(count + 1)]
        return tuple(((reach + away) * cos(a), (reach + away) * sin(a)) for a in angles)
    sides = len(ring)
    side = _one_side(ring, begin, end, away)
    if side:
        return side
    apothem = min(_to_side(ring[i - 1], ring[i]) for i in range(sides))
    scale = 1 + away / max(apothem, 0.5)
    grown = [(scale * x, scale * y) for x, y in ring]
    inside = sorted((atan2(y, x) - begin) % tau for x, y in grown)
    turns = [turn for turn in inside if 0.02 < turn < end - begin - 0.02]
    return tuple(_crossing(grown, begin + turn) for turn in (0.0, *turns, end - begin))


def _one_side(ring: Path, begin: float, end: float, away: float) -> Path:
    """The side between two corners that lie at about these angles, moved outwards; empty where there is no such side."""
    ways = [(atan2(y, x), (x, y)) for x, y in ring]

    def at(angle: float) -> Point | None:
        return next((p for way, p in ways if abs((way - angle + pi) % tau - pi) < _CORNER), None)

    a, b = at(begin), at(end)
    if a is None or b is None or any(_CORNER < (way - begin) % tau < end - begin - _CORNER for way, _ in ways):
        return ()
    long = hypot(b[0] - a[0], b[1] - a[1])
    ux, uy = (b[0] - a[0]) / long, (b[1] - a[1]) / long
    near, far = min(_SHORT, long / 4), max(long - _SHORT, long * 3 / 4)
    ox, oy = a[0] + away * uy, a[1] - away * ux
    return (ox + near * ux, oy + near * uy), (ox + far * ux, oy + far * uy)


def _to_side(a: Point, b: Point) -> float:
    return abs(a[0] * b[1] - a[1] * b[0]) / max(hypot(b[0] - a[0], b[1] - a[1]), 1e-9)


def _crossing(ring: Sequence[Point], angle: float) -> Point:
    """Where the ray at this angle leaves a convex ring about the centre."""
    c, s = cos(angle), sin(angle)
    best = 0.0
    for i in range(len(ring)):
        (ax, ay), (bx, by) = ring[i - 1], ring[i]
        cross = (bx - ax) * s - (by - ay) * c
        if abs(cross) < 1e-12:
            continue
        along = (ay * c - ax * s) / cross
        if -1e-9 <= along <= 1 + 1e-9:
            best = max(best, (ax + along * (bx - ax)) * c + (ay + along * (by - ay)) * s)
    return (best * c, best * s)


def _bracket(index: int, path: Path, times: int, look: ChartLook, curved: bool) -> Item:
    """The line with a short tick inwards at either end, broken in its middle for the label, which stands outside where it is short."""
    u = look.pitch_mm
    words = f"\u00d7\u202f{times}"
    width, height = text_width_mm(words, "sans", LABEL_PT) / u, cap_height_mm("sans", LABEL_PT) / u
    lengths = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(path)]
    total = sum(lengths)
    middle, way = _at(path, lengths, total / 2)
    out = (way[1], -way[0])  # a path runs counter-clockwise, or from left to right below the work
    reach = abs(way[0]) * width / 2 + abs(way[1]) * height / 2 + 0.28
    center = middle
    if total < 2 * reach + 1.6:
        beyond = abs(out[0]) * width / 2 + abs(out[1]) * height / 2 + 0.25
        center = (middle[0] + beyond * out[0], middle[1] + beyond * out[1])
        reach = 0.0
    line, tick = _LINE_MM / u, _TICK_MM / u
    marks: list[Mark] = []
    for begin, end, at in ((0.0, total / 2 - reach, 0.0), (total / 2 + reach, total, total)):
        marks.append(_curve(path, lengths, begin, end, line, curved))
        tip, along = _at(path, lengths, at)
        marks.append(Stroke((tip, (tip[0] - tick * along[1], tip[1] + tick * along[0])), line))
    return Item("repeat", index, center, width, height, words, LABEL_PT, tuple(marks))


def _curve(path: Path, lengths: Sequence[float], begin: float, end: float, width: float, curved: bool) -> Mark:
    """The part of the path between two lengths along it: an arc about the centre, or straight pieces."""
    start, _ = _at(path, lengths, begin)
    stop, _ = _at(path, lengths, end)
    if curved:
        first = atan2(start[1], start[0])
        return Stroke(arc((0.0, 0.0), hypot(*path[0]), first, (atan2(stop[1], stop[0]) - first) % tau), width, smooth=True)
    at, kept = 0.0, [start]
    for point, length in zip(path[1:], lengths, strict=True):
        at += length
        if begin < at < end:
            kept.append(point)
    return Stroke((*kept, stop), width)


def _at(path: Path, lengths: Sequence[float], where: float) -> tuple[Point, Point]:
    """The point so far along the path, and the unit vector along it there."""
    left = where
    for i, length in enumerate(lengths):
        if left <= length + 1e-9 or i == len(lengths) - 1:
            (ax, ay), (bx, by) = path[i], path[i + 1]
            part = min(max(left / max(length, 1e-9), 0.0), 1.0)
            way = ((bx - ax) / max(length, 1e-9), (by - ay) / max(length, 1e-9))
            return (ax + part * (bx - ax), ay + part * (by - ay)), way
        left -= length
    return path[0], (1.0, 0.0)


def _is_white(item: Item, path: Path, white: White) -> bool:
    """Whether nothing is met along the line, at its ticks or by the label."""
    import numpy as np

    places = [path[-1], *(mark.points[-1] for mark in item.marks)]
    for (ax, ay), (bx, by) in pairwise(path):
        count = max(1, ceil(hypot(bx - ax, by - ay) / _STEP - 1e-6))
        places += [(ax + (bx - ax) * k / count, ay + (by - ay) * k / count) for k in range(count)]
    if not white.free(np.asarray(places), _STEP / 2, _STEP / 2).all():
        return False
    return bool(white.free(np.asarray([item.center]), item.width, item.height).all())
