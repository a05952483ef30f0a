"""The net: panels right side up, every seam pass numbered and arrowed, what folds together lettered, and the measures."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.flatlay import Flatlay, fitted, lay
from motifold.render.assembly.fold_paint import eased_in
from motifold.render.assembly.key import paint_key_rows
from motifold.render.assembly.legs import legs_of
from motifold.render.assembly.measures import OFF_MM, length_text, level, upright
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.net_paint import paint_gap, paint_joined, paint_numbers, paint_order, paint_pass
from motifold.render.assembly.panel_paint import paint_first_sides, paint_names, paint_panels
from motifold.render.assembly.sewing import joins_as_it_goes
from motifold.render.assembly.sheet import Sheet
from motifold.render.assembly.steps import assembly_steps, work_order
from motifold.render.assembly.style import A5_TEXT_HEIGHT_MM, A5_TEXT_WIDTH_MM, FOLD_OFF_MM
from motifold.render.drawing.display import Drawing, Point

DIM_MM = 9.0  # room that a dimension takes
MOST_PIECES = 4  # loose pieces of different sizes that are measured


def draw_net(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> Drawing:
    """The net of one copy, at most ``width_mm`` by ``height_mm`` (more only where panels would come out smaller than their figures)."""
    return fitted_net(assembly, width_mm, height_mm)[0]


def fitted_net(assembly: Assembly, width_mm: float, height_mm: float) -> tuple[Drawing, float]:
    """The net and the width that it is laid out for."""
    (drawing,), wide = fitted(lambda wide: (_net(assembly, wide, height_mm),), width_mm)
    return drawing, wide


def _net(assembly: Assembly, width_mm: float, height_mm: float) -> Drawing:
    sheet = Sheet()
    flat = lay(assembly, *net_room(width_mm, height_mm))
    paint_panels(sheet, flat)
    as_it_goes = joins_as_it_goes(assembly.method)
    if not flat.dense:
        paint_names(sheet, flat, raised=as_it_goes)
    _keep_free(sheet, flat)
    if as_it_goes:
        for step in assembly_steps(assembly):
            if step.kind == "motif":
                paint_joined(sheet, flat, step, "plain")
    numbered = as_it_goes and paint_order(sheet, flat, work_order(assembly))
    passes = assembly.passes[: len(assembly.passes) // assembly.copies]
    starts = [start for one in passes for start in paint_pass(sheet, flat, one, "plain")]
    gaps = assembly.gaps[: len(assembly.gaps) // assembly.copies]
    for gap in gaps:
        paint_gap(sheet, flat, gap.at)
    if flat.dense:
        paint_names(sheet, flat)
    if flat.crammed:
        paint_first_sides(sheet, flat)
    paint_numbers(sheet, flat, starts)
    if assembly.scaled and not flat.crammed:
        _dimensions(sheet, flat)
    paint_key(sheet, flat, width_mm, numbered)
    return sheet.drawing(*_meaning(assembly, flat))


def net_room(width_mm: float, height_mm: float) -> tuple[float, float]:
    """What the panels themselves may take of a drawing: the rest is for folds, dimensions and key."""
    return width_mm - 4 * FOLD_OFF_MM - DIM_MM, height_mm - 4 * FOLD_OFF_MM - 2 * DIM_MM - 12.0


def _meaning(assembly: Assembly, flat: Flatlay) -> tuple[str, str]:
    passes = assembly.passes[: len(assembly.passes) // assembly.copies]
    said = [f"pass {one.number}: {', '.join(assembly.seams[step.seam].name for step in one.steps)}" for one in passes[:40]]
    more = f"; and {len(passes) - 40} passes more" if len(passes) > 40 else ""
    times = f" Make {assembly.copies} alike." if assembly.copies > 1 else ""
    return "Net, right side up", f"{len(flat.panels)} panels and {len(flat.seams)} seams. " + "; ".join(said) + more + "." + times


def _square(flat: Flatlay) -> tuple[Point, Point] | None:
    """The upper corners of the net's first square, if there are several panels to measure one of."""
    outlines = zip(flat.panels, flat.outlines, strict=True)
    square = next((outline for panel, outline in outlines if panel.cell is not None and "top" in panel.sides), None)
    if square is None or len(flat.panels) < 2:
        return None
    top = max(y for _, y in square)
    return (min(x for x, _ in square), top), (max(x for x, _ in square), top)


def _keep_free(sheet: Sheet, flat: Flatlay) -> None:
    """Numbers keep out of the way of the projection lines that will stand on the first square."""
    for x, y in _square(flat) or ():
        sheet.block_line((x, y), (x, y + 15.0))


def _dimensions(sheet: Sheet, flat: Flatlay) -> None:
    """Each loose piece of the net as a whole (of several as large only one), and one square where there are several."""
    pieces = [[p for i in group for p in flat.outlines[i]] for group in flat.loose()]
    told: set[tuple[float, float]] = set()
    sizes: list[float] = []
    extent = sheet.extent or (0.0, 0.0, 0.0, 0.0)
    rows: dict[str, list[tuple[float, float]]] = {}
    for points in pieces:
        wide = (max(x for x, _ in points) - min(x for x, _ in points)) / flat.mm_per_cm
        high = (max(y for _, y in points) - min(y for _, y in points)) / flat.mm_per_cm
        if (round(wide, 2), round(high, 2)) in told or len(told) == MOST_PIECES:
            continue
        told.add((round(wide, 2), round(high, 2)))
        sizes += [wide, high]
        others = [q for other in pieces if other is not points for q in other]
        _overall(sheet, points, others, extent, (wide, high), rows)
    square = _square(flat)
    if square is not None:
        left, right = square
        across = (right[0] - left[0]) / flat.mm_per_cm
        if all(abs(across - size) > 0.05 for size in sizes):
            level(sheet, left, right, (sheet.extent or (0, 0, 0, left[1]))[3] + OFF_MM, across)


def _overall(
    sheet: Sheet,
    points: Sequence[Point],
    others: Sequence[Point],
    extent: tuple[float, float, float, float],
    size: tuple[float, float],
    rows: dict[str, list[tuple[float, float]]],
) -> None:
    """Width and height of one piece, outside all that is drawn, on a side where no other piece lies in the way."""
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    low, top = min(y for _, y in points), max(y for _, y in points)
    near = 0.05
    under = any(left < x < right and y < low + near for x, y in others)
    pick = max if under else min
    a, b = pick((p for p in points if p[0] < left + near), key=_height), pick((p for p in points if p[0] > right - near), key=_height)
    turn = _next_row(rows, "above" if under else "below", (left, right))
    level(sheet, a, b, extent[3] + OFF_MM + turn if under else extent[1] - OFF_MM - turn, size[0])
    before = any(low < y < top and x > right - near for x, y in others)
    side = min if before else max
    c, d = side(p for p in points if p[1] < low + near), side(p for p in points if p[1] > top - near)
    turn = _next_row(rows, "left" if before else "right", (low, top))
    upright(sheet, c, d, extent[0] - OFF_MM - turn if before else extent[2] + OFF_MM + turn, size[1])


def _height(point: Point) -> float:
    return point[1]


def _next_row(rows: dict[str, list[tuple[float, float]]], side: str, span: tuple[float, float]) -> float:
    """How much farther off a dimension stands because others of that side are beside it."""
    beside = sum(span[0] < high + 1 and low - 1 < span[1] for low, high in rows.setdefault(side, []))
    rows[side].append(span)
    return 6.5 * beside


def paint_key(sheet: Sheet, flat: Flatlay, width_mm: float, numbered: bool = False) -> None:
    """What the marks mean, in a row below. ``numbered``: the order of work is shown."""
    folds = any(not flat.touching[i] for i in flat.seams)
    entries = [("start", "start of a pass"), ("end", "fasten off")] if flat.assembly.passes else []
    first = flat.assembly.passes[: len(flat.assembly.passes) // flat.assembly.copies]
    lettered = [leg.name for one in first for leg in legs_of(flat, one) if leg.name != str(one.number)]
    if lettered and not flat.crammed:
        entries.append(("legs", f"{lettered[0]}, {lettered[1]}, ...: one pass, in this order"))
    if joins_as_it_goes(flat.assembly.method):
        entries = [("order", "order of work")] * numbered + [("joined", "joined as it is worked")]
    if flat.assembly.openings:
        entries.append(("open", "stays open"))
    if flat.assembly.gaps:
        entries.append(("gap", "gap to close"))
    if folds and flat.crammed:
        entries += [("folds", "sewn together: see the steps"), ("first", "side 1, the others counter-clockwise")]
        lengths = {round(length, 2) if length is not None else None for panel in flat.panels for length in panel.sides_cm}
        if flat.assembly.scaled and len(lengths) == 1:
            entries.append(("plain", f"each side {length_text(lengths.pop() or 0.0)}"))
    elif folds:
        entries.append(("fold", "same letter: sewn together"))
    if any(flat.assembly.seams[i].twist for i in flat.seams):
        entries.append(("twist", "A~: with a twist, as the arrows run"))
    if any(eased_in(flat.assembly.seams[i]) is not None for i in flat.seams):
        entries.append(("eased", "eased in"))
    entries.append(("rs", "RS: right side up"))
    paint_key_rows(sheet, entries, width_mm)
