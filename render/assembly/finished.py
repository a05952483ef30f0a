"""The finished thing with its measures: lying flat, as a tube or pouch folded flat, or as it stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, hypot, pi

from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.hidden import turning
from motifold.render.assembly.measures import OFF_MM, length_text, level, measure_around, upright
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.panel_paint import paint_names
from motifold.render.assembly.sheet import Sheet
from motifold.render.assembly.solid import Solid, stand_up
from motifold.render.assembly.standing import DIM_MM, LARGEST_MM, draw_standing, hull
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
from motifold.render.drawing.display import Drawing, Point


def draw_finished(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> Drawing | None:
    """One copy of the thing, finished; None where its form does not follow from its panels (where they would have to bend)."""
    if lies_flat(assembly):
        return _plan(assembly, width_mm, height_mm)
    tube = tube_of(assembly)
    if tube is not None:
        return _folded_flat(assembly, tube, width_mm, height_mm)
    solid = stand_up(assembly, upside_down=_worn_over(assembly))
    if solid is None:
        return None
    if solid.flat:
        return _two_layers(assembly, solid, width_mm, height_mm)
    return draw_standing(assembly, solid, width_mm, height_mm)


def _worn_over(assembly: Assembly) -> bool:
    """Whether the opening looks down, as a hat's does."""
    words = (assembly.form or "").lower().split()
    return any(word in ("hat", "cap", "beanie", "bonnet", "cosy", "cozy", "cover", "lampshade", "shade", "dome") for word in words)


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


@dataclass(frozen=True, slots=True)
class Tube:
    """A ring of panels without points: length round, and depth, in cm (nominal where nothing is measured)."""

    around: float
    deep: float
    twisted: bool
    one_sided: bool


def tube_of(assembly: Assembly) -> Tube | None:
    """The plain or twisted tube that one copy is, if it is one: every inner corner flat, every rim straight, one ring."""
    if assembly.pieces != assembly.copies or assembly.euler != 0 or not assembly.openings:
        return None
    if any(abs(corner.degrees - (180 if corner.on_opening else 360)) > 1e-6 for corner in assembly.corners):
        return None
    openings = len(assembly.openings) // assembly.copies
    rims = sum(rim_length(assembly, i) for i in range(openings))
    area = sum(_area(panel.outline_cm) for panel in assembly.panels if panel.copy == 1)
    one_sided = not assembly.orientable
    if not rims or openings != (1 if one_sided else 2):
        return None
    return Tube(rims / 2, 2 * area / rims, any(seam.twist for seam in assembly.seams), one_sided)


def rim_length(assembly: Assembly, opening: int) -> float:
    """Length of an opening by the outlines, in cm (nominal where nothing is measured)."""
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


def _two_layers(assembly: Assembly, solid: Solid, width_mm: float, height_mm: float) -> Drawing:
    """Panels that keep their shape only lying on each other: what is seen from the front."""
    points = [(x, z) for x, _, z in solid.points]
    left, low = min(x for x, _ in points), min(y for _, y in points)
    wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - low
    scale = min((width_mm - 2 * DIM_MM) / wide, (height_mm - 2 * DIM_MM) / high, LARGEST_MM / max(wide, high))
    laid = [((x - left) * scale, (y - low) * scale) for x, y in points]
    sheet = Sheet()
    outline = hull(laid)
    sheet.fill(outline, PANEL)
    sheet.line(outline, INK, THIN_MM, closed=True)
    for ring in solid.faces:
        shown = [laid[c] for c in ring]
        if turning(shown) > 0:
            sheet.line(shown, HAIR, THIN_MM, closed=True)
    for a, b in solid.rim:
        sheet.line([laid[a], laid[b]], INK, THICK_MM)
    said = "Folded flat, two layers"
    if assembly.scaled:
        measure_around(sheet, laid, scale)
        said += f"; {length_text(wide)} wide and {length_text(high)} high"
    return sheet.drawing("Finished", said + ".")
