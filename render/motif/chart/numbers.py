"""Charts as data for other programs: every symbol with its place, its outlines in mm and what it belongs to."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.draw import is_shown, own_symbols
from motifold.render.motif.chart.ink import weighted
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.scene import Symbol, symbols_of
from motifold.render.motif.chart.tones import tone_of
from motifold.render.motif.model import Layout, Point
from motifold.symbols.ink import outline
from motifold.symbols.record import dataclass


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
    """The outlines of each symbol in mm, to a tenth of a thousandth; scaled and rounded for the whole chart at once."""
    import numpy as np

    edges = []
    for symbol in symbols:
        weight = tone_of(symbol.round_index, fabric.rounds, look, symbol.yarn).weight
        edges.append([outline(weighted(mark, weight)) for mark in symbol.marks])
    points = [point for rings in edges for ring in rings for point in ring]
    flat: list[list[float]] = (np.round(np.asarray(points).reshape(-1, 2) * look.pitch_mm, 4) + 0.0).tolist()
    out: list[list[list[list[float]]]] = []
    at = 0
    for rings in edges:
        told = []
        for ring in rings:
            told.append(flat[at : at + len(ring)])
            at += len(ring)
        out.append(told)
    return out


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
