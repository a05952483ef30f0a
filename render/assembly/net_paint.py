"""Panels, seam passes and folds painted on a sheet, for the net and for each step."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence
from math import hypot
from typing import Literal

from motifold.render.assembly.flatlay import Flatlay, Rimline, stretch
from motifold.render.assembly.model import PassStep, SeamPass
from motifold.render.assembly.sheet import Sheet, moved, toward, unit
from motifold.render.assembly.style import (
    BOLD_MM,
    CAP_EM,
    DASH_MM,
    DONE,
    FLAT,
    FOLD,
    FOLD_OFF_MM,
    HAIR,
    INK,
    LETTER_PT,
    MM_PER_PT,
    NAME_PT,
    PALE,
    PANEL,
    QUIET,
    TAG_MM,
    THICK_MM,
    THIN_MM,
)
from motifold.render.drawing.display import Point
from motifold.render.drawing.fonts import text_width_mm

State = Literal["plain", "done", "now"]
ROUND_MM = 2.4  # a pass turns a corner in a curve
START_MM = 1.6  # a start or an end stays this far off its corner


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


def paint_names(sheet: Sheet, flat: Flatlay, now: Collection[str] | None = None) -> None:
    """Each panel's name and RS in its middle, the numbers of its sides where they aren't top, right, bottom, left: as far as they fit."""
    em = NAME_PT * MM_PER_PT
    for number, (panel, outline) in enumerate(zip(flat.panels, flat.outlines, strict=True)):
        middle = _middle(outline)
        room = min(_distance(middle, a, b) for a, b in zip(outline, [*outline[1:], outline[0]], strict=True))
        roomy = room > 7.0
        wide = text_width_mm(panel.name, "sans-bold", NAME_PT)
        size = NAME_PT if wide < 2 * room - 2 else LETTER_PT
        wide = text_width_mm(panel.name, "sans-bold", size)
        if wide < 2 * room - 0.8 and room > 2.2:
            up = 0.35 * em if roomy else -CAP_EM / 2 * em
            sheet.words((middle[0], middle[1] + up), panel.name, size, "sans-bold", INK if now is None or panel.name in now else QUIET)
            if roomy:
                sheet.words((middle[0], middle[1] - 0.95 * em), "RS", LETTER_PT, color=QUIET)
        if "top" not in panel.sides and len(panel.sides) > 1 and room > 5.5:
            for side in range(len(panel.sides)):
                half = stretch(flat.side_of(number, side), 0.5, 1.0)[0]
                at = moved(half, unit(half, middle), 2.6)
                sheet.words((at[0], at[1] - CAP_EM / 2 * LETTER_PT * MM_PER_PT), panel.sides[side], LETTER_PT, color=QUIET)


def _middle(outline: Sequence[Point]) -> Point:
    return sum(x for x, _ in outline) / len(outline), sum(y for _, y in outline) / len(outline)


def _distance(p: Point, a: Point, b: Point) -> float:
    length = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
    return abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length


# --- passes -------------------------------------------------------------------------------------------------------------


def fold_letter(flat: Flatlay, seam: int) -> str:
    """A, B, ... Z, AA, ... for the seams that lie open on the sheet, in their order."""
    at = sum(1 for other in flat.seams[:seam] if not flat.touching[other])
    return letters(at)


def letters(number: int) -> str:
    """Number 0 is A, 25 Z, 26 AA.

    >>> letters(0), letters(25), letters(26), letters(52)
    ('A', 'Z', 'AA', 'BA')
    """
    word = ""
    number += 1
    while number:
        number, letter = divmod(number - 1, 26)
        word = chr(65 + letter) + word
    return word


def paint_pass(sheet: Sheet, flat: Flatlay, one: SeamPass, state: State, only: Sequence[int] | None = None) -> None:
    """The lines of one pass; ``only``: just these of its steps."""
    chosen = range(len(one.steps)) if only is None else only
    sheet.begin("pass", f"pass {one.number}", (("pass", str(one.number)),))
    run: list[int] = []
    for at in chosen:
        step = one.steps[at]
        if not flat.touching[step.seam]:
            _paint_run(sheet, flat, one, run, state)
            run = []
            _paint_fold(sheet, flat, one, at, state)
            continue
        if run and not _goes_on(flat, one.steps[run[-1]], step):
            _paint_run(sheet, flat, one, run, state)
            run = []
        run.append(at)
    _paint_run(sheet, flat, one, run, state)
    sheet.end()


def _line(flat: Flatlay, step: PassStep) -> tuple[Point, ...]:
    line = flat.seam_line(step.seam)
    return line if step.forward else line[::-1]


def _goes_on(flat: Flatlay, before: PassStep, after: PassStep) -> bool:
    a, b = _line(flat, before)[-1], _line(flat, after)[0]
    return hypot(a[0] - b[0], a[1] - b[1]) < 0.1 + 1.5 * flat.assembly.adds_cm * flat.mm_per_cm


def _paint_run(sheet: Sheet, flat: Flatlay, one: SeamPass, run: Sequence[int], state: State) -> None:
    if not run:
        return
    color, width = (DONE, THICK_MM) if state == "done" else (FLAT, BOLD_MM if state == "now" else THICK_MM)
    corners = [_line(flat, one.steps[run[0]])[0], *(_line(flat, one.steps[at])[-1] for at in run)]
    starts, ends = run[0] == 0, run[-1] == len(one.steps) - 1
    side = min(hypot(b[0] - a[0], b[1] - a[1]) for a, b in itertools.pairwise(corners))
    inset = min(START_MM, side * 0.18)
    corners[0] = moved(corners[0], unit(corners[0], corners[1]), inset)
    corners[-1] = moved(corners[-1], unit(corners[-1], corners[-2]), inset)
    rounded(sheet, corners, min(ROUND_MM, side * 0.3), color, width)
    if state == "done":
        return
    for a, b in itertools.pairwise(corners):
        along = unit(a, b)
        size = min(2.2 if state == "plain" else 3.2, side * 0.3)
        sheet.arrow(moved(toward(a, b, 0.5), along, size / 2), along, color, size)
    if starts:
        sheet.dot(corners[0], color)
    if not ends:
        # The pass goes on at another place of the sheet.
        along = unit(corners[-2], corners[-1])
        sheet.arrow(moved(corners[-1], along, 0.8), along, color, min(2.2, side * 0.3))
    else:
        sheet.bar(corners[-1], unit(corners[-2], corners[-1]), color, width)
    _number(sheet, flat, corners, str(one.number), color)


def _number(sheet: Sheet, flat: Flatlay, corners: Sequence[Point], text: str, color: str) -> None:
    """The pass's number by its start: behind it, else beside it, wherever nothing lies."""
    along = unit(corners[0], corners[1])
    across = (-along[1], along[0])
    plain = flat.side_mm < 2 * TAG_MM + 0.6
    radius = 1.75 if plain else TAG_MM
    step = radius + 1.5
    places = [moved(corners[0], along, -step - 0.2)]
    for far in (radius + 0.6, radius + 2.0, radius + 4.0, radius + 7.0):
        places += [moved(moved(corners[0], along, far), across, sign * step) for sign in (1, -1)]
    wide = max(radius, text_width_mm(text, "sans-bold", LETTER_PT) / 2 + (0.0 if plain else 0.7))
    free = [p for p in places if sheet.free((p[0] - wide, p[1] - radius, p[0] + wide, p[1] + radius), 0.15)]
    at = free[0] if free else places[0]
    if plain:
        sheet.words((at[0], at[1] - CAP_EM / 2 * LETTER_PT * MM_PER_PT), text, LETTER_PT, "sans-bold", color)
    else:
        sheet.tag(at, text, color, filled=True)


def rounded(sheet: Sheet, corners: Sequence[Point], radius: float, color: str, width: float) -> None:
    """A polyline that turns its corners in curves."""
    start = corners[0]
    for before, corner, after in zip(corners, corners[1:], corners[2:], strict=False):
        into, out = unit(before, corner), unit(corner, after)
        if abs(into[0] * out[1] - into[1] * out[0]) < 1e-6:
            continue
        one, two = moved(corner, into, -radius), moved(corner, out, radius)
        sheet.line([start, one], color, width)
        sheet.curve(one, toward(one, corner, 0.6), toward(two, corner, 0.6), two, color, width)
        start = two
    sheet.line([start, corners[-1]], color, width)


def _paint_fold(sheet: Sheet, flat: Flatlay, one: SeamPass, at: int, state: State) -> None:
    """Both sides of a seam that lies open: a dashed line beside each, the same letter, arrows that will run together."""
    step = one.steps[at]
    letter = fold_letter(flat, step.seam)
    for rim in flat.fold_lines(step.seam):
        way = rim if step.forward else rim.turned()
        off = min(FOLD_OFF_MM, way.length * 0.22)
        # Stopped short of the corners, where another line may come round.
        short = min(off + 1.7, way.length * 0.2) / (way.length or 1.0)
        beside = way.beside(off, short, 1 - short)
        if state == "done":
            sheet.line(beside.points, DONE, THICK_MM, DASH_MM)
        else:
            _lettered(sheet, beside, one, at, letter, BOLD_MM if state == "now" else THICK_MM)


def _lettered(sheet: Sheet, line: Rimline, one: SeamPass, at: int, letter: str, width: float) -> None:
    length = line.length
    numbered = length > 4 * TAG_MM + 7
    label = 4 * TAG_MM + 0.5 if numbered else 2 * TAG_MM
    if length < label + 4:
        sheet.line(line.points, FOLD, width, DASH_MM)
        middle = line.beside(TAG_MM + 0.7, 0.49, 0.51)
        sheet.tag(toward(middle.points[0], middle.points[-1], 0.5), letter, FOLD, filled=False)
    else:
        gap = (label / 2 + 0.7) / length
        for low, high in ((0.0, 0.5 - gap), (0.5 + gap, 1.0)):
            sheet.line(stretch(line.points, low, high), FOLD, width, DASH_MM)
        middle = line.beside(0.0, 0.49, 0.51)
        along, centre = unit(middle.points[0], middle.points[-1]), toward(middle.points[0], middle.points[-1], 0.5)
        if numbered:
            sheet.tag(moved(centre, along, -TAG_MM - 0.25), str(one.number), FOLD, filled=True)
            centre = moved(centre, along, TAG_MM + 0.25)
        sheet.tag(centre, letter, FOLD, filled=False)
    size = min(2.2, length * 0.2)
    end = stretch(line.points, 0.97, 1.0)
    along = unit(end[0], end[-1])
    if at == len(one.steps) - 1:
        sheet.bar(line.points[-1], along, FOLD, width)
        sheet.arrow(moved(line.points[-1], along, -1.4), along, FOLD, size)
    else:
        sheet.arrow(moved(line.points[-1], along, 0.6), along, FOLD, size)
    if at == 0:
        sheet.dot(line.points[0], FOLD)
