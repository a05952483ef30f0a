"""How wide each motif of a pattern is: as measured, else from the measured one by the heights of their stitches."""

from __future__ import annotations

from math import pi

from motifold.render.assembly.shapes import corners_of_whole, cut_and_depth, names_half
from motifold.render.fabric.model import Fabric, Round
from motifold.render.pattern.model import Gauge, MotifSource, Pattern
from motifold.render.sizing.bent import is_mitered, side_of_mitered_cm
from motifold.render.sizing.gauge import WidthLine, row_height_cm, stitch_width, width_line
from motifold.render.sizing.loops import height_in_widths
from motifold.render.sizing.reading import mean_height, sized_motif

_SC_IN_10_CM = {0: 37.0, 1: 26.5, 2: 18.0, 3: 14.5, 4: 12.5, 5: 9.5, 6: 7.5, 7: 5.0}
"""Single crochet over 4 in (10 cm) by yarn weight, middle of the range: Craft Yarn Council yarn weight system (as repeated second-hand,
2014 and later). Used only where a pattern asks for an estimate."""

_ROUND_ROWS = {"rounds": 2.0, "rows": 1.0}
"""Stitch heights that one round, and one row, adds to the measure."""


def gauge_of(pattern: Pattern) -> Gauge | None:
    """The pattern's gauge; where it asks for an estimate and measures nothing, stitches and rows guessed from its yarn's weight."""
    gauge = pattern.gauge
    if gauge is None or not gauge.estimate or gauge.points or gauge.stitches or gauge.rows:
        return gauge
    weight = next((yarn.weight for yarn in pattern.yarns if yarn.weight is not None), None)
    if weight not in _SC_IN_10_CM:
        return gauge
    stitches = _SC_IN_10_CM[weight]
    motif = next((m for m in pattern.motifs if m.name == gauge.motif), pattern.motifs[0] if pattern.motifs else None)
    height = (mean_height(motif) if motif else None) or height_in_widths("sc")
    return Gauge(gauge.motif, (), gauge.grams, gauge.grams_rounds, stitches, 10.0, stitches / height, 10.0, gauge.after_wash, True)


def motif_line(pattern: Pattern, motif: MotifSource) -> WidthLine | None:
    """The motif's growth by round (worked in rounds: across; in rows: up, by row). None where nothing measures it.

    Half a motif that is worked in rows from the middle of its cut grows away from there: its depth.
    """
    half = half_of(motif)
    line = _line(pattern, motif) if half is None else _apothem(pattern, motif, half)
    return line if line is None or half is None else _times(line, half[1])


def half_of(motif: MotifSource) -> tuple[float, float] | None:
    """Cut and depth of half a motif worked in rows, for an apothem of 1; None for anything else."""
    if motif.worked != "rows" or not names_half(motif.shape):
        return None
    return cut_and_depth(corners_of_whole(motif.shape, motif.sides))


def _apothem(pattern: Pattern, motif: MotifSource, half: tuple[float, float]) -> WidthLine | None:
    """From the middle of the cut square to the whole sides, by row; a swatch of the half itself is measured along its cut."""
    line, gauge = _line(pattern, motif), pattern.gauge
    own = gauge is not None and gauge.points and gauge.motif in (motif.name, None) and row_height_cm(gauge) is None
    return _times(line, 1 / half[0]) if line is not None and own else line


def _times(line: WidthLine, factor: float) -> WidthLine:
    return WidthLine(line.start_cm * factor, line.per_round_cm * factor, line.error_cm * factor, line.points)


def _line(pattern: Pattern, motif: MotifSource) -> WidthLine | None:
    gauge = gauge_of(pattern)
    if gauge is None:
        return None
    if motif.worked == "rows":
        height = row_height_cm(gauge)
        if height is not None:
            return WidthLine(0.0, height, 0.0, 0)
    line = width_line(gauge)
    measured = next((m for m in pattern.motifs if m.name == gauge.motif), None)
    if line is None or not gauge.points or measured is None or measured.name == motif.name:
        return line
    ours, theirs = mean_height(motif), mean_height(measured)
    ratio = ours / theirs if ours and theirs else 1.0
    up = _ROUND_ROWS[motif.worked] / _ROUND_ROWS[measured.worked]
    return WidthLine(line.start_cm * up, line.per_round_cm * ratio * up, line.error_cm, line.points)


def motif_width_cm(pattern: Pattern, fabric: Fabric) -> float | None:
    """Width of a worked motif, side to side (rows: along its widest; half a motif: its cut). None where the gauge does not say."""
    gauge = gauge_of(pattern)
    motif = next((m for m in pattern.motifs if m.name == fabric.name), None)
    if gauge is None or motif is None:
        return None
    half = half_of(motif)
    if half is not None:
        line = _apothem(pattern, motif, half)
        rows = max((r.number or 0 for r in fabric.rounds), default=0)
        return half[0] * line.at(rows) if line is not None and rows else None
    if motif.worked == "rows":
        across = _stitch_across(gauge, motif)
        worked = [r for r in fabric.rounds if r.kind == "row"]
        if worked and is_mitered(fabric):
            rows_cm = motif_line(pattern, motif)
            return side_of_mitered_cm(fabric, across, rows_cm.at(len(worked))) if across is not None and rows_cm is not None else None
        return across * max(_stitches_along(fabric, row) for row in worked) if across is not None and worked else None
    line = motif_line(pattern, motif)
    rounds = max((r.number or 0 for r in fabric.rounds), default=0)
    if line is None or rounds < 1:
        return None
    flat = max(line.at(rounds), 0.0)
    if motif.sides:
        return flat
    widest = _widest_of_a_ball(fabric)
    if widest is None:
        return _laid_flat(gauge, motif, fabric, flat)
    return _across_a_ball(gauge, motif, widest, max(line.at(widest.number or 1), 0.0))


def motif_height_cm(pattern: Pattern, fabric: Fabric) -> float | None:
    """How long a motif is that is worked in rows, or how deep half a motif; None for rounds, or where no row is measured."""
    motif = next((m for m in pattern.motifs if m.name == fabric.name), None)
    if motif is None or motif.worked != "rows":
        return None
    if half_of(motif) is None and is_mitered(fabric):
        return motif_width_cm(pattern, fabric)
    line = motif_line(pattern, motif)
    rows = sum(one.kind == "row" for one in fabric.rounds)
    return line.at(rows) if line is not None and rows else None


def _stitches_along(fabric: Fabric, row: Round) -> int:
    """How many stitches wide a row is: a stitch for each stitch and for each chain of its spaces, those inside its V-stitches too."""
    along = sum(fabric.runs[item.id].chains if item.kind == "space" else 1 for item in row.edge)
    return max(along, row.met)


_CUPPED = 0.7
"""Below this share of a flat circle's edge the stitches pull the work into a bowl, a tube or a ball (flat ones vary by a sixth)."""


def _laid_flat(gauge: Gauge, motif: MotifSource, fabric: Fabric, flat_cm: float) -> float:
    """Width of round work laid flat: of a disc its diameter; of a bowl or a tube, whose edge is too short for that, half its girth.

    Lace is taken as lying flat: its chains give.
    """
    across = _stitch_across(gauge, motif)
    rounds = [r for r in fabric.rounds if r.kind == "round" and r.met]
    laced = not rounds or any(item.kind == "space" for item in rounds[-1].edge)
    if across is None or laced or rounds[-1].met * across >= _CUPPED * pi * flat_cm:
        return flat_cm
    return min(flat_cm, across * max(r.met for r in rounds) / 2)


def _widest_of_a_ball(fabric: Fabric) -> Round | None:
    """The first of the widest rounds of what grows and then closes again, to half as many stitches or fewer; None for anything else."""
    rounds = [r for r in fabric.rounds if r.kind == "round" and r.met]
    widest = max(rounds, key=lambda r: r.met, default=None)
    if widest is None or rounds[-1].met > widest.met / 2:
        return None
    closing = rounds[rounds.index(widest) :]
    return None if any(item.kind == "space" for r in closing for item in r.edge) else widest


def _across_a_ball(gauge: Gauge, motif: MotifSource, widest: Round, flat_cm: float) -> float:
    """As wide as its widest round lies flat, or as that round's girth makes it where its stitches hold it in."""
    across = _stitch_across(gauge, motif)
    return flat_cm if across is None else min(flat_cm, widest.met * across / pi)


def _stitch_across(gauge: Gauge, motif: MotifSource) -> float | None:
    """Width of a stitch, measured; where only rounds or rows are: their height over the height of the stitch in widths."""
    measured = stitch_width(gauge)
    if measured is not None:
        return measured
    line, height = width_line(gauge), mean_height(motif)
    rows = row_height_cm(gauge) or (line.per_round_cm / 2 if line else None)
    return rows / height if rows and height else None


def width_of_a_stitch(pattern: Pattern) -> float | None:
    """In cm: measured, or the height of the gauge's rounds over the height of their stitches in widths."""
    gauge = gauge_of(pattern)
    if gauge is None:
        return None
    measured = stitch_width(gauge)
    if measured is not None:
        return measured
    line = width_line(gauge)
    motif = next((m for m in pattern.motifs if m.name == gauge.motif), None) or sized_motif(pattern)
    height = mean_height(motif) if motif is not None else None
    if line is None or motif is None or not height or line.per_round_cm <= 0:
        return None
    return line.per_round_cm / (2 if motif.worked == "rounds" else 1) / height
