"""Feet: what the hook went into, drawn where a stem begins. Our own addition to the trade's shared signs.

Both loops: nothing. Back loop only: a cup about the foot, open to the back (upwards). Front loop only: a bridge under the foot, open to the
front. Round the post: the stem runs on into a curl about the post. Into a space: a small open ring, one for all that are worked there.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, hypot, pi

from motifold.symbols import sizes as s
from motifold.symbols.footprint import Foot
from motifold.symbols.ink import Mark, Point, Stroke, arc, circle, oval


def loop_mark(foot: Point, up: Point, into: Foot) -> tuple[Mark, ...]:
    """The half ring of a single loop at a stem's foot; ``up`` is the unit vector of the stem there."""
    if into not in ("back loop", "front loop"):
        return ()
    (x, y), (ux, uy) = foot, up
    turn = 1.0 if into == "back loop" else -1.0

    def at(across: float, deep: float) -> Point:
        """A point beside the stem and along it: above the foot for a cup, below it for a bridge."""
        a, d = across * s.LOOP_HALF, turn * deep * s.LOOP_DEPTH
        return (x + a * uy + d * ux, y - a * ux + d * uy)

    points = (at(-1, 1), at(-0.94, 0.42), at(-0.55, 0), at(0, 0), at(0.55, 0), at(0.94, 0.42), at(1, 1))
    return (Stroke(points, s.LOOP_WIDTH, smooth=True),)


def hook_start(foot: Point, head: Point, into: Foot) -> Point:
    """Where a post stitch's stem meets its curl: beside the post that ``foot`` lies on, left for the front, right for the back."""
    ux, uy = _unit(foot, head)
    side = -s.HOOK_RADIUS if into == "front post" else s.HOOK_RADIUS
    return (foot[0] + side * uy, foot[1] - side * ux)


def hook_curl(foot: Point, head: Point, into: Foot) -> tuple[Point, ...]:
    """The curl below ``hook_start``, as cubics from its free end to the stem: under the post and up its other side."""
    ux, uy = _unit(foot, head)
    angle = atan2(uy, ux)
    if into == "front post":
        return arc(foot, s.HOOK_RADIUS, angle - 0.36 * pi, -1.14 * pi)
    return arc(foot, s.HOOK_RADIUS, angle + 0.36 * pi, 1.14 * pi)


def space_ring(feet: Sequence[Point], heads: Sequence[Point]) -> Mark:
    """The ring of a space, under the middle foot of all stitches that are worked into it (between the middle two of an even number).

    The middle one, not the mean: along a loop or round a corner the mean of all feet sinks into the chains.
    """
    count = len(feet)
    fx, fy = sum(p[0] for p in feet) / count, sum(p[1] for p in feet) / count
    hx, hy = sum(p[0] for p in heads) / len(heads), sum(p[1] for p in heads) / len(heads)
    ux, uy = _unit((fx, fy), (hx, hy))
    across = sorted((round(p[0] * uy - p[1] * ux, 9), p) for p in feet)
    (_, (ax, ay)), (_, (bx, by)) = across[(count - 1) // 2], across[count // 2]
    mx, my = (ax + bx) / 2 - s.RING_RADIUS * ux, (ay + by) / 2 - s.RING_RADIUS * uy
    return Stroke(circle((mx, my), s.RING_RADIUS), s.RING_WIDTH, smooth=True, closed=True)


def foundation_oval(foot: Point, up: Point) -> Mark:
    """The chain that a foundation stitch makes for itself, lying under its foot."""
    breadth = (s.OVAL_BREADTH - s.OVAL_WIDTH) / 2
    down = breadth + s.STEM_WIDTH / 2
    half = (s.OVAL_LENGTH - s.OVAL_WIDTH) / 2
    center = (foot[0] - down * up[0], foot[1] - down * up[1])
    return Stroke(oval(center, (half * up[1], -half * up[0]), breadth), s.OVAL_WIDTH, smooth=True, closed=True)


def extended_bead(foot: Point, up: Point) -> Mark:
    """The chain inside an extended stitch: a bead upright on its stem, standing on ``foot``."""
    half = (s.BEAD_LENGTH - s.RING_WIDTH) / 2
    center = (foot[0] + half * up[0], foot[1] + half * up[1])
    return Stroke(
        oval(center, (half * up[0], half * up[1]), (s.BEAD_BREADTH - s.RING_WIDTH) / 2), s.RING_WIDTH, smooth=True, closed=True
    )


def _unit(start: Point, end: Point) -> Point:
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = hypot(dx, dy)
    return (dx / length, dy / length) if length > 1e-12 else (0.0, 1.0)
