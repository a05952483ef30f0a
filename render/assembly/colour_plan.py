"""Which colourway goes where: the net without its seams, each panel toned and numbered after its colourway, and how many of each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Final

from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.key import in_rows
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.sheet import Sheet, mean_point
from motifold.render.assembly.style import A5_TEXT_HEIGHT_MM, A5_TEXT_WIDTH_MM, CAP_EM, HAIR, INK, LETTER_PT, MM_PER_PT, THIN_MM
from motifold.render.drawing.display import Drawing
from motifold.render.drawing.fonts import text_width_mm

TONES: Final = ("#ffffff", "#d8d2c4", "#b3aa96", "#ece8df", "#c6bead")
"""Grounds in turn, told apart in grey as well; the number tells for certain. Ink on the darkest: 7 : 1."""
_ROW_MM, _SWATCH_MM, _BESIDE_MM = 6.2, 4.4, 1.6
_CENTRE_LOW = CAP_EM / 2 * LETTER_PT * MM_PER_PT


def draw_colour_plan(
    assembly: Assembly, ways: Mapping[str, str], width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM
) -> Drawing | None:
    """The plan within so many mm; ``ways``: the colourway of each panel that has one. None where fewer than two differ.

    With several copies of the net: the first.
    """
    shown = [panel for panel in assembly.panels[: len(assembly.panels) // assembly.copies] if panel.name in ways]
    made = Counter((panel.motif, ways[panel.name]) for panel in shown)
    if len(made) < 2:
        return None
    number = {kind: at for at, kind in enumerate(made, start=1)}
    several = len({motif for motif, _ in made}) > 1
    key = [f"{f'{motif}: ' if several else ''}{way} ({count})" for (motif, way), count in made.items()]
    rows = in_rows([_SWATCH_MM + _BESIDE_MM + text_width_mm(words, "sans", LETTER_PT) for words in key], width_mm)
    sheet = Sheet()
    flat = lay(assembly, width_mm - 2.0, height_mm - _ROW_MM * (len(rows) + 1))
    for panel, outline in zip(flat.panels, flat.outlines, strict=True):
        way = ways.get(panel.name)
        at = number.get((panel.motif, way)) if way is not None else None
        sheet.begin("panel", panel.name, (("panel", panel.name), ("motif", panel.motif), ("colourway", way or "")))
        sheet.fill(outline, _tone(at))
        sheet.line([*outline, outline[0]], HAIR, THIN_MM)
        sheet.end()
        if at is not None:
            x, y = mean_point(outline)
            sheet.words((x, y - _CENTRE_LOW), str(at), LETTER_PT, "sans-bold", INK)
    _paint_key(sheet, key, rows)
    said = "; ".join(f"{at} {words}" for at, words in enumerate(key, start=1))
    return sheet.drawing("Colourways on the net", f"Which colourway goes where, with how many of each: {said}.")


def _tone(at: int | None) -> str:
    return TONES[0] if at is None else TONES[(at - 1) % len(TONES)]


def _paint_key(sheet: Sheet, key: Sequence[str], rows: Sequence[Sequence[tuple[int, float]]]) -> None:
    x0, y, _, _ = sheet.extent or (0.0, 0.0, 0.0, 0.0)
    sheet.begin("key")
    for row in rows:
        y -= _ROW_MM
        for at, off in row:
            x, low, side = x0 + off, y - _SWATCH_MM / 2, _SWATCH_MM
            box = [(x, low), (x + side, low), (x + side, low + side), (x, low + side)]
            sheet.fill(box, _tone(at + 1))
            sheet.line([*box, box[0]], HAIR, THIN_MM)
            sheet.words((x + side / 2, y - _CENTRE_LOW), str(at + 1), LETTER_PT, "sans-bold", INK)
            sheet.words((x + side + _BESIDE_MM, y - _CENTRE_LOW), key[at], LETTER_PT, color=INK, anchor="start")
    sheet.end()
