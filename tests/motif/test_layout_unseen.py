"""Motifs met for the first time: what holds for them, and what is known not to."""

from __future__ import annotations

from functools import cache

import gallery
import measures
import pytest
from unseen_pieces import UNSEEN

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.gores import gores_of
from motifold.render.motif.radial import lay_rounds

CROWDED = {
    "shawl with spine": "2 pairs: neighbours in the third row of a half motif",
}
"""Known to overlap or to come too near, with the reason."""


@cache
def placed(name: str) -> tuple[Fabric, Layout]:
    fabric = gallery.fabric_of(next(piece for piece in UNSEEN if piece.name == name))
    return fabric, lay_out(fabric)


@pytest.mark.parametrize(
    "name",
    [pytest.param(p.name, marks=pytest.mark.xfail(strict=True, reason=CROWDED[p.name])) if p.name in CROWDED else p.name for p in UNSEEN],
)
def test_no_two_symbols_overlap_or_crowd(name: str) -> None:
    found = measures.contacts(measures.symbols(*placed(name)))
    assert not found.overlaps
    assert not found.near


@pytest.mark.parametrize("name", [piece.name for piece in UNSEEN])
def test_every_stitch_has_a_place(name: str) -> None:
    fabric, layout = placed(name)
    assert {p.stitch for p in layout.placed} == {s.id for s in fabric.stitches}


def test_a_ball_keeps_its_stitches_as_long_as_they_are() -> None:
    parts = [part for _, part in measures.lengths(*placed("capsule"))]
    assert min(parts) >= 0.9
    assert max(parts) <= 1.5


def test_a_gore_is_all_that_one_stitch_of_the_last_round_grew_from() -> None:
    fabric, _ = placed("capsule")
    gores = gores_of(fabric)
    last = {s.id for s in fabric.round_stitches(len(fabric.rounds) - 1) if s.role == "stitch"}
    assert set(gores.values()) == last
    # Rounds that still increase are not cut.
    assert not any(s.id in gores for number in (1, 2, 3) for s in fabric.round_stitches(number))


def test_between_gores_the_wedge_is_wider_than_between_stitches_of_one() -> None:
    fabric, layout = placed("capsule")
    course = lay_rounds(fabric).courses[9]
    gores = gores_of(fabric)
    points = measures.heads(layout, course)
    names = [gores[stem.stitch.id] for stem in course.stems]
    size = course.size
    gaps = [(names[i] != names[(i + 1) % size], abs(points[(i + 1) % size] - points[i])) for i in range(size)]
    assert min(gap for cut, gap in gaps if cut) > 3 * max(gap for cut, gap in gaps if not cut)
