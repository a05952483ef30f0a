"""A chart as a drawing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import atan2, cos, hypot, sin

from motifold.render.drawing.display import Drawing, Group, Operation, Path, StrokePath, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.inks import GIVEN, INK, QUIET
from motifold.render.drawing.measure import grey_of
from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.again import shown_again
from motifold.render.motif.chart.furniture import furnish
from motifold.render.motif.chart.ink import operations, path_of, styled
from motifold.render.motif.chart.items import Item, draw_item, draw_leader, item_reach
from motifold.render.motif.chart.look import ChartLook, in_sector
from motifold.render.motif.chart.scene import Symbol, symbols_of
from motifold.render.motif.chart.tones import Tone, number_of, tone_of
from motifold.render.motif.chart.white import Edges, White, edges_of
from motifold.render.motif.chart.yarns import yarn_list, yarn_list_height
from motifold.render.motif.model import Layout, Point
from motifold.symbols import marks as working
from motifold.symbols.ink import Fill, Mark
from motifold.symbols.own import OwnSymbol, read_symbol
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import HAIR_WIDTH
from motifold.symbols.terms import abbreviation

Box = tuple[float, float, float, float]
MARGIN = 0.8
"""White around a chart, in u, for the number of its last round."""
TITLE_PT = 11.0
CLEAR = 0.1
CLEAR_MM = 0.25
"""White around a number or mark: in u, and no less than this as it is printed."""
_AROUND_MM = 8.0
"""How far outside the ink furniture may stand, and 1 u."""


@dataclass(frozen=True, slots=True)
class Prepared:
    """A chart that is placed and measured, and not yet coloured: drawings of one Fabric that show different rounds share it.

    ``core``: the box of its stitches in u; ``box``: with all furniture. ``pitch_mm``: that of its look. ``edges``: of all its ink.
    ``paths``: of each symbol, its marks as paths in mm, in the same order. ``linked``: whether hairlines join chains in it.
    """

    symbols: tuple[Symbol, ...]
    ring: tuple[Mark, ...]
    items: tuple[Item, ...]
    core: Box
    box: Box
    paths: tuple[tuple[Path, ...], ...]
    linked: bool
    pitch_mm: float
    edges: Edges


def draw_chart(fabric: Fabric, layout: Layout, look: ChartLook) -> Drawing:
    """The stitch chart of a placed Fabric, in mm, its origin the motif's centre.

    Every symbol is a group of class "stitch KIND" with its round, index, what it is worked into and the instruction that made it.
    Raises ValueError where a pattern's own symbol is no path data (reading a pattern has said so before).
    """
    return draw_prepared(fabric, layout, prepare(fabric, layout, look), look)


def prepare(fabric: Fabric, layout: Layout, look: ChartLook, known: Prepared | None = None) -> Prepared:
    """All that drawings of one series have in common; with ``show`` and no ``emphasise`` only of the rounds that are shown.

    ``known``: the same chart prepared before, where this look differs in its pitch and furniture alone.
    """
    bare = _bare(fabric, layout, look) if known is None else known
    items = _items(fabric, layout, bare, look) if look.furniture else ()
    paths = bare.paths if bare.pitch_mm == look.pitch_mm else _paths(bare.symbols, look.pitch_mm)
    return replace(bare, items=items, box=_with_items(bare.core, items), paths=paths, pitch_mm=look.pitch_mm)


def _bare(fabric: Fabric, layout: Layout, look: ChartLook) -> Prepared:
    """The chart without furniture."""
    symbols = symbols_of(fabric, layout, look.left_handed, own_symbols(look.symbols))
    if look.sector is not None and look.once is None:
        symbols = tuple(symbol for symbol in symbols if in_sector(symbol.head, look.sector))
    if look.show is not None and look.emphasise is None:
        symbols = tuple(symbol for symbol in symbols if symbol.given or is_shown(symbol.round, look))
    ink = all_ink(fabric, symbols)
    box = chart_box(symbols, ink)
    ring, linked = _center_ring(fabric, symbols), bool(_links(fabric, layout, look))
    return Prepared(symbols, ring, (), box, box, _paths(symbols, look.pitch_mm), linked, look.pitch_mm, edges_of(ink))


def _items(fabric: Fabric, layout: Layout, bare: Prepared, look: ChartLook) -> tuple[Item, ...]:
    """The furniture, of what is shown."""
    white = White(grown(bare.core, _AROUND_MM / look.pitch_mm + 1.0), bare.edges, clear(look))
    items = furnish(fabric, layout, bare.symbols, white, look)
    if look.sector is not None and look.once is None:
        items = tuple(item for item in items if in_sector(item.center, look.sector))
    if look.show is not None and look.emphasise is None:
        items = tuple(item for item in items if is_shown(number_of(item.round_index, fabric.rounds), look))
    return items


def _paths(symbols: tuple[Symbol, ...], pitch: float) -> tuple[tuple[Path, ...], ...]:
    return tuple(
        tuple([path_of(mark.points, mark.smooth, isinstance(mark, Fill) or mark.closed, pitch) for mark in symbol.marks])
        for symbol in symbols
    )


def draw_prepared(fabric: Fabric, layout: Layout, chart: Prepared, look: ChartLook) -> Drawing:
    """The rounds that ``look`` shows; but for those and the title it must be the look that ``chart`` was prepared with."""
    shown = [(s, paths) for s, paths in zip(chart.symbols, chart.paths, strict=True) if is_shown(s.round, look) or s.given]
    items = [item for item in chart.items if is_shown(number_of(item.round_index, fabric.rounds), look)]
    children: list[Operation] = []
    ring = chart.ring if look.show is None or look.show[0] <= 1 else ()
    if ring:
        yarn = fabric.rounds[0].yarns[0] if fabric.rounds and fabric.rounds[0].yarns else ""
        children.append(Group(operations(ring, tone_of(0, fabric.rounds, look, yarn).color, look.pitch_mm), css_class="ring"))
    children += [line for item in items for line in draw_leader(item, look)]
    children += _sector_edges(chart, look)
    children += _links(fabric, layout, look)
    children += shown_again(fabric, layout, look, max((s.round_index for s, _ in shown), default=-1))
    ordered = sorted(shown, key=lambda pair: (not pair[0].given, not pair[0].behind, pair[0].round_index, pair[0].index))
    children += [draw_symbol(symbol, paths, fabric, look) for symbol, paths in ordered if symbol.marks]
    children += [draw_item(item, fabric, look) for item in items]
    box = chart.box
    u = look.pitch_mm
    mm = (box[0] * u, box[1] * u, box[2] * u, box[3] * u)
    yarns = yarn_list(fabric, look, mm)
    children += yarns
    # Of a chart that grows every drawing is as high as the last.
    room = yarn_list_height(yarns if look.emphasise is None else yarn_list(fabric, replace(look, show=None), mm))
    mm = (mm[0], mm[1] - room, mm[2], mm[3])
    if look.title:
        middle = chart_middle(chart, look)
        children.append(Text(middle, mm[3] + 2.5, look.title, "serif-bold", TITLE_PT, INK, "middle"))
        half = max(middle - mm[0], mm[2] - middle, text_width_mm(look.title, "serif-bold", TITLE_PT) / 2)
        mm = (middle - half, mm[1], middle + half, mm[3] + 2.5 + 1.6 * cap_height_mm("serif-bold", TITLE_PT))
    return Drawing(mm, tuple(children), look.title or f"Stitch chart: {fabric.name}", _description(fabric, look))


def chart_middle(chart: Prepared, look: ChartLook) -> float:
    """What a title stands above, in mm: the middle of the stitches, whatever stands beside them."""
    return (chart.core[0] + chart.core[2]) / 2 * look.pitch_mm


def clear(look: ChartLook) -> float:
    """The white around furniture in u."""
    return max(CLEAR, CLEAR_MM / look.pitch_mm)


def grown(box: Box, by: float) -> Box:
    return (box[0] - by, box[1] - by, box[2] + by, box[3] + by)


def _with_items(box: Box, items: Sequence[Item]) -> Box:
    """The box with room for furniture that stands outside it."""
    boxes = [box, *(grown(item_reach(item), 0.15) for item in items)]
    return (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))


def own_symbols(data: Mapping[str, str]) -> dict[str, OwnSymbol]:
    return {name: read_symbol(path) for name, path in data.items()}


def is_shown(number: int, look: ChartLook) -> bool:
    """Whether the round with this number is drawn; what is made before round 1 goes with round 1."""
    return look.show is None or look.show[0] <= max(number, 1) <= look.show[1]


def draw_symbol(symbol: Symbol, paths: tuple[Path, ...], fabric: Fabric, look: ChartLook) -> Group:
    """One stitch as a group of operations in mm; a stand-in is pale, and no stitch."""
    if symbol.given:
        tone, css = Tone(GIVEN), "given"
    else:
        tone, css = tone_of(symbol.round_index, fabric.rounds, look, symbol.yarn), f"stitch {symbol.stitch.replace(' ', '-')}"
    return Group(
        styled(symbol.marks, paths, tone.color, look.pitch_mm, tone.weight, tone.core),
        css_class=css,
        data=(
            ("round", str(symbol.round)),
            ("index", str(symbol.index)),
            ("into", " ".join(symbol.into)),
            ("from", str(symbol.instruction)),
            ("id", symbol.id),
        ),
        title=f"{fabric.rounds[symbol.round_index].label}: {stitch_words(symbol.stitch, look)}",
    )


def stitch_words(name: str, look: ChartLook, plural: bool = False) -> str:
    """A stitch as its terms abbreviate it, or the pattern's own name for it."""
    try:
        return abbreviation(name, look.terms, plural)
    except KeyError:
        return look.names.get(name, name)


def _center_ring(fabric: Fabric, symbols: tuple[Symbol, ...]) -> tuple[Mark, ...]:
    """A magic ring, where work begins in a ring of yarn and not of chains: just inside the feet that stand in it."""
    feet = [s.foot for s in symbols if "ring" in s.into]
    chains = (fabric.stitches[i].kind == "ch" for this in fabric.rounds if this.kind == "ring" for i in this.stitches)
    if not feet or any(chains):
        return ()
    reach = min(hypot(*foot) for foot in feet)
    return working.magic_ring((0.0, 0.0), reach - 0.18) if reach > 0.4 else ()


def _links(fabric: Fabric, layout: Layout, look: ChartLook) -> list[Operation]:
    """Hairlines between the ovals of runs that a lace keeps apart."""
    out: list[Operation] = []
    for link in layout.links:
        run = fabric.runs[link.run]
        whole = run.group is not None and fabric.groups[run.group].name in look.symbols  # drawn by the pattern's own symbol
        if len(link.points) < 2 or (look.once is None and not in_sector(_mean(link.points, look.left_handed), look.sector)):
            continue
        if whole or not is_shown(number_of(run.round, fabric.rounds), look):
            continue
        yarn = fabric.stitches[run.stitches[0]].yarn if run.stitches else ""
        points: tuple[Point, ...] = tuple((-x, y) for x, y in link.points) if look.left_handed else link.points
        color = tone_of(run.round, fabric.rounds, look, yarn).color
        out.append(Group((StrokePath(path_of(points, False, False, look.pitch_mm), color, HAIR_WIDTH * look.pitch_mm),), css_class="link"))
    return out


def _mean(points: tuple[Point, ...], mirrored: bool) -> Point:
    x, y = (sum(p[i] for p in points) / len(points) for i in (0, 1))
    return (-x if mirrored else x, y)


def _sector_edges(chart: Prepared, look: ChartLook) -> list[Operation]:
    """Where a sector ends that is drawn instead of the whole: a broken hairline at either side, from the centre outwards."""
    if look.once is None or look.sector is None:
        return []
    u, once = look.pitch_mm, look.once
    ends = [hypot(*symbol.head) for symbol in chart.symbols]
    near, far = max(min(ends, default=0.0) - 1.6, 0.4), max(ends, default=1.0) + 0.9
    first = [p for p in once.cut if hypot(*p) > near + 0.3]
    inner = once.start if not first else atan2(first[0][1], first[0][0])
    outer = once.start if not first else atan2(first[-1][1], first[-1][0])
    line = ((near * cos(inner), near * sin(inner)), *first, (far * cos(outer), far * sin(outer)))
    c, s = cos(once.end - once.start), sin(once.end - once.start)
    lines = (line, tuple((c * x - s * y, s * x + c * y) for x, y in line))
    color = grey_of(QUIET) if look.mono else QUIET
    return [Group(tuple(StrokePath(path_of(edge, False, False, u), color, 0.15, (1.4, 1.0)) for edge in lines), css_class="mark edge")]


def all_ink(fabric: Fabric, symbols: tuple[Symbol, ...]) -> tuple[Mark, ...]:
    """Every mark that is drawn for stitches, whatever part of them is shown."""
    return (*(mark for symbol in symbols for mark in symbol.marks), *_center_ring(fabric, symbols))


def chart_box(symbols: tuple[Symbol, ...], ink: tuple[Mark, ...]) -> tuple[float, float, float, float]:
    """The chart's box in u: all ink and a margin."""
    import numpy as np

    points = [point for mark in ink for point in mark.points] + [end for s in symbols for end in (s.foot, s.head) if not s.given]
    if not points:
        return (-1.0, -1.0, 1.0, 1.0)
    placed = np.asarray(points)
    (left, low), (right, top) = placed.min(axis=0).tolist(), placed.max(axis=0).tolist()
    return (left - MARGIN, low - MARGIN, right + MARGIN, top + MARGIN)


def _description(fabric: Fabric, look: ChartLook) -> str:
    """The chart in words: what each round that is shown is made of."""
    kind = "rows" if fabric.worked == "rows" else "rounds"
    lines = []
    for i, this in enumerate(fabric.rounds):
        if this.number is None or not is_shown(number_of(i, fabric.rounds), look):
            continue
        counts = ", ".join(f"{n} {_count_words(name, n, look)}" for name, n in this.counts.items() if n)
        lines.append(f"{this.label} ({this.side}): {counts}." if counts else f"{this.label} ({this.side}).")
    shape = f", {fabric.shape}" if fabric.shape else ""
    return " ".join([f"Stitch chart of {fabric.name}{shape}, worked in {kind}.", *lines])


def _count_words(name: str, count: int, look: ChartLook) -> str:
    if name.endswith(" sp"):
        return name + ("s" if count > 1 else "")
    return stitch_words(name, look, plural=count > 1)
