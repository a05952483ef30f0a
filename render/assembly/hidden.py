"""What hides what in a parallel view: the order in which faces are painted, and the parts of an edge that stay in sight.

Points are (x, y, near) as ``solid.view`` gives them; faces are flat and convex, as panels are.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from motifold.render.drawing.display import Point

Seen = tuple[float, float, float]

NEAR = 1e-6  # shares of an edge nearer to each other than this are the same place


def turning(ring: Sequence[Point]) -> float:
    """Twice the area of a ring; positive counter-clockwise."""
    return sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))


def centroid(ring: Sequence[Point]) -> Point:
    """The middle of a ring's area."""
    pairs = list(zip(ring, [*ring[1:], ring[0]], strict=True))
    area = 3 * turning(ring)
    x = sum((a[0] + b[0]) * (a[0] * b[1] - a[1] * b[0]) for a, b in pairs) / area
    y = sum((a[1] + b[1]) * (a[0] * b[1] - a[1] * b[0]) for a, b in pairs) / area
    return x, y


class Face:
    """A face in view, with the plane that it lies in."""

    def __init__(self, ring: Sequence[Seen]) -> None:
        flat = [(x, y) for x, y, _ in ring]
        self.front = turning(flat) > 0
        self.flat = flat if self.front else flat[::-1]
        self.box = min(x for x, _ in flat), min(y for _, y in flat), max(x for x, _ in flat), max(y for _, y in flat)
        self.middle = tuple(sum(p[k] for p in ring) / len(ring) for k in range(3))
        pairs = list(zip(ring, [*ring[1:], ring[0]], strict=True))
        self.normal = (
            sum(a[1] * b[2] - a[2] * b[1] for a, b in pairs),
            sum(a[2] * b[0] - a[0] * b[2] for a, b in pairs),
            sum(a[0] * b[1] - a[1] * b[0] for a, b in pairs),
        )
        size = sum(n * n for n in self.normal) ** 0.5 or 1.0
        self.edge_on = abs(self.normal[2]) < 1e-3 * size

    def near(self, at: Point) -> float:
        """How near the plane is at a place of the view."""
        nx, ny, nz = self.normal
        mx, my, mz = self.middle
        return mz - (nx * (at[0] - mx) + ny * (at[1] - my)) / nz

    def holds(self, at: Point, slack: float) -> bool:
        """Whether a place lies within the face, ``slack`` off its edges."""
        x0, y0, x1, y1 = self.box
        if self.edge_on or not (x0 < at[0] < x1 and y0 < at[1] < y1):
            return False
        for a, b in zip(self.flat, [*self.flat[1:], self.flat[0]], strict=True):
            length = ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5
            if (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0]) < slack * length:
                return False
        return True


def paint_order(faces: Sequence[Face], slack: float) -> list[int]:
    """Farther faces first: wherever two overlap in view, the one behind comes before. (No ring of faces that hide each other is expected;
    there the farther middle decides.)"""
    behind: list[set[int]] = [set() for _ in faces]
    for i, one in enumerate(faces):
        for j in range(i):
            over = _overlap(one, faces[j])
            if over is None:
                continue
            gap = one.near(over) - faces[j].near(over)
            if gap > slack:
                behind[i].add(j)
            elif gap < -slack:
                behind[j].add(i)
    left = sorted(range(len(faces)), key=lambda i: (round(faces[i].middle[2], 6), i))
    order: list[int] = []
    while left:
        nextone = next((i for i in left if not behind[i] & set(left)), left[0])
        left.remove(nextone)
        order.append(nextone)
    return order


def _overlap(a: Face, b: Face) -> Point | None:
    """A place that both faces cover, if there is one (Sutherland and Hodgman 1974: one clipped by the other)."""
    if a.edge_on or b.edge_on or a.box[0] > b.box[2] or b.box[0] > a.box[2] or a.box[1] > b.box[3] or b.box[1] > a.box[3]:
        return None
    kept = list(a.flat)
    for p, q in zip(b.flat, [*b.flat[1:], b.flat[0]], strict=True):
        clipped: list[Point] = []
        for c, d in zip(kept, [*kept[1:], kept[0]], strict=True):
            at_c = (q[0] - p[0]) * (c[1] - p[1]) - (q[1] - p[1]) * (c[0] - p[0])
            at_d = (q[0] - p[0]) * (d[1] - p[1]) - (q[1] - p[1]) * (d[0] - p[0])
            if at_c >= 0:
                clipped.append(c)
            if (at_c > 0 > at_d) or (at_c < 0 < at_d):
                share = at_c / (at_c - at_d)
                clipped.append((c[0] + (d[0] - c[0]) * share, c[1] + (d[1] - c[1]) * share))
        kept = clipped
        if len(kept) < 3:
            return None
    if turning(kept) < 1e-6 * min(turning(a.flat), turning(b.flat)):
        return None
    return sum(x for x, _ in kept) / len(kept), sum(y for _, y in kept) / len(kept)


def hides(faces: Sequence[Face], at: Point, near: float, slack: float, apart: frozenset[int] = frozenset()) -> bool:
    """Whether a face (none of ``apart``) lies before a place."""
    return any(i not in apart and face.holds(at, slack * 0.2) and face.near(at) > near + slack for i, face in enumerate(faces))


def parts_in_sight(a: Seen, b: Seen, faces: Sequence[Face], own: frozenset[int], slack: float) -> list[tuple[float, float]]:
    """The stretches of an edge (shares of its length) that no face hides; ``own``: the faces that it belongs to."""
    cuts: list[float] = []
    for face in faces:
        if face.box[0] > max(a[0], b[0]) or face.box[2] < min(a[0], b[0]) or face.box[1] > max(a[1], b[1]) or face.box[3] < min(a[1], b[1]):
            continue
        for c, d in zip(face.flat, [*face.flat[1:], face.flat[0]], strict=True):
            across = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
            if abs(across) > 1e-12:
                share = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / across
                if NEAR < share < 1.0 - NEAR:
                    cuts.append(share)
    cuts.sort()
    # Cuts that arithmetic alone has parted are one, so that a whole edge is whole on every machine.
    apart = [0.0, *(cut for before, cut in pairwise([0.0, *cuts]) if cut - before > NEAR), 1.0]
    parts: list[tuple[float, float]] = []
    for low, high in pairwise(apart):
        t = (low + high) / 2
        x, y, near = (p + (q - p) * t for p, q in zip(a, b, strict=True))
        if hides(faces, (x, y), near, slack, own):
            continue
        if parts and parts[-1][1] == low:
            parts[-1] = (parts[-1][0], high)
        else:
            parts.append((low, high))
    return parts
