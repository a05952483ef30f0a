"""What fits whom, and how much yarn it takes."""

from __future__ import annotations

from collections.abc import Mapping

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Fit:
    """One round count tried on one body. ``ease_pct`` is girth over body, in percent (2.5 for 2.5 %)."""

    rounds: int
    width_cm: float
    girth_cm: float
    ease_cm: float
    ease_pct: float
    within: bool


@dataclass(frozen=True, slots=True)
class Closer:
    """A change that would come closer: ``change`` says which ("hook", "rounds", "plain round", "across"); ``reason`` a sentence."""

    change: str
    reason: str
    girth_cm: float
    ease_pct: float
    within: bool
    detail: Mapping[str, str | float | int]


@dataclass(frozen=True, slots=True)
class BodyFit:
    name: str
    body_cm: float
    source: str | None          # where a table's value comes from
    chosen: Fit | None
    fits: tuple[Fit, ...]
    closer: tuple[Closer, ...]
    band_cm: tuple[float, float] | None = None   # what a table says of nearly all bodies of that kind: see ``source``
    caution: str | None = None                   # what a reader of that table must know
    hook_scale: float | None = None              # the hook that would bring the best count to the middle of the ease, over the swatch's


@dataclass(frozen=True, slots=True)
class GaugeReport:
    """What the swatch says. ``error_cm``: the largest distance of a measured width from the line; None: nothing to compare.

    ``per_round_cm``: width that a round adds; ``row_cm`` and ``stitch_cm``: height of a row, width of a stitch.
    """

    per_round_cm: float | None
    start_cm: float | None
    error_cm: float | None
    points: int
    row_cm: float | None
    stitch_cm: float | None
    after_wash: float
    estimate: bool


@dataclass(frozen=True, slots=True)
class Checkpoint:
    """What the motif measures on the way: after this round, as it comes off the hook and once washed and blocked."""

    round: int
    width_cm: float
    unblocked_cm: float


@dataclass(frozen=True, slots=True)
class SizeTable:
    measure: str
    bodies: tuple[BodyFit, ...]
    gauge: GaugeReport | None = None


@dataclass(frozen=True, slots=True)
class SizeChoice:
    """How many rounds one size works in each motif. ``index`` picks from the brackets of the text."""

    name: str
    index: int
    rounds: Mapping[str, int | None]   # None: as many as the text has


@dataclass(frozen=True, slots=True)
class YarnNeed:
    """One yarn in one size: metres, grams and balls with the margin; ``parts`` in metres without it.

    ``grams`` and ``balls`` are None where the label does not say. ``estimate``: not calibrated on a weighed swatch.
    """

    yarn: str
    metres: float
    grams: float | None
    balls: int | None
    estimate: bool
    parts: Mapping[str, float]  # motifs, seams, edging, tails
    left_grams: float | None = None     # what is left of the whole balls, the margin used up
    left_metres: float | None = None
