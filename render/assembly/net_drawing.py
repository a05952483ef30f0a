"""The net: panels right side up, every seam pass numbered and arrowed, what folds together lettered, and the measures."""

from __future__ import annotations

from motifold.render.assembly.flatlay import Flatlay, lay
from motifold.render.assembly.measures import OFF_MM, level, measure_around
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.net_paint import paint_gap, paint_joined, paint_numbers, paint_order, paint_pass
from motifold.render.assembly.panel_paint import paint_names, paint_panels
from motifold.render.assembly.sewing import joins_as_it_goes
from motifold.render.assembly.sheet import Sheet
from motifold.render.assembly.steps import assembly_steps
from motifold.render.assembly.style import (
    A5_TEXT_HEIGHT_MM,
    A5_TEXT_WIDTH_MM,
    CAP_EM,
    DASH_MM,
    FLAT,
    FOLD,
    FOLD_OFF_MM,
    INK,
    LETTER_PT,
    MM_PER_PT,
    THICK_MM,
)
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm

DIM_MM = 9.0  # room that a dimension takes


def draw_net(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> Drawing:
    """The net of one copy, at most ``width_mm`` by ``height_mm`` (more only where panels would come out smaller than their figures)."""
    sheet = Sheet()
    flat = lay(assembly, *net_room(width_mm, height_mm))
    paint_panels(sheet, flat)
    if not flat.dense:
        paint_names(sheet, flat)
    _keep_free(sheet, flat)
    motifs = [step for step in assembly_steps(assembly) if step.kind == "motif"] if joins_as_it_goes(assembly.method) else []
    for step in motifs:
        paint_joined(sheet, flat, step, "plain")
    paint_order(sheet, flat, motifs)
    passes = assembly.passes[: len(assembly.passes) // assembly.copies]
    starts = [start for one in passes for start in paint_pass(sheet, flat, one, "plain")]
    gaps = assembly.gaps[: len(assembly.gaps) // assembly.copies]
    for gap in gaps:
        paint_gap(sheet, flat, gap.at)
    if flat.dense:
        paint_names(sheet, flat)
    paint_numbers(sheet, flat, starts)
    if assembly.scaled:
        _dimensions(sheet, flat)
    paint_key(sheet, flat, width_mm)
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
    """The whole net, and one square of it where there are several."""
    points = [p for outline in flat.outlines for p in outline]
    wide, _ = measure_around(sheet, points, flat.mm_per_cm)
    square = _square(flat)
    if square is not None:
        left, right = square
        across = (right[0] - left[0]) / flat.mm_per_cm
        if across < wide - 0.05:
            level(sheet, left, right, (sheet.extent or (0, 0, 0, left[1]))[3] + OFF_MM, across)


def paint_key(sheet: Sheet, flat: Flatlay, width_mm: float) -> None:
    """What the marks mean, in a row below."""
    folds = any(not flat.touching[i] for i in flat.seams)
    box = sheet.extent or (0.0, 0.0, width_mm, 0.0)
    x, y = box[0], box[1] - 5.5
    entries = [("start", "start of a pass"), ("end", "fasten off")]
    if joins_as_it_goes(flat.assembly.method):
        entries = [("order", "order of work"), ("joined", "joined as it is worked")]
    if flat.assembly.openings:
        entries.append(("open", "stays open"))
    if flat.assembly.gaps:
        entries.append(("gap", "gap to close"))
    if folds:
        entries.append(("fold", "same letter: sewn together"))
    entries.append(("rs", "RS: right side up"))
    right = max(box[2], box[0] + min(width_mm, 90.0))
    for mark, words in entries:
        wide = 9.5 + text_width_mm(words, "sans", LETTER_PT) + 4.0 if mark != "rs" else text_width_mm(words, "sans", LETTER_PT) + 4.0
        if x + wide - 4.0 > right and x > box[0]:
            x, y = box[0], y - 5.2
        _key_mark(sheet, mark, (x, y))
        at = x + (0.0 if mark == "rs" else 9.5)
        sheet.words((at, y - CAP_EM / 2 * LETTER_PT * MM_PER_PT), words, LETTER_PT, color=INK, anchor="start")
        x += wide


def _key_mark(sheet: Sheet, mark: str, at: Point) -> None:
    x, y = at
    if mark == "start":
        sheet.line([(x + 1, y), (x + 8, y)], FLAT, THICK_MM)
        sheet.dot((x + 1, y), FLAT)
        sheet.arrow((x + 6, y), (1.0, 0.0), FLAT)
    elif mark == "end":
        sheet.line([(x, y), (x + 7, y)], FLAT, THICK_MM)
        sheet.bar((x + 7, y), (1.0, 0.0), FLAT, THICK_MM)
    elif mark == "gap":
        sheet.ring((x + 4, y), 2.0, FOLD, THICK_MM)
    elif mark == "order":
        sheet.tag((x + 4, y), "1", FLAT, filled=True)
    elif mark == "joined":
        sheet.line([(x, y), (x + 8, y)], FLAT, THICK_MM)
    elif mark == "open":
        sheet.line([(x, y), (x + 8, y)], INK, THICK_MM)
    elif mark == "fold":
        sheet.line([(x, y), (x + 8, y)], FOLD, THICK_MM, DASH_MM)
        sheet.tag((x + 4, y), "A", FOLD, filled=False)
