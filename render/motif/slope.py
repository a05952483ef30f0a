"""Stitches between loops on the slope of a fan: they stand square to it, whatever their row does."""

from __future__ import annotations

from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground

_SLOPE = 0.25
"""The sine of a slope on which stitches between loops stand square."""


def rays(ground: Ground, course: Course) -> dict[int, complex]:
    """The way out of each such stem of a row."""
    found: dict[int, complex] = {}
    for i in range(1, course.size - 1):
        bases = {leg.base for leg in course.stems[i].stitch.legs}
        if len(bases) != 1 or not course.gaps[i - 1].parts or not course.gaps[i].parts:
            continue
        base = next(iter(bases))
        if base.kind == "stitch":
            way = ground.anchor(base)[1]
            if abs(way.real) > _SLOPE:
                found[i] = way
    return found
