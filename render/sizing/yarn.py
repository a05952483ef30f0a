"""How much of each yarn a size takes: motifs, seams, edging and tails, with a margin.

Lengths are first counted in stitch widths by the model in ``loops``; one number turns them into centimetres. A swatch that was
weighed gives it (its grams, by the label's metres for grams, are its yarn); without one it is the width of a stitch, and the result
is marked as an estimate.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from math import ceil

from motifold.render.assembly.model import Assembly
from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.pattern.model import Pattern, Yarn
from motifold.render.sizing.colourways import Batch, batches, in_colourway, place_colourways
from motifold.render.sizing.loops import DEFAULT_DIAMETER, stem_length, stitch_length, top_loop, yarn_diameter_cm
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.reading import last_stitch, sized_motif
from motifold.render.sizing.width import gauge_of, width_of_a_stitch
from motifold.symbols.record import dataclass

MARGIN = 0.10
"""Share added to what is worked where the pattern says none, for a looser hand and joins; stated wherever amounts are printed."""
TAIL_CM = 15.0
"""Left at each start and end of a yarn, long enough to weave in both ways."""
SEAM_FACTORS = {"slip stitch": 3.0, "single crochet": 5.0, "whip stitch": 2.0, "mattress stitch": 2.0}
"""Yarn for a seam, in lengths of the seam, its tails apart: our own, rounded up."""


@dataclass(frozen=True, slots=True)
class Scale:
    """Centimetres of yarn for one stitch width of the model; ``grams``: grams for one width where no label gives metres for grams."""

    cm: float
    grams: float | None
    diameter: float
    estimate: bool


def yarn_needs(
    pattern: Pattern,
    fabrics: Mapping[str, Fabric],
    assembly: Assembly | None,
    edgings: Mapping[str, Fabric],
    swatch: Fabric | None = None,
    margin: float | None = None,
    scale: Scale | None = None,
) -> tuple[YarnNeed, ...]:
    """Metres, grams and balls of every yarn that one size uses, in the file's order.

    ``swatch`` is the gauge's motif worked for the rounds that were weighed (see ``weighed_swatch``); ``scale`` what it says, where that is
    known. ``margin``: the pattern's own where None. Empty where neither a weight nor a width is measured: nothing is guessed.
    """
    scale = scale or yarn_scale(pattern, swatch)
    if scale is None:
        return ()
    margin = margin_of(pattern) if margin is None else margin
    parts = parts_by_yarn(pattern, fabrics, assembly, edgings, scale)
    used = {yarn for part in parts.values() for yarn, cm in part.items() if cm > 0}
    known = [y for y in pattern.yarns if y.key in used]
    known += [Yarn(key, key) for key in sorted(used - {y.key for y in pattern.yarns})]
    return tuple(_need(yarn, {name: part.get(yarn.key, 0.0) / 100 for name, part in parts.items()}, scale, margin) for yarn in known)


def margin_of(pattern: Pattern) -> float:
    """Yarn to spare, as a share of what is worked."""
    return MARGIN if pattern.materials.margin is None else pattern.materials.margin


def parts_by_yarn(
    pattern: Pattern, fabrics: Mapping[str, Fabric], assembly: Assembly | None, edgings: Mapping[str, Fabric], scale: Scale
) -> Mapping[str, Mapping[str, float]]:
    """Centimetres of each yarn in motifs (each in its colourways), seams, edging and tails, without a margin."""
    copies = motif_copies(fabrics, assembly)
    placing = place_colourways(pattern, assembly)
    sources = {motif.name: motif for motif in pattern.motifs}
    sets = assembly.copies if assembly is not None else 1
    first = pattern.yarns[0].key if pattern.yarns else ""
    parts: dict[str, dict[str, float]] = {name: {} for name in ("motifs", "seams", "edging", "tails")}
    for name, fabric in fabrics.items():
        worked, ends = widths_by_yarn(fabric, scale.diameter, first), ends_by_yarn(fabric, first)
        made = batches(sources[name], copies[name], assembly, placing) if name in sources else (Batch(None, copies[name]),)
        for batch in made:
            _add(parts["motifs"], in_colourway(worked, batch.way), scale.cm * batch.made)
            _add(parts["tails"], in_colourway(ends, batch.way), TAIL_CM * batch.made)
    for fabric in edgings.values():
        _add(parts["edging"], widths_by_yarn(fabric, scale.diameter, first), scale.cm * sets)
        _add(parts["tails"], ends_by_yarn(fabric, first), TAIL_CM * sets)
    if assembly is not None:
        seam_yarn = assembly.yarn or first
        _add(parts["seams"], {seam_yarn: seam_length_cm(assembly, scale)}, SEAM_FACTORS.get(assembly.method, 3.0))
        _add(parts["tails"], {seam_yarn: 2.0 * len(assembly.passes)}, TAIL_CM)
    return parts


def _add(part: dict[str, float], more: Mapping[str, float], times: float) -> None:
    for yarn, amount in more.items():
        part[yarn] = part.get(yarn, 0.0) + amount * times


def _need(yarn: Yarn, parts: Mapping[str, float], scale: Scale, margin: float) -> YarnNeed:
    metres = sum(parts.values()) * (1 + margin)
    grams: float | None = None
    if yarn.length is not None:
        grams = metres / float(yarn.length.metres_per_gram)
    elif scale.grams is not None:
        grams = metres * 100 / scale.cm * scale.grams
    ball = float(yarn.ball.grams) if yarn.ball is not None else float(yarn.length.mass.grams) if yarn.length is not None else None
    balls = ceil(round(grams / ball, 6)) if grams is not None and ball else None
    left = balls * ball - grams if balls is not None and ball and grams is not None else None
    left_metres = left * float(yarn.length.metres_per_gram) if left is not None and yarn.length is not None else None
    return YarnNeed(yarn.key, metres, grams, balls, scale.estimate, parts, left, left_metres)


def motif_copies(fabrics: Mapping[str, Fabric], assembly: Assembly | None) -> Mapping[str, int]:
    """How many of each motif are made: its panels; one of a motif that is no panel."""
    panels = Counter(panel.motif for panel in assembly.panels) if assembly is not None else Counter()
    return {name: panels.get(name, 0) or 1 for name in fabrics}


def seam_length_cm(assembly: Assembly, scale: Scale) -> float:
    """Length of all seams: along the panels' sides where their length is known, else a stitch width for each stitch."""
    sides = {(panel.name, side): cm for panel in assembly.panels for side, cm in zip(panel.sides, panel.sides_cm, strict=False)}
    total = 0.0
    for seam in assembly.seams:
        side_cm = sides.get((seam.a.panel, seam.a.side))
        along = side_cm / seam.a.parts if side_cm is not None and assembly.scaled else seam.stitches * scale.cm
        total += along / 2 if seam.b is None else along
    return total


def widths_by_yarn(fabric: Fabric, diameter: float, first: str) -> Mapping[str, float]:
    """Yarn in the Fabric's stitches, in stitch widths, for each yarn (``first`` stands for a yarn that isn't named)."""
    total: dict[str, float] = {}
    for stitch in fabric.stitches:
        length = _stitch_widths(stitch, diameter)
        if length:
            key = stitch.yarn or first
            total[key] = total.get(key, 0.0) + length
    return total


def _stitch_widths(stitch: Stitch, diameter: float) -> float:
    if stitch.role in ("standing", "given"):
        return 0.0  # its chains are counted; what an edging finds is other work
    if stitch.role == "chain" or not stitch.legs:
        return stitch_length("ch" if stitch.role == "chain" else stitch.kind, diameter)
    stems = sum(stem_length(leg.kind, diameter) for leg in stitch.legs)
    if stitch.gather == "popcorn":  # whole stitches, then one loop that draws them together
        return stems + top_loop(diameter) * (len(stitch.legs) + 1)
    return stems + top_loop(diameter)


def ends_by_yarn(fabric: Fabric, first: str = "") -> Mapping[str, int]:
    """Ends to weave in, for each yarn: one at each start, one where it is fastened off, and one for each that is still there at the end."""
    ends: Counter[str] = Counter()
    going: list[str] = []
    for done in fabric.rounds:
        if done.kind == "edge":
            continue
        yarns = [fabric.stitches[i].yarn or first for i in done.stitches if fabric.stitches[i].role != "given"]
        if done.attached and yarns and yarns[0] in going:
            going.remove(yarns[0])
            ends[yarns[0]] += 1
        for yarn in yarns:
            if yarn not in going:
                going.append(yarn)
                ends[yarn] += 1
        if done.fastened and yarns and yarns[-1] in going:
            going.remove(yarns[-1])
            ends[yarns[-1]] += 1
    ends.update(going)
    return dict(ends)


def yarn_scale(pattern: Pattern, swatch: Fabric | None) -> Scale | None:
    """From the swatch's weight where there is one, else from the width of a stitch; None where neither is measured."""
    gauge = gauge_of(pattern)
    if gauge is None:
        return None
    labelled = [yarn for yarn in pattern.yarns if yarn.length is not None]
    width = width_of_a_stitch(pattern)
    diameter = _diameter(labelled, width)
    measured = _swatch_widths(pattern, swatch, diameter)
    if gauge.grams and measured:
        by_key = {yarn.key: float(yarn.length.metres_per_gram) for yarn in labelled if yarn.length is not None}
        mean = sum(by_key.values()) / len(by_key) if by_key else None
        total = sum(measured.values())
        if mean is not None:
            grams_for_cm = sum(widths / 100 / by_key.get(key, mean) for key, widths in measured.items())
            return Scale(gauge.grams / grams_for_cm, gauge.grams / total, diameter, gauge.estimate)
        if width is not None:
            return Scale(width, gauge.grams / total, diameter, True)
        return None
    return None if width is None else Scale(width, None, diameter, True)


def scale_of_size(pattern: Pattern, own: Pattern) -> Scale | None:
    """The scale for a size with ``own`` gauge; where only the common swatch was weighed, its loops in proportion to the stitches' width."""
    from motifold.render.sizing.swatch import weighed_swatch

    found = yarn_scale(own, weighed_swatch(own))
    if own.gauge is pattern.gauge or found is None or (own.gauge is not None and own.gauge.grams):
        return found
    common = yarn_scale(pattern, weighed_swatch(pattern))
    here, there = width_of_a_stitch(own), width_of_a_stitch(pattern)
    if common is None or common.estimate or not here or not there:
        return found
    grams = common.grams * here / there if common.grams is not None else None
    reckoned = own.gauge is not None and own.gauge.by_hook
    return Scale(common.cm * here / there, grams, common.diameter * there / here, reckoned)


def _swatch_widths(pattern: Pattern, swatch: Fabric | None, diameter: float) -> Mapping[str, float]:
    """Yarn of the weighed swatch in stitch widths: of its Fabric, or of so many stitches by so many rows."""
    first = pattern.yarns[0].key if pattern.yarns else ""
    if swatch is not None:
        return widths_by_yarn(swatch, diameter, first)
    gauge, motif = pattern.gauge, sized_motif(pattern)
    if gauge is None or gauge.points or not gauge.stitches or not gauge.rows or motif is None:
        return {}
    stitch = last_stitch(motif)
    return {first: gauge.stitches * gauge.rows * stitch_length(stitch[0], diameter)} if stitch else {}


def _diameter(labelled: Iterable[Yarn], width_cm: float | None) -> float:
    """The yarn's diameter in stitch widths, from its label; kept within what can be crocheted."""
    for yarn in labelled:
        if yarn.length is not None and width_cm:
            return min(max(yarn_diameter_cm(1 / float(yarn.length.metres_per_gram)) / width_cm, 0.1), 0.4)
    return DEFAULT_DIAMETER
