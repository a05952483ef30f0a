"""Gathered stitches: several stems of one stitch closed into one shape, four shapes that cannot be taken for each other.

Cluster: a kite of straight legs, pointed at foot and head. Bobble: an egg, full at the top. Puff: an even oval of loops, without bars.
Popcorn: legs that fan out and are folded under a lying oval.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, hypot, sin

from motifold.symbols import sizes as s
from motifold.symbols.footprint import gathered_half
from motifold.symbols.ink import Mark, Point, Stroke, oval
from motifold.symbols.stitches import Gather, Kind

_INNER_WIDTH = 0.07
_APART = 0.6
"""Feet further apart than this are worked into different places: each leg keeps its own."""


def gathered_marks(stem: Kind, gather: Gather, feet: Sequence[Point], head: Point, normal: Point) -> tuple[Mark, ...]:
    """The body of a cluster, bobble, popcorn or puff: its legs, its yarn overs as long bars across all of them, and a popcorn's cap."""
    count = max(2, min(len(feet), 9))
    middle = (sum(p[0] for p in feet) / len(feet), sum(p[1] for p in feet) / len(feet))
    apart = max(hypot(p[0] - middle[0], p[1] - middle[1]) for p in feet) > _APART
    half = gathered_half(gather, count)
    own = [feet[i * (len(feet) - 1) // (count - 1)] if apart else middle for i in range(count)]
    legs = [_leg(gather, foot, head, normal, half * (2 * i / (count - 1) - 1)) for i, foot in enumerate(own)]
    marks: list[Mark] = []
    smooth = gather != "cluster"
    if apart:
        marks += [Stroke(leg, s.OUTLINE_WIDTH, smooth) for leg in legs]
    else:
        marks += [Stroke(leg, _INNER_WIDTH, smooth) for leg in legs[1:-1]]
        if gather == "popcorn":
            marks += [Stroke(legs[0], s.OUTLINE_WIDTH, smooth), Stroke(legs[-1], s.OUTLINE_WIDTH, smooth)]
        else:
            marks.append(Stroke(legs[0] + legs[-1][-2::-1], s.OUTLINE_WIDTH, smooth, closed=True))
    if not stem.half and gather != "puff":
        marks += _bars(stem.yarn_overs, middle, head, half, gather)
    if gather == "popcorn":
        marks.append(_cap(head, normal, half))
    return tuple(marks)


def _leg(gather: Gather, foot: Point, head: Point, normal: Point, offset: float) -> tuple[Point, ...]:
    """One leg from foot to head, bulging by ``offset`` to the right of the way up."""
    dx, dy = head[0] - foot[0], head[1] - foot[1]
    length = hypot(dx, dy) or 1.0
    rx, ry = dy / length, -dx / length

    def at(across: float, up: float) -> Point:
        return (foot[0] + across * rx + up * dx, foot[1] + across * ry + up * dy)

    if gather == "cluster":
        return (foot, at(offset, 0.5), head)
    if gather == "bobble":
        return (foot, at(0.55 * offset, 0.30), at(2.02 * offset, 0.86), head)
    if gather == "popcorn":
        end = (head[0] + offset * normal[1], head[1] - offset * normal[0])
        return (foot, at(0.30 * offset, 0.35), at(0.85 * offset, 0.70), end)
    return (foot, at(1.34 * offset, 0.04), at(1.34 * offset, 0.96), head)


def _cap(head: Point, normal: Point, half: float) -> Mark:
    """The lying oval that a popcorn's legs are folded under."""
    reach = half + s.OUTLINE_WIDTH / 2
    points = oval(head, (reach * normal[1], -reach * normal[0]), (s.CAP_BREADTH - s.OUTLINE_WIDTH) / 2, 0.5, 0.6)
    return Stroke(points, s.OUTLINE_WIDTH, smooth=True, closed=True)


def _bars(count: int, foot: Point, head: Point, half: float, gather: Gather) -> list[Mark]:
    """One long slanted bar across all legs for each yarn over."""
    dx, dy = head[0] - foot[0], head[1] - foot[1]
    length = hypot(dx, dy) or 1.0
    ux, uy = dx / length, dy / length
    slant = s.BAR_SLANT_GATHERED
    bx, by = cos(slant) * uy + sin(slant) * ux, -cos(slant) * ux + sin(slant) * uy
    reach = (half if gather != "popcorn" else 0.62 * half) + s.BAR_OVER
    pitch = min(s.BAR_PITCH, 0.5 * length / max(count, 1))
    marks: list[Mark] = []
    for i in range(count):
        up = 0.5 * length + (i - (count - 1) / 2) * pitch
        cx, cy = foot[0] + up * ux, foot[1] + up * uy
        marks.append(Stroke(((cx - reach * bx, cy - reach * by), (cx + reach * bx, cy + reach * by)), s.BAR_WIDTH))
    return marks
