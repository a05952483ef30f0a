"""The finished thing as it stands: a parallel view from in front and above, so that equal lengths along one edge stay equal."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.measures import OFF_MM, dimension, length_text, level, upright
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.sheet import Sheet, moved, unit
from motifold.render.assembly.solid import Solid, view
from motifold.render.assembly.style import CAP_EM, HAIR, INK, LETTER_PT, MM_PER_PT, PANEL_BACK, THICK_MM, THIN_MM
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm

DIM_MM = 11.0  # room that a dimension takes
LARGEST_MM = 80.0  # across what is drawn


def draw_standing(assembly: Assembly, solid: Solid, width_mm: float, height_mm: float) -> Drawing:
    """The solid seen from in front and above, its near sides named, measured along its edges."""
    seen = [view(point) for point in solid.points]
    left, right = min(p[0] for p in seen), max(p[0] for p in seen)
    low, top = min(p[1] for p in seen), max(p[1] for p in seen)
    wide, high = right - left, top - low
    scale = min((width_mm - 2.5 * DIM_MM) / wide, (height_mm - 2.5 * DIM_MM) / high, LARGEST_MM / max(wide, high))
    flat = [((x - left) * scale, (y - low) * scale) for x, y, _ in seen]
    sheet = Sheet()
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    rim = set(solid.rim)
    order = sorted(range(len(solid.faces)), key=lambda i: (round(sum(seen[c][2] for c in solid.faces[i]) / len(solid.faces[i]), 6), i))
    shown = []
    for i in order:
        ring = [flat[c] for c in solid.faces[i]]
        front = turning(ring) > 0
        sheet.begin("panel", panels[i].name, (("panel", panels[i].name),))
        sheet.fill(ring, _tint(solid, i) if front else PANEL_BACK)
        for c, d in zip(solid.faces[i], [*solid.faces[i][1:], solid.faces[i][0]], strict=True):
            # Only what stays in sight keeps words away.
            sheet.line([flat[c], flat[d]], INK if (c, d) in rim else HAIR, THICK_MM if (c, d) in rim else THIN_MM, solid=front)
        sheet.end()
        if front:
            shown.append((panels[i].name, ring))
    sheet.line(hull(flat), INK, THICK_MM, closed=True)
    for place, (name, ring) in enumerate(shown):
        middle = sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring)
        if not any(_within(middle, nearer) for _, nearer in shown[place + 1 :]):
            _face_name(sheet, name, ring, middle)
    return sheet.drawing("Finished", _measures(sheet, assembly, solid, flat, scale))


def _within(point: Point, ring: Sequence[Point]) -> bool:
    return all(turning([a, b, point]) > 0 for a, b in zip(ring, [*ring[1:], ring[0]], strict=True))


def turning(ring: Sequence[Point]) -> float:
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


def _face_name(sheet: Sheet, name: str, ring: Sequence[Point], middle: Point) -> None:
    wide, em = text_width_mm(name, "sans-bold", LETTER_PT), LETTER_PT * MM_PER_PT
    x, y = middle
    corners = [(x - wide / 2, y - em / 2), (x + wide / 2, y - em / 2), (x + wide / 2, y + em / 2), (x - wide / 2, y + em / 2)]
    if all(_within(corner, ring) for corner in corners):
        sheet.words((x, y - CAP_EM / 2 * em), name, LETTER_PT, "sans-bold")


def _measures(sheet: Sheet, assembly: Assembly, solid: Solid, flat: Sequence[Point], scale: float) -> str:
    openings = assembly.openings[: len(assembly.openings) // assembly.copies]
    mouth = "open at the bottom" if solid.upside_down else "open at the top"
    said = f"As it stands, {mouth}" if openings else "As it stands, closed all round"
    if not assembly.scaled:
        return said + "."
    box = _as_box(solid)
    if box is not None:
        wide, deep, high = (length_text(cm) for cm in box)
        _box_dimensions(sheet, solid, flat, box)
        said += f"; {wide} by {deep}, {high} high"
    else:
        across = (max(x for x, _ in flat) - min(x for x, _ in flat)) / scale
        level(sheet, min(flat), max(flat), (sheet.extent or (0, 0, 0, 0))[1] - OFF_MM, across)
        said += f"; {length_text(across)} across"
    girths = [length_text(opening.girth_cm) for opening in openings if opening.girth_cm is not None]
    return said + (f"; opening {', '.join(girths)} round." if girths else ".")


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
    """Along the two lower edges that meet in front, and the upright one on the right."""
    spans = [(min(p[k] for p in solid.points), max(p[k] for p in solid.points)) for k in range(3)]

    def corner(x: int, y: int, z: int) -> tuple[Point, float]:
        want = (spans[0][x], spans[1][y], spans[2][z])
        at = min(range(len(flat)), key=lambda i: sum((a - b) ** 2 for a, b in zip(solid.points[i], want, strict=True)))
        return flat[at], view(want)[2]

    x, y = max(((x, y) for x in (0, 1) for y in (0, 1)), key=lambda xy: corner(xy[0], xy[1], 0)[1])
    near, along_x, along_y = corner(x, y, 0)[0], corner(1 - x, y, 0)[0], corner(x, 1 - y, 0)[0]
    for far, cm in ((along_x, box[0]), (along_y, box[1])):
        a, b = (far, near) if far[0] < near[0] else (near, far)
        along = unit(a, b)
        out = (along[1], -along[0])
        dimension(sheet, a, b, moved(a, out, OFF_MM), moved(b, out, OFF_MM), length_text(cm))
    right = (1 - x, y) if along_x[0] > along_y[0] else (x, 1 - y)
    low, top = corner(right[0], right[1], 0)[0], corner(right[0], right[1], 1)[0]
    upright(sheet, low, top, max(p[0] for p in flat) + OFF_MM, box[2])
