"""A circle with straight rounds on its edge: they stand on it as a wall, and the thing is a round basket, or a hat."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, radians, sin

from motifold.render.assembly.key import KEY_MM, finished_entries, paint_key_rows
from motifold.render.assembly.measures import OFF_MM, length_text, level, upright
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.notes import estimates_said, note, note_room, opening_lines
from motifold.render.assembly.rims import estimated_in, worn_over
from motifold.render.assembly.sheet import Sheet
from motifold.render.assembly.style import (
    CAP_EM,
    EDGING,
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
from motifold.symbols.record import dataclass

STANDS = 0.85  # of the edge that a flat ring would need: with less it draws up to a wall
SHALLOW = 0.2  # of the radius: lower than this it is a border that curls
FROM_ABOVE = 24.0  # degrees, as other standing things are seen
STEPS = 48
DIM_MM = 11.0
LARGEST_MM = 75.0


@dataclass(frozen=True, slots=True)
class Drum:
    """A disc ``across`` and a wall ``deep``, cm."""

    across: float
    deep: float


def drum_of(assembly: Assembly, rims: Sequence[Rim]) -> Drum | None:
    """The drum that one circle and its edgings make; None where they lie flat, or where it is none.

    A ring of depth d round a circle of girth C lies flat if its edge is C + 2 pi d long.
    """
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    standing = [rim for rim in rims if not rim.turned]
    if len(panels) != 1 or len(panels[0].sides) != 1 or assembly.seams or not standing or not assembly.scaled:
        return None
    across = max(x for x, _ in panels[0].outline_cm) - min(x for x, _ in panels[0].outline_cm)
    deep = sum(rim.depth_cm for rim in standing)
    spread = 1.0
    for rim in standing:
        spread *= rim.spread
    girth = pi * across
    if deep < SHALLOW * across / 2 or spread * girth > STANDS * (girth + 2 * pi * deep):
        return None
    return Drum(across, deep)


def draw_drum(assembly: Assembly, drum: Drum, width_mm: float, height_mm: float, rims: Sequence[Rim]) -> Drawing:
    """The drum from in front and above: a hat with its crown up, anything else with its mouth up."""
    tilt = sin(radians(FROM_ABOVE))
    hat = worn_over(assembly)
    lines = opening_lines(assembly, rims, 0)
    room = height_mm - 2 * DIM_MM - note_room(len(lines)) - KEY_MM
    rise = cos(radians(FROM_ABOVE))
    seen = drum.deep * rise + drum.across * tilt
    scale = min((width_mm - 2 * DIM_MM) / drum.across, room / seen, LARGEST_MM / max(drum.across, drum.deep))
    half, high = drum.across * scale / 2, drum.deep * scale * rise
    sheet = Sheet()

    def arc(y: float, low: float, upto: float) -> list[Point]:
        steps = [low + (upto - low) * i / STEPS for i in range(STEPS + 1)]
        return [(half * (1 + cos(a)), y + half * tilt * sin(a)) for a in steps]

    def wall(low: float, top: float, color: str) -> None:
        sheet.fill([*arc(top, pi, 2 * pi), *arc(low, 2 * pi, pi)], color)

    if not hat:
        sheet.fill(arc(high, 0.0, 2 * pi), PANEL_BACK)
    at = high if hat else 0.0
    for rim in rims:
        if not rim.turned:
            after = at + (-1 if hat else 1) * rim.depth_cm * scale * rise
            wall(min(at, after), max(at, after), EDGING)
            if rim is not rims[0]:
                sheet.line(arc(at, pi, 2 * pi), HAIR, THIN_MM)
            at = after
    for x in (0.0, 2 * half):
        sheet.line([(x, 0.0), (x, high)], INK, THIN_MM)
    if hat:
        sheet.fill(arc(high, 0.0, 2 * pi), PANEL)
        sheet.line(arc(high, 0.0, 2 * pi), INK, THIN_MM)
        sheet.words((half, high - CAP_EM / 2 * LETTER_PT * MM_PER_PT), assembly.panels[0].name, LETTER_PT, "sans-bold")
        sheet.line(arc(0.0, pi, 2 * pi), INK, THICK_MM)
    else:
        sheet.line(arc(0.0, pi, 2 * pi), INK, THIN_MM)
        sheet.line(arc(high, 0.0, 2 * pi), INK, THICK_MM)
    mouth = arc(0.0, 1.2 * pi, 1.8 * pi) if hat else arc(high, 0.2 * pi, 0.8 * pi)
    note(sheet, mouth[:: STEPS // 6], lines, up=not hat)
    estimate = estimated_in(rims)
    upright(sheet, (2 * half, 0.0), (2 * half, high), 2 * half + OFF_MM, drum.deep, estimate)
    level(sheet, (0.0, 0.0), (2 * half, 0.0), (sheet.extent or (0, 0, 0, 0))[1] - OFF_MM, drum.across)
    paint_key_rows(sheet, finished_entries(opens=True, folds=False), width_mm)
    said = f"As it stands, open at the {'bottom' if hat else 'top'}; {length_text(drum.across)} across"
    return sheet.drawing("Finished", f"{said}, {length_text(drum.deep, estimate)} deep.{estimates_said(rims)}")
