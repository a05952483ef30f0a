"""Lengths in words, and dimension lines by ISO 129-1: thin, words above the line, read from below or from the right, each measure once."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import atan2, degrees, hypot

from motifold.render.assembly.sheet import Sheet, moved, reading_angle, toward, unit, words_box
from motifold.render.assembly.style import INK, LETTER_PT, THIN_MM
from motifold.render.drawing.display import Point

CM_PER_INCH = Fraction(254, 100)  # exact since the international yard of 1959
EIGHTHS = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")
ARROW_MM = 2.4
BEYOND_MM = 1.6  # how far a projection line runs past the dimension line
CLEAR_MM = 1.0  # and how far it stays off the thing
LIFT_MM = 1.1  # words above the line
OFF_MM = 5.5  # dimension lines off what is drawn


def length_text(cm: float) -> str:
    """A length in cm and in inches to the nearest eighth.

    >>> length_text(12.8), length_text(38.4), length_text(5.08), length_text(0.9)
    ('12.8 cm (5 in)', '38.4 cm (15⅛ in)', '5.1 cm (2 in)', '0.9 cm (⅜ in)')
    """
    return f"{cm_text(cm)} ({inch_text(cm)})"


def cm_text(cm: float) -> str:
    """One decimal, none where it is nought.

    >>> cm_text(12.0), cm_text(12.34)
    ('12 cm', '12.3 cm')
    """
    return f"{cm:.1f}".removesuffix(".0") + " cm"


def inch_text(cm: float) -> str:
    """Mixed number to the nearest eighth of an inch.

    >>> inch_text(2.54), inch_text(21.9), inch_text(0.05)
    ('1 in', '8⅝ in', '0 in')
    """
    eighths = round(Fraction(cm).limit_denominator(10**6) / CM_PER_INCH * 8)
    whole, part = divmod(eighths, 8)
    return f"{whole if whole or not part else ''}{EIGHTHS[part]} in"


def dimension(sheet: Sheet, a: Point, b: Point, line_a: Point, line_b: Point, text: str) -> None:
    """A dimension of the stretch from ``a`` to ``b``, its line drawn from ``line_a`` to ``line_b``, projection lines between."""
    along = unit(line_a, line_b)
    turned = abs(reading_angle(along) - degrees(atan2(along[1], along[0]))) > 1
    up = (along[1], -along[0]) if turned else (-along[1], along[0])
    sheet.begin("dimension", text)
    for start, end in ((a, line_a), (b, line_b)):
        out = unit(start, end)
        sheet.line([_clear_of_words(sheet, moved(start, out, CLEAR_MM), end), moved(end, out, BEYOND_MM)], INK, THIN_MM)
    box = words_box((0.0, 0.0), text, LETTER_PT)
    wide, length = box[2] - box[0], hypot(line_b[0] - line_a[0], line_b[1] - line_a[1])
    middle, end = toward(line_a, line_b, 0.5), line_b
    if length < wide + 1.0:
        # Too short for its words: the line runs on and the words stand beside it.
        middle, end = moved(line_b, along, BEYOND_MM + 1.0 + wide / 2), moved(line_b, along, BEYOND_MM + 1.0 + wide)
    sheet.line([line_a, end], INK, THIN_MM)
    sheet.arrow(line_a, (-along[0], -along[1]), INK, ARROW_MM, slim=True)
    sheet.arrow(line_b, along, INK, ARROW_MM, slim=True)
    sheet.words(moved(middle, up, LIFT_MM), text, angle=reading_angle(along))
    sheet.end()


def _clear_of_words(sheet: Sheet, start: Point, end: Point) -> Point:
    """Where a projection line can start so that it runs through no word or tag."""
    out, length = unit(start, end), hypot(end[0] - start[0], end[1] - start[1])
    at = length
    while at > 0:
        x, y = moved(start, out, at - 0.5)
        if sheet.worded((x - 0.3, y - 0.3, x + 0.3, y + 0.3)):
            return moved(start, out, min(at + 0.3, length))
        at -= 0.5
    return start


def level(sheet: Sheet, left: Point, right: Point, y: float, cm: float) -> None:
    """A level dimension from one point to another, its line at height ``y``."""
    dimension(sheet, left, right, (left[0], y), (right[0], y), length_text(cm))


def upright(sheet: Sheet, low: Point, top: Point, x: float, cm: float) -> None:
    """An upright dimension, its line at ``x``."""
    dimension(sheet, low, top, (x, low[1]), (x, top[1]), length_text(cm))


def measure_around(sheet: Sheet, points: Sequence[Point], mm_per_cm: float) -> tuple[float, float]:
    """Overall width below and overall height on the right of what is drawn; both in cm."""
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, top = min(y for _, y in points), max(y for _, y in points)
    box = sheet.extent or (left, low, right, top)
    near = 0.05
    bottom_left = min((p for p in points if p[0] < left + near), key=lambda p: p[1])
    bottom_right = min((p for p in points if p[0] > right - near), key=lambda p: p[1])
    low_right = max((p for p in points if p[1] < low + near), key=lambda p: p[0])
    top_right = max((p for p in points if p[1] > top - near), key=lambda p: p[0])
    wide, high = (right - left) / mm_per_cm, (top - low) / mm_per_cm
    level(sheet, bottom_left, bottom_right, box[1] - OFF_MM, wide)
    upright(sheet, low_right, top_right, box[2] + OFF_MM, high)
    return wide, high
