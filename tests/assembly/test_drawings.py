"""Schematics: words clear of lines, letters large enough, the same bytes, and what the drawing says is what was found."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import cos, hypot, radians, sin
from types import SimpleNamespace

import pytest

from motifold.render.assembly import assemble
from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.fold_paint import letters
from motifold.render.assembly.foldflat import fold_flat
from motifold.render.assembly.form import finished_measures, finished_note, tube_of
from motifold.render.assembly.hidden import Face, parts_in_sight, turning
from motifold.render.assembly.measures import inch_text, length_text
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps, schematic_json
from motifold.render.assembly.sheet import bezier, line_meets_box, words_box
from motifold.render.assembly.solid import stand_up, view
from motifold.render.assembly.standing import _scene, as_box, edge_length
from motifold.render.assembly.steps import assembly_steps
from motifold.render.assembly.style import BOLD_MM, FLAT, FOLD, INK, PALE, PANEL, PAPER, QUIET, THICK_MM, THIN_MM
from motifold.render.assembly.unfold import overlap
from motifold.render.drawing import record, to_svg
from motifold.render.drawing.display import Drawing, FillPath, Group, Operation, StrokePath, Text
from motifold.render.drawing.measure import bounds, contrast

HAT = (
    "front right back left\ncrown . . .",
    ["left.right + front.left", "crown.left + left.bottom", "crown.right + right.bottom", "crown.bottom + back.bottom"],
)
BAG = (
    ". . a . .\n. b c d .\ne f g h i\n. j k l .\n. . m . .",
    [
        *("a.left + b.top", "a.right + d.top", "b.left + e.top", "d.right + i.top"),
        *("e.bottom + j.left", "i.bottom + l.right", "j.bottom + m.left", "l.bottom + m.right"),
    ],
)


LIDDED = (
    ". lid .\n. back .\nwest base east\n. front .",
    ["back.left + west.top", "back.right + east.top", "front.left + west.bottom", "front.right + east.bottom"],
)
CUSHION = (
    "F1 F2 . B1 B2\nF3 F4 . B3 B4",
    ["F1.top + B2.top", "F2.top + B1.top", "F1.left + B2.right", "F3.left + B4.right", "F2.right + B1.left", "F4.right + B3.left"],
)


def sources(by_hand: SimpleNamespace) -> dict[str, tuple[object, int]]:
    """Assemblies of every kind, and how many sides their motif has."""
    rows = "\n".join(" ".join(f"{chr(65 + r)}{c + 1}" for c in range(9)) for r in range(12))
    return {
        "basket": (by_hand.basket, 4),
        "cube": (by_hand.cube, 4),
        "hat": (by_hand.source(*HAT, form="hat"), 4),
        "bag": (by_hand.source(*BAG), 4),
        "cowl": (by_hand.source("A B C D E F", ["F.right + A.left"]), 4),
        "twisted cowl": (by_hand.source("A B C D E F", ["F.right ~ A.left"]), 4),
        "cuffs": (by_hand.source("A B\nC D", ["B.right + A.left", "D.right + C.left"], copies=2), 4),
        "blanket": (by_hand.source(rows), 4),
        "jacket": (by_hand.source("", ["L.1 + L.3", "R.1 + R.3", "L.5 + R.5"]), 6),
        "bunting": (by_hand.source("", ["A.2 + B.2", "B.3 + C.3", "C.2 + D.2"]), 3),
        "pouch": (by_hand.source("F", ["F.bottom + itself"]), 4),
        "envelope": (by_hand.source("", ["F.left + B.right", "F.right + B.left", "F.bottom + B.bottom"]), 4),
        "cushion": (by_hand.source("", ["front.edge + back.edge"]), 1),
        "lidded box": (by_hand.source(*LIDDED), 4),
        "cushion of eight": (by_hand.source(*CUSHION), 4),
        "dodecahedron": (by_hand.source("", by_hand.solid(DODECAHEDRON)), 5),
    }


NAMES = (
    *("basket", "cube", "hat", "bag", "cowl", "twisted cowl", "cuffs", "blanket", "jacket", "bunting", "pouch", "envelope", "cushion"),
    *("dodecahedron", "lidded box", "cushion of eight"),
)

DODECAHEDRON = [
    *((0, 1, 2, 3, 4), (0, 5, 10, 6, 1), (1, 6, 11, 7, 2), (2, 7, 12, 8, 3), (3, 8, 13, 9, 4), (4, 9, 14, 5, 0)),
    *((15, 10, 5, 14, 19), (16, 11, 6, 10, 15), (17, 12, 7, 11, 16), (18, 13, 8, 12, 17), (19, 14, 9, 13, 18), (19, 18, 17, 16, 15)),
]


def made(by_hand: SimpleNamespace, name: str, width: float | None = 12.8) -> Assembly:
    source, sides = sources(by_hand)[name]
    assembly, problems = assemble(source, {"square": by_hand.open_motif(sides)}, {"square": width})
    assert assembly is not None and problems == ()
    return assembly


def drawings(assembly: Assembly) -> list[Drawing]:
    finished = draw_finished(assembly)
    return [draw_net(assembly), *draw_steps(assembly), *([finished] if finished else [])]


def flat(operations: tuple[Operation, ...]) -> Iterator[Operation]:
    for operation in operations:
        if isinstance(operation, Group):
            assert operation.transform is None
            yield from flat(operation.children)
        else:
            yield operation


def strokes_over_words(drawing: Drawing) -> list[str]:
    """Words that a line runs through, unless something was filled between the two that covers the line there."""
    operations = list(flat(drawing.operations))
    boxes = {}
    for place, stroke in enumerate(operations):
        if isinstance(stroke, StrokePath):
            xs, ys = zip(*_points(stroke), strict=True)
            boxes[place] = (min(xs), min(ys), max(xs), max(ys))
    crossed = []
    for at, text in enumerate(operations):
        if not isinstance(text, Text):
            continue
        box = words_box((text.x_mm, text.y_mm), text.words, text.size_pt, text.face, text.anchor)
        reach = box[2] - box[0] + 5
        near = (text.x_mm - reach, text.y_mm - reach, text.x_mm + reach, text.y_mm + reach)
        for place, b in boxes.items():
            if b[0] > near[2] or b[2] < near[0] or b[1] > near[3] or b[3] < near[1]:
                continue
            stroke = operations[place]
            if isinstance(stroke, StrokePath) and _meets(stroke, box, text):
                between = [o for o in operations[place:at] if isinstance(o, FillPath)]
                if not any(_covers(o, box, text) for o in between):
                    crossed.append(f"{text.words!r} at {text.x_mm:.1f}, {text.y_mm:.1f}")
                    break
    return crossed


def _points(operation: StrokePath | FillPath) -> list[tuple[float, float]]:
    points: list[tuple[float, float]] = []
    for name, *values in operation.path.commands:
        v = [float(x) for x in values]
        if name == "C":
            points += [bezier(points[-1], (v[0], v[1]), (v[2], v[3]), (v[4], v[5]), i / 12) for i in range(1, 13)]
        elif name == "Z":
            points.append(points[0])
        else:
            points.append((v[0], v[1]))
    return points


def _level(point: tuple[float, float], text: Text) -> tuple[float, float]:
    """The point in the frame in which the words stand level."""
    c, s = cos(radians(-text.angle_deg)), sin(radians(-text.angle_deg))
    x, y = point[0] - text.x_mm, point[1] - text.y_mm
    return text.x_mm + c * x - s * y, text.y_mm + s * x + c * y


def _meets(stroke: StrokePath, box: tuple[float, float, float, float], text: Text) -> bool:
    return any(line_meets_box(a, b, box) for a, b in pairwise(_level(p, text) for p in _points(stroke)))


def _covers(fill: FillPath, box: tuple[float, float, float, float], text: Text) -> bool:
    """Whether a convex fill holds all corners of the words' box (a tag's disc: nearly)."""
    ring = [_level(p, text) for p in _points(fill)]
    shrunk = 0.9 if any(name == "C" for name, *_ in fill.path.commands) else 0.0
    corners = [(x, y) for x in (box[0] + shrunk, box[2] - shrunk) for y in (box[1] + shrunk, box[3] - shrunk)]
    turns = [[(b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) for a, b in pairwise(ring)] for p in corners]
    return all(min(turn) >= -1e-9 or max(turn) <= 1e-9 for turn in turns)


@pytest.mark.parametrize("name", NAMES)
def test_no_line_runs_through_words(by_hand: SimpleNamespace, name: str) -> None:
    for drawing in drawings(made(by_hand, name)):
        assert strokes_over_words(drawing) == [], drawing.title


@pytest.mark.parametrize("name", NAMES)
def test_no_line_runs_through_words_in_the_room_of_a_small_page(by_hand: SimpleNamespace, name: str) -> None:
    """What a page of A5 has for a net, for the finished thing, and for a step beside its words."""
    assembly = made(by_hand, name)
    finished = draw_finished(assembly, 124.0, 68.0)
    for drawing in (draw_net(assembly, 124.0, 92.0), *draw_steps(assembly, 68.0, 56.0), *([finished] if finished else [])):
        assert strokes_over_words(drawing) == [], drawing.title


@pytest.mark.parametrize("name", NAMES)
def test_every_seam_that_lies_open_is_lettered_in_the_step_that_sews_it(by_hand: SimpleNamespace, name: str) -> None:
    assembly = made(by_hand, name)
    steps = [step for step in assembly_steps(assembly) if step.kind != "fold flat"]
    laid = lay(assembly, 100.0, 100.0)
    for step, drawing in zip(steps, draw_steps(assembly), strict=True):
        words = [o.words for o in flat(drawing.operations) if isinstance(o, Text)]
        for sewn in step.steps:
            if not laid.touching[sewn.seam]:
                assert words.count(letters(laid.fold_number[sewn.seam])) >= 2


def test_arrows_of_a_fold_point_at_its_sides(by_hand: SimpleNamespace) -> None:
    """Front and back of a cushion turn their outer sides away from each other: an arrow runs onto either, none leads off the work."""
    assembly = made(by_hand, "cushion of eight")
    at = next(i for i, step in enumerate(assembly_steps(assembly)) if step.seams == ("F1.left + B2.right",))
    fills = [o for o in flat(draw_steps(assembly)[at].operations) if isinstance(o, FillPath)]
    heads = [fill for fill in fills if fill.color == INK]
    laid = [p for fill in fills if fill.color in (PANEL, PALE) for p in _points(fill)]
    middle = (min(x for x, _ in laid) + max(x for x, _ in laid)) / 2
    assert len(heads) == 2
    for head in heads:
        tip, *base = _points(head)[:3]
        assert abs(tip[0] - middle) < min(abs(p[0] - middle) for p in base)


def test_the_check_sees_a_line_through_words() -> None:
    from motifold.render.assembly.sheet import Sheet

    sheet = Sheet()
    sheet.words((10.0, 10.0), "base")
    sheet.line([(0.0, 11.0), (20.0, 11.0)], INK, THIN_MM)
    assert strokes_over_words(sheet.drawing("", "")) == ["'base' at 10.0, 10.0"]


@pytest.mark.parametrize("name", NAMES)
def test_words_are_nine_points_or_more_and_everything_lies_in_the_box(by_hand: SimpleNamespace, name: str) -> None:
    for drawing in drawings(made(by_hand, name)):
        texts = [o for o in flat(drawing.operations) if isinstance(o, Text)]
        assert all(text.size_pt >= 9 for text in texts)
        box = bounds(drawing.operations)
        assert box is not None
        assert drawing.box[0] <= box[0] and drawing.box[1] <= box[1] and box[2] <= drawing.box[2] and box[3] <= drawing.box[3]
        assert drawing.title and drawing.description


@pytest.mark.parametrize("name", ["basket", "cube", "bag", "jacket", "dodecahedron", "blanket"])
def test_the_net_fits_a_page_of_a5(by_hand: SimpleNamespace, name: str) -> None:
    drawing = draw_net(made(by_hand, name))
    assert drawing.width_mm <= 128.5 and drawing.height_mm <= 190


def test_inks_can_be_read_and_weights_are_two_to_one() -> None:
    for ink in (INK, QUIET):
        assert contrast(ink, PAPER) >= 7 and contrast(ink, PANEL) >= 4.5
    for ink in (FLAT, FOLD):
        assert contrast(ink, PAPER) >= 4.5
    assert THIN_MM * 2 == THICK_MM and THICK_MM * 2 == BOLD_MM


@pytest.mark.parametrize(
    ("cm", "words"), [(12.8, "12.8 cm (5 in)"), (38.4, "38.4 cm (15⅛ in)"), (2.54, "2.5 cm (1 in)"), (25.4, "25.4 cm (10 in)")]
)
def test_lengths_in_both_units(cm: float, words: str) -> None:
    assert length_text(cm) == words


def test_every_eighth_of_an_inch_is_found() -> None:
    for eighths in range(200):
        text = inch_text(eighths * 2.54 / 8)
        whole, fraction = divmod(eighths, 8)
        assert text == f"{whole if whole or not fraction else ''}{'⁰⅛¼⅜½⅝¾⅞'[fraction] if fraction else ''} in"


def test_each_dimension_of_the_net_stands_once(by_hand: SimpleNamespace) -> None:
    texts = [o.words for o in flat(draw_net(made(by_hand, "cube")).operations) if isinstance(o, Text) and " cm" in o.words]
    assert sorted(texts) == ["12.8 cm (5 in)", "38.4 cm (15⅛ in)", "51.2 cm (20⅛ in)"]


def test_an_empty_column_of_the_net_is_not_measured(by_hand: SimpleNamespace) -> None:
    """Front and back lie a column apart: each is two squares wide, and nothing is five."""
    texts = [o.words for o in flat(draw_net(made(by_hand, "cushion of eight")).operations) if isinstance(o, Text) and " cm" in o.words]
    assert sorted(texts) == ["12.8 cm (5 in)", "25.6 cm (10⅛ in)", "25.6 cm (10⅛ in)"]


def test_every_loose_piece_of_the_net_is_measured(by_hand: SimpleNamespace) -> None:
    assembly, _ = assemble(by_hand.source("A B C . D E", ["C.right + D.left"]), {"square": by_hand.open_motif()}, {"square": 10.0})
    assert assembly is not None
    texts = [o.words for o in flat(draw_net(assembly).operations) if isinstance(o, Text) and " cm" in o.words]
    assert sorted(texts) == ["10 cm (3⅞ in)", "10 cm (3⅞ in)", "20 cm (7⅞ in)", "30 cm (11¾ in)"]


def test_without_a_width_nothing_is_measured(by_hand: SimpleNamespace) -> None:
    for name in ("basket", "cowl", "blanket"):
        for drawing in drawings(made(by_hand, name, None)):
            assert not [o for o in flat(drawing.operations) if isinstance(o, Text) and " cm" in o.words]
            assert " cm" not in drawing.description


def test_a_gap_is_drawn_and_closed_by_a_step(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B\nC D", passes=(("A.right",), ("C.right",), ("A.bottom",), ("B.bottom",)))
    assembly, problems = assemble(source, {"square": by_hand.open_motif()}, {"square": 12.8})
    assert problems == () and assembly is not None
    last = assembly_steps(assembly)[-1]
    assert (last.kind, last.start) == ("gap", ("A.bottom-right", "B.bottom-left", "D.top-left", "C.top-right"))
    net = draw_net(assembly)
    assert "gap to close" in {o.words for o in flat(net.operations) if isinstance(o, Text)}
    assert strokes_over_words(net) == []


def test_a_drawing_for_each_step(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, "basket")
    steps = assembly_steps(basket)
    assert [step.kind for step in steps] == ["seam", "fold", "fold", "fold", "fold"]
    assert len(draw_steps(basket)) == 5
    assert (steps[0].attach, steps[0].fasten_off, steps[1].attach, steps[1].fasten_off) == (True, False, False, True)
    assert sum(step.stitches for step in steps) == sum(one.stitches for one in basket.passes)
    assert len({drawing.box for drawing in draw_steps(basket)}) == 1


def test_a_step_starts_at_a_corner_of_the_side_that_it_sews(by_hand: SimpleNamespace) -> None:
    """In a ring of panels a corner of the last one is also the first one's, but not while the work lies open."""
    joins = ["t3.right + t1.left", "u3.right + u1.left"]
    assembly, _ = assemble(by_hand.source("t1 t2 t3\nu1 u2 u3", joins), {"square": by_hand.open_motif()}, {"square": 12.8})
    assert assembly is not None
    for step in assembly_steps(assembly):
        first, last = assembly.seams[step.steps[0].seam], assembly.seams[step.steps[-1].seam]
        assert first.b is not None and last.b is not None
        assert [name.split(".")[0] for name in step.start[:2]] == [first.a.panel, first.b.panel]
        assert [name.split(".")[0] for name in step.end[:2]] == [last.a.panel, last.b.panel]
        assert first.a.side in step.start[0] and last.a.side in step.end[0]
    assert assembly_steps(assembly)[0].start[0] == "t3.bottom-right"


def test_a_steps_title_says_its_own_number_and_its_passs(by_hand: SimpleNamespace) -> None:
    titles = [drawing.title for drawing in draw_steps(made(by_hand, "basket"))]
    assert titles == ["Step 1 (pass 1)", "Step 2 (pass 1)", "Step 3 (pass 2)", "Step 4 (pass 3)", "Step 5 (pass 4)"]


def test_hexagons_joined_side_by_side_are_sewn_flat(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("", ["A.1 + B.4", "B.3 + C.6", "C.5 + A.2"])
    assembly, _ = assemble(source, {"square": by_hand.open_motif(6)}, {"square": 9.0})
    assert assembly is not None
    assert [step.kind for step in assembly_steps(assembly)] == ["seam", "seam"]
    assert draw_finished(assembly) is not None


@pytest.mark.parametrize("name", NAMES)
def test_steps_sew_every_seam_once(by_hand: SimpleNamespace, name: str) -> None:
    assembly = made(by_hand, name)
    sewn = [sewn.seam for step in assembly_steps(assembly) for sewn in step.steps]
    assert sorted(sewn) == list(range(len(assembly.seams) // assembly.copies))
    per_pass = {one.number: one.stitches for one in assembly.passes[: len(assembly.passes) // assembly.copies]}
    for step in assembly_steps(assembly):
        per_pass[step.pass_number or 0] -= step.stitches
    assert set(per_pass.values()) == {0}


def test_join_as_you_go_works_motif_after_motif(by_hand: SimpleNamespace) -> None:
    source = by_hand.source("A B C\nD E F", method="join as you go")
    assembly, problems = assemble(source, {"square": by_hand.open_motif()}, {"square": 12.8})
    assert problems == () and assembly is not None
    assert assembly.passes == ()
    steps = assembly_steps(assembly)
    assert [(step.panels[0], len(step.seams)) for step in steps] == [("A", 0), ("B", 1), ("C", 1), ("D", 1), ("E", 2), ("F", 2)]
    for drawing in (draw_net(assembly), *draw_steps(assembly)):
        assert strokes_over_words(drawing) == []


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
    """Every line of it lies on an edge, and every measure is the true length of one: none of a slanted width."""
    assembly = made(by_hand, name)
    solid = stand_up(assembly, upside_down=name == "hat")
    assert solid is not None
    scene = _scene(solid, 124.0, 170.0)
    finished = draw_finished(replace(assembly, form="hat") if name == "hat" else assembly)
    assert finished is not None
    outside = [o for o in finished.operations if not isinstance(o, Group)]
    lines = [_points(o) for o in outside if isinstance(o, StrokePath)]
    assert len(lines) >= 9
    for a, b in lines:
        assert any(_on(a, scene.at(c), scene.at(d)) and _on(b, scene.at(c), scene.at(d)) for c, d in scene.edges)
    lengths = {length_text(edge_length(solid, edge)) for edge in scene.edges}
    measures = [o.title for o in finished.operations if isinstance(o, Group) and o.css_class == "dimension"]
    assert measures and set(measures) <= lengths


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
        assert not parts or parts == [pytest.approx((0.0, 1.0))]
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
    assert assembly is not None and problems == ()
    assert draw_finished(assembly) is None and {measure.name for measure in finished_measures(assembly)} == {"opening"}
    assert finished_note(assembly) == (
        "There is no drawing of the finished thing: its panels neither stand up as they are nor fold flat along straight lines."
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


def test_the_data_is_what_the_drawing_shows(by_hand: SimpleNamespace) -> None:
    basket = made(by_hand, "basket")
    data = schematic_json(basket)
    assert [panel["name"] for panel in data["panels"]] == ["north", "west", "base", "east", "south"]
    fills = [o for o in flat(draw_net(basket).operations) if isinstance(o, FillPath) and o.color == PANEL]
    drawn = [[[round(float(x), 3), round(float(y), 3)] for _, x, y in fill.path.commands[:-1]] for fill in fills]
    assert drawn == [panel["outline"] for panel in data["panels"]]
    first = [seam for seam in data["seams"] if seam["pass"] == 1]
    assert sorted(seam["order"] for seam in first) == [1, 2, 3, 4, 5]
    assert data["seams"][4] == {"name": "north.left + west.top", "sides": ["north.left", "west.top"], "pass": 1, "order": 5}


def test_arrows_of_a_fold_start_where_the_sides_meet(by_hand: SimpleNamespace) -> None:
    """Both lines of a fold run away from the corner that they share: their dots lie beside each other."""
    basket = made(by_hand, "basket")
    laid = lay(basket, 100.0, 100.0)
    for seam in laid.fold_number:
        a, b = laid.fold_lines(seam)
        # One end of each is the same corner of the base on the sheet.
        ends = [hypot(a.points[i][0] - b.points[i][0], a.points[i][1] - b.points[i][1]) for i in (0, -1)]
        assert min(ends) < 0.01 < max(ends)


def test_a_thousand_panels_are_planned_and_drawn_in_three_seconds(by_hand: SimpleNamespace) -> None:
    net = "\n".join(" ".join(f"p{row}x{column}" for column in range(25)) for row in range(40))
    source, fabrics = by_hand.source(net), {"square": by_hand.open_motif()}
    began = time.process_time()
    assembly, _ = assemble(source, fabrics, {"square": 12.8})
    assert assembly is not None
    drawing = draw_net(assembly)
    assert time.process_time() - began < 3.0
    numbers = {o.words for o in flat(drawing.operations) if isinstance(o, Text)}
    assert {"1", "39", "40", "63"} <= numbers


def test_the_bytes_do_not_depend_on_the_hash_seed(request: pytest.FixtureRequest) -> None:
    conftest = str(request.path.parent / "conftest.py")
    code = (
        f"import importlib.util, hashlib; s = importlib.util.spec_from_file_location('c', {conftest!r}); "
        "c = importlib.util.module_from_spec(s); "
        "s.loader.exec_module(c); from motifold.render.assembly import assemble; "
        "from motifold.render.assembly.schematics import draw_net, draw_steps, draw_finished; from motifold.render.drawing import to_svg; "
        "a, _ = assemble(c.CUBE, {'square': c.open_motif()}, {'square': 12.8}); "
        "print(hashlib.sha256(''.join(to_svg(d) for d in (draw_net(a), *draw_steps(a), draw_finished(a))).encode()).hexdigest())"
    )
    runs = {
        subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"PYTHONHASHSEED": seed}).stdout
        for seed in ("1", "77")
    }
    assert len(runs) == 1


def test_the_drawing_can_be_written_and_recorded(by_hand: SimpleNamespace) -> None:
    drawing = draw_net(made(by_hand, "basket"))
    assert 'data-pass="1"' in to_svg(drawing)
    assert record(drawing)
