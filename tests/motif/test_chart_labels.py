"""Numbers, letters and marks of many charts: none crosses a stitch or another, none is under six points."""

from __future__ import annotations

from collections.abc import Iterator

import gallery
import more_pieces
import pytest
import shapely
import unseen_pieces
from chart_pieces import fabric_of_text

from motifold.render.motif import lay_out
from motifold.render.motif.chart import ChartLook, prepare
from motifold.render.motif.chart.draw import Prepared
from motifold.render.motif.chart.items import Item, item_box
from motifold.symbols.ink import outlines

SLOW = [pytest.mark.slow, pytest.mark.sampled]
PIECES = [*gallery.PIECES[:2], *(piece for piece in gallery.PIECES[3:] if "10" not in piece.name), *more_pieces.MORE[::4]]
LATER = [*gallery.PIECES, *more_pieces.MORE, *unseen_pieces.UNSEEN]
EVERY = [*PIECES, *(pytest.param(piece, marks=SLOW) for piece in LATER if piece not in PIECES)]


def areas_of(item: Item) -> Iterator[shapely.Geometry]:
    """What an item inks: the box of its words, the outlines of its marks (the ring around a letter with what it encloses)."""
    if item.words:
        yield shapely.box(*item_box(item))
    for ring in outlines(item.marks):
        yield shapely.Polygon(ring).buffer(0)


def crossings(chart: Prepared) -> list[str]:
    """Every item that meets the ink of a stitch or another item."""
    ink = shapely.STRtree([shapely.Polygon(ring) for symbol in chart.symbols for ring in outlines(symbol.marks)])
    areas = [shapely.union_all(list(areas_of(item))) for item in chart.items]
    found = [f"{i.kind} {i.words} over a stitch" for i, area in zip(chart.items, areas, strict=True) if len(ink.query(area, "intersects"))]
    for k, area in enumerate(areas):
        found += [f"{chart.items[k].kind} over {chart.items[j].kind}" for j in range(k) if areas[j].intersects(area)]
    return found


@pytest.mark.parametrize("piece", EVERY, ids=lambda piece: piece.name)
def test_no_label_crosses_a_stitch_or_another_label(piece: gallery.Piece) -> None:
    fabric = gallery.fabric_of(piece)
    layout = lay_out(fabric)
    large = prepare(fabric, layout, ChartLook(pitch_mm=3.0))
    for chart in (large, prepare(fabric, layout, ChartLook(pitch_mm=1.8), large)):
        assert not crossings(chart)
        assert all(item.size_pt >= 6 for item in chart.items if item.words)


RAYS = '''
[motif.m]
shape = "circle"
rounds = """
Ring: Make a magic ring.
Rnd 1 (RS): With A, ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3. Fasten off.
Rnd 2: With B, join with sl st in any st, ch 1 (does not count as a st), 2 sc in each st around; join with sl st in first sc. Fasten off.
Rnd 3: With A, join with sl st in any st, ch 3 (counts as dc), dc in each st around; join with sl st in top of beg ch-3. Fasten off.
Rnd 4: With B, join with sl st in any st, ch 3 (counts as dc), dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
Finish: Fasten off.
"""
'''
"""Yarns that are joined and cut in every round at one place: more marks than there is white for."""


@pytest.mark.parametrize("left_handed", [False, True])
def test_no_leader_crosses_another_or_a_label(left_handed: bool) -> None:
    fabric = fabric_of_text(RAYS)
    chart = prepare(fabric, lay_out(fabric), ChartLook(left_handed=left_handed))
    leaders = [(item, shapely.LineString(item.leader)) for item in chart.items if item.leader is not None]
    assert leaders
    for k, (item, line) in enumerate(leaders):
        assert not any(line.crosses(other) for _, other in leaders[:k])
        assert not any(line.intersects(shapely.box(*item_box(other))) for other in chart.items if other is not item and other.words)


@pytest.mark.parametrize("piece", PIECES[:3], ids=lambda piece: piece.name)
def test_no_label_of_a_mirrored_chart_crosses_anything(piece: gallery.Piece) -> None:
    fabric = gallery.fabric_of(piece)
    assert not crossings(prepare(fabric, lay_out(fabric), ChartLook(left_handed=True)))
