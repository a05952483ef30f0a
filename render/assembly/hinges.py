"""Flaps: what hangs on the rest of a solid along one straight edge, and so may take any angle: lids, ear flaps, tongues."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, radians, sin
from typing import Any

from motifold.symbols.record import dataclass

LID_LEANS = 20.0  # degrees that an open lid leans back


@dataclass(frozen=True, slots=True)
class Flap:
    """``faces`` turn about the edge ``hinge``, by which face ``inner`` of them hangs on face ``outer`` of the rest."""

    faces: frozenset[int]
    hinge: tuple[int, int]
    inner: int
    outer: int


def find_flaps(rings: Sequence[Sequence[int]]) -> tuple[Flap, ...]:
    """Every flap, the larger before those that hang on it. Nothing is a flap where all hangs together by single edges."""
    sharing: dict[tuple[int, int], list[int]] = {}
    for face, ring in enumerate(rings):
        for a, b in zip(ring, [*ring[1:], ring[0]], strict=True):
            sharing.setdefault((min(a, b), max(a, b)), []).append(face)
    inner = {edge: (faces[0], faces[1]) for edge, faces in sorted(sharing.items()) if len(faces) == 2 and faces[0] != faces[1]}
    cuts = []
    for edge, (one, two) in inner.items():
        part = _reach(one, {e: f for e, f in inner.items() if e != edge}, len(rings))
        rest = frozenset(range(len(rings))) - part
        if two in rest and {c for f in part for c in rings[f]} & {c for f in rest for c in rings[f]} == set(edge):
            cuts.append((edge, one, two, part, rest))
    cores = {i: sum(_together(i, j, cuts) for j in range(len(rings))) for i in range(len(rings))}
    core = max(cores, key=lambda i: (cores[i], -i))
    if cores[core] < 2:
        return ()
    flaps = [
        Flap(part, edge, one, two) if core not in part else Flap(rest, edge, two, one) for edge, one, two, part, rest in cuts
    ]
    return tuple(sorted(flaps, key=lambda flap: -len(flap.faces)))


def _together(i: int, j: int, cuts: Sequence[tuple[tuple[int, int], int, int, frozenset[int], frozenset[int]]]) -> bool:
    return all((i in part) == (j in part) for _, _, _, part, _ in cuts)


def _reach(first: int, edges: dict[tuple[int, int], tuple[int, int]], count: int) -> frozenset[int]:
    near: list[list[int]] = [[] for _ in range(count)]
    for one, two in edges.values():
        near[one].append(two)
        near[two].append(one)
    met, waiting = {first}, [first]
    while waiting:
        for other in near[waiting.pop()]:
            if other not in met:
                met.add(other)
                waiting.append(other)
    return frozenset(met)


def set_flaps(points: Any, rings: Sequence[Sequence[int]], flaps: Sequence[Flap], lean: float) -> Any:
    """Every flap in the plane of what it hangs on; on a wall it leans ``lean`` degrees to the outside, so that one looks in. z is up."""
    import numpy as np

    points = points.copy()
    for flap in flaps:
        a, b = (points[c] for c in flap.hinge)
        axis = (b - a) / np.linalg.norm(b - a)
        normal = face_normal(points[list(rings[flap.outer])])
        into = points[list(rings[flap.outer])].mean(axis=0) - a
        into = into - axis * float(into @ axis)
        into = into / np.linalg.norm(into)
        turn = radians(lean) if abs(float(normal[2])) < 0.5 else 0.0
        want = -into * cos(turn) + normal * sin(turn)
        have = points[list(rings[flap.inner])].mean(axis=0) - a
        have = have - axis * float(have @ axis)
        angle = atan2(float(np.cross(have, want) @ axis), float(have @ want))
        moving = sorted({c for face in flap.faces for c in rings[face]} - set(flap.hinge))
        rest = points[moving] - a
        along = np.outer(rest @ axis, axis)
        points[moving] = a + along + (rest - along) * cos(angle) + np.cross(axis, rest) * sin(angle)
    return points


def face_normal(ring: Any) -> Any:
    """Unit normal of a ring of corners (Newell's sum)."""
    import numpy as np

    total = sum(np.cross(a, b) for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True))
    return total / max(float(np.linalg.norm(total)), 1e-12)
