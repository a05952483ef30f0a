"""A soft thing that lies flat in two layers, drawn from the side that shows more of its openings."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import atan2, cos, hypot, pi, sin

from motifold.render.assembly.foldflat import Folded, LaidPanel, Piece
from motifold.render.assembly.hidden import Face, parts_in_sight
from motifold.render.assembly.measures import length_text, measure_around
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.sheet import Sheet, toward
from motifold.render.assembly.standing import DIM_MM, LARGEST_MM, hull
from motifold.render.assembly.style import CAP_EM, FOLD_DASH_MM, HAIR, INK, LETTER_PT, MM_PER_PT, PANEL, PANEL_BACK, THICK_MM, THIN_MM
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm

CENTRAL = 0.4  # of the reach from the middle: openings nearer than this don't say where up is


def turned_to_front(folded: Folded, down: bool = False) -> Folded:
    """The layer with more of the openings in front, openings up (``down``: below), a straight edge of the outline level.

    Where they lie about the middle all stays as it was laid, unless its longest edge stands askew: then that is level.
    """
    shown = 0.0
    for p, e in folded.rim:
        a, m, b = folded.panels[p].sides[e]
        one, two = folded.panels[p].fronts[e]
        shown += hypot(m[0] - a[0], m[1] - a[1]) * (1 if one else -1) + hypot(b[0] - m[0], b[1] - m[1]) * (1 if two else -1)
    if shown < -1e-6:
        folded = _moved(folded, lambda p: (-p[0], p[1]), over=True)
    ring = hull([(round(x, 6), round(y, 6)) for x, y in folded.points])
    middle = _mean(ring)
    rim = _mean([folded.panels[p].sides[e][1] for p, e in folded.rim]) if folded.rim else middle
    reach = max(hypot(x - middle[0], y - middle[1]) for x, y in ring)
    edges = list(zip(ring, [*ring[1:], ring[0]], strict=True))
    central = hypot(rim[0] - middle[0], rim[1] - middle[1]) < CENTRAL * reach
    if central:
        longest = max(edges, key=lambda edge: round(hypot(edge[1][0] - edge[0][0], edge[1][1] - edge[0][1]), 4))
        dx, dy = longest[1][0] - longest[0][0], longest[1][1] - longest[0][1]
        if min(abs(dx), abs(dy), abs(abs(dx) - abs(dy))) < 0.01 * reach:
            return folded
        # Folds lie opposite what opens.
        edges, folds = [longest], [toward(*panel.fold, 0.5) for panel in folded.panels if panel.fold]
        rim = toward(_mean(folds), middle, 2.0) if folds else rim
    best = (-2.0, 0.0)
    for a, b in edges:
        for quarter in (0, 2) if central else (0, 1, 2, 3):
            angle = -atan2(b[1] - a[1], b[0] - a[0]) + quarter * pi / 2
            high = (sin(angle) * (rim[0] - middle[0]) + cos(angle) * (rim[1] - middle[1])) / reach * (-1 if down else 1)
            best = max(best, (round(high, 4), round(angle, 9)))
    c, s = cos(best[1]), sin(best[1])
    return _moved(folded, lambda p: (c * p[0] - s * p[1], s * p[0] + c * p[1]))


def _mean(points: Sequence[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def _moved(folded: Folded, put: Callable[[Point], Point], over: bool = False) -> Folded:
    """Every point moved; ``over``: seen from behind, where front and back change places."""
    panels = []
    for panel in folded.panels:
        pieces = []
        for piece in panel.pieces:
            ring = tuple(put(p) for p in piece.ring)
            pieces.append(Piece(piece.panel, piece.front != over, ring[::-1] if over else ring))
        sides = tuple((put(a), put(m), put(b)) for a, m, b in panel.sides)
        fronts = tuple((one != over, two != over) for one, two in panel.fronts)
        panels.append(LaidPanel(tuple(pieces), sides, fronts, (put(panel.fold[0]), put(panel.fold[1])) if panel.fold else None))
    return Folded(tuple(panels), folded.joints)


def draw_folded(assembly: Assembly, folded: Folded, width_mm: float, height_mm: float) -> Drawing:
    points = folded.points
    left, low = min(x for x, _ in points), min(y for _, y in points)
    wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - low
    scale = min((width_mm - 2 * DIM_MM) / wide, (height_mm - 2 * DIM_MM) / high, LARGEST_MM / max(wide, high))
    laid = _moved(folded, lambda p: ((p[0] - left) * scale, (p[1] - low) * scale))
    pieces = [piece for panel in laid.panels for piece in panel.pieces]
    names = [panel.name for panel in assembly.panels if panel.copy == 1]
    sheet = Sheet()
    for piece in sorted(pieces, key=lambda piece: piece.front):
        sheet.begin("panel", names[piece.panel], (("panel", names[piece.panel]),))
        sheet.fill(piece.ring, PANEL if piece.front else PANEL_BACK)
        sheet.end()
    _paint_lines(sheet, laid, pieces)
    for piece in pieces:
        if piece.front:
            _name(sheet, piece, names[piece.panel])
    said = "Folded flat, two layers"
    bent = [name for name, panel in zip(names, laid.panels, strict=True) if panel.fold]
    if bent:
        said += f", {', '.join(bent)} folded in half"
    if assembly.scaled:
        measure_around(sheet, laid.points, scale)
        said += f"; {length_text(wide)} wide and {length_text(high)} high"
        girths = [length_text(o.girth_cm) for o in assembly.openings[: len(assembly.openings) // assembly.copies] if o.girth_cm is not None]
        said += f"; opening {', '.join(girths)} round" if girths else ""
    return sheet.drawing("Finished", said + ".")


def _paint_lines(sheet: Sheet, laid: Folded, pieces: Sequence[Piece]) -> None:
    """Seams thin, what folds over at the outline darker, open edges thick; of the layer behind only what sticks out."""
    faces = [Face([(x, y, 1.0 if piece.front else 0.0) for x, y in piece.ring]) for piece in pieces]
    layers = {front: frozenset(i for i, piece in enumerate(pieces) if piece.front == front) for front in (True, False)}
    lines: list[tuple[float, Point, Point, bool, str, tuple[float, ...]]] = []
    for number, panel in enumerate(laid.panels):
        if panel.fold:
            lines.append((THIN_MM, *panel.fold, True, INK, FOLD_DASH_MM))
        for edge, (a, m, b) in enumerate(panel.sides):
            other = laid.joints[number][edge]
            for half, (p, q) in enumerate(((a, m), (m, b))):
                front = panel.fronts[edge][half]
                if other is None:
                    lines.append((THICK_MM, p, q, front, INK, ()))
                elif (number, edge) < other:
                    beyond = laid.panels[other[0]].fronts[other[1]][1 - half]
                    lines.append((THIN_MM, p, q, front or beyond, HAIR if front == beyond else INK, ()))
    for width, p, q, front, color, dash in sorted(lines, key=lambda line: line[0]):
        near = 1.0 if front else 0.0
        for low, high in parts_in_sight((*p, near), (*q, near), faces, layers[front], 0.2):
            sheet.line([toward(p, q, low), toward(p, q, high)], color, width, dash)


def _name(sheet: Sheet, piece: Piece, name: str) -> None:
    x, y = _mean(piece.ring)
    wide, em = text_width_mm(name, "sans-bold", LETTER_PT), LETTER_PT * MM_PER_PT
    box = (x - wide / 2, y - em / 2, x + wide / 2, y + em / 2)
    face = Face([(px, py, 0.0) for px, py in piece.ring])
    if all(face.holds((cx, cy), 0.2) for cx in (box[0], box[2]) for cy in (box[1], box[3])) and sheet.free(box, 0.2):
        sheet.words((x, y - CAP_EM / 2 * em), name, LETTER_PT, "sans-bold")
