"""One repeat instead of all of them, for very large work. The rest is left out, and the chart says how often it is worked."""

from __future__ import annotations

from dataclasses import replace
from math import atan2, ceil, cos, pi, sin, tau

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.look import ChartLook, Repeat
from motifold.render.motif.chart.repeats import round_repeat, row_repeat
from motifold.render.motif.chart.scene import symbols_of
from motifold.render.motif.chart.sector import cut_out, spun, turned
from motifold.render.motif.chart.starts import Start, starts_of
from motifold.render.motif.model import Layout, Link, Placed, Point, RoundShape

_NARROW = pi / 6
"""A sector narrower than this, in radians, shows several repeats."""

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
    return _sector(fabric, layout, look, repeat, starts)


def _sector(fabric: Fabric, layout: Layout, look: ChartLook, repeat: Repeat, starts: dict[int, Start]) -> tuple[Layout, ChartLook]:
    """The sector cut out and turned to stand upright, the cut with it."""
    flip = -1.0 if look.left_handed else 1.0
    shape = next(shape for shape in reversed(layout.shapes) if shape.round in starts)
    corners = [atan2(y, x) for x, y in shape.corners] if len(shape.corners) % repeat.times == 0 else []
    start = starts[shape.round].point
    part = cut_out(fabric, layout, repeat.times, _count(repeat), corners, atan2(start[1], flip * start[0]))
    turn = pi / 2 - part.begin - part.width / 2
    cut = [(pi / 2 + flip * (angle + turn - pi / 2), far) for angle, far in part.cut]
    if flip < 0:  # mirrored, the cut that was the first edge is the other one
        cut = [(angle - part.width, far) for angle, far in cut]
    line = tuple((far * cos(angle), far * sin(angle)) for angle, far in cut)
    upright = Repeat(repeat.times, pi / 2 - part.width / 2, pi / 2 + part.width / 2, line)
    return _turned(part.layout, turn), replace(look, once=upright, sector=(upright.start, upright.end))


def once_words(fabric: Fabric, look: ChartLook) -> str | None:
    """What is said below such a chart."""
    if look.once is None:
        return None
    if fabric.worked == "rows":
        return f"The bracketed stitches are worked {look.once.times} times; they are drawn once."
    drawn = round((look.once.end - look.once.start) * look.once.times / tau)
    if drawn > 1:
        return f"{drawn} of {look.once.times} repeats around; beginning chains and joins are left out."
    return f"One of {look.once.times} repeats: work it {look.once.times} times around. Beginning chains and joins are left out."


def _count(repeat: Repeat) -> int:
    """How many repeats are drawn: as many as make a sector wide enough to show how they meet."""
    return min(max(1, ceil(_NARROW / (repeat.end - repeat.start) - 1e-9)), repeat.times - 1)


def _turned(layout: Layout, angle: float) -> Layout:
    placed = tuple(turned(p, angle) for p in layout.placed)
    links = tuple(Link(link.run, spun(link.points, angle)) for link in layout.links)
    shapes = []
    for s in layout.shapes:
        start, normal = spun((s.start, s.start_normal), angle)
        shapes.append(RoundShape(s.round, spun(s.outline, angle), spun(s.corners, angle), start, normal, s.order))
    return replace(layout, placed=placed, links=links, shapes=tuple(shapes), turn=layout.turn + angle)


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
            placed.append(Placed(p.stitch, moved(p.feet, where), head, p.normal, moved(p.bend, where), p.bars))
    links = tuple(Link(link.run, moved(link.points, link.points)) for link in layout.links if kept(link.points))
    shapes = []
    for s in layout.shapes:
        line = tuple(q for p in s.outline if kept((p,)) for q in moved((p,), (p,)))
        [start] = moved((s.start,), (s.start,))
        shapes.append(RoundShape(s.round, line or s.outline, s.corners, start, s.start_normal, s.order))
    return replace(layout, placed=tuple(placed), links=links, shapes=tuple(shapes))


def _where(p: Placed) -> tuple[Point, ...]:
    """What says on which side of a cut a stitch lies: of a chain its middle, of a stitch its head."""
    if len(p.feet) == 1 and abs(p.head[1] - p.feet[0][1]) < 0.5 * abs(p.head[0] - p.feet[0][0]):
        return p.head, p.feet[0]
    return (p.head,)
