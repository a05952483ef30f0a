"""The finished thing with its measures: lying flat, as a tube or pouch folded flat, or as it stands."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import cos, pi, sin

from motifold.render.assembly.drum import Drum, draw_drum
from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.folded_paint import draw_folded
from motifold.render.assembly.foldflat import Folded
from motifold.render.assembly.form import Disc, Plan, Tube, edged_form, outer_opening, plan_bands, plan_reach, tube_ends, tube_openings
from motifold.render.assembly.measures import OFF_MM, length_text, level, measure_around, upright
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.notes import estimates_said, note, note_room, opening_lines, with_edgings
from motifold.render.assembly.panel_paint import paint_names
from motifold.render.assembly.rims import estimated_in
from motifold.render.assembly.sheet import Sheet, toward
from motifold.render.assembly.solid import Solid
from motifold.render.assembly.standing import DIM_MM, LARGEST_MM, draw_standing
from motifold.render.assembly.style import (
    A5_TEXT_HEIGHT_MM,
    A5_TEXT_WIDTH_MM,
    EDGING,
    FOLD_DASH_MM,
    HAIR,
    INK,
    LETTER_PT,
    PANEL,
    PANEL_BACK,
    QUIET,
    THICK_MM,
    THIN_MM,
)
from motifold.render.drawing.display import Drawing, Point

NEAR_TOP_MM = 6.0  # an edging's edge so near the top has its words above


def draw_finished(
    assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM, rims: Sequence[Rim] = ()
) -> Drawing | None:
    """One copy of the thing, finished, with the edgings ``rims``; None where its form does not follow from its panels.

    ``finished_note`` says why there is none.
    """
    match edged_form(assembly, rims):
        case Plan():
            return _plan(assembly, width_mm, height_mm, rims)
        case Tube() as tube:
            return _folded_flat(assembly, tube, width_mm, height_mm, rims)
        case Disc(across):
            return _disc(assembly, across, width_mm, height_mm)
        case Drum() as drum:
            return draw_drum(assembly, drum, width_mm, height_mm, rims)
        case Folded() as folded:
            return draw_folded(assembly, folded, width_mm, height_mm, rims)
        case Solid() as solid:
            return draw_standing(assembly, solid, width_mm, height_mm, rims)
        case None:
            return None


# --- lying flat ---------------------------------------------------------------------------------------------------------


def _plan(assembly: Assembly, width_mm: float, height_mm: float, rims: Sequence[Rim]) -> Drawing:
    sheet = Sheet()
    flat = lay(assembly, width_mm - 2 * DIM_MM, height_mm - 2 * DIM_MM - note_room(len(rims)))
    outer = outer_opening(assembly)
    bare = [p for o in flat.outlines for p in o]
    points = [*bare, *plan_reach(assembly, flat, rims)]
    for outline in flat.outlines:
        sheet.fill(outline, PANEL)
    tips: list[Point] = []
    for number in range(len(assembly.openings) // assembly.copies):
        bands, edges = plan_bands(assembly, flat, rims, number)
        for one in bands:
            for quad in one.quads:
                sheet.fill(quad, EDGING)
            met = Counter((round(x, 3), round(y, 3)) for quad in one.quads for x, y in quad[2:])
            for a, b, far_b, far_a in one.quads:
                sheet.line([a, b], HAIR, THIN_MM)
                if one.rim.turned:
                    sheet.line([far_a, far_b], INK, THIN_MM)
                for near, far in ((a, far_a), (b, far_b)):
                    if met[round(far[0], 3), round(far[1], 3)] == 1:  # where an edging along some sides only begins or ends
                        sheet.line([near, far], INK, THIN_MM)
        for edge in edges:
            sheet.line([edge.a, edge.b], INK, THICK_MM)
        if bands and number == outer:
            quads = [quad for one in bands for quad in one.quads]
            tips += [toward(quad[0], quad[1], 0.5) if bands[0].rim.turned else toward(quad[3], quad[2], 0.5) for quad in quads]
    for seam in flat.seams:
        sheet.line(flat.seam_line(seam), HAIR, THIN_MM)
    said = "Lies flat."
    if len(flat.panels) <= 40:
        paint_names(sheet, flat)
    if assembly.scaled:
        top, low = max(y for _, y in points), min(y for _, y in points)
        near_top = [tip for tip in tips if tip[1] > top - NEAR_TOP_MM]
        up = bool(near_top) or sum(y - (top + low) / 2.5 for _, y in tips) > 0
        note(sheet, near_top or tips, opening_lines(assembly, rims, outer, girth=False), up)
        wide, high = measure_around(sheet, points, flat.mm_per_cm, bare, estimated_in(rims))
        said = f"Lies flat, {length_text(wide)} wide and {length_text(high)} high{with_edgings(rims)}."
    return sheet.drawing("Finished", said + estimates_said(rims))


# --- folded flat --------------------------------------------------------------------------------------------------------


def _folded_flat(assembly: Assembly, tube: Tube, width_mm: float, height_mm: float, rims: Sequence[Rim]) -> Drawing:
    """A tube lying flat, half as wide as it is long round; after a twist the front layer shows its other side on the right."""
    wide, deep = tube.around / 2, tube.deep + tube_ends(assembly, rims)
    room = height_mm - 2 * DIM_MM - sum(note_room(len(opening_lines(assembly, rims, i))) for i in set(tube_openings(assembly)))
    scale = min((width_mm - 2 * DIM_MM) / wide, room / deep, LARGEST_MM / max(wide, deep))
    w, d = wide * scale, deep * scale
    sheet = Sheet()
    if tube.twisted:
        _twisted_front(sheet, w, d)
    else:
        lip = [(w * i / 20, d + min(3.0, 0.08 * d) * 4 * i / 20 * (1 - i / 20)) for i in range(21)]
        sheet.fill(lip, PANEL_BACK)
        sheet.line(lip, INK, THICK_MM)
        sheet.fill([(0, 0), (w, 0), (w, d), (0, d)], PANEL)
        _tube_rims(sheet, assembly, rims, w, d, scale)
        sheet.line([(0.0, d), (w, d)], INK, THICK_MM)
        sheet.line([(0.0, 0.0), (w, 0.0)], INK, THICK_MM)
    for x, turn in ((0.0, 90.0), (w, 90.0)):
        sheet.line([(x, 0.0), (x, d)], INK, THIN_MM, FOLD_DASH_MM)
        sheet.words((x + 3.6 if x == 0.0 else x - 1.6, d / 2), "fold", LETTER_PT, color=QUIET, angle=turn)
    said = "Folded flat, open at both ends"
    if tube.twisted:
        said = "Folded flat, twisted: one side and one edge" if tube.one_sided else "Folded flat, twisted"
    if assembly.scaled:
        top, below = tube_openings(assembly)
        for opening, y in ((top, d), (below, 0.0)) if top != below else ((top, d),):
            note(sheet, [(w * share, y) for share in (0.3, 0.5, 0.7)], opening_lines(assembly, rims, opening), up=y > 0)
        level(sheet, (0.0, 0.0), (w, 0.0), (sheet.extent or (0, 0, 0, 0))[1] - OFF_MM, wide)
        upright(sheet, (w, 0.0), (w, d), w + OFF_MM, deep, estimated_in(rims))
        said += f"; {length_text(wide)} wide, {length_text(deep)} deep{with_edgings(rims)}, {length_text(tube.around)} round"
    return sheet.drawing("Finished", said + "." + estimates_said(rims))


def _tube_rims(sheet: Sheet, assembly: Assembly, rims: Sequence[Rim], w: float, d: float, scale: float) -> None:
    """Edgings as bands across either end of a tube."""
    top, below = tube_openings(assembly)
    for opening, edge, inward in ((top, d, -1.0), (below, 0.0, 1.0)):
        at = edge
        for rim in sorted((rim for rim in rims if rim.opening == opening), key=lambda rim: rim.turned):
            start = edge if rim.turned else at
            end = start + inward * rim.depth_cm * scale
            sheet.fill([(0.0, start), (w, start), (w, end), (0.0, end)], EDGING)
            sheet.line([(0.0, end), (w, end)], INK if rim.turned else HAIR, THIN_MM)
            at = at if rim.turned else end


def _twisted_front(sheet: Sheet, w: float, d: float) -> None:
    """Two edges that change places in the middle."""
    steps = [i / 24 for i in range(25)]
    low, high = w * 0.36, w * 0.64
    sink = [(low + (high - low) * t, d * (1 + cos(pi * t)) / 2) for t in steps]
    rise = [(x, d - y) for x, y in sink]
    half = len(steps) // 2 + 1
    sheet.fill([(0.0, 0.0), (low, 0.0), *rise[:half], *sink[:half][::-1], (0.0, d)], PANEL)
    sheet.fill([*rise[half - 1 :], (w, d), (w, 0.0), *sink[half - 1 :][::-1]], PANEL_BACK)
    for edge, y, end in ((sink, d, 0.0), (rise, 0.0, d)):
        sheet.line([(0.0, y), *edge, (w, end)], INK, THICK_MM)
    for x, side in ((w * 0.18, "RS"), (w * 0.82, "WS")):
        sheet.words((x, d / 2 - 1.2), side, LETTER_PT, "sans-bold")


def _disc(assembly: Assembly, across: float, width_mm: float, height_mm: float) -> Drawing:
    """Two circles that lie on each other."""
    size = min(width_mm - 2 * DIM_MM, height_mm - 2 * DIM_MM, LARGEST_MM)
    sheet = Sheet()
    ring = [(size / 2 * (1 + cos(2 * pi * i / 96)), size / 2 * (1 + sin(2 * pi * i / 96))) for i in range(96)]
    sheet.fill(ring, PANEL)
    sheet.line(ring, INK, THIN_MM, closed=True)
    sheet.words((size / 2, size / 2 - 1.2), assembly.panels[0].name, LETTER_PT, "sans-bold")
    said = "Two layers, joined all round"
    if assembly.scaled:
        level(sheet, (0.0, size / 2), (size, size / 2), -OFF_MM, across)
        said += f"; {length_text(across)} across"
    return sheet.drawing("Finished", said + ".")
