"""Surfaces sewn from motifs against theorems that nobody here made.

Descartes, "De solidorum elementis" (about 1630): the corners of a closed convex solid lack 720 degrees of lying flat, together.
Euler (1758): corners - edges + faces = 2. Gauss-Bonnet (Bonnet 1848) for pieces with openings: what the inner corners lack of 360 degrees
and the rim's corners lack of 180 adds up to 360 times the Euler characteristic.
"""

from __future__ import annotations

import random

import networkx as nx
import pytest

from motifold.render.assembly import assemble
from motifold.render.assembly.model import Assembly
from motifold.render.fabric.model import Fabric, Side
from motifold.render.pattern.model import AssemblySource, JoinSource, SeamSource, SidePiece
from motifold.render.pattern.problem import NOWHERE

SHAPES = {3: "triangle", 4: "square", 5: "pentagon", 6: "hexagon", 8: "octagon", 10: "decagon"}


def motif(sides: int) -> Fabric:
    names = ("top", "left", "bottom", "right") if sides == 4 else tuple(str(i + 1) for i in range(sides))
    return Fabric(SHAPES[sides], SHAPES[sides], sides, "rounds", (), (), (), (), tuple(Side(n, (), None, None, 9, {}) for n in names))


def sewn(polygons: list[int], joins: list[tuple[tuple[int, int], tuple[int, int]]]) -> Assembly:
    """``polygons``: sides of each panel; a join names (panel, side) twice, from 0."""
    panels = {f"P{i}": SHAPES[n] for i, n in enumerate(polygons)}
    pairs = tuple(JoinSource(NOWHERE, SidePiece(f"P{a}", str(s + 1)), SidePiece(f"P{b}", str(t + 1))) for (a, s), (b, t) in joins)
    source = AssemblySource(None, panels, (), pairs, None, SeamSource())
    assembly, problems = assemble(source, {SHAPES[n]: motif(n) for n in set(polygons)}, {SHAPES[n]: 10.0 for n in set(polygons)})
    assert assembly is not None
    assert not [p for p in problems if p.severity == "error" and p.code not in ("panel-unjoined", "panel-left-over")]
    return assembly


def solid(graph: nx.Graph) -> Assembly:
    """The closed solid whose corners and edges are a planar graph."""
    _, embedding = nx.check_planarity(graph)
    seen: set[tuple[int, int]] = set()
    faces = [list(embedding.traverse_face(a, b, mark_half_edges=seen)) for a, b in embedding.edges if (a, b) not in seen]
    at = {(ring[k], ring[(k + 1) % len(ring)]): (i, k) for i, ring in enumerate(faces) for k in range(len(ring))}
    return sewn([len(ring) for ring in faces], [(place, at[b, a]) for (a, b), place in at.items() if str(a) < str(b)])


SOLIDS = {
    "tetrahedron": (nx.tetrahedral_graph(), 4, 180),
    "cube": (nx.cubical_graph(), 8, 90),
    "octahedron": (nx.octahedral_graph(), 6, 120),
    "dodecahedron": (nx.dodecahedral_graph(), 20, 36),
    "icosahedron": (nx.icosahedral_graph(), 12, 60),
    "truncated tetrahedron": (nx.truncated_tetrahedron_graph(), 12, 60),
    "truncated cube": (nx.truncated_cube_graph(), 24, 30),
}


@pytest.mark.parametrize("name", SOLIDS)
def test_a_closed_solid_lacks_720_degrees_and_its_characteristic_is_2(name: str) -> None:
    graph, corners, each = SOLIDS[name]
    surface = solid(graph)
    assert len(surface.corners) == corners == graph.number_of_nodes()
    assert len(surface.seams) == graph.number_of_edges()
    assert [round(360 - corner.degrees, 6) for corner in surface.corners] == [each] * corners
    assert sum(360 - corner.degrees for corner in surface.corners) == pytest.approx(720)
    assert (surface.euler, surface.pieces, surface.orientable, surface.openings) == (2, 1, True, ())


def test_a_ball_of_12_pentagons_and_20_hexagons_lacks_12_degrees_at_each_of_60_corners() -> None:
    ico = nx.icosahedral_graph()
    _, embedding = nx.check_planarity(ico)
    graph = nx.Graph()
    for a, b in embedding.edges:
        graph.add_edge((a, b), (b, a))
        graph.add_edge((a, b), (a, embedding[a][b]["cw"]))
    ball = solid(graph)
    assert sorted(len(panel.sides) for panel in ball.panels) == [5] * 12 + [6] * 20
    assert len(ball.corners) == 60 and len(ball.seams) == 90
    assert {round(360 - corner.degrees, 6) for corner in ball.corners} == {12}
    assert sum(360 - corner.degrees for corner in ball.corners) == pytest.approx(720)
    # Every corner has three seams: 60 odd corners, so 30 attachments of yarn.
    assert len(ball.passes) == 30


def test_a_cube_with_its_lid_has_eight_corners_and_without_it_four() -> None:
    box = [((0, 0), (1, 2)), ((0, 1), (2, 3)), ((0, 2), (3, 0)), ((0, 3), (4, 1))]
    walls = [((1, 1), (2, 0)), ((2, 2), (3, 1)), ((3, 3), (4, 2)), ((4, 0), (1, 3))]
    lid = [((5, 0), (1, 0)), ((5, 3), (2, 1)), ((5, 2), (3, 2)), ((5, 1), (4, 3))]
    closed = sewn([4] * 6, box + walls + lid)
    assert len(closed.corners) == 8 and sum(360 - c.degrees for c in closed.corners) == pytest.approx(720)
    basket = sewn([4] * 5, box + walls)
    assert sorted(c.degrees for c in basket.corners if not c.on_opening) == [270] * 4
    assert sum(360 - c.degrees for c in basket.corners if not c.on_opening) == pytest.approx(360)


def test_gauss_bonnet_holds_for_whatever_is_sewn_with_openings_or_handles() -> None:
    rng = random.Random(1848)
    characteristics = set()
    for _ in range(300):
        polygons = [rng.choice(list(SHAPES)) for _ in range(rng.randint(1, 6))]
        sides = [(i, k) for i, n in enumerate(polygons) for k in range(n)]
        rng.shuffle(sides)
        count = rng.randint(0, len(sides) // 2)
        surface = sewn(polygons, [(sides[2 * i], sides[2 * i + 1]) for i in range(count)]) if count else None
        if surface is None or len(surface.panels) != len(polygons):
            continue
        lack = sum((180 if corner.on_opening else 360) - corner.degrees for corner in surface.corners)
        assert lack == pytest.approx(360 * surface.euler)
        # Joined by + alone every surface has two sides; so each piece is a sphere with handles and openings: 2 - 2 h - b.
        assert surface.orientable
        assert (2 * surface.pieces - len(surface.openings) - surface.euler) % 2 == 0
        characteristics.add(surface.euler)
    assert len(characteristics) > 5


def test_gauss_bonnet_holds_for_a_band_with_a_twist_too() -> None:
    """Flat everywhere, straight along its one edge: nothing is lacking, and the characteristic of a one-sided band is 0."""
    pairs = tuple(
        JoinSource(NOWHERE, SidePiece(f"P{i}", "right"), SidePiece(f"P{(i + 1) % 5}", "left"), twist=i == 4) for i in range(5)
    )
    source = AssemblySource(None, {f"P{i}": "square" for i in range(5)}, (), pairs, None, SeamSource())
    band, _ = assemble(source, {"square": motif(4)}, {"square": 10.0})
    assert band is not None
    assert sum((180 if corner.on_opening else 360) - corner.degrees for corner in band.corners) == pytest.approx(0)
    assert (band.euler, band.orientable, len(band.openings)) == (0, False, 1)
    assert band.openings[0].girth_cm == pytest.approx(100)
