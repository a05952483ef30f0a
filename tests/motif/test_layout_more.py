"""Everyday motifs beside the gallery: no symbol is left out, none overlaps another, order and symmetry hold."""

from __future__ import annotations

from functools import cache

import gallery
import measures
import pytest
from more_pieces import MORE

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.radial import lay_rounds

NAMES = [piece.name for piece in MORE]


@cache
def placed(name: str) -> tuple[Fabric, Layout]:
    fabric = gallery.fabric_of(next(piece for piece in MORE if piece.name == name))
    return fabric, lay_out(fabric)


@pytest.mark.parametrize("name", NAMES)
def test_no_two_symbols_overlap_and_none_is_left_out(name: str) -> None:
    fabric, layout = placed(name)
    found = measures.contacts(measures.symbols(fabric, layout))
    assert not found.overlaps
    assert not found.near
    assert {p.stitch for p in layout.placed} == {s.id for s in fabric.stitches}


@pytest.mark.parametrize("name", [piece.name for piece in MORE if not piece.rows])
def test_order_and_symmetry_are_those_of_the_stitches(name: str) -> None:
    fabric, layout = placed(name)
    if layout.turn == 0.0 and fabric.polygon == 0 and any(r.kind == "foundation" for r in fabric.rounds):
        pytest.skip("an oval goes round a chain, not a centre")
    ground = lay_rounds(fabric)
    for number, course in ground.courses.items():
        assert measures.symmetry_error(layout, course, ground.order[number]) < 1e-6
        assert measures.order_errors(layout, course) == 0


def test_a_ripple_rises_over_its_increases_and_falls_over_its_decreases() -> None:
    fabric, layout = placed("ripple")
    at = {p.stitch: p for p in layout.placed}
    row = [s for s in fabric.round_stitches(3) if s.role in ("stitch", "standing")]
    valleys = [at[s.id].head[1] for s in row if len(s.legs) == 3]
    middle = sum(at[s.id].head[1] for s in row) / len(row)
    assert max(valleys) < middle - 0.5


def test_an_oval_is_longer_than_wide_and_lies_level() -> None:
    _, layout = placed("oval")
    xs, ys = [p.head[0] for p in layout.placed], [p.head[1] for p in layout.placed]
    assert max(xs) - min(xs) > 1.5 * (max(ys) - min(ys))
