"""The rotation that the stitch graph has: found on the graph, then kept exactly by the positions."""

from __future__ import annotations

from cmath import exp
from math import gcd, pi

from motifold.render.fabric.model import Base
from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground


def rotations(ground: Ground, course: Course) -> int:
    """How many times this round repeats round the centre, with all the rounds that it stands on (1: not at all)."""
    if course.open:
        return 1
    below = _below(ground)
    limit = course.size if below == 0 else gcd(course.size, below)
    marks = [_mark(ground, course, index) for index in range(course.size)]
    for order in range(limit, 1, -1):
        if limit % order == 0 and _repeats(ground, course, marks, order):
            return order
    return 1


def _below(ground: Ground) -> int:
    """The rotations that all earlier rounds share; 0 when there are none (the centre turns at will)."""
    found = 0
    for order in ground.order.values():
        found = gcd(found, order)
    return found


Mark = tuple[object, ...]


def _mark(ground: Ground, course: Course, index: int) -> tuple[Mark, tuple[tuple[int, int] | None, ...]]:
    """What a stem is, and the places (round, index) that it stands on."""
    stitch, gap = course.stems[index].stitch, course.gaps[index]
    what = (
        stitch.kind, stitch.gather, tuple((leg.kind, leg.base.kind, leg.base.foot) for leg in stitch.legs),
        len(course.stems[index].picots), tuple(ground.fabric.stitches[part].kind for part in gap.parts), len(gap.picots),
    )  # fmt: skip
    return what, tuple(_place(ground, leg.base) for leg in stitch.legs)


def _place(ground: Ground, base: Base) -> tuple[int, int] | None:
    if base.kind == "space":
        return ground.gap_at.get(base.id)
    if base.kind == "ring":
        return (-1, 0)
    return ground.at.get(base.id)


def _repeats(ground: Ground, course: Course, marks: list[tuple[Mark, tuple[tuple[int, int] | None, ...]]], order: int) -> bool:
    step = course.size // order
    for index in range(course.size):
        what, places = marks[index]
        other, moved = marks[(index + step) % course.size]
        if what != other:
            return False
        for place, image in zip(places, moved, strict=True):
            if place is None or image is None or place[0] != image[0]:
                return False
            if place[0] < 0:
                continue
            size = ground.courses[place[0]].size
            if size % order or (place[1] + size // order) % size != image[1]:
                return False
    return True


def symmetric(points: list[complex], order: int) -> list[complex]:
    """The points with their rotation made exact: each is the mean of its images."""
    if order < 2:
        return points
    step = len(points) // order
    turns = [exp(2j * pi * k / order) for k in range(order)]
    first = [sum(points[i + k * step] / turns[k] for k in range(order)) / order for i in range(step)]
    return [first[i % step] * turns[i // step] for i in range(len(points))]
