"""What the marks of a schematic mean, in rows below it."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.flatlay import Rimline
from motifold.render.assembly.fold_paint import paint_gathers
from motifold.render.assembly.panel_paint import FIRST_DEEP_MM, FIRST_MM
from motifold.render.assembly.sheet import Sheet
from motifold.render.assembly.style import CAP_EM, DASH_MM, FLAT, FOLD, FOLD_DASH_MM, INK, LETTER_PT, MM_PER_PT, THICK_MM, THIN_MM
from motifold.render.drawing.display import Point
from motifold.render.drawing.fonts import text_width_mm

KEY_MM = 5.5  # what a row takes
PLAIN = ("rs", "twist", "plain", "legs")  # words without a mark before them


def paint_key_rows(sheet: Sheet, entries: Sequence[tuple[str, str]], width_mm: float) -> None:
    """Each entry, a mark and its words, in as many rows as it takes."""
    box = sheet.extent or (0.0, 0.0, width_mm, 0.0)
    x, y = box[0], box[1] - KEY_MM
    right = max(box[2], box[0] + min(width_mm, 90.0))
    sheet.begin("key")
    for mark, words in entries:
        before = 0.0 if mark in PLAIN else 9.5
        wide = before + text_width_mm(words, "sans", LETTER_PT) + 4.0
        if x + wide - 4.0 > right and x > box[0]:
            x, y = box[0], y - 5.2
        _key_mark(sheet, mark, (x, y))
        sheet.words((x + before, y - CAP_EM / 2 * LETTER_PT * MM_PER_PT), words, LETTER_PT, color=INK, anchor="start")
        x += wide
    sheet.end()


def finished_entries(opens: bool, folds: bool) -> list[tuple[str, str]]:
    """What the lines of a finished thing mean, if it has any but seams."""
    return [("open", "open edge")] * opens + [("crease", "fold")] * folds


def _key_mark(sheet: Sheet, mark: str, at: Point) -> None:
    x, y = at
    if mark == "start":
        sheet.line([(x + 1, y), (x + 8, y)], FLAT, THICK_MM)
        sheet.dot((x + 1, y), FLAT)
        sheet.arrow((x + 6, y), (1.0, 0.0), FLAT)
    elif mark == "end":
        sheet.line([(x, y), (x + 7, y)], FLAT, THICK_MM)
        sheet.bar((x + 7, y), (1.0, 0.0), FLAT, THICK_MM)
    elif mark == "gap":
        sheet.ring((x + 4, y), 2.0, FOLD, THICK_MM)
    elif mark == "order":
        sheet.tag((x + 4, y), "1", FLAT, filled=True)
    elif mark == "joined":
        sheet.line([(x, y), (x + 8, y)], FLAT, THICK_MM)
    elif mark == "folds":
        sheet.line([(x, y), (x + 8, y)], FOLD, THICK_MM, DASH_MM)
    elif mark == "first":
        sheet.line([(x, y - 1.0), (x + 8, y - 1.0)], FOLD, THICK_MM, DASH_MM)
        sheet.disc((x + 4, y - 1.0 + FIRST_DEEP_MM), FIRST_MM, INK)
    elif mark == "eased":
        line = ((x, y - 0.5), (x + 8, y - 0.5))
        sheet.line(line, FOLD, THICK_MM)
        paint_gathers(sheet, Rimline(line, False), FOLD)
    elif mark == "open":
        sheet.line([(x, y), (x + 8, y)], INK, THICK_MM)
    elif mark == "crease":
        sheet.line([(x, y), (x + 8, y)], INK, THIN_MM, FOLD_DASH_MM)
    elif mark == "fold":
        sheet.line([(x, y), (x + 8, y)], FOLD, THICK_MM, DASH_MM)
        sheet.tag((x + 4, y), "A", FOLD, filled=False)
