"""Working marks: where the yarn comes and goes, which way the work runs, and what happens at a seam. In u, like the stitches.

An open triangle attaches yarn and a filled one fastens it off; an arrow runs with the work; a hook-shaped arrow turns it. Letters and
numbers are set by whoever places a mark: a tag is the ring around them.
"""

from __future__ import annotations

from math import atan2, cos, pi, sin

from motifold.symbols import sizes as s
from motifold.symbols.ink import Fill, Mark, Point, Stroke, arc, circle

TRIANGLE = 0.44
ARROW = 0.62
TAG_RADIUS = 0.34
"""Side of the yarn triangles, length of an arrow, radius of the ring around a letter or a pass number."""


def attach(tip: Point, toward: Point) -> tuple[Mark, ...]:
    """Yarn is joined here: an open triangle with its point at ``tip``, pointing along the unit vector ``toward``."""
    return (Stroke(_triangle(tip, toward, TRIANGLE), s.RING_WIDTH, closed=True),)


def fasten_off(tip: Point, toward: Point) -> tuple[Mark, ...]:
    """Yarn is fastened off here: a filled triangle."""
    points = _triangle(tip, toward, TRIANGLE)
    return (Fill(points), Stroke(points, s.RING_WIDTH, closed=True))


def arrow(center: Point, toward: Point, length: float = ARROW) -> tuple[Mark, ...]:
    """Direction of work: a short arrow along the unit vector ``toward``."""
    (x, y), (ux, uy) = center, toward
    tip = (x + length / 2 * ux, y + length / 2 * uy)
    tail = (x - length / 2 * ux, y - length / 2 * uy)
    return (Stroke((tail, tip), s.RING_WIDTH), Stroke(_barbs(tip, toward), s.RING_WIDTH))


def turn(center: Point, toward: Point) -> tuple[Mark, ...]:
    """Turn the work: an arrow that comes along ``toward`` and goes back the other way."""
    (x, y), (ux, uy) = center, toward
    nx, ny = -uy, ux
    r = 0.16
    start = (x - 0.28 * ux - r * nx, y - 0.28 * uy - r * ny)
    bend = (x + 0.1 * ux, y + 0.1 * uy)
    curve = arc(bend, r, atan2(-ny, -nx), pi)
    end = (x - 0.28 * ux + r * nx, y - 0.28 * uy + r * ny)
    return (
        Stroke((start, curve[0]), s.RING_WIDTH),
        Stroke(curve, s.RING_WIDTH, smooth=True),
        Stroke((curve[-1], end), s.RING_WIDTH),
        Stroke(_barbs(end, (-ux, -uy), 0.15), s.RING_WIDTH),
    )


def magic_ring(center: Point, radius: float) -> tuple[Mark, ...]:
    """A ring of yarn that is drawn shut: a circle whose two ends pass each other, the tail hanging inwards."""
    turns = arc(center, radius, -0.5 * pi + 0.35, 2 * pi - 0.35)
    (x, y), inner = center, 0.62 * radius
    last = turns[-1]
    tail = (last, (x + 0.32 * radius, last[1]), (x + 0.55 * radius, y - 0.75 * radius), (x + inner * 0.35, y - inner * 0.45))
    return (Stroke(turns, s.STEM_WIDTH, smooth=True), Stroke(tail, s.STEM_WIDTH, smooth=True))


def tag(center: Point, radius: float = TAG_RADIUS) -> tuple[Mark, ...]:
    """The ring around a yarn's letter or a seam pass's number."""
    return (Stroke(circle(center, radius), s.HAIR_WIDTH, smooth=True, closed=True),)


def place_marker(center: Point) -> tuple[Mark, ...]:
    """A stitch marker: a small pin, open at the top."""
    (x, y) = center
    body = arc((x, y - 0.08), 0.16, 0.62 * pi, 1.76 * pi)
    return (Stroke(body, s.RING_WIDTH, smooth=True), Stroke((body[0], (x - 0.05, y + 0.34)), s.RING_WIDTH))


def seam_start(center: Point, toward: Point) -> tuple[Mark, ...]:
    """A seam begins here: an open ring with a short stroke into the seam."""
    (x, y), (ux, uy) = center, toward
    r = 0.2
    ring = Stroke(circle(center, r), s.RING_WIDTH, smooth=True, closed=True)
    return (ring, Stroke(((x + r * ux, y + r * uy), (x + 2.2 * r * ux, y + 2.2 * r * uy)), s.RING_WIDTH))


def seam_end(center: Point, toward: Point) -> tuple[Mark, ...]:
    """A seam ends here: an arrow's point against a bar."""
    (x, y), (ux, uy) = center, toward
    bar = 0.26
    return (
        Stroke(((x - bar * uy, y + bar * ux), (x + bar * uy, y - bar * ux)), s.HEAD_WIDTH),
        Fill(_triangle((x - 0.08 * ux, y - 0.08 * uy), toward, 0.36)),
    )


def gap(start: Point, end: Point) -> tuple[Mark, ...]:
    """A gap to close: a ring broken in two across it."""
    angle = atan2(end[1] - start[1], end[0] - start[0])
    r = 0.2
    return (
        Stroke(arc(start, r, angle + pi / 2, pi), s.RING_WIDTH, smooth=True),
        Stroke(arc(end, r, angle - pi / 2, pi), s.RING_WIDTH, smooth=True),
    )


def fold(start: Point, end: Point) -> tuple[Mark, ...]:
    """A fold: a chain line, long and short strokes in turn, drawn as separate strokes so that no writer's dashes differ."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = max((dx * dx + dy * dy) ** 0.5, 1e-9)
    count = max(1, min(400, round(length / 1.1)))
    marks: list[Mark] = []
    for i in range(count):
        for a, b in ((0.0, 0.62), (0.80, 0.86)):
            p, q = (i + a) / count, (i + b) / count
            marks.append(Stroke(((start[0] + p * dx, start[1] + p * dy), (start[0] + q * dx, start[1] + q * dy)), s.HAIR_WIDTH))
    return tuple(marks)


def right_side(center: Point) -> tuple[Mark, ...]:
    """Right side: an open ring with a dot, an eye that looks at you."""
    return (Stroke(circle(center, 0.24), s.RING_WIDTH, smooth=True, closed=True), Fill(circle(center, 0.09), smooth=True))


def wrong_side(center: Point) -> tuple[Mark, ...]:
    """Wrong side: the ring struck through, an eye that is shut."""
    (x, y) = center
    return (
        Stroke(circle(center, 0.24), s.RING_WIDTH, smooth=True, closed=True),
        Stroke(((x - 0.24, y), (x + 0.24, y)), s.RING_WIDTH),
    )


def _triangle(tip: Point, toward: Point, side: float) -> tuple[Point, Point, Point]:
    (x, y), (ux, uy) = tip, toward
    deep, half = side * cos(pi / 6), side / 2
    back = (x - deep * ux, y - deep * uy)
    return (tip, (back[0] - half * uy, back[1] + half * ux), (back[0] + half * uy, back[1] - half * ux))


def _barbs(tip: Point, toward: Point, size: float = 0.2) -> tuple[Point, Point, Point]:
    angle = atan2(toward[1], toward[0])
    ends = [(tip[0] + size * cos(angle + side * 0.82 * pi), tip[1] + size * sin(angle + side * 0.82 * pi)) for side in (1, -1)]
    return (ends[0], tip, ends[1])
