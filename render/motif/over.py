"""Loops worked behind earlier work lie outside it in the chart: taut round what covers them, or bowed beyond."""

from __future__ import annotations

from cmath import exp
from cmath import phase as argument
from math import pi

from motifold.render.motif.arc import Arc, arc_of
from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, OVAL_HALF
from motifold.render.motif.ground import Ground
from motifold.symbols.sizes import HEAD_SPAN, HEAD_WIDTH

Disc = tuple[complex, float]
_ROUND = 10
_BESIDE = 0.15
"""More than its clearance does a broad loop keep from the next one."""


def obstacles(ground: Ground, course: Course, rounds: int = 3) -> list[Disc]:
    """What the last few rounds show at their outer edge: ends of heads, ovals, as discs."""
    found: list[Disc] = []
    for number in range(max(course.round - rounds, 0), course.round):
        below = ground.courses.get(number)
        if below is None:
            continue
        for stem, gap in zip(below.stems, below.gaps, strict=True):
            head, normal = ground.heads[stem.stitch.id], ground.normals[stem.stitch.id]
            half = HEAD_SPAN / 2
            found += [(head + 1j * normal * half, HEAD_WIDTH / 2), (head - 1j * normal * half, HEAD_WIDTH / 2)]
            rings = [*stem.picots, *(ring for ring, _ in gap.picots)]
            chains = [*gap.parts, *(chain for ring in rings for chain in ring.stitches)]
            for chain in chains:
                if chain in ground.tips:
                    found += [(tip, OVAL_HALF * 0.6) for tip in ground.tips[chain]]
                    found.append((sum(ground.tips[chain]) / 2, OVAL_HALF))
    return found


def over(start: complex, end: complex, discs: list[Disc], least: float, wide: float = 0.0) -> Arc | None:
    """The taut way from start to end outside the discs that stand beyond the straight one; None where none does. So ``wide`` is its
    outer part, along a circle about the centre, as far as there is room between the directions of its ends.
    """
    chord = abs(end - start)
    if chord < 1e-6:
        return None
    along = (end - start) / chord
    points: list[tuple[float, float]] = []
    for centre, radius in discs:
        local = (centre - start) / along
        x, y = local.real, -local.imag
        reach = radius + OVAL_HALF + CLEAR + 0.03
        if -0.3 < x < chord + 0.3 and y + reach > 0.05:
            for k in range(_ROUND + 1):
                p = complex(x, y) + reach * exp(1j * pi * k / _ROUND)
                if 0.0 < p.real < chord and p.imag > 0:
                    points.append((p.real, p.imag))
    if not points:
        return None
    if wide:
        points += _cap(start, end, along, max(y for _, y in points), wide)
    hull = _upper_hull([(0.0, 0.0), *sorted(points), (chord, 0.0)])
    scale = 1.0
    for _ in range(40):
        path = arc_of([start + along * complex(x, -y * scale) for x, y in hull])
        if path.length >= least:
            break
        scale *= 1.04
    return path


def _cap(start: complex, end: complex, along: complex, high: float, wide: float) -> list[tuple[float, float]]:
    """Points of an arc about the centre, ``high`` above the straight way at its middle."""
    out = (start + end) / 2 - 1j * along * high
    half = min(wide / 2 / abs(out), abs(argument(end / start)) / 2 - (OVAL_HALF + CLEAR + _BESIDE) / abs(out))
    if half <= 0:
        return []
    spots = [(out * exp(1j * half * (k / _ROUND * 2 - 1)) - start) / along for k in range(_ROUND + 1)]
    return [(spot.real, -spot.imag) for spot in spots]


def _upper_hull(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    hull: list[tuple[float, float]] = []
    for p in points:
        while len(hull) > 1 and _left(hull[-2], hull[-1], p) >= 0:
            hull.pop()
        hull.append(p)
    return hull


def _left(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
