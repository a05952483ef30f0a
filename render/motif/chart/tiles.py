"""Charts on paper: on one sheet, as large as it holds, or over several that overlap, with their plan, where symbols would be too small."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import ceil
from typing import Literal

from motifold.render.drawing.display import Drawing, FillPath, Group, Operation, Path, Point, StrokePath, Text, Transform
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.measure import bounds, place
from motifold.render.drawing.papers import SHEETS_MM
from motifold.render.motif.chart.ink import path_of
from motifold.render.motif.chart.items import LEADER, QUIET
from motifold.render.motif.chart.look import INK, PAPER
from motifold.render.motif.chart.plate import NOTE_PT, PlateText, make_plate
from motifold.symbols.record import dataclass

Paper = Literal["A4", "Letter", "A5"]
_PAPERS: tuple[Paper, ...] = ("A4", "Letter", "A5")
PAPERS_MM: dict[Paper, tuple[float, float]] = {paper: SHEETS_MM[paper] for paper in _PAPERS}
MARGIN_MM = 12.0
FOOT_MM = 9.0
OVERLAP_MM = 14.0
LARGEST_U_MM = 4.5
LEAST_U_MM = 1.8
"""A chart is split rather than drawn smaller than this: a double crochet is then 4 mm tall."""
TILED_U_MM = 2.3
"""What u is at least on sheets that a chart is split over."""
_PLAN_MM = (110.0, 110.0)
_SETTLE = 4


@dataclass(frozen=True, slots=True)
class PaperChart:
    """A chart that can be drawn at any pitch.

    ``size_u``: its stitches' width and height in u. ``rounds``: an outline each, in u, for the plan.
    ``draw``: pitch in mm -> the chart without a title. ``text``: pitch and that drawing -> what stands around it.
    """

    draw: Callable[[float], Drawing]
    text: Callable[[float, Drawing], PlateText]
    size_u: tuple[float, float]
    rounds: tuple[tuple[Point, ...], ...]
    closed: bool


@dataclass(frozen=True, slots=True)
class _Split:
    """``across`` by ``down`` sheets of ``wide`` by ``high`` mm (the room for the chart on each), on paper of ``page``."""

    page: tuple[float, float]
    wide: float
    high: float
    across: int
    down: int
    pitch: float

    @property
    def sheets(self) -> int:
        return self.across * self.down


def on_paper(chart: PaperChart, paper: Paper) -> tuple[tuple[str, Drawing], ...]:
    """Pages with the name of each ("" for a single one): the plan of the sheets first, then the sheets in rows from the top left.
    """
    guess = _guess(chart, paper)
    first = chart.draw(guess)
    pitch, page = _single(chart, first, guess, paper)
    if pitch >= LEAST_U_MM:
        return (("", _page(_fitting(chart, pitch, page), page)),)
    plan = _split(chart, first, guess, paper)
    drawing = chart.draw(plan.pitch)
    text = chart.text(plan.pitch, drawing)
    sheets = [(name, _sheet(drawing, plan, i, j, text)) for i in range(plan.down) for j in range(plan.across) for name in [_name(i, j)]]
    return (("plan", _plan_page(chart, drawing, plan, text)), *sheets)


def single_pitch(chart: PaperChart, paper: Paper) -> float:
    """The pitch at which a whole chart goes on one page, however small that is: for a series, where every page shows the same place."""
    guess = _guess(chart, paper)
    pitch, _ = _single(chart, chart.draw(guess), guess, paper)
    return pitch * 0.985


def _guess(chart: PaperChart, paper: Paper) -> float:
    """About the pitch that a page will have room for, so that few drawings are made for nothing."""
    wide, high = PAPERS_MM[paper]
    room = ((wide - 2 * MARGIN_MM) / chart.size_u[0], (high - 2 * MARGIN_MM) / chart.size_u[1])
    return min(max(0.9 * min(room), LEAST_U_MM), LARGEST_U_MM)


def page_of(drawing: Drawing, paper: Paper) -> Drawing:
    """A drawing with its title on a page, lying where it is wider than high."""
    upright, lying = _pages(paper)
    return _page(drawing, lying if drawing.width_mm > upright[0] - 2 * MARGIN_MM else upright)


def _name(row: int, column: int) -> str:
    return f"{chr(65 + row % 26) * (1 + row // 26)}{column + 1}"


def _pages(paper: Paper) -> tuple[tuple[float, float], tuple[float, float]]:
    wide, high = PAPERS_MM[paper]
    return (wide, high), (high, wide)


def _single(chart: PaperChart, first: Drawing, drawn_at: float, paper: Paper) -> tuple[float, tuple[float, float]]:
    """The largest pitch at which the whole plate goes on a page, upright if that is as good."""
    plate = make_plate(first, chart.text(drawn_at, first))
    fixed = (plate.width_mm - drawn_at * chart.size_u[0], plate.height_mm - drawn_at * chart.size_u[1])
    found = []
    for page in _pages(paper):
        room = [side - 2 * MARGIN_MM - more for side, more in zip(page, fixed, strict=True)]
        pitch = min(LARGEST_U_MM, *(space / max(size, 1e-9) for space, size in zip(room, chart.size_u, strict=True)))
        found.append((max(pitch, 0.05), page))
    upright, lying = found
    return lying if lying[0] > 1.08 * upright[0] else upright


def _fitting(chart: PaperChart, pitch: float, page: tuple[float, float]) -> Drawing:
    """The plate at about this pitch, a little smaller where letters of a fixed size make it too wide."""
    room = (page[0] - 2 * MARGIN_MM, page[1] - 2 * MARGIN_MM)
    for _ in range(_SETTLE):
        drawing = chart.draw(pitch)
        plate = make_plate(drawing, chart.text(pitch, drawing))
        over = max(plate.width_mm / room[0], plate.height_mm / room[1])
        if over <= 1.0:
            break
        pitch /= over * 1.002
    return plate


def _split(chart: PaperChart, first: Drawing, drawn_at: float, paper: Paper) -> _Split:
    """The fewest sheets on which u is large enough, and then the largest u on as many."""
    fixed = (first.width_mm - drawn_at * chart.size_u[0] + 1.0, first.height_mm - drawn_at * chart.size_u[1] + 1.0)
    found = []
    for page in _pages(paper):
        room = (page[0] - 2 * MARGIN_MM, page[1] - 2 * MARGIN_MM - FOOT_MM)
        counts = [
            max(1, ceil((TILED_U_MM * size + more - OVERLAP_MM) / (space - OVERLAP_MM)))
            for size, more, space in zip(chart.size_u, fixed, room, strict=True)
        ]
        sides = zip(counts, chart.size_u, fixed, room, strict=True)
        pitch = min(LARGEST_U_MM, *((n * (space - OVERLAP_MM) + OVERLAP_MM - more) / size for n, size, more, space in sides))
        found.append(_Split(page, room[0], room[1], counts[0], counts[1], pitch))
    return min(found, key=lambda split: (split.sheets, -split.pitch))


def _page(plate: Drawing, page: tuple[float, float]) -> Drawing:
    """A plate on its sheet, in the middle of its width and a little above the middle of its height."""
    x, y = (page[0] - plate.width_mm) / 2, MARGIN_MM + 0.58 * max(page[1] - 2 * MARGIN_MM - plate.height_mm, 0.0)
    return replace(plate, box=(0.0, 0.0, *page), operations=place(plate, x, y))


def _corner(drawing: Drawing, plan: _Split, row: int, column: int) -> Point:
    """The lower left corner of a sheet's part, in the chart's mm; the chart lies in the middle of all sheets together."""
    spare = (
        plan.across * (plan.wide - OVERLAP_MM) + OVERLAP_MM - drawing.width_mm,
        plan.down * (plan.high - OVERLAP_MM) + OVERLAP_MM - drawing.height_mm,
    )
    left = drawing.box[0] - spare[0] / 2 + column * (plan.wide - OVERLAP_MM)
    top = drawing.box[3] + spare[1] / 2 - row * (plan.high - OVERLAP_MM)
    return left, top - plan.high


def _sheet(drawing: Drawing, plan: _Split, row: int, column: int, text: PlateText) -> Drawing:
    x, y = _corner(drawing, plan, row, column)
    area = (x, y, x + plan.wide, y + plan.high)
    shift = Transform(e=MARGIN_MM - x, f=MARGIN_MM + FOOT_MM - y)
    kept = tuple(op for op in drawing.operations if _meets(_reach(op), area))
    clip = path_of(((area[0], area[1]), (area[2], area[1]), (area[2], area[3]), (area[0], area[3])), False, True, 1.0)
    name = _name(row, column)
    operations: list[Operation] = [Group(kept, transform=shift, clip=clip), *_joins(plan, row, column)]
    base = MARGIN_MM
    operations.append(Text(MARGIN_MM, base, name, "serif-bold", 13.0, INK))
    operations.append(Text(MARGIN_MM + 12.0, base, text.title, "sans", NOTE_PT, QUIET))
    operations += _locator(plan, row, column, plan.page[0] - MARGIN_MM, base)
    title = f"{text.title}, sheet {name}"
    about = f"Sheet {name} of {plan.sheets}: {drawing.description}" if row == column == 0 else f"Sheet {name} of {plan.sheets}."
    return Drawing((0.0, 0.0, *plan.page), tuple(operations), title, about)


def _joins(plan: _Split, row: int, column: int) -> list[Operation]:
    """Where the neighbouring sheets lie: a fine broken line in the middle of each overlap, ticks at its ends and the neighbour's name."""
    left, low = MARGIN_MM, MARGIN_MM + FOOT_MM
    right, top = left + plan.wide, low + plan.high
    half, tick = OVERLAP_MM / 2, 4.0
    out: list[Operation] = []

    def line(a: Point, b: Point, dash: tuple[float, ...] = ()) -> None:
        out.append(StrokePath(path_of((a, b), False, False, 1.0), LEADER if dash else QUIET, 0.12 if dash else 0.18, dash, cap="butt"))

    for there, at, way in ((column > 0, left + half, -1), (column + 1 < plan.across, right - half, 1)):
        if there:
            line((at, low), (at, top), (0.5, 1.3))
            line((at, low), (at, low - tick))
            line((at, top), (at, top + tick))
            side = at + 1.2 * way
            out.append(Text(side, top + 1.2, _name(row, column + way), "sans", NOTE_PT, QUIET, "start" if way > 0 else "end"))
    for there, at, way in ((row > 0, top - half, -1), (row + 1 < plan.down, low + half, 1)):
        if there:
            line((left, at), (right, at), (0.5, 1.3))
            line((left, at), (left - tick, at))
            line((right, at), (right + tick, at))
            level = at + (1.2 if way < 0 else -1.2 - cap_height_mm("sans", NOTE_PT))
            out.append(Text(left - 1.2, level, _name(row + way, column), "sans", NOTE_PT, QUIET, "end"))
    return out


def _locator(plan: _Split, row: int, column: int, right: float, low: float) -> list[Operation]:
    """A tiny picture of all sheets, this one filled."""
    high = min(6.5, 1.8 * plan.down)
    cell_high = high / plan.down
    cell_wide = cell_high * plan.wide / plan.high
    out: list[Operation] = []
    for i in range(plan.down):
        for j in range(plan.across):
            x, y = right - (plan.across - j) * cell_wide, low + high - (i + 1) * cell_high
            box = path_of(((x, y), (x + cell_wide, y), (x + cell_wide, y + cell_high), (x, y + cell_high)), False, True, 1.0)
            if (i, j) == (row, column):
                out.append(FillPath(box, QUIET))
            out.append(StrokePath(box, QUIET, 0.12))
    return out


def _plan_page(chart: PaperChart, drawing: Drawing, plan: _Split, text: PlateText) -> Drawing:
    """How the sheets lie over the chart, its rounds as outlines; with the key and how to join them."""
    first, last = _corner(drawing, plan, 0, 0), _corner(drawing, plan, plan.down - 1, plan.across - 1)
    x0, y0, x1, y1 = first[0], last[1], last[0] + plan.wide, first[1] + plan.high
    page = min(plan.page), max(plan.page)
    room = _PLAN_MM
    for _ in range(_SETTLE):
        scale = min(room[0] / (x1 - x0), room[1] / (y1 - y0))
        overview = _overview(chart, drawing, plan, (x0, y0), scale)
        plate = make_plate(overview, replace(text, middle=overview.width_mm / 2, notes=_how(plan, text)))
        over = plate.height_mm - (page[1] - 2 * MARGIN_MM)
        if over <= 0:
            break
        room = (room[0], max(overview.height_mm - over - 1.0, 20.0))
    about = f"Plan of the {plan.sheets} sheets. {drawing.description}"
    return replace(_page(plate, page), title=f"{text.title}, plan of the sheets", description=about)


def _how(plan: _Split, text: PlateText) -> tuple[str, ...]:
    """How the sheets are printed and joined, and what else is said of the chart."""
    return (
        f"{plan.sheets} sheets, {OVERLAP_MM:g} mm of overlap: print them at 100 %.",
        "Trim one of two along the broken line and lay it on the other's.",
        *text.notes,
    )


def _overview(chart: PaperChart, drawing: Drawing, plan: _Split, origin: Point, scale: float) -> Drawing:
    """The rounds of the chart as fine outlines, and the sheets over them."""
    x0, y0 = origin

    def at(point: Point) -> Point:
        return (point[0] - x0) * scale, (point[1] - y0) * scale

    out: list[Operation] = []
    for ring in chart.rounds:
        points = tuple(at((x * plan.pitch, y * plan.pitch)) for x, y in ring)
        out.append(StrokePath(path_of(points, False, chart.closed, 1.0), LEADER, 0.12))
    for i in range(plan.down):
        for j in range(plan.across):
            x, y = _corner(drawing, plan, i, j)
            (ax, ay), (bx, by) = at((x, y)), at((x + plan.wide, y + plan.high))
            out.append(StrokePath(path_of(((ax, ay), (bx, ay), (bx, by), (ax, by)), False, True, 1.0), QUIET, 0.2))
            mx, my, half = (ax + bx) / 2, (ay + by) / 2, text_width_mm(_name(i, j), "serif-bold", 12.0) / 2 + 1.2
            patch = ((mx - half, my - 3), (mx + half, my - 3), (mx + half, my + 3), (mx - half, my + 3))
            out.append(FillPath(path_of(patch, False, True, 1.0), PAPER))
            out.append(Text(mx, my - cap_height_mm("serif-bold", 12.0) / 2, _name(i, j), "serif-bold", 12.0, INK, "middle"))
    (left, _), (_, top) = _corner(drawing, plan, 0, plan.across - 1), _corner(drawing, plan, 0, 0)
    wide, high = at((left + plan.wide, top + plan.high))
    return Drawing((0.0, 0.0, wide, high), tuple(out), "", "")


def _meets(box: tuple[float, float, float, float] | None, area: tuple[float, float, float, float]) -> bool:
    return box is not None and box[0] <= area[2] and box[2] >= area[0] and box[1] <= area[3] and box[3] >= area[1]


def _reach(operation: Operation) -> tuple[float, float, float, float] | None:
    """A box that surely holds the ink: of handles and points, which is quick; exact for what has words or is moved."""
    paths: list[tuple[Path, float]] = []
    parts = operation.children if isinstance(operation, Group) and operation.transform is None else (operation,)
    for part in parts:
        if isinstance(part, StrokePath):
            paths.append((part.path, part.width_mm / 2))
        elif isinstance(part, FillPath):
            paths.append((part.path, 0.0))
        else:
            return bounds((operation,))
    numbers = [(values[i : i + 2], more) for path, more in paths for _, *values in path.commands for i in range(0, len(values), 2)]
    if not numbers:
        return None
    xs = [(float(pair[0]), more) for pair, more in numbers]
    ys = [(float(pair[1]), more) for pair, more in numbers]
    return (min(x - m for x, m in xs), min(y - m for y, m in ys), max(x + m for x, m in xs), max(y + m for y, m in ys))

