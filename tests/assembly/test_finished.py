"""The finished thing: standing, folded flat, or a tube; what it measures, and what of it is in sight."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import cos, hypot, radians, sin
from types import SimpleNamespace

import pytest
from assembly_kit import (
    made,
    points_of,
)

from motifold.render.assembly import assemble
from motifold.render.assembly.foldflat import fold_flat
from motifold.render.assembly.form import finished_measures, finished_note, tube_of
from motifold.render.assembly.hidden import Face, parts_in_sight, turning
from motifold.render.assembly.measures import length_text
from motifold.render.assembly.schematics import draw_finished
from motifold.render.assembly.solid import stand_up, view
from motifold.render.assembly.standing import _scene, as_box, edge_length
from motifold.render.assembly.unfold import overlap
from motifold.render.drawing.display import Group, StrokePath


def test_the_basket_stands_as_a_box(by_hand: SimpleNamespace) -> None:
    solid = stand_up(made(by_hand, "basket"))
    assert solid is not None and len(solid.points) == 8
    for k in range(3):
        assert {round(p[k] - min(q[k] for q in solid.points), 3) for p in solid.points} == {0.0, 12.8}
    assert {round(solid.points[c][2], 3) for edge in solid.rim for c in edge} == {12.8}
    finished = draw_finished(made(by_hand, "basket"))
    assert finished is not None and "12.8 cm (5 in) high; opening 51.2 cm (20⅛ in) round" in finished.description


@pytest.mark.parametrize("name", ["basket", "cube", "hat", "lidded box", "dodecahedron"])
def test_a_solid_shows_edges_and_nothing_else(by_hand: SimpleNamespace, name: str) -> None:
    """Every line of it lies on an edge, and every measure is the true length of one, or the greatest distance of corners."""
    assembly = made(by_hand, name)
    solid = stand_up(assembly, upside_down=name == "hat")
    assert solid is not None
    scene = _scene(solid, 124.0, 170.0)
    finished = draw_finished(replace(assembly, form="hat") if name == "hat" else assembly)
    assert finished is not None
    outside = [o for o in finished.operations if not isinstance(o, Group)]
    lines = [points_of(o) for o in outside if isinstance(o, StrokePath)]
    assert len(lines) >= 9
    for a, b in lines:
        assert any(_on(a, scene.at(c), scene.at(d)) and _on(b, scene.at(c), scene.at(d)) for c, d in scene.edges)
    lengths = {length_text(edge_length(solid, edge)) for edge in scene.edges}
    measures = [o.title for o in finished.operations if isinstance(o, Group) and o.css_class == "dimension"]
    across = {m.cm for m in finished_measures(assembly) if m.name == "across"}
    assert measures and set(measures) <= lengths | {f"{length_text(cm)} across" for cm in across}


def _on(p: tuple[float, float], a: tuple[float, float], b: tuple[float, float]) -> bool:
    length = hypot(b[0] - a[0], b[1] - a[1])
    along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length
    across = ((p[0] - a[0]) * (b[1] - a[1]) - (p[1] - a[1]) * (b[0] - a[0])) / length
    return abs(across) < 1e-6 and -1e-6 < along < length + 1e-6


def test_a_hidden_edge_is_not_drawn() -> None:
    """Of a cube's twelve edges nine are in sight from a corner, the three at the far corner are not."""
    corners = [(x, y, z) for x in (0, 1) for y in (0, 1) for z in (0, 1)]
    seen = [view(corner) for corner in corners]
    squares = [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]
    faces = [Face([seen[c] for c in ring]) for ring in squares]
    edges = {frozenset(pair) for ring in squares for pair in pairwise([*ring, ring[0]])}
    drawn = 0
    for edge in edges:
        a, b = sorted(edge)
        own = frozenset(i for i, ring in enumerate(squares) if edge <= set(ring))
        parts = parts_in_sight(seen[a], seen[b], faces, own, 0.01)
        assert not parts or parts == [(0.0, 1.0)]
        drawn += len(parts)
    assert drawn == 9


def test_a_lid_stands_open_at_the_back(by_hand: SimpleNamespace) -> None:
    assembly = made(by_hand, "lidded box")
    solid = stand_up(assembly)
    assert solid is not None
    lid = next(i for i, panel in enumerate(assembly.panels) if panel.name == "lid")
    assert solid.flaps == {lid}
    assert as_box(solid) == pytest.approx((12.8, 12.8, 12.8), abs=0.01)
    ring = [solid.points[c] for c in solid.faces[lid]]
    high = [p for p in ring if p[2] > 13]
    assert len(high) == 2
    # It rises from the back wall and leans back by 20 degrees.
    for p in high:
        assert p[2] == pytest.approx(12.8 + 12.8 * cos(radians(20)), abs=0.02)
        assert p[1] - max(q[1] for q in ring if q[2] < 13) == pytest.approx(12.8 * sin(radians(20)), abs=0.02)


def test_a_hats_opening_looks_down(by_hand: SimpleNamespace) -> None:
    solid = stand_up(made(by_hand, "hat"), upside_down=True)
    assert solid is not None
    assert {round(solid.points[c][2], 3) for edge in solid.rim for c in edge} == {0.0}


def test_the_corners_of_a_dodecahedron_lie_on_a_sphere(by_hand: SimpleNamespace) -> None:
    """Radius of the circumscribed sphere: sqrt(3) (1 + sqrt(5)) / 4 times the edge."""
    assembly = made(by_hand, "dodecahedron")
    solid = stand_up(assembly)
    assert solid is not None
    middle = tuple(sum(p[k] for p in solid.points) / 20 for k in range(3))
    side = assembly.panels[0].sides_cm[0]
    assert side is not None
    want = 3**0.5 * (1 + 5**0.5) / 4 * side
    for p in solid.points:
        assert sum((p[k] - middle[k]) ** 2 for k in range(3)) ** 0.5 == pytest.approx(want, rel=1e-4)


def test_right_sides_look_out(by_hand: SimpleNamespace) -> None:
    solid = stand_up(made(by_hand, "cube"))
    assert solid is not None
    middle = [sum(p[k] for p in solid.points) / len(solid.points) for k in range(3)]
    for ring in solid.faces:
        a, b, c = (solid.points[i] for i in ring[:3])
        u, v = [b[k] - a[k] for k in range(3)], [c[k] - b[k] for k in range(3)]
        normal = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
        assert sum(normal[k] * (a[k] - middle[k]) for k in range(3)) > 0


def test_a_cowl_folds_flat_to_half_its_girth(by_hand: SimpleNamespace) -> None:
    tube = tube_of(made(by_hand, "cowl"))
    assert tube is not None
    assert (tube.around, tube.deep) == (pytest.approx(76.8), pytest.approx(12.8))
    twisted = tube_of(made(by_hand, "twisted cowl"))
    assert twisted is not None and twisted.one_sided and twisted.around == pytest.approx(76.8)


def test_what_neither_stands_nor_folds_is_not_drawn_and_the_reason_is_said(by_hand: SimpleNamespace) -> None:
    four = by_hand.source("", ["A.top + A.left", "A.bottom + B.top", "B.left + B.right", "A.right + C.top"])
    assembly, problems = assemble(four, {"square": by_hand.open_motif()}, {"square": 10.0})
    assert assembly is not None and [problem.code for problem in problems] == ["surface"]
    assert draw_finished(assembly) is None and {measure.name for measure in finished_measures(assembly)} == {"opening"}
    assert finished_note(assembly) == (
        "There is no drawing of the finished thing: it does not stand as its panels are, nor lie in two layers with one fold a panel."
    )
    parts, _ = assemble(by_hand.source("A B . C D"), {"square": by_hand.open_motif()}, {"square": 10.0})
    assert parts is not None
    assert finished_note(parts) == "There is no drawing of the finished thing: its panels are joined into 2 separate pieces."
    assert finished_note(made(by_hand, "basket")) is None


def test_thirteen_squares_fold_to_an_octagon_with_the_mouth_in_its_middle(by_hand: SimpleNamespace) -> None:
    """Three squares across, four of them folded along a diagonal; each layer has the area of seven squares, one of them the mouth."""
    folded = fold_flat(made(by_hand, "bag", 1.0))
    assert folded is not None
    assert sum(panel.fold is not None for panel in folded.panels) == 4
    areas = dict.fromkeys((True, False), 0.0)
    for panel in folded.panels:
        for piece in panel.pieces:
            areas[piece.front] += turning(piece.ring) / 2
    assert sorted(areas.values()) == [pytest.approx(6.0), pytest.approx(7.0)]
    assert {m.name: m.cm for m in finished_measures(made(by_hand, "bag", 1.0))} == pytest.approx(
        {"flat width": 3.0, "flat height": 3.0, "opening": 4.0}
    )


@pytest.mark.parametrize("name", ["bag", "jacket", "pouch", "envelope", "cushion of eight"])
def test_folded_flat_every_seam_is_closed_and_no_layer_overlaps(by_hand: SimpleNamespace, name: str) -> None:
    assembly = made(by_hand, name)
    folded = fold_flat(assembly)
    assert folded is not None
    for panel, laid in enumerate(folded.panels):
        area = sum(turning(piece.ring) / 2 for piece in laid.pieces)
        assert area == pytest.approx(turning(assembly.panels[panel].outline_cm) / 2)
        for edge, other in enumerate(folded.joints[panel]):
            if other is not None:
                there = folded.panels[other[0]].sides[other[1]][::-1]
                assert all(hypot(p[0] - q[0], p[1] - q[1]) < 0.1 for p, q in zip(laid.sides[edge], there, strict=True))
    pieces = [piece for laid in folded.panels for piece in laid.pieces]
    for i, one in enumerate(pieces):
        for two in pieces[:i]:
            assert one.front != two.front or not overlap(one.ring, two.ring)


def test_measures_of_the_finished_thing(by_hand: SimpleNamespace) -> None:
    def measures(name: str) -> list[tuple[str, float]]:
        return [(measure.name, round(measure.cm, 2)) for measure in finished_measures(made(by_hand, name, 10.0))]

    assert measures("blanket") == [("width", 90.0), ("height", 120.0)]
    assert measures("basket") == [("width", 10.0), ("depth", 10.0), ("height", 10.0), ("opening", 40.0)]
    assert measures("lidded box")[:3] == [("width", 10.0), ("depth", 10.0), ("height", 10.0)]
    assert measures("cowl") == [("round", 60.0), ("flat width", 30.0), ("depth", 10.0)]
    assert measures("envelope") == [("flat width", 10.0), ("flat height", 10.0), ("opening", 20.0)]
    assert measures("cushion") == [("across", 10.0)]
    assert finished_measures(made(by_hand, "basket", None)) == ()


def test_a_bag_lies_with_its_mouth_along_the_top(by_hand: SimpleNamespace) -> None:
    """Four squares of 10 cm on point, half squares above and below: 2 diagonals wide, 1 high, its mouth 4 long sides of half squares."""
    squares = []
    for i in range(1, 5):
        before = (i - 2) % 4 + 1
        squares += [f"Q{i}.right + T{i}.1", f"Q{i}.top + T{before}.2", f"Q{i}.bottom + L{i}.2", f"Q{i}.left + L{before}.1"]
    panels = {f"{row}{i}": "half" for row in "TL" for i in range(1, 5)}
    source = by_hand.source("", [*squares, "L1.3 + L4.3", "L2.3 + L3.3"], panels=panels, form="bag")
    fabrics = {"square": by_hand.open_motif(), "half": by_hand.open_motif(3, name="half", shape="half square")}
    assembly, _ = assemble(source, fabrics, {"square": 10.0, "half": None}, measured_on="square")
    assert assembly is not None
    measures = {one.name: one.cm for one in finished_measures(assembly)}
    assert (measures["flat width"], measures["flat height"]) == (pytest.approx(20 * 2**0.5), pytest.approx(10 * 2**0.5))


def test_one_strip_folded_and_sewn_at_its_sides_keeps_a_flap(by_hand: SimpleNamespace) -> None:
    met = {"left": ((5, 2), (4, 3)), "right": ((1, 4), (2, 3))}
    joins = [f"A.{side}[{a}/5] + A.{side}[{b}/5]" for side, pairs in met.items() for a, b in pairs]
    assembly, problems = assemble(by_hand.source("", joins, motif="square"), {"square": by_hand.open_motif()}, {"square": 20.0})
    assert problems == () and assembly is not None
    measures = {one.name: one.cm for one in finished_measures(assembly)}
    # A fifth of 4 cm is the flap; 8 cm of the rest lie on each other.
    assert (measures["flat width"], measures["flat height"]) == pytest.approx((20.0, 12.0))
