"""A drawing at a stated real width, over as many sheets of paper as that takes, with a plan of them and a bar to measure on each."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from motifold.render.drawing.display import Drawing, Operation, Text, Transform
from motifold.render.drawing.inks import INK, QUIET
from motifold.render.drawing.measure import place, transform
from motifold.render.drawing.sheets import (
    CHECK_MM,
    FOOT_MM,
    MARGIN_MM,
    NAME_PT,
    NOTE_PT,
    OVERLAP_MM,
    Split,
    check_bar,
    make_sheet,
    make_sheets,
    outlines_over,
    span,
    split_over,
)

MOST_SHEETS: Final = 400
_LINE_MM = 4.6


class TooLarge(ValueError):
    """More sheets than anyone would join."""


def enlarge(drawing: Drawing, width_mm: float) -> Drawing:
    """The drawing, lines and letters and all, ``width_mm`` wide."""
    scale = width_mm / drawing.width_mm
    x0, y0, x1, y1 = (scale * side for side in drawing.box)
    return replace(drawing, box=(x0, y0, x1, y1), operations=transform(drawing.operations, Transform(scale, 0.0, 0.0, scale)))


def poster(drawing: Drawing, page_mm: tuple[float, float], said: str) -> tuple[tuple[str, Drawing], ...]:
    """A drawing in its own size over sheets of ``page_mm`` (upright): its pages with a name each, the plan first.

    The sheets lie the way that needs fewer. What fits on one is one page without a plan and with the name "". ``said`` is a line
    about the size, for the plan. Raises TooLarge for more than 400 sheets.
    """
    size = drawing.width_mm, drawing.height_mm
    split = min((split_over(size, page) for page in (page_mm, page_mm[::-1])), key=lambda one: one.sheets)
    if split.sheets > MOST_SHEETS:
        raise TooLarge(f"that would be {split.sheets} sheets, and {MOST_SHEETS} is the most: choose a smaller width or larger paper")
    if split.sheets == 1:
        return (("", make_sheet(drawing, split, 0, 0, drawing.title, check=True)),)
    return (("plan", _plan(drawing, split, page_mm, said)), *make_sheets(drawing, split, drawing.title, check=True))


def _plan(drawing: Drawing, split: Split, page: tuple[float, float], said: str) -> Drawing:
    """The whole drawing small, the sheets over it, and how they are printed and joined."""
    lines = (
        said,
        f"{split.sheets} sheets, {OVERLAP_MM:g} mm of overlap. Print them at 100 %, not fitted to the page; the bar on each measures 5 cm.",
        "Trim one of two neighbours along the broken line and lay it on the other's.",
    )
    x0, y0, x1, y1 = span(drawing, split)
    room = page[0] - 2 * MARGIN_MM, page[1] - 2 * MARGIN_MM - FOOT_MM - 10.0 - _LINE_MM * len(lines) - 4.0
    scale = min(room[0] / (x1 - x0), room[1] / (y1 - y0))
    top = page[1] - MARGIN_MM - 5.0
    left, low = (page[0] - (x1 - x0) * scale) / 2, top - 6.0 - (y1 - y0) * scale
    small = place(replace(drawing, box=(x0, y0, x1, y1)), left, low, scale)
    over = outlines_over(drawing, split, scale, (x0 - left / scale, y0 - low / scale))
    words: list[Operation] = [Text(page[0] / 2, top, drawing.title, "serif-bold", NAME_PT, INK, "middle")]
    words += [Text(page[0] / 2, low - 5.0 - i * _LINE_MM, line, "sans", NOTE_PT + 0.5, QUIET, "middle") for i, line in enumerate(lines)]
    bar = check_bar((page[0] - CHECK_MM) / 2, MARGIN_MM)
    about = f"Plan of the {split.sheets} sheets. {drawing.description}"
    return Drawing((0.0, 0.0, *page), (*small, *over, *words, *bar), f"{drawing.title}, plan of the sheets", about)
