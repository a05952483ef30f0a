"""Borders stand as frames about what they go round; layers outside it; cables keep their edges."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from math import hypot

import gallery
import measures
import pytest
from frame_pieces import BORDERS, CABLES, LAYERS

from motifold.render.fabric import Workshop, motif_edge, work_edging
from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.course import course_of, picots_of
from motifold.render.motif.rows import lay_rows
from motifold.render.pattern import read_pattern

ALL = {piece.name: piece for piece in (*BORDERS, *LAYERS)}


@cache
def placed(name: str) -> tuple[Fabric, Layout]:
    fabric = gallery.fabric_of(ALL[name])
    return fabric, lay_out(fabric)


def _rounds(fabric: Fabric) -> list[int]:
    return [index for index, this in enumerate(fabric.rounds) if this.kind == "round" and this.number is not None]


@pytest.mark.parametrize("name", ALL)
def test_no_two_symbols_overlap_or_crowd(name: str) -> None:
    overlaps, near = measures.told_contacts(*placed(name))
    assert not overlaps
    assert not near


@pytest.mark.parametrize("name", ALL)
def test_every_stitch_has_a_place(name: str) -> None:
    fabric, layout = placed(name)
    assert {p.stitch for p in layout.placed} == {s.id for s in fabric.stitches}


@pytest.mark.parametrize("name", [piece.name for piece in BORDERS])
def test_stems_of_a_border_reach_its_corners_and_no_further(name: str) -> None:
    parts = [part for _, part in measures.lengths(*placed(name))]
    assert min(parts) >= 0.8
    assert max(parts) <= 1.6
    assert sorted(parts)[int(0.85 * len(parts))] <= 1.3


@pytest.mark.parametrize("name", [piece.name for piece in BORDERS])
def test_a_border_is_a_level_rectangle_outside_the_piece(name: str) -> None:
    fabric, layout = placed(name)
    shapes = {shape.round: shape for shape in layout.shapes}
    inside = [p.head for p in layout.placed if fabric.stitches[p.stitch].round < _rounds(fabric)[0]]
    for index in _rounds(fabric):
        (a, b, c, d) = shapes[index].corners
        for (x0, y0), (x1, y1) in pairwise((a, b, c, d, a)):
            assert min(abs(x1 - x0), abs(y1 - y0)) < 1e-6
        xs, ys = sorted(x for x, _ in (a, b, c, d)), sorted(y for _, y in (a, b, c, d))
        assert all(xs[0] < x < xs[-1] and ys[0] < y < ys[-1] for x, y in inside)


def test_stitches_over_row_ends_stand_out_sideways_from_them() -> None:
    fabric, layout = placed("coaster")
    at = {p.stitch: p for p in layout.placed}
    middle = sum(p.head[0] for p in layout.placed) / len(layout.placed)
    over = [s for s in fabric.round_stitches(_rounds(fabric)[0]) if s.legs and s.legs[0].base.foot == "row end"]
    assert len(over) == 16
    for stitch in over:
        end, own = at[stitch.legs[0].base.id], at[stitch.id]
        side = 1.0 if end.head[0] > middle else -1.0
        assert side * (own.head[0] - own.feet[0][0]) > 0.9
        assert hypot(own.feet[0][0] - end.head[0], own.feet[0][1] - (end.head[1] + end.feet[0][1]) / 2) < 0.75


@pytest.mark.parametrize(
    ("name", "counts"),
    [("coaster", (15, 13, 15, 13)), ("long narrow scarf", (8, 24, 8, 24)), ("panel in dc, chained corners", (21, 20, 22, 20))],
)
def test_a_border_has_sides_of_its_own(name: str, counts: tuple[int, ...]) -> None:
    fabric, _ = placed(name)
    assert [side.name for side in fabric.sides] == ["bottom", "right", "top", "left"]
    assert tuple(side.stitches for side in fabric.sides) == counts


@pytest.mark.parametrize("name", [piece.name for piece in LAYERS])
def test_a_layer_stands_on_a_second_picture_of_its_round_outside_all_else(name: str) -> None:
    fabric, layout = placed(name)
    at = {p.stitch: p for p in layout.placed}
    again = {each.stitch: each for each in layout.again}
    last = _rounds(fabric)[-1]
    furthest = max(hypot(*p.head) for p in layout.placed if fabric.stitches[p.stitch].round < last)
    course = course_of(fabric, last, picots_of(fabric))
    for stem in course.stems:
        base = again[stem.stitch.legs[0].base.id]
        foot = at[stem.stitch.id].feet[0]
        assert hypot(foot[0] - base.head[0], foot[1] - base.head[1]) < 0.6
        assert hypot(*base.head) > furthest
        assert not at[stem.stitch.id].bend


def test_a_straight_panel_with_cables_has_straight_edges() -> None:
    ground = lay_rows(gallery.fabric_of(CABLES))
    ends = [[ground.heads[course.stems[i].stitch.id].real for i in (0, -1)] for course in ground.courses.values()]
    for side in (0, 1):
        assert max(pair[side] for pair in ends) - min(pair[side] for pair in ends) < 0.05


def test_an_edging_on_a_piece_in_rows_is_the_same_frame() -> None:
    fabric = gallery.fabric_of(gallery.Piece("swatch", "rectangle", BORDERS[0].text.split("Rnd 9:")[0], rows=True))
    text = """[pattern]
title = "T"
terms = "US"
[yarn.A]
name = "Grey"
[motif.m]
shape = "rectangle"
rows = "Chain: Ch 3."
[edging.e]
motif = "m"
rounds = "Rnd 1: Join with sl st in first st, ch 1, 3 sc in same st, sc in each of next 10 sts, 3 sc in next st, 8 sc evenly along side, \
3 sc in next st, sc in each of next 10 sts, 3 sc in next st, 8 sc evenly along side; join with sl st in first sc. (48 sc)"
"""
    pattern = read_pattern("t.toml", text.encode()).pattern
    assert pattern is not None
    edging, problems = work_edging(pattern.edgings[0], motif_edge(fabric), Workshop({}, ("A",), None, 0, None, "US", None))
    assert not problems
    layout = lay_out(edging)
    assert not any(measures.told_contacts(edging, layout))
    corners = next(shape.corners for shape in layout.shapes if shape.round == 1)
    (left, low), (right, top) = (min(c) for c in zip(*corners, strict=True)), (max(c) for c in zip(*corners, strict=True))
    assert right - left > 1.2 * (top - low)


JOINED = """
Ring: Ch 4; join with sl st in first ch.
Rnd 1: Ch 5 (counts as dc and ch 2), [3 dc in ring, ch 2] 3 times, 2 dc in ring; join with sl st in 3rd ch of beg ch-5.
Rnd 2: Sl st in next ch-2 sp, ch 1, (sc, ch 1, sl st in corresponding ch-3 sp of previous motif, ch 1, sc) in same sp, sc in each of next
  3 dc, (sc, ch 1, sl st in corresponding ch-3 sp of previous motif, ch 1, sc) in next ch-2 sp, [sc in each of next 3 dc, (sc, ch 3, sc)
  in next ch-2 sp] twice, sc in each of next 3 sts; join. (20 sc, 4 ch-3 sps)
"""


def test_a_motif_joined_at_two_corners_does_not_repeat_four_times() -> None:
    layout = lay_out(gallery.fabric_of(gallery.Piece("joined", "square", JOINED)))
    assert [shape.order for shape in layout.shapes] == [4, 1]
