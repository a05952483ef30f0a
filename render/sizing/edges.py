"""Whether an edging lies flat: its stitches at their gauge, against the edge that it is worked along. Lengths in cm."""

from __future__ import annotations

from fractions import Fraction
from math import pi, tan
from typing import Literal

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import EdgingSource, Gauge, Pattern
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.gauge import row_height_cm, stitch_width
from motifold.render.sizing.loops import height_in_widths
from motifold.render.sizing.reading import in_inches, tallest
from motifold.render.sizing.units import one_length
from motifold.symbols.record import dataclass

Lies = Literal["flat", "flares", "draws in"]

OWN_TOLERANCE = 0.08
"""What an edge gives or takes up unseen, where the edging itself was measured (our own judgement)."""
COMMON_TOLERANCE = 0.2
"""The same where only the main swatch was: stitches of other kinds differ in width by that much (published gauge lines of 2020 to 2023)."""


@dataclass(frozen=True, slots=True)
class EdgingFit:
    """The first round of an edging: ``stitches`` along it (a chain of a space is one too), ``places`` of the edge (a space is one).

    ``girth_cm``: the edge; ``width_cm``: what the stitches measure; ``flat``: how many would lie flat; ``ratio``: (stitches, places) that
    would, in small numbers; ``own``: the edging has its own gauge.
    """

    name: str
    stitches: int
    places: int
    girth_cm: float
    width_cm: float
    flat: int
    ratio: tuple[int, int]
    lies: Lies
    own: bool


def edging_fit(pattern: Pattern, edging: EdgingSource, fabric: Fabric, girth_cm: float | None, corners: int | None) -> EdgingFit | None:
    """None where the edge or the stitches are not measured.

    ``corners``: of the motif that the edging goes around (0: a circle), where its first round lies a little outside the edge; None for an
    opening.
    """
    gauge = edging.gauge or pattern.gauge
    width = stitch_width(gauge) if gauge is not None else None
    first = next((r for r in fabric.rounds if r.kind == "round" and r.number is not None), None)
    if width is None or not girth_cm or first is None:
        return None
    places = next((max(len(r.edge), r.met) for r in fabric.rounds if r.kind == "edge"), 0)
    along = sum(fabric.runs[item.id].chains if item.kind == "space" else 1 for item in first.edge)
    stitches = max(along, first.met)
    if not places or not stitches:
        return None
    girth = girth_cm + _outside(corners) * _height(edging, gauge, width)
    flat = max(round(girth / width), 1)
    ratio = Fraction(flat, places).limit_denominator(10)  # a ratio that can be counted while working
    tolerance = OWN_TOLERANCE if edging.gauge is not None else COMMON_TOLERANCE
    share = stitches * width / girth
    lies: Lies = "flares" if share > 1 + tolerance else "draws in" if share < 1 - tolerance else "flat"
    return EdgingFit(
        edging.name, stitches, places, girth, stitches * width, flat, (ratio.numerator, ratio.denominator), lies, edging.gauge is not None
    )


def _outside(corners: int | None) -> float:
    """How much longer the middle of the first round is than the edge, in heights of the round: n tan(pi / n); pi round a circle."""
    if corners is None:
        return 0.0
    return pi if corners < 3 else corners * tan(pi / corners)


def _height(edging: EdgingSource, gauge: Gauge | None, width: float) -> float:
    own = row_height_cm(gauge) if edging.gauge is not None else None
    first = next((found for line in edging.instructions.lines if line.label.first is not None and (found := tallest(line))), None)
    return own or width * (first[1] if first else height_in_widths("sc"))


def edging_problem(pattern: Pattern, edging: EdgingSource, fit: EdgingFit) -> Problem | None:
    """A warning where the edging flares or draws in, with the number of stitches that would lie flat."""
    if fit.lies == "flat":
        return None
    imperial = in_inches(pattern)
    why = "measure" if fit.own else "measure, at the main gauge,"
    message = (
        f'the edging "{fit.name}" {fit.lies}: its {fit.stitches} stitches {why} {one_length(fit.width_cm, imperial)} '
        f"along an edge of {one_length(fit.girth_cm, imperial)}"
    )
    return Problem("edging-fit", "warning", pattern.place("edging", edging.name, "rounds"), message, f"to lie flat: {ratio_text(fit)}")


def ratio_text(fit: EdgingFit) -> str:
    """"about 108 stitches, 9 for every 10 of the edge"."""
    made, of = fit.ratio
    if made == 0:
        return f"about {fit.flat} stitches"
    each = "one for each stitch or space of the edge" if (made, of) == (1, 1) else f"{made} for every {of} stitches and spaces of the edge"
    return f"about {fit.flat} stitches, {each}"
