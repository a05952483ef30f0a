"""Charts as data for other programs: every symbol with its place, its outlines in mm and what it belongs to."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.draw import is_shown, own_symbols
from motifold.render.motif.chart.ink import capsules, weighted
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.scene import Symbol, symbols_of
from motifold.render.motif.chart.tones import tone_of
from motifold.render.motif.model import Layout, Point
from motifold.symbols.ink import Polygon, Stroke, outline
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

@dataclass(frozen=True, slots=True)
class ChartOf:
    """One chart to be told: the motif's name, the size's name, and what is placed."""

    motif: str
    size: str
    fabric: Fabric
    layout: Layout


def chart_json(charts: Sequence[ChartOf], look: ChartLook) -> dict[str, Any]:
    """``unit``, ``pitch`` and ``charts``, ready for ``json.dumps``. Millimetres, y up, the motif's centre at (0, 0).

    ``outlines``: one closed polygon for each stroke or filled part, line width included. A beginning chain that counts is there twice:
    as the stitch that it stands for, with foot and head and no outlines, and as its chains. ``round`` is 0 for what is made before
    round 1.
    """
    return {"unit": "mm", "pitch": look.pitch_mm, "charts": [_chart(chart, look) for chart in charts]}


def _chart(chart: ChartOf, look: ChartLook) -> dict[str, Any]:
    symbols = symbols_of(chart.fabric, chart.layout, look.left_handed, own_symbols(look.symbols))
    shown = [symbol for symbol in symbols if is_shown(symbol.round, look) and not symbol.given]
    rings = _rings(shown, chart.fabric, look)
    told = [_symbol(symbol, edges, look.pitch_mm) for symbol, edges in zip(shown, rings, strict=True)]
    return {"motif": chart.motif, "size": chart.size, "symbols": told}


def _rings(symbols: Sequence[Symbol], fabric: Fabric, look: ChartLook) -> list[list[list[list[float]]]]:
    """The outlines of each symbol in mm, to a tenth of a thousandth; scaled and rounded for the whole chart at once.

    Straight strokes, half of all ink, are outlined for the whole chart at once too.
    """
    import numpy as np

    straight: list[Stroke] = []
    edges: list[list[Polygon | None]] = []
    for symbol in symbols:
        weight = tone_of(symbol.round_index, fabric.rounds, look, symbol.yarn).weight
        rings: list[Polygon | None] = []
        for mark in symbol.marks:
            drawn = weighted(mark, weight)
            if isinstance(drawn, Stroke) and len(drawn.points) == 2 and not drawn.closed:
                straight.append(drawn)
                rings.append(None)
            else:
                rings.append(outline(drawn))
        edges.append(rings)
    bars = iter(_in_mm(capsules(straight), look.pitch_mm)) if straight else iter(())
    points = [point for rings in edges for ring in rings if ring is not None for point in ring]
    flat = _in_mm(np.asarray(points).reshape(-1, 2), look.pitch_mm)
    out: list[list[list[list[float]]]] = []
    at = 0
    for rings in edges:
        told = []
        for ring in rings:
            told.append(next(bars) if ring is None else flat[at : at + len(ring)])
            at += 0 if ring is None else len(ring)
        out.append(told)
    return out


def _in_mm(points: NDArray[np.float64], u: float) -> list[Any]:
    import numpy as np

    told: list[Any] = (np.round(points * u, 4) + 0.0).tolist()
    return told


def _symbol(symbol: Symbol, rings: list[list[list[float]]], u: float) -> dict[str, Any]:
    def mm(point: Point) -> list[float]:
        return [round(point[0] * u, 9) + 0.0, round(point[1] * u, 9) + 0.0]

    return {
        "id": symbol.id,
        "stitch": symbol.stitch,
        "round": symbol.round,
        "index": symbol.index,
        "yarn": symbol.yarn or None,
        "into": list(symbol.into),
        "foot": mm(symbol.foot),
        "head": mm(symbol.head),
        "group": symbol.group,
        "touches": list(symbol.touches),
        "outlines": rings,
    }
