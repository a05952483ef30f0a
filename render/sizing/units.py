"""Units for what is printed: inches, yards, ounces beside centimetres, metres, grams.

pint does the conversions, and is imported only when the first one is asked for. Only unit names written in this file ever reach it,
never text of a pattern (whose quantities are exact already).
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import floor
from typing import Any

from motifold.render.pattern.rounding import tenths

# International yard and pound agreement, 1959. pint's own file of a thousand units takes a quarter of a second to read.
_DEFINITIONS = (
    "meter = [length] = m", "centimeter = 0.01 * meter = cm", "millimeter = 0.001 * meter = mm",
    "inch = 2.54 * centimeter = in", "foot = 12 * inch = ft", "yard = 3 * foot = yd",
    "gram = [mass] = g", "kilogram = 1000 * gram = kg", "pound = 453.59237 * gram = lb", "ounce = pound / 16 = oz",
)  # fmt: skip
_NAMES = {"mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot", "yd": "yard",
          "g": "gram", "kg": "kilogram", "oz": "ounce", "lb": "pound"}  # fmt: skip
_VULGAR = {
    (1, 2): "½", (1, 3): "⅓", (2, 3): "⅔", (1, 4): "¼", (3, 4): "¾", (1, 5): "⅕", (2, 5): "⅖", (3, 5): "⅗", (4, 5): "⅘", (1, 6): "⅙",
    (5, 6): "⅚", (1, 8): "⅛", (3, 8): "⅜", (5, 8): "⅝", (7, 8): "⅞",
}  # fmt: skip
NBSP = "\N{NO-BREAK SPACE}"


@lru_cache(maxsize=1)
def _registry() -> Any:
    import pint

    return pint.UnitRegistry(list(_DEFINITIONS))


@lru_cache(maxsize=128)
def _factor(unit: str, to: str) -> float:
    """How many ``to`` one ``unit`` is; ValueError where they measure different things or are none of ours."""
    if unit not in _NAMES or to not in _NAMES:
        raise ValueError(f"no such unit: {unit!r} to {to!r}")
    import pint

    try:
        return float(_registry().Quantity(1.0, _NAMES[unit]).to(_NAMES[to]).magnitude)
    except pint.DimensionalityError as error:
        raise ValueError(f"{unit} cannot be turned into {to}") from error


def convert(value: float, unit: str, to: str) -> float:
    """A length or mass in another unit (mm cm m in ft yd, g kg oz lb).

    >>> round(convert(100, "yd", "m"), 6)
    91.44
    """
    return value * _factor(unit, to)


def fraction_text(value: Fraction) -> str:
    """A number not below 0 with a real fraction where there is one: "5⅛", "½", "3"."""
    whole, rest = divmod(value, 1)
    glyph = _VULGAR.get((rest.numerator, rest.denominator), f"{rest.numerator}/{rest.denominator}") if rest else ""
    gap = NBSP if glyph and "/" in glyph and whole else ""
    return f"{whole}{gap}{glyph}" if whole or not rest else glyph


def inches_text(cm: float, parts: int = 8) -> str:
    """Centimetres as the trade prints inches: to the nearest eighth (or quarter, with 4 ``parts``), with a real fraction, "5⅛ in"."""
    return _in_parts(convert(cm, "cm", "in"), parts)


def _in_parts(inches: float, parts: int = 8) -> str:
    rounded = Fraction(floor(inches * parts + 0.5 + 1e-6), parts)  # halves up, whatever the last digit
    return f"{'−' if rounded < 0 else ''}{fraction_text(abs(rounded))}{NBSP}in"


def number_text(value: float) -> str:
    """To one decimal, without an empty one and with a real minus: "12.8", "13", "−4.5"."""
    return tenths(value).removesuffix(".0").replace("-", "−")


def cm_text(cm: float) -> str:
    """Centimetres to the nearest millimetre: "12.8 cm"."""
    return f"{number_text(cm)}{NBSP}cm"


def length_text(cm: float, imperial: bool = False) -> str:
    """Both units, first the one that the pattern is written in: "44.8 cm (17⅝ in)", "18 in (45.7 cm)"."""
    return f"{inches_text(cm)} ({cm_text(cm)})" if imperial else f"{cm_text(cm)} ({inches_text(cm)})"


_TOLD_ALIKE = ((10.0, 4), (5.0, 2))
"""Centimetres and inches of the swatches that the trade takes for each other."""


def swatch_text(cm: float, imperial: bool = False) -> str:
    """A measure of the swatch in both units, as the trade prints it: 10 cm is 4 in, and 4 in is 10 cm.

    >>> [swatch_text(*one).replace(NBSP, " ") for one in ((10.0,), (10.16, True), (12.8,))]
    ['10 cm (4 in)', '4 in (10 cm)', '12.8 cm (5 in)']
    """
    for metric, inches in _TOLD_ALIKE:
        if abs(cm - (2.54 * inches if imperial else metric)) < 1e-6:
            first, second = f"{metric:g}{NBSP}cm", f"{inches}{NBSP}in"
            return f"{second} ({first})" if imperial else f"{first} ({second})"
    return length_text(cm, imperial)


def one_length(cm: float, imperial: bool = False) -> str:
    """A length in the unit that the pattern is written in.

    Problems are told in it, and proving a pattern must not wait for a unit library: 2.54 cm are an inch exactly.
    """
    return _in_parts(cm / 2.54) if imperial else cm_text(cm)


def percent_text(percent: float) -> str:
    """A signed share: "+6.7 %", "−4 %", "0 %"."""
    return f"{'+' if round(percent, 1) > 0 else ''}{number_text(percent)}{NBSP}%"
