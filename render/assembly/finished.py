"""The finished thing with its measures: lying flat, as a tube or pouch folded flat, or as it stands."""

from __future__ import annotations

from math import cos, pi, sin

from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.folded_paint import draw_folded
from motifold.render.assembly.foldflat import Folded
from motifold.render.assembly.form import Disc, Plan, Tube, finished_form
from motifold.render.assembly.measures import OFF_MM, length_text, level, measure_around, upright
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.panel_paint import paint_names
from motifold.render.assembly.sheet import Sheet
from motifold.render.assembly.solid import Solid
from motifold.render.assembly.standing import DIM_MM, LARGEST_MM, draw_standing
from motifold.render.assembly.style import (
    A5_TEXT_HEIGHT_MM,
    A5_TEXT_WIDTH_MM,
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
from motifold.render.drawing.display import Drawing


def draw_finished(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> Drawing | None:
    """One copy of the thing, finished; None where its form does not follow from its panels (``finished_note`` says why)."""
    match finished_form(assembly):
        case Plan():
            return _plan(assembly, width_mm, height_mm)
        case Tube() as tube:
            return _folded_flat(assembly, tube, width_mm, height_mm)
        case Disc(across):
            return _disc(assembly, across, width_mm, height_mm)
        case Folded() as folded:
            return draw_folded(assembly, folded, width_mm, height_mm)
        case Solid() as solid:
            return draw_standing(assembly, solid, width_mm, height_mm)
        case None:
            return None


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


def _folded_flat(assembly: Assembly, tube: Tube, width_mm: float, height_mm: float) -> Drawing:
    """A tube lying flat, half as wide as it is long round; after a twist the front layer shows its other side on the right."""
    wide = tube.around / 2
    scale = min((width_mm - 2 * DIM_MM) / wide, (height_mm - 2 * DIM_MM) / tube.deep, LARGEST_MM / max(wide, tube.deep))
    w, d = wide * scale, tube.deep * scale
    sheet = Sheet()
    if tube.twisted:
        _twisted_front(sheet, w, d)
    else:
        lip = [(w * i / 20, d + min(3.0, 0.08 * d) * 4 * i / 20 * (1 - i / 20)) for i in range(21)]
        sheet.fill(lip, PANEL_BACK)
        sheet.line(lip, INK, THICK_MM)
        sheet.fill([(0, 0), (w, 0), (w, d), (0, d)], PANEL)
        sheet.line([(0.0, d), (w, d)], INK, THICK_MM)
        sheet.line([(0.0, 0.0), (w, 0.0)], INK, THICK_MM)
    for x, turn in ((0.0, 90.0), (w, 90.0)):
        sheet.line([(x, 0.0), (x, d)], INK, THIN_MM, FOLD_DASH_MM)
        sheet.words((x + 3.6 if x == 0.0 else x - 1.6, d / 2), "fold", LETTER_PT, color=QUIET, angle=turn)
    said = "Folded flat, open at both ends"
    if tube.twisted:
        said = "Folded flat, twisted: one side and one edge" if tube.one_sided else "Folded flat, twisted"
    if assembly.scaled:
        level(sheet, (0.0, 0.0), (w, 0.0), (sheet.extent or (0, 0, 0, 0))[1] - OFF_MM, wide)
        upright(sheet, (w, 0.0), (w, d), w + OFF_MM, tube.deep)
        said += f"; {length_text(wide)} wide, {length_text(tube.deep)} deep, {length_text(tube.around)} round"
    return sheet.drawing("Finished", said + ".")


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
