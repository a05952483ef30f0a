"""Charts for motifs that are joined as they are worked: a last round, and what takes the place of its chains along the joined sides."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import hypot

from motifold.render.assembly.model import Assembly
from motifold.render.assembly.sewing import joins_as_it_goes
from motifold.render.assembly.sheet import circle, polyline
from motifold.render.assembly.steps import AssemblyStep, assembly_steps
from motifold.render.assembly.style import FLAT, HAIR, INK, LETTER_PT, MM_PER_PT, NAME_PT, PAPER, THIN_MM
from motifold.render.charts import NamedDrawing, pattern_look
from motifold.render.drawing.display import Drawing, FillPath, Group, Operation, Point, StrokePath, Text
from motifold.render.drawing.fonts import text_width_mm
from motifold.render.fabric.model import EdgeItem, Fabric, Side
from motifold.render.motif import Layout, lay_out
from motifold.render.motif.chart import ChartLook, draw_chart
from motifold.render.worked import Worked, WorkedSize
from motifold.symbols.terms import Terms, abbreviation

DOT_U = 0.34  # radius of a slip stitch that joins
COVER_U = 0.62  # of the chain whose place it takes
BESIDE_U = 1.5  # how far off the edge of the motif beside is drawn
DASH_MM = (1.6, 1.0)
_NUMBERS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}


def draw_joins(worked: Worked, size: WorkedSize, look: ChartLook | None = None, titled: bool = True) -> tuple[NamedDrawing, ...]:
    """For each number of joined sides the first motif that has so many: its last two rounds, joining slip stitches in blue.

    Nothing where motifs are not joined as they are worked. ``look``: in which terms, colours and for which hand (None: the file's terms).
    ``titled``: with its title above it.
    """
    assembly = size.assembly
    if assembly is None or not joins_as_it_goes(assembly.method):
        return ()
    first: dict[int, AssemblyStep] = {}
    for step in assembly_steps(assembly):
        if step.kind == "motif" and step.own:
            first.setdefault(len(step.own), step)
    look = pattern_look(worked.pattern, look or ChartLook(terms=worked.pattern.terms))
    drawn = ((count, _draw(worked, size, assembly, step, look, titled)) for count, step in sorted(first.items()))
    return tuple(NamedDrawing(f"join-{count}", drawing) for count, drawing in drawn)


def _draw(worked: Worked, size: WorkedSize, assembly: Assembly, step: AssemblyStep, look: ChartLook, titled: bool) -> Drawing:
    panel = next(panel for panel in assembly.panels if panel.name == step.made[0])
    fabric = size.fabrics[panel.motif]
    layout = lay_out(fabric)
    last = max(one.number or 0 for one in fabric.rounds)
    look = replace(look, show=(max(last - 1, 1), last), emphasise=last, furniture=False)
    chart = draw_chart(fabric, layout, look)
    sides = [fabric.sides[panel.sides.index(name)] for name in step.own]
    marks: list[Operation] = []
    joins = set()
    for side in sides:
        marks += _beside(layout, fabric, side, look)
    for side in sides:
        for item in (side.start, *side.items, side.end):
            if item is not None and item.kind == "space" and item.id not in joins:
                joins.add(item.id)
                marks += _join(layout, fabric, item, look)
    # Not by name: a chart stands as its round begins, whichever way the motif is turned in the net.
    title = "Joined along one side" if len(step.own) == 1 else f"Joined along {_NUMBERS.get(len(step.own), str(len(step.own)))} sides"
    said = f"{title}, as {panel.name} is: {len(joins)} joining slip stitches in round {last}."
    return _framed(chart, marks, title, said, worked.pattern.title, look.terms, titled)


def _spots(layout: Layout, fabric: Fabric, item: EdgeItem, look: ChartLook) -> list[tuple[Point, Point]]:
    """The middles of a space's chains, and the way outwards at each, in u; for the left hand mirrored, as the chart is."""
    chains = set(fabric.runs[item.id].stitches)
    flip = -1.0 if look.left_handed else 1.0
    found = []
    for placed in layout.placed:
        if placed.stitch in chains:
            points = [*placed.feet, placed.head]
            middle = (flip * sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
            found.append((middle, (flip * placed.normal[0], placed.normal[1])))
    return found


def _join(layout: Layout, fabric: Fabric, item: EdgeItem, look: ChartLook) -> list[Operation]:
    """A dot in place of a single chain; of more, between the first and the last, where the slip stitch goes into the motif beside."""
    spots, pitch = _spots(layout, fabric, item, look), look.pitch_mm
    if not spots:
        return []
    x, y = (sum(spot[0][k] for spot in spots) / len(spots) for k in (0, 1))
    out = _unit((sum(spot[1][0] for spot in spots), sum(spot[1][1] for spot in spots)))
    dot: list[Operation] = []
    if len(spots) == 1:
        dot.append(FillPath(circle((x * pitch, y * pitch), COVER_U * pitch), PAPER))
    else:
        x, y = x + 0.9 * out[0], y + 0.9 * out[1]
    dot.append(FillPath(circle((x * pitch, y * pitch), DOT_U * pitch), FLAT))
    return [Group(tuple(dot), css_class="join", title="joining sl st")]


def _beside(layout: Layout, fabric: Fabric, side: Side, look: ChartLook) -> list[Operation]:
    """The edge of the motif beside, dashed, along the whole of a side."""
    pitch = look.pitch_mm
    ends = [_spots(layout, fabric, item, look) for item in (side.start, side.end) if item is not None]
    spots = [spot for item in side.items if item.kind == "space" for spot in _spots(layout, fabric, item, look)]
    if len(ends) < 2 or not all(ends):
        return []
    (ax, ay), (bx, by) = ((sum(p[0][0] for p in end) / len(end), sum(p[0][1] for p in end) / len(end)) for end in ends)
    across = _unit((by - ay, ax - bx))
    out = across if across[0] * (ax + bx) + across[1] * (ay + by) > 0 else (-across[0], -across[1])
    reach = max(p[0][0] * out[0] + p[0][1] * out[1] for p in [*spots, *ends[0], *ends[1]]) + BESIDE_U
    line = []
    for x, y in ((ax, ay), (bx, by)):
        off = reach - x * out[0] - y * out[1]
        line.append(((x + out[0] * off) * pitch, (y + out[1] * off) * pitch))
    return [StrokePath(polyline(line), HAIR, THIN_MM, DASH_MM)]


def _unit(way: Point) -> Point:
    length = hypot(*way) or 1.0
    return way[0] / length, way[1] / length


def _framed(
    chart: Drawing, marks: Sequence[Operation], title: str, said: str, pattern: str, terms: Terms, titled: bool
) -> Drawing:
    """The chart with its marks, its title above, and what dot and dashes mean below."""
    from motifold.render.drawing.measure import bounds

    marked = bounds(tuple(marks)) or chart.box
    x0, y0 = min(chart.box[0], marked[0] - 1.5), min(chart.box[1], marked[1] - 1.5)
    x1, y1 = max(chart.box[2], marked[2] + 1.5), max(chart.box[3], marked[3] + 1.5)
    rows = (f"joining {abbreviation('sl st', terms)}, in the space of the motif beside it", "edge of the motif beside it")
    foot = 0.33 * LETTER_PT * MM_PER_PT
    key: list[Operation] = [Text(x0, y1 + 2.5, title, "sans-bold", NAME_PT, INK)] if titled else []
    for row, words in enumerate(rows):
        y = y0 - 4.0 - 5.0 * row
        mark: Operation = FillPath(circle((x0 + 4.0, y), 1.0), FLAT)
        key.append(mark if row == 0 else StrokePath(polyline([(x0, y), (x0 + 8.0, y)]), HAIR, THIN_MM, DASH_MM))
        key.append(Text(x0 + 9.5, y - foot, words, "sans", LETTER_PT, INK))
    reach = [9.5 + max(text_width_mm(words, "sans", LETTER_PT) for words in rows)]
    reach += [text_width_mm(title, "sans-bold", NAME_PT)] if titled else []
    wide = max(x1, x0 + max(reach))
    box = (x0 - 1.0, y0 - 4.0 - 5.0 * len(rows) + 1.5, wide + 1.0, y1 + (7.5 if titled else 1.0))
    return Drawing(box, (*chart.operations, *marks, *key), f"{pattern}: {title[:1].lower()}{title[1:]}", said)
