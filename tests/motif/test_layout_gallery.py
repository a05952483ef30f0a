"""The gallery keeps its measures: nothing overlaps, sides are straight, circles round, stitches as long as they are, symmetry exact."""

from __future__ import annotations

from functools import cache

import gallery
import measures
import pytest

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.radial import lay_rounds

NAMES = [piece.name for piece in gallery.PIECES]
POLYGONS = [piece.name for piece in gallery.PIECES if not piece.rows and piece.shape in ("square", "hexagon", "octagon", "triangle")]
CIRCLES = ["dc circle, 6", "sc circle, 12", "sc spiral, 12"]
CHANGES_SHAPE = {"flower to square": (0.6, 1.6), "half hexagon": (0.6, 1.6), "posts, popcorns, decreases": (0.6, 1.6)}
"""Pieces with a round that changes the shape of the one below, or draws legs together over wide gaps: the wider bounds."""


@cache
def placed(name: str) -> tuple[Fabric, Layout]:
    piece = next(piece for piece in gallery.PIECES if piece.name == name)
    fabric = gallery.fabric_of(piece)
    return fabric, lay_out(fabric)


@pytest.mark.parametrize("name", NAMES)
def test_no_two_symbols_overlap_or_crowd(name: str) -> None:
    found = measures.contacts(measures.symbols(*placed(name)))
    assert not found.overlaps
    assert not found.near


@pytest.mark.parametrize("name", NAMES)
def test_every_stitch_with_ink_has_a_place(name: str) -> None:
    fabric, layout = placed(name)
    assert {p.stitch for p in layout.placed} == {s.id for s in fabric.stitches}


@pytest.mark.parametrize("name", NAMES)
def test_stems_are_as_long_as_their_stitches(name: str) -> None:
    least, most = CHANGES_SHAPE.get(name, (0.88, 1.3))
    parts = [part for _, part in measures.lengths(*placed(name))]
    assert least <= min(parts)
    assert max(parts) <= most


@pytest.mark.parametrize("name", NAMES)
def test_chains_keep_their_pitch(name: str) -> None:
    pitches = measures.pitches(*placed(name))
    assert not pitches or (min(pitches) >= 0.79 and max(pitches) <= 1.4)


@pytest.mark.parametrize("name", POLYGONS)
def test_sides_are_straight_and_corners_true(name: str) -> None:
    shape = measures.polygon_shape(*placed(name))
    assert shape is not None
    assert shape.bow <= 0.005
    assert shape.corner <= 0.5
    assert shape.aspect <= 0.005


@pytest.mark.parametrize("name", CIRCLES)
def test_circles_are_round(name: str) -> None:
    assert measures.radius_spread(*placed(name)) <= 0.005


@pytest.mark.parametrize("name", [piece.name for piece in gallery.PIECES if not piece.rows])
def test_symmetry_and_order_are_those_of_the_stitches(name: str) -> None:
    fabric, layout = placed(name)
    ground = lay_rounds(fabric)
    for number, course in ground.courses.items():
        assert measures.symmetry_error(layout, course, ground.order[number]) < 1e-6
        assert measures.order_errors(layout, course) == 0


@pytest.mark.parametrize("name", NAMES)
def test_charts_are_not_thin(name: str) -> None:
    piece = next(piece for piece in gallery.PIECES if piece.name == name)
    assert measures.ink_share(measures.symbols(*placed(name))) >= (0.08 if piece.lace or "open" in name else 0.1)


def test_the_open_square_repeats_four_times_and_the_circle_twelve() -> None:
    assert set(lay_rounds(placed("open square of 3s, 5")[0]).order.values()) == {4}
    assert set(lay_rounds(placed("dc circle, 6")[0]).order.values()) == {12}


def test_the_same_fabric_gives_the_same_layout() -> None:
    fabric, layout = placed("lace wheel, 11")
    assert lay_out(fabric) == layout


def test_a_swatch_is_a_grid_with_its_turning_chains_at_the_right_ends() -> None:
    fabric, layout = placed("swatch 20 x 8")
    at = {p.stitch: p for p in layout.placed}
    for number in range(1, len(fabric.rounds)):
        stitches = [s for s in fabric.round_stitches(number) if s.role in ("stitch", "standing")]
        levels = {round(at[s.id].head[1], 6) for s in stitches}
        assert len(levels) == 1
        xs = [at[s.id].head[0] for s in stitches]
        assert xs == sorted(xs, reverse=fabric.rounds[number].direction > 0)
        turning = next(s for s in stitches if s.role == "standing")
        chain = at[turning.chains[0]]
        assert abs(chain.head[0] - at[turning.id].head[0]) < 0.1
