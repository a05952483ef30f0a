"""The key as numbers: every symbol with its names in both terms, and its outlines."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from motifold.render.motif.chart.key import TERMS
from motifold.symbols.ink import outlines
from motifold.symbols.key import KeyEntry
from motifold.symbols.sizes import U_MM

_ROUND = 4


def key_json(entries: Sequence[KeyEntry]) -> dict[str, Any]:
    """``unit``, ``pitch`` and ``symbols``, ready for ``json.dumps``: mm at the size of a chart, y up, the foot at (0, 0).

    ``id`` as in the sprites, with its spaces; ``stitch`` is its US abbreviation (None for a working mark or a pattern's own);
    ``outlines``: one closed polygon for each stroke or filled part, line width included.
    """
    return {"unit": "mm", "pitch": U_MM, "symbols": [_symbol(entry) for entry in entries]}


def _symbol(entry: KeyEntry) -> dict[str, Any]:
    rings = [[[round(x * U_MM, _ROUND), round(y * U_MM, _ROUND)] for x, y in ring] for ring in outlines(entry.marks)]
    names = {terms: {"short": entry.short(terms), "full": entry.full(terms).split(": ")[0]} for terms in TERMS}
    return {"id": entry.id, "stitch": entry.stitch, "names": names, "outlines": rings}
