"""One repeat instead of all of them, for very large work. The rest is left out, and the chart says how often it is worked."""

from __future__ import annotations

from cmath import exp
from dataclasses import replace
from math import ceil, hypot, pi, tau

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.look import ChartLook, Repeat
from motifold.render.motif.chart.repeats import round_repeat, row_repeat
from motifold.render.motif.chart.scene import symbols_of
from motifold.render.motif.chart.starts import starts_of
from motifold.render.motif.model import Layout, Link, Placed, Point, RoundShape

_NARROW = pi / 6
"""A sector narrower than this, in radians, shows several repeats."""
_BESIDE = 0.45
"""How much of the neighbouring stitches' room, in u on the last round, is taken with the sector."""


def one_repeat(fabric: Fabric, layout: Layout, look: ChartLook) -> tuple[Layout, ChartLook] | None:
    """The layout and look for a chart of one repeat: a sector turned to stand upright, or rows with one repeat between their ends.

    None where nothing repeats.
    """
    symbols = symbols_of(fabric, layout, look.left_handed, {})
    if fabric.worked == "rows":
        repeat = row_repeat(fabric, symbols)
        if repeat is None:
            return None
        flip = -1.0 if look.left_handed else 1.0
        first, step = repeat.start, repeat.end - repeat.start
        gone, away = (first + step, first + repeat.times * step), (repeat.times - 1) * step
        return _without(layout, gone, away, flip), replace(look, once=repeat)
    starts = starts_of(fabric, layout, symbols, look.left_handed)
    repeat = round_repeat(layout, starts, look.left_handed)
    if repeat is None:
        return None
    half = (repeat.end - repeat.start) / 2 * _count(repeat)
    index = max(starts)
    onward = starts[index].point[0] * starts[index].on[1] - starts[index].point[1] * starts[index].on[0] > 0
    begins = repeat.start if onward else repeat.end
    turn = pi / 2 - begins - (half if onward else -half)
    beside = _BESIDE / max(max((hypot(*start.point) for start in starts.values()), default=1.0), 1.0)
    upright = Repeat(repeat.times, pi / 2 - half, pi / 2 + half)
    sector = (upright.start - beside, upright.end + beside)
    return _turned(layout, -turn if look.left_handed else turn), replace(look, once=upright, sector=sector)


def once_words(fabric: Fabric, look: ChartLook) -> str | None:
    """What is said below such a chart."""
    if look.once is None:
        return None
    if fabric.worked == "rows":
        return f"The bracketed stitches are worked {look.once.times} times; they are drawn once."
    drawn = round((look.once.end - look.once.start) * look.once.times / tau)
    if drawn > 1:
        return f"{drawn} of {look.once.times} repeats around."
    return f"One of {look.once.times} repeats: work it {look.once.times} times around."


def _count(repeat: Repeat) -> int:
    """How many repeats are drawn: as many as make a sector wide enough to show how they meet."""
    return min(max(1, ceil(_NARROW / (repeat.end - repeat.start) - 1e-9)), repeat.times - 1)


def _turned(layout: Layout, angle: float) -> Layout:
    spin = exp(1j * angle)

    def at(p: Point) -> Point:
        z = complex(*p) * spin
        return z.real, z.imag

    def every(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple(map(at, points))

    placed = tuple(Placed(p.stitch, every(p.feet), at(p.head), at(p.normal), every(p.bend)) for p in layout.placed)
    links = tuple(Link(link.run, every(link.points)) for link in layout.links)
    shapes = tuple(
        RoundShape(s.round, every(s.outline), every(s.corners), at(s.start), at(s.start_normal), s.order) for s in layout.shapes
    )
    return Layout(layout.worked, placed, links, shapes, layout.turn + angle)


def _without(layout: Layout, gone: tuple[float, float], away: float, flip: float) -> Layout:
    """Rows without what stands between two places across, and what follows moved up; ``flip`` -1: as the mirrored chart is seen."""

    def kept(points: tuple[Point, ...]) -> bool:
        middle = flip * sum(p[0] for p in points) / len(points)
        return not gone[0] <= middle < gone[1]

    def moved(points: tuple[Point, ...], by: tuple[Point, ...]) -> tuple[Point, ...]:
        past = flip * sum(p[0] for p in by) / len(by) >= gone[1]
        return tuple((x - flip * away, y) for x, y in points) if past else points

    placed = []
    for p in layout.placed:
        where = _where(p)
        if kept(where):
            [head] = moved((p.head,), where)
            placed.append(Placed(p.stitch, moved(p.feet, where), head, p.normal, moved(p.bend, where)))
    links = tuple(Link(link.run, moved(link.points, link.points)) for link in layout.links if kept(link.points))
    shapes = []
    for s in layout.shapes:
        line = tuple(q for p in s.outline if kept((p,)) for q in moved((p,), (p,)))
        [start] = moved((s.start,), (s.start,))
        shapes.append(RoundShape(s.round, line or s.outline, s.corners, start, s.start_normal, s.order))
    return Layout(layout.worked, tuple(placed), links, tuple(shapes), layout.turn)


def _where(p: Placed) -> tuple[Point, ...]:
    """What says on which side of a cut a stitch lies: of a chain its middle, of a stitch its head."""
    if len(p.feet) == 1 and abs(p.head[1] - p.feet[0][1]) < 0.5 * abs(p.head[0] - p.feet[0][0]):
        return p.head, p.feet[0]
    return (p.head,)
