"""One drawing for each step: what is sewn already in grey, what is sewn now in bold, arrows from side to side where they meet."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

from motifold.render.assembly.flatlay import Flatlay, Rimline, fitted, lay
from motifold.render.assembly.model import Assembly, PassStep, SeamPass
from motifold.render.assembly.net_paint import paint_gap, paint_joined, paint_numbers, paint_order, paint_pass
from motifold.render.assembly.panel_paint import paint_names, paint_panels
from motifold.render.assembly.sheet import Sheet, bezier, moved, unit
from motifold.render.assembly.steps import AssemblyStep, assembly_steps, work_order
from motifold.render.assembly.style import A5_TEXT_HEIGHT_MM, A5_TEXT_WIDTH_MM, FOLD_OFF_MM, INK, TAG_MM, THICK_MM
from motifold.render.drawing.display import Drawing, Point

ARC_OFF_MM = FOLD_OFF_MM + TAG_MM + 1.2


def draw_steps(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> tuple[Drawing, ...]:
    """A drawing for each of ``assembly_steps`` that shows on the net (all but what is folded flat in words), in their order."""
    drawings, _ = fitted(lambda wide: _steps(assembly, wide, height_mm), width_mm)
    return drawings


def _steps(assembly: Assembly, width_mm: float, height_mm: float) -> tuple[Drawing, ...]:
    room = 2 * (FOLD_OFF_MM + 2 * TAG_MM + 2)
    flat = lay(assembly, width_mm - room, height_mm - room)
    steps = [step for step in assembly_steps(assembly) if step.kind != "fold flat"]
    drawings = [_draw(flat, steps, at) for at in range(len(steps))]
    # One frame for all, so that nothing jumps from step to step.
    boxes = [drawing.box for drawing in drawings]
    frame = (
        min((b[0] for b in boxes), default=0.0),
        min((b[1] for b in boxes), default=0.0),
        max((b[2] for b in boxes), default=1.0),
        max((b[3] for b in boxes), default=1.0),
    )
    return tuple(replace(drawing, box=frame) for drawing in drawings)


def _draw(flat: Flatlay, steps: list[AssemblyStep], at: int) -> Drawing:
    sheet = Sheet()
    step = steps[at]
    here = step.made or step.panels
    paint_panels(sheet, flat, now=here)
    if not flat.dense:
        paint_names(sheet, flat, now=here, raised=step.kind == "motif")
    done = [s for before in steps[:at] for s in before.steps]
    if done:
        paint_pass(sheet, flat, SeamPass(0, tuple(done), 0, False), "done")
    if step.steps and step.kind != "motif":
        one = flat.assembly.passes[(step.pass_number or 1) - 1]
        first = one.steps.index(step.steps[0])
        paint_numbers(sheet, flat, paint_pass(sheet, flat, one, "now", range(first, first + len(step.steps))))
        for sewn in step.steps:
            if not flat.touching[sewn.seam]:
                _meeting(sheet, flat, sewn)
    if flat.dense:
        # Letters stand within the panels: names go where these leave room.
        paint_names(sheet, flat, now=here)
    if step.kind == "motif":
        paint_joined(sheet, flat, step, "now")
        there = {name for before in steps[: at + 1] for name in before.made}
        paint_order(sheet, flat, work_order(flat.assembly), there)
    if step.kind == "gap":
        paint_gap(sheet, flat, step.corners)
    said = f"{', '.join(step.seams)}; {step.stitches} stitches" if step.seams else ", ".join(step.start or step.panels)
    if step.made:
        said = ", ".join(step.made) + (f", along {', '.join(step.own)}" if step.own else "")
    title = f"Step {step.number}" + (f" (pass {step.pass_number})" if step.pass_number is not None else "")
    return sheet.drawing(title, f"{_VERBS[step.kind]}: {said}.")


_VERBS = {"seam": "Sew", "fold": "Fold together and sew", "gap": "Close the gap at", "motif": "Work and join", "fold flat": "Fold"}


def _meeting(sheet: Sheet, flat: Flatlay, step: PassStep) -> None:
    """A curved arrow from the second side to the first, where they look at each other and no word is in the way; else one onto each."""
    first, second = flat.fold_lines(step.seam)
    for share in (0.5, 0.3, 0.7, 0.4, 0.6):
        for off in (ARC_OFF_MM, ARC_OFF_MM + 2 * TAG_MM, FOLD_OFF_MM + 1.6):
            a, out_a = _outer(first, share, off)
            b, out_b = _outer(second, share, off)
            if _faces(a, out_a, b, out_b) and _arc(sheet, a, out_a, b, out_b):
                return
    for line in (first, second):
        for share in (0.5, 0.3, 0.7):
            at, out = _outer(line, share, ARC_OFF_MM)
            if not any(sheet.worded(_near(moved(at, out, by))) for by in (0.0, 2.0, 4.0)):
                sheet.line([moved(at, out, 5.0), moved(at, out, 1.0)], INK, THICK_MM / 2)
                sheet.arrow(at, (-out[0], -out[1]), INK)
                break


def _faces(a: Point, out_a: Point, b: Point, out_b: Point) -> bool:
    """Whether the two places look towards each other, more or less, so that an arrow between them stays outside the panels."""
    way = unit(a, b)
    apart = hypot(b[0] - a[0], b[1] - a[1])
    return apart > 3 and way[0] * out_a[0] + way[1] * out_a[1] > -0.25 and -way[0] * out_b[0] - way[1] * out_b[1] > -0.25


def _arc(sheet: Sheet, a: Point, out_a: Point, b: Point, out_b: Point) -> bool:
    reach = max(3.0, 0.45 * hypot(b[0] - a[0], b[1] - a[1]))
    curve = (b, moved(b, out_b, reach), moved(a, out_a, reach), moved(a, out_a, 1.6))
    if any(sheet.worded(_near(bezier(*curve, i / 30))) for i in range(31)):
        return False
    sheet.curve(*curve, INK, THICK_MM / 2)
    sheet.arrow(a, (-out_a[0], -out_a[1]), INK)
    return True


def _near(at: Point) -> tuple[float, float, float, float]:
    return at[0] - 0.4, at[1] - 0.4, at[0] + 0.4, at[1] + 0.4


def _outer(line: Rimline, share: float, off: float) -> tuple[Point, Point]:
    there = line.beside(off, share - 0.01, share + 0.01)
    return there.points[0], there.outward(0)
