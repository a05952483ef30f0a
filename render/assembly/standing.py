"""The finished thing as it stands: a parallel view from in front and above, so that equal lengths along one edge stay equal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from motifold.render.assembly.brim import with_rims
from motifold.render.assembly.hidden import Face, hides, paint_order, parts_in_sight, turning
from motifold.render.assembly.key import KEY_MM, finished_entries, paint_key_rows
from motifold.render.assembly.measures import NEXT_MM, OFF_MM, Dimension, length_text, paint_clear, plan_dimension
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.notes import (
    MOST_OPENINGS,
    estimates_said,
    mark_points,
    note,
    note_room,
    opening_lines,
    points_of,
    points_said,
    with_edgings,
)
from motifold.render.assembly.rims import estimated_in
from motifold.render.assembly.sheet import Sheet, moved, toward, unit
from motifold.render.assembly.solid import Solid, view
from motifold.render.assembly.style import CAP_EM, HAIR, INK, LETTER_PT, MM_PER_PT, PANEL_BACK, QUIET, THICK_MM, THIN_MM
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm
from motifold.symbols.record import dataclass

DIM_MM = 11.0  # room that a dimension takes
LARGEST_MM = 80.0  # across what is drawn
SLACK = 0.02  # of the shortest edge: panels are flat and corners meet as nearly as this
LONGEST = 0.995  # of the greatest distance: as good as the greatest, where it is seen longer


@dataclass(frozen=True, slots=True)
class Scene:
    """The solid on the sheet. ``points``: its corners in mm, with how near they are; ``edges``: for each edge the faces that it bounds."""

    solid: Solid
    points: tuple[tuple[float, float, float], ...]
    faces: tuple[Face, ...]
    edges: dict[tuple[int, int], frozenset[int]]
    slack: float

    def at(self, corner: int) -> Point:
        return self.points[corner][0], self.points[corner][1]

    def outer(self, edge: tuple[int, int]) -> bool:
        """Whether an edge is a rim or an outline: nothing lies behind it on one side."""
        faces = self.edges[edge]
        return len(faces) < 2 or len({self.faces[i].front for i in faces}) == 2

    def in_sight(self, edge: tuple[int, int]) -> list[tuple[float, float]]:
        a, b = (self.points[c] for c in edge)
        return parts_in_sight(a, b, self.faces, self.edges[edge], self.slack)


def draw_standing(assembly: Assembly, solid: Solid, width_mm: float, height_mm: float, rims: Sequence[Rim] = ()) -> Drawing:
    """The solid seen from in front and above, hidden lines left out, its near sides named, measured along its edges, edgings as bands."""
    lines = max((len(opening_lines(assembly, rims, i)) for i in range(len(solid.openings))), default=0)
    scene = _scene(solid, width_mm, height_mm - note_room(lines) - (KEY_MM if solid.openings else 0.0), rims)
    sheet = Sheet()
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    for i in paint_order(scene.faces, scene.slack):
        name = panels[i].name if i < len(panels) else None
        sheet.begin("panel" if name else "edging", name, (("panel", name),) if name else ())
        sheet.fill(scene.faces[i].flat, _tint(scene.solid, i, i >= len(panels)) if scene.faces[i].front else PANEL_BACK)
        sheet.end()
    for outer in (False, True):
        for edge in scene.edges:
            if scene.outer(edge) == outer:
                for low, high in scene.in_sight(edge):
                    a, b = scene.at(edge[0]), scene.at(edge[1])
                    width = THICK_MM if len(scene.edges[edge]) < 2 else THIN_MM
                    sheet.line([toward(a, b, low), toward(a, b, high)], INK if outer else HAIR, width)
    for i, panel in enumerate(panels):
        _name(sheet, scene, i, panel.name)
    said = _measures(sheet, assembly, scene, rims)
    angles = points_of(assembly)
    marked = [(scene.at(i), angles[i]) for i in sorted(angles) if not hides(scene.faces, scene.at(i), scene.points[i][2], scene.slack)]
    mark_points(sheet, marked, _middle(scene))
    if solid.openings:
        paint_key_rows(sheet, finished_entries(opens=True, folds=False), width_mm)
    return sheet.drawing("Finished", said + points_said(assembly) + "." + estimates_said(rims))


def _scene(plain: Solid, width_mm: float, height_mm: float, rims: Sequence[Rim] = ()) -> Scene:
    solid = with_rims(plain, rims)
    seen = [view(point) for point in solid.points]
    left, low = min(p[0] for p in seen), min(p[1] for p in seen)
    wide, high = max(p[0] for p in seen) - left, max(p[1] for p in seen) - low
    scale = min((width_mm - 2.5 * DIM_MM) / wide, (height_mm - 2.5 * DIM_MM) / high, LARGEST_MM / max(wide, high))
    points = tuple(((x - left) * scale, (y - low) * scale, near * scale) for x, y, near in seen)
    faces: dict[tuple[int, int], set[int]] = {}
    for i, ring in enumerate(solid.faces):
        for a, b in zip(ring, [*ring[1:], ring[0]], strict=True):
            faces.setdefault((min(a, b), max(a, b)), set()).add(i)
    edges = {edge: frozenset(found) for edge, found in sorted(faces.items())}
    shortest = min(edge_length(plain, (a, b)) for ring in plain.faces for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)) * scale
    return Scene(solid, points, tuple(Face([points[c] for c in ring]) for ring in solid.faces), edges, SLACK * shortest)


def edge_length(solid: Solid, edge: tuple[int, int]) -> float:
    """The true length from corner to corner, in cm."""
    a, b = (solid.points[c] for c in edge)
    return float(sum((p - q) ** 2 for p, q in zip(a, b, strict=True)) ** 0.5)


def _tint(solid: Solid, face: int, edging: bool = False) -> str:
    """Lit from above on the left: tints of the panels' ground, or of an edging's."""
    ring = [solid.points[c] for c in solid.faces[face]]
    nx = sum(a[1] * b[2] - a[2] * b[1] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))
    ny = sum(a[2] * b[0] - a[0] * b[2] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))
    nz = sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))
    length = (nx * nx + ny * ny + nz * nz) ** 0.5 or 1.0
    light = (-0.45 * nx - 0.35 * ny + 0.82 * nz) / length
    share = max(0.0, min(1.0, 0.5 + 0.5 * light))
    tints = ((0xCE, 0xEE), (0xC6, 0xE8), (0xB4, 0xDA)) if edging else ((0xDC, 0xF8), (0xD7, 0xF6), (0xCC, 0xF2))
    return "#" + "".join(f"{round(dark + (pale - dark) * share):02x}" for dark, pale in tints)


def hull(points: Sequence[Point]) -> list[Point]:
    """Convex hull, counter-clockwise (Andrew 1979)."""
    ordered = sorted(set(points))

    def half(items: Sequence[Point]) -> list[Point]:
        kept: list[Point] = []
        for p in items:
            while len(kept) > 1 and turning([kept[-2], kept[-1], p]) <= 1e-9:
                kept.pop()
            kept.append(p)
        return kept

    return half(ordered)[:-1] + half(ordered[::-1])[:-1]


def _name(sheet: Sheet, scene: Scene, face: int, name: str) -> None:
    """A panel's name in its middle, where all of it is in sight and clear of lines; paler where its wrong side is seen."""
    one = scene.faces[face]
    x, y = one.middle[0], one.middle[1]
    em, wide = LETTER_PT * MM_PER_PT, text_width_mm(name, "sans-bold", LETTER_PT)
    box = (x - wide / 2, y - em / 2, x + wide / 2, y + em / 2)
    corners = [(cx, cy) for cx in (box[0], x, box[2]) for cy in (box[1], box[3])]
    if one.edge_on or not all(one.holds(corner, 0.2) for corner in corners) or not sheet.free(box, 0.2):
        return
    if any(hides(scene.faces, corner, one.near(corner), scene.slack, frozenset((face,))) for corner in corners):
        return
    sheet.words((x, y - CAP_EM / 2 * em), name, LETTER_PT, "sans-bold", INK if one.front else QUIET)


# --- measures ---------------------------------------------------------------------------------------------------------------


def _measures(sheet: Sheet, assembly: Assembly, scene: Scene, rims: Sequence[Rim]) -> str:
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    mouth = "open at the bottom" if scene.solid.upside_down else "open at the top"
    said = f"As it stands, {mouth}" if openings else "As it stands, closed all round"
    panels = [panel.name for panel in assembly.panels if panel.copy == 1]
    if scene.solid.flaps:
        said += f"; {', '.join(panels[i] for i in sorted(scene.solid.flaps))} shown open"
    if not assembly.scaled:
        return said
    whole = as_box(scene.solid)
    box = whole or as_box(scene.solid, len(panels))
    if box is not None:
        wide, deep, high = (length_text(cm) for cm in box)
        body = body_corners(scene.solid, None if whole else len(panels))
        _box_dimensions(sheet, scene, box, body, whole is not None and estimated_in(rims))
        said += f"; {wide} by {deep}, {high} high{with_edgings(rims) if whole else ''}"
    else:
        _edge_dimensions(sheet, scene, len(panels))
        across = _across(sheet, scene, len(panels))
        said += f"; {length_text(across)} across at most, from corner to corner"
    if len(openings) <= MOST_OPENINGS:
        for number in range(len(scene.solid.openings)):
            note(sheet, _mouth(scene, number, len(panels), rims), opening_lines(assembly, rims, number), not scene.solid.upside_down)
    girths = [length_text(opening.girth_cm) for opening in openings if opening.girth_cm is not None]
    return said + (f"; opening {', '.join(girths)} round" if girths else "")


def _mouth(scene: Scene, number: int, panels: int, rims: Sequence[Rim]) -> list[Point]:
    """Where a leader can point to an opening: the middles of its edges in sight; of one that a turned edging hides, that edging's."""
    edges = [(min(edge), max(edge)) for edge in scene.solid.openings[number]]
    if any(rim.turned and rim.opening == number for rim in rims):
        edges += [edge for edge, faces in scene.edges.items() if len(faces) == 1 and min(faces) >= panels]
    shares = (0.5, 0.3, 0.7, 0.85, 0.0, 1.0)
    seen = [toward(scene.at(a), scene.at(b), share) for a, b in edges if scene.in_sight((a, b)) for share in shares]
    if not scene.solid.upside_down:
        return seen
    middle = _middle(scene)[1]
    return [at for at in seen if at[1] < middle]


def _across(sheet: Sheet, scene: Scene, panels: int) -> float:
    """The greatest distance between corners of panels, drawn where it is seen longest, beside the thing; in cm."""
    corners = sorted({c for ring in scene.solid.faces[:panels] for c in ring})
    pairs = [(i, j) for i in corners for j in corners if j < i]
    most = max(edge_length(scene.solid, pair) for pair in pairs)
    longest = [pair for pair in pairs if edge_length(scene.solid, pair) > LONGEST * most]

    def seen(pair: tuple[int, int]) -> float:
        a, b = scene.at(pair[0]), scene.at(pair[1])
        return round(hypot(b[0] - a[0], b[1] - a[1]), 4)

    i, j = max(longest, key=lambda pair: (seen(pair), pair))
    a, b = sorted((scene.at(i), scene.at(j)))
    middle, outline = _middle(scene), [(x, y) for x, y, _ in scene.points]
    plans = []
    for way in ((0.0, -1.0), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0)):
        along = unit(a, b)
        out = (along[1], -along[0])
        out = out if out[0] * way[0] + out[1] * way[1] >= 0 else (-out[0], -out[1])
        near = [(p[0] - middle[0]) * out[0] + (p[1] - middle[1]) * out[1] for p in (a, b)]
        reach = max((x - middle[0]) * out[0] + (y - middle[1]) * out[1] for x, y in outline)
        for turn in range(4):
            off = reach + OFF_MM + turn * NEXT_MM
            plans.append(plan_dimension(a, b, moved(a, out, off - near[0]), moved(b, out, off - near[1]), f"{length_text(most)} across"))
    paint_clear(sheet, plans)
    return most


def body_corners(solid: Solid, faces: int | None = None) -> list[int]:
    """The corners of what is no flap and lies over nothing (``faces``: of the first so many)."""
    return sorted({c for i, ring in enumerate(solid.faces[:faces]) if i not in solid.flaps | solid.over for c in ring})


def as_box(solid: Solid, faces: int | None = None) -> tuple[float, float, float] | None:
    """Width, depth and height without flaps, if every corner (``faces``: of the first so many) lies on an edge of an upright box."""
    points = [solid.points[c] for c in body_corners(solid, faces)]
    spans = [(min(p[k] for p in points), max(p[k] for p in points)) for k in range(3)]
    slack = 0.01 * max(high - low for low, high in spans)
    met = set()
    for point in points:
        outer = [0 if abs(point[k] - low) < slack else 1 if abs(point[k] - high) < slack else None for k, (low, high) in enumerate(spans)]
        if outer.count(None) > 1:
            return None
        met.add(tuple(outer))
    if sum(None not in corner for corner in met) < 8:
        return None  # a box that stands on an edge, or a wedge
    return spans[0][1] - spans[0][0], spans[1][1] - spans[1][0], spans[2][1] - spans[2][0]


def _box_dimensions(sheet: Sheet, scene: Scene, box: tuple[float, float, float], body: Sequence[int], estimate: bool) -> None:
    """Along the two lower edges that meet in front, and an upright one beside them (``estimate``: it holds an edging not measured)."""
    spans = [(min(scene.solid.points[c][k] for c in body), max(scene.solid.points[c][k] for c in body)) for k in range(3)]

    def corner(x: int, y: int, z: int) -> tuple[Point, float]:
        want = (spans[0][x], spans[1][y], spans[2][z])
        at = min(body, key=lambda i: sum((a - b) ** 2 for a, b in zip(scene.solid.points[i], want, strict=True)))
        return scene.at(at), view(want)[2]

    x, y = max(((x, y) for x in (0, 1) for y in (0, 1)), key=lambda xy: corner(xy[0], xy[1], 0)[1])
    near, along_x, along_y = corner(x, y, 0)[0], corner(1 - x, y, 0)[0], corner(x, 1 - y, 0)[0]
    wanted = [(along_x, near, box[0]), (along_y, near, box[1])]
    right, left = ((1 - x, y), (x, 1 - y)) if along_x[0] > along_y[0] else ((x, 1 - y), (1 - x, y))
    uprights = [(corner(*side, 0)[0], corner(*side, 1)[0]) for side in (right, left)]
    middle = _middle(scene)
    for a, b, cm in wanted:
        paint_clear(sheet, _beside(a, b, cm, middle))
    paint_clear(sheet, (plan for a, b in uprights for plan in _beside(a, b, box[2], middle, estimate)))


def _middle(scene: Scene) -> Point:
    return tuple(sum(p[k] for p in scene.points) / len(scene.points) for k in (0, 1))  # type: ignore[return-value]


def _beside(a: Point, b: Point, cm: float, middle: Point, estimate: bool = False) -> Iterator[Dimension]:
    """Dimensions of an edge on the side away from the middle, farther and farther off; either way round, as its words may run on."""
    for turn in range(4):
        off = OFF_MM + turn * NEXT_MM
        for start, end in ((a, b), (b, a)) if a <= b else ((b, a), (a, b)):
            along = unit(start, end)
            out = (along[1], -along[0])
            half = toward(start, end, 0.5)
            if (half[0] - middle[0]) * out[0] + (half[1] - middle[1]) * out[1] < 0:
                out = (-out[0], -out[1])
            yield plan_dimension(start, end, moved(start, out, off), moved(end, out, off), length_text(cm, estimate))


def _edge_dimensions(sheet: Sheet, scene: Scene, panels: int) -> None:
    """Each length of the panels' edges once, along an edge of the outline: the lowest of them where its dimension stands clear."""
    outline = hull([(x, y) for x, y, _ in scene.points])
    rim = {frozenset(pair) for pair in zip(outline, [*outline[1:], outline[0]], strict=True)}
    by_length: dict[float, list[tuple[int, int]]] = {}
    for edge in (edge for edge, faces in scene.edges.items() if min(faces) < panels):
        if frozenset((scene.at(edge[0]), scene.at(edge[1]))) in rim:
            by_length.setdefault(round(edge_length(scene.solid, edge), 1), []).append(edge)
    middle = _middle(scene)
    for length in sorted(by_length, reverse=True):
        edges = sorted(by_length[length], key=lambda edge: (round(scene.at(edge[0])[1] + scene.at(edge[1])[1], 3), edge))
        paint_clear(sheet, (plan for a, b in edges for plan in _beside(scene.at(a), scene.at(b), edge_length(scene.solid, (a, b)), middle)))
