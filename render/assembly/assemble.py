"""From what the pattern says to a proven surface: panels, seams, openings, corners, passes."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from motifold.render.assembly.claims import open_differs, rolled, unjoined
from motifold.render.assembly.copies import in_copies
from motifold.render.assembly.doubts import surface_doubts
from motifold.render.assembly.joint import Joint, cut_edges, piece_of, seam_ends, wedge_degrees
from motifold.render.assembly.lengths import Measured, lay_panels, shapes_of
from motifold.render.assembly.model import Assembly, Corner, Opening, Panel, Seam
from motifold.render.assembly.passes import least_passes
from motifold.render.assembly.reading import read_panels, read_seams
from motifold.render.assembly.sewing import find_gaps, joins_as_it_goes, seam_passes, sew
from motifold.render.assembly.sides import pieces_between
from motifold.render.assembly.surface import build_surface
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import AssemblySource
from motifold.render.pattern.problem import Problem


def assemble(
    source: AssemblySource,
    fabrics: Mapping[str, Fabric],
    widths_cm: Mapping[str, float | None],
    heights_cm: Mapping[str, float | None] | None = None,
    measured_on: str | None = None,
) -> tuple[Assembly | None, tuple[Problem, ...]]:
    """Join the panels and find what they make; None where no panel can be made.

    ``widths_cm``: each motif's width, square to a side (a strip worked in rows: along its foundation); ``heights_cm``: of those worked in
    rows; ``measured_on``: the motif of the swatch, if it has one. What a pattern says wrongly is left out of the assembly and told as a
    problem. Time grows with the number of panels and seams.
    """
    panels, problems = read_panels(source, fabrics)
    if not panels:
        return None, problems
    seams, seam_problems = read_seams(source, panels)
    shapes, scaled = shapes_of(panels, seams, widths_cm, heights_cm or {}, measured_on if widths_cm.get(measured_on or "") else None)
    edges, glues = cut_edges(panels, seams)
    surface = build_surface(tuple(edge.panel for edge in edges), glues)
    joint = Joint(panels, seams, shapes, edges, surface)
    corners = _corners(joint)
    openings = _openings(joint, source.seam.adds_cm)
    outlines = lay_panels(panels, seams, shapes, source.seam.adds_cm)
    trails, pass_problems = sew(source, joint, outlines)
    passes = seam_passes(trails, joint)
    one = Assembly(
        panels=tuple(
            Panel(p.name, p.fabric.name, p.sides, p.cell, outline, _lengths(shape))
            for p, outline, shape in zip(panels, outlines, shapes, strict=True)
        ),
        seams=tuple(_seam(joint, i) for i in range(len(seams))),
        pieces=surface.pieces,
        orientable=surface.orientable,
        openings=openings,
        corners=corners,
        passes=passes,
        gaps=find_gaps(joint, trails, corners),
        panel_width_cm=widths_cm.get(source.motif or panels[0].fabric.name),
        euler=len(corners) - (len(edges) - len(seams)) + len(panels),
        scaled=scaled,
        adds_cm=source.seam.adds_cm,
        least_passes=0 if joins_as_it_goes(source.seam.method) else least_passes([seam_ends(joint, i) for i in range(len(seams))]),
        method=source.seam.method,
        yarn=source.seam.yarn,
        fold=source.fold,
        form=source.form,
        own_passes=bool(source.seam.passes),
    )
    wanting = len(seams) < len(source.join) + sum(seam.kind == "flat" for seam in seams)
    claims = (*unjoined(source, joint), *open_differs(source, joint, wanting), *(() if wanting else rolled(source, joint)))
    told = (*problems, *seam_problems, *claims, *pass_problems)
    if not told:
        told = tuple(surface_doubts(source, joint))
    return in_copies(one, max(1, source.copies)), told


def _seam(joint: Joint, index: int) -> Seam:
    plan = joint.seams[index]
    return Seam(plan.name, plan.a, plan.b, plan.twist, plan.kind, plan.stitches, plan.span, seam_ends(joint, index), plan.eased)


def _lengths(measured: Measured) -> tuple[float | None, ...]:
    return tuple(length if known else None for length, known in zip(measured.shape.lengths, measured.known, strict=True))


def _corners(joint: Joint) -> tuple[Corner, ...]:
    corners = []
    for wheel in joint.surface.wheels:
        whole = [joint.edges[wedge] for wedge in wheel.wedges if joint.edges[wedge].low == 0]
        within = [joint.edges[wedge] for wedge in wheel.wedges if joint.edges[wedge].low != 0]
        along = [pieces_between(joint.panels[e.panel].name, joint.panels[e.panel].sides[e.side], Fraction(0), e.low)[-1] for e in within]
        corners.append(
            Corner(
                at=tuple((joint.panels[edge.panel].name, edge.side) for edge in whole),
                degrees=sum(wedge_degrees(joint, wedge) for wedge in wheel.wedges),
                on_opening=not wheel.closed,
                along=tuple(along),
            )
        )
    return tuple(corners)


def _openings(joint: Joint, adds_cm: float) -> tuple[Opening, ...]:
    openings = []
    for rim in joint.surface.rims:
        lengths = []
        for edge in (joint.edges[e] for e in rim.edges):
            measured = joint.shapes[edge.panel]
            lengths.append(measured.shape.lengths[edge.side] * float(edge.high - edge.low) if measured.known[edge.side] else None)
        seams = sum(rim.crossed)
        known = [length for length in lengths if length is not None]
        girth = round(sum(known) + adds_cm * seams, 9) if len(known) == len(lengths) else None
        openings.append(Opening(tuple(piece_of(joint, joint.edges[e]) for e in rim.edges), girth, seams, rim.backwards))
    return tuple(openings)
