"""Ripples: rows whose increases and decreases stand above one another rise and fall. The wave is read off the way that flat rows lean.

A stem square to its edge that leans by ``lean`` over its height tells the edge's slope: -lean / height. Summed along a row that is the
wave.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise

from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground
from motifold.symbols.record import dataclass

_LEAST = 0.9
"""A wave lower than this is not drawn."""
_STEEPEST = 0.6


@dataclass(frozen=True, slots=True)
class Wave:
    """Height over x, straight between knots."""

    xs: tuple[float, ...] = ()
    ys: tuple[float, ...] = ()

    def at(self, x: float) -> float:
        if len(self.xs) < 2:
            return 0.0
        i = min(max(bisect_right(self.xs, x) - 1, 0), len(self.xs) - 2)
        part = (x - self.xs[i]) / (self.xs[i + 1] - self.xs[i])
        return self.ys[i] + part * (self.ys[i + 1] - self.ys[i])

    def normal(self, x: float) -> complex:
        """Unit normal, upwards; softened over a peak or a valley."""
        slope = (self.at(x + 0.3) - self.at(x - 0.3)) / 0.6
        return complex(-slope, 1.0) / abs(complex(-slope, 1.0))


def wave_of(ground: Ground) -> Wave:
    """The wave that the flat rows ask for; none where they do not agree on one."""
    waves = [_row_wave(ground, course) for _, course in sorted(ground.courses.items())[:5] if course.size > 3]
    waves = [wave for wave in waves if wave.xs and max(wave.ys) - min(wave.ys) > _LEAST]
    for first, second in pairwise(waves):
        if _agree(first, second):
            return second
    return Wave()


def _row_wave(ground: Ground, course: Course) -> Wave:
    spots = []
    for stem in course.stems:
        head, feet = ground.heads[stem.stitch.id], ground.feet[stem.stitch.id]
        lean = head.real - sum(feet).real / len(feet)
        spots.append((head.real, max(-_STEEPEST, min(_STEEPEST, -lean / max(stem.height, 0.5)))))
    spots.sort()
    ys = [0.0]
    for (x, slope), (after, steeper) in pairwise(spots):
        ys.append(ys[-1] + (after - x) * (slope + steeper) / 2)
    xs = [x for x, _ in spots]
    if any(b - a < 0.05 for a, b in pairwise(xs)):
        return Wave()
    span = xs[-1] - xs[0]
    level = [y - ys[-1] * (x - xs[0]) / span for x, y in zip(xs, ys, strict=True)]
    return Wave(tuple(xs), tuple(y - min(level) for y in level))


def _agree(first: Wave, second: Wave) -> bool:
    """Whether two rows rise and fall together."""
    low, high = max(first.xs[0], second.xs[0]), min(first.xs[-1], second.xs[-1])
    points = [low + (high - low) * k / 60 for k in range(61)]
    return _alike([first.at(x) for x in points], [second.at(x) for x in points]) > 0.8


def _alike(one: Sequence[float], other: Sequence[float]) -> float:
    mean, mean_other = sum(one) / len(one), sum(other) / len(other)
    both = sum((a - mean) * (b - mean_other) for a, b in zip(one, other, strict=True))
    size = sum((a - mean) ** 2 for a in one) * sum((b - mean_other) ** 2 for b in other)
    return float(both / size**0.5) if size > 1e-12 else 0.0
