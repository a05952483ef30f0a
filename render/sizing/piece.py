"""What only the finished piece shows: how its edgings lie, and which colourways touch their like."""

from __future__ import annotations

from collections.abc import Mapping

from motifold.render.assembly.model import Assembly
from motifold.render.assembly.shapes import side_length_cm
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import MotifSource, Pattern, SidePiece
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.colourways import Placing, place_colourways
from motifold.render.sizing.edges import EdgingFit, edging_fit, edging_problem
from motifold.render.sizing.width import motif_line


def piece_doubts(
    pattern: Pattern, fabrics: Mapping[str, Fabric], widths_cm: Mapping[str, float | None], assembly: Assembly | None,
    edgings: Mapping[str, Fabric],
) -> tuple[Problem, ...]:  # fmt: skip
    """Warnings of one worked size: edgings that will not lie flat, colourways that touch their like."""
    sources = {edging.name: edging for edging in pattern.edgings}
    fits = edging_fits(pattern, fabrics, widths_cm, assembly, edgings)
    found = [edging_problem(pattern, sources[fit.name], fit) for fit in fits]
    found.append(_alike(pattern, place_colourways(pattern, assembly)))
    return tuple(problem for problem in found if problem is not None)


def edging_fits(
    pattern: Pattern, fabrics: Mapping[str, Fabric], widths_cm: Mapping[str, float | None], assembly: Assembly | None,
    edgings: Mapping[str, Fabric],
) -> tuple[EdgingFit, ...]:  # fmt: skip
    """How each edging lies along its edge; those whose edge or whose stitches nobody measured are left out."""
    found = []
    motifs = {motif.name: motif for motif in pattern.motifs}
    for edging in pattern.edgings:
        fabric = edgings.get(edging.name)
        name = edging.motif or (pattern.motifs[0].name if len(pattern.motifs) == 1 else "")
        if fabric is None:
            continue
        if edging.opening is not None and assembly is not None:
            found.append(edging_fit(pattern, edging, fabric, _opening_cm(assembly, edging.opening), None))
        elif name in motifs and name in fabrics:
            girth = _edge_cm(pattern, motifs[name], fabrics[name], widths_cm.get(name))
            found.append(edging_fit(pattern, edging, fabric, girth, fabrics[name].polygon))
    return tuple(fit for fit in found if fit is not None)


def _opening_cm(assembly: Assembly, side: SidePiece) -> float | None:
    if not assembly.scaled:
        return None
    here = (opening for opening in assembly.openings if any((s.panel, s.side) == (side.panel, side.side) for s in opening.sides))
    return next((opening.girth_cm for opening in here), None)


def _edge_cm(pattern: Pattern, motif: MotifSource, fabric: Fabric, width_cm: float | None) -> float | None:
    """All round a motif that lies flat; None where it is not measured, or is half of something."""
    if not width_cm or "half" in motif.shape or "semi" in motif.shape:
        return None
    if motif.worked == "rows":
        line = motif_line(pattern, motif)
        rows = sum(one.kind == "row" for one in fabric.rounds)
        return 2 * (width_cm + line.at(rows)) if line is not None and rows else None
    return max(fabric.polygon, 1) * side_length_cm(fabric.polygon, width_cm)


def _alike(pattern: Pattern, placing: Placing) -> Problem | None:
    """A warning where the colourways cannot be spread so that no two alike touch."""
    if not placing.alike:
        return None
    pairs = ", ".join(f"{a} and {b}" for a, b in placing.alike[:3])
    more = f", and {len(placing.alike) - 3} more pairs" if len(placing.alike) > 3 else ""
    message = f"with so few colourways some that touch are alike: {pairs}{more}"
    hint = "add a colourway, or lay them out yourself: colourways, as the net"
    return Problem("colourway", "warning", pattern.place("assembly", "colourways"), message, hint)
