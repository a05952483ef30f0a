"""Working marks: where the yarn comes and goes, which way the work runs, and what happens at a seam. In u, like the stitches.

An open triangle attaches yarn and a filled one fastens it off; an arrow runs with the work; a hook-shaped arrow turns it. A pass of
seaming runs from a dot, by arrows, to a bar. Letters and numbers are set by whoever places a mark: a yarn's letter stands in a ring, the
number of a pass white in a disc.
"""

from __future__ import annotations

from math import atan2, cos, pi, sin

from motifold.symbols import sizes as s
from motifold.symbols.glyphs import dot, head_bar
from motifold.symbols.ink import Fill, Mark, Point, Stroke, arc, circle

TRIANGLE = 0.44
ARROW = 0.62
TAG_RADIUS = 0.34
"""Side of the yarn triangles, length of an arrow, radius of the ring around a letter and of the disc behind a pass number."""


def start(at: Point, toward: Point) -> tuple[Mark, ...]:
    """A round starts here: a bar that the work leaves by an arrow along the unit vector ``toward``."""
    (x, y), (ux, uy) = at, toward
    bar = 0.3
    return (
        Stroke(((x - bar * uy, y + bar * ux), (x + bar * uy, y - bar * ux)), s.HEAD_WIDTH),
        *arrow((x + ARROW / 2 * ux, y + ARROW / 2 * uy), toward),
    )


def join(at: Point, out: Point) -> tuple[Mark, ...]:
    """A round is joined here: a slip stitch on the head of the stitch that it closes to; ``out`` is the unit vector out of the work."""
    (x, y), (nx, ny) = at, out
    rise = s.DOT_RADIUS + s.HEAD_WIDTH / 2
    return (head_bar(at, out), dot((x + rise * nx, y + rise * ny)))


def attach(tip: Point, toward: Point, side: float = TRIANGLE) -> tuple[Mark, ...]:
    """Yarn is joined here: an open triangle with its point at ``tip``, pointing along the unit vector ``toward``."""
    return (Stroke(_triangle(tip, toward, side), s.RING_WIDTH, closed=True),)


def fasten_off(tip: Point, toward: Point, side: float = TRIANGLE) -> tuple[Mark, ...]:
    """Yarn is fastened off here: a filled triangle."""
    points = _triangle(tip, toward, side)
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
    """The ring around a yarn's letter."""
    return (Stroke(circle(center, radius), s.HAIR_WIDTH, smooth=True, closed=True),)


def pass_disc(center: Point, radius: float = TAG_RADIUS) -> tuple[Mark, ...]:
    """The disc behind the number of a pass of seaming."""
    return (Fill(circle(center, radius), smooth=True),)


def place_marker(center: Point) -> tuple[Mark, ...]:
    """A stitch marker: a small pin, open at the top."""
    (x, y) = center
    body = arc((x, y - 0.08), 0.16, 0.62 * pi, 1.76 * pi)
    return (Stroke(body, s.RING_WIDTH, smooth=True), Stroke((body[0], (x - 0.05, y + 0.34)), s.RING_WIDTH))


def seam_start(at: Point, toward: Point) -> tuple[Mark, ...]:
    """A pass of seaming begins here: a dot, and its line that goes on along the unit vector ``toward`` by an arrow."""
    (x, y), (ux, uy) = at, toward
    point = (x + 0.8 * ux, y + 0.8 * uy)
    return (
        Fill(circle(at, 0.19), smooth=True),
        Stroke((at, (x + 1.1 * ux, y + 1.1 * uy)), s.STEM_WIDTH),
        Fill(_triangle(point, toward, 0.36)),
    )


def seam_end(at: Point, toward: Point) -> tuple[Mark, ...]:
    """A pass of seaming ends here and is fastened off: its line, come along the unit vector ``toward``, against a bar."""
    (x, y), (ux, uy) = at, toward
    bar = 0.3
    return (
        Stroke(((x - 1.0 * ux, y - 1.0 * uy), at), s.STEM_WIDTH),
        Stroke(((x - bar * uy, y + bar * ux), (x + bar * uy, y - bar * ux)), s.HEAD_WIDTH),
    )


def gap(center: Point, radius: float = 0.5) -> tuple[Mark, ...]:
    """A gap to close, where seams meet and none goes through: a ring around the corner."""
    return (Stroke(circle(center, radius), s.STEM_WIDTH, smooth=True, closed=True),)


def corner(center: Point, radius: float = 0.5) -> tuple[Mark, ...]:
    """The edges of panels that meet in a corner, for whoever shows a gap without its panels."""
    (x, y), far = center, 2 * radius
    return (Stroke(((x - far, y), (x + far, y)), s.HAIR_WIDTH), Stroke(((x, y - far), (x, y + far)), s.HAIR_WIDTH))


def open_edge(start_at: Point, end: Point) -> tuple[Mark, ...]:
    """An edge that stays open: a heavy line."""
    return (Stroke((start_at, end), s.HEAD_WIDTH),)


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
