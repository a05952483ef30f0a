"""Quantities as a pattern writes them: "12.5 cm", "5 1/8 in", "13 g", "110 m / 50 g", "-8 % to 0 %".

A small grammar of our own. Text from the file never reaches an expression parser.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact number and its unit, as written: unit one of mm cm m in ft yd g kg oz lb %, or "" for none."""

    value: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class PerLength:
    """``110 m / 50 g``: a length of yarn and its mass."""

    length: Quantity
    mass: Quantity


@dataclass(frozen=True, slots=True)
class Range:
    """``-8 % to 0 %``: both ends in the same kind of unit, low first."""

    low: Quantity
    high: Quantity
