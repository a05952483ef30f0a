"""The figures of a booklet, made by the rooms that draw: charts and keys of the motifs, nets and seams of the assembly."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from motifold.render.booklet.model import Figure, Look
from motifold.render.booklet.paper import grid_for
from motifold.render.booklet.steps import OVERVIEW_SHARE, step_room
from motifold.render.drawing.display import Drawing, Group, Text
from motifold.render.drawing.measure import around, bounds
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.fabric.model import Fabric
from motifold.render.motif.model import Layout
from motifold.render.pattern.model import Terms
from motifold.render.worked import Worked, WorkedSize

_KEY_SIDE_MM = 56.0        # one column of a key
_LEAST_PITCH_MM = 1.3      # below it a symbol is lower than 3 mm in print


def motif_figures(worked: Worked, size: WorkedSize, look: Look, terms: Terms) -> tuple[Figure, ...]:
    """For each motif its chart and the key of the symbols in it."""
    from motifold.render.motif import lay_out
    from motifold.render.motif.chart import ChartLook, draw_chart, draw_key, entries_used

    pattern = worked.pattern
    chart_look = ChartLook(
        mono=look.mono,
        left_handed=look.left_handed,
        yarn_colors={yarn.key: yarn.hex for yarn in pattern.yarns if yarn.hex},
        symbols={stitch.key: stitch.symbol for stitch in pattern.stitches if stitch.symbol},
        names={stitch.key: stitch.name for stitch in pattern.stitches},
        terms=terms,
    )
    figures: list[Figure] = []
    for name, fabric in size.fabrics.items():
        if not any(stitch.role != "given" for stitch in fabric.stitches):
            continue
        layout = lay_out(fabric)

        def drawn(scale: float, fabric: Fabric = fabric, layout: Layout = layout) -> Drawing:
            return draw_chart(fabric, layout, replace(chart_look, pitch_mm=chart_look.pitch_mm * scale))

        drawing = draw_chart(fabric, layout, replace(chart_look, furniture=False))
        least = _LEAST_PITCH_MM / chart_look.pitch_mm
        caption = chart_caption(worked, size, name, fabric, look)
        figures.append(Figure("chart", drawing, caption, name, smallest=least, comfortable=1.45 * least, largest=1.35, redrawn=drawn))
        entries = entries_used([fabric], chart_look)
        if entries:
            narrow, *wider = [draw_key(entries, terms, width) for width in key_widths(look)]
            figures.append(Figure("key", narrow, "", name, smallest=0.9, largest=1.0, variants=tuple(wider)))
    return tuple(figures)


def key_widths(look: Look) -> tuple[float, ...]:
    """A narrow key to stand beside a chart, one as wide as a column, one across the page; in mm."""
    grid = grid_for(look.paper)
    widths = {_KEY_SIDE_MM, grid.column_width * MM_PER_PT, grid.text_width * MM_PER_PT}
    return tuple(sorted(widths))


def chart_caption(worked: Worked, size: WorkedSize, name: str, fabric: Fabric, look: Look) -> str:
    """What the chart shows, and where the smaller sizes stop."""
    numbers = [this.number for this in fabric.rounds if this.number is not None]
    unit = "row" if fabric.worked == "rows" else "round"
    shown = f"{unit}s {min(numbers)} to {max(numbers)}" if len(numbers) > 1 else f"{unit} {numbers[0]}" if numbers else "the whole"
    caption = f"{name.replace('_', ' ').capitalize()}: {shown}"
    smaller: dict[int, list[str]] = {}
    for other in worked.sizes:
        worked_to = max((this.number or 0 for this in other.fabrics[name].rounds), default=0) if name in other.fabrics else 0
        if look.size is None and numbers and 0 < worked_to < max(numbers):
            smaller.setdefault(worked_to, []).append(other.choice.name)
    if not smaller:
        return caption + "."
    stops = "; ".join(f"{_listed(names)} after {unit} {last}" for last, names in sorted(smaller.items()))
    return f"{caption}, size {size.choice.name}. {'These end' if len(smaller) > 1 else 'This ends'} earlier: {stops}."


def _listed(names: Iterable[str]) -> str:
    kept = list(names)
    return kept[0] if len(kept) == 1 else f"{', '.join(kept[:-1])} and {kept[-1]}"


def assembly_figures(size: WorkedSize, look: Look) -> tuple[Figure, ...]:
    """The net with its seams, each step beside its words, and the finished thing; drawn for the room that they get, so that letters keep
    their size."""
    assembly = size.assembly
    if assembly is None or not assembly.panels:
        return ()
    from motifold.render.assembly.finished import draw_finished
    from motifold.render.assembly.net_drawing import draw_net
    from motifold.render.assembly.step_drawings import draw_steps
    from motifold.render.assembly.steps import assembly_steps

    grid = grid_for(look.paper)
    wide, high = grid.text_width * MM_PER_PT, grid.text_height * MM_PER_PT
    small = grid.columns == 1  # on a small page drawings need more of it to keep their letters apart
    net = draw_net(assembly, wide if small else OVERVIEW_SHARE * wide, (0.54 if small else 0.42) * high)
    figures = [Figure("net", net, "The net, right side up, with its seams in the order they are worked.", smallest=0.85, largest=1.0)]
    drawn = [step.number for step in assembly_steps(assembly) if step.kind != "fold flat"]
    step_drawings = draw_steps(assembly, *(side * MM_PER_PT for side in step_room(grid)))
    for number, drawing in zip(drawn, step_drawings, strict=True):
        figures.append(Figure("step", drawing, "", step=number, smallest=0.85, largest=1.0))
    finished = draw_finished(assembly, min(wide, grid.column_width * MM_PER_PT), (0.4 if small else 0.3) * high)
    if finished is not None:
        sized = f", size {size.choice.name}" if size.choice.name != "One size" else ""
        figures.append(Figure("finished", finished, f"{finished.title}{sized}.", smallest=0.85, largest=1.0))
    return tuple(figures)


def cover_pictures(figures: Iterable[Figure]) -> tuple[Drawing | None, Drawing | None]:
    """For the cover: the first chart, and the finished thing beside it without its names and measurements (alone, if there is no chart)."""
    kept = tuple(figures)
    chart = next((figure.drawing for figure in kept if figure.role == "chart"), None)
    finished = next((figure.drawing for figure in kept if figure.role == "finished"), None)
    if chart is None:
        return finished, None
    return chart, _without_measurements(finished) if finished else None


def _without_measurements(drawing: Drawing) -> Drawing | None:
    shown = [
        operation
        for operation in drawing.operations
        if not isinstance(operation, Text) and not (isinstance(operation, Group) and operation.css_class == "dimension")
    ]
    return around(shown, 0.5, drawing.title, drawing.description) if bounds(shown) else None
