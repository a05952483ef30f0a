"""What a swatch says, told to a maker: growth and its error, heights and widths, and what to measure on the way."""

from __future__ import annotations

from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.gauge import row_height_cm, stitch_width, width_line
from motifold.render.sizing.model import Checkpoint, GaugeReport
from motifold.render.sizing.reading import in_inches
from motifold.render.sizing.units import one_length
from motifold.render.sizing.width import gauge_of, motif_line

UNEVEN = 0.25
"""A measured width this far from the line, in rounds' growth, is likelier mismeasured than crocheted (our own judgement)."""


def gauge_report(pattern: Pattern) -> GaugeReport | None:
    """None where the pattern has no gauge, or one that measures nothing."""
    gauge = gauge_of(pattern)
    if gauge is None:
        return None
    line, row, stitch = width_line(gauge), row_height_cm(gauge), stitch_width(gauge)
    if line is None and row is None and stitch is None:
        return None
    measured = line is not None and line.points > 0
    return GaugeReport(
        per_round_cm=line.per_round_cm if line is not None else None,
        start_cm=line.start_cm if line is not None else None,
        error_cm=line.error_cm if line is not None and line.points > 1 else None,
        points=line.points if line is not None else 0,
        row_cm=row,
        stitch_cm=stitch,
        after_wash=gauge.after_wash or 1.0,
        estimate=gauge.estimate and not measured and not (pattern.gauge is not None and (pattern.gauge.stitches or pattern.gauge.rows)),
    )


def checkpoints(pattern: Pattern, motif: MotifSource, rounds: int) -> tuple[Checkpoint, ...]:
    """Two widths to check while a motif of six rounds or more grows, one from four on: about a third and two thirds of the way.

    Nothing for rows, nor where the swatch is guessed.
    """
    line = motif_line(pattern, motif)
    gauge = gauge_of(pattern)
    if line is None or gauge is None or motif.worked != "rounds" or gauge.estimate or rounds < 4:
        return ()
    at = (rounds // 3, 2 * rounds // 3) if rounds >= 6 else (rounds - 2,)
    wash = gauge.after_wash or 1.0
    return tuple(Checkpoint(n, line.at(n), line.at(n) / wash) for n in at if line.at(n) > 0)


def gauge_doubts(pattern: Pattern) -> tuple[Problem, ...]:
    """A warning where the measured rounds do not lie on a line."""
    gauge = pattern.gauge
    line = width_line(gauge) if gauge is not None else None
    if gauge is None or line is None or line.points < 3 or line.per_round_cm <= 0 or line.error_cm <= UNEVEN * line.per_round_cm:
        return ()
    imperial = in_inches(pattern)
    message = (
        f"the measured rounds do not grow evenly: they lie up to {one_length(line.error_cm, imperial)} from a line of which a round adds "
        f"{one_length(line.per_round_cm, imperial)}"
    )
    hint = "measure them again, flat and from side to side; is one of the numbers mistyped?"
    return (Problem("gauge-uneven", "warning", pattern.place("gauge", "points"), message, hint),)
