"""A round that has its places, written down: its stems, the chains hung between them, and the outline that it makes."""

from __future__ import annotations

from motifold.render.motif.branches import grow
from motifold.render.motif.chains import hang
from motifold.render.motif.course import Course
from motifold.render.motif.crossings import part_bars
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.model import RoundShape
from motifold.render.motif.place import Standing
from motifold.render.motif.posts import bend_posts
from motifold.render.motif.relax import relax


def settle(ground: Ground, course: Course, standing: Standing, order: int) -> None:
    """Write a placed round down, and hang its chains."""
    ground.courses[course.round] = course
    ground.order[course.round] = order
    for index, stem in enumerate(course.stems):
        stitch = stem.stitch.id
        ground.heads[stitch] = standing.heads[index]
        ground.normals[stitch] = standing.normals[index]
        ground.feet[stitch] = tuple(standing.feet[index])
        ground.at[stitch] = (course.round, index)
    for index, gap in enumerate(course.gaps):
        for part in gap.parts:
            ground.at[part] = (course.round, index)
        for run, _, _ in gap.runs:
            ground.gap_at[run] = (course.round, index)
    bend_posts(ground, course)
    part_bars(ground, course)
    hang(ground, course, standing, order)
    for branch in course.branches:
        grow(ground, course, branch)
    relax(ground, course, order, standing.even, standing.outline.corners)
    ground.shapes.append(_shape(ground, course, standing))


def _shape(ground: Ground, course: Course, standing: Standing) -> RoundShape:
    """The outline that the heads stand on, in true corners and sides; where heights differ, from head to head."""
    outline = standing.outline
    corners = [outline.corner(number) for number in range(outline.corners)] if standing.even else []
    if not standing.even or course.open:
        line = list(standing.heads)
    elif outline.corners:
        line = corners
    else:
        line = [outline.at(outline.perimeter * k / 72)[0] for k in range(72)]
    first = standing.heads[course.begins]
    out = standing.normals[course.begins]
    return RoundShape(course.round, tuple(map(point, line)), tuple(map(point, corners)), point(first), point(out))
