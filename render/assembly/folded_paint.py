"""A soft thing that lies flat in two layers, drawn from the side that shows more of its openings."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import atan2, cos, hypot, pi, sin

from motifold.render.assembly.foldflat import Folded, LaidPanel, Piece, in_front
from motifold.render.assembly.hidden import Face, centroid, parts_in_sight
from motifold.render.assembly.key import KEY_MM, finished_entries, paint_key_rows
from motifold.render.assembly.measures import length_text, measure_around
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
from motifold.render.assembly.rims import Edge, band, estimated_in
from motifold.render.assembly.sheet import Sheet, mean_point, toward
from motifold.render.assembly.solid import panel_rings
from motifold.render.assembly.standing import DIM_MM, LARGEST_MM, hull
from motifold.render.assembly.style import (
    CAP_EM,
    EDGING,
    FOLD_DASH_MM,
    HAIR,
    INK,
    LETTER_PT,
    MM_PER_PT,
    PANEL,
    PANEL_BACK,
    THICK_MM,
    THIN_MM,
)
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm
from motifold.symbols.record import dataclass

CENTRAL = 0.4  # of the reach from the middle: openings nearer than this don't say where up is
FARTHEST = 0.9  # of the greatest distance: stretches of an opening farther than this are the hem


def turned_to_front(folded: Folded, down: bool = False, lowest: int = 0) -> Folded:
    """The layer with more of the openings in front, openings up (``down``: below), a straight edge of the outline level.

    Of a garment (``down`` and three openings or more) the hem lies below: what of its largest opening is farthest from the others
    (of openings as large as each other, ``lowest``, that which lies lowest in the net).
    Where openings lie about the middle all stays as it was laid, unless its longest edge stands askew: then that is level.
    """
    if in_front(folded.panels, folded.rim) < -1e-6:
        folded = _moved(folded, lambda p: (-p[0], p[1]), over=True)
    ring = hull([(round(x, 6), round(y, 6)) for x, y in folded.points])
    middle = mean_point(ring)
    hem = _hem(folded, lowest) if down else None
    rim = hem or (mean_point([folded.panels[p].sides[e][1] for p, e in folded.rim]) if folded.rim else middle)
    reach = max(hypot(x - middle[0], y - middle[1]) for x, y in ring)
    edges = list(zip(ring, [*ring[1:], ring[0]], strict=True))
    central = hem is None and hypot(rim[0] - middle[0], rim[1] - middle[1]) < CENTRAL * reach
    if central:
        longest = max(edges, key=lambda edge: round(hypot(edge[1][0] - edge[0][0], edge[1][1] - edge[0][1]), 4))
        dx, dy = longest[1][0] - longest[0][0], longest[1][1] - longest[0][1]
        if min(abs(dx), abs(dy), abs(abs(dx) - abs(dy))) < 0.01 * reach:
            return folded
        # Folds lie opposite what opens.
        edges, folds = [longest], [toward(*panel.fold, 0.5) for panel in folded.panels if panel.fold]
        rim = toward(mean_point(folds), middle, 2.0) if folds else rim
    best = (-2.0, 0.0)
    for a, b in edges:
        for quarter in (0, 2) if central else (0, 1, 2, 3):
            angle = -atan2(b[1] - a[1], b[0] - a[0]) + quarter * pi / 2
            high = (sin(angle) * (rim[0] - middle[0]) + cos(angle) * (rim[1] - middle[1])) / reach * (-1 if down else 1)
            best = max(best, (round(high, 4), round(angle, 9)))
    c, s = cos(best[1]), sin(best[1])
    return _moved(folded, lambda p: (c * p[0] - s * p[1], s * p[0] + c * p[1]))


def _hem(folded: Folded, lowest: int) -> Point | None:
    """Where the hem of a garment lies: of its largest opening, the part that is farthest from the others; None with fewer than three."""
    if len(folded.openings) < 3:
        return None

    def long(opening: Sequence[tuple[int, int]]) -> float:
        sides = [folded.panels[p].sides[e] for p, e in opening]
        return sum(hypot(m[0] - a[0], m[1] - a[1]) + hypot(b[0] - m[0], b[1] - m[1]) for a, m, b in sides)

    most = max(long(opening) for opening in folded.openings)
    largest = max(folded.openings, key=lambda opening: (long(opening) > 0.99 * most, opening == folded.openings[lowest]))
    others = mean_point([folded.panels[p].sides[e][1] for opening in folded.openings if opening is not largest for p, e in opening])
    middles = [folded.panels[p].sides[e][1] for p, e in largest]
    off = [hypot(x - others[0], y - others[1]) for x, y in middles]
    return mean_point([middle for middle, far in zip(middles, off, strict=True) if far > FARTHEST * max(off)])


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
    return replace(folded, panels=tuple(panels))


@dataclass(frozen=True, slots=True)
class _Band:
    """A piece of an edging beside an open edge; its ring begins with that edge. ``near``: 2 turned back in front, 1 front, 0 back, -1."""

    ring: tuple[Point, Point, Point, Point]
    near: float
    turned: bool


def draw_folded(assembly: Assembly, folded: Folded, width_mm: float, height_mm: float, rims: Sequence[Rim] = ()) -> Drawing:
    """Two layers with what opens and how, the edgings as bands, measured overall."""
    points = [*folded.points, *rim_points(folded, rims)]
    left, low = min(x for x, _ in points), min(y for _, y in points)
    wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - low
    lines = [len(opening_lines(assembly, rims, i)) for i in range(len(folded.openings))]
    entries = finished_entries(opens=bool(folded.openings), folds=any(panel.fold for panel in folded.panels))
    room = height_mm - 2 * DIM_MM - (KEY_MM if entries else 0.0) - min(sum(note_room(n) for n in lines), 0.3 * height_mm)
    scale = min((width_mm - 2 * DIM_MM) / wide, room / high, LARGEST_MM / max(wide, high))
    laid = _moved(folded, lambda p: ((p[0] - left) * scale, (p[1] - low) * scale))
    pieces = [piece for panel in laid.panels for piece in panel.pieces]
    names = [panel.name for panel in assembly.panels if panel.copy == 1]
    bands = _bands(laid, rims, scale)
    sheet = Sheet()
    for near in (0.0, 1.0, 2.0):
        for piece in pieces:
            if piece.front == (near > 0) and near < 2:
                sheet.begin("panel", names[piece.panel], (("panel", names[piece.panel]),))
                sheet.fill(piece.ring, PANEL if piece.front else PANEL_BACK)
                sheet.end()
        for one in bands:
            if one.near == near:
                sheet.fill(one.ring, PANEL_BACK if near == 0 else EDGING)
    _paint_lines(sheet, laid, pieces, bands)
    for piece in pieces:
        if piece.front:
            _name(sheet, piece, names[piece.panel], bands)
    said = "Folded flat, two layers"
    bent = [name for name, panel in zip(names, laid.panels, strict=True) if panel.fold]
    if bent:
        said += f", {', '.join(bent)} folded in half"
    if assembly.scaled:
        _notes(sheet, assembly, laid, rims, bands, (wide * scale / 2, high * scale / 2))
        reach = [*laid.points, *(p for one in bands if not one.turned for p in one.ring)]
        measure_around(sheet, reach, scale, laid.points, estimated_in(rims))
        said += f"; {length_text(wide)} wide and {length_text(high)} high{with_edgings(rims)}"
        girths = [length_text(o.girth_cm) for o in assembly.openings[: len(assembly.openings) // assembly.copies] if o.girth_cm is not None]
        said += f"; opening {', '.join(girths)} round" if girths else ""
    _mark(sheet, assembly, laid, (wide * scale / 2, high * scale / 2))
    paint_key_rows(sheet, entries, width_mm)
    return sheet.drawing("Finished", said + points_said(assembly) + "." + estimates_said(rims))


def rim_points(folded: Folded, rims: Sequence[Rim]) -> list[Point]:
    """How far the edgings reach, in the measure of ``folded`` (cm)."""
    return [point for one in _bands(folded, rims, 1.0) if not one.turned for point in one.ring]


def _bands(folded: Folded, rims: Sequence[Rim], scale: float) -> list[_Band]:
    found = []
    for number, opening in enumerate(folded.openings):
        edges = []
        for p, e in opening:
            a, m, b = folded.panels[p].sides[e]
            for (start, end), front in zip(((a, m), (m, b)), folded.panels[p].fronts[e], strict=True):
                edges.append(Edge(start, end, front) if front else Edge(end, start, front))
        reach = 0.0
        for rim in rims:
            if rim.opening != number:
                continue
            off = -rim.depth_cm * scale if rim.turned else rim.depth_cm * scale
            base = [Edge(quad[3], quad[2], edge.front) for quad, edge in zip(band(edges, reach), edges, strict=True)] if reach else edges
            for quad, edge in zip(band(base, off), base, strict=True):
                near = (2.0 if rim.turned else 1.0) if edge.front else (-1.0 if rim.turned else 0.0)
                found.append(_Band(quad, near, rim.turned))
            reach += 0.0 if rim.turned else off
    return found


def _mark(sheet: Sheet, assembly: Assembly, laid: Folded, middle: Point) -> None:
    """The points of the front layer."""
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    rings, _ = panel_rings(assembly, panels)
    angles = points_of(assembly)
    found: dict[int, Point] = {}
    for ring, panel in zip(rings, laid.panels, strict=True):
        for k, (corner, _at) in enumerate(ring):
            if corner in angles and (panel.fronts[k][0] or panel.fronts[k - 1][1]):
                found.setdefault(corner, panel.sides[k][0])
    mark_points(sheet, [(at, angles[corner]) for corner, at in sorted(found.items())], middle)


def _notes(sheet: Sheet, assembly: Assembly, laid: Folded, rims: Sequence[Rim], bands: Sequence[_Band], middle: Point) -> None:
    if len(laid.openings) > MOST_OPENINGS:
        return
    for number, opening in sorted(enumerate(laid.openings), key=lambda one: len(one[1])):  # small ones first: they have less choice
        here = [laid.panels[p].sides[e] for p, e in opening]
        front = [(a, m, b) for (p, e), (a, m, b) in zip(opening, here, strict=True) if any(laid.panels[p].fronts[e])] or here
        tips = [toward(start, end, 0.5) for a, m, b in front for start, end in ((a, m), (m, b))]
        up = mean_point(tips)[1] >= 0.7 * middle[1]  # in the middle too: below stands the width
        own = {_round(p) for a, m, _ in front for p in (a, m)} | {_round(p) for _, m, b in front for p in (m, b)}
        edged = [one.ring for one in bands if not one.turned and one.near > 0 and _round(one.ring[0]) in own]
        tips = [toward(ring[2], ring[3], 0.5) for ring in edged] or tips
        note(sheet, tips, opening_lines(assembly, rims, number), up)


def _paint_lines(sheet: Sheet, laid: Folded, pieces: Sequence[Piece], bands: Sequence[_Band]) -> None:
    """Seams thin, what folds over at the outline darker, open edges thick; of the layer behind only what sticks out."""
    faces = [Face([(x, y, 1.0 if piece.front else 0.0) for x, y in piece.ring]) for piece in pieces]
    faces += [Face([(x, y, one.near) for x, y in one.ring]) for one in bands]
    nears = [1.0 if piece.front else 0.0 for piece in pieces] + [one.near for one in bands]
    layers = {near: frozenset(i for i, other in enumerate(nears) if other == near) for near in (-1.0, 0.0, 1.0, 2.0)}
    lines: list[tuple[float, Point, Point, float, str, tuple[float, ...]]] = []
    edged = {frozenset((_round(one.ring[0]), _round(one.ring[1]))) for one in bands if not one.turned}
    for number, panel in enumerate(laid.panels):
        if panel.fold:
            lines.append((THIN_MM, *panel.fold, 1.0, INK, FOLD_DASH_MM))
        for edge, (a, m, b) in enumerate(panel.sides):
            other = laid.joints[number][edge]
            for half, (p, q) in enumerate(((a, m), (m, b))):
                front = panel.fronts[edge][half]
                if other is None:
                    lost = frozenset((_round(p), _round(q))) in edged
                    lines.append((THIN_MM if lost else THICK_MM, p, q, float(front), HAIR if lost else INK, ()))
                elif (number, edge) < other:
                    beyond = laid.panels[other[0]].fronts[other[1]][1 - half]
                    lines.append((THIN_MM, p, q, float(front or beyond), HAIR if front == beyond else INK, ()))
    inner = {_round(one.ring[0]) for one in bands} & {_round(one.ring[1]) for one in bands}
    for one in bands:
        a, b, far_b, far_a = one.ring
        lines.append((THICK_MM, far_a, far_b, one.near, INK, ()))
        for start, end in ((a, far_a), (b, far_b)):
            if _round(start) not in inner:
                lines.append((THIN_MM, start, end, one.near, INK, ()))
    for width, p, q, near, color, dash in sorted(lines, key=lambda line: line[0]):
        for low, high in parts_in_sight((*p, near), (*q, near), faces, layers[near], 0.2):
            sheet.line([toward(p, q, low), toward(p, q, high)], color, width, dash)


def _round(point: Point) -> Point:
    return round(point[0], 3) + 0.0, round(point[1], 3) + 0.0


def _name(sheet: Sheet, piece: Piece, name: str, bands: Sequence[_Band]) -> None:
    x, y = centroid(piece.ring)
    wide, em = text_width_mm(name, "sans-bold", LETTER_PT), LETTER_PT * MM_PER_PT
    box = (x - wide / 2, y - em / 2, x + wide / 2, y + em / 2)
    face = Face([(px, py, 0.0) for px, py in piece.ring])
    covers = [Face([(px, py, 0.0) for px, py in one.ring]) for one in bands if one.near == 2.0]
    if any(cover.holds((x, y), 0.0) for cover in covers):
        return
    if all(face.holds((cx, cy), 0.2) for cx in (box[0], box[2]) for cy in (box[1], box[3])) and sheet.free(box, 0.2):
        sheet.words((x, y - CAP_EM / 2 * em), name, LETTER_PT, "sans-bold")
