"""A path that chains hang along: a polyline with its arc length, and the few curves that chains make."""

from __future__ import annotations

from bisect import bisect_right
from cmath import exp, phase
from collections.abc import Sequence
from itertools import pairwise
from math import cos, pi, sin, tan

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Arc:
    """``marks[i]`` is the arc length from the start to ``points[i]``."""

    points: tuple[complex, ...]
    marks: tuple[float, ...]

    @property
    def length(self) -> float:
        return self.marks[-1]

    def at(self, s: float) -> tuple[complex, complex]:
        """Point and outward unit normal (to the right of the counter-clockwise way) at arc length ``s``; straight on beyond the ends."""
        i = min(max(bisect_right(self.marks, s) - 1, 0), len(self.points) - 2)
        step = self.points[i + 1] - self.points[i]
        length = self.marks[i + 1] - self.marks[i]
        along = step / length
        return self.points[i] + along * (s - self.marks[i]), -1j * along

    def nearest(self, places: Sequence[complex]) -> list[float]:
        """The arc length of the place nearest to each of some points that lie about in order along the arc; beyond the ends too."""
        found: list[float] = []
        last, at = len(self.points) - 2, 0
        for number, p in enumerate(places):
            best, where = 9e18, 0.0
            for i in range(0 if not number else max(at - 1, 0), last + 1 if not number else min(at + 4, last + 1)):
                a, length = self.points[i], self.marks[i + 1] - self.marks[i]
                local = (p - a) / ((self.points[i + 1] - a) / length)
                x = max(0.0 if i else local.real, min(local.real, length if i < last else local.real))
                away = abs(local - x)
                if away < best - 1e-9:
                    best, where, at = away, self.marks[i] + x, i
            found.append(where)
        return found

    def part(self, start: float, end: float) -> Arc:
        """The stretch between two arc lengths."""
        inner = [p for p, m in zip(self.points, self.marks, strict=True) if start + 1e-9 < m < end - 1e-9]
        return arc_of([self.at(start)[0], *inner, self.at(end)[0]])


def arc_of(points: Sequence[complex]) -> Arc:
    """An arc through these points; coinciding neighbours are dropped."""
    kept = [points[0]]
    marks = [0.0]
    for point in points[1:]:
        step = abs(point - kept[-1])
        if step > 1e-9:
            kept.append(point)
            marks.append(marks[-1] + step)
    if len(kept) == 1:
        kept.append(kept[0] + 1e-6)
        marks.append(1e-6)
    return Arc(tuple(kept), tuple(marks))


def bulged(start: complex, end: complex, length: float, steps: int = 24) -> Arc:
    """The circular arc of this length from start to end, bulging to the right of the way (outward, going counter-clockwise)."""
    chord = abs(end - start)
    if length <= chord * 1.0005 or chord < 1e-6:
        return arc_of([start, end])
    half = _half_angle(chord / length)
    radius = length / (2 * half)
    along = (end - start) / chord
    centre = (start + end) / 2 + 1j * along * (radius * _cos(half))
    first = start - centre
    return arc_of([centre + first * exp(1j * 2 * half * i / steps) for i in range(steps + 1)])


def upright_loop(start: complex, end: complex, first: complex, last: complex, length: float, steps: int = 16) -> Arc | None:
    """A loop of this length that keeps between the rays ``first`` (at its start) and ``last`` (at its end): along the first, round a cap
    that both rays touch, back along the second. None where the cap alone is longer: a plain bow then keeps between them too.
    """
    out = first + last
    chord = abs(end - start)
    if abs(out) < 0.5 or chord < 1e-6:
        return None
    out /= abs(out)
    wide = min(max(phase(last / out), 0.0), 0.6)
    cap = pi + 2 * wide
    low = (chord / 2) / cos(wide)
    leg = (length - low * cap) / (2 + cap * tan(wide))
    if leg <= 0:
        return None
    radius = low + leg * tan(wide)
    foot, tip = start + leg * out * exp(-1j * wide), end + leg * out * exp(1j * wide)
    centre = (foot + tip) / 2 + out * radius * sin(wide)
    spoke = out * -1j * exp(-1j * wide) * radius
    return arc_of([start, *(centre + spoke * exp(1j * cap * i / steps) for i in range(steps + 1)), end])


def _cos(angle: float) -> float:
    return sin(pi / 2 - angle)


def _half_angle(ratio: float) -> float:
    """The angle x in (0, pi) with sin(x) / x = ratio, by bisection."""
    low, high = 1e-6, pi - 1e-6
    for _ in range(60):
        middle = (low + high) / 2
        if sin(middle) / middle > ratio:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def bend(arc: Arc) -> float:
    """How far an arc turns from its start to its end, counter-clockwise, in radians."""
    steps = [b - a for a, b in pairwise(arc.points)]
    return sum(phase(b / a) for a, b in pairwise(steps))


def bezier(start: complex, control1: complex, control2: complex, end: complex, steps: int = 20) -> Arc:
    """A cubic curve as an arc."""
    points = []
    for i in range(steps + 1):
        t = i / steps
        r = 1 - t
        points.append(r**3 * start + 3 * r * r * t * control1 + 3 * r * t * t * control2 + t**3 * end)
    return arc_of(points)


