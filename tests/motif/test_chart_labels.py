"""Numbers, letters and marks of many charts: none crosses a stitch or another, none is under six points."""

from __future__ import annotations

from collections.abc import Iterator

import gallery
import more_pieces
import pytest
import shapely
import unseen_pieces

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
    for chart in (large, prepare(fabric, layout, ChartLook(pitch_mm=1.8), large.symbols)):
        assert not crossings(chart)
        assert all(item.size_pt >= 6 for item in chart.items if item.words)


@pytest.mark.parametrize("piece", PIECES[:3], ids=lambda piece: piece.name)
def test_no_label_of_a_mirrored_chart_crosses_anything(piece: gallery.Piece) -> None:
    fabric = gallery.fabric_of(piece)
    assert not crossings(prepare(fabric, lay_out(fabric), ChartLook(left_handed=True)))
