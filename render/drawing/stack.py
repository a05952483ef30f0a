"""Several drawings on one sheet, one below the other, each in its true size."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.drawing.display import Drawing, Group, Operation, Transform

GAP_MM = 8.0


def stack(drawings: Sequence[Drawing], gap_mm: float = GAP_MM) -> Drawing:
    """The drawings centred above each other, the first on top; one drawing is itself. ValueError where there is none.

    Each keeps its title as the title of its group; the sheet's description is all of theirs.
    """
    if not drawings:
        raise ValueError("no drawings to put on a sheet")
    if len(drawings) == 1:
        return drawings[0]
    width = max(drawing.width_mm for drawing in drawings)
    operations: list[Operation] = []
    top = 0.0
    for drawing in drawings:
        x0, _, x1, y1 = drawing.box
        shift = Transform(e=width / 2 - (x0 + x1) / 2, f=top - y1)
        operations.append(Group(drawing.operations, transform=shift, title=drawing.title))
        top -= drawing.height_mm + gap_mm
    title = "; ".join(dict.fromkeys(drawing.title for drawing in drawings))
    return Drawing((0.0, top + gap_mm, width, 0.0), tuple(operations), title, " ".join(drawing.description for drawing in drawings))
