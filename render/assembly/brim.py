"""Edgings on what stands: each a band of faces that goes on from the walls, or lies turned back over them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import hypot

from motifold.render.assembly.model import Rim
from motifold.render.assembly.rims import STRAIGHT
from motifold.render.assembly.solid import Solid

Vector = tuple[float, float, float]
OUTSET = 0.05  # of the shortest edge: how far a turned band stands off the wall that it lies on


def with_rims(solid: Solid, rims: Sequence[Rim]) -> Solid:
    """The solid with a face more for each edge of an opening that has an edging; edgings of one opening lie one beyond the other."""
    for rim in rims:
        if rim.opening < len(solid.openings):
            solid = _turned(solid, rim) if rim.turned else _straight(solid, rim)
    return replace(solid, points=tuple((round(x, 6), round(y, 6), round(z, 6)) for x, y, z in solid.points))


def _straight(solid: Solid, rim: Rim) -> Solid:
    edges = solid.openings[rim.opening]
    outward = [_beyond(solid, edge) for edge in edges]
    points, faces = list(solid.points), list(solid.faces)
    beyond: dict[int, int] = {}
    after = []
    for at, (i, j) in enumerate(edges):
        ends = []
        for corner, way in ((i, _mitre(outward[at - 1], outward[at])), (j, _mitre(outward[at], outward[(at + 1) % len(edges)]))):
            if corner not in beyond:
                beyond[corner] = len(points)
                points.append(_plus(solid.points[corner], way, rim.depth_cm))
            ends.append(beyond[corner])
        faces.append((j, i, ends[0], ends[1]))
        after.append((ends[0], ends[1]))
    openings = tuple(tuple(after) if k == rim.opening else one for k, one in enumerate(solid.openings))
    return replace(solid, points=tuple(points), faces=tuple(faces), openings=openings)


def _turned(solid: Solid, rim: Rim) -> Solid:
    """The band inwards along the walls and a little off them; the opening stays where it is."""
    edges = solid.openings[rim.opening]
    outward = [_beyond(solid, edge) for edge in edges]
    normals = [_normal(solid, _face_at(solid, edge)) for edge in edges]
    off = OUTSET * min(_length(_minus(solid.points[j], solid.points[i])) for ring in solid.faces for i, j in _pairs(ring))
    points, faces = list(solid.points), list(solid.faces)
    near: dict[int, tuple[int, int]] = {}
    for at, (i, j) in enumerate(edges):
        for corner, one, two in ((i, at - 1, at), (j, at, (at + 1) % len(edges))):
            if corner not in near:
                low = _plus(solid.points[corner], _mitre(normals[one], normals[two]), off)
                near[corner] = (len(points), len(points) + 1)
                points += [low, _plus(low, _mitre(outward[one], outward[two]), -rim.depth_cm)]
        (low_i, high_i), (low_j, high_j) = near[i], near[j]
        faces.append((low_i, low_j, high_j, high_i))
    new = frozenset(range(len(solid.faces), len(faces)))
    return replace(solid, points=tuple(points), faces=tuple(faces), over=solid.over | new)


def _pairs(ring: Sequence[int]) -> list[tuple[int, int]]:
    return list(zip(ring, [*ring[1:], ring[0]], strict=True))


def _face_at(solid: Solid, edge: tuple[int, int]) -> int:
    """The face that an open edge bounds."""
    return next(k for k, ring in enumerate(solid.faces) if edge in _pairs(ring) and k not in solid.over)


def _beyond(solid: Solid, edge: tuple[int, int]) -> Vector:
    """Off an open edge in the plane of its face."""
    along = _minus(solid.points[edge[1]], solid.points[edge[0]])
    return _unit(_cross(along, _normal(solid, _face_at(solid, edge))))


def _normal(solid: Solid, face: int) -> Vector:
    total = (0.0, 0.0, 0.0)
    for a, b in _pairs(solid.faces[face]):
        total = _plus(total, _cross(solid.points[a], solid.points[b]), 1.0)
    return _unit(total)


def _mitre(one: Vector, two: Vector) -> Vector:
    share = 1 + sum(a * b for a, b in zip(one, two, strict=True))
    if share <= STRAIGHT:
        return two
    return _plus((0.0, 0.0, 0.0), _plus(one, two, 1.0), 1 / share)


def _plus(a: Vector, b: Vector, by: float) -> Vector:
    return a[0] + b[0] * by, a[1] + b[1] * by, a[2] + b[2] * by


def _minus(a: Vector, b: Vector) -> Vector:
    return _plus(a, b, -1.0)


def _cross(a: Vector, b: Vector) -> Vector:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _length(a: Vector) -> float:
    return hypot(*a)


def _unit(a: Vector) -> Vector:
    length = _length(a) or 1.0
    return a[0] / length, a[1] / length, a[2] / length
