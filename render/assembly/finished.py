"""The finished thing with its measures: lying flat, as a tube or pouch folded flat, or as it stands."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.measures import OFF_MM, dimension, length_text, level, measure_around, upright
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.net_paint import paint_names
from motifold.render.assembly.sheet import Sheet, moved, unit
from motifold.render.assembly.solid import Solid, stand_up, view
from motifold.render.assembly.style import (
    A5_TEXT_HEIGHT_MM,
    A5_TEXT_WIDTH_MM,
    HAIR,
    INK,
    LETTER_PT,
    MM_PER_PT,
    NAME_PT,
    PANEL,
    PANEL_BACK,
    QUIET,
    THICK_MM,
    THIN_MM,
)
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm

DIM_MM = 11.0
LARGEST_MM = 80.0


def draw_finished(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> Drawing | None:
    """One copy of the thing, finished; None where its form does not follow from its panels (a garment's, say)."""
    if lies_flat(assembly):
        return _plan(assembly, width_mm, height_mm)
    tube = _tube(assembly)
    if tube is not None:
        return _folded_flat(assembly, *tube, width_mm, height_mm)
    solid = stand_up(assembly)
    if solid is not None:
        return _standing(assembly, solid, width_mm, height_mm)
    pouch = _pouch(assembly)
    return _folded_flat(assembly, *pouch, width_mm, height_mm) if pouch is not None else None


def lies_flat(assembly: Assembly) -> bool:
    """One piece, every inner corner 360 degrees, and every seam closed as the panels lie."""
    if assembly.pieces != assembly.copies or any(not c.on_opening and abs(c.degrees - 360) > 1e-6 for c in assembly.corners):
        return False
    return all(lay(assembly, 100.0, 100.0).touching)


# --- lying flat ---------------------------------------------------------------------------------------------------------


def _plan(assembly: Assembly, width_mm: float, height_mm: float) -> Drawing:
    sheet = Sheet()
    flat = lay(assembly, width_mm - 2 * DIM_MM, height_mm - 2 * DIM_MM)
    for outline in flat.outlines:
        sheet.fill(outline, PANEL)
    for seam in flat.seams:
        sheet.line(flat.seam_line(seam), HAIR, THIN_MM)
    for opening in assembly.openings[: len(assembly.openings) // assembly.copies]:
        for piece in opening.sides:
            sheet.line(flat.piece(piece), INK, THICK_MM)
    said = "Lies flat."
    if len(flat.panels) <= 40:
        paint_names(sheet, flat)
    if assembly.scaled:
        wide, high = measure_around(sheet, [p for o in flat.outlines for p in o], flat.mm_per_cm)
        said = f"Lies flat, {length_text(wide)} wide and {length_text(high)} high."
    return sheet.drawing("Finished", said)


# --- folded flat --------------------------------------------------------------------------------------------------------


def _tube(assembly: Assembly) -> tuple[float, float, str, bool] | None:
    """Width and depth in cm, what it is, and whether both ends are open: a ring of panels, plain or twisted."""
    if assembly.pieces != assembly.copies or assembly.euler != 0:
        return None
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    around = sum(_length(assembly, i) for i in range(len(openings)))
    if not around or any(not c.on_opening and abs(c.degrees - 360) > 1e-6 for c in assembly.corners):
        return None
    area = sum(_area(panel.outline_cm) for panel in assembly.panels if panel.copy == 1)
    depth = 2 * area / around
    if not assembly.orientable and len(openings) == 1:
        return around / 4, depth, "Twisted once and joined: it has one side and one edge", True
    if len(openings) == 2 and abs(_length(assembly, 0) - _length(assembly, 1)) < 1e-6 * around:
        twisted = any(seam.twist for seam in assembly.seams)
        return around / 4, depth, "Folded flat, twisted" if twisted else "Folded flat, open at both ends", True
    return None


def _pouch(assembly: Assembly) -> tuple[float, float, str, bool] | None:
    """A bag of one opening that no solid comes of: two layers, as deep as its area allows."""
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    if assembly.pieces != assembly.copies or len(openings) != 1 or assembly.euler != assembly.copies:
        return None
    around = _length(assembly, 0)
    area = sum(_area(panel.outline_cm) for panel in assembly.panels if panel.copy == 1)
    layers = [panel for panel in assembly.panels if panel.copy == 1]
    square = all(len(panel.sides) == 4 for panel in layers)
    return (around / 2, area / around, "Folded flat, open at the top", False) if around and square else None


def _length(assembly: Assembly, opening: int) -> float:
    """Length of an opening by the outlines (nominal where nothing is measured)."""
    panels = {panel.name: panel for panel in assembly.panels}
    total = assembly.adds_cm * assembly.openings[opening].seams
    for piece in assembly.openings[opening].sides:
        panel = panels[piece.panel]
        at = panel.sides.index(piece.side)
        if len(panel.sides) != len(panel.outline_cm):
            return 0.0
        a, b = panel.outline_cm[at], panel.outline_cm[(at + 1) % len(panel.sides)]
        total += hypot(b[0] - a[0], b[1] - a[1]) / piece.parts
    return total


def _area(outline: Sequence[Point]) -> float:
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(outline, [*outline[1:], outline[0]], strict=True))) / 2


def _folded_flat(assembly: Assembly, wide: float, deep: float, said: str, both_open: bool, width_mm: float, height_mm: float) -> Drawing:
    sheet = Sheet()
    scale = min((width_mm - 2 * DIM_MM) / wide, (height_mm - 2 * DIM_MM) / deep, LARGEST_MM / max(wide, deep))
    w, d = wide * scale, deep * scale
    sheet.fill([(0, 0), (w, 0), (w, d), (0, d)], PANEL)
    lip = min(3.0, 0.08 * d)
    ends = (d, 0.0) if both_open else (d,)
    for y in ends:
        # The back layer shows in the opening, so that it is seen to be open.
        curve = [(0.0, y), (w, y)]
        sheet.fill([(0, y), *(_lip(w, y, lip, i / 20) for i in range(21)), (w, y)], PANEL_BACK)
        sheet.line([_lip(w, y, lip, i / 20) for i in range(21)], INK, THICK_MM)
        sheet.line(curve, INK, THIN_MM if y == 0.0 else THICK_MM)
    for x in (0.0, w):
        sheet.line([(x, 0.0), (x, d)], INK, THIN_MM, (2.4, 0.9, 0.5, 0.9))
    if not both_open:
        sheet.line([(0.0, 0.0), (w, 0.0)], INK, THICK_MM)
    words = "fold"
    at = (2.6, d / 2)
    sheet.words((at[0] + 0.6, at[1]), words, LETTER_PT, color=QUIET, angle=90.0)
    if assembly.scaled:
        level(sheet, (0.0, 0.0), (w, 0.0), (sheet.extent or (0, 0, 0, 0))[1] - OFF_MM, wide)
        upright(sheet, (w, 0.0), (w, d), w + OFF_MM, deep)
        said = f"{said}; {length_text(wide)} wide and {length_text(deep)} deep, {length_text(2 * wide)} round"
    return sheet.drawing("Finished", said + ".")


def _lip(w: float, y: float, lip: float, share: float) -> Point:
    return w * share, y + lip * 4 * share * (1 - share)


# --- as it stands -------------------------------------------------------------------------------------------------------


def _standing(assembly: Assembly, solid: Solid, width_mm: float, height_mm: float) -> Drawing:
    seen = [view(point) for point in solid.points]
    left, right = min(p[0] for p in seen), max(p[0] for p in seen)
    low, top = min(p[1] for p in seen), max(p[1] for p in seen)
    scale = min(
        (width_mm - 2.5 * DIM_MM) / (right - left), (height_mm - 2.5 * DIM_MM) / (top - low), LARGEST_MM / max(right - left, top - low)
    )
    flat = [((x - left) * scale, (y - low) * scale) for x, y, _ in seen]
    sheet = Sheet()
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    rim = _rim_edges(assembly, solid)
    order = sorted(range(len(solid.faces)), key=lambda i: (round(sum(seen[c][2] for c in solid.faces[i]) / len(solid.faces[i]), 6), i))
    shown = []
    for i in order:
        ring = [flat[c] for c in solid.faces[i]]
        front = _turning(ring) > 0
        sheet.begin("panel", panels[i].name, (("panel", panels[i].name),))
        sheet.fill(ring, _tint(solid, i) if front else PANEL_BACK)
        for k, c in enumerate(solid.faces[i]):
            d = solid.faces[i][(k + 1) % len(solid.faces[i])]
            sheet.line([flat[c], flat[d]], INK if (c, d) in rim else HAIR, THICK_MM if (c, d) in rim else THIN_MM)
        sheet.end()
        if front:
            shown.append((panels[i].name, ring))
    outline = _hull(flat)
    sheet.line(outline, INK, THICK_MM, closed=True)
    for edge in rim:
        sheet.line([flat[edge[0]], flat[edge[1]]], INK, THICK_MM)
    for name, ring in shown:
        _face_name(sheet, name, ring)
    return sheet.drawing("Finished", _measures(sheet, assembly, solid, flat, scale))


def _rim_edges(assembly: Assembly, solid: Solid) -> set[tuple[int, int]]:
    """Edges of faces that no other face shares."""
    edges = [(ring[k], ring[(k + 1) % len(ring)]) for ring in solid.faces for k in range(len(ring))]
    return {(a, b) for a, b in edges if (b, a) not in set(edges)} if assembly.openings else set()


def _turning(ring: Sequence[Point]) -> float:
    return sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))


def _tint(solid: Solid, face: int) -> str:
    """Lit from above on the left: three tints of the panels' ground."""
    ring = [solid.points[c] for c in solid.faces[face]]
    nx = sum(a[1] * b[2] - a[2] * b[1] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))
    ny = sum(a[2] * b[0] - a[0] * b[2] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))
    nz = sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))
    length = (nx * nx + ny * ny + nz * nz) ** 0.5 or 1.0
    light = (-0.45 * nx - 0.35 * ny + 0.82 * nz) / length
    share = max(0.0, min(1.0, 0.5 + 0.5 * light))
    return "#" + "".join(f"{round(dark + (pale - dark) * share):02x}" for dark, pale in ((0xDC, 0xF8), (0xD7, 0xF6), (0xCC, 0xF2)))


def _hull(points: Sequence[Point]) -> list[Point]:
    """Convex hull, counter-clockwise (Andrew 1979)."""
    ordered = sorted(set(points))

    def half(items: Sequence[Point]) -> list[Point]:
        kept: list[Point] = []
        for p in items:
            while len(kept) > 1 and _turning([kept[-2], kept[-1], p]) <= 1e-9:
                kept.pop()
            kept.append(p)
        return kept

    return half(ordered)[:-1] + half(ordered[::-1])[:-1]


def _face_name(sheet: Sheet, name: str, ring: Sequence[Point]) -> None:
    middle = sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring)
    wide, em = text_width_mm(name, "sans-bold", LETTER_PT), NAME_PT * MM_PER_PT
    box = (middle[0] - wide / 2, middle[1] - 0.45 * em, middle[0] + wide / 2, middle[1] + 0.45 * em)
    corners = [(box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3])]
    inside = all(_turning([a, b, c]) > 0 for a, b in zip(ring, [*ring[1:], ring[0]], strict=True) for c in corners)
    if inside and sheet.free(box, 0.5):
        sheet.words((middle[0], middle[1] - 0.33 * LETTER_PT * MM_PER_PT), name, LETTER_PT, "sans-bold")


def _measures(sheet: Sheet, assembly: Assembly, solid: Solid, flat: Sequence[Point], scale: float) -> str:
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    said = "As it stands, open at the top" if openings else "As it stands, closed all round"
    if not assembly.scaled:
        return said + "."
    box = _as_box(solid)
    if box is not None:
        wide, deep, high = box
        _box_dimensions(sheet, solid, flat, box)
        said += f"; {length_text(wide)} by {length_text(deep)}, {length_text(high)} high"
    else:
        across, high = (max(x for x, _ in flat) - min(x for x, _ in flat)) / scale, max(p[2] for p in solid.points)
        left, right = min(flat), max(flat)
        bottom = (sheet.extent or (0, 0, 0, 0))[1] - OFF_MM
        level(sheet, left, right, bottom, across)
        said += f"; {length_text(across)} across"
        if openings:
            said += f", {length_text(high)} high"
    girths = [opening.girth_cm for opening in openings if opening.girth_cm is not None]
    if girths:
        said += f"; opening {', '.join(length_text(girth) for girth in girths)} round"
    return said + "."


def _as_box(solid: Solid) -> tuple[float, float, float] | None:
    """Width, depth and height, if every corner lies on an edge of an upright box."""
    spans = [(min(p[k] for p in solid.points), max(p[k] for p in solid.points)) for k in range(3)]
    slack = 0.01 * max(high - low for low, high in spans)
    for point in solid.points:
        outer = sum(min(abs(point[k] - low), abs(point[k] - high)) < slack for k, (low, high) in enumerate(spans))
        if outer < 2:
            return None
    return spans[0][1] - spans[0][0], spans[1][1] - spans[1][0], spans[2][1] - spans[2][0]


def _box_dimensions(sheet: Sheet, solid: Solid, flat: Sequence[Point], box: tuple[float, float, float]) -> None:
    """Along the two lower edges in front and the upright one on the right."""
    spans = [(min(p[k] for p in solid.points), max(p[k] for p in solid.points)) for k in range(3)]

    def corner(x: int, y: int, z: int) -> Point:
        want = (spans[0][x], spans[1][y], spans[2][z])
        return flat[min(range(len(flat)), key=lambda i: sum((a - b) ** 2 for a, b in zip(solid.points[i], want, strict=True)))]

    front_left, front_right, back_right, top_right = corner(0, 0, 0), corner(1, 0, 0), corner(1, 1, 0), corner(1, 1, 1)
    for a, b, cm in ((front_left, front_right, box[0]), (front_right, back_right, box[1])):
        along = unit(a, b)
        out = (along[1], -along[0])
        dimension(sheet, a, b, moved(a, out, OFF_MM), moved(b, out, OFF_MM), length_text(cm))
    upright(sheet, back_right, top_right, max(x for x, _ in flat) + OFF_MM, box[2])
