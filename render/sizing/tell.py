"""Sentences about sizes that more than one output prints: what the swatch says, whom a size fits, how edgings lie."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import ceil
from typing import Protocol

from motifold.render.assembly.model import Assembly
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Pattern
from motifold.render.sizing.choices import ColourOrder, OtherBall
from motifold.render.sizing.edges import EdgingFit, ratio_text
from motifold.render.sizing.hooks import hook_text
from motifold.render.sizing.model import BodyFit, Checkpoint, YarnNeed
from motifold.render.sizing.naming import measured_as
from motifold.render.sizing.own import own_of, pattern_of_size, reckoned_by_hook
from motifold.render.sizing.piece import edging_fits
from motifold.render.sizing.reading import in_inches, sized_motif
from motifold.render.sizing.report import gauge_report
from motifold.render.sizing.units import NBSP, length_text, number_text, one_length, swatch_text


class Piece(Protocol):
    """What is worked for one size, as far as its edgings need it."""

    @property
    def fabrics(self) -> Mapping[str, Fabric]: ...
    @property
    def widths_cm(self) -> Mapping[str, float | None]: ...
    @property
    def assembly(self) -> Assembly | None: ...
    @property
    def edgings(self) -> Mapping[str, Fabric]: ...


def gauge_lines(pattern: Pattern) -> list[str]:
    """What a round adds and how well that is known; heights of rows, widths of stitches; what washing changes."""
    report, imperial = gauge_report(pattern), in_inches(pattern)
    if report is None:
        return []
    lines = []
    motif = sized_motif(pattern)
    if report.points and report.per_round_cm is not None and motif is not None and motif.worked == "rounds":
        text = f"A round adds {one_length(report.per_round_cm, imperial)} to the width"
        if report.error_cm is None:
            text += ", by one measured swatch"
        elif report.points == 2:
            text += ", by two measured widths"
        else:
            off = one_length(report.error_cm, imperial)
            evenly = "lie on a line" if off.startswith("0\N{NO-BREAK SPACE}") else f"lie within {off} of a line"
            text += f", by {report.points} measured widths that {evenly}"
        lines.append(text + ".")
    if report.estimate:
        lines.append("Estimated from the yarn's weight: nothing was measured. A real swatch may differ by a quarter.")
    elif report.stitch_cm is not None or report.row_cm is not None:
        length = 10.16 if imperial else 10.0
        parts = []
        if report.stitch_cm is not None:
            parts.append(f"{number_text(length / report.stitch_cm)} stitches")
        if report.row_cm is not None:
            parts.append(f"{number_text(length / report.row_cm)} rows")
        lines.append(f"{' and '.join(parts)} to {'4 in (10 cm)' if imperial else '10 cm (4 in)'}.")
    if report.after_wash != 1:
        change = 100 * (report.after_wash - 1)
        way = "smaller" if change < 0 else "larger"
        lines.append(f"Measured before washing; all widths are as washed, {number_text(abs(change))}{NBSP}% {way}.")
    return lines


def body_lines(pattern: Pattern, body: BodyFit, imperial: bool) -> list[str]:
    """The body with its source, and what its size has of its own."""
    lines = [f"{body.name}: {length_text(body.body_cm, imperial)}"]
    if body.source:
        band = ""
        if body.band_cm is not None:
            low, high = (one_length(cm, imperial) for cm in body.band_cm)
            band = f": {low} to {high}"
        lines.append(f"  {body.source}{band}.")
    if body.caution:
        lines.append(f"  Caution: {body.caution}.")
    own = own_of(pattern, body.name)
    if own is not None:
        said = []
        if own.across is not None:
            motif, measure = sized_motif(pattern), pattern.size.measure if pattern.size is not None else ""
            round_it = motif is None or measured_as(pattern, motif, measure, opens=True) == "girth"
            said.append(f"{number_text(own.across)} motifs {'around' if round_it else 'across'}")
        if own.hook is not None:
            said.append(f"a {hook_text(float(own.hook.cm) * 10)} hook")
        if own.gauge is not None:
            said.append("a swatch of its own")
        if own.assembly is not None:
            said.append("a net of its own")
        said += [f"{rounds} round{'s' if rounds != 1 else ''} of the {name}" for name, rounds in own.edgings.items()]
        if said:
            lines.append(f"  With {', '.join(said[:-1])}{' and ' if said[1:] else ''}{said[-1]}.")
        if reckoned_by_hook(pattern, body.name):
            lines.append("  An estimate, in proportion to the hook: no swatch with it was measured.")
    return lines


def checkpoint_text(points: Sequence[Checkpoint], imperial: bool) -> str:
    """"On the way: 4.8 cm after round 3 (5 cm before washing).\""""
    said = []
    for point in points:
        text = f"{swatch_text(point.width_cm, imperial)} after round {point.round}"
        if abs(point.unblocked_cm - point.width_cm) > 0.05:
            text += f" as washed, {one_length(point.unblocked_cm, imperial)} off the hook"
        said.append(text)
    return f"On the way the motif measures {' and '.join(said)}." if said else ""


def edging_lines(pattern: Pattern, sizes: Iterable[tuple[str, Piece]]) -> list[str]:
    """How each edging lies in each size; sizes in which it lies alike are told together where their numbers are the same."""
    told: list[tuple[str, str]] = []
    pairs = list(sizes)
    for name, size in pairs:
        own = pattern_of_size(pattern, name)
        fits = edging_fits(own, size.fabrics, size.widths_cm, size.assembly, size.edgings)
        told += [(name, _edging_text(fit, in_inches(pattern))) for fit in fits]
    return together(told, [name for name, _ in pairs])


def _edging_text(fit: EdgingFit, imperial: bool) -> str:
    text = (
        f"{fit.name}: {fit.stitches} stitches measure {one_length(fit.width_cm, imperial)} along {one_length(fit.girth_cm, imperial)}, and "
    )
    if fit.lies == "flat":
        return f"{text}lie flat."
    verb = "flare" if fit.lies == "flares" else "draw it in"
    return f"{text}{verb}; to lie flat, {ratio_text(fit)}."


PARTS = (("motifs", "motifs"), ("seams", "seams"), ("edging", "edging"), ("tails", "ends"))
"""What yarn goes into, and how its column is headed."""


def parts_row(need: YarnNeed) -> list[str]:
    """Metres of each of ``PARTS``, "–" where none goes there."""
    return [_metres(need.parts[part]) if need.parts.get(part) else "–" for part, _ in PARTS]


def _metres(metres: float) -> str:
    """Whole metres, at least one: less would be false precision."""
    return f"{max(round(metres), 1)}{NBSP}m"


def other_text(other: OtherBall) -> str:
    """"of a yarn of 125 m to 50 g, 3 balls (120 g)"."""
    label = other.label
    length = f"{number_text(float(label.length.value))}{NBSP}{label.length.unit}"
    mass = f"{number_text(float(label.mass.value))}{NBSP}{label.mass.unit}"
    balls = f"{other.balls}{NBSP}ball{'' if other.balls == 1 else 's'}"
    return f"of a yarn of {length} to {mass}, {balls} ({ceil(round(other.grams, 6))}{NBSP}g worked)"


def order_text(order: ColourOrder, names: Mapping[str, str]) -> str:
    """Which of two yarns that take turns goes further, and what beginning with the other would change."""
    first, second = names.get(order.first, order.first), names.get(order.second, order.second)
    more, less = (second, first) if order.less == order.first else (first, second)
    apart = abs(order.metres[0] - order.metres[1])
    if apart < 0.05 * sum(order.metres):
        return f"Begun with {first}, both yarns take about the same."
    text = f"Begun with {first}, less is needed of {less} than of {more}, by {_metres(apart)}"
    swapped = f"{_metres(order.swapped[0])} of {first} and {_metres(order.swapped[1])} of {second}"
    text += f"; begun with {second}, it would be {swapped}"
    if order.balls is not None and order.balls[0] != order.balls[1]:
        text += f", {order.balls[1]} balls in all instead of {order.balls[0]}"
    return text + "."


def together(told: Iterable[tuple[str, str]], sizes: Sequence[str]) -> list[str]:
    """(size, sentence) pairs as lines: what holds for all sizes without their names, what holds for some after them."""
    found: dict[str, list[str]] = {}
    for size, text in told:
        found.setdefault(text, []).append(size)
    return [text if len(names) == len(sizes) else f"{', '.join(names)}: {text}" for text, names in found.items()]
