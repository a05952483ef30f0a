"""Everyday motifs in rounds: what holds for all of them, and what is known not to."""

from __future__ import annotations

from functools import cache

import gallery
import measures
import pytest
from round_pieces import IN_ROUNDS

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.arc import bend, upright_loop
from motifold.render.motif.radial import lay_rounds

NAMES = [piece.name for piece in IN_ROUNDS]
SQUARED = ("wheel squared over three rounds", "circle in square puff", "sunburst granny")
CHANGES_SHAPE = {*SQUARED, "6-petal rose squared by 12", "african flower hexagon", "doily slight corners"}
LEANING = {"snowflake picots": 1.6, "african flower hexagon": 1.6, "6-petal rose squared by 12": 1.63}


@cache
def placed(name: str) -> tuple[Fabric, Layout]:
    fabric = gallery.fabric_of(next(piece for piece in IN_ROUNDS if piece.name == name))
    return fabric, lay_out(fabric)


@pytest.mark.parametrize("name", NAMES)
def test_no_two_symbols_overlap_or_crowd(name: str) -> None:
    found = measures.contacts(measures.symbols(*placed(name)))
    assert not found.overlaps
    assert not found.near


@pytest.mark.parametrize("name", NAMES)
def test_no_stem_is_stretched_to_reach_its_round(name: str) -> None:
    most = LEANING.get(name, 1.6 if name in CHANGES_SHAPE else 1.3)
    assert max(part for _, part in measures.lengths(*placed(name))) <= most


@pytest.mark.parametrize("name", NAMES)
def test_order_and_symmetry_are_those_of_the_stitches(name: str) -> None:
    fabric, layout = placed(name)
    ground = lay_rounds(fabric)
    for number, course in ground.courses.items():
        assert measures.symmetry_error(layout, course, ground.order[number]) < 1e-6
        assert measures.order_errors(layout, course) == 0


@pytest.mark.parametrize("name", SQUARED)
def test_a_circle_ends_as_a_true_square_without_stems_out_of_reach(name: str) -> None:
    shape = measures.polygon_shape(*placed(name))
    assert shape is not None
    assert shape.bow <= 0.005
    assert shape.corner <= 0.5
    assert shape.aspect <= 0.005
    assert min(part for _, part in measures.lengths(*placed(name))) >= 0.6


def test_picots_of_one_place_fan_out_and_are_tied_to_it() -> None:
    fabric, layout = placed("trefoils of picots")
    picots = {run.id for run in fabric.runs if run.role == "picot"}
    assert len(picots) == 18
    assert picots <= {link.run for link in layout.links}


def test_a_frame_round_a_chain_is_a_true_rectangle() -> None:
    fabric, layout = placed("rect dc frame")
    shape = measures.polygon_shape(fabric, layout)
    assert shape is not None
    assert shape.bow <= 0.005
    assert shape.corner <= 0.5
    corners = layout.shapes[-1].corners
    assert len({round(abs(x), 6) for x, _ in corners}) == 1
    assert len({round(abs(y), 6) for _, y in corners}) == 1
    assert abs(corners[0][0]) > 1.5 * abs(corners[0][1])


def test_a_loop_between_two_rays_is_as_long_as_asked_and_keeps_between_them() -> None:
    start, end = 5 + 0j, 5 * complex(0.955336, 0.295520)
    arc = upright_loop(start, end, 1 + 0j, complex(0.955336, 0.295520), 6.0, steps=200)
    assert arc is not None
    assert arc.length == pytest.approx(6.0, abs=0.01)
    assert min(p.imag for p in arc.points) > -1e-6
    assert bend(arc) > 3.2


def test_a_bow_that_keeps_between_its_rays_anyway_is_left_alone() -> None:
    assert upright_loop(5 + 0j, 5 * complex(0.955336, 0.295520), 1 + 0j, complex(0.955336, 0.295520), 1.6) is None
