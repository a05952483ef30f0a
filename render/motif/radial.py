"""Work in rounds: from the middle outwards, one round at a time; an outer round never moves an inner one."""

from __future__ import annotations

from cmath import exp
from dataclasses import replace
from math import pi

from motifold.render.fabric.model import Fabric
from motifold.render.motif.branches import grow
from motifold.render.motif.chains import hang
from motifold.render.motif.course import Course, course_of, with_corners
from motifold.render.motif.extents import CLEAR, OVAL_HALF, OVAL_LEAST, STEM_HALF
from motifold.render.motif.feet import stand
from motifold.render.motif.given import edge_standing, turning_at_corners
from motifold.render.motif.gores import kept_order
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.margin import fill_margins
from motifold.render.motif.model import RoundShape
from motifold.render.motif.petals import petals_of
from motifold.render.motif.picots import ring_radius
from motifold.render.motif.place import Standing, is_crowded, place
from motifold.render.motif.posts import bend_posts
from motifold.render.motif.room import room_of
from motifold.render.motif.spine import feet_round_spine, lay_spine
from motifold.render.motif.swell import longer_inside
from motifold.render.motif.symmetry import rotations

_RECTANGLE = 4
"""Round a foundation chain a round has four corners, or is an oval."""
_MAGIC_RING = 0.42
"""Radius of the circle that the feet of a magic ring stand on."""


def lay_rounds(fabric: Fabric) -> Ground:
    """Place every round of a motif worked in rounds; twice, where rounds inside a crowded one can make room for it."""
    ground = _laid(Ground.of(fabric))
    fullness = longer_inside(ground)
    return _finished(_laid(Ground.of(fabric, fullness)) if fullness else ground)


def _finished(ground: Ground) -> Ground:
    fill_margins(ground)
    return ground


def _laid(ground: Ground) -> Ground:
    fabric = ground.fabric
    for index, worked in enumerate(fabric.rounds):
        if worked.kind == "ring":
            centre_ring(ground, index)
            continue
        if worked.kind == "foundation" and index == 0:
            lay_spine(ground, index)
            continue
        course = with_corners(fabric, course_of(fabric, index, ground.picots), ground.courses.get(index - 1))
        if course.size and worked.kind == "edge":
            course = turning_at_corners(ground, course)
            settle(ground, course, edge_standing(ground, course), 1)
        elif course.size:
            lay_round(ground, course)
    return ground


def centre_ring(ground: Ground, index: int) -> None:
    """A chain closed into a ring, its joining stitch among the ovals; or nothing, for a magic ring."""
    chains = [s for s in ground.fabric.round_stitches(index) if s.kind == "ch"]
    joins = [s for s in ground.fabric.round_stitches(index) if s.kind != "ch"]
    if not chains:
        ground.ring = _MAGIC_RING
        return
    radius = ring_radius(len(chains), bool(joins))
    share = 2 * pi / (len(chains) + (0.55 if joins else 0.0))
    for k, chain in enumerate(chains):
        turn = exp(1j * share * (k + (0.775 if joins else 0.5)))
        ground.tips[chain.id] = (radius * turn - 1j * turn * OVAL_LEAST / 2, radius * turn + 1j * turn * OVAL_LEAST / 2)
        ground.normals[chain.id] = turn
    for join in joins:
        ground.tips[join.id] = (radius + 0j, radius + 0j)
        ground.normals[join.id] = 1 + 0j
    corner = abs(complex(radius + OVAL_HALF, OVAL_LEAST * 0.3))
    ground.ring = corner + CLEAR + STEM_HALF + 0.02


def lay_round(ground: Ground, course: Course) -> None:
    """Feet, outline, heads, chains of one round."""
    if not ground.ring:
        ground.ring = _MAGIC_RING
    if ground.spine and len(course.corners) != _RECTANGLE:
        course = replace(course, corners=())
    order = kept_order(course, ground.gores, rotations(ground, course))
    if len(course.corners) > 2 and order > len(course.corners):
        # More alike than a polygon with these corners: nothing sets them apart, so the round is a circle still.
        course = replace(course, corners=())
    feet = stand(ground, course)
    if ground.spine and not ground.courses:
        feet = feet_round_spine(ground, course)
    room = room_of(ground, course, feet)
    standing = place(ground, course, feet, room, order, petals_of(ground, course, is_crowded(course, feet, room)))
    settle(ground, course, standing, order)


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
    hang(ground, course, standing)
    for branch in course.branches:
        grow(ground, course, branch)
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
