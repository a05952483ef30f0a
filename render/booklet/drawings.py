"""The figures of a booklet, made by the rooms that draw: charts and keys of the motifs, nets and seams of the assembly."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from motifold.render.booklet.figures import turned
from motifold.render.booklet.model import Anew, Figure, Look
from motifold.render.booklet.paper import grid_of
from motifold.render.booklet.steps import OVERVIEW_SHARE, step_room
from motifold.render.drawing.display import Drawing, Group, Operation, Text
from motifold.render.drawing.measure import around, bounds, place
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.fabric.model import Fabric
from motifold.render.motif.model import Layout
from motifold.render.pattern.model import Pattern
from motifold.render.words.counts import last_round
from motifold.render.words.voice import listed
from motifold.render.worked import Worked, WorkedSize

if TYPE_CHECKING:
    from motifold.render.motif.chart import ChartLook, Prepared

_KEY_SIDE_MM = 56.0        # one column of a key
_KEY_COLUMN_MM = 58.0      # what a key wants for each column of entries
_NUMBERS_MM = 9.0          # beside rows, for their numbers and arrows: measured without them, a long narrow chart would come out small
_KEY_LEAST = 0.96          # and how small it may be drawn to gain one
_HANDSOME_MM = 125.0       # a small chart is drawn so large where there is room,
_LARGEST = 2.2             # but no stitch larger than this many times its own size
_TALL = 1.5                # times as high as wide: a part of an edging is laid down
LEAST_PITCH_MM = 1.3       # below it a symbol is lower than 3 mm in print


def look_of_charts(pattern: Pattern, look: Look) -> ChartLook:
    """How the charts of a booklet are wanted."""
    from motifold.render.charts import pattern_look
    from motifold.render.motif.chart import ChartLook

    return pattern_look(pattern, ChartLook(mono=look.mono, left_handed=look.left_handed, terms=look.terms or pattern.terms))


def motif_figures(worked: Worked, size: WorkedSize, look: Look) -> tuple[Figure, ...]:
    """For each motif and edging its chart and the key of the symbols in it."""
    from motifold.render.charts import part_of, pieces_of
    from motifold.render.motif import lay_out
    from motifold.render.motif.chart import draw_key, draw_prepared, entries_used, prepare

    chart_look = look_of_charts(worked.pattern, look)
    figures: list[Figure] = []
    zoom = grid_of(look).zoom
    for name, fabric in pieces_of(size).items():
        if name in size.edgings and _plain_edging(fabric):
            continue
        layout = lay_out(fabric)
        this_look = replace(chart_look, sector=part_of(fabric, layout))

        bare = replace(this_look, furniture=False)
        prepared = prepare(fabric, layout, bare)
        drawing = draw_prepared(fabric, layout, prepared, bare)
        full = prepare(fabric, layout, this_look, prepared)
        drawn = partial(_drawn, fabric, layout, this_look, prepared, zoom)
        redrawn = _anew(drawn, drawing, full, zoom)
        if fabric.worked == "rows":
            left, bottom, right, top = drawing.box
            drawing = replace(drawing, box=(left - _NUMBERS_MM * zoom, bottom, right + _NUMBERS_MM * zoom, top))
            redrawn = Anew(drawn, (drawing.width_mm, drawing.height_mm), (0.0, 0.0))  # its numbers are measured with it
        least = LEAST_PITCH_MM / chart_look.pitch_mm * zoom**0.5
        caption = chart_caption(worked, size, name, fabric, look)
        if this_look.sector is not None:
            caption = f"{caption[:-1]}; the first part of it."
        largest = max(1.35, min(_LARGEST, _HANDSOME_MM / max(drawing.width_mm, drawing.height_mm))) if name in size.fabrics else 1.0
        comfortable, largest = 1.7 * least * (1.3 * zoom if zoom > 1 else 1.0), largest * zoom
        chart = Figure("chart", drawing, caption, name, smallest=least, comfortable=comfortable, largest=largest, redrawn=redrawn)
        upright = this_look.sector is not None and drawing.height_mm > _TALL * drawing.width_mm
        figures.append(turned(chart) if upright else chart)
        entries = entries_used([fabric], chart_look, full)
        if entries:
            keys = ((width, draw_key(entries, chart_look.terms, drawn_for / zoom, mono=look.mono)) for width, drawn_for in key_widths(look))
            narrow, *wider = [_fitted(zoomed(key, zoom), width) for width, key in keys]
            figures.append(Figure("key", narrow, "", name, smallest=0.9, largest=1.0, variants=tuple(wider)))
    return tuple(figures)


def _drawn(fabric: Fabric, layout: Layout, look: ChartLook, measured: Prepared, zoom: float, scale: float) -> Drawing:
    """The chart made anew at a scale, from the symbols it was measured with; ``zoom``: its letters so many times their usual size."""
    from motifold.render.motif.chart import draw_prepared, prepare

    this = replace(look, pitch_mm=look.pitch_mm * scale / zoom)
    return zoomed(draw_prepared(fabric, layout, prepare(fabric, layout, this, measured), this), zoom)


def _anew(draw: Callable[[float], Drawing], bare: Drawing, full: Prepared, zoom: float) -> Anew:
    """``bare``: the chart without its numbers and marks, ``full``: with them, both at scale 1."""
    (left, low, right, top), core = full.box, full.core
    grows = ((core[2] - core[0]) * full.pitch_mm, (core[3] - core[1]) * full.pitch_mm)
    below = bare.height_mm - grows[1]  # the list of yarns
    keeps = ((right - left) * full.pitch_mm - grows[0], (top - low) * full.pitch_mm - grows[1] + below)
    return Anew(draw, grows, (keeps[0] * zoom, keeps[1] * zoom))


def zoomed(drawing: Drawing, zoom: float) -> Drawing:
    """The drawing so many times as large, with its letters and lines."""
    if zoom == 1.0:
        return drawing
    width, height = drawing.width_mm * zoom, drawing.height_mm * zoom
    return Drawing((0.0, 0.0, width, height), place(drawing, 0.0, 0.0, zoom), drawing.title, drawing.description)


def key_widths(look: Look) -> tuple[tuple[float, float], ...]:
    """A narrow key to stand beside a chart, one as wide as a column, one across the page: its width, and the width it is drawn for, in mm.

    The second is the larger where that makes room for a column more of entries.
    """
    grid = grid_of(look)
    column = _KEY_COLUMN_MM * grid.zoom
    widths = {_KEY_SIDE_MM * grid.zoom, grid.column_width * MM_PER_PT, grid.text_width * MM_PER_PT}
    one_more = {width: (width // column + 1) * column for width in widths}
    return tuple((width, one_more[width] if one_more[width] * _KEY_LEAST <= width else width) for width in sorted(widths))


def _fitted(drawing: Drawing, width: float) -> Drawing:
    """The drawing no wider than ``width`` mm."""
    scale = min(1.0, width / max(drawing.width_mm, 1e-6))
    return drawing if scale == 1.0 else Drawing(
        (0.0, 0.0, drawing.width_mm * scale, drawing.height_mm * scale), place(drawing, 0.0, 0.0, scale), drawing.title, drawing.description
    )


def _plain_edging(fabric: Fabric) -> bool:
    """An edging of one stitch in each stitch: a chart would show a ring of them, and take a page for it."""
    made = {stitch.kind for stitch in fabric.stitches if stitch.role in ("stitch", "standing")}
    lace = any(stitch.role == "picot" for stitch in fabric.stitches) or any(run.role == "space" for run in fabric.runs)
    return len(made) <= 1 and not lace and not any(group.name for group in fabric.groups)


def trimmed(drawings: Sequence[Drawing]) -> list[Drawing]:
    """Without the white above and below, and without the white to the left and right that all of them have."""
    boxes = [bounds(drawing.operations) for drawing in drawings]
    inked = [box for box in boxes if box is not None]
    if not inked:
        return list(drawings)
    left, right = min(box[0] for box in inked) - 0.5, max(box[2] for box in inked) + 0.5
    trimmed = []
    for drawing, box in zip(drawings, boxes, strict=True):
        low, high = (box[1] - 0.5, box[3] + 0.5) if box is not None else (drawing.box[1], drawing.box[3])
        own = drawing.box
        trimmed.append(replace(drawing, box=(max(own[0], left), max(own[1], low), min(own[2], right), min(own[3], high))))
    return trimmed


def chart_caption(worked: Worked, size: WorkedSize, name: str, fabric: Fabric, look: Look) -> str:
    """What the chart shows, and where the smaller sizes stop."""
    numbers = [this.number for this in fabric.rounds if this.number is not None]
    unit = "row" if fabric.worked == "rows" else "round"
    shown = f"{unit}s {min(numbers)} to {max(numbers)}" if len(numbers) > 1 else f"{unit} {numbers[0]}" if numbers else "the whole"
    caption = f"{name.replace('_', ' ').capitalize()}: {shown}"
    smaller: dict[int, list[str]] = {}
    for other in worked.sizes:
        worked_to = last_round(other.fabrics.get(name))
        if look.size is None and numbers and 0 < worked_to < max(numbers):
            smaller.setdefault(worked_to, []).append(other.choice.name)
    if not smaller:
        return caption + "."
    stops = "; ".join(f"{listed(names)} after {unit} {last}" for last, names in sorted(smaller.items()))
    return f"{caption}, size {size.choice.name}. {'These end' if len(smaller) > 1 else 'This ends'} earlier: {stops}."


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

    grid = grid_of(look)
    wide, high = grid.drawn_mm(grid.text_width), grid.drawn_mm(grid.text_height)
    small = grid.columns == 1  # a small page, or large print: drawings need more of it to keep their letters apart
    net = draw_net(assembly, wide if small else OVERVIEW_SHARE * wide, (0.54 if small else 0.42) * high)
    said = "The net, right side up, with its seams in the order they are worked."
    figures = [Figure("net", zoomed(net, grid.zoom), said, smallest=0.85, largest=1.0)]
    drawn = [step.number for step in assembly_steps(assembly) if step.kind != "fold flat"]
    step_drawings = draw_steps(assembly, *(grid.drawn_mm(side) for side in step_room(grid)))
    for number, drawing in zip(drawn, trimmed(step_drawings), strict=True):
        figures.append(Figure("step", zoomed(drawing, grid.zoom), "", step=number, smallest=0.85, largest=1.0))
    share = 0.55 if grid.zoom > 1 else 0.4 if small else 0.3
    finished = draw_finished(assembly, grid.drawn_mm(grid.column_width), share * high, size.rims)
    if finished is not None:
        sized = f", size {size.choice.name}" if size.choice.name != "One size" else ""
        figures.append(Figure("finished", zoomed(finished, grid.zoom), f"{finished.title}{sized}.", smallest=0.85, largest=1.0))
    return tuple(figures)


def colourway_figures(worked: Worked, size: WorkedSize, look: Look) -> tuple[Figure, ...]:
    """Which colourway goes where on the net, where there are several; a column wide."""
    if size.assembly is None:
        return ()
    from motifold.render.assembly.colour_plan import draw_colour_plan
    from motifold.render.sizing.colourways import place_colourways

    grid = grid_of(look)
    ways = place_colourways(worked.pattern, size.assembly).ways
    plan = draw_colour_plan(size.assembly, ways, grid.drawn_mm(grid.column_width), 0.4 * grid.drawn_mm(grid.text_height))
    return (Figure("colourways", zoomed(plan, grid.zoom), f"{plan.title}.", smallest=0.7, largest=1.0),) if plan is not None else ()


def joining_figures(worked: Worked, size: WorkedSize, look: Look) -> tuple[Figure, ...]:
    """Where motifs are joined as they are worked: their last round, for each number of sides that one is joined along."""
    from motifold.render.joining import draw_joins

    zoom = grid_of(look).zoom
    drawn = draw_joins(worked, size, look_of_charts(worked.pattern, look), titled=False)
    captions = [one.drawing.title.removeprefix(f"{worked.pattern.title}: ") for one in drawn]
    return tuple(
        Figure("join", zoomed(one.drawing, zoom), f"{caption[:1].upper()}{caption[1:]}.", smallest=0.7, largest=1.0)
        for one, caption in zip(drawn, captions, strict=True)
    )


def cover_pictures(figures: Iterable[Figure]) -> tuple[Drawing | None, Drawing | None]:
    """For the cover: the first chart, and the finished thing beside it without its names and measurements (alone, if there is no chart)."""
    kept = tuple(figures)
    chart = next((figure.drawing for figure in kept if figure.role == "chart"), None)
    finished = next((figure.drawing for figure in kept if figure.role == "finished"), None)
    if chart is None:
        return finished, None
    return chart, _without_measurements(finished) if finished else None


def _speaks(operation: Operation) -> bool:
    """A word, or what leads to one: a measurement, a note with its leader."""
    return isinstance(operation, Text) or (isinstance(operation, Group) and any(_speaks(one) for one in operation.children))


def _without_measurements(drawing: Drawing) -> Drawing | None:
    shown = [operation for operation in drawing.operations if not _speaks(operation)]
    return around(shown, 0.5, drawing.title, drawing.description) if bounds(shown) else None
