"""The charts of a worked pattern: which motifs in which size, laid out and drawn. The booklet and the command line both ask here."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from math import atan2, hypot, tau

from motifold.render.drawing.display import Drawing
from motifold.render.drawing.sheets import MARGIN_MM
from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.chart import ChartLook, ChartOf, Prepared, draw_key, draw_prepared, entries_used, prepare
from motifold.render.motif.chart.draw import chart_middle
from motifold.render.motif.chart.once import once_words, one_repeat
from motifold.render.motif.chart.plate import PlateText, make_plate
from motifold.render.motif.chart.tiles import PAPERS_MM, Paper, PaperChart, on_paper, page_of, single_pitch
from motifold.render.pattern.model import Pattern
from motifold.render.worked import Worked, WorkedSize
from motifold.symbols.key import MARK_PREFIX, KeyEntry
from motifold.symbols.record import dataclass

WIDEST_U = 80.0
"""Wider than this an edging is not drawn whole: on a page of 180 mm its double crochets would be under 5 mm."""
CORNER_U = 8.0
"""How much is drawn beyond the corners of a side."""

_KEY_COLUMN_MM = 58.0
_KEY_SHARE = 0.7
"""Of a chart's height: a key that is higher is set in more columns."""
_LARGE_MM = 200.0
"""A chart that is wider says how large it is drawn."""


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
        yarn_names={yarn.key: yarn.name for yarn in pattern.yarns},
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


def chart_marks(worked: Worked, look: ChartLook) -> tuple[KeyEntry, ...]:
    """The working marks that only the drawn charts of the largest size tell: brackets, hairlines, leaders."""
    size = largest_size(worked)
    found: dict[str, KeyEntry] = {}
    for fabric in pieces_of(size).values() if size is not None else ():
        layout = lay_out(fabric)
        this = replace(look, sector=part_of(fabric, layout))
        for entry in entries_used([fabric], this, prepare(fabric, layout, this)):
            if entry.id.startswith(MARK_PREFIX):
                found.setdefault(entry.id, entry)
    return tuple(found.values())


@dataclass(frozen=True, slots=True)
class ChartSheet:
    """What goes around charts. ``key``: each with the key of its symbols, a scale bar where the gauge tells, and its notes.

    ``paper``: on pages of this size, over several where symbols would be too small. ``once``: one repeat instead of all, if there is one.
    ``true_size``: as large as the finished work, to lay it on; only work in rounds whose size the gauge tells, since rows are charted
    higher than they are. ``titled``: its title above each that has neither key nor paper.
    """

    key: bool = False
    paper: Paper | None = None
    once: bool = False
    true_size: bool = False
    titled: bool = True


PLAIN = ChartSheet()


def draw_charts(
    worked: Worked, look: ChartLook, motif: str | None = None, steps: bool = False, sheet: ChartSheet = PLAIN
) -> tuple[NamedDrawing, ...]:
    """One drawing for each motif and edging of the largest size; with ``steps`` one for each round, all of one size and place."""
    drawings: list[NamedDrawing] = []
    for name, chart in _charts(worked, look, motif, sheet):
        drawings += _steps(name, chart, sheet) if steps else _whole(name, chart, sheet)
    return tuple(drawings)


@dataclass(frozen=True, slots=True)
class StepCharts:
    """The charts of one motif or edging for whoever has a room to fill: each is a function of how long a chain is drawn, in mm.

    ``whole``: all rounds. ``steps``: one drawing for each of some rounds, all with the whole's box.
    ``numbers``: the rounds that there are. Laid out once.
    """

    name: str
    numbers: tuple[int, ...]
    whole: Callable[[float], Drawing]
    steps: Callable[[float, Sequence[int]], tuple[Drawing, ...]]


def step_charts(worked: Worked, look: ChartLook) -> tuple[StepCharts, ...]:
    """For each motif and edging of the largest size, drawn without titles and keys."""
    bare = ChartSheet(titled=False)

    def at(name: str, chart: _Chart, pitch: float, numbers: Sequence[int]) -> tuple[Drawing, ...]:
        return tuple(one.drawing for one in _steps(name, _pitched(chart, pitch), bare, numbers))

    def whole(name: str, chart: _Chart, pitch: float) -> Drawing:
        return _whole(name, _pitched(chart, pitch), bare)[0].drawing

    return tuple(
        StepCharts(name, _numbers(chart), partial(whole, name, chart), partial(at, name, chart))
        for name, chart in _charts(worked, look, None, bare)
    )


def _charts(worked: Worked, look: ChartLook, motif: str | None, sheet: ChartSheet) -> Iterator[tuple[str, _Chart]]:
    """What is drawn of the largest size, each by its name and laid out."""
    size = largest_size(worked, (motif,) if motif else ())
    for name, fabric in pieces_of(size, motif).items() if size is not None else ():
        if look.show is not None and look.show[0] > max((this.number or 0 for this in fabric.rounds), default=0):
            continue  # of several pieces only those that have the rounds
        layout = lay_out(fabric)
        part = part_of(fabric, layout)
        title = look.title or f"{worked.pattern.title}: {name}{', the first part' if part else ''}"
        this = replace(look, title=None, sector=part)
        single = one_repeat(fabric, layout, this) if sheet.once and part is None else None
        layout, this = single or (layout, this)
        scale = _scale(size, name, fabric, layout) if size is not None and single is None and part is None else None
        if sheet.true_size:
            if scale is None or fabric.worked == "rows":
                continue
            this, title = replace(this, pitch_mm=10 * scale), f"{title}, true size"
        yield name, _Chart(fabric, layout, this, title, scale)


@dataclass(frozen=True, slots=True)
class _Chart:
    """One chart that is to be drawn. ``scale``: cm of the finished work to a u of the chart, across, where a gauge tells."""

    fabric: Fabric
    layout: Layout
    look: ChartLook
    title: str
    scale: float | None


def _pitched(chart: _Chart, pitch: float) -> _Chart:
    return replace(chart, look=replace(chart.look, pitch_mm=pitch))


def _numbers(chart: _Chart) -> tuple[int, ...]:
    first, last = chart.look.show or (1, 10**6)
    return tuple(sorted({r.number for r in chart.fabric.rounds if r.number is not None and first <= r.number <= last}))


def _whole(name: str, chart: _Chart, sheet: ChartSheet) -> list[NamedDrawing]:
    if sheet.paper is not None:
        return [NamedDrawing(f"{name}-{part}" if part else name, page) for part, page in on_paper(_for_paper(chart, sheet), sheet.paper)]
    prepared = prepare(chart.fabric, chart.layout, chart.look)
    if not sheet.key and chart.look.once is None:
        look = replace(chart.look, title=chart.title if sheet.titled else None)
        return [NamedDrawing(name, replace(draw_prepared(chart.fabric, chart.layout, prepared, look), title=chart.title))]
    drawing = draw_prepared(chart.fabric, chart.layout, prepared, chart.look)
    return [NamedDrawing(name, make_plate(drawing, _plate_text(chart, sheet, chart.look, drawing, prepared)))]


def _steps(name: str, chart: _Chart, sheet: ChartSheet, numbers: Sequence[int] | None = None) -> list[NamedDrawing]:
    """A drawing for each round (or for those of ``numbers``), without a key; on paper all at the pitch that the whole chart gets."""
    look, first = chart.look, (chart.look.show or (1, 0))[0]
    if sheet.paper is not None:
        look = replace(look, pitch_mm=single_pitch(_for_paper(replace(chart, title=_step_title(chart, 888)), PLAIN), sheet.paper))
    prepared = prepare(chart.fabric, chart.layout, replace(look, show=None))
    drawings = []
    for number in _numbers(chart) if numbers is None else numbers:
        title = _step_title(chart, number)
        step = replace(look, show=(first, number), emphasise=number, title=title if sheet.titled else None)
        drawing = replace(draw_prepared(chart.fabric, chart.layout, prepared, step), title=title)
        drawings.append(NamedDrawing(f"{name}-{number:02d}", page_of(drawing, sheet.paper) if sheet.paper else drawing))
    return drawings


def _step_title(chart: _Chart, number: int) -> str:
    return f"{chart.title}, {_word(chart.fabric)} {number}"


def _for_paper(chart: _Chart, sheet: ChartSheet) -> PaperChart:
    """The chart as what is set on paper asks for it: drawn at any pitch. What does not change with the pitch is kept."""
    drawn: dict[float, tuple[Drawing, ChartLook, Prepared]] = {}
    bare = prepare(chart.fabric, chart.layout, replace(chart.look, furniture=False))

    def draw(pitch: float) -> Drawing:
        if pitch not in drawn:
            look = replace(chart.look, pitch_mm=pitch)
            prepared = prepare(chart.fabric, chart.layout, look, bare)
            drawn[pitch] = (draw_prepared(chart.fabric, chart.layout, prepared, look), look, prepared)
        return drawn[pitch][0]

    def text(pitch: float, drawing: Drawing) -> PlateText:
        return _plate_text(chart, sheet, drawn[pitch][1], drawing, drawn[pitch][2])

    flip = -1.0 if chart.look.left_handed else 1.0
    rounds = tuple(tuple((flip * x, y) for x, y in shape.outline) for shape in chart.layout.shapes)
    size = (bare.core[2] - bare.core[0], bare.core[3] - bare.core[1])
    return PaperChart(draw, text, size, rounds, chart.fabric.worked == "rounds")


def _plate_text(chart: _Chart, sheet: ChartSheet, look: ChartLook, drawing: Drawing, prepared: Prepared) -> PlateText:
    """What stands around a chart that is drawn as ``prepared`` with ``look``."""
    pitch, middle = look.pitch_mm, chart_middle(prepared, look)
    entries = entries_used([chart.fabric], look, prepared) if sheet.key else ()
    widest = PAPERS_MM[sheet.paper][0] - 2 * MARGIN_MM if sheet.paper else 4 * _KEY_COLUMN_MM
    key = _key_below(drawing, entries, look, widest) if entries else None
    across = chart.scale / pitch if chart.scale else None
    said = [once_words(chart.fabric, look)]
    if sheet.key and len({symbol.round for symbol in prepared.symbols if symbol.round > 0}) > 1:
        said.append(f"Every second {_word(chart.fabric)} is drawn in another tone")
    if across:
        said.append(f"Scale {_ratio(10 * across)}; a chain is {pitch:.2g} mm long")
    elif sheet.paper or drawing.width_mm > _LARGE_MM:
        said.append(f"A chain is {pitch:.2g} mm long")
    return PlateText(chart.title, middle, key, across, chart.fabric.worked == "rows", tuple(words for words in said if words), look.mono)


def _key_below(drawing: Drawing, entries: Sequence[KeyEntry], look: ChartLook, widest: float) -> Drawing:
    """The key about as wide as the chart; wider, up to three columns, where it would be nearly as high as the chart."""
    columns = max(1, int(min(drawing.width_mm + 25, widest) // _KEY_COLUMN_MM))
    while True:
        key = draw_key(entries, look.terms, columns * _KEY_COLUMN_MM, mono=look.mono)
        if columns >= 3 or (columns + 1) * _KEY_COLUMN_MM > widest or key.height_mm <= _KEY_SHARE * drawing.height_mm:
            return key
        columns += 1


def _ratio(finished: float) -> str:
    """Paper to finished work, the smaller side 1."""
    return f"1 : {finished:.2g}" if finished >= 1 else f"{1 / finished:.2g} : 1"


def _scale(size: WorkedSize, name: str, fabric: Fabric, layout: Layout) -> float | None:
    """Cm of the finished motif to a u of its chart, across; None where the gauge does not tell, or where no side faces another."""
    width = size.widths_cm.get(name)
    if not width or not layout.shapes:
        return None
    if fabric.worked == "rows":
        lines = [point for shape in layout.shapes for point in shape.outline]
        return width / (max(x for x, _ in lines) - min(x for x, _ in lines) + 1.0)
    corners = layout.shapes[-1].corners
    if not corners:
        return width / (2 * max(hypot(*p) for p in layout.shapes[-1].outline))
    if len(corners) % 2 or len(corners) < 4:
        return None
    (ax, ay), (bx, by) = corners[:2]
    return width / max(2 * abs(ax * by - ay * bx) / max(hypot(bx - ax, by - ay), 1e-9), 1e-9)


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
