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
APART_MM = 4.0  # between entries
PLAIN = ("rs", "twist", "plain", "legs")  # words without a mark before them


def paint_key_rows(sheet: Sheet, entries: Sequence[tuple[str, str]], width_mm: float) -> None:
    """Each entry, a mark and its words, in as many rows as it takes."""
    x0, low, x1, _ = sheet.extent or (0.0, 0.0, width_mm, 0.0)
    before = [0.0 if mark in PLAIN else 9.5 for mark, _ in entries]
    wide = [room + text_width_mm(words, "sans", LETTER_PT) for room, (_, words) in zip(before, entries, strict=True)]
    sheet.begin("key")
    for number, row in enumerate(in_rows(wide, max(x1 - x0, min(width_mm, 90.0)))):
        y = low - KEY_MM - 5.2 * number
        for at, off in row:
            mark, words = entries[at]
            _key_mark(sheet, mark, (x0 + off, y))
            foot = x0 + off + before[at], y - CAP_EM / 2 * LETTER_PT * MM_PER_PT
            sheet.words(foot, words, LETTER_PT, color=INK, anchor="start")
    sheet.end()


def in_rows(wide: Sequence[float], room: float) -> list[list[tuple[int, float]]]:
    """Which of some entries stand in each row, and how far from its left, if they are so ``wide`` and a row has that ``room``."""
    rows: list[list[tuple[int, float]]] = [[]]
    used = 0.0
    for at, own in enumerate(wide):
        if rows[-1] and used + own > room:
            rows.append([])
            used = 0.0
        rows[-1].append((at, used))
        used += own + APART_MM
    return rows


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
