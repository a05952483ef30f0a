"""One drawing for each step: what is sewn already in grey, what is sewn now in bold, arrows from side to side where they meet."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

from motifold.render.assembly.flatlay import Flatlay, Rimline, lay
from motifold.render.assembly.model import Assembly, PassStep, SeamPass
from motifold.render.assembly.net_paint import paint_numbers, paint_pass
from motifold.render.assembly.panel_paint import paint_names, paint_panels
from motifold.render.assembly.sheet import Sheet, moved, unit
from motifold.render.assembly.steps import AssemblyStep, assembly_steps
from motifold.render.assembly.style import A5_TEXT_HEIGHT_MM, A5_TEXT_WIDTH_MM, FOLD, FOLD_OFF_MM, INK, TAG_MM, THICK_MM
from motifold.render.drawing.display import Drawing, Point

ARC_OFF_MM = FOLD_OFF_MM + TAG_MM + 1.2


def draw_steps(assembly: Assembly, width_mm: float = A5_TEXT_WIDTH_MM, height_mm: float = A5_TEXT_HEIGHT_MM) -> tuple[Drawing, ...]:
    """A drawing for each of ``assembly_steps`` that shows on the net (all but what is folded flat in words), in their order."""
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
    paint_panels(sheet, flat, now=step.panels)
    paint_names(sheet, flat, now=step.panels)
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
    if step.kind == "motif":
        paint_pass(sheet, flat, SeamPass(step.number, step.steps, 0, False), "now")
    if step.kind == "gap":
        _gap(sheet, flat, step)
    said = f"{', '.join(step.seams)}; {step.stitches} stitches" if step.seams else ", ".join(step.start or step.panels)
    return sheet.drawing(f"Step {step.number}", f"{_VERBS[step.kind]}: {said}.")


_VERBS = {"seam": "Sew", "fold": "Fold together and sew", "gap": "Close the gap at", "motif": "Work and join", "fold flat": "Fold"}


def _meeting(sheet: Sheet, flat: Flatlay, step: PassStep) -> None:
    """A curved arrow from the second side to the first, where both can be seen from outside; else a stub off each."""
    first, second = flat.fold_lines(step.seam)
    (a, out_a), (b, out_b) = _outer(first), _outer(second)
    apart = hypot(b[0] - a[0], b[1] - a[1])
    way = unit(a, b)
    faces = way[0] * out_a[0] + way[1] * out_a[1] > -0.25 and -way[0] * out_b[0] - way[1] * out_b[1] > -0.25
    if faces and apart > 3:
        reach = max(3.0, 0.45 * apart)
        start, end = b, moved(a, out_a, 1.6)
        sheet.curve(start, moved(b, out_b, reach), moved(a, out_a, reach), end, INK, THICK_MM / 2)
        sheet.arrow(a, (-out_a[0], -out_a[1]), INK)
        return
    for at, out in ((a, out_a), (b, out_b)):
        tip = moved(at, out, 5.0)
        sheet.line([at, tip], INK, THICK_MM / 2)
        sheet.arrow(tip, out, INK)


def _outer(line: Rimline) -> tuple[Point, Point]:
    middle = line.beside(min(ARC_OFF_MM, 0.22 * line.length + 2 * TAG_MM + 1.2), 0.49, 0.51)
    return ((middle.points[0][0] + middle.points[-1][0]) / 2, (middle.points[0][1] + middle.points[-1][1]) / 2), middle.outward(0)


def _gap(sheet: Sheet, flat: Flatlay, step: AssemblyStep) -> None:
    """Rings round every place of the sheet that is the corner."""
    for name, index in step.corners:
        panel = flat.number[name]
        at = flat.side_of(panel, index)[0]
        sheet.ring(at, 2.2, FOLD, THICK_MM)
