"""The designer's swatch: how wide the work is after so many rounds, how high a row, how wide a stitch. All lengths in cm.

Width grows by the same amount with every round (each adds one stitch height at either side), so a swatch is a straight line.
"""

from __future__ import annotations

from motifold.render.pattern.model import Gauge, GaugePoint
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class WidthLine:
    """Width after r rounds: ``start_cm + per_round_cm * r``.

    ``error_cm`` is the largest distance of a measured point from the line (0 with a single point: nothing to compare),
    ``points`` how many were measured.
    """

    start_cm: float
    per_round_cm: float
    error_cm: float
    points: int

    def at(self, rounds: float) -> float:
        return self.start_cm + self.per_round_cm * rounds


def width_line(gauge: Gauge) -> WidthLine | None:
    """The line through the measured rounds; None where the gauge measures no width.

    One measured round count: in proportion to the rounds. Two or more: least squares. Rows and height alone: a round adds a row at
    either side.
    """
    points = tuple(p for p in gauge.points if p.rounds >= 1 and p.width_cm > 0)
    wash = gauge.after_wash or 1.0
    if not points:
        height = row_height_cm(gauge)
        return None if height is None else WidthLine(0.0, 2 * height, 0.0, 0)
    start, slope = _least_squares(points) if len({p.rounds for p in points}) > 1 else _proportional(points)
    error = max(abs(start + slope * p.rounds - p.width_cm) for p in points)
    return WidthLine(start * wash, slope * wash, 0.0 if len(points) == 1 else error * wash, len(points))


def _proportional(points: tuple[GaugePoint, ...]) -> tuple[float, float]:
    return 0.0, sum(p.width_cm for p in points) / len(points) / points[0].rounds


def _least_squares(points: tuple[GaugePoint, ...]) -> tuple[float, float]:
    mean_r = sum(p.rounds for p in points) / len(points)
    mean_w = sum(p.width_cm for p in points) / len(points)
    slope = sum((p.rounds - mean_r) * (p.width_cm - mean_w) for p in points) / sum((p.rounds - mean_r) ** 2 for p in points)
    return mean_w - slope * mean_r, slope


def width_after(gauge: Gauge, rounds: int) -> float | None:
    """Width in cm, side to side or over the diameter, after this many rounds; None where the gauge does not say."""
    line = width_line(gauge)
    return None if line is None else max(line.at(rounds), 0.0)


def stitch_width(gauge: Gauge) -> float | None:
    """Width in cm of one stitch, from ``stitches`` over ``width``."""
    if not gauge.stitches or not gauge.width_cm:
        return None
    return gauge.width_cm / gauge.stitches * (gauge.after_wash or 1.0)


def row_height_cm(gauge: Gauge | None) -> float | None:
    """Height in cm of one row, from ``rows`` over ``height``."""
    if gauge is None or not gauge.rows or not gauge.height_cm:
        return None
    return gauge.height_cm / gauge.rows * (gauge.after_wash or 1.0)
