"""Lengths in words, and dimension lines by ISO 129-1: thin, words above the line, read from below or from the right, each measure once."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import atan2, degrees, hypot

from motifold.render.assembly.sheet import Sheet, moved, reading_angle, toward, unit, words_boxes
from motifold.render.assembly.style import INK, LETTER_PT
from motifold.render.drawing.display import Point
from motifold.render.drawing.fonts import text_width_mm
from motifold.render.pattern.rounding import tenths
from motifold.symbols.record import dataclass

CM_PER_INCH = Fraction(254, 100)  # exact since the international yard of 1959
EIGHTHS = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")
ARROW_MM = 2.4
BEYOND_MM = 1.6  # how far a projection line runs past the dimension line
CLEAR_MM = 1.0  # and how far it stays off the thing
LIFT_MM = 1.1  # words above the line
NEXT_MM = 5.5  # from one dimension line to the next
TURNS = 4  # places that are tried for a dimension
OFF_MM = 5.5  # dimension lines off what is drawn


def length_text(cm: float, estimate: bool = False) -> str:
    """A length in cm and in inches to the nearest eighth.

    >>> length_text(12.8), length_text(38.4), length_text(5.08), length_text(0.9, estimate=True)
    ('12.8 cm (5 in)', '38.4 cm (15⅛ in)', '5.1 cm (2 in)', 'about 0.9 cm (⅜ in)')
    """
    return f"{'about ' if estimate else ''}{cm_text(cm)} ({inch_text(cm)})"


def cm_text(cm: float) -> str:
    """One decimal, none where it is nought.

    >>> cm_text(12.0), cm_text(12.34)
    ('12 cm', '12.3 cm')
    """
    return tenths(cm).removesuffix(".0") + " cm"


def inch_text(cm: float) -> str:
    """Mixed number to the nearest eighth of an inch.

    >>> inch_text(2.54), inch_text(21.9), inch_text(0.05)
    ('1 in', '8⅝ in', '0 in')
    """
    eighths = round(Fraction(cm).limit_denominator(10**6) / CM_PER_INCH * 8)
    whole, part = divmod(eighths, 8)
    return f"{whole if whole or not part else ''}{EIGHTHS[part]} in"


@dataclass(frozen=True, slots=True)
class Dimension:
    """A dimension of the stretch from ``a`` to ``b``, its line drawn from ``line_a`` to ``line_b``, projection lines between.

    Too short for its words, the line runs on to ``end`` and the words stand there beside it.
    """

    a: Point
    b: Point
    line_a: Point
    line_b: Point
    text: str
    end: Point
    words: Point
    angle: float


def plan_dimension(a: Point, b: Point, line_a: Point, line_b: Point, text: str) -> Dimension:
    along = unit(line_a, line_b)
    turned = abs(reading_angle(along) - degrees(atan2(along[1], along[0]))) > 1
    up = (along[1], -along[0]) if turned else (-along[1], along[0])
    wide, length = text_width_mm(text, "sans", LETTER_PT), hypot(line_b[0] - line_a[0], line_b[1] - line_a[1])
    middle, end = toward(line_a, line_b, 0.5), line_b
    if length < wide + 1.0:
        middle, end = moved(line_b, along, BEYOND_MM + 1.0 + wide / 2), moved(line_b, along, BEYOND_MM + 1.0 + wide)
    return Dimension(a, b, line_a, line_b, text, end, moved(middle, up, LIFT_MM), reading_angle(along))


def stands_clear(sheet: Sheet, plan: Dimension) -> bool:
    """Whether its words touch nothing that is drawn, and its lines run through no words, arrows or tags."""
    if not all(sheet.free(box, 0.25) for box in words_boxes(plan.words, plan.text, LETTER_PT, angle=plan.angle)):
        return False
    lines = [(plan.line_a, plan.end)]
    for start, end in ((plan.a, plan.line_a), (plan.b, plan.line_b)):
        out = unit(start, end)
        lines.append((moved(start, out, CLEAR_MM), moved(end, out, BEYOND_MM)))
    if any(sheet.crosses_rule(start, end, "leader") for start, end in lines):
        return False
    for start, end in lines:
        steps = max(2, int(hypot(end[0] - start[0], end[1] - start[1]) / 0.4))
        for i in range(steps + 1):
            x, y = toward(start, end, i / steps)
            if sheet.worded((x - 0.3, y - 0.3, x + 0.3, y + 0.3)):
                return False
    return True


def paint_dimension(sheet: Sheet, plan: Dimension) -> None:
    along = unit(plan.line_a, plan.line_b)
    sheet.begin("dimension", plan.text)
    for start, end in ((plan.a, plan.line_a), (plan.b, plan.line_b)):
        out = unit(start, end)
        sheet.rule(_clear_of_words(sheet, moved(start, out, CLEAR_MM), end), moved(end, out, BEYOND_MM), "dimension")
    sheet.rule(plan.line_a, plan.end, "dimension")
    sheet.arrow(plan.line_a, (-along[0], -along[1]), INK, ARROW_MM, slim=True)
    sheet.arrow(plan.line_b, along, INK, ARROW_MM, slim=True)
    sheet.words(plan.words, plan.text, angle=plan.angle)
    sheet.end()


def dimension(sheet: Sheet, a: Point, b: Point, line_a: Point, line_b: Point, text: str) -> None:
    """One dimension, just there."""
    paint_dimension(sheet, plan_dimension(a, b, line_a, line_b, text))


def paint_clear(sheet: Sheet, plans: Iterable[Dimension]) -> bool:
    """The first of the plans that stands clear; False, and nothing painted, if none does."""
    for plan in plans:
        if stands_clear(sheet, plan):
            paint_dimension(sheet, plan)
            return True
    return False


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


def level(sheet: Sheet, left: Point, right: Point, y: float, cm: float, estimate: bool = False) -> None:
    """A level dimension from one point to another, its line at height ``y``, or farther down where that stands clear of words."""
    ys = [y - turn * NEXT_MM for turn in range(TURNS)]
    _clearest(sheet, [(a, b, (a[0], at), (b[0], at)) for at in ys for a, b in ((left, right), (right, left))], length_text(cm, estimate))


def upright(sheet: Sheet, low: Point, top: Point, x: float, cm: float, estimate: bool = False) -> None:
    """An upright dimension, its line at ``x``, or farther to the right where that stands clear of words."""
    xs = [x + turn * NEXT_MM for turn in range(TURNS)]
    _clearest(sheet, [(a, b, (at, a[1]), (at, b[1])) for at in xs for a, b in ((low, top), (top, low))], length_text(cm, estimate))


def _clearest(sheet: Sheet, ends: Sequence[tuple[Point, Point, Point, Point]], text: str) -> None:
    plans = [plan_dimension(*points, text) for points in ends]
    if not paint_clear(sheet, plans):
        paint_dimension(sheet, plans[0])


def measure_around(
    sheet: Sheet, points: Sequence[Point], mm_per_cm: float, bare: Sequence[Point] = (), estimate: bool = False
) -> tuple[float, float]:
    """Overall width below and overall height on the right of what is drawn; both in cm.

    ``estimate``: what ``points`` reach beyond the ``bare`` ones is an estimate.
    """
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, top = min(y for _, y in points), max(y for _, y in points)
    box = sheet.extent or (left, low, right, top)
    near = 0.05
    bottom_left = min((p for p in points if p[0] < left + near), key=lambda p: p[1])
    bottom_right = min((p for p in points if p[0] > right - near), key=lambda p: p[1])
    low_right = max((p for p in points if p[1] < low + near), key=lambda p: p[0])
    top_right = max((p for p in points if p[1] > top - near), key=lambda p: p[0])
    wide, high = (right - left) / mm_per_cm, (top - low) / mm_per_cm
    spans = [max(p[k] for p in bare) - min(p[k] for p in bare) for k in (0, 1)] if estimate and bare else [right - left, top - low]
    level(sheet, bottom_left, bottom_right, box[1] - OFF_MM, wide, right - left > spans[0] + near)
    upright(sheet, low_right, top_right, box[2] + OFF_MM, high, top - low > spans[1] + near)
    return wide, high
