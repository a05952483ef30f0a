"""Amounts of yarn as they are printed, everywhere alike: always up, so that nobody runs short."""

from __future__ import annotations

from math import ceil

from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.units import convert
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Amounts:
    """What one yarn in one size is said to take: whole metres, yards and grams, ounces to a tenth; None where the label doesn't say."""

    metres: int
    yards: int
    grams: int | None
    ounces: float | None
    balls: int | None


def printed_amounts(need: YarnNeed) -> Amounts:
    """Metres and grams up to the next whole one; yards and ounces hold those metres and grams, up again: 10 m are 11 yd."""
    metres = whole_up(need.metres)
    grams = None if need.grams is None else whole_up(need.grams)
    ounces = None if grams is None else whole_up(convert(grams, "g", "oz") * 10) / 10
    return Amounts(metres, whole_up(convert(metres, "m", "yd")), grams, ounces, need.balls)


def whole_up(value: float) -> int:
    """To the next whole number; what is whole but for rounding stays."""
    return ceil(round(value, 6))
