"""The schematics of a worked pattern: which size, and which drawings in which order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.assembly.colour_plan import draw_colour_plan
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps, headed
from motifold.render.charts import NamedDrawing
from motifold.render.drawing.display import Drawing
from motifold.render.joining import draw_joins
from motifold.render.sizing.colourways import place_colourways
from motifold.render.worked import Worked, WorkedSize


def drawn_size(worked: Worked) -> WorkedSize | None:
    """The size that schematics show: the one with the most work in its panels (``work_pattern`` may have kept a single one); else None."""

    def work(size: WorkedSize) -> tuple[int, float]:
        panels = size.assembly.panels if size.assembly is not None else ()
        widths = [width or 0.0 for width in size.widths_cm.values()]
        return sum(len(size.fabrics[panel.motif].stitches) for panel in panels if panel.motif in size.fabrics), sum(widths)

    made = [size for size in worked.sizes if size.assembly is not None and size.assembly.panels]
    return max(made, key=work, default=None)


def draw_schematics(worked: Worked, size: WorkedSize, steps: bool = False) -> tuple[NamedDrawing, ...]:
    """The net, its colourways, the finished thing with its edgings, charts of motifs that join as they are worked; with ``steps`` one for
    each step.

    Each says whose it is; of a pattern with several sizes, which one it shows, in its title and above the drawing.
    """
    if size.assembly is None:
        return ()
    if steps:
        drawn = [(f"step-{i:02d}", drawing) for i, drawing in enumerate(draw_steps(size.assembly), 1)]
    else:
        finished = draw_finished(size.assembly, rims=size.rims)
        colours = draw_colour_plan(size.assembly, place_colourways(worked.pattern, size.assembly).ways)
        drawn = [("net", draw_net(size.assembly))]
        drawn += [(short, drawing) for short, drawing in (("colourways", colours), ("finished", finished)) if drawing is not None]
        drawn += [(one.name, one.drawing) for one in draw_joins(worked, size)]
    sizes = worked.pattern.size.bodies if worked.pattern.size is not None else ()
    names = [other.choice.name for other in worked.sizes if _as_large(other, size)] if len(sizes) > 1 else []
    return tuple(NamedDrawing(short, _named(drawing, worked.pattern.title, names)) for short, drawing in drawn)


def _as_large(one: WorkedSize, other: WorkedSize) -> bool:
    """Whether two sizes have the same schematics."""
    return (one.assembly, one.rims) == (other.assembly, other.rims)


def _named(drawing: Drawing, title: str, sizes: Sequence[str]) -> Drawing:
    """The drawing with the pattern's title before its own, and with its size in words above it."""
    whole = drawing.title if drawing.title.startswith(title) else f"{title}: {drawing.title[:1].lower()}{drawing.title[1:]}"
    if not sizes:
        return replace(drawing, title=whole)
    return headed(replace(drawing, title=whole), f"Size{'s' if len(sizes) > 1 else ''} {', '.join(sizes)}")
