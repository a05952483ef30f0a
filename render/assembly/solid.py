"""The thing as it stands: corners placed in space so that every panel keeps its shape.

Method: lay each panel, in its own flat shape, as near as it goes, and move every corner to the mean of where its panels want it; again
until nothing moves (Bouaziz et al., "Shape-Up: shaping discrete geometry with projections", 2012). It starts from the three slowest waves
of the corner graph (Hall 1970; Koren 2005), which blow closed things up. Where panels can't keep their shape, there is no such thing as
a solid here and None comes back.
"""

from __future__ import annotations

import itertools
from math import cos, radians, sin
from typing import TYPE_CHECKING, Any

from motifold.render.assembly.hinges import LID_LEANS, Flap, face_normal, find_flaps, set_flaps
from motifold.render.assembly.model import Assembly, Panel
from motifold.render.assembly.sides import interval
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Points = NDArray[np.float64]

MOST_PANELS = 120
ROUNDS = 3000
WORST = 0.01  # of a side
UPRIGHT = 0.7  # cosine between up and the lowest panel's normal from which on the thing stands on that panel: within 45 degrees
THIN = 0.05  # least extent over the largest


@dataclass(frozen=True, slots=True)
class Solid:
    """Corners of one copy in cm, z up; ``faces``: for each panel its ring of corners, counter-clockwise seen from its right side;
    ``openings``: the edges that stay open, opening by opening, in the direction of their face.

    An opening, if there is one, looks up; ``upside_down``: it looks down. ``flat``: two layers without room between, seen along y.
    ``flaps``: the faces that hang on the rest by one edge; they are drawn open. ``over``: faces that lie on others, edgings turned back;
    those after the panels' own are edgings.
    """

    points: tuple[tuple[float, float, float], ...]
    faces: tuple[tuple[int, ...], ...]
    openings: tuple[tuple[tuple[int, int], ...], ...] = ()
    flat: bool = False
    upside_down: bool = False
    flaps: frozenset[int] = frozenset()
    over: frozenset[int] = frozenset()

    @property
    def rim(self) -> tuple[tuple[int, int], ...]:
        """Every open edge."""
        return tuple(edge for opening in self.openings for edge in opening)


def stand_up(assembly: Assembly, upside_down: bool = False) -> Solid | None:
    """The solid that one copy of the panels makes, or None: too many panels, circles, one side only, or panels that would have to bend."""
    import numpy as np

    panels = [panel for panel in assembly.panels if panel.copy == 1]
    if len(panels) > MOST_PANELS or len(panels) < 2 or not assembly.orientable or any(len(panel.sides) < 3 for panel in panels):
        return None
    if any(seam.twist for seam in assembly.seams) or assembly.pieces != assembly.copies:
        return None
    rings, shapes = _rings(_places(assembly, panels), panels)
    if any(len(set(ring)) != len(ring) for ring in rings):
        return None
    count = max(max(ring) for ring in rings) + 1
    points = _waves(count, rings, shapes)
    flat = [np.array(shape) - np.mean(np.array(shape), axis=0) for shape in shapes]
    points = _keep_shape(points, rings, flat)
    side = min(float(np.linalg.norm(shape[1] - shape[0])) for shape in flat)
    if _error(points, rings, flat) > WORST * side:
        return None
    flaps = find_flaps(rings)
    hanging = frozenset(face for flap in flaps for face in flap.faces)
    body = sorted({c for face, ring in enumerate(rings) if face not in hanging for c in ring})
    thin = _thickness(points[body]) < THIN
    if thin:
        standing = _laid(set_flaps(points, rings, flaps, 0.0), assembly)
    else:
        standing = _upright(points, rings, assembly, panels, hanging)
        standing = _back(set_flaps(standing, rings, flaps, 0.0 if upside_down else LID_LEANS), flaps)
    if upside_down and not thin:
        standing = standing * np.array([1.0, -1.0, -1.0])
    if not thin:
        standing = standing - np.array([0.0, 0.0, standing[:, 2].min()])
    rounded = tuple((round(float(x), 6), round(float(y), 6), round(float(z), 6)) for x, y, z in standing)
    return Solid(rounded, tuple(rings), _open_edges(assembly, panels), thin, upside_down, hanging)


def _back(points: Any, flaps: tuple[Flap, ...]) -> Any:
    """Turned by quarters until the flaps' hinges lie at the back."""
    import numpy as np

    if not flaps:
        return points
    ends = sorted({c for flap in flaps for c in flap.hinge})
    middle = points.mean(axis=0)
    quarters = [np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]]) for c, s in ((1, 0), (0, 1), (-1, 0), (0, -1))]
    turned = [(points - middle) @ quarter.T + middle for quarter in quarters]
    return max(turned, key=lambda p: round(float((p[ends] - middle).mean(axis=0)[1]), 6))


def _laid(points: Any, assembly: Assembly) -> Any:
    """What has no thickness, turned so that it is seen from the front (x and z), its opening up."""
    import numpy as np

    points = points - points.mean(axis=0)
    _, _, axes = np.linalg.svd(points, full_matrices=False)
    rim = [i for i, corner in enumerate(assembly.corners[: len(points)]) if corner.on_opening]
    up = points[rim].mean(axis=0) if rim else axes[1]
    up = up - axes[2] * float(up @ axes[2])
    length = float(np.linalg.norm(up))
    up = up / length if length > 1e-6 else axes[1]
    frame = np.stack([np.cross(up, axes[2]), axes[2], up])
    return points @ frame.T


def _places(assembly: Assembly, panels: list[Panel]) -> dict[str, dict[float, int]]:
    """For each panel, the corners of the surface by where they lie along its rim: 2.5 is the middle of side 2."""
    found: dict[str, dict[float, int]] = {panel.name: {} for panel in panels}
    sides = {panel.name: panel.sides for panel in panels}
    for number, corner in enumerate(assembly.corners):
        for name, index in corner.at:
            if name in found:
                found[name][float(index)] = number
        for piece in corner.along:
            if piece.panel in found:
                found[piece.panel][sides[piece.panel].index(piece.side) + float(interval(piece)[1])] = number
    return found


def _open_edges(assembly: Assembly, panels: list[Panel]) -> tuple[tuple[tuple[int, int], ...], ...]:
    places = _places(assembly, panels)
    sides = {panel.name: panel.sides for panel in panels}
    found = []
    for opening in assembly.openings[: len(assembly.openings) // assembly.copies]:
        edges = []
        for piece in opening.sides:
            low, high = (sides[piece.panel].index(piece.side) + float(share) for share in interval(piece))
            here = places[piece.panel]
            edges.append((here[low % len(sides[piece.panel])], here[high % len(sides[piece.panel])]))
        found.append(tuple(edges))
    return tuple(found)


def _rings(places: dict[str, dict[float, int]], panels: list[Panel]) -> tuple[list[tuple[int, ...]], list[list[tuple[float, float]]]]:
    """For each panel the corners round it (those within its sides too) and where they lie when it is flat."""
    rings, shapes = [], []
    for panel in panels:
        here = sorted(places[panel.name].items())
        rings.append(tuple(number for _, number in here))
        shape = []
        for at, _ in here:
            side, share = int(at), at - int(at)
            a, b = panel.outline_cm[side], panel.outline_cm[(side + 1) % len(panel.sides)]
            shape.append((a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share))
        shapes.append(shape)
    return rings, shapes


def panel_rings(assembly: Assembly, panels: list[Panel]) -> tuple[list[list[tuple[int, float]]], list[list[tuple[float, float]]]]:
    """For each panel the corners round it, each with its place along the rim (2.5: the middle of side 2), and where they lie when flat."""
    places = _places(assembly, panels)
    rings = [[(number, at) for at, number in sorted(places[panel.name].items())] for panel in panels]
    return rings, _rings(places, panels)[1]


def _waves(count: int, rings: list[tuple[int, ...]], shapes: list[list[tuple[float, float]]]) -> Any:
    import numpy as np

    laplacian = np.zeros((count, count))
    for ring in rings:
        for i, a in enumerate(ring):
            b = ring[(i + 1) % len(ring)]
            laplacian[a, b] -= 1
            laplacian[b, a] -= 1
            laplacian[a, a] += 1
            laplacian[b, b] += 1
    values, vectors = np.linalg.eigh(laplacian)
    waves = vectors[:, 1:4] / np.sqrt(np.maximum(values[1:4], 1e-9))
    if waves.shape[1] < 3:
        waves = np.hstack([waves, np.zeros((count, 3 - waves.shape[1]))])
    reach = np.mean([np.linalg.norm(np.subtract(shape[1], shape[0])) for shape in shapes])
    steps = np.mean([np.linalg.norm(waves[a] - waves[b]) for ring in rings for a, b in itertools.pairwise(ring)])
    return waves * (reach / max(steps, 1e-9))


def _keep_shape(points: Any, rings: list[tuple[int, ...]], flat: list[Any]) -> Any:
    import numpy as np

    groups: dict[int, list[int]] = {}
    for i, ring in enumerate(rings):
        groups.setdefault(len(ring), []).append(i)
    batches = [(np.array([rings[i] for i in members]), np.array([flat[i] for i in members])) for members in groups.values()]
    times = np.zeros(len(points))
    for index, _ in batches:
        np.add.at(times, index.ravel(), 1.0)
    times = np.maximum(times, 1.0)[:, None]
    for _ in range(ROUNDS):
        wanted = np.zeros_like(points)
        for index, shape in batches:
            here = points[index]
            middle = here.mean(axis=1, keepdims=True)
            u, _, v = np.linalg.svd(np.swapaxes(here - middle, 1, 2) @ shape, full_matrices=False)
            np.add.at(wanted, index.ravel(), (shape @ np.swapaxes(u @ v, 1, 2) + middle).reshape(-1, 3))
        after = wanted / times
        step = float(np.abs(after - points).max())
        points = after
        if step < 1e-9:
            break
    return points


def _error(points: Any, rings: list[tuple[int, ...]], flat: list[Any]) -> float:
    import numpy as np

    worst = 0.0
    for ring, shape in zip(rings, flat, strict=True):
        here = points[list(ring)]
        wish = np.linalg.norm(shape[:, None] - shape[None], axis=2)
        worst = max(worst, float(np.abs(np.linalg.norm(here[:, None] - here[None], axis=2) - wish).max()))
    return worst


def _thickness(points: Any) -> float:
    """The least extent over the largest: nought for what lies flat."""
    import numpy as np

    spread = np.linalg.svd(points - points.mean(axis=0), compute_uv=False)
    return float(spread[-1] / spread[0])


def _upright(points: Any, rings: list[tuple[int, ...]], assembly: Assembly, panels: list[Panel], hanging: frozenset[int]) -> Any:
    """Turned so that the opening looks up (if none, the panel with most neighbours lies below), a side of the lowest panel in front.

    ``hanging``: the faces of flaps, which say nothing of where up is.
    """
    import numpy as np

    body = [i for i in range(len(rings)) if i not in hanging]
    rest = {c for i in body for c in rings[i]}

    points = points - points.mean(axis=0)
    normals = [face_normal(points[list(ring)]) for ring in rings]
    middle = points[sorted(rest)].mean(axis=0)
    outside = sum(float(normals[i] @ (points[list(rings[i])].mean(axis=0) - middle)) for i in body)
    if outside < 0:
        # The mirror image: right sides would face in.
        points = points * np.array([1.0, 1.0, -1.0])
        normals = [face_normal(points[list(ring)]) for ring in rings]
    rim = [i for i, corner in enumerate(assembly.corners[: len(points)]) if corner.on_opening and i in rest]
    if rim:
        up = points[rim].mean(axis=0) - points[sorted(rest)].mean(axis=0)
        lowest = min(body, key=lambda i: round(float(points[list(rings[i])].mean(axis=0) @ up), 6))
        long = float(np.linalg.norm(up))
        if long < 1e-6 * float(np.abs(points).max()) or float(normals[lowest] @ up) < -UPRIGHT * long:
            up = -normals[lowest]
    else:
        names = [panel.name for panel in panels]
        flat = [0] * len(names)
        for seam in assembly.seams:
            for piece in (seam.a, seam.b):
                if seam.kind == "flat" and piece is not None and piece.panel in names:
                    flat[names.index(piece.panel)] += 1
        lowest = max(range(len(names)), key=lambda i: (flat[i], -i))
        up = -normals[lowest]
    up = up / np.linalg.norm(up)
    ring = rings[lowest]
    front = points[ring[1]] - points[ring[0]]
    front = front - up * float(front @ up)
    front = front / np.linalg.norm(front)
    frame = np.stack([front, np.cross(up, front), up])
    turned = points @ frame.T
    return turned - np.array([0.0, 0.0, turned[:, 2].min()])


def view(point: tuple[float, float, float], azimuth: float = 28.0, elevation: float = 24.0) -> tuple[float, float, float]:
    """A corner as seen from in front and above: x to the right, y up, and how near it is. Parallel, so that measures keep their ratio."""
    a, e = radians(azimuth), radians(elevation)
    x, y, z = point
    right = cos(a) * x - sin(a) * y
    back = sin(a) * x + cos(a) * y
    return right, cos(e) * z + sin(e) * back, sin(e) * z - cos(e) * back
