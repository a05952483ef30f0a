"""What was read of an assembly, numbered, with the surface that it makes."""

from __future__ import annotations

from fractions import Fraction

from motifold.render.assembly.lengths import Measured
from motifold.render.assembly.reading import PanelPlan, SeamPlan
from motifold.render.assembly.sides import Edge, pieces_between
from motifold.render.assembly.surface import Glue, Surface
from motifold.render.pattern.model import SidePiece


class Joint:
    """What was read, numbered: edge ``first_edge[s]`` and ``second_edge[s]`` are seam s's two edges."""

    def __init__(
        self,
        panels: tuple[PanelPlan, ...],
        seams: tuple[SeamPlan, ...],
        shapes: tuple[Measured, ...],
        edges: tuple[Edge, ...],
        surface: Surface,
    ) -> None:
        self.panels, self.seams, self.shapes, self.edges, self.surface = panels, seams, shapes, edges, surface
        self.number = {edge: i for i, edge in enumerate(edges)}
        self.first_edge = [self.number[seam.edge_a] for seam in seams]
        self.seam_of: dict[int, tuple[int, bool]] = {}
        for i, seam in enumerate(seams):
            self.seam_of[self.number[seam.edge_b]] = (i, False)
            self.seam_of[self.number[seam.edge_a]] = (i, True)


def cut_edges(panels: tuple[PanelPlan, ...], seams: tuple[SeamPlan, ...]) -> tuple[tuple[Edge, ...], tuple[Glue | None, ...]]:
    """Every side cut into what is joined and what stays open, panel by panel, counter-clockwise; and what each is glued to."""
    joined: dict[tuple[int, int], list[Edge]] = {}
    for seam in seams:
        for edge in (seam.edge_a, seam.edge_b):
            joined.setdefault((edge.panel, edge.side), []).append(edge)
    edges: list[Edge] = []
    for panel, plan in enumerate(panels):
        for side, name in enumerate(plan.sides):
            at = Fraction(0)
            for edge in [*sorted(joined.get((panel, side), ()), key=lambda e: e.low), Edge(panel, side, Fraction(1), Fraction(1))]:
                for piece in pieces_between(plan.name, name, at, edge.low) if at < edge.low else ():
                    edges.append(Edge(panel, side, Fraction(piece.part - 1, piece.parts), Fraction(piece.part, piece.parts)))
                if edge.low < edge.high:
                    edges.append(edge)
                at = edge.high
    number = {edge: i for i, edge in enumerate(edges)}
    glues: list[Glue | None] = [None] * len(edges)
    for seam in seams:
        a, b = number[seam.edge_a], number[seam.edge_b]
        glues[a], glues[b] = Glue(b, seam.twist), Glue(a, seam.twist)
    return tuple(edges), tuple(glues)


def seam_ends(joint: Joint, seam: int) -> tuple[int, int]:
    """The corners of the surface where a seam starts and ends."""
    edge = joint.first_edge[seam]
    return joint.surface.corner_of[2 * edge], joint.surface.corner_of[2 * edge + 1]


def wedge_degrees(joint: Joint, wedge: int) -> float:
    edge = joint.edges[wedge]
    return joint.shapes[edge.panel].shape.angles[edge.side] if edge.low == 0 else 180.0


def piece_of(joint: Joint, edge: Edge) -> SidePiece:
    plan = joint.panels[edge.panel]
    return pieces_between(plan.name, plan.sides[edge.side], edge.low, edge.high)[0]
