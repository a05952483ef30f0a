"""The charts of a worked pattern: which motifs in which size, laid out and drawn. The booklet and the command line both ask here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from motifold.render.drawing.display import Drawing
from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.chart import ChartLook, ChartOf, draw_chart
from motifold.render.pattern.model import Pattern
from motifold.render.worked import Worked, WorkedSize


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
    """Motifs by name, and an edging where ``motif`` names it; those without a stitch are left out."""
    pieces = dict(size.fabrics) if motif is None else {**size.fabrics, **size.edgings}
    return {name: fabric for name, fabric in pieces.items() if fabric.stitches and motif in (None, name)}


def charts_of(worked: Worked, motif: str | None = None) -> tuple[ChartOf, ...]:
    """Every motif in every size, laid out; sizes that share a Fabric share its Layout."""
    layouts: dict[int, Layout] = {}
    charts = []
    for size in worked.sizes:
        for name, fabric in pieces_of(size, motif).items():
            if id(fabric) not in layouts:
                layouts[id(fabric)] = lay_out(fabric)
            charts.append(ChartOf(name, size.choice.name, fabric, layouts[id(fabric)]))
    return tuple(charts)


def draw_charts(worked: Worked, look: ChartLook, motif: str | None = None, steps: bool = False) -> tuple[NamedDrawing, ...]:
    """One drawing for each motif of the largest size; with ``steps`` one for each round, all of one size and place."""
    size = largest_size(worked, (motif,) if motif else ())
    if size is None:
        return ()
    drawings = []
    for name, fabric in pieces_of(size, motif).items():
        layout = lay_out(fabric)
        titled = replace(look, title=look.title or f"{worked.pattern.title}: {name}")
        if not steps:
            drawings.append(NamedDrawing(name, draw_chart(fabric, layout, titled)))
            continue
        for number in sorted({r.number for r in fabric.rounds if r.number is not None}):
            step = replace(titled, show=(1, number), emphasise=number, title=f"{titled.title}, {_word(fabric)} {number}")
            drawings.append(NamedDrawing(f"{name}-{number:02d}", draw_chart(fabric, layout, step)))
    return tuple(drawings)


def _word(fabric: Fabric) -> str:
    return "row" if fabric.worked == "rows" else "round"
