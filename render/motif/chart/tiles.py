"""Charts on paper: on one sheet, as large as it holds, or over several that overlap, with their plan, where symbols would be too small."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from motifold.render.drawing.display import Drawing, Operation, Point, StrokePath
from motifold.render.drawing.inks import HAIR
from motifold.render.drawing.measure import place
from motifold.render.drawing.papers import SHEETS_MM
from motifold.render.drawing.sheets import MARGIN_MM, OVERLAP_MM, Split, make_sheets, outlines_over, span, split_over
from motifold.render.motif.chart.ink import path_of
from motifold.render.motif.chart.plate import PlateText, make_plate
from motifold.symbols.record import dataclass

Paper = Literal["A4", "Letter", "A5"]
_PAPERS: tuple[Paper, ...] = ("A4", "Letter", "A5")
PAPERS_MM: dict[Paper, tuple[float, float]] = {paper: SHEETS_MM[paper] for paper in _PAPERS}
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


def on_paper(chart: PaperChart, paper: Paper) -> tuple[tuple[str, Drawing], ...]:
    """Pages with the name of each ("" for a single one): the plan of the sheets first, then the sheets in rows from the top left.
    """
    guess = _guess(chart, paper)
    first = chart.draw(guess)
    pitch, page = _single(chart, first, guess, paper)
    if pitch >= LEAST_U_MM:
        return (("", _page(_fitting(chart, pitch, page), page)),)
    plan, pitch = _split(chart, first, guess, paper)
    drawing = chart.draw(pitch)
    text = chart.text(pitch, drawing)
    return (("plan", _plan_page(chart, drawing, plan, pitch, text)), *make_sheets(drawing, plan, text.title))


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


def _split(chart: PaperChart, first: Drawing, drawn_at: float, paper: Paper) -> tuple[Split, float]:
    """The fewest sheets on which u is large enough, and then the largest u on as many, in mm."""
    fixed = (first.width_mm - drawn_at * chart.size_u[0] + 1.0, first.height_mm - drawn_at * chart.size_u[1] + 1.0)
    found = []
    for page in _pages(paper):
        wanted = (TILED_U_MM * chart.size_u[0] + fixed[0], TILED_U_MM * chart.size_u[1] + fixed[1])
        split = split_over(wanted, page)
        sides = zip((split.across, split.down), chart.size_u, fixed, (split.wide, split.high), strict=True)
        pitch = min(LARGEST_U_MM, *((n * (space - OVERLAP_MM) + OVERLAP_MM - more) / size for n, size, more, space in sides))
        found.append((split, pitch))
    return min(found, key=lambda one: (one[0].sheets, -one[1]))


def _page(plate: Drawing, page: tuple[float, float]) -> Drawing:
    """A plate on its sheet, in the middle of its width and a little above the middle of its height."""
    x, y = (page[0] - plate.width_mm) / 2, MARGIN_MM + 0.58 * max(page[1] - 2 * MARGIN_MM - plate.height_mm, 0.0)
    return replace(plate, box=(0.0, 0.0, *page), operations=place(plate, x, y))


def _plan_page(chart: PaperChart, drawing: Drawing, plan: Split, pitch: float, text: PlateText) -> Drawing:
    """How the sheets lie over the chart, its rounds as outlines; with the key and how to join them."""
    x0, y0, x1, y1 = span(drawing, plan)
    page = min(plan.page), max(plan.page)
    room = _PLAN_MM
    for _ in range(_SETTLE):
        scale = min(room[0] / (x1 - x0), room[1] / (y1 - y0))
        overview = _overview(chart, drawing, plan, pitch, scale)
        plate = make_plate(overview, replace(text, middle=overview.width_mm / 2, notes=_how(plan, text)))
        over = plate.height_mm - (page[1] - 2 * MARGIN_MM)
        if over <= 0:
            break
        room = (room[0], max(overview.height_mm - over - 1.0, 20.0))
    about = f"Plan of the {plan.sheets} sheets. {drawing.description}"
    return replace(_page(plate, page), title=f"{text.title}, plan of the sheets", description=about)


def _how(plan: Split, text: PlateText) -> tuple[str, ...]:
    """How the sheets are printed and joined, and what else is said of the chart."""
    return (
        f"{plan.sheets} sheets, {OVERLAP_MM:g} mm of overlap: print them at 100 %.",
        "Trim one of two along the broken line and lay it on the other's.",
        *text.notes,
    )


def _overview(chart: PaperChart, drawing: Drawing, plan: Split, pitch: float, scale: float) -> Drawing:
    """The rounds of the chart as fine outlines, and the sheets over them."""
    x0, y0, x1, y1 = span(drawing, plan)
    out: list[Operation] = []
    for ring in chart.rounds:
        points = tuple(((x * pitch - x0) * scale, (y * pitch - y0) * scale) for x, y in ring)
        out.append(StrokePath(path_of(points, False, chart.closed, 1.0), HAIR, 0.12))
    out += outlines_over(drawing, plan, scale, (x0, y0))
    return Drawing((0.0, 0.0, (x1 - x0) * scale, (y1 - y0) * scale), tuple(out), "", "")
