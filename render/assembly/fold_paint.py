"""Seams that lie open on the sheet: both sides of each, the same letter, arrows that will run together."""

from __future__ import annotations

from typing import Literal

from motifold.render.assembly.flatlay import Flatlay, Rimline, stretch
from motifold.render.assembly.model import Seam, SeamPass
from motifold.render.assembly.sheet import Sheet, beyond_disc, moved, toward, unit, words_box
from motifold.render.assembly.style import (
    BOLD_MM,
    CAP_EM,
    DASH_MM,
    DONE,
    FOLD,
    FOLD_OFF_MM,
    LETTER_PT,
    MM_PER_PT,
    TAG_MM,
    THICK_MM,
    THIN_MM,
)

GATHERS_MM = 1.5  # from one stroke of an eased side to the next
GATHER_MM = 1.1

State = Literal["plain", "done", "now"]


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


def paint_fold(sheet: Sheet, flat: Flatlay, one: SeamPass, at: int, state: State, name: str) -> None:
    """One open seam: a dashed line beside each of its sides; on a crowded sheet on them, with its letter inside the panel.

    ``name``: what its leg of the pass is called.
    """
    step = one.steps[at]
    seam = flat.assembly.seams[step.seam]
    letter = letters(flat.fold_number[step.seam]) + ("~" if seam.twist else "")
    width = BOLD_MM if state == "now" else THICK_MM
    for place, rim in enumerate(flat.fold_lines(step.seam)):
        way = rim if step.forward else rim.turned()
        off = 0.0 if flat.dense else min(FOLD_OFF_MM, way.length * 0.22)
        # Stopped short of the corners, where another line may come round.
        short = min(off + 1.7, way.length * 0.2) / (way.length or 1.0)
        beside = way.beside(off, short, 1 - short)
        if state == "done":
            sheet.line(beside.points, DONE, THICK_MM, DASH_MM)
        elif flat.crammed and state == "plain":
            sheet.line(beside.points, FOLD, width, DASH_MM)
        elif flat.dense:
            _letter_inside(sheet, beside, letter, width, crowded=state == "plain")
        else:
            # A step says its pass in its title.
            _lettered(sheet, beside, one, at, letter, width, name)
        if state != "done" and eased_in(seam) == place:
            paint_gathers(sheet, beside, FOLD)


def eased_in(seam: Seam) -> int | None:
    """Which side of a seam is the longer one and eased in: 0 is side a, 1 side b; None where they meet one to one."""
    if seam.eased is None or seam.eased[0] == seam.eased[1]:
        return None
    return 0 if seam.eased[0] > seam.eased[1] else 1


def paint_gathers(sheet: Sheet, line: Rimline, color: str) -> None:
    """Short strokes across a line, as sewing patterns mark what is eased in: outside it, wherever nothing else stands."""
    count = max(2, round(line.length / GATHERS_MM))
    for i in range(count):
        share = (i + 0.5) / count
        spot = line.beside(0.0, share - 0.01, share + 0.01)
        a, out = toward(spot.points[0], spot.points[-1], 0.5), spot.outward(0)
        b = moved(a, out, GATHER_MM)
        if not sheet.worded((min(a[0], b[0]) - 0.3, min(a[1], b[1]) - 0.3, max(a[0], b[0]) + 0.3, max(a[1], b[1]) + 0.3)):
            sheet.line([a, b], color, THIN_MM)


def _letter_inside(sheet: Sheet, line: Rimline, letter: str, width: float, crowded: bool) -> None:
    sheet.line(line.points, FOLD, width, DASH_MM)
    if not crowded:
        end = stretch(line.points, 0.9, 1.0)
        sheet.arrow(end[-1], unit(end[0], end[-1]), FOLD, min(2.2, line.length * 0.25))
    half = CAP_EM / 2 * LETTER_PT * MM_PER_PT
    places = []
    for deep in (2.3, 2.0, 2.8, 3.4, -2.3, -3.2, -4.4, 4.4, -6.0):
        for share in (0.5, 0.4, 0.6, 0.3, 0.7):
            spot = line.beside(-deep, share - 0.01, share + 0.01).points[0]
            places.append((spot[0], spot[1] - half))
    free = [p for p in places if sheet.free(words_box(p, letter, LETTER_PT, "sans-bold"), 0.1)]
    sheet.words(free[0] if free else places[0], letter, LETTER_PT, "sans-bold", FOLD)


def _lettered(sheet: Sheet, line: Rimline, one: SeamPass, at: int, letter: str, width: float, name: str) -> None:
    """A dashed line with its letter in its middle, the pass's number (if there is a ``name``) beside it; on a short side outside it."""
    length = line.length
    beside = bool(name) and length > 4 * TAG_MM + 7
    more = beyond_disc(name)
    gap = min(((4 if beside else 2) * TAG_MM / 2 + more + 0.9) / length, 0.45)
    for low, high in ((0.0, 0.5 - gap), (0.5 + gap, 1.0)):
        sheet.line(stretch(line.points, low, high), FOLD, width, DASH_MM)
    middle = line.beside(0.0, 0.49, 0.51)
    along, centre = unit(middle.points[0], middle.points[-1]), toward(middle.points[0], middle.points[-1], 0.5)
    apart = TAG_MM + 0.25
    if beside:
        sheet.tag(moved(centre, along, -apart - (more if abs(along[0]) > 0.1 else 0.0)), name, FOLD, filled=True)
        sheet.tag(moved(centre, along, apart), letter, FOLD, filled=False)
    else:
        sheet.tag(centre, letter, FOLD, filled=False)
        outside = moved(centre, middle.outward(0), 2 * apart + 0.1)
        for spot in (outside, moved(outside, along, 3.0), moved(outside, along, -3.0)) if name else ():
            if sheet.free((spot[0] - TAG_MM, spot[1] - TAG_MM, spot[0] + TAG_MM, spot[1] + TAG_MM), 0.1):
                sheet.tag(spot, name, FOLD, filled=True)
                break
    size = min(2.2, length * 0.2)
    end = stretch(line.points, 0.97, 1.0)
    along = unit(end[0], end[-1])
    if at == len(one.steps) - 1:
        sheet.bar(line.points[-1], along, FOLD, width)
        sheet.arrow(moved(line.points[-1], along, -min(1.4, length * 0.08)), along, FOLD, size)
    else:
        sheet.arrow(moved(line.points[-1], along, 0.6), along, FOLD, size)
    if at == 0:
        sheet.dot(line.points[0], FOLD)
