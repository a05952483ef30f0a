"""Panels painted on a sheet: grounds, edges and names."""

from __future__ import annotations

from collections.abc import Collection
from functools import lru_cache
from math import hypot

from motifold.render.assembly.flatlay import NAME_CLEAR_MM, Flatlay, stretch
from motifold.render.assembly.sheet import Sheet, mean_point, moved, unit, words_box
from motifold.render.assembly.style import (
    CAP_EM,
    DONE,
    HAIR,
    INK,
    LETTER_PT,
    MM_PER_PT,
    NAME_PT,
    PALE,
    PANEL,
    QUIET,
    THICK_MM,
    THIN_MM,
)
from motifold.render.drawing.display import Point
from motifold.render.drawing.fonts import text_width_mm

FIRST_DEEP_MM = 1.4  # how far a first side's dot lies within the panel
BAR_ROOM_MM = 2.8  # half the width of a panel in which the bar at the end of a pass reaches up beside the name
BAR_CLEAR_MM = 2.3
FIRST_MM = 0.55  # and its radius


def paint_panels(sheet: Sheet, flat: Flatlay, now: Collection[str] | None = None) -> None:
    """Fills, then edges: open sides thick, sides with a seam thin. ``now``: the panels that this step is about; others are paler."""
    for panel, outline in zip(flat.panels, flat.outlines, strict=True):
        sheet.begin("panel", panel.name, (("panel", panel.name), ("motif", panel.motif)))
        sheet.fill(outline, PANEL if now is None or panel.name in now else PALE)
        sheet.end()
    for index in flat.seams:
        seam = flat.assembly.seams[index]
        for piece in (seam.a, seam.b):
            if piece is not None:
                sheet.line(flat.piece(piece), HAIR, THIN_MM)
    for opening in flat.assembly.openings[: len(flat.assembly.openings) // flat.assembly.copies]:
        for piece in opening.sides:
            sheet.line(flat.piece(piece), INK if now is None or piece.panel in now else DONE, THICK_MM)


def paint_names(sheet: Sheet, flat: Flatlay, now: Collection[str] | None = None, raised: bool = False) -> None:
    """Each panel's name and RS in its middle, the numbers of its sides where they aren't top, right, bottom, left: as far as they fit.

    ``raised``: in a small panel the name leaves room for a number below it.
    """
    em = NAME_PT * MM_PER_PT
    nameless = _nameless(flat)
    for number, (panel, outline) in enumerate(zip(flat.panels, flat.outlines, strict=True)):
        middle, room = _room(outline)
        roomy = room > 7.0 and not flat.dense
        wide = text_width_mm(panel.name, "sans-bold", NAME_PT)
        size = NAME_PT if wide < 2 * room - 2 else LETTER_PT
        wide = text_width_mm(panel.name, "sans-bold", size)
        cap = CAP_EM / 2 * em
        spots = [(0.0, 0.0)]
        if flat.dense:
            free_x, free_y = max(0.0, room - wide / 2 - 0.8), max(0.0, room - cap - 0.8)
            spots += [(x * free_x, y * free_y) for y in (0, 0.5, -0.5, 1, -1) for x in (0, 0.5, -0.5, 1, -1)]
        found = None
        named = panel.motif not in nameless and room > 2.1
        for clear in (1.3, 0.6, 0.1) if named else ():
            for x, y in spots:
                at = middle[0] + x, middle[1] + y - cap
                if found is None and (not flat.dense or sheet.free(words_box(at, panel.name, size, "sans-bold"), clear)):
                    found = at
        if found is not None:
            up = 0.35 * em + cap if roomy else 1.7 if raised and room > 4.2 else 0.0
            sheet.words((found[0], found[1] + up), panel.name, size, "sans-bold", INK if now is None or panel.name in now else QUIET)
            if roomy:
                sheet.words((middle[0], middle[1] - 0.95 * em), "RS", LETTER_PT, color=QUIET)
        if "top" not in panel.sides and len(panel.sides) > 1 and room > 5.5 and not flat.dense:
            for side in range(len(panel.sides)):
                half = stretch(flat.side_of(number, side), 0.5, 1.0)[0]
                at = moved(half, unit(half, middle), 2.6)
                foot = at[0], at[1] - CAP_EM / 2 * LETTER_PT * MM_PER_PT
                if not sheet.worded(words_box(foot, panel.sides[side], LETTER_PT)):
                    sheet.words(foot, panel.sides[side], LETTER_PT, color=QUIET)


def _nameless(flat: Flatlay) -> set[str]:
    """Motifs in whose panels not every name fits: then none of them has one, for half the names would puzzle.

    In small panels the ends of passes stand in the corners, where they are sewn.
    """
    sewn = bool(flat.assembly.passes)
    found = set()
    for panel, outline in zip(flat.panels, flat.outlines, strict=True):
        _, room = _room(outline)
        clear = BAR_CLEAR_MM if sewn and room < BAR_ROOM_MM else NAME_CLEAR_MM
        if text_width_mm(panel.name, "sans-bold", LETTER_PT) > 2 * room - clear:
            found.add(panel.motif)
    return found


def paint_first_sides(sheet: Sheet, flat: Flatlay) -> None:
    """A dot within each panel at the middle of its first side, where there is no room for the number of every side."""
    for number, panel in enumerate(flat.panels):
        if "top" not in panel.sides and len(panel.sides) > 1:
            half = stretch(flat.side_of(number, 0), 0.5, 1.0)[0]
            at = moved(half, unit(half, _room(flat.outlines[number])[0]), FIRST_DEEP_MM)
            if not sheet.worded((at[0] - FIRST_MM, at[1] - FIRST_MM, at[0] + FIRST_MM, at[1] + FIRST_MM)):
                sheet.disc(at, FIRST_MM, INK)


@lru_cache(maxsize=256)
def _room(outline: tuple[Point, ...]) -> tuple[Point, float]:
    """The middle of a panel, and how far the nearest of its sides is."""
    middle = mean_point(outline)
    return middle, min(_distance(middle, a, b) for a, b in zip(outline, [*outline[1:], outline[0]], strict=True))


def _distance(p: Point, a: Point, b: Point) -> float:
    length = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
    return abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length
