"""How lengths are rounded where they are printed: one way, so that words, tables and drawings cannot disagree."""

from __future__ import annotations

from math import copysign, floor


def tenths(value: float) -> str:
    """To one decimal, halves away from zero, whatever the last binary digit of the number.

    >>> tenths(15.05), tenths(2.15), tenths(-0.04), tenths(-0.25)
    ('15.1', '2.2', '0.0', '-0.3')
    """
    rounded = floor(abs(value) * 10 + 0.5 + 1e-6) / 10
    return f"{copysign(rounded, value) if rounded else 0.0:.1f}"
