"""Work in rounds: from the middle outwards, one round at a time; an outer round never moves an inner one."""

from __future__ import annotations

from cmath import exp
from dataclasses import replace
from math import pi

from motifold.render.fabric.model import Fabric
from motifold.render.motif.border import lay_border
from motifold.render.motif.course import Course, course_of, with_corners
from motifold.render.motif.extents import CLEAR, OVAL, OVAL_HALF, OVAL_LEAST, STEM_HALF
from motifold.render.motif.feet import stand
from motifold.render.motif.given import edge_standing, framed_edge, turning_at_corners
from motifold.render.motif.gores import kept_order
from motifold.render.motif.ground import Ground
from motifold.render.motif.layer import is_layer, lifted
from motifold.render.motif.margin import fill_margins
from motifold.render.motif.petals import petals_of
from motifold.render.motif.picots import ring_radius
from motifold.render.motif.place import is_crowded, place
from motifold.render.motif.room import room_of
from motifold.render.motif.settle import settle
from motifold.render.motif.spine import feet_round_spine, lay_spine
from motifold.render.motif.swell import longer_inside
from motifold.render.motif.symmetry import rotations

_RECTANGLE = 4
"""Round a foundation chain a round has four corners, or is an oval."""
_MUCH = 9.0
"""What a round lacks whose symbols still crowd each other: all the room that can be made."""
_STRAINED, _STRETCHED = 1.03, (1.65, 1.75, 1.85)
"""Where the true corners of the last round strain its stems by more than this, the rounds inside it, which only near the square, are
strained by as much: how long their stems may be drawn, tried in this order.
"""
_INNER, _WIDER = 5, (0.4, 0.8, 1.2)
"""Where one of so many rounds still crowds, a magic ring is drawn so much wider."""
_MAGIC_RING = 0.42
"""Radius of the circle that the feet of a magic ring stand on."""


def lay_rounds(fabric: Fabric) -> Ground:
    """Place every round of a motif worked in rounds; twice, where rounds inside a crowded one can make room for it."""
    ground = _laid(Ground.of(fabric))
    for stretch in _STRETCHED if ground.rounded - {ground.last} and ground.strain > _STRAINED else ():
        other = _laid(Ground.of(fabric, stretch=stretch))
        if other.strain < ground.strain - 1e-6:
            ground = other
    for lacking in (ground.lacking, {**dict.fromkeys(ground.crowded, _MUCH), **ground.lacking}):
        fullness = longer_inside(ground, lacking)
        if fullness and fullness != ground.fullness:
            other = _laid(Ground.of(fabric, fullness, stretch=ground.stretch))
            if lacking is ground.lacking or sum(other.crowded.values()) < sum(ground.crowded.values()):
                ground = other
    if ground.crowded and min(ground.crowded) <= _INNER and ground.ring <= _MAGIC_RING:
        for wider in _WIDER:
            other = _laid(Ground.of(fabric, ground.fullness, wider, ground.stretch))
            if sum(other.crowded.values()) < 0.8 * sum(ground.crowded.values()):
                ground = other
            if not ground.crowded:
                break
    return _finished(ground)


def _finished(ground: Ground) -> Ground:
    fill_margins(ground)
    return ground


def _laid(ground: Ground) -> Ground:
    fabric, bordered = ground.fabric, False
    for index, worked in enumerate(fabric.rounds):
        if worked.kind == "ring":
            centre_ring(ground, index)
            continue
        if worked.kind == "foundation" and index == 0:
            lay_spine(ground, index)
            continue
        course = with_corners(fabric, course_of(fabric, index, ground.picots), ground.courses.get(index - 1))
        framed = framed_edge(ground, course) if course.size and worked.kind == "edge" else None
        if framed is not None:
            course, standing, frame = framed
            ground.frame = None if any(stem.stitch.kind == "row end" for stem in course.stems) else frame
            settle(ground, course, standing, 1)
            bordered = True
        elif course.size and bordered:
            lay_border(ground, course)
        elif course.size and worked.kind == "edge":
            course = turning_at_corners(ground, course)
            settle(ground, course, edge_standing(ground, course), 1)
        elif course.size and is_layer(ground, course):
            with lifted(ground, course):
                lay_round(ground, course)
        elif course.size:
            lay_round(ground, course)
    return ground


def centre_ring(ground: Ground, index: int) -> None:
    """A chain closed into a ring, its joining stitch among the ovals; a single chain; or nothing, for a magic ring."""
    upright = {chain for stitch in ground.fabric.stitches if stitch.role == "standing" for chain in stitch.chains}
    chains = [s for s in ground.fabric.round_stitches(index) if s.kind == "ch" and s.id not in upright]
    joins = [s for s in ground.fabric.round_stitches(index) if s.kind != "ch"]
    if not chains:
        ground.ring = _MAGIC_RING + ground.wider
        return
    if not joins:
        ground.tips[chains[0].id] = (complex(-OVAL / 2), complex(OVAL / 2))
        ground.normals[chains[0].id] = 1j
        ground.ring = OVAL / 2 + CLEAR + STEM_HALF
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
