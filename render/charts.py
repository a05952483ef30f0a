"""The charts of a worked pattern: which motifs in which size, laid out and drawn. The booklet and the command line both ask here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import atan2, hypot, tau

from motifold.render.drawing.display import Drawing
from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.chart import ChartLook, ChartOf, draw_prepared, prepare
from motifold.render.pattern.model import Pattern
from motifold.render.worked import Worked, WorkedSize
from motifold.symbols.record import dataclass

WIDEST_U = 80.0
"""Wider than this an edging is not drawn whole: on a page of 180 mm its double crochets would be under 5 mm."""
CORNER_U = 8.0
"""How much is drawn beyond the corners of a side."""


@dataclass(frozen=True, slots=True)
class NamedDrawing:
    """A drawing and the short name that its file gets: "square", "square-rnd-03"."""

    name: str
    drawing: Drawing


def pattern_look(pattern: Pattern, look: ChartLook) -> ChartLook:
    """``look`` with what the pattern says: its yarns' colours, its own symbols and how its stitches are called."""
    return replace(
        look,
        yarn_colors={yarn.key: yarn.hex for yarn in pattern.yarns if yarn.hex},
        symbols={stitch.key: stitch.symbol for stitch in pattern.stitches if stitch.symbol},
        names={stitch.key: stitch.name for stitch in pattern.stitches},
    )


def largest_size(worked: Worked, of: Sequence[str] = ()) -> WorkedSize | None:
    """The size that works the most stitches: its charts hold those of the others."""

    def stitches(size: WorkedSize) -> int:
        pieces = {**size.fabrics, **size.edgings}
        return sum(len(fabric.stitches) for name, fabric in pieces.items() if not of or name in of)

    return max(worked.sizes, key=stitches, default=None)


def pieces_of(size: WorkedSize, motif: str | None = None) -> dict[str, Fabric]:
    """Motifs and then edgings by name, or only the one that ``motif`` names; those without a stitch of their own are left out."""
    pieces = {**size.fabrics, **size.edgings}
    return {name: fabric for name, fabric in pieces.items() if motif in (None, name) and any(s.role != "given" for s in fabric.stitches)}


def charts_of(worked: Worked, motif: str | None = None) -> tuple[ChartOf, ...]:
    """Every motif and edging in every size, laid out; sizes that share a Fabric share its Layout."""
    layouts: dict[int, Layout] = {}
    charts = []
    for size in worked.sizes:
        for name, fabric in pieces_of(size, motif).items():
            if id(fabric) not in layouts:
                layouts[id(fabric)] = lay_out(fabric)
            charts.append(ChartOf(name, size.choice.name, fabric, layouts[id(fabric)]))
    return tuple(charts)


def draw_charts(worked: Worked, look: ChartLook, motif: str | None = None, steps: bool = False) -> tuple[NamedDrawing, ...]:
    """One drawing for each motif and edging of the largest size; with ``steps`` one for each round, all of one size and place."""
    size = largest_size(worked, (motif,) if motif else ())
    if size is None:
        return ()
    drawings: list[NamedDrawing] = []
    for name, fabric in pieces_of(size, motif).items():
        layout = lay_out(fabric)
        part = part_of(fabric, layout)
        what = f"{name}, the first part" if part else name
        titled = replace(look, title=look.title or f"{worked.pattern.title}: {what}", sector=part)
        chart = prepare(fabric, layout, titled)
        if not steps:
            drawings.append(NamedDrawing(name, draw_prepared(fabric, layout, chart, titled)))
            continue
        first, last = look.show or (1, 10**6)
        for number in sorted({r.number for r in fabric.rounds if r.number is not None and first <= r.number <= last}):
            step = replace(titled, show=(first, number), emphasise=number, title=f"{titled.title}, {_word(fabric)} {number}")
            drawings.append(NamedDrawing(f"{name}-{number:02d}", draw_prepared(fabric, layout, chart, step)))
    return tuple(drawings)


def part_of(fabric: Fabric, layout: Layout) -> tuple[float, float] | None:
    """The sector of an edging that is drawn where the whole would be too wide for any page: its first side with its corners.

    None for everything else, which is drawn whole.
    """
    first = next((shape for shape in layout.shapes), None)
    if not fabric.rounds or fabric.rounds[0].kind != "edge" or fabric.worked == "rows" or first is None:
        return None
    reach = max((hypot(*p.head) for p in layout.placed), default=0.0)
    if 2 * reach <= WIDEST_U:
        return None
    corners = sorted({round(atan2(y, x) % tau, 6) for x, y in first.corners})
    start = atan2(first.start[1], first.start[0]) % tau
    beyond = CORNER_U / reach
    if len(corners) >= 3:
        before = max((c for c in corners if c <= start), default=corners[-1] - tau)
        after = min((c for c in corners if c > start), default=corners[0] + tau)
        if (after - before) * reach <= WIDEST_U:
            return (before - beyond, after + beyond)
    return (start - beyond, start + (WIDEST_U - CORNER_U) / reach)


def _word(fabric: Fabric) -> str:
    return "row" if fabric.worked == "rows" else "round"
