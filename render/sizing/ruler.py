"""From rounds to girth, and which girths a body's ease allows. Lengths in cm."""

from __future__ import annotations

from math import pi

from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.pattern.quantity import Quantity, Range
from motifold.render.sizing.gauge import WidthLine
from motifold.render.sizing.model import Fit
from motifold.render.sizing.reading import ends_by_measure, grows, last_labelled
from motifold.render.sizing.width import motif_line
from motifold.symbols.record import dataclass

MOST_ROUNDS = 400
"""No motif is worked further than this: it bounds what a slip in a measurement can cost."""
_TINY = 1e-9
_GIRTHS = ("girth", "circumference", "round", "head", "hand", "wrist", "ankle", "waist", "chest", "bust")
"""Words of a measure that goes round something; a circle's edge is what goes round it (a crown is as wide as the head over pi)."""


@dataclass(frozen=True, slots=True)
class Ruler:
    """Girth after r rounds: ``across`` times the motif's width and what a seam adds to each. ``most``: rounds that the text has."""

    line: WidthLine
    across: float
    adds_cm: float
    most: int

    def width(self, rounds: float) -> float:
        return self.line.at(rounds)

    def girth(self, rounds: float) -> float:
        return self.across * (self.width(rounds) + self.adds_cm)

    def rounds_for(self, girth_cm: float) -> float:
        """The (fractional) number of rounds with this girth."""
        return (girth_cm / self.across - self.adds_cm - self.line.start_cm) / self.line.per_round_cm


@dataclass(frozen=True, slots=True)
class Ease:
    """Finished girth less the body, allowed from ``low`` to ``high``: shares of the body (``share``) or cm; ``limits``: any is given."""

    low: float = 0.0
    high: float = 0.0
    share: bool = True
    limits: bool = False

    def bounds(self, body_cm: float) -> tuple[float, float]:
        """The smallest and largest girth allowed."""
        scale = body_cm if self.share else 1.0
        return body_cm + self.low * scale, body_cm + self.high * scale

    def aim(self, body_cm: float) -> float:
        """The girth in the middle of what is allowed; the body itself where nothing is said."""
        low, high = self.bounds(body_cm)
        return (low + high) / 2

    def allows(self, girth_cm: float, body_cm: float) -> bool:
        low, high = self.bounds(body_cm)
        return not self.limits or low - _TINY <= girth_cm <= high + _TINY


def read_ease(ease: Range | None) -> Ease:
    if ease is None:
        return Ease()
    share = ease.low.unit in ("%", "") and ease.high.unit in ("%", "")
    return Ease(_ease(ease.low), _ease(ease.high), share, True)


def _ease(quantity: Quantity) -> float:
    if quantity.unit == "%":
        return float(quantity.fraction)
    return float(quantity.cm) if quantity.kind == "length" else float(quantity.value)


def ruler_for(pattern: Pattern, motif: MotifSource) -> Ruler | None:
    """How the girth grows with the rounds of a motif; None where the gauge does not measure that, or measures no growth."""
    line = motif_line(pattern, motif)
    if line is None or line.per_round_cm <= 0:
        return None
    adds = pattern.assembly.seam.adds_cm if pattern.assembly is not None else 0.0
    most = MOST_ROUNDS if grows(motif) or ends_by_measure(motif) else min(last_labelled(motif) or MOST_ROUNDS, MOST_ROUNDS)
    return Ruler(line, motifs_across(pattern, motif), adds, most)


def motifs_across(pattern: Pattern, motif: MotifSource) -> float:
    """How often the motif's width goes into the measure: as the pattern says, else once; pi for the edge of a lone circle."""
    plan = pattern.size
    if plan is not None and plan.across is not None and plan.across > 0:
        return float(plan.across)
    goes_round = plan is not None and any(word in plan.measure.lower() for word in _GIRTHS)
    return pi if goes_round and motif.shape == "circle" and pattern.assembly is None else 1.0


def fit(rounds: int, width_cm: float, girth_cm: float, body_cm: float, ease: Ease) -> Fit:
    excess = girth_cm - body_cm
    return Fit(rounds, width_cm, girth_cm, excess, 100 * excess / body_cm, ease.allows(girth_cm, body_cm))


def fit_of(ruler: Ruler, rounds: int, body_cm: float, ease: Ease) -> Fit:
    return fit(rounds, ruler.width(rounds), ruler.girth(rounds), body_cm, ease)


def off(fit_cm: float, aim_cm: float) -> float:
    """Distance from the aim, rounded so that two sides of a tie are one."""
    return round(abs(fit_cm - aim_cm), 9)


def nearest_rounds(ruler: Ruler, aim_cm: float) -> int:
    """The round count whose girth comes nearest, ties to the smaller; within 1 and what the text has."""
    wanted = ruler.rounds_for(aim_cm)
    low = int(min(max(wanted, 1.0), float(ruler.most)))
    around = [r for r in (low, low + 1) if 1 <= r <= ruler.most]
    return min(around, key=lambda r: (off(ruler.girth(r), aim_cm), r))
