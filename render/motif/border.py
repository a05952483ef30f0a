"""Rounds all round a piece in rows: over the ends of its rows, along its last row and the other side of its foundation, as a frame."""

from __future__ import annotations

from cmath import exp
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import cos, pi, sin
from statistics import median
from typing import Literal

from motifold.render.fabric.model import Stitch
from motifold.render.motif.course import Course, with_corners
from motifold.render.motif.extents import CLEAR, FOOT_RISE, OVAL, OVAL_HALF, STEM_HALF, body_of, head_half
from motifold.render.motif.feet import shared, stand
from motifold.render.motif.frame import Frame, Wall
from motifold.render.motif.ground import Ground
from motifold.render.motif.parts import Corner
from motifold.render.motif.petals import petals_of
from motifold.render.motif.place import place
from motifold.render.motif.room import room_of
from motifold.render.motif.settle import settle
from motifold.symbols.sizes import HEAD_SPAN

Name = Literal["top", "left", "bottom", "right"]
_AROUND: tuple[Name, ...] = ("top", "left", "bottom", "right")
_NORMALS: Mapping[Name, complex] = {"top": 1j, "left": -1 + 0j, "bottom": -1j, "right": 1 + 0j}
_TURNING = 2 * OVAL_HALF + 0.02
"""The room beside the end of a row that turning chains take which have none between the stitches of a border."""
_STEADY = 0.22
"""A row that ends so much further in than the widest, in heights of what stands on its end, is reached by longer stitches; where it ends
further in than that, their feet stand off it.
"""
_SHORTER = 0.1
"""What stands in spaces, whose feet are further out, is drawn so much shorter than it is."""
_NEAR = 2
"""A corner that the stitches show is that of the piece if it lies within so many stitches of it."""
_SQUARE = 0.6
"""The way round a corner's base is so far from a quarter circle (1) towards a true corner (0)."""
_BEYOND = 0.12
"""How far beyond the tip of its head, or of its oval, the outer foot of a corner stands."""
_INSIDE, _FURTHER = 0.2, 0.9
"""Where the chain in a corner ends further in than the rows, that foot stands so far inside the ends of these, and goes out at most so much
further.
"""
_BARE = 1.1
"""Stitches no taller have no crossbar at their heads."""
_LOW, _ASIDE = 0.12, 0.14
"""How far over the corner of a border's last round, and how far beside it, stand the stitches on either side of a new corner."""


def goes_round(ground: Ground, course: Course) -> bool:
    """Whether a round is a border, or stands on one."""
    return ground.frame is not None or {_side_of(ground, stem.stitch) for stem in course.stems} == set(_AROUND)


def lay_border(ground: Ground, course: Course) -> None:
    """Place one round of a border."""
    if ground.frame is None:
        sides = [_side_of(ground, stem.stitch) for stem in course.stems]
        _find_edges(ground, course, sides)
        corners = _corners(course, sides)
        course = replace(course, corners=tuple(corner for corner, _, _ in corners))
        feet = _round_corners(ground, course, corners, stand(ground, course))
        ground.frame = Frame(tuple(_wall(name, course, sides, feet) for name in _AROUND), 0.0)
    else:
        course = with_corners(ground.fabric, course, ground.courses.get(course.round - 1))
        feet = _astride(ground, course, stand(ground, course))
    room = room_of(ground, course, feet)
    settle(ground, course, place(ground, course, feet, room, 1, petals_of(ground, course, False)), 1)


def _side_of(ground: Ground, stitch: Stitch) -> Name:
    """The side of a piece in rows that a stitch stands on."""
    base = stitch.legs[0].base if stitch.legs else None
    if base is None:
        return "top"
    if base.kind == "stitch" and ground.fabric.stitches[base.id].role == "given":
        return min(_AROUND, key=lambda name: abs(_NORMALS[name] - ground.normals[base.id]))
    if base.foot == "row end" and base.id in ground.at:
        number, place = ground.at[base.id]
        return "left" if 2 * place >= ground.courses[number].size else "right"
    below = ground.fabric.runs[base.id].stitches[0] if base.kind == "space" else base.id
    return "bottom" if ground.fabric.rounds[ground.fabric.stitches[below].round].kind == "foundation" else "top"


def _find_edges(ground: Ground, course: Course, sides: Sequence[Name]) -> None:
    """Where the stitches of a border stand on the ends of rows, one below the other where these end alike, and under the foundation."""
    ends: dict[Name, dict[int, complex]] = {"left": {}, "right": {}}
    worked = Counter(leg.base.id for stem in course.stems for leg in stem.stitch.legs if leg.base.foot == "row end")
    for stem, side in zip(course.stems, sides, strict=True):
        for base in (leg.base for leg in stem.stitch.legs):
            if base.foot == "row end" and base.id in ground.heads and side in ends:
                ends[side][base.id] = _beside(ground, base.id, _NORMALS[side], worked[base.id])
            elif side == "bottom" and base.kind == "stitch" and ground.fabric.stitches[base.id].role != "given":
                at = sum(ground.tips[base.id]) / 2 if base.id in ground.tips else ground.feet[base.id][0]
                ground.edges[base.id, False] = (at, -1j)
    for side, found in ends.items():
        normal = _NORMALS[side]
        furthest = max((z / normal).real for z in found.values())
        low = furthest - _STEADY * min(stem.height for stem, name in zip(course.stems, sides, strict=True) if name == side)
        for number, z in found.items():
            ground.edges[number, True] = (z + normal * max(low - (z / normal).real, 0.0), normal)


def _beside(ground: Ground, number: int, normal: complex, worked: int) -> complex:
    """The middle of the side of a row's last stitch, where the ``worked`` stitches in it begin: past a turning chain that would be in
    their way.
    """
    stitch = ground.fabric.stitches[number]
    if stitch.role == "given":
        return ground.heads[number] + normal * FOOT_RISE
    half = OVAL_HALF if stitch.role == "standing" else max(head_half(stitch), body_of(stitch)[0])
    course = ground.courses[stitch.round]
    begins = course.stems[course.begins].stitch.id == number
    chains = sum(len(run.stitches) for run in ground.fabric.runs if run.role == "beginning" and run.round == stitch.round) if begins else 0
    if chains and chains + worked > 2:
        half += _TURNING
    middle = (ground.feet[number][0] + ground.heads[number]) / 2
    return middle + normal * (half + CLEAR + STEM_HALF)


def _corners(course: Course, sides: Sequence[Name]) -> list[tuple[Corner, Name, Name]]:
    """The corners that the stitches show, and where they show none the place between what stands on one side and on the next; with the
    sides before and after each.
    """
    found = []
    for index in range(course.size):
        after = sides[(index + 1) % course.size]
        if sides[index] != after:
            near = [c for c in course.corners if min((c.at - index) % course.size, (index - c.at) % course.size) <= _NEAR]
            found.append((near[0] if near else Corner(index, False), sides[index], after))
    return sorted(found, key=lambda each: each[0].at)


def _wall(name: Name, course: Course, sides: Sequence[Name], feet: Sequence[Sequence[complex]]) -> Wall:
    """A level side where most of its feet are, or a little further out, for those in spaces; an upright one outside all of them."""
    normal = _NORMALS[name]
    own = [i for i, side in enumerate(sides) if side == name]
    levels = [(feet[i][0] / normal).real for i in own]
    if name in ("left", "right"):
        return Wall(normal, max(levels))
    least = min(course.stems[i].height for i in own)
    return Wall(normal, max(median(levels), min(max(levels) - _SHORTER * least, min(levels) + _STEADY * least)))


def _round_corners(
    ground: Ground, course: Course, corners: Sequence[tuple[Corner, Name, Name]], feet: list[list[complex]]
) -> list[list[complex]]:
    """The feet of stitches in a corner, which go round it from one side of their base to the other."""
    groups = [(base, members) for base, members in shared(course).items() if base.kind == "stitch" and base.foot != "row end"]
    out: dict[Name, float] = {}
    for name, normal in _NORMALS.items():
        ends = [(at / normal).real for (_, is_end), (at, way) in ground.edges.items() if is_end and way == normal]
        out[name] = max(ends, default=-1e9)
    for corner, *names in corners:
        base, members = next(((b, m) for b, m in groups if len(m) > 1 and any(s == corner.at for s, _ in m)), (None, []))
        if base is None:
            continue
        at, own = ground.anchor(base)
        rise = ((feet[members[0][0]][0] - at) / own).real
        least = (HEAD_SPAN if base.id in ground.heads else OVAL) / 2 + _BEYOND
        before, after = (
            normal * (rise if abs(normal - own) < 0.5 else min(max(least, out[name] - (at / normal).real - _INSIDE), least + _FURTHER))
            for name, normal in ((name, _NORMALS[name]) for name in names)
        )
        for k, (index, leg) in enumerate(members):
            turn = pi / 2 * k / (len(members) - 1)
            feet[index][leg] = at + before * cos(turn) ** _SQUARE + after * sin(turn) ** _SQUARE
    return feet


def _astride(ground: Ground, course: Course, feet: list[list[complex]]) -> list[list[complex]]:
    """The feet on a bare corner of the border's last round: those beside the new corner on either side of it, as low as on its sides."""
    for base, members in shared(course).items():
        corner = next((c.at for c in course.corners if c.on_stem and any(s == c.at for s, _ in members)), None)
        if corner is None or len(members) != 3 or members[1][0] != corner or base.kind != "stitch" or base.id not in ground.at:
            continue
        below = ground.courses[ground.at[base.id][0]].stems[ground.at[base.id][1]]
        at, own = ground.anchor(base)
        if below.height > _BARE or min(abs((own / way).imag) for way in _NORMALS.values()) < 0.1:
            continue
        before, after = own * exp(-0.25j * pi), own * exp(0.25j * pi)
        for (index, leg), up, along in ((members[0], before, -after), (members[2], after, -before)):
            feet[index][leg] = at + up * _LOW + along * _ASIDE
    return feet
