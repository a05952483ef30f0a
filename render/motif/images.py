"""Runs of chains that are images of others: turned, not hung anew."""

from __future__ import annotations

from cmath import exp
from math import pi

from motifold.render.motif.arc import Arc
from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground


def hung_again(ground: Ground, course: Course, index: int, order: int) -> bool:
    """Hang the gap after a stem as its first image was, if it has one that will also carry the same; whether it was done."""
    step = course.size // order
    gap, first = course.gaps[index], course.gaps[index % step]
    if index < step or gap.picots or any(part not in ground.tips for part in first.parts):
        return False
    if any(not _carry_alike(ground, a[0], b[0]) for a, b in zip(first.runs, gap.runs, strict=True)):
        return False
    turn = exp(2j * pi * (index // step) / order)
    for old, new in zip(first.parts, gap.parts, strict=True):
        start, end = ground.tips[old]
        ground.tips[new] = (start * turn, end * turn)
        ground.normals[new] = ground.normals[old] * turn
    for (old_run, _, _), (run, _, _) in zip(first.runs, gap.runs, strict=True):
        if old_run in ground.arcs:
            arc = ground.arcs[old_run]
            ground.arcs[run] = Arc(tuple([p * turn for p in arc.points]), arc.marks)
        if old_run in ground.links:
            ground.links[run] = [tuple([p * turn for p in line]) for line in ground.links[old_run]]
    return True


def _carry_alike(ground: Ground, one: int, other: int) -> bool:
    """Whether two runs are laid for the same that will be worked into them."""
    same_load = abs(ground.loads.get(one, 0.0) - ground.loads.get(other, 0.0)) < 1e-9
    return same_load and all((one in some) == (other in some) for some in (ground.odd, ground.level, ground.broad))
