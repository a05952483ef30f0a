"""Several drawings on one sheet, each in its true size: in a grid, its proportions as near a page's as they can be."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.drawing.display import Drawing, Group, Operation, Transform

GAP_MM = 8.0
PAGE = 2**0.5
"""Height over width of an upright page."""


def stack(drawings: Sequence[Drawing], gap_mm: float = GAP_MM, proportion: float = PAGE) -> Drawing:
    """The drawings in rows, from the top left, centred in their cells; one drawing is itself. ValueError where there is none.

    As many columns as bring the sheet's height over its width nearest to ``proportion``. Each drawing keeps its title as the title of its
    group; the sheet's description is all of theirs.
    """
    if not drawings:
        raise ValueError("no drawings to put on a sheet")
    if len(drawings) == 1:
        return drawings[0]
    columns = min(range(1, len(drawings) + 1), key=lambda n: (_distance(drawings, n, gap_mm, proportion), n))
    widths, heights = _measures(drawings, columns)
    operations: list[Operation] = []
    top = 0.0
    for row, height in enumerate(heights):
        left = 0.0
        for width, drawing in zip(widths, drawings[row * columns : (row + 1) * columns], strict=False):
            x0, y0, x1, y1 = drawing.box
            shift = Transform(e=left + (width - x0 - x1) / 2, f=top - (height + y0 + y1) / 2)
            operations.append(Group(drawing.operations, transform=shift, title=drawing.title))
            left += width + gap_mm
        top -= height + gap_mm
    title = "; ".join(dict.fromkeys(drawing.title for drawing in drawings))
    box = (0.0, top + gap_mm, sum(widths) + gap_mm * (columns - 1), 0.0)
    return Drawing(box, tuple(operations), title, " ".join(drawing.description for drawing in drawings))


def _measures(drawings: Sequence[Drawing], columns: int) -> tuple[list[float], list[float]]:
    """The width of each column and the height of each row."""
    widths = [max(drawing.width_mm for drawing in drawings[i::columns]) for i in range(columns)]
    heights = [max(drawing.height_mm for drawing in drawings[i : i + columns]) for i in range(0, len(drawings), columns)]
    return widths, heights


def _distance(drawings: Sequence[Drawing], columns: int, gap: float, proportion: float) -> float:
    """How far a sheet with so many columns is from the proportion: 1 is none, 2 is twice as tall or as wide."""
    widths, heights = _measures(drawings, columns)
    found = (sum(heights) + gap * (len(heights) - 1)) / max(sum(widths) + gap * (columns - 1), 1e-9) / proportion
    return max(found, 1 / max(found, 1e-9))
